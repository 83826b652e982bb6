package kit

import (
	"encoding/json"
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"axlewright/kit/outline"
)

func load(t testing.TB, name string) Kit {
	t.Helper()
	k, err := Load("../examples/kits/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	return k
}

func drawn(t testing.TB, name string) Drawn {
	t.Helper()
	k := load(t, name)
	d, err := k.Draw(Options{Batch: "B0417"})
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// plate finds a plate by its key.
func (d *Drawn) plate(t testing.TB, key string) *Plate {
	t.Helper()
	for i := range d.Plates {
		if d.Plates[i].Key() == key {
			return &d.Plates[i]
		}
	}
	t.Fatalf("%s has no plate %s", d.Name, key)
	return nil
}

func near(t testing.TB, name string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.12g, expected %.12g", name, got, want)
	}
}

func TestEveryExampleCanBeCut(t *testing.T) {
	files, err := filepath.Glob("../examples/kits/KIT-*.yaml")
	if err != nil || len(files) < 4 {
		t.Fatalf("%d kits, %v", len(files), err)
	}
	for _, file := range files {
		d := drawn(t, strings.TrimSuffix(filepath.Base(file), ".yaml"))
		k, err := Load(file)
		if err != nil {
			t.Fatal(err)
		}
		for i := range d.Plates {
			p := &d.Plates[i]
			if err := p.Outline.Check(); err != nil || p.Outline.Area() < 0 {
				t.Errorf("%s: %v", p.File(), err)
			}
			small := slices.ContainsFunc(k.Pieces, func(q Piece) bool { return q.Number.Text == fmt.Sprint(p.Piece) && q.Mark.None })
			if says := strings.Join(p.Etched.Lines, " "); small != (len(p.Etched.Strokes) == 0) || !small && !strings.HasPrefix(says, d.Name.String()+" P"+p.Key()) {
				t.Errorf("%s is etched %q", p.File(), p.Etched.Lines)
			}
			for _, s := range p.Etched.Strokes {
				for _, v := range s {
					if p.Outline.Margin(v.At) < markMargin-1e-9 {
						t.Errorf("%s: the mark reaches the edge", p.File())
					}
				}
			}
			near(t, p.File()+" mass", p.Mass(), p.Area()*p.Thickness*7850, 1e-3*p.Mass()+1e-9) // steel of 7,850 kg/m³, EN 1991-1-1
		}
	}
}

func TestRightIsTheMirrorImageOfLeft(t *testing.T) {
	d := drawn(t, "KIT-T24-A.1")
	l, r := d.plate(t, "1L"), d.plate(t, "1R")
	if !slices.Equal(l.Outline.Mirrored(), r.Outline) || !slices.Equal(r.Outline.Mirrored(), l.Outline) {
		t.Error("the outlines are not mirror images")
	}
	near(t, "area", r.Area(), l.Area(), 1e-15)
	near(t, "seam", r.SeamLength(WeldSeam), l.SeamLength(WeldSeam), 1e-15)
	for i := range l.Holes {
		if l.Holes[i].At.Mirrored() != r.Holes[i].At || l.Holes[i].Diameter != r.Holes[i].Diameter {
			t.Errorf("hole %s", l.Holes[i].Label)
		}
	}
	if l.Etched.At.Mirrored() != r.Etched.At {
		t.Error("the marks are not in the same place")
	}
	// Words are not mirrored: both begin left of the middle.
	for _, p := range []*Plate{l, r} {
		if first := p.Etched.Strokes[0][0].At; first.X > p.Etched.At.X {
			t.Errorf("%s is etched backwards", p.Key())
		}
	}
}

// TestOverlayByHand works the cap overlay out by hand: a slot of 134 by 30 mm,
// two holes of 13 mm, a slot of 24 by 10 mm.
func TestOverlayByHand(t *testing.T) {
	d := drawn(t, "KIT-T24-A.1")
	p := d.plate(t, "4")
	area := 104*30 + math.Pi*15*15 - 2*math.Pi*6.5*6.5 - (14*10 + math.Pi*5*5)
	near(t, "area, mm²", p.Area()*1e6, area, 1e-9)
	cut := 2*104 + 2*math.Pi*15 + 2*math.Pi*13 + 2*14 + math.Pi*10
	near(t, "cut, mm", p.CutLength()*1e3, cut, 1e-9)
	near(t, "mass, kg", p.Mass(), area*8*7.85e-6, 1e-9)
	near(t, "welded, mm", p.SeamLength(WeldSeam)*1e3, 2*104, 1e-9)
	b := p.Outline.Bounds()
	near(t, "long, mm", b.Width()*1e3, 134, 1e-9)
	near(t, "wide, mm", b.Height()*1e3, 30, 1e-9)
	if p.Pierces() != 4 {
		t.Errorf("%d pierces", p.Pierces())
	}
}

// TestRibByHand works the rib out by hand: a rectangle of 70 by 52 mm less what
// the arc and its chord take, and a tab of 18 by 3.5 mm.
func TestRibByHand(t *testing.T) {
	d := drawn(t, "KIT-T24-A.1")
	p := d.plate(t, "3L")
	chord := math.Hypot(56, 38)
	radius := chord * (1 + 0.3*0.3) / (4 * 0.3)
	angle := 4 * math.Atan(0.3)
	area := 70*52 - 56*38/2 - radius*radius/2*(angle-math.Sin(angle)) + 18*3.5
	near(t, "area, mm²", p.Area()*1e6, area, 1e-9)
	near(t, "low edge with the tab, mm", p.Outline.Bounds().Low.Y*1e3, -3.5, 1e-9)
}

func TestVentsLeaveTheirLengthUnwelded(t *testing.T) {
	d := drawn(t, "KIT-T24-A.1")
	near(t, "side plate", d.plate(t, "1L").SeamLength(VentSeam), 7e-3, 1e-12)
	p := d.plate(t, "2")
	near(t, "peg plate", p.SeamLength(VentSeam), 8e-3, 1e-12)
	// Four corners: two of 20 and two of 8 mm, each (2 − π/2)·r shorter than sharp.
	whole := 2*92 + 2*76 - (2-math.Pi/2)*2*(20+8)
	near(t, "peg plate all round, mm", p.Outline.Length()*1e3, whole, 1e-9)
	near(t, "and welded, mm", p.SeamLength(WeldSeam)*1e3, whole-8, 1e-9)
}

func TestCornersFollowTheirStations(t *testing.T) {
	k := load(t, "KIT-T24-A.1")
	before, err := k.Draw(Options{})
	if err != nil {
		t.Fatal(err)
	}
	by := outline.Point{X: -1.4e-3, Y: 0.5e-3}
	after, err := k.Draw(Options{Moves: []Move{{Frame: "side", Station: 2, By: by}}})
	if err != nil {
		t.Fatal(err)
	}
	moved := 0
	for i, s := range before.plate(t, "1L").Stations {
		r := after.plate(t, "1L").Stations[i]
		if d := r.Corner.To(s.Corner); d > 1e-12 {
			moved++
			near(t, "moved", d, math.Hypot(by.X, by.Y), 1e-12)
		}
	}
	if moved != 1 {
		t.Errorf("%d corners moved", moved)
	}
	words := ""
	for _, c := range Changes(&before, &after) {
		words += c.Plate + " " + c.Words + "\n"
	}
	if !strings.Contains(words, "1L the corner at station 2 moved by 1.49 mm") || strings.Contains("\n"+words, "\n4 ") || strings.Contains(words, "station 3") {
		t.Errorf("changes:\n%s", words)
	}
	if _, err := k.Draw(Options{Moves: []Move{{Frame: "side", Station: 99}}}); err == nil {
		t.Error("a station that the kit has not was moved")
	}
}

func TestChangesBetweenRevisions(t *testing.T) {
	a, b := drawn(t, "KIT-T24-A.1"), drawn(t, "KIT-T24-A.2")
	var words []string
	for _, c := range Changes(&a, &b) {
		words = append(words, c.Plate+" "+c.Words)
	}
	for _, want := range []string{"1L hole V moved by 2.00 mm", "1R hole V moved", "1L the corner at station 2"} {
		if !slices.ContainsFunc(words, func(w string) bool { return strings.HasPrefix(w, want) }) {
			t.Errorf("no %q in %q", want, words)
		}
	}
	if same := Changes(&a, &a); len(same) != 0 {
		t.Errorf("against itself: %v", same)
	}
	b.Plates = b.Plates[1:]
	b.Plates[0].Holes = b.Plates[0].Holes[1:]
	words = nil
	for _, c := range Changes(&a, &b) {
		words = append(words, c.Plate+" "+c.Words)
	}
	if !slices.Contains(words, "1L no longer in the kit") || !slices.Contains(words, "1R hole A is gone") {
		t.Errorf("%q", words)
	}
}

func TestBillAddsUp(t *testing.T) {
	d := drawn(t, "KIT-T24-A.1")
	b := d.Bill()
	if len(b.Rows) != 6 || b.Count != 7 {
		t.Fatalf("%d rows, %d pieces", len(b.Rows), b.Count)
	}
	var mass, cut float64
	for i := range d.Plates {
		mass += d.Plates[i].Mass() * float64(d.Plates[i].Count)
		cut += d.Plates[i].CutLength() * float64(d.Plates[i].Count)
	}
	near(t, "mass", b.Mass, mass, 1e-12)
	near(t, "cut", b.Cut, cut, 1e-12)
}

func TestAKitKeepsItsSealThroughJSON(t *testing.T) {
	k := load(t, "KIT-T20K-A.2")
	text, err := json.Marshal(&k)
	if err != nil {
		t.Fatal(err)
	}
	var back Kit
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatal(err)
	}
	if back.Seal() != k.Seal() {
		t.Error("another seal")
	}
	d, err := back.Draw(Options{})
	if err != nil || len(d.Plates) != 4 {
		t.Errorf("%d plates, %v", len(d.Plates), err)
	}
}

// TestWindowByHand: the oil window is a slot 24 by 10 mm, 140 mm² and a circle
// of 10 mm.
func TestWindowByHand(t *testing.T) {
	d := drawn(t, "KIT-T20K-A.2")
	near(t, "mm²", d.plate(t, "1L").Cutouts[0].Loop.Area()*1e6, 14*10+math.Pi*25, 1e-9)
}
