package drawing

import (
	"bytes"
	"context"
	"math"
	"strings"
	"testing"

	"axlewright/kit"
)

// onPaper demands that all words and lines of a picture lie on its paper.
func onPaper(t *testing.T, d Drawing) (words string) {
	t.Helper()
	page := Box{-0.01, -0.01, d.Width + 0.01, d.Height + 0.01}
	for _, layer := range d.Layers {
		var shapes []Shape
		for _, s := range layer.Shapes {
			if dim, ok := s.(Dimension); ok {
				shapes = append(shapes, dim.Parts()...)
				continue
			}
			shapes = append(shapes, s)
		}
		for _, s := range shapes {
			var b Box
			switch s := s.(type) {
			case Text:
				b = s.Box()
				words += s.Words + "\n"
			case Circle:
				b = Box{s.Centre.X - s.Radius, s.Centre.Y - s.Radius, s.Centre.X + s.Radius, s.Centre.Y + s.Radius}
			case Path:
				b = Box{s.Vertices[0].At.X, s.Vertices[0].At.Y, s.Vertices[0].At.X, s.Vertices[0].At.Y}
				for _, v := range s.Vertices {
					b = Box{math.Min(b.Left, v.At.X), math.Min(b.Top, v.At.Y), math.Max(b.Right, v.At.X), math.Max(b.Bottom, v.At.Y)}
				}
			default:
				continue
			}
			if !page.Holds(b) {
				t.Errorf("%s: %T at %v is off the paper", d.Name, s, b)
			}
		}
	}
	return words
}

func TestEveryPlateHasItsSheet(t *testing.T) {
	for _, d := range everyKit(t) {
		for i := range d.Plates {
			p := &d.Plates[i]
			sheet := KitSheet(&d, i)
			if sheet.Width != a4Wide || sheet.Height != a4High {
				t.Errorf("%s is no A4", sheet.Name)
			}
			words := onPaper(t, sheet)
			want := []string{d.Name.String(), "Piece " + p.Key(), lengthWords(p.Outline.Bounds().Width()), lengthWords(p.Outline.Bounds().Height()), "no strength rating", "scale "}
			for _, h := range p.Holes {
				want = append(want, h.Label+"\n", "Ø "+metricOnly(h.Diameter))
			}
			for _, w := range want {
				if !strings.Contains(words, w) {
					t.Errorf("%s does not say %q", sheet.Name, w)
				}
			}
			var b bytes.Buffer
			if err := WriteSVG(&b, sheet); err != nil {
				t.Fatal(err)
			}
			validXML(t, b.Bytes())
		}
	}
}

// TestPlatesAreDrawnToScale measures the drawn outline again.
func TestPlatesAreDrawnToScale(t *testing.T) {
	d := kitDrawn(t, "KIT-T24-A.1")
	for i := range d.Plates {
		left, right := math.Inf(1), math.Inf(-1)
		for _, layer := range KitSheet(&d, i).Layers {
			if layer.Name != "dimensions" {
				continue
			}
			for _, s := range layer.Shapes {
				if dim, ok := s.(Dimension); ok {
					left, right = math.Min(left, dim.From.X), math.Max(right, dim.To.X)
				}
			}
		}
		wide := d.Plates[i].Outline.Bounds().Width() * 1e3
		fits := false
		for _, s := range paperScales {
			fits = fits || math.Abs((right-left)/s.times-wide) < 1e-9
		}
		if !fits {
			t.Errorf("%s: %g mm on paper of %g mm", d.Plates[i].Key(), right-left, wide)
		}
	}
}

func TestLargePlatesGoOnTheSheetToo(t *testing.T) {
	d := kitDrawn(t, "KIT-T24-A.1")
	for i := range d.Plates[0].Outline {
		d.Plates[0].Outline[i].At.X *= 20
		d.Plates[0].Outline[i].At.Y *= 3
	}
	d.Plates[0].Holes, d.Plates[0].Cutouts, d.Plates[0].Stations, d.Plates[0].Etched = nil, nil, nil, kit.Etching{}
	if words := onPaper(t, KitSheet(&d, 0)); !strings.Contains(words, "scale 1:20") {
		t.Errorf("scale:\n%s", words)
	}
}

func TestBillSaysWhatTheKitNeeds(t *testing.T) {
	for _, d := range everyKit(t) {
		words := onPaper(t, KitBill(&d))
		want := []string{d.Name.String(), "Bill of one kit", "Why this revision", "no rating"}
		for _, r := range d.Drilling {
			want = append(want, strings.Replace(r.Thread, "x", "×", 1), map[kit.Verdict]string{kit.Fine: "✓ fine: ", kit.Look: "△ look: ", kit.Stop: "✕ stop: "}[r.Verdict]+r.Name)
		}
		for _, r := range d.Bill().Rows {
			want = append(want, r.Key+"\n", r.Name+"\n")
		}
		for _, w := range want {
			if !strings.Contains(words, w) {
				t.Errorf("%s: the bill does not say %q", d.Name, w)
			}
		}
	}
}

func TestKitPDFHoldsEverySheetOnA4(t *testing.T) {
	for _, d := range everyKit(t) {
		var b, again bytes.Buffer
		if err := WriteKitPDF(&b, &d); err != nil {
			t.Fatal(err)
		}
		if n := strings.Count(b.String(), "<</Type /Page\n"); n != len(d.Plates)+1 {
			t.Errorf("%s: %d sheets for %d plates", d.Name, n, len(d.Plates))
		}
		if err := WriteKitPDF(&again, &d); err != nil || !bytes.Equal(b.Bytes(), again.Bytes()) {
			t.Errorf("%s: another file the second time: %v", d.Name, err)
		}
		for _, sheet := range KitSheets(&d) {
			if sheet.Width != a4Wide || sheet.Height != a4High {
				t.Errorf("%s: %s is %g × %g mm", d.Name, sheet.Name, sheet.Width, sheet.Height)
			}
		}
	}
}

func TestNestPicture(t *testing.T) {
	j, err := kit.LoadJob("../examples/kits/nest-20.yaml")
	if err != nil {
		t.Fatal(err)
	}
	j.Rules.Tries = 1
	cuttings, err := j.Run(context.Background(), nil)
	if err != nil {
		t.Fatal(err)
	}
	for i := range cuttings {
		c := &cuttings[i]
		for s := range c.Plan.Sheets {
			d := NestPicture(c, s)
			words := onPaper(t, d)
			if !strings.Contains(words, "pieces") || !strings.Contains(words, "nothing overlaps") {
				t.Errorf("%s", words)
			}
			drawn := 0
			for _, layer := range d.Layers {
				if layer.Name == "plates" {
					for _, shape := range layer.Shapes {
						if p, ok := shape.(Path); ok && p.Ink.Width == thin {
							drawn++
						}
					}
				}
			}
			if drawn != len(c.Plan.Sheets[s].Places) {
				t.Errorf("%d plates drawn of %d", drawn, len(c.Plan.Sheets[s].Places))
			}
			f := NestFile(c, s)
			if err := f.Check(); err != nil {
				t.Error(err)
			}
		}
	}
}
