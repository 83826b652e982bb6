package kit

import (
	"fmt"
	"strings"
	"testing"

	"axlewright/internal/published"
)

// screwIn draws the least kit with another drilling and returns its row.
func screwIn(t testing.TB, thread, class, metal, wall string, more string) Drilled {
	t.Helper()
	text := strings.Replace(small, `thread: M12x1.75, class: "8.8", metal: EN-GJL-200, wall: 30 mm ± 2 mm`,
		fmt.Sprintf("thread: %s, class: %q, metal: %s, wall: %s%s", thread, class, metal, wall, more), 1)
	text = strings.Replace(text, "      - {label: G, kind: guide, drilling: screw, at: [20, 80]}\n", "", 1)
	k, err := Parse("small.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	d, err := k.Draw(Options{})
	if err != nil {
		t.Fatal(err)
	}
	return d.Drilling[0]
}

func TestTapDrills(t *testing.T) {
	const source = "ISO 2306:1972, drills for use prior to tapping (from memory)"
	var rows []published.Row
	for thread, drill := range map[string]string{
		"M5x0.8": "4.2", "M6x1": "5.0", "M8x1.25": "6.8", "M10x1.5": "8.5", "M12x1.75": "10.2", "M12x1.25": "10.8",
		"M16x2": "14.0", "M16x1.5": "14.5", "3/8-16 UNC": "8.0", "7/16-20 UNF": "9.9", "1/2-13 UNC": "10.8", "1/2-20 UNF": "11.5",
	} {
		class := "8.8"
		if strings.Contains(thread, "UN") {
			class = "5"
		}
		r := screwIn(t, thread, class, "S355", "60 mm", "")
		rows = append(rows, published.Row{Name: "drill for " + thread, Got: r.Drill * 1e3, Printed: drill, Source: source})
		if r.Share < 0.75 || r.Share > 1 {
			t.Errorf("%s: its drill leaves %g of the thread", thread, r.Share)
		}
	}
	published.Check(t, rows)
}

// TestEngagement works the guideline's length out by hand: the shear area of a
// millimetre of M12x1.75 in the hole is π·12·(0.875 + 1.1367·tan 30°)/1.75 =
// 32.99 mm², the bolt breaks at 84.27 mm² times its least strength.
func TestEngagement(t *testing.T) {
	const source = "derived: VDI 2230-1:2015, 5.5.5, by hand with τ_B = 0.9·200 MPa (grey) and 0.6·400 MPa (ductile)"
	length := func(class, metal string) float64 {
		r := screwIn(t, "M12x1.75", class, metal, "60 mm", "")
		return (r.Need*1e3 - 0.8*1.75) / 12
	}
	published.Check(t, []published.Row{
		{Name: "M12 8.8 in grey iron 200, diameters", Got: length("8.8", "EN-GJL-200"), Printed: "0.95", Source: source},
		{Name: "M12 10.9 in grey iron 200", Got: length("10.9", "EN-GJL-200"), Printed: "1.23", Source: source},
		{Name: "M12 12.9 in grey iron 200", Got: length("12.9", "EN-GJL-200"), Printed: "1.44", Source: source},
		{Name: "M12 8.8 in ductile iron 400", Got: length("8.8", "EN-GJS-400-15"), Printed: "0.71", Source: source},
		{Name: "M12 10.9 in ductile iron 400", Got: length("10.9", "EN-GJS-400-15"), Printed: "0.92", Source: source},
		{Name: "M12 12.9 in ductile iron 400", Got: length("12.9", "EN-GJS-400-15"), Printed: "1.08", Source: source},
		{Name: "point of a 10 mm drill of 118°, mm", Got: pointShare * 10, Printed: "3.0", Source: "Machinery's Handbook, length of point on twist drills: 0.30 of the diameter for 118° (from memory)"},
	})
}

func TestBreakthrough(t *testing.T) {
	deep := screwIn(t, "M12x1.75", "8.8", "EN-GJL-200", "40 mm ± 2 mm", "")
	if deep.Verdict != Fine || deep.Left < deep.Keep || deep.Have < 1.5*12e-3-1e-9 {
		t.Errorf("in 38 mm: %+v", deep)
	}
	// 21 mm: 3 kept, 3.06 of point and 3.5 of tap leave 11.4 mm of thread where
	// 12.8 is needed.
	short := screwIn(t, "M12x1.75", "8.8", "EN-GJL-200", "22 mm ± 1 mm", "")
	if short.Verdict != Look || short.Holds >= 1 || short.Holds < 0.8 {
		t.Errorf("in 21 mm: %+v", short)
	}
	thin := screwIn(t, "M12x1.75", "8.8", "EN-GJL-200", "14 mm ± 1 mm", "")
	if thin.Verdict != Stop || !strings.Contains(strings.Join(thin.Sentences, " "), "Use a boss") {
		t.Errorf("in 13 mm: %+v", thin)
	}
	skin := screwIn(t, "M12x1.75", "8.8", "EN-GJL-200", "8 mm", "")
	if skin.Verdict != Stop || !strings.Contains(skin.Sentences[0], "Do not drill") {
		t.Errorf("in 8 mm: %+v", skin)
	}
	through := screwIn(t, "M12x1.75", "8.8", "EN-GJL-200", "16 mm", ", through: true")
	if through.Verdict != Fine || through.Have != 16e-3 {
		t.Errorf("through 16 mm: %+v", through)
	}
	// The doubt of the wall counts: of the same wall the less sure one gives less thread.
	sure, doubtful := screwIn(t, "M12x1.75", "8.8", "EN-GJL-200", "24 mm", ""), screwIn(t, "M12x1.75", "8.8", "EN-GJL-200", "24 mm ± 3 mm", "")
	if doubtful.Have >= sure.Have {
		t.Errorf("%g mm of thread in a doubtful wall, %g in a sure one", doubtful.Have*1e3, sure.Have*1e3)
	}
}

// TestNoHoleComesNearerThanIsKept goes through walls of every thickness.
func TestNoHoleComesNearerThanIsKept(t *testing.T) {
	last := 0.0
	for wall := 6; wall <= 40; wall++ {
		r := screwIn(t, "M10x1.5", "8.8", "EN-GJS-400-15", fmt.Sprintf("%d mm", wall), ", keep: 4 mm")
		if r.Depth > 0 && r.Left < 4e-3-1e-9 {
			t.Errorf("wall %d mm: %g mm left", wall, r.Left*1e3)
		}
		if r.Holds < last {
			t.Errorf("a wall of %d mm holds less than a thinner one", wall)
		}
		last = r.Holds
		if (r.Holds < 0.8) != (r.Verdict == Stop) {
			t.Errorf("wall %d mm holds %g: %s", wall, r.Holds, r.Verdict)
		}
	}
}
