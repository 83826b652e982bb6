package traction

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"

	"pgregory.net/rapid"
)

func TestDifferentialWithOneWheelHanging(t *testing.T) {
	p := DifferentialParams{PoorLoad: 0, PoorFriction: 0.8, GoodLoad: 14e3, GoodFriction: 0.8, LoadedRadius: 0.4, BiasRatio: 3, Preload: 90}
	grip := 0.8 * 14e3 * 0.4
	for _, c := range []struct {
		centre      Centre
		axle, share float64
	}{
		{Open, 0, 0},
		{LimitedSlip, 90, 1}, // the bias of nothing is nothing; the preload is left
		{Locked, grip, 1},
	} {
		p.Centre = c.centre
		r, err := DifferentialTorque(p)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(r.Axle-c.axle) > 1e-9 || r.GoodShare != c.share || r.PoorShaft != 0 {
			t.Errorf("%s: %+v, want %g N·m", c.centre, r, c.axle)
		}
	}
}

func TestDifferentialsStandInOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := DifferentialParams{
			PoorLoad: 8e3, PoorFriction: rapid.Float64Range(0, 0.7).Draw(t, "µ1"),
			GoodLoad: 8e3, GoodFriction: 0.7, LoadedRadius: 0.39,
			BiasRatio: rapid.Float64Range(1, 6).Draw(t, "bias"),
		}
		torque := map[Centre]DifferentialResult{}
		for _, centre := range []Centre{Open, LimitedSlip, Locked} {
			p.Centre = centre
			r, err := DifferentialTorque(p)
			if err != nil {
				t.Fatal(err)
			}
			torque[centre] = r
		}
		open, limited, locked := torque[Open], torque[LimitedSlip], torque[Locked]
		if !(open.Axle <= limited.Axle && limited.Axle <= locked.Axle) {
			t.Errorf("open %g, limited %g, locked %g", open.Axle, limited.Axle, locked.Axle)
		}
		if poor := 2 * p.PoorFriction * 8e3 * 0.39; math.Abs(open.Axle-poor) > 1e-9 {
			t.Errorf("open carries %g, twice the poorer wheel is %g", open.Axle, poor)
		}
		all, _ := GripLimitedTorque(1, (p.PoorFriction+0.7)*8e3, 0.39)
		if math.Abs(locked.Axle-all) > 1e-9 {
			t.Errorf("locked carries %g, all grip is %g", locked.Axle, all)
		}
		p.Centre, p.BiasRatio = LimitedSlip, 1
		if r, _ := DifferentialTorque(p); math.Abs(r.Axle-open.Axle) > 1e-9 {
			t.Errorf("a bias ratio of 1 is open: %g and %g", r.Axle, open.Axle)
		}
	})
}

func TestLargestShare(t *testing.T) {
	for _, c := range []struct {
		p    ShareParams
		want float64
	}{
		{ShareParams{Open, 0.5, 0}, 0.5},
		{ShareParams{Open, 0.4, 0}, 0.4},
		{ShareParams{LimitedSlip, 0.5, 3}, 0.75},
		{ShareParams{LimitedSlip, 0.4, 1}, 0.4},
		{ShareParams{Locked, 0.5, 0}, 1},
	} {
		got, err := LargestShare(c.p)
		if err != nil || math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%+v: got %g, %v; want %g", c.p, got, err, c.want)
		}
	}
	// half a limited slip's torque and its share agree with the axle it belongs to
	r, _ := DifferentialTorque(DifferentialParams{Centre: LimitedSlip, PoorLoad: 1e3, PoorFriction: 0.2, GoodLoad: 9e3, GoodFriction: 0.9, LoadedRadius: 0.4, BiasRatio: 3})
	if math.Abs(r.GoodShare-0.75) > 1e-12 {
		t.Errorf("good shaft takes %g of the axle's torque, want 0.75", r.GoodShare)
	}
}

func TestDifferentialRefusals(t *testing.T) {
	var r *check.RangeError
	good := DifferentialParams{Centre: Open, PoorLoad: 1, PoorFriction: 1, GoodLoad: 2, GoodFriction: 1, LoadedRadius: 1}
	swapped := good
	swapped.PoorLoad = 3
	if _, err := DifferentialTorque(swapped); !errors.As(err, &r) || r.Param != "PoorLoad" {
		t.Errorf("poor wheel with more grip: got %v", err)
	}
	biasless := good
	biasless.Centre = LimitedSlip
	if _, err := DifferentialTorque(biasless); !errors.As(err, &r) || r.Param != "BiasRatio" {
		t.Errorf("limited slip without a bias ratio: got %v", err)
	}
	if _, err := LargestShare(ShareParams{"welded", 0.5, 0}); !errors.As(err, &r) || r.Param != "Centre" {
		t.Errorf("unknown kind: got %v", err)
	}
}
