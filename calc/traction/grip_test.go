package traction

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func TestPullingGripPublished(t *testing.T) {
	r, err := PullingGrip(GripParams{
		Drive: RearDrive, Friction: 0.9, Weight: 1600 * gravity, Wheelbase: 2.5, FrontToCentre: 1.3, Height: 0.6, LoadedRadius: 0.31,
	})
	if err != nil {
		t.Fatal(err)
	}
	const source = "derived: forms of Gillespie (1992) and Wong, Theory of Ground Vehicles (from memory), rear drive, 1600 kg"
	published.Check(t, []published.Row{
		{Name: "pull, N", Got: r.Force, Printed: "9366.35", Source: source},
		{Name: "torque, N·m", Got: r.RearTorque, Printed: "2903.57", Source: source},
	})
}

func gripCase(t *rapid.T) GripParams {
	wheelbase := rapid.Float64Range(2, 4).Draw(t, "L")
	return GripParams{
		Friction:      rapid.Float64Range(0.1, 1).Draw(t, "µ"),
		Weight:        rapid.Float64Range(5e3, 5e4).Draw(t, "W"),
		Wheelbase:     wheelbase,
		FrontToCentre: wheelbase * rapid.Float64Range(0.4, 0.6).Draw(t, "a/L"),
		Height:        rapid.Float64Range(0.3, 0.8).Draw(t, "h"),
		Grade:         rapid.Float64Range(-0.5, 0.5).Draw(t, "grade"),
		LoadedRadius:  0.4,
		Reverse:       rapid.Bool().Draw(t, "reverse"),
	}
}

// At the limit of grip the pull, fed back into the weight transfer as climbing
// and gathering speed, gives the same axle loads; and each driven axle pulls
// just its friction.
func TestPullingGripAgreesWithTheWeightTransfer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := gripCase(t)
		p.Drive = rapid.SampledFrom([]Drive{RearDrive, FrontDrive, BothDrive}).Draw(t, "drive")
		r, err := PullingGrip(p)
		if err != nil {
			t.Skip("tips")
		}
		theta := math.Atan(p.Grade)
		pull := r.Force
		if p.Reverse {
			pull = -pull
		}
		acceleration := (pull - p.Weight*math.Sin(theta)) / (p.Weight / gravity)
		loads, err := AxleLoads(AxleLoadParams{
			Weight: p.Weight, Wheelbase: p.Wheelbase, FrontToCentre: p.FrontToCentre, Height: p.Height,
			Grade: p.Grade, Acceleration: acceleration,
		})
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(loads.Front-r.FrontLoad) > 1e-6*p.Weight || math.Abs(loads.Rear-r.RearLoad) > 1e-6*p.Weight {
			t.Errorf("loads %+v, at the limit %+v", loads, r)
		}
		if got := (r.FrontTorque + r.RearTorque) / p.LoadedRadius; math.Abs(got-r.Force) > 1e-9*p.Weight {
			t.Errorf("axles pull %g N, whole %g N", got, r.Force)
		}
	})
}

// Backward, a vehicle is its own mirror image: front and rear change places.
func TestReverseIsTheMirrorImage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := gripCase(t)
		p.Drive, p.Reverse = RearDrive, true
		mirrored := p
		mirrored.Drive, mirrored.Reverse = FrontDrive, false
		mirrored.FrontToCentre = p.Wheelbase - p.FrontToCentre
		a, errA := PullingGrip(p)
		b, errB := PullingGrip(mirrored)
		if errA != nil || errB != nil {
			t.Skip("tips")
		}
		if math.Abs(a.RearTorque/b.FrontTorque-1) > 1e-9 || math.Abs(a.FrontLoad/b.RearLoad-1) > 1e-9 {
			t.Errorf("backward %+v, mirrored %+v", a, b)
		}
	})
}

func TestAxleLoadsBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := AxleLoadParams{
			Weight: 2e4, Wheelbase: 2.8, FrontToCentre: 1.3, Height: 0.7,
			Grade:        rapid.Float64Range(-0.4, 0.4).Draw(t, "grade"),
			Acceleration: rapid.Float64Range(-3, 3).Draw(t, "acceleration"),
			Drawbar:      rapid.Float64Range(0, 3e3).Draw(t, "drawbar"), HitchHeight: 0.5,
			NoseWeight: rapid.Float64Range(0, 1.5e3).Draw(t, "nose"), HitchOverhang: 1.1,
		}
		r, err := AxleLoads(p)
		if err != nil {
			t.Fatal(err)
		}
		if want := p.Weight*math.Cos(math.Atan(p.Grade)) + p.NoseWeight; math.Abs(r.Front+r.Rear-want) > 1e-9*want {
			t.Errorf("axles carry %g N, press %g N", r.Front+r.Rear, want)
		}
		p.NoseWeight += 100
		more, _ := AxleLoads(p)
		if more.Front >= r.Front || more.Rear <= r.Rear+100 {
			t.Errorf("100 N on the hitch must lift the front and load the rear by more: %+v then %+v", r, more)
		}
	})
}

func TestAxleLoadsOfAVehicleThatTips(t *testing.T) {
	var r *check.RangeError
	steep := AxleLoadParams{Weight: 2e4, Wheelbase: 2, FrontToCentre: 1.5, Height: 0.9, Grade: 2}
	if _, err := AxleLoads(steep); !errors.As(err, &r) || r.Param != "Front" {
		t.Errorf("got %v, want a range error on Front", err)
	}
	if _, err := PullingGrip(GripParams{Drive: "six", Friction: 0.5, Weight: 1, Wheelbase: 1, FrontToCentre: 0.5, LoadedRadius: 1}); !errors.As(err, &r) || r.Param != "Drive" {
		t.Errorf("got %v, want a range error on Drive", err)
	}
}

// On level even ground the static load through AxleLoads and GripLimitedTorque
// is the least a rear axle holds when it pulls forward: the pull adds to it.
func TestWeightTransferHelpsARearAxleForward(t *testing.T) {
	p := GripParams{Drive: RearDrive, Friction: 0.8, Weight: 2e4, Wheelbase: 2.5, FrontToCentre: 1.3, Height: 0.7, LoadedRadius: 0.39}
	static, err := GripLimitedTorque(0.8, 2e4*1.3/2.5, 0.39)
	if err != nil {
		t.Fatal(err)
	}
	forward, _ := PullingGrip(p)
	p.Reverse = true
	backward, _ := PullingGrip(p)
	if !(backward.RearTorque < static && static < forward.RearTorque) {
		t.Errorf("backward %g, standing %g, forward %g", backward.RearTorque, static, forward.RearTorque)
	}
}
