package weldplan

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"axlewright/axle"
	"axlewright/calc/weld"
	"axlewright/internal/published"
)

var near = published.Near

// length makes a figure of millimetres.
func length(millimetres float64) (l axle.Length) {
	l.Value, l.Low, l.High, l.Origin = millimetres*1e-3, millimetres*1e-3, millimetres*1e-3, "measured"
	return l
}

func at(x, y, z float64) Place {
	return Place{At: r3.Vec{X: x * 1e-3, Y: y * 1e-3, Z: z * 1e-3}, Given: true}
}

// barOfSteel is a straight limb along x with a plate so small and thin that it
// holds next to nothing.
func barOfSteel(t *testing.T, run Run, s shrinkage) *model {
	t.Helper()
	m := &model{tacked: 0.25}
	k := &m.skeleton
	limb := Limb{Name: "bar", From: at(0, 0, 0), To: at(600, 0, 0), Width: length(50), Depth: length(40), Across: PlusY}
	k.limbs = []limbBody{newLimb(&limb, 206e9, 0.3)}
	l, ok := lineOf(&run)
	if !ok {
		t.Fatal("no line")
	}
	b := &k.limbs[0]
	for h := range halves {
		a, c := l.at(float64(h)/2), l.at(float64(h+1)/2)
		b.mark(a)
		b.mark(c)
		s1, s2 := b.warm(a, c, run.Wall.Value)
		b.markAt(s1)
		b.markAt(s2)
		b.mark(l.at(gaussPoints[h]))
	}
	b.markAt(0.3)
	plate := Plate{Name: "foil", Thickness: length(0.1), Runs: []Run{run}}
	plate.Area.Value = 60e-6
	k.plates = []plateBody{newPlate(&plate, []line{l}, 206e9, 0.3)}
	if err := k.build(at(0, 0, 0).At); err != nil {
		t.Fatal(err)
	}
	r := tied{line: l, limb: "bar", shrink: s}
	m.tie(&r, run.Side.Vec(), run.Joint, r3.Vec{}, run.Wall.Value)
	m.runs = []tied{r}
	for _, d := range []r3.Vec{{X: 1}, {Y: 1}, {Z: 1}} { // of the far end
		row := m.blank()
		k.move(row, k.grip("bar", at(600, 0, 0).At), d)
		m.moves = append(m.moves, movement{"end", row, 1, ""})
	}
	row := m.blank() // of the middle, upwards
	k.move(row, k.grip("bar", at(300, 0, 0).At), r3.Vec{Z: 1})
	m.moves = append(m.moves, movement{"middle", row, 1, ""})
	return m
}

func (m *model) alone(t *testing.T) response {
	t.Helper()
	s, err := m.first()
	if err != nil {
		t.Fatal(err)
	}
	return m.respond(s, 0, false, beadByBead)
}

// A run along the whole of a free bar moves it as the published tendon formula does.
func TestLongRunMovesABarByTheTendonFormula(t *testing.T) {
	const pull = 60e3
	run := Run{Name: "a", From: at(0, 0, 20), To: at(600, 0, 20), On: "bar", Side: PlusZ, Joint: Lap, Wall: length(10)}
	m := barOfSteel(t, run, shrinkage{pull: pull, most: 1})
	r := m.alone(t)
	want, err := weld.TendonMovement(weld.TendonParams{Force: pull, Offset: 0.020, Length: 0.6, Area: 0.05 * 0.04, SecondMoment: 0.05 * math.Pow(0.04, 3) / 12, Modulus: 206e9})
	if err != nil {
		t.Fatal(err)
	}
	l := r.by[longitudinal]
	near(t, "shortening", -l[0], want.Shortening, 1e-4)
	// A bar held at one end and bent evenly to radius R rises 4·sagitta at the other.
	near(t, "bow", l[2]/2-l[3], want.Bow, 1e-4)
	if math.Abs(l[1]) > 1e-5*math.Abs(l[2]) {
		t.Errorf("a run over the middle moves the end sideways by %g m", l[1])
	}
	if l[2] < 0 {
		t.Errorf("the bar is not hollow towards its weld: end at %g m", l[2])
	}
}

// A run right across a solid bar shortens it by the wall's shrinkage and folds it
// by the whole angle.
func TestRunAcrossABarShortensAndFoldsIt(t *testing.T) {
	const shrink, fold = 0.4e-3, 5e-3
	run := Run{Name: "a", From: at(300, -25, 20), To: at(300, 25, 20), On: "bar", Side: PlusZ, Joint: Lap, Wall: length(40)}
	r := barOfSteel(t, run, shrinkage{wall: shrink, kink: fold, pull: 1, most: 1}).alone(t)
	near(t, "shortening", -r.by[transverse][0], shrink, 1e-5)
	near(t, "rise of the end", r.by[angular][2], fold*0.300, 1e-5)
	if math.Abs(r.by[transverse][2]) > 1e-5*shrink {
		t.Errorf("shrinkage through the whole depth bends the bar by %g m", r.by[transverse][2])
	}
	// A thinner wall shrinks off the axis: the end rises to the weld's side.
	run.Wall = length(10)
	r = barOfSteel(t, run, shrinkage{wall: shrink, pull: 1, most: 1}).alone(t)
	near(t, "shortening of a thin wall", -r.by[transverse][0], shrink*10/40, 1e-5)
	second := 0.05 * math.Pow(0.04, 3) / 12
	near(t, "rise by a thin wall", r.by[transverse][2], shrink*0.010*0.05*0.015/second*0.300, 1e-5)
}
