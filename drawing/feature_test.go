package drawing

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"axlewright/casting"
	"axlewright/internal/published"
)

// Every feature of the invented catalogue is drawn, every answer in its own
// way, and all of it on the paper.
func TestFeaturesAreDrawn(t *testing.T) {
	c, err := casting.LoadCatalogue("../examples/identify/tarnhow-variants.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for i := range c.Features {
		f := &c.Features[i]
		drawn := map[string]string{}
		answers := append([]string{""}, f.Answers...)
		if f.Measured() {
			answers = append(answers, "72.00 mm")
		}
		for _, a := range answers {
			d := Feature("p", f, a)
			var b bytes.Buffer
			if err := WriteSVG(&b, d); err != nil {
				t.Errorf("%s: %s: %v", f.Name, a, err)
				continue
			}
			shapes, _, _ := strings.Cut(b.String(), "</svg>")
			_, shapes, _ = strings.Cut(shapes, "</desc>")
			if twin, same := drawn[shapes]; same {
				t.Errorf("%s: %q looks like %q", f.Name, a, twin)
			}
			drawn[shapes] = a
			for _, s := range d.Layers[0].Shapes {
				if words, ok := s.(Text); ok {
					if box := words.Box(); !(Box{0, 0, d.Width, d.Height}).Holds(box) {
						t.Errorf("%s: %q: %q lies off the paper: %+v", f.Name, a, words.Words, box)
					}
				}
			}
			if !strings.ContainsAny(shapes, "<") {
				t.Errorf("%s: %q: nothing is drawn", f.Name, a)
			}
		}
	}
}

// Words that mean nothing to the pen are written, never drawn as something else.
func TestUnknownAnswersAreWritten(t *testing.T) {
	for sort := range map[casting.Sort]bool{casting.Rib: true, casting.Boss: true, casting.Studs: true, casting.Plug: true, casting.Thread: true, casting.Pad: true} {
		f := &casting.Feature{Name: "thing", Sort: sort, Ask: "?", Answers: []string{"like a heron", "like a crane"}}
		shapes := Feature("p", f, "like a heron").Layers[0].Shapes
		if len(shapes) != 1 || shapes[0].(Text).Words != "like a heron" {
			t.Errorf("%s: drawn as %d shapes", sort, len(shapes))
		}
	}
}

// Threads as standards have them: pitch from the words, to be counted in the picture.
func TestThreadsFromWords(t *testing.T) {
	const metric, unc = "ISO 261, coarse and fine pitches (from memory)", "ASME B1.1, threads to the inch (from memory)"
	for words, want := range map[string][3]string{
		"M12 x 1.75":       {"12.00", "1.750", metric},
		"M16 x 1.5":        {"16.00", "1.500", metric},
		"1/2 UNC":          {"12.70", "1.954", unc},
		"1/2 UNF":          {"12.70", "1.270", unc},
		"16 to the inch":   {"0.00", "1.588", unc},
		"2 mm":             {"0.00", "2.000", metric},
		"7/16 UNC":         {"11.11", "1.814", unc},
		"three and a half": {},
		"1/0 UNC":          {},
	} {
		d, p, known := threadOf(words)
		if known != (want[0] != "") || math.IsNaN(d) || math.IsInf(d, 0) {
			t.Errorf("%q: %v %v %v", words, d, p, known)
			continue
		}
		if known {
			published.Check(t, []published.Row{{Name: words + ", mm", Got: d, Printed: want[0], Source: want[2]}, {Name: words + ", pitch, mm", Got: p, Printed: want[1], Source: want[2]}})
		}
	}
}

// A scale of sizes keeps its words on the paper, also of one variant alone and
// of a reading far from all.
func TestSizeScale(t *testing.T) {
	sizes := []casting.SizeOf{{Variant: "T20K", Mean: 0.060, Reach: 0.0005}, {Variant: "T20", Mean: 0.058, Reach: 0.0005}}
	for _, reading := range []float64{math.NaN(), 0.0601, 0.084, 0.046} {
		for n := 1; n <= len(sizes); n++ {
			d := SizeScale("s", "cap seat", sizes[:n], reading)
			for _, s := range d.Layers[0].Shapes {
				if words, ok := s.(Text); ok && !(Box{0, 0, d.Width, d.Height}).Holds(words.Box()) {
					t.Errorf("reading %v: %q lies off the paper: %+v of %v × %v", reading, words.Words, words.Box(), d.Width, d.Height)
				}
			}
			if said := strings.Contains(d.Desc, "measured"); said == math.IsNaN(reading) {
				t.Errorf("reading %v: %s", reading, d.Desc)
			}
		}
	}
}
