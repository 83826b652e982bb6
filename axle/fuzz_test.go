package axle

import (
	"strings"
	"testing"

	"github.com/goccy/go-yaml"
)

// small is a whole catalogue with one of each thing, cut from the examples.
// Seeds must be short: the fuzzer spends its time on shrinking long ones.
func small(f *testing.F) string {
	text := exampleText(f, "tarnhow.yaml")
	first := func(list, after string) string {
		_, rest, _ := strings.Cut(text, list)
		item, _, _ := strings.Cut(rest, after)
		return list + item + "\n"
	}
	var b strings.Builder
	b.WriteString("labour: 60\ndefault_doubts: [{kind: length, percent: 1}]\n")
	b.WriteString(first("castings:\n", "\n\n"))
	b.WriteString(first("gear_sets:\n", "\n\n"))
	b.WriteString(first("bearings:\n", "\n\n"))
	b.WriteString(first("diff_centres:\n", "\n  - {name: 20-4P"))
	b.WriteString(first("half_shafts:\n", "\n  - {name: 20-strong"))
	b.WriteString("upgrades: [{name: lock, title: x, fits: [T20], lock: {name: bolt, radius: 43 mm, shear: 13 kN}, minutes: 1, parts: 1}]\n")
	b.WriteString("duties: [{name: road, life_km: 1000, blocks: [{name: a, share: 1, torque: 0.1, speed: 9 m/s, going: forward}]}]\n")
	clean := strings.ReplaceAll(b.String(), "gear_sets: [20-3.54, 20-4.10, 20-4.70, 20-5.38]", "gear_sets: [20-3.54]")
	r := newReading()
	var c Catalogue
	if r.text("small.yaml", clean, &c); !r.broken {
		r.checkCatalogue(&c)
	}
	if len(r.found) > 0 {
		f.Fatal(r.found)
	}
	return clean
}

// FuzzLoad: no text makes the reader panic; what it finds has a sentence and,
// where the text was YAML at all, a place; what it accepts can be built, and
// written and read again.
func FuzzLoad(f *testing.F) {
	f.Add(small(f))
	for _, text := range []string{
		"", "a", "- a", "{", "[[", "&a [*a]", "castings: [{name: x}]", "bearings:\n - name: [\n", "note: |\n x", "? a\n: b",
		"half_shafts: [{name: a, diameter: {one_of: [1 mm, 2 mm]}, yield: 1..2 MPa}]", "duties: [{name: a, life_km: 1, blocks: []}]",
		"gear_sets:\n  - {pinion_teeth: 1, wheel_teeth: 1000000, name: x}", "default_doubts: [{kind: length, percent: 1}]", "<<: {a: 1}", "!!float 3",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if badText([]byte(text)) != "" {
			return
		}
		var e Enquiry
		asking := newReading()
		asking.text("fuzz.yaml", text, &e)
		var c Catalogue
		r := newReading()
		r.text("fuzz.yaml", text, &c)
		if !r.broken {
			r.checkCatalogue(&c)
		}
		for _, finding := range append(r.found, asking.found...) {
			if finding.Problem == "" || strings.Contains(finding.Problem, "%!") && !strings.Contains(text, "%") || !r.broken && finding.Line < 1 {
				t.Fatalf("%+v", finding)
			}
			_ = finding.String()
		}
		if len(r.found) > 0 {
			return
		}
		settleDoubts(&c, c.DefaultDoubts)
		for _, k := range c.Castings {
			if _, err := c.Builds(k.Name, k.GearSets[0], nil); err != nil {
				t.Fatalf("%s was checked and cannot be built: %v", k.Name, err)
			}
		}
		out, err := yaml.Marshal(&c)
		if err != nil {
			t.Fatal(err)
		}
		var again Catalogue
		r = newReading()
		r.text("again.yaml", string(out), &again)
		if len(r.found) > 0 {
			t.Fatalf("written as\n%s\nand refused: %v", out, r.found)
		}
	})
}

// FuzzReadRecord: no text makes the reader of records panic, and what it accepts
// can be sorted into blocks or is refused in a sentence.
func FuzzReadRecord(f *testing.F) {
	for _, text := range []string{
		"", "time [s],torque [N·m],speed [km/h]\n0,1,2\n1,2,3\n", "time [s];torque [N·m];speed [km/h]\n0;1,5;2\n1;-2;-3\n",
		"time [,torque ],speed\n", "\"\n\"", "time [s],torque [N·m],speed [km/h]\n0,1e308,2\n1,-1e308,3\n",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		r, err := readRecord("fuzz.csv", strings.NewReader(text))
		if err != nil {
			if err.Error() == "" {
				t.Fatal("refused without a word")
			}
			return
		}
		blocks, err := r.Blocks(1000)
		if err == nil && len(blocks) == 0 {
			t.Fatalf("%q makes no blocks", text)
		}
	})
}
