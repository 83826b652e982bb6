package axle

import (
	"os"
	"reflect"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"
)

func TestFindingsHaveLineColumnAndCaret(t *testing.T) {
	r := newReading()
	var c Catalogue
	r.text("shop.yaml", "labour: 60\nbearings:\n  - name: H1\n    bore: 35 kg\n    boer: 3\n", &c)
	want := []string{
		"shop.yaml:4:11: bearings[H1].bore: \"35 kg\": expected a length such as 12 mm, got a mass\n" +
			"    4 |     bore: 35 kg\n" +
			"      |           ^",
		"shop.yaml:5:5: bearings[H1].boer: unknown key; is \"bore\" meant?\n" +
			"    5 |     boer: 3\n" +
			"      |     ^",
		"shop.yaml:3:5: bearings[H1]: lacks outside, width, rollers, roller_diameter, roller_length, pitch_diameter and cup_angle; every figure of a part is needed, an assumed one with its doubt will do\n" +
			"    3 |   - name: H1\n" +
			"      |     ^",
	}
	for i, f := range r.found {
		if i < len(want) && f.String() != want[i] {
			t.Errorf("finding %d is\n%s\nwant\n%s", i, f, want[i])
		}
	}
	if len(r.found) != len(want) {
		t.Errorf("found %v", r.found)
	}
}

func TestLongLinesAreShownAroundThePlace(t *testing.T) {
	p := place{source: &source{lines: []string{strings.Repeat("ä", 300) + "X" + strings.Repeat("b", 300)}}, line: 1, column: 301}
	shown := strings.Split(p.excerpt(), "\n")
	if len(shown) != 2 || len([]rune(shown[0])) > 110 {
		t.Fatalf("shown as %q", shown)
	}
	if at := len([]rune(shown[1])) - 1; []rune(shown[0])[at] != 'X' {
		t.Errorf("the caret is not under the X:\n%s\n%s", shown[0], shown[1])
	}
}

func TestEverythingWrongIsToldAtOnce(t *testing.T) {
	r := newReading()
	var c Catalogue
	r.text("shop.yaml", strings.Join([]string{
		"labour: cheap",
		"wanted_chance: 0.9.5",
		"note: [a]",
		"ration: 3",
		"labour: 60",
		"default_doubts:",
		"  - {kind: length, percent: -1}",
		"half_shafts:",
		"  - {name: a, diameter: 30, yield: 500 MPa}",
		"  - {name: a, diameter: -30 mm, yield: 500 mm}",
		"duties:",
		"  - name: d",
		"    life_km: 10",
		"    blocks:",
		"      - {name: b, share: 1.5, torque: 1, speed: 1 m/s, going: sideways}",
		"upgrades: lots",
		"gear_sets: {a: 1}",
		"castings: [3]",
		"bearings:",
		"  - name: x",
		"    rollers: 12.5",
		"    price: 1e99",
		"measurements:",
	}, "\n"), &c)
	found := Findings(r.found)
	expect(t, found, 1, "labour", `"cheap" is not an amount`)
	expect(t, found, 2, "wanted_chance", "is not an amount")
	expect(t, found, 3, "note", "expected one value, not a list")
	expect(t, found, 4, "ration", "unknown key; expected note, default_doubts")
	expect(t, found, 5, "labour", "stands twice, first in line 1")
	expect(t, found, 7, "default_doubts[1].percent", "is not an amount")
	expect(t, found, 9, "half_shafts[a].diameter", "the unit is missing")
	expect(t, found, 10, "half_shafts[a]", "stands twice, first at shop.yaml:9; names must differ")
	expect(t, found, 10, "half_shafts[a].diameter", "is not above zero")
	expect(t, found, 10, "half_shafts[a].yield", "expected a pressure or stress")
	expect(t, found, 15, "duties[d].blocks[b].share", "is not within 0 and 1")
	expect(t, found, 15, "duties[d].blocks[b].going", `"sideways" is not known here; expected "forward", "overrun" or "reverse"`)
	expect(t, found, 16, "upgrades", "expected a list, such as [lots]")
	expect(t, found, 17, "gear_sets", "expected one value, not keys")
	expect(t, found, 18, "castings[1]", "expected keys with values, such as name: …")
	expect(t, found, 21, "bearings[x].rollers", "is not a count")
	expect(t, found, 22, "bearings[x].price", "is not an amount")
	expect(t, found, 23, "measurements", "there is no value here")
}

// The strict decoder of the YAML library reads the example files into the same
// data, and refuses what we refuse.
func TestReadsAsTheLibraryDoes(t *testing.T) {
	for _, name := range append(exampleFiles, "quarry-log.yaml", "reference/catalogue.yaml", "matrix/casting.yaml") {
		text, err := os.ReadFile("../examples/" + name)
		if err != nil {
			t.Fatal(err)
		}
		var theirs, ours Catalogue
		if err := yaml.UnmarshalWithOptions(text, &theirs, yaml.Strict()); err != nil {
			t.Fatal(err)
		}
		r := newReading()
		r.text(name, string(text), &ours)
		if len(r.found) > 0 {
			t.Fatal(r.found)
		}
		if !reflect.DeepEqual(theirs, ours) {
			t.Errorf("%s is read otherwise than by the library", name)
		}
	}
	for _, text := range []string{"ration: 3", "note: a\nnote: b", "castings: 3", "bearings: [{bore: 3 kg}]", "labour: abc"} {
		var theirs, ours Catalogue
		r := newReading()
		r.text("x", text, &ours)
		if err := yaml.UnmarshalWithOptions([]byte(text), &theirs, yaml.Strict()); err == nil || len(r.found) == 0 {
			t.Errorf("%q: the library says %v, we found %v", text, err, r.found)
		}
	}
}

func TestNearestWord(t *testing.T) {
	known := []string{"bore", "outside", "width", "roller_length", "roller_diameter"}
	for typed, want := range map[string]string{
		"boer": "bore", "Bore": "bore", "widht": "width", "roller_lenght": "roller_length", "colour": "", "": "", strings.Repeat("x", 100): "",
	} {
		if got := nearest(typed, known); got != want {
			t.Errorf("nearest(%q) = %q, want %q", typed, got, want)
		}
	}
}
