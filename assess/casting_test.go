package assess

import (
	"math"
	"slices"
	"testing"

	"axlewright/axle"
	"axlewright/calc/gear"
	"axlewright/loadpath"
)

func loadMeasured(t *testing.T) (axle.Enquiry, axle.Catalogue) {
	t.Helper()
	e, c, err := axle.LoadEnquiry("../examples/matrix/t24-bench.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return e, c
}

// The catalogue's words for the freedoms stand in the load path's order.
func TestFreedomsInTheOrderOfTheLoadPath(t *testing.T) {
	want := map[int]axle.Freedom{
		loadpath.HeadAxial: "head x", loadpath.HeadRadial1: "head y", loadpath.HeadRadial2: "head z", loadpath.HeadTurn1: "head turn y", loadpath.HeadTurn2: "head turn z",
		loadpath.TailAxial: "tail x", loadpath.TailRadial1: "tail y", loadpath.TailRadial2: "tail z", loadpath.TailTurn1: "tail turn y", loadpath.TailTurn2: "tail turn z",
		loadpath.NearAxial: "near y", loadpath.NearRadial1: "near z", loadpath.NearRadial2: "near x", loadpath.NearTurn1: "near turn z", loadpath.NearTurn2: "near turn x",
		loadpath.FarAxial: "far y", loadpath.FarRadial1: "far z", loadpath.FarRadial2: "far x", loadpath.FarTurn1: "far turn z", loadpath.FarTurn2: "far turn x",
		loadpath.PegFoot: "peg y",
	}
	if len(axle.Freedoms) != loadpath.CastingFreedoms || len(want) != loadpath.CastingFreedoms {
		t.Fatalf("%d freedoms", len(axle.Freedoms))
	}
	for i, f := range want {
		if axle.Freedoms[i] != f {
			t.Errorf("%d is %q in the catalogue and %q in the load path", i, axle.Freedoms[i], f)
		}
	}
}

// A matrix that says of each freedom what the seats say changes nothing.
func TestMatrixThatRepeatsTheSeats(t *testing.T) {
	e, c := loadMeasured(t)
	k := &c.Castings[slices.IndexFunc(c.Castings, func(k axle.Casting) bool { return k.Name == e.Casting })]
	k.Compliance = nil
	solve := func(flank axle.Flank) LoadCase {
		builds, err := c.BuildsFor(&e)
		if err != nil {
			t.Fatal(err)
		}
		x, err := SolveLoad(&e, &c, builds[0], flank, 5000)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	var seats [2]LoadCase
	for f, flank := range flanks {
		seats[f] = solve(flank)
	}
	const perMicron, perMicroRad = 1e9, 1e9 // µm/kN and µrad/(kN·m)
	own := map[axle.Freedom]float64{
		"near y": perMicron / k.Seats.Side.Axial.Value, "far x": perMicron / k.Seats.Side.Inward.Value, "near z": perMicron / k.Seats.Side.Across.Value,
		"tail x": perMicron / k.Seats.Tail.Axial.Value, "head z": perMicron / k.Seats.Head.Radial.Value,
		"head turn y": perMicroRad / k.Seats.Head.Tilt.Value, "far turn x": perMicroRad / k.Seats.Side.Tilt.Value,
		"peg y": perMicron / k.PegWall.Value,
	}
	k.Compliance = &axle.Compliance{Units: axle.ComplianceUnits{Shift: "µm", Force: "kN", Turn: "µrad", Moment: "kN·m"}}
	for f := range own {
		k.Compliance.Freedoms = append(k.Compliance.Freedoms, f)
	}
	for i, f := range k.Compliance.Freedoms {
		row := make([]axle.Entry, len(own))
		row[i] = axle.Entry(own[f])
		k.Compliance.Rows = append(k.Compliance.Rows, row)
	}
	if k.Compliance.Couples() {
		t.Error("couples without a cross term")
	}
	for f, flank := range flanks {
		was, is := seats[f], solve(flank)
		for _, x := range [][2]float64{
			{was.Mesh.WheelAxial, is.Mesh.WheelAxial}, {was.Mesh.PinionAxial, is.Mesh.PinionAxial}, {was.Mesh.Offset, is.Mesh.Offset},
			{was.Mesh.ShaftAngle, is.Mesh.ShaftAngle}, {was.Peg.Load, is.Peg.Load}, {was.Bearings["near"].Axial, is.Bearings["near"].Axial},
		} {
			if math.Abs(x[0]-x[1]) > 1e-6*math.Abs(x[0]) {
				t.Errorf("%s: %g by the seats, %g by the matrix", flank, x[0], x[1])
			}
		}
	}
}

// Where the casting couples pinion and wheel the peg does move the pinion, and
// an assessment solves every pinion with its own wheel.
func TestCoupledCastingIsSolvedWhole(t *testing.T) {
	e, c := loadMeasured(t)
	builds, err := c.BuildsFor(&e)
	if err != nil {
		t.Fatal(err)
	}
	with, err := SolveLoad(&e, &c, builds[0], gear.Coast, 5000)
	if err != nil {
		t.Fatal(err)
	}
	bare := builds[0]
	bare.Peg = nil
	without, err := SolveLoad(&e, &c, bare, gear.Coast, 5000)
	if err != nil {
		t.Fatal(err)
	}
	if with.Peg.Load == 0 || math.Abs(with.Mesh.PinionAxial-without.Mesh.PinionAxial) < 1e-7 {
		t.Errorf("the peg carries %g N; the pinion moves %g m with and %g m without it", with.Peg.Load, with.Mesh.PinionAxial, without.Mesh.PinionAxial)
	}

	e.Fitted = nil // so that builds with and without a peg are drawn
	s, err := newStudy(&e, &c, Options{Draws: fewestDraws})
	if err != nil {
		t.Fatal(err)
	}
	if _, known := s.figureAt["Casting.Compliance.Scale"]; !known {
		t.Error("the scale of the matrix is not drawn")
	}
	w := s.newWorker()
	if err := w.draw(7); err != nil {
		t.Fatal(err)
	}
	for b := range s.builds {
		drawn := w.builds[s.wheels.reps[s.wheels.of[b]]].Drawn
		alone, err := nominalPaths(&drawn, s.plates[s.wheels.of[b]], s.highest)
		if err != nil {
			t.Fatal(err)
		}
		for f := range flanks {
			got, want := w.solver.pinions[s.pinions.of[b]][f].rows, alone.pinion[f].rows
			for i := range got {
				if math.Abs(got[i][pinionX]-want[i][pinionX]) > 1e-6*(1e-6+math.Abs(want[i][pinionX])) {
					t.Fatalf("build %q: pinion at %g m, alone %g m", buildName(s.builds[b]), got[i][pinionX], want[i][pinionX])
				}
			}
		}
	}
}
