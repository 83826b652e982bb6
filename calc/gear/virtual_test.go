package gear

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func virtual20by40(t testing.TB, edition Edition) VirtualGears {
	t.Helper()
	b := bevel20by40(t)
	cones, err := BevelPitchCones(20, 40, 35*degree, b.Wheel.MeanDiameter/2)
	cones = mustCones(t, cones, err)
	v, err := VirtualCylindricalGears(VirtualParams{Cones: cones, PinionAddend: b.Pinion.MeanAddendum, WheelAddend: b.Wheel.MeanAddendum,
		FaceWidth: 20e-3, PressureAngle: 20 * degree, Edition: edition})
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func TestContactRatiosDerived(t *testing.T) {
	const source = "derived from the virtual cylindrical gears of ISO 10300-1:2001, apart from this code"
	v := virtual20by40(t, ISO10300of2001)
	published.Check(t, []published.Row{
		{Name: "ε_vα", Got: v.ProfileOverlap, Printed: "1.23528", Source: source},
		{Name: "ε_vβ", Got: v.FaceOverlap, Printed: "1.74619", Source: source},
		{Name: "sum", Got: v.TotalOverlap, Printed: "2.98147", Source: source},
	})
	if got := virtual20by40(t, ISO10300of2014).FaceOverlap / v.FaceOverlap; math.Abs(got-0.85) > 1e-12 {
		t.Errorf("the 2014 edition counts %.3f of the face; a pattern of 0.85 was left to it", got)
	}
}

func TestVirtualTeethPublished(t *testing.T) {
	// The virtual spur gear of straight teeth: z/cos δ.
	z := 20.0
	delta1 := 29.05 * degree
	z2 := z / math.Tan(delta1)
	cones, err := BevelPitchCones(20, 36, 0, 0.1)
	cones = mustCones(t, cones, err)
	v, err := VirtualCylindricalGears(VirtualParams{Cones: cones, PinionAddend: cones.NormalModule, WheelAddend: cones.NormalModule,
		FaceWidth: 30e-3, PressureAngle: 20 * degree, Edition: ISO10300of2001})
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(z2-36) > 0.05 {
		t.Fatalf("the printed angle belongs to %.2f wheel teeth", z2)
	}
	published.Check(t, []published.Row{{Name: "virtual teeth, 20/36", Got: v.PinionTeeth, Printed: "22.88",
		Source: "Jindal, Machine Design (2010), example 27-2"}})
}

// The virtual gears of a hypoid pair turn into those of the bevel pair as the
// offset goes, if the addenda are kept.
func TestVirtualGearsOfAVanishingOffset(t *testing.T) {
	of := func(offset float64) VirtualGears {
		c, err := HypoidPitchCones(HypoidConesParams{PinionTeeth: 10, WheelTeeth: 41, Offset: offset, WheelSpiral: 35 * degree, WheelMeanRadius: 0.093, Condition: ApexAtCrossing})
		c = mustCones(t, c, err)
		v, err := VirtualCylindricalGears(VirtualParams{Cones: c, PinionAddend: 5e-3, WheelAddend: 1.5e-3, FaceWidth: 36e-3, PressureAngle: 20 * degree, Edition: ISO10300of2014})
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	bevel, nearly := of(0), of(1e-9)
	for what, pair := range map[string][2]float64{
		"profile overlap": {bevel.ProfileOverlap, nearly.ProfileOverlap},
		"face overlap":    {bevel.FaceOverlap, nearly.FaceOverlap},
		"active face":     {bevel.ActiveFace, nearly.ActiveFace},
		"slant":           {bevel.Slant, nearly.Slant},
	} {
		if math.Abs(pair[0]-pair[1]) > 1e-6 {
			t.Errorf("%s: %g and %g", what, pair[0], pair[1])
		}
	}
	if math.Abs(bevel.ActiveFace-0.85*36e-3) > 1e-12 || bevel.Slant != 0 {
		t.Errorf("bevel pair: active face %g, slant %g", bevel.ActiveFace, bevel.Slant)
	}
}

// The lines of contact, added up over all positions of the mesh, cover the zone
// once for each base pitch: a line's length integrated over f is the zone's area.
func TestLinesOfContactCoverTheZone(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		base := rapid.Float64Range(0, 45).Draw(rt, "base helix") * degree
		z := VirtualGears{
			Path: rapid.Float64Range(5e-3, 25e-3).Draw(rt, "path"), ActiveFace: rapid.Float64Range(10e-3, 50e-3).Draw(rt, "face"),
			BaseHelix: base, BasePitch: 15e-3,
			Slant: rapid.Float64Range(0, 12).Draw(rt, "slant") * degree,
		}
		z.Face = z.ActiveFace // a full pattern, so that nothing is taken off the ends
		zone := z.zone()
		const n = 4000
		step := 2 * zone.farthest / n
		sum := 0.0
		for i := range n {
			sum += zone.length(-zone.farthest+(float64(i)+0.5)*step) * step
		}
		if area := z.Path * z.ActiveFace; math.Abs(sum/area-1) > 2e-3 {
			rt.Errorf("lines cover %.6f of the zone", sum/area)
		}
	})
}

func TestLoadShareOfTheMiddleLine(t *testing.T) {
	// Straight teeth: one pair alone carries the load in the middle of the path.
	if got := (VirtualGears{Path: 14e-3, ActiveFace: 30e-3, Face: 35e-3, BasePitch: 10e-3, ProfileOverlap: 1.4}).zone().middleShare(1.5); got != 1 {
		t.Errorf("straight teeth: the middle line carries %g of the load, want all", got)
	}
	v := virtual20by40(t, ISO10300of2014)
	if got := v.zone().middleShare(1.5); got <= 1/v.TotalOverlap || got >= 1 {
		t.Errorf("spiral teeth: the middle line carries %g; it should be above an even share of %g", got, 1/v.TotalOverlap)
	}
}

func TestVirtualGearsRefuse(t *testing.T) {
	good := VirtualParams{Cones: hypoidExample(t), PinionAddend: 5.5e-3, WheelAddend: 1.5e-3, FaceWidth: 30e-3, PressureAngle: 20 * degree, Edition: ISO10300of2014}
	if _, err := VirtualCylindricalGears(good); err != nil {
		t.Fatal(err)
	}
	for param, change := range map[string]func(*VirtualParams){
		"Edition":        func(p *VirtualParams) { p.Edition = "" },
		"Cones.Offset":   func(p *VirtualParams) { p.Edition = ISO10300of2001 },
		"PinionAddend":   func(p *VirtualParams) { p.PinionAddend = 0 },
		"FaceWidth":      func(p *VirtualParams) { p.FaceWidth = 40e-3 },
		"PatternShare":   func(p *VirtualParams) { p.PatternShare = 1.2 },
		"PressureAngle":  func(p *VirtualParams) { p.PressureAngle = 20 },
		"ProfileOverlap": func(p *VirtualParams) { p.PinionAddend, p.WheelAddend = 1e-3, 1e-3 },
		"TotalOverlap":   func(p *VirtualParams) { p.FaceWidth, p.WheelAddend, p.PinionAddend = 5e-3, 1e-3, 3.6e-3 },
		"ActiveFace":     func(p *VirtualParams) { p.FaceWidth = 0.5e-3 },
	} {
		p := good
		change(&p)
		var r *check.RangeError
		if _, err := VirtualCylindricalGears(p); !errors.As(err, &r) || r.Param != param {
			t.Errorf("%s: got %v", param, err)
		}
	}
}
