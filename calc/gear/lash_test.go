package gear

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"

	"pgregory.net/rapid"
)

// lashOf is a spiral bevel pair of 20° and 35° moved by a shift.
func lashOf(t testing.TB, z1, z2 int, shift MeshShift) LashChangeResult {
	t.Helper()
	cones := must[PitchCones](t)(BevelPitchCones(z1, z2, 35*degree, 0.094))
	return must[LashChangeResult](t)(LashChange(LashChangeParams{Cones: cones, DrivePressureAngle: 20 * degree, CoastPressureAngle: 20 * degree, Shift: shift}))
}

func TestLashOfAxialMovesDerived(t *testing.T) {
	const source = "derived: Δj_t = 2·Δa·tan α·sin δ/cos β, Δj_n = 2·Δa·sin α·sin δ, from flank normals apart from this code"
	// 41/11: pitch angles of 74.98° and 15.02°.
	wheel, pinion := lashOf(t, 11, 41, MeshShift{WheelAway: 0.1e-3}), lashOf(t, 11, 41, MeshShift{PinionAway: 0.1e-3})
	published.Check(t, []published.Row{
		{Name: "wheel away 0.10 mm, transverse, mm", Got: wheel.Transverse * 1e3, Printed: "0.0858299", Source: source, Within: 1e-4, Why: "the printed case has δ2 rounded to 74.98°"},
		{Name: "wheel away 0.10 mm, normal, mm", Got: wheel.NormalDrive * 1e3, Printed: "0.0660677", Source: source, Within: 1e-4, Why: "the printed case has δ2 rounded to 74.98°"},
		{Name: "pinion away 0.10 mm, mm", Got: pinion.Transverse * 1e3, Printed: "0.023027", Source: source, Within: 1e-3, Why: "the printed case has δ1 rounded to 15.018°"},
	})
}

func TestLashFiguresOfTheTrade(t *testing.T) {
	const source = "common practice, no source: crown wheel of ratio 3.54, 20° and 35°, figures of a set-up sheet"
	wheel, pinion := lashOf(t, 13, 46, MeshShift{WheelAway: 0.1e-3}), lashOf(t, 13, 46, MeshShift{PinionAway: 0.1e-3})
	square := must[float64](t)(LashFromDial(DialLashParams{Lash: 0.115e-3, LashRadius: 0.1, DialRadius: 0.1, Setting: DialSquare, SpiralAngle: 35 * degree, PressureAngle: 20 * degree}))
	published.Check(t, []published.Row{
		{Name: "crown wheel moved 0.10 mm, tangential", Got: wheel.Transverse * 1e3, Printed: "0.086", Source: source},
		{Name: "crown wheel moved 0.10 mm, square to the tooth", Got: wheel.NormalDrive * 1e3, Printed: "0.066", Source: source},
		{Name: "pinion moved 0.10 mm", Got: pinion.Transverse * 1e3, Printed: "0.024", Source: source},
		{Name: "dial square to the tooth reads 0.115, tangential lash", Got: square * 1e3, Printed: "0.149", Source: source},
	})
}

// drawShift is a small movement of everything.
func drawShift(rt *rapid.T) MeshShift {
	d := func(name string) float64 { return rapid.Float64Range(-0.3e-3, 0.3e-3).Draw(rt, name) }
	return MeshShift{WheelAway: d("wheel"), PinionAway: d("pinion"), OffsetGrowth: d("offset"), AngleOpening: d("angle"), WheelTowardMesh: d("wheel x")}
}

// The lash by another way: move the wheel's flanks as a body, close the gap of
// each flank by turning the wheel, and add the two turns.
func TestLashByTurningTheWheel(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		p, s := drawPair(rt), drawShift(rt)
		got, err := LashChange(LashChangeParams{Cones: p.Cones, DrivePressureAngle: p.DrivePressureAngle, CoastPressureAngle: p.CoastPressureAngle, Shift: s})
		if err != nil {
			rt.Fatal(err)
		}
		side := 1.0
		if p.PinionHand == LeftHand {
			side = -1
		}
		turn := 0.0
		for _, flank := range []Flank{Drive, Coast} {
			q := p
			q.Flank = flank
			v, err := MeshForceVectors(q)
			if err != nil {
				rt.Fatal(err)
			}
			n, mean := vector(v.FlankNormal), vector(v.MeanPoint)
			// rotation of the wheel about z through the origin by the opening angle, mirrored with the hand in z only
			rotated := vector{-mean.Y, mean.X, 0}.times(s.AngleOpening)
			u := vector{s.WheelTowardMesh - s.PinionAway, s.WheelAway, -side * s.OffsetGrowth}.plus(rotated)
			gap := u.dot(n)
			arm := math.Abs(vector{Y: 1}.cross(mean).dot(n))
			turn += gap / arm
		}
		if math.Abs(got.WheelTurning-turn) > 1e-9*(math.Abs(turn)+1e-3) {
			rt.Errorf("%g by flanks, %g by the pitch plane", turn, got.WheelTurning)
		}
	})
}

func TestLashLaws(t *testing.T) {
	if l := lashOf(t, 11, 41, MeshShift{OffsetGrowth: 0.1e-3}); math.Abs(l.Transverse) > 1e-18 {
		t.Errorf("without offset a sideways move only turns the wheel, yet lash changes by %g", l.Transverse)
	}
	if l := lashOf(t, 11, 41, MeshShift{AngleOpening: 1e-3}); l.Transverse <= 0 {
		t.Errorf("opening the shaft angle should open the lash: %g", l.Transverse)
	}
	if l := lashOf(t, 11, 41, MeshShift{WheelTowardMesh: 0.1e-3}); l.Transverse >= 0 {
		t.Errorf("the wheel towards the mesh should close the lash: %g", l.Transverse)
	}
	rapid.Check(t, func(rt *rapid.T) {
		p := drawPair(rt)
		at := func(s MeshShift) float64 {
			l, err := LashChange(LashChangeParams{Cones: p.Cones, DrivePressureAngle: p.DrivePressureAngle, CoastPressureAngle: p.CoastPressureAngle, Shift: s})
			if err != nil {
				rt.Fatal(err)
			}
			return l.Transverse
		}
		away := at(MeshShift{WheelAway: 1e-4})
		if away <= at(MeshShift{PinionAway: 1e-4}) {
			rt.Errorf("lash is set with the wheel, yet the pinion moves it more")
		}
		shift, err := WheelShiftForLash(WheelShiftParams{Cones: p.Cones, DrivePressureAngle: p.DrivePressureAngle, CoastPressureAngle: p.CoastPressureAngle,
			LashGrowth: away * 1.2, Radius: p.Cones.WheelMeanRadius * 1.2})
		if err != nil || math.Abs(shift-1e-4) > 1e-12 {
			rt.Errorf("the move that opens %g at the heel: %g, %v; want 0.1 mm", away*1.2, shift, err)
		}
	})
}

func TestDialReadsBack(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		p := DialLashParams{Lash: rapid.Float64Range(0.05e-3, 0.4e-3).Draw(rt, "lash"), LashRadius: 0.094, DialRadius: rapid.Float64Range(0.09, 0.12).Draw(rt, "radius"),
			Setting:     rapid.SampledFrom([]DialSetting{DialTangential, DialSquare}).Draw(rt, "setting"),
			SpiralAngle: rapid.Float64Range(0, 50).Draw(rt, "spiral") * degree, PressureAngle: 20 * degree}
		reading, err := DialReading(p)
		if err != nil {
			rt.Fatal(err)
		}
		q := p
		q.Lash = reading
		back, err := LashFromDial(q)
		if err != nil || math.Abs(back-p.Lash) > 1e-15 {
			rt.Errorf("%g read as %g means %g, %v", p.Lash, reading, back, err)
		}
		if p.Setting == DialSquare && reading > p.Lash*p.DialRadius/p.LashRadius {
			rt.Errorf("a dial square to the tooth reads too much")
		}
	})
}

func TestLashRefuses(t *testing.T) {
	cones := hypoidExample(t)
	good := LashChangeParams{Cones: cones, DrivePressureAngle: 18 * degree, CoastPressureAngle: 25 * degree}
	var r *check.RangeError
	for param, change := range map[string]func(*LashChangeParams){
		"DrivePressureAngle":    func(p *LashChangeParams) { p.DrivePressureAngle = 20 },
		"CoastPressureAngle":    func(p *LashChangeParams) { p.CoastPressureAngle = 0 },
		"Shift.WheelAway":       func(p *LashChangeParams) { p.Shift.WheelAway = 0.1 },
		"Shift.PinionAway":      func(p *LashChangeParams) { p.Shift.PinionAway = math.NaN() },
		"Shift.OffsetGrowth":    func(p *LashChangeParams) { p.Shift.OffsetGrowth = 1 },
		"Shift.AngleOpening":    func(p *LashChangeParams) { p.Shift.AngleOpening = 0.1 },
		"Shift.WheelTowardMesh": func(p *LashChangeParams) { p.Shift.WheelTowardMesh = 1 },
		"Offset":                func(p *LashChangeParams) { p.Cones.Offset = 0 },
	} {
		p := good
		change(&p)
		if _, err := LashChange(p); !errors.As(err, &r) || r.Param != param {
			t.Errorf("%s: got %v", param, err)
		}
	}
	for param, p := range map[string]DialLashParams{
		"Setting":       {Lash: 1e-4, LashRadius: 0.1, DialRadius: 0.1},
		"DialRadius":    {Lash: 1e-4, LashRadius: 0.1, Setting: DialTangential},
		"PressureAngle": {Lash: 1e-4, LashRadius: 0.1, DialRadius: 0.1, Setting: DialSquare},
	} {
		if _, err := DialReading(p); !errors.As(err, &r) || r.Param != param {
			t.Errorf("%s: got %v", param, err)
		}
		if _, err := LashFromDial(p); !errors.As(err, &r) || r.Param != param {
			t.Errorf("%s, turned round: got %v", param, err)
		}
	}
	if _, err := WheelShiftForLash(WheelShiftParams{Cones: cones, DrivePressureAngle: 0.3, CoastPressureAngle: 0.4, LashGrowth: 0.1, Radius: 0.1}); !errors.As(err, &r) || r.Param != "LashGrowth" {
		t.Errorf("far too much lash: got %v", err)
	}
}
