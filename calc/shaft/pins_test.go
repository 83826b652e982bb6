package shaft

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

func pins() CentrePinParams {
	return CentrePinParams{Torque: 6000, Diameter: 0.019, Ends: 2, Radius: 0.042, Unevenness: 1, Wall: 0.012, ShearLimit: 400e6, BearingYield: 500e6}
}

func TestCentrePinsPublished(t *testing.T) {
	r, err := CentrePins(pins())
	if err != nil {
		t.Fatal(err)
	}
	const source = "derived: moments about the wheel's axis, 6000 N·m on two ends at 42 mm, pin of 19 mm"
	published.Check(t, []published.Row{
		{Name: "force on an end, kN", Got: r.Force * 1e-3, Printed: "71.43", Source: source},
		{Name: "mean shear stress, MPa", Got: r.Stress * 1e-6, Printed: "251.9", Source: source},
		{Name: "bearing pressure, MPa", Got: r.Pressure * 1e-6, Printed: "313.3", Source: source},
	})
}

// At its limiting torque a pin stands at its limit; four even ends carry twice
// what two do; unevenness takes it back.
func TestCentrePinsLimit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := pins()
		p.Ends = rapid.IntRange(2, 4).Draw(t, "ends")
		p.Unevenness = rapid.Float64Range(1, 2).Draw(t, "K")
		p.Torque = rapid.Float64Range(0, 2e4).Draw(t, "torque")
		r, err := CentrePins(p)
		if err != nil {
			t.Fatal(err)
		}
		p.Torque = r.ShearTorque
		at, err := CentrePins(p)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(at.Stress-p.ShearLimit) > 1e-9*p.ShearLimit {
			t.Errorf("at its limit the stress is %g", at.Stress)
		}
		two := pins()
		base, err := CentrePins(two)
		if err != nil {
			t.Fatal(err)
		}
		want := base.ShearTorque * float64(p.Ends) / 2 / p.Unevenness
		if math.Abs(r.ShearTorque-want) > 1e-9*want || math.Abs(r.BearingTorque/base.BearingTorque-r.ShearTorque/base.ShearTorque) > 1e-9 {
			t.Errorf("%d ends, K %g: %g, want %g", p.Ends, p.Unevenness, r.ShearTorque, want)
		}
	})
}

func cross() CrossJointParams {
	return CrossJointParams{Arm: 0.030, Root: 0.008, Diameter: 0.016, Bore: 0.004, Yield: 900e6, StaticLoad: 22e3}
}

// The trunnion as a cantilever, by hand.
func TestCrossJointTorque(t *testing.T) {
	r, err := CrossJointTorque(cross())
	if err != nil {
		t.Fatal(err)
	}
	const source = "derived: trunnions as cantilevers of 8 mm, two forces 60 mm apart"
	published.Check(t, []published.Row{
		{Name: "bending, N·m", Got: r.Bending, Printed: "2704", Source: source},
		{Name: "bearing, N·m", Got: r.Bearing, Printed: "1320", Source: source},
	})
	if r.Least != min(r.Bending, r.Shear, r.Bearing) {
		t.Errorf("least is %g of %+v", r.Least, r)
	}
	// In shear alone the neutral axis stands at R_e/√3.
	p := cross()
	p.Bore = 0
	solid, err := CrossJointTorque(p)
	if err != nil {
		t.Fatal(err)
	}
	force := solid.Shear / (2 * p.Arm)
	near(t, "4/3 of the mean", 4.0/3*force/(math.Pi/4*p.Diameter*p.Diameter), p.Yield/math.Sqrt(3), 1e-12)
	p.Angle = math.Pi / 6
	leant, err := CrossJointTorque(p)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "at 30 degrees", leant.Least, solid.Least*math.Sqrt(3)/2, 1e-12)
}

func TestPinsRefuse(t *testing.T) {
	p := pins()
	p.Ends = 5
	var r *check.RangeError
	if _, err := CentrePins(p); !errors.As(err, &r) || r.Param != "Ends" {
		t.Errorf("got %v, want a range error on Ends", err)
	}
	p = pins()
	p.Unevenness = 0.5
	if _, err := CentrePins(p); !errors.As(err, &r) || r.Param != "Unevenness" {
		t.Errorf("got %v, want a range error on Unevenness", err)
	}
	c := cross()
	c.Angle = 1
	if _, err := CrossJointTorque(c); !errors.As(err, &r) || r.Param != "Angle" {
		t.Errorf("got %v, want a range error on Angle", err)
	}
}
