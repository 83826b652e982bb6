package loadpath

import (
	"math"
	"testing"

	"axlewright/calc/bearing"
	"axlewright/calc/shaft"
	"axlewright/internal/published"
)

// An overhung shaft of one diameter, without shear as the tables have it.
func TestOverhungShaftPublished(t *testing.T) {
	const force, over, span = 10e3, 0.05, 0.08
	b := beam{span: span, point: -over}
	b.add(-over, Section{Length: over, Outer: 0.04}, 206e9, 0.3)
	b.add(0, Section{Length: span, Outer: 0.04}, 206e9, 0.3)
	for i := range b.count {
		b.segments[i].shar = math.Inf(1)
	}
	b.prepare()
	first, second := b.reactions(pointForce)
	const source = "Shigley, Mechanical Engineering Design, table A-9 case 10; Roark (formula from memory), worked by hand"
	published.Check(t, []published.Row{
		{Name: "far reaction, kN", Got: second * force / 1e3, Printed: "6.25", Source: source},
		{Name: "near reaction, kN", Got: first * force / 1e3, Printed: "-16.25", Source: source},
		{Name: "slope at the far support, mrad", Got: math.Abs(b.bending[atSecond][pointForce]) * force * 1e3, Printed: "0.257532", Source: source},
		{Name: "slope at the near support, mrad", Got: math.Abs(b.bending[atFirst][pointForce]) * force * 1e3, Printed: "0.515065", Source: source},
		{Name: "slope under the load, mrad", Got: math.Abs(b.bending[pointMoment][pointForce]) * force * 1e3, Printed: "0.997938", Source: source},
		{Name: "deflection under the load, mm", Got: b.bending[pointForce][pointForce] * force * 1e3, Printed: "0.041849", Source: source},
	})
}

// With steps, bores, windows and shear it must be the shaft of package shaft.
func TestBeamAgreesWithTheShaftElements(t *testing.T) {
	sections := []Section{
		{Length: 0.03, Outer: 0.045}, {Length: 0.02, Outer: 0.06, Inner: 0.02}, {Length: 0.05, Outer: 0.035, Share: 0.7}, {Length: 0.04, Outer: 0.05, Inner: 0.03},
	}
	const over = 0.03
	b := beam{point: -over}
	p := shaft.BeamParams{Modulus: 206e9, Poisson: 0.3}
	at := -over
	for _, s := range sections {
		at = b.add(at, s, p.Modulus, p.Poisson)
		p.Sections = append(p.Sections, shaft.Section{Length: s.Length, Outer: s.Outer, Inner: s.Inner, Windows: s.Share})
	}
	b.span = at
	b.prepare()
	const rigid = 1e17
	p.Supports = []shaft.Support{{At: over, Axial: rigid, Y: rigid, Z: rigid}, {At: over + b.span, Y: rigid, Z: rigid}}
	c, err := shaft.Influence(p, []float64{0, over, over + b.span})
	if err != nil {
		t.Fatal(err)
	}
	const point, first, second = 0, shaft.Freedoms, 2 * shaft.Freedoms
	for _, x := range []struct {
		name      string
		got, want float64
	}{
		{"deflection by force", b.bending[pointForce][pointForce], c.At(point+shaft.AlongY, point+shaft.AlongY)},
		{"slope by force", b.bending[pointMoment][pointForce], c.At(point+shaft.AboutZ, point+shaft.AlongY)},
		{"slope by moment", b.bending[pointMoment][pointMoment], c.At(point+shaft.AboutZ, point+shaft.AboutZ)},
		{"first end by force", b.bending[atFirst][pointForce], c.At(first+shaft.AboutZ, point+shaft.AlongY)},
		{"second end by force", b.bending[atSecond][pointForce], c.At(second+shaft.AboutZ, point+shaft.AlongY)},
		{"first end by its moment", b.bending[atFirst][atFirst], c.At(first+shaft.AboutZ, first+shaft.AboutZ)},
		{"ends on each other", b.bending[atFirst][atSecond], c.At(first+shaft.AboutZ, second+shaft.AboutZ)},
		{"stretch", b.stretch[0][0], c.At(second+shaft.AlongX, second+shaft.AlongX)},
		{"stretch of the neck", b.stretch[1][1], c.At(point+shaft.AlongX, point+shaft.AlongX)},
	} {
		if math.Abs(x.got-x.want) > 1e-6*math.Abs(x.want) {
			t.Errorf("%s: %g, shaft elements %g", x.name, x.got, x.want)
		}
	}
}

// A spigot bearing as stiff as a wall takes most of an overhung load; one as
// soft as nothing leaves all as it was.
func TestSpigotBearing(t *testing.T) {
	a := referenceAxle(t, "A")
	without := solved(t, a, Drive, 3000)
	a.Pinion.SpigotDistance, a.Pinion.SpigotDiameter, a.Pinion.SpigotStiffness = 0.03, 0.035, 1
	soft := solved(t, a, Drive, 3000)
	if d := apart(&without, &soft); d > 1e-6*without.Pinion.Shift.norm() || soft.Spigot.norm() > 0.01 {
		t.Errorf("a spigot bearing of 1 N/m changes %g m and carries %g N", d, soft.Spigot.norm())
	}
	a.Pinion.SpigotStiffness = 1e9
	stiff := solved(t, a, Drive, 3000)
	if u := unbalance(a, &stiff); u > 1e-9 {
		t.Errorf("%g of the load is left over", u)
	}
	if !(stiff.Pinion.Shift.norm() < 0.8*without.Pinion.Shift.norm()) || stiff.Spigot.norm() < 5e3 || stiff.Head.Radial >= without.Head.Radial {
		t.Errorf("pinion %v to %v, spigot %v, head %g to %g N", without.Pinion.Shift, stiff.Pinion.Shift, stiff.Spigot, without.Head.Radial, stiff.Head.Radial)
	}
}

// In rigid seats a thrust of 2^(10/9) times the preload lifts the other row of a
// like pair off: both rows give by the same power of their load.
func TestThrustThatRelievesThePreloadOfAPair(t *testing.T) {
	a := referenceAxle(t, "A")
	const rigid = 1e14
	a.HeadSeat, a.TailSeat = Seat{rigid, rigid, rigid}, Seat{rigid, rigid, rigid}
	a.Pinion.Modulus = 1e17
	a.Tail = a.Head
	// A tooth force along the pinion's axis and on it.
	a.Mesh.MeanPoint.Y, a.Mesh.MeanPoint.Z = 1e-12, a.Mesh.PinionAxisZ
	a.Layout.MeshToHub = 0.06
	a.Centre.ToNear[0].Length, a.Centre.ToFar[0].Length = a.Layout.Near-a.hub(), a.Layout.Far+a.hub()
	a.Mesh.Drive = Vector{X: -10}
	none := solved(t, a, Drive, 0)
	preload := none.Head.Axial
	q, err := bearing.RollerLoad(a.PinionPreload/2*math.Sin(a.Head.CupAngle), a.Head.Length)
	if err != nil {
		t.Fatal(err)
	}
	if want := q * float64(a.Head.Count) * math.Sin(a.Head.CupAngle); math.Abs(preload-want) > 1e-3*want || math.Abs(none.Tail.Axial-preload) > 1e-6*preload {
		t.Errorf("preload %g and %g N, from the approach %g N", preload, none.Tail.Axial, want)
	}
	relief := math.Pow(2, 10.0/9) * preload / 10
	before, after := solved(t, a, Drive, 0.995*relief), solved(t, a, Drive, 1.005*relief)
	if before.Tail.Loaded == 0 || after.Tail.Loaded != 0 {
		t.Errorf("just before %d rollers of the tail bearing carry, just after %d", before.Tail.Loaded, after.Tail.Loaded)
	}
}
