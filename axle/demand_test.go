package axle

import (
	"math"
	"testing"

	"axlewright/calc/traction"
	"axlewright/internal/published"
)

// The five enquiries of the trade's sheet of samples, with the limits and the
// demand index as printed there. The sheet takes 9.81 m/s² and rounds the axle
// ratios to 3.54 and 4.11.
func TestLimitsOfTheSampleEnquiries(t *testing.T) {
	const source = "sheet of sample enquiries: common practice, no source"
	rounded := "the sheet rounds the axle ratio and takes g as 9.81"
	var rows []published.Row
	row := func(name string, got float64, printed string, within float64, why string) {
		rows = append(rows, published.Row{Name: name, Got: got, Printed: printed, Source: source, Within: within, Why: why})
	}
	for _, c := range []struct {
		file, engine, grip, index string
		gripWithin                float64
		why                       string
	}{
		{"01-hill-farm", "7191", "3872", "1.45", 0.0006, rounded},
		{"03-overland", "13580", "6043", "2.26", 0.0006, rounded},
		// The name of a 7.50R16 does not say how high it is: the sheet has 808 mm, we take 803 mm.
		{"05-restorer", "5152", "2945", "1.10", 0.008, "the size does not say how high the tyre is"},
		{"06-operator", "15234", "6679", "2.50", 0.0006, rounded},
		{"09-quarry", "16516", "6750", "2.52", 0.0006, rounded},
	} {
		e, c2, err := LoadEnquiry("../examples/enquiries/" + c.file + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		g, err := c2.GearSet(e.Gears)
		if err != nil {
			t.Fatal(err)
		}
		d, err := e.Vehicle.Demand(&g, e.Mounting.Position)
		if err != nil || d.Governs != traction.Grip || d.Governing != d.Grip {
			t.Fatalf("%s: %+v, %v; grip governs all of the samples", c.file, d, err)
		}
		standard, err := e.Standard.Demand(&g, e.Mounting.Position)
		if err != nil {
			t.Fatal(err)
		}
		index, err := traction.DemandIndex(traction.IndexParams{Demand: d.Governing, Standard: standard.Governing})
		if err != nil {
			t.Fatal(err)
		}
		row(c.file+" engine", d.Engine, c.engine, 0.0006, rounded)
		row(c.file+" grip", d.Grip, c.grip, c.gripWithin, c.why)
		row(c.file+" standard grip", standard.Grip, "2674", 0.0006, rounded)
		row(c.file+" index", index, c.index, 0.008, "of rounded torques")
	}
	published.Check(t, rows)
}

// Weight leaves the front axle and comes to the rear on a climb, as much as leaves.
func TestWeightMovesOnAClimb(t *testing.T) {
	figure := func(x float64) Number { return Number{Value: x, Low: x, High: x, Origin: Measured} }
	v := Vehicle{}
	v.AxleLoad.Number = figure(1200)
	if v.AxleForce(Rear) != 1200*standardGravity {
		t.Error("on the level an axle carries its load")
	}
	v.Laden.Number, v.Wheelbase.Number, v.CentreOfMass.Number = figure(2400), figure(2.5), figure(0.8)
	v.Grade.Number = figure(0.3)
	sum := v.AxleForce(Rear) + v.AxleForce(Front)
	if want := 2400 * standardGravity * math.Cos(0.3); math.Abs(sum-want) > 1e-9*want {
		t.Errorf("both axles carry %g N, want %g", sum, want)
	}
	loads, err := traction.AxleLoads(traction.AxleLoadParams{
		Weight: 2400 * standardGravity, Wheelbase: 2.5, FrontToCentre: 1.25, Height: 0.8, Grade: math.Tan(0.3),
	})
	if err != nil || math.Abs(loads.Rear-v.AxleForce(Rear)) > 1e-9*loads.Rear || math.Abs(loads.Front-v.AxleForce(Front)) > 1e-9*loads.Front {
		t.Errorf("%+v, %v; we have %g in front and %g behind", loads, err, v.AxleForce(Front), v.AxleForce(Rear))
	}
	v.Grade.Number = figure(1.5)
	if v.AxleForce(Front) != 0 {
		t.Error("a front axle in the air carries nothing, not less")
	}
}
