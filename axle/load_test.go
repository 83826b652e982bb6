package axle

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"

	"axlewright/calc/traction"
)

func TestExamplesLoad(t *testing.T) {
	for _, path := range exampleEnquiries(t) {
		e, c, err := LoadEnquiry(path)
		if err != nil {
			t.Errorf("%v", err)
			continue
		}
		if _, err := c.BuildsFor(&e); err != nil {
			t.Errorf("%s: %v", path, err)
		}
	}
}

// exampleEnquiries are the paths of all enquiries among the examples.
func exampleEnquiries(t *testing.T) []string {
	t.Helper()
	paths, err := filepath.Glob("../examples/enquiries/*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	builds, err := filepath.Glob("../examples/reference/build-*.yaml")
	if err != nil || len(paths) < 10 || len(builds) != 5 {
		t.Fatal(paths, builds, err)
	}
	return append(paths, builds...)
}

func TestDefaultDoubtsAreGivenAndSaidSo(t *testing.T) {
	c := exampleCatalogue(t)
	k, err := c.Casting("T20")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range []struct {
		name      string
		figure    Number
		byDefault bool
		high      float64
	}{
		{"a length without a doubt", k.Cap.Thickness.Number, true, 0.0155 * 1.01},
		{"a stiffness without a doubt", k.Seats.Side.Leg.Number, true, 420e6 * 1.3},
		{"an exact length", k.Cap.BoreRadius.Number, false, 0.040},
		{"a length with its own doubt", k.Preload.Pinion.Number, false, 0.000045},
		{"a plain number", k.Cap.Friction.Number, false, 0.18 * 1.25},
	} {
		if f.figure.ByDefault != f.byDefault || !near(f.figure.High, f.high) {
			t.Errorf("%s is %+v", f.name, f.figure)
		}
	}
}

func near(a, b float64) bool { return a > b*(1-1e-12) && a < b*(1+1e-12) }

// A catalogue is written and read back the same: figures as typed, names, lists.
func TestACatalogueIsWrittenAndReadBack(t *testing.T) {
	for _, paths := range [][]string{
		{"../examples/tarnhow.yaml", "../examples/upgrades.yaml", "../examples/duties.yaml"},
		{"../examples/reference/catalogue.yaml"},
	} {
		c, err := LoadCatalogue(paths...)
		if err != nil {
			t.Fatal(err)
		}
		text, err := yaml.Marshal(&c)
		if err != nil {
			t.Fatal(err)
		}
		again, err := LoadCatalogue(write(t, t.TempDir(), "again.yaml", string(text)))
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		for _, side := range []*Catalogue{&c, &again} {
			EachFigure(side, "", func(_ string, n *Number) { n.Line, n.typed = 0, "" })
		}
		if !reflect.DeepEqual(c, again) {
			t.Errorf("%v is read back otherwise", paths)
		}
	}
	if text, _ := yaml.Marshal(exampleCatalogue(t).GearSets[0]); !strings.Contains(string(text), "cutter: 95.25 mm, trade\n") || strings.Contains(string(text), "mean_radius") {
		t.Errorf("figures are not written as typed, or what was left out is written:\n%s", text)
	}
}

func TestAnEnquiryIsWrittenAndReadBack(t *testing.T) {
	e, _, err := LoadEnquiry("../examples/enquiries/11-competition.yaml")
	if err != nil {
		t.Fatal(err)
	}
	text, err := yaml.Marshal(&e)
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	for _, name := range exampleFiles {
		write(t, folder, name, exampleText(t, name))
	}
	again, _, err := LoadEnquiry(write(t, folder, "e.yaml", strings.ReplaceAll(string(text), "../", "")))
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	again.Catalogue = e.Catalogue
	for _, side := range []*Enquiry{&e, &again} {
		EachFigure(side, "", func(_ string, n *Number) { n.Line, n.typed = 0, "" })
	}
	if !reflect.DeepEqual(e, again) {
		t.Errorf("read back otherwise:\n%s", text)
	}
}

// The example duties are those of calc/traction, shares of time made into
// shares of distance.
func TestExampleDutiesAreThoseOfTheTrade(t *testing.T) {
	c := exampleCatalogue(t)
	if len(c.Duties) != len(traction.DutyNames) {
		t.Fatalf("%d duties", len(c.Duties))
	}
	for _, name := range traction.DutyNames {
		want, err := name.Duty()
		if err != nil {
			t.Fatal(err)
		}
		got, err := c.Duty(string(name))
		if err != nil || len(got.Blocks) != len(want.Blocks) {
			t.Fatal(name, err)
		}
		for i, share := range want.DistanceShares() {
			b, w := got.Blocks[i], want.Blocks[i]
			off := func(a, b, within float64) bool { return a < b*(1-within) || a > b*(1+within) }
			if b.Name != w.Name || string(b.Going) != string(w.Going) || off(b.Share.Value, share, 0.05) || off(b.Torque.Value, w.Torque, 1e-9) || off(b.Speed.Value, w.Speed, 0.01) {
				t.Errorf("%s: %s is share %g (%g), torque %g (%g), speed %g (%g)", name, b.Name, b.Share.Value, share, b.Torque.Value, w.Torque, b.Speed.Value, w.Speed)
			}
		}
	}
}

// thousand is a catalogue of a thousand castings with as many of all else.
func thousand(b *testing.B) string {
	text, err := os.ReadFile("../examples/tarnhow.yaml")
	if err != nil {
		b.Fatal(err)
	}
	head, rest, _ := strings.Cut(string(text), "castings:\n")
	castings, rest, _ := strings.Cut(rest, "\n# Crown wheels")
	_, rest, _ = strings.Cut(rest, "\n")
	name := regexp.MustCompile(`- name: (T\w+)`)
	var out strings.Builder
	out.WriteString(head + "castings:\n")
	for i := range 200 {
		out.WriteString(name.ReplaceAllString(castings, fmt.Sprintf("- name: ${1}-%d", i)) + "\n")
	}
	out.WriteString("# Crown wheels\n# " + rest)
	return out.String()
}

func BenchmarkLoadThousandCastings(b *testing.B) {
	text := thousand(b)
	path := write(b, b.TempDir(), "thousand.yaml", text)
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		c, err := LoadCatalogue(path)
		if err != nil {
			b.Fatal(err)
		}
		if len(c.Castings) != 1000 {
			b.Fatalf("%d castings", len(c.Castings))
		}
	}
}

func BenchmarkBuilds(b *testing.B) {
	c := exampleCatalogue(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := c.Builds("T24", "24-4.11", nil); err != nil {
			b.Fatal(err)
		}
	}
}
