package ring

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"axlewright/calc/check"
)

// An invented wheel of 222 mm on a flange of 180 mm.
func wheel() CrownWheelParams {
	return CrownWheelParams{
		ClampRadius: 0.050, Bore: 0.068, FlangeRadius: 0.090, OuterRadius: 0.111,
		FlangeThickness: 0.014, WheelThickness: 0.024, FlangeBehind: 0.019, Bond: 0.5,
		WheelModulus: 200e9, Poisson: 0.3,
	}
}

func crownWheel(t testing.TB, p CrownWheelParams) *Plate {
	t.Helper()
	plate, err := CrownWheel(p)
	if err != nil {
		t.Fatal(err)
	}
	return plate
}

var (
	atMesh = Point{Radius: 0.093, Direction: Axial, Spread: 0.17}
	atPeg  = Point{Radius: 0.101, Angle: -8 * math.Pi / 180, Direction: Axial, Spread: 0.1}
)

func TestHarmonicsConverge(t *testing.T) {
	p := wheel()
	p.Harmonics = 80
	want := compliance(t, crownWheel(t, p), atMesh, atPeg)
	for _, c := range []struct {
		n      int
		within float64
	}{{8, 0.017}, {12, 0.007}, {24, 0.001}} {
		p.Harmonics = c.n
		got := compliance(t, crownWheel(t, p), atMesh, atPeg)
		near(t, "mesh to mesh", got.At(0, 0), want.At(0, 0), c.within)
		near(t, "mesh to peg", got.At(0, 1), want.At(0, 1), c.within)
		near(t, "peg to peg", got.At(1, 1), want.At(1, 1), c.within)
	}
}

func TestMovementIsReciprocal(t *testing.T) {
	p := crownWheel(t, wheel())
	move := func(l Load, r, angle float64) Movement {
		m, err := p.Movement(l, r, angle)
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	const ra, rb, turn = 0.093, 0.101, 0.4
	near(t, "force and deflection",
		move(Load{Radius: ra, Force: 1}, rb, turn).Deflection,
		move(Load{Radius: rb, Angle: turn, Force: 1}, ra, 0).Deflection, 1e-9)
	near(t, "force and radial slope",
		move(Load{Radius: ra, Force: 1}, rb, turn).RadialSlope,
		move(Load{Radius: rb, Angle: turn, RadialMoment: 1}, ra, 0).Deflection, 1e-9)
	near(t, "force and tangential slope",
		move(Load{Radius: ra, Force: 1}, rb, turn).TangentialSlope,
		move(Load{Radius: rb, Angle: turn, TangentialMoment: 1}, ra, 0).Deflection, 1e-9)
	near(t, "radial moment and tangential slope",
		move(Load{Radius: ra, RadialMoment: 1}, rb, turn).TangentialSlope,
		move(Load{Radius: rb, Angle: turn, TangentialMoment: 1}, ra, 0).RadialSlope, 1e-9)
}

func TestMovementSuperposes(t *testing.T) {
	p := crownWheel(t, wheel())
	read := func(l Load) float64 {
		l.Radius, l.Angle, l.Spread = 0.093, 0.1, 0.17
		m, err := p.Movement(l, 0.103, -0.3)
		if err != nil {
			t.Fatal(err)
		}
		return m.Deflection
	}
	whole := read(Load{Force: 9e3, RadialMoment: -50, TangentialMoment: 120})
	parts := read(Load{Force: 9e3}) + read(Load{RadialMoment: -50}) + read(Load{TangentialMoment: 120})
	near(t, "sum of parts", whole, parts, 1e-12)
}

// A positive tangential moment lifts the side that lies ahead of it.
func TestSlopesAreThoseOfTheDeflection(t *testing.T) {
	p := wheel()
	for _, t := range []*float64{&p.FlangeThickness, &p.WheelThickness} {
		*t /= 40 // thin enough that shear no longer separates slope and deflection
	}
	plate := crownWheel(t, p)
	load := Load{Radius: 0.093, Force: 1, RadialMoment: 0.01, TangentialMoment: 0.02, Spread: 0.3}
	at := func(r, angle float64) Movement {
		m, err := plate.Movement(load, r, angle)
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	const r, angle, step = 0.1, 0.5, 1e-4
	near(t, "radial slope", at(r, angle).RadialSlope,
		(at(r+step*r, angle).Deflection-at(r-step*r, angle).Deflection)/(2*step*r), 0.01)
	near(t, "tangential slope", at(r, angle).TangentialSlope,
		(at(r, angle+step).Deflection-at(r, angle-step).Deflection)/(2*step*r), 0.01)
	lift := compliance(t, plate, Point{Radius: 0.093, Direction: Tangential}, Point{Radius: 0.093, Angle: 0.3, Direction: Axial})
	if lift.At(0, 1) <= 0 {
		t.Errorf("a positive tangential moment pushes the wheel down ahead of it: %g", lift.At(0, 1))
	}
}

func TestMovementFallsAsTheWheelStiffens(t *testing.T) {
	base := wheel()
	at := func(change func(*CrownWheelParams)) float64 {
		p := base
		change(&p)
		return compliance(t, crownWheel(t, p), atMesh).At(0, 0)
	}
	stock := at(func(*CrownWheelParams) {})
	near(t, "twice the modulus", at(func(p *CrownWheelParams) { p.WheelModulus *= 2 }), stock/2, 1e-9)
	near(t, "the flange's own modulus, the same", at(func(p *CrownWheelParams) { p.FlangeModulus = p.WheelModulus }), stock, 1e-12)
	softer := map[string]func(*CrownWheelParams){
		"iron flange":  func(p *CrownWheelParams) { p.FlangeModulus = 168e9 },
		"loose":        func(p *CrownWheelParams) { p.Bond = 0 },
		"small hub":    func(p *CrownWheelParams) { p.ClampRadius = 0.045 },
		"in one plane": func(p *CrownWheelParams) { p.FlangeBehind = 0 },
		"thin wheel":   func(p *CrownWheelParams) { p.WheelThickness = 0.020 },
	}
	for name, change := range softer {
		if got := at(change); got <= stock {
			t.Errorf("%s: %g is not above %g", name, got, stock)
		}
	}
	stiffer := map[string]func(*CrownWheelParams){
		"farther behind": func(p *CrownWheelParams) { p.FlangeBehind = 0.025 },
		"solid":          func(p *CrownWheelParams) { p.Bond = 1 },
		"teeth":          func(p *CrownWheelParams) { p.ToothDepth, p.ToothRadius, p.ToothShare = 0.009, 0.075, 0.5 },
		"hub":            func(p *CrownWheelParams) { p.ClampRadius = 0.055 },
	}
	for name, change := range stiffer {
		if got := at(change); got >= stock {
			t.Errorf("%s: %g is not below %g", name, got, stock)
		}
	}
	near(t, "teeth that do not count", at(func(p *CrownWheelParams) { p.ToothDepth, p.ToothRadius = 0.009, 0.075 }), stock, 1e-4)
}

// With one modulus the bonded pair is a plate as thick as both.
func TestBondedLayersAreOneThickness(t *testing.T) {
	a, b, whole := layer{200e9, 0.014}, layer{200e9, 0.024}, layer{200e9, 0.038}
	var z PlateZone
	z.add(a, 0.3, 0.007)
	z.add(b, 0.3, -0.012)
	near(t, "bonded", z.Rigidity, whole.rigidity(0.3), 1e-12)
	near(t, "its neutral plane", z.Offset, 0.014-0.019, 1e-12)
}

// The bond says how far the wheel has gone from the give of two plates to that of one.
func TestBondGoesFromLooseToSolid(t *testing.T) {
	at := func(bond float64) *mat.SymDense {
		p := wheel()
		p.Bond = bond
		return compliance(t, crownWheel(t, p), atMesh, atPeg)
	}
	loose, third, solid := at(0), at(1./3), at(1)
	for i := range 2 {
		for j := range 2 {
			near(t, "a third of the way", third.At(i, j), 2./3*loose.At(i, j)+solid.At(i, j)/3, 1e-9)
		}
	}
}

func TestCrownWheelRefusesAnImpossibleWheel(t *testing.T) {
	for name, spoil := range map[string]func(*CrownWheelParams){
		"bore inside hub":   func(p *CrownWheelParams) { p.Bore = 0.04 },
		"no overlap":        func(p *CrownWheelParams) { p.FlangeRadius = 0.06 },
		"bond above one":    func(p *CrownWheelParams) { p.Bond = 1.2 },
		"no thickness":      func(p *CrownWheelParams) { p.WheelThickness = 0 },
		"teeth off the rim": func(p *CrownWheelParams) { p.ToothDepth, p.ToothRadius = 0.01, 0.2 },
		"NaN modulus":       func(p *CrownWheelParams) { p.WheelModulus = math.NaN() },
	} {
		p := wheel()
		spoil(&p)
		var r *check.RangeError
		if _, err := CrownWheel(p); !errors.As(err, &r) {
			t.Errorf("%s: got %v, want a range error", name, err)
		}
	}
}

// Pinned: our own figures for the invented wheel, to notice a change.
func TestCrownWheelPinned(t *testing.T) {
	c := compliance(t, crownWheel(t, wheel()), atMesh, atPeg)
	near(t, "mesh to mesh", c.At(0, 0), 2.999e-9, 1e-3)
	near(t, "mesh to peg", c.At(0, 1), 3.417e-9, 1e-3)
}

func BenchmarkCrownWheel(b *testing.B) {
	p := wheel()
	for b.Loop() {
		plate, err := CrownWheel(p)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := plate.Compliance([]Point{atMesh, atPeg}); err != nil {
			b.Fatal(err)
		}
	}
}
