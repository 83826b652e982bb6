//go:build reference

package reference_test

import (
	"fmt"
	"math"
	"testing"

	"axlewright/calc/ring"
)

// An invented crown wheel of 222 mm on its flange.
var wheel = ring.CrownWheelParams{
	ClampRadius: 0.050, Bore: 0.068, FlangeRadius: 0.090, OuterRadius: 0.111,
	FlangeThickness: 0.014, WheelThickness: 0.024, FlangeBehind: 0.019, Bond: 1,
	WheelModulus: modulus, Poisson: poisson,
}

// Where it is loaded and read.
var (
	tooth = ring.Point{Radius: 0.093, Direction: ring.Axial, Spread: 0.17}
	peg   = ring.Point{Radius: 0.101, Angle: -8 * math.Pi / 180, Direction: ring.Axial, Spread: 0.10, HalfWidth: 0.008}
	dial  = ring.Point{Radius: 0.103, Direction: ring.Axial}
	far   = ring.Point{Radius: 0.103, Angle: math.Pi, Direction: ring.Axial}
)

// built says how the wheel lies on its flange in the bricks.
type built string

const (
	inLine  built = "middles in one plane" // as the plate takes it; one piece
	onePart built = "on its flange, one piece"
	sliding built = "on its flange, sliding"
)

// solidWheel is the wheel in bricks.
func solidWheel(how built) *grid {
	d := newDeck("C3D20R")
	d.material("STEEL", modulus, poisson)
	t, w := wheel.FlangeThickness, wheel.WheelThickness
	heights := []float64{0, t / 2, t, t + w/2, t + w}
	flange, blank := [2]float64{0, t}, [2]float64{t, t + w}
	if how == inLine {
		heights = []float64{-(t + w) / 2, -w / 2, -t / 2, t / 2, w / 2, (t + w) / 2}
		flange, blank = [2]float64{-t / 2, t / 2}, [2]float64{-w / 2, w / 2}
	}
	pegAt := func(k float64) float64 { return peg.Angle + k*peg.Spread }
	g := &grid{
		d: d, at: ringPlace, closed: true, c: heights,
		a: spread(0.0085, wheel.ClampRadius, wheel.Bore, wheel.FlangeRadius, tooth.Radius, peg.Radius+peg.HalfWidth, wheel.OuterRadius),
		b: append(spread(0.17, pegAt(-1), -tooth.Spread, pegAt(1), 0, tooth.Spread), spread(0.33, 0.5, math.Pi, 2*math.Pi+pegAt(-1))...),
	}
	part := func(wantFlange, wantWheel bool) func(i, j, k int) string {
		return func(i, _, k int) string {
			r, z := (g.a[i]+g.a[i+1])/2, (g.c[k]+g.c[k+1])/2
			in := func(part [2]float64) bool { return z > part[0] && z < part[1] }
			overlap := r > wheel.Bore && r < wheel.FlangeRadius
			if wantFlange && r < wheel.FlangeRadius && in(flange) || wantWheel && r > wheel.Bore && in(blank) || overlap && how == inLine {
				return "STEEL"
			}
			return ""
		}
	}
	atHub := func(r, _, _ float64) bool { return same(r, wheel.ClampRadius) }
	if how != sliding {
		g.used = part(true, true)
		g.build()
		d.fix(g.where(atHub))
		return g
	}
	under := *g
	under.used = part(true, false)
	under.build()
	d.fix(under.where(atHub))
	g.used = part(false, true)
	g.build()
	for key, n := range under.nodes { // the faces keep together and slide
		if m, ok := g.nodes[key]; ok {
			fmt.Fprintf(&d.extra, "*EQUATION\n2\n%d,3,1.,%d,3,-1.\n", m, n)
		}
	}
	rim := func(angle float64) []int {
		return g.where(func(r, a, z float64) bool { return same(r, wheel.OuterRadius) && same(a, angle) && same(z, t+w) })
	}
	d.fix(rim(0), 2) // three holds that a wheel without a force in its plane does not feel
	d.fix(rim(math.Pi), 2)
	d.fix(rim(g.b[2]), 1)
	return g
}

// patch makes the mean-movement node of a load spread as the point says, even
// through the thickness.
func (g *grid) patch(q ring.Point) int { return g.patchAlong(q, 3) }

func (g *grid) patchAlong(q ring.Point, freedom int) int {
	weights := map[int]float64{}
	for i, wi := range stretch(g.a, q.Radius, q.HalfWidth) {
		for j, wj := range stretch(g.b, q.Angle, q.Spread) {
			for k, wk := range simpson(g.c, g.c[0], g.c[len(g.c)-1]) {
				key := [3]int{i, j % (2 * (len(g.b) - 1)), k}
				if n, ok := g.nodes[key]; ok && g.nodeHasMetalAllRound(i, k) {
					weights[n] += wi * wj * wk
				}
			}
		}
	}
	return g.d.mean(weights, freedom)
}

// nodeHasMetalAllRound keeps a load off the corner of a step: only heights that
// are metal outside the radius too.
func (g *grid) nodeHasMetalAllRound(i, k int) bool {
	_, ok := g.nodes[[3]int{i + 1, 0, k}]
	return ok
}

// stretch returns the weights of an even load over middle ± half, or of a point.
func stretch(planes []float64, middle, half float64) map[int]float64 {
	if half > 0 {
		return simpson(planes, middle-half, middle+half)
	}
	best := 0
	for i := range 2*len(planes) - 1 {
		if math.Abs(between(planes, i)-middle) < math.Abs(between(planes, best)-middle) {
			best = i
		}
	}
	return map[int]float64{best: 1}
}

func TestCrownWheelUnderAnEccentricLoad(t *testing.T) {
	const force = 10e3
	dialAt, farAt := dial, far
	for _, c := range []struct {
		how    built
		bond   float64
		within float64
	}{
		{inLine, 1, 0.02},
		// A plate does not know the give of the corners at its steps.
		{onePart, 1, 0.06},
		{sliding, 0, 0.06},
	} {
		name := "crown wheel " + string(c.how)
		g := solidWheel(c.how)
		// The solid is read at its own nodes.
		i := 0
		for k := range stretch(g.a, dial.Radius, 0) {
			i = k
		}
		dialAt.Radius, farAt.Radius = between(g.a, i), between(g.a, i)
		at := map[string]int{"tooth": g.patch(tooth), "peg": g.patch(peg), "dial": g.patch(dialAt), "far": g.patch(farAt)}
		g.d.force(at["tooth"], 3, force)
		moved := g.d.solve(t)
		p := wheel
		p.Bond = c.bond
		if c.how == inLine {
			p.FlangeBehind = 0
		}
		plate, err := ring.CrownWheel(p)
		if err != nil {
			t.Fatal(err)
		}
		m, err := plate.Compliance([]ring.Point{tooth, peg, dialAt, farAt})
		if err != nil {
			t.Fatal(err)
		}
		for i, place := range []string{"tooth", "peg", "dial"} {
			compare(t, name+", load at the tooth, "+place, "µm", m.At(0, i)*force*1e6, moved[at[place]][2]*1e6, c.within)
		}
		// Across the wheel hardly anything moves: small against the tooth.
		fmt.Printf("%-64s ours %11.5g  ccx %11.5g µm\n", name+", across the wheel", m.At(0, 3)*force*1e6, moved[at["far"]][2]*1e6)
		if diff := math.Abs(m.At(0, 3)*force - moved[at["far"]][2]); diff > 0.02*m.At(0, 0)*force {
			t.Errorf("%s: across the wheel %g and %g m", name, m.At(0, 3)*force, moved[at["far"]][2])
		}
	}
}

// The teeth also push in the wheel's plane, which lies in front of its flange's:
// that too moves the wheel along its axis.
func TestCrownWheelUnderAForceInItsPlane(t *testing.T) {
	const force = 10e3
	plate, err := ring.CrownWheel(wheel)
	if err != nil {
		t.Fatal(err)
	}
	outward := tooth
	outward.Direction = ring.Outward
	m, err := plate.Compliance([]ring.Point{tooth, peg, outward})
	if err != nil {
		t.Fatal(err)
	}
	g := solidWheel(onePart)
	load := g.patchAlong(tooth, 1) // outwards at the middle of the patch
	at := [2]int{g.patch(tooth), g.patch(peg)}
	g.d.force(load, 1, force)
	moved := g.d.solve(t)
	for i, place := range []string{"tooth", "peg"} {
		// The bricks have their flange below, the plate behind.
		compare(t, "crown wheel pulled outwards, "+place, "µm", m.At(i, 2)*force*1e6, -moved[at[i]][2]*1e6, 0.08)
	}
	compare(t, "crown wheel pulled outwards, outwards", "µm", m.At(2, 2)*force*1e6, moved[load][0]*1e6, 0.1)
}

// The same wheel with a peg behind it: a stop with a gap that only pushes.
func TestCrownWheelAgainstAPeg(t *testing.T) {
	const force, stiffness = 10e3, 250e6
	plate, err := ring.CrownWheel(wheel)
	if err != nil {
		t.Fatal(err)
	}
	c, err := plate.Compliance([]ring.Point{tooth, peg})
	if err != nil {
		t.Fatal(err)
	}
	free := c.At(0, 1) * force
	for _, share := range []float64{0, 0.5, 2} { // gap as a share of the free movement
		gap := share * free
		push := max(0, (free-gap)/(c.At(1, 1)+1/stiffness))
		g := solidWheel(onePart)
		load, stop := g.patch(tooth), g.patch(peg)
		g.d.force(load, 3, force)
		g.d.stop(stop, gap, stiffness)
		moved := g.d.solve(t)
		theirPush := max(0, (moved[stop][2]-gap)*stiffness)
		name := fmt.Sprintf("crown wheel against a peg, gap %.0f µm", gap*1e6)
		compare(t, name+", tooth", "µm", (c.At(0, 0)*force-c.At(0, 1)*push)*1e6, moved[load][2]*1e6, 0.06)
		if share < 1 {
			compare(t, name+", peg force", "kN", push/1e3, theirPush/1e3, 0.06)
		} else if theirPush != 0 || push != 0 {
			t.Errorf("%s: the peg pushes %g and %g N and should not touch", name, push, theirPush)
		}
	}
}
