package examples_test

import (
	"fmt"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"axlewright/axle"
	"axlewright/calc/gear"
	"axlewright/calc/traction"
	"axlewright/examples"
	"axlewright/internal/published"
)

// The files written out of the program are whole: every enquiry among them finds
// its catalogue and is accepted.
func TestWrittenOutTheExamplesStandAlone(t *testing.T) {
	folder := t.TempDir()
	if err := os.CopyFS(folder, examples.Files); err != nil {
		t.Fatal(err)
	}
	enquiries := 0
	err := fs.WalkDir(examples.Files, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(name, ".yaml") || strings.HasPrefix(name, "identify") {
			return err
		}
		path := filepath.Join(folder, filepath.FromSlash(name))
		if axle.IsEnquiry(path) {
			enquiries++
			_, _, err := axle.LoadEnquiry(path)
			return err
		}
		return nil
	})
	if err != nil {
		t.Error(err)
	}
	if enquiries < 15 {
		t.Errorf("only %d enquiries", enquiries)
	}
}

// No example file is left behind when the program is built.
func TestEveryExampleIsInTheProgram(t *testing.T) {
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || strings.HasSuffix(path, ".go") {
			return err
		}
		if _, err := fs.Stat(examples.Files, filepath.ToSlash(path)); err != nil {
			t.Errorf("%s is not built in: name its folder in examples.go", path)
		}
		return nil
	})
	if err != nil {
		t.Error(err)
	}
}

func load(t *testing.T, name string) (axle.Enquiry, axle.Catalogue) {
	t.Helper()
	e, c, err := axle.LoadEnquiry(name)
	if err != nil {
		t.Fatal(err)
	}
	return e, c
}

// What each example is there to show is in its data.
func TestExamplesShowWhatTheyAreFor(t *testing.T) {
	e, c := load(t, "enquiries/13-small-pinion.yaml")
	g, err := c.GearSet(e.Gears)
	if err != nil || g.PinionTeeth > 8 {
		t.Errorf("the small pinion has %d teeth", g.PinionTeeth)
	}
	d, err := e.Vehicle.Demand(&g, e.Mounting.Position)
	if err != nil || d.Governing < 9000 {
		t.Errorf("the huge demand is %g N·m", d.Governing)
	}
	e, _ = load(t, "enquiries/14-front-coast.yaml")
	if e.Mounting != (axle.Mounting{Position: axle.Front, Forward: gear.Coast}) {
		t.Errorf("the front axle is mounted %+v", e.Mounting)
	}
	e, c = load(t, "enquiries/12-towing.yaml")
	if !slices.Contains(e.Use, axle.Towing) || e.Duty != string(traction.Towing) {
		t.Errorf("towing is %v, duty %s", e.Use, e.Duty)
	}
	e, c = load(t, "enquiries/11-competition.yaml")
	builds, err := c.BuildsFor(&e)
	if err != nil || builds[0].Centre.Locking != axle.LimitedSlip || !slices.Contains(e.Use, axle.Competition) {
		t.Errorf("competition: %s, %v", builds[0].Centre.Locking, err)
	}
}

// Tooth thrust as multiples of the tooth load, for each example pair. The spiral
// bevel sets are those of the trade's table (20°, 35°), which was worked out from
// the textbook formula; hypoid sets push the wheel off harder on their coast flank.
func TestExampleGearsPushAsTheTradeKnows(t *testing.T) {
	c, err := axle.LoadCatalogue("tarnhow.yaml")
	if err != nil {
		t.Fatal(err)
	}
	printed := map[string][4]string{ // wheel drive, coast; pinion drive, coast (pulled in)
		"20-3.54": {"0.24", "0.62", "0.79", "-0.55"},
		"20-4.70": {"0.29", "0.58", "0.78", "-0.59"},
	}
	for name, ratio := range map[string]float64{"20-3.54": 3.54, "24-3.54": 3.54, "24-4.11": 4.11, "31-4.11": 4.11, "20-4.70": 4.7, "24-4.70": 4.7} {
		g, err := c.GearSet(name)
		if err != nil || math.Abs(g.Ratio()-ratio) > 0.005 {
			t.Errorf("%s has the ratio %g, %v", name, g.Ratio(), err)
		}
	}
	for _, g := range c.GearSets {
		cones, err := g.Cones()
		if err != nil {
			t.Errorf("%s: %v", g.Name, err)
			continue
		}
		var push [4]float64
		for i, flank := range []gear.Flank{gear.Drive, gear.Coast} {
			r, err := gear.MeshForces(gear.MeshParams{
				Cones: cones, WheelTorque: cones.WheelMeanRadius, Flank: flank, PinionHand: g.Hand,
				DrivePressureAngle: g.DriveAngle.Value, CoastPressureAngle: g.CoastAngle.Value,
			})
			if err != nil {
				t.Fatal(err)
			}
			push[i], push[2+i] = r.Wheel.AxialAway, r.Pinion.AxialAway
		}
		if push[1] < 1.7*push[0] || push[2] < 0 || push[3] > 0 {
			t.Errorf("%s pushes by %.2f", g.Name, push)
		}
		if m := cones.NormalModule * 1e3; m < 2.5 || m > 5 {
			t.Errorf("%s: a normal module of %.2f mm", g.Name, m)
		}
		list, there := printed[g.Name]
		if !there {
			continue
		}
		var rows []published.Row
		for i, text := range list {
			rows = append(rows, published.Row{
				Name: fmt.Sprint(g.Name, " thrust ", i), Got: push[i], Printed: text,
				Source: "table of tooth loads of the trade, worked out from its formula: common practice, no source",
			})
		}
		published.Check(t, rows)
	}
}
