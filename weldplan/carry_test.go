package weldplan

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// A plate that no load acts on is in balance under its welds.
func TestWeldsOfAnUnloadedPlateBalance(t *testing.T) {
	j := manyRuns(t, 8)
	m := modelOf(t, j)
	row := m.blank()
	m.skeleton.move(row, m.skeleton.grip("right leg", at(0, 75, 0).At), r3.Vec{X: -18e3, Y: 6e3, Z: 4e3})
	all, err := m.carry(row)
	if err != nil {
		t.Fatal(err)
	}
	for plate := range m.skeleton.plates {
		var sum r3.Vec
		size := 0.0
		for i := range m.runs {
			if m.runs[i].plate != plate {
				continue
			}
			for h := range halves {
				f := r3.Scale(m.runs[i].half[h].length, all[i].pull[h])
				sum = r3.Add(sum, f)
				size += r3.Norm(f)
			}
		}
		if r3.Norm(sum) > 1e-6*size+1e-6 {
			t.Errorf("plate %d: %g N left over of %g N", plate, r3.Norm(sum), size)
		}
	}
}

// The skin of a leg far from any plate's help is stressed as a beam's.
func TestSkinStressIsTheBeams(t *testing.T) {
	run := Run{Name: "a", From: at(280, 0, 20), To: at(320, 0, 20), On: "bar", Side: PlusZ, Joint: Lap, Wall: length(10)}
	m := barOfSteel(t, run, shrinkage{pull: 1, most: 1})
	row := m.blank()
	const force = 1000.0
	m.skeleton.move(row, m.skeleton.grip("bar", at(600, 0, 0).At), r3.Vec{Z: force})
	all, err := m.carry(row)
	if err != nil {
		t.Fatal(err)
	}
	second := 0.05 * math.Pow(0.04, 3) / 12
	for h := range halves {
		x := m.runs[0].line.at(gaussPoints[h]).X
		near(t, "bending at the run", all[0].skin[h], -force*(0.6-x)*0.020/second, 1e-3)
	}
}

// A plate welded along both sides takes its share of a pull by its section.
func TestCheekTakesItsShareOfAPull(t *testing.T) {
	m := &model{tacked: 0.1}
	k := &m.skeleton
	limb := Limb{Name: "bar", From: at(0, 0, 0), To: at(600, 0, 0), Width: length(50), Depth: length(40), Across: PlusY}
	k.limbs = []limbBody{newLimb(&limb, 206e9, 0.3)}
	plate := Plate{Name: "cheek", Thickness: length(10)}
	var lines []line
	for _, y := range []float64{-20, 20} { // in the middle plane, so that it does not bend the bar
		for x := 0.0; x < 600; x += 50 {
			r := Run{Name: "r", From: at(x, y, 0), To: at(x+50, y, 0), On: "bar", Side: PlusZ, Joint: Lap, Wall: length(10)}
			l, _ := lineOf(&r)
			lines = append(lines, l)
			plate.Runs = append(plate.Runs, r)
			for h := range halves {
				k.limbs[0].mark(l.at(gaussPoints[h]))
				s1, s2 := k.limbs[0].warm(l.at(float64(h)/2), l.at(float64(h+1)/2), 0.01)
				k.limbs[0].markAt(s1)
				k.limbs[0].markAt(s2)
			}
		}
	}
	k.plates = []plateBody{newPlate(&plate, lines, 206e9, 0.3)}
	if err := k.build(at(0, 0, 0).At); err != nil {
		t.Fatal(err)
	}
	for i := range lines {
		r := tied{line: lines[i], limb: "bar", shrink: shrinkage{pull: 1, most: 1}}
		m.tie(&r, PlusZ.Vec(), Lap, r3.Vec{}, 0.01)
		m.runs = append(m.runs, r)
	}
	row := m.blank()
	const force = 1e5
	g := k.grip("bar", at(600, 0, 0).At)
	k.move(row, g, r3.Vec{X: force})
	chol, err := m.stiff(func(int) float64 { return 1 })
	if err != nil {
		t.Fatal(err)
	}
	moved := solveFor(t, chol, row)
	// Bar 50×40, plate 10 thick and 40 between its welds. The weld's give and the
	// plate's even stretch leave some of its section out.
	alone := force * 0.6 / (206e9 * 0.050 * 0.040)
	both := force * 0.6 / (206e9 * (0.050*0.040 + 0.010*0.040))
	if !(moved > both*0.99 && moved < alone-0.7*(alone-both)) {
		t.Errorf("the end moves %g m; bar alone %g, with the whole plate %g", moved, alone, both)
	}
}
