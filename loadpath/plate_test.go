package loadpath

import (
	"math"
	"testing"

	"axlewright/calc/ring"
	"axlewright/internal/published"
)

var sampleWheel = ring.CrownWheelParams{
	ClampRadius: 0.05, Bore: 0.068, FlangeRadius: 0.09, OuterRadius: 0.111, FlangeThickness: 0.014, WheelThickness: 0.024, FlangeBehind: 0.008,
	Bond: 0.5, WheelModulus: 200e9, Poisson: 0.3,
}

var samplePlaces = PlatePlaces{MeshRadius: 0.093, MeshSpread: 0.17, PegRadius: 0.101, PegAngle: -8 * degree, PadRadius: 0.011, DialRadius: 0.103}

func TestPlateScalesWithItsModulus(t *testing.T) {
	p, err := NewPlate(sampleWheel, samplePlaces)
	if err != nil {
		t.Fatal(err)
	}
	soft := sampleWheel
	soft.WheelModulus = 110e9
	want, err := NewPlate(soft, samplePlaces)
	if err != nil {
		t.Fatal(err)
	}
	got := p.Scaled(110e9)
	for i := range got.Compliance {
		for j := range got.Compliance[i] {
			if d := math.Abs(got.Compliance[i][j] - want.Compliance[i][j]); d > 1e-9*math.Sqrt(want.Compliance[i][i]*want.Compliance[j][j]) {
				t.Errorf("%d,%d: scaled %g, solved %g", i, j, got.Compliance[i][j], want.Compliance[i][j])
			}
		}
	}
}

func TestPlateTableAgreesWithThePlateOfTheBond(t *testing.T) {
	table, err := NewPlateTable(sampleWheel, samplePlaces)
	if err != nil {
		t.Fatal(err)
	}
	for _, bond := range []float64{0, 0.2, 0.57, 1} {
		w := sampleWheel
		w.Bond = bond
		want, err := NewPlate(w, samplePlaces)
		if err != nil {
			t.Fatal(err)
		}
		got, err := table.At(bond, w.WheelModulus)
		if err != nil {
			t.Fatal(err)
		}
		for i := range got.Compliance {
			for j := range got.Compliance[i] {
				if d := math.Abs(got.Compliance[i][j] - want.Compliance[i][j]); d > 1e-9*math.Sqrt(want.Compliance[i][i]*want.Compliance[j][j]) {
					t.Errorf("bond %g, %d,%d: table %g, solved %g", bond, i, j, got.Compliance[i][j], want.Compliance[i][j])
				}
			}
		}
	}
	if _, err := table.At(1.01, 200e9); err == nil {
		t.Error("a bond beyond solid")
	}
}

// A cap towards which the bearing is drawn: arch, then two joints side by side.
func TestCapIsArchAndJointsInSeries(t *testing.T) {
	stock, strong := referenceCap(t, "A"), referenceCap(t, "C")
	for _, k := range []CapStiffness{stock, strong} {
		if got, want := 1/k.Total, 1/k.Arch+1/k.Joint; math.Abs(got/want-1) > 1e-12 {
			t.Errorf("%+v does not add up", k)
		}
		if !(k.Open < k.Total) {
			t.Errorf("an open joint is no softer: %+v", k)
		}
	}
	if !(strong.Arch > stock.Arch && strong.Total > stock.Total) {
		t.Errorf("an overlay does not stiffen the cap: %+v, %+v", stock, strong)
	}
}

// VDI 2230 names the share of an outside load that the bolt feels
// Φ = n·δ_P/(δ_P + δ_S); the joint's give under the load follows from the same
// two springs: δ = n·δ_P·(1 − Φ).
func TestClosedJointAgreesWithTheLoadFactor(t *testing.T) {
	const n, bolt, parts = 0.7, 4e-9, 1.5e-9
	between, outside := n*parts, bolt+(1-n)*parts
	give := between * outside / (between + outside)
	phi := n * parts / (parts + bolt)
	published.Check(t, []published.Row{{
		Name: "give of a closed joint over n·δ_P·(1 − Φ)", Got: give / (n * parts * (1 - phi)), Printed: "1.000000",
		Source: "VDI 2230-1:2015, load factor with load introduction n (from memory)",
	}})
}

func TestPegIsSpringsInSeries(t *testing.T) {
	b := PegBuild{ScrewArea: 300e-6, ScrewLength: 0.04, ScrewModulus: 200e9, Thread: 1.5e9, Wall: 0.35e9}
	k, err := b.Stiffness()
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{{
		Name: "1.5, 1.5 and 0.35 GN/m in series, GN/m", Got: k / 1e9, Printed: "0.2386",
		Source: "springs in series, worked by hand: 1/(1/1.5 + 1/1.5 + 1/0.35)",
	}})
	b.Plates, b.Plate = 1, ring.PatchPlateParams{
		Length: 0.095, Width: 0.065, Thickness: 0.01, Modulus: 206e9, Poisson: 0.3,
		Left: ring.Clamped, Right: ring.Clamped, Near: ring.Clamped, Far: ring.Clamped,
		PatchX: 0.0475, PatchY: 0.0325, PatchA: 0.02, PatchB: 0.02,
	}
	one, err := b.Stiffness()
	if err != nil {
		t.Fatal(err)
	}
	b.Plates = 2
	two, err := b.Stiffness()
	if err != nil {
		t.Fatal(err)
	}
	if !(one < two && two < k) || math.Abs((1/one-1/k)/(1/two-1/k)-2) > 1e-9 {
		t.Errorf("no plate %g, one %g, two %g N/m", k, one, two)
	}
	b.ScrewArea = 0
	if _, err := b.Stiffness(); err == nil {
		t.Error("a screw without metal")
	}
}
