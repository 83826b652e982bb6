package gear

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
)

func lossOf(t testing.TB, offset, friction float64, driver Driver) MeshLossParams {
	t.Helper()
	p := pairForStrength(t, offset, Drive)
	return MeshLossParams{Cones: p.flank.Cones, Virtual: p.flank.Virtual, PressureAngle: p.flank.Angles.GeneratedDrive,
		WheelTorque: 1000, WheelSpeed: 40, Friction: friction, Driver: driver}
}

// With a path of contact that shrinks to the mean point the loss is that of two
// crossed teeth, whose efficiency has a closed form.
func TestLossOfCrossedTeeth(t *testing.T) {
	for _, friction := range []float64{0, 0.04, 0.1} {
		p := lossOf(t, 0.025, friction, PinionDrives)
		v := &p.Virtual
		const share = 1e-6
		v.Path *= share
		v.PinionTip = math.Hypot(v.PinionBase, v.PinionDiameter*math.Sin(v.PressureAngle)+v.Path) // half of the path on either side
		cosA, tan1, tan2 := math.Cos(p.PressureAngle), math.Tan(p.Cones.PinionSpiral), math.Tan(p.Cones.WheelSpiral)
		r := must[MeshLossResult](t)(MeshLoss(p))
		if want := (cosA + friction*tan2) / (cosA + friction*tan1); math.Abs(r.Efficiency-want) > 1e-9 {
			t.Errorf("µ = %g, pinion drives: %.9f, want %.9f", friction, r.Efficiency, want)
		}
		p.Driver = WheelDrives
		r = must[MeshLossResult](t)(MeshLoss(p))
		if want := (cosA - friction*tan1) / (cosA - friction*tan2); math.Abs(r.Efficiency-want) > 1e-9 {
			t.Errorf("µ = %g, wheel drives: %.9f, want %.9f", friction, r.Efficiency, want)
		}
	}
}

// Without offset there is profile sliding only, with the loss factor of spur
// gears: π·(u + 1)/(z1·u·cos β_b)·(ε1² + ε2²)/ε for an even load.
func TestLossOfBevelTeeth(t *testing.T) {
	p := lossOf(t, 0, 0.05, PinionDrives)
	r := must[MeshLossResult](t)(MeshLoss(p))
	v := p.Virtual
	e1 := (math.Sqrt(v.PinionTip*v.PinionTip-v.PinionBase*v.PinionBase)/2 - v.PinionDiameter/2*math.Sin(v.PressureAngle)) / v.BasePitch
	e2 := v.ProfileOverlap - e1
	u := v.WheelTeeth / v.PinionTeeth
	factor := math.Pi * (u + 1) / (v.PinionTeeth * u * math.Cos(v.BaseHelix)) * (e1*e1 + e2*e2) / v.ProfileOverlap
	if want := 1 / (1 + 0.05*factor); math.Abs(r.Efficiency-want) > 1e-9 || r.SlidingAlong != 0 {
		t.Errorf("efficiency %.9f, want %.9f; sliding along the tooth %g", r.Efficiency, want, r.SlidingAlong)
	}
}

func TestLossLaws(t *testing.T) {
	last := 1.0
	for _, offset := range []float64{0, 0.01, 0.02, 0.03, 0.04} {
		r := must[MeshLossResult](t)(MeshLoss(lossOf(t, offset, 0.06, PinionDrives)))
		if r.Efficiency >= last {
			t.Errorf("offset %g: efficiency %g does not fall", offset, r.Efficiency)
		}
		last = r.Efficiency
		p := lossOf(t, offset, 0.06, PinionDrives)
		if in := r.PinionTorque * p.WheelSpeed * 4.1; math.Abs(in-p.WheelTorque*p.WheelSpeed-r.Loss) > 1e-6 {
			t.Errorf("offset %g: power in %g does not cover power out and loss %g", offset, in, r.Loss)
		}
		w := must[MeshLossResult](t)(MeshLoss(lossOf(t, offset, 0.06, WheelDrives)))
		if w.Efficiency >= 1 || w.Efficiency > r.Efficiency+1e-3 {
			t.Errorf("offset %g: overrun at %g", offset, w.Efficiency)
		}
	}
	if last < 0.93 || last > 0.985 { // common practice: hypoid axles lose 2 to 6 % in the mesh
		t.Errorf("40 mm of offset: efficiency %g", last)
	}
	if r := must[MeshLossResult](t)(MeshLoss(lossOf(t, 0.02, 0, PinionDrives))); r.Efficiency != 1 || r.Loss != 0 {
		t.Errorf("no friction: %+v", r)
	}
}

// The sliding at the mean point from the velocities of both bodies in space.
func TestSlidingFromVelocities(t *testing.T) {
	p := lossOf(t, 0.025, 0.05, PinionDrives)
	r := must[MeshLossResult](t)(MeshLoss(p))
	f := p.Cones.frame(RightHand)
	wheel := vector{Y: p.WheelSpeed}.cross(f.mean)
	pinion := vector{X: p.WheelSpeed * 4.1}.cross(f.mean.plus(vector{Z: -f.pinionAxisZ}))
	if math.Abs(pinion.plus(wheel.times(-1)).dot(f.normal.cross(f.tooth))) > 1e-9 {
		pinion = pinion.times(-1)
	}
	slide := pinion.plus(wheel.times(-1))
	if got := math.Sqrt(slide.dot(slide)); math.Abs(got-r.SlidingAlong) > 1e-9 || math.Abs(math.Abs(slide.dot(f.tooth))-got) > 1e-9 {
		t.Errorf("sliding %g in space, %g along the tooth; want %g", got, slide.dot(f.tooth), r.SlidingAlong)
	}
}

func TestLossRefuses(t *testing.T) {
	for param, change := range map[string]func(*MeshLossParams){
		"PressureAngle": func(p *MeshLossParams) { p.PressureAngle = 20 },
		"WheelTorque":   func(p *MeshLossParams) { p.WheelTorque = 0 },
		"WheelSpeed":    func(p *MeshLossParams) { p.WheelSpeed = 0 },
		"Friction":      func(p *MeshLossParams) { p.Friction = -0.1 },
		"Driver":        func(p *MeshLossParams) { p.Driver = "" },
		"Virtual.Path":  func(p *MeshLossParams) { p.Virtual.Path = 0 },
	} {
		p := lossOf(t, 0.025, 0.05, PinionDrives)
		change(&p)
		var r *check.RangeError
		if _, err := MeshLoss(p); !errors.As(err, &r) || r.Param != param {
			t.Errorf("%s: got %v", param, err)
		}
	}
}
