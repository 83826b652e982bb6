package casting

import (
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"axlewright/axle"
)

const goodFeatures = `features:
  - name: ribs
    sort: rib
    ask: How many?
    answers: [two, three, welded]
    repair: {signs: [welded], shown: 0.5}
  - name: bore
    sort: bore
    ask: How wide?
    span: 60..80 mm
    instrument: 0.02 mm
`

const goodVariants = `variants:
  - name: A
    shows:
      ribs: two
      bore: 70 mm ± 0.1 mm
`

func load(t *testing.T, text string) (Catalogue, error) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "c.yaml")
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return LoadCatalogue(path)
}

func TestMalformedCatalogues(t *testing.T) {
	if _, err := load(t, goodFeatures+goodVariants); err != nil {
		t.Fatal(err)
	}
	swap := func(from, to string) string {
		text := strings.Replace(goodFeatures+goodVariants, from, to, 1)
		if text == goodFeatures+goodVariants {
			t.Fatalf("%q is not in the text", from)
		}
		return text
	}
	for name, c := range map[string]struct {
		text string
		line int
		says string
	}{
		"empty":                   {"  \n", 0, "is empty"},
		"not text":                {"a: \x00", 0, "not text in UTF-8"},
		"unknown key":             {swap("ask: How many?", "aks: How many?"), 4, `unknown key "aks"`},
		"caret":                   {swap("ask: How many?", "aks: How many?"), 4, "      |     ^"},
		"twice the same key":      {swap("sort: rib", "name: rib"), 3, "already defined"},
		"broken":                  {"features: [", 0, ""},
		"no features":             {"variants: []\n", 0, "says what can be looked at"},
		"no variants":             {goodFeatures, 0, "which castings there are"},
		"unknown sort":            {swap("sort: rib", "sort: rip"), 2, `"rip" is not one of`},
		"no question":             {swap("    ask: How many?\n", ""), 2, "is missing: the question"},
		"one answer":              {swap("[two, three, welded]", "[two]"), 2, "has 1 answers"},
		"answer twice":            {swap("[two, three, welded]", "[two, two, welded]"), 2, "stands twice"},
		"answer always there":     {swap("[two, three, welded]", "[two, can't see it, welded]"), 2, "always possible"},
		"sign is no answer":       {swap("signs: [welded]", "signs: [sleeved]"), 2, `"sleeved" is not one of the answers`},
		"signs without share":     {swap(", shown: 0.5", ""), 2, "needs both the signs"},
		"neither kind":            {swap("    span: 60..80 mm\n    instrument: 0.02 mm\n", ""), 7, "needs either answers"},
		"both kinds":              {swap("    span: 60..80 mm\n", "    span: 60..80 mm\n    answers: [a, b]\n"), 7, "leave one out"},
		"span no range":           {swap("60..80 mm", "70 mm"), 7, "no range"},
		"unit missing":            {swap("60..80 mm", "60..80"), 10, "the unit is missing"},
		"wrong unit":              {swap("0.02 mm", "0.02 kg"), 11, "got a mass"},
		"coarse instrument":       {swap("0.02 mm", "5 mm"), 7, "too coarse"},
		"reliability one":         {swap("sort: bore", "sort: bore\n    reliability: 1"), 7, "nothing is wholly reliable"},
		"unknown tool":            {swap("sort: bore", "sort: bore\n    with: crystal ball"), 7, "no tool of the catalogue"},
		"swap of nothing":         {swap("sort: rib", "sort: rib\n    swap: [{one: left, other: right}]"), 2, "not two of the answers"},
		"trait of no feature":     {swap("      ribs: two", "      rips: two"), 15, "is no feature"},
		"answer not listed":       {swap("ribs: two", "ribs: four"), 15, `"four" is not an answer`},
		"repair as a trait":       {swap("ribs: two", "ribs: welded"), 15, "sign of a repair"},
		"negative count":          {swap("ribs: two", "ribs: {two: -1}"), 15, "number of castings above zero"},
		"word as a count":         {swap("ribs: two", "ribs: {two: many}"), 15, "number of castings above zero"},
		"spread missing":          {swap("70 mm ± 0.1 mm", "70 mm"), 16, "spread from casting to casting is missing"},
		"outside the span":        {swap("70 mm ± 0.1 mm", "90 mm ± 0.1 mm"), 16, "outside the span"},
		"spread too wide":         {swap("70 mm ± 0.1 mm", "70 mm ± 15 mm"), 16, "says nothing"},
		"unknown key of size":     {swap("70 mm ± 0.1 mm", "{value: 70 mm ± 0.1 mm, n: 3}"), 16, `unknown key "n"`},
		"no value":                {swap("70 mm ± 0.1 mm", "{castings: 3}"), 16, "needs a value"},
		"trait twice":             {swap("      bore: 70", "      ribs: three\n      bore: 70"), 16, "already defined"},
		"variant twice":           {goodFeatures + goodVariants + "  - name: A\n", 17, "names must differ"},
		"variant without name":    {goodFeatures + goodVariants + "  - note: x\n", 17, "has no name"},
		"unknown metal":           {swap("- name: A", "- name: A\n    metal: kryptonite"), 13, "neither a grade nor a family"},
		"metal not cast":          {swap("- name: A", "- name: A\n    metal: 42CrMo4+QT"), 13, "not cast into noses"},
		"mirror of nothing":       {swap("- name: A", "- name: A\n    mirror_of: B"), 13, `no other variant "B"`},
		"mirror of itself":        {swap("- name: A", "- name: A\n    mirror_of: A"), 13, `no other variant "A"`},
		"negative seen":           {swap("- name: A", "- name: A\n    seen: -3"), 13, "cannot have been seen"},
		"sure of everything":      {"decide: {sure: 1.5}\n" + goodFeatures + goodVariants, 0, "not a chance"},
		"tool without name":       {"tools: [{cost: 3}]\n" + goodFeatures + goodVariants, 0, "needs a name"},
		"more modified than seen": {"history: {modified_found: 9}\n" + strings.Replace(goodFeatures+goodVariants, "- name: A", "- name: A\n    seen: 3", 1), 0, "9 castings were modified"},
	} {
		_, err := load(t, c.text)
		var found axle.Findings
		if !errors.As(err, &found) {
			t.Errorf("%s: %v, expected findings", name, err)
			continue
		}
		hit := false
		for _, f := range found {
			hit = hit || strings.Contains(f.Problem+f.Excerpt, c.says) && (c.line == 0 || f.Line == c.line) && strings.HasSuffix(f.File, "c.yaml")
		}
		if !hit {
			t.Errorf("%s: expected line %d and %q, got:\n%v", name, c.line, c.says, err)
		}
	}
}

func TestMalformedBenches(t *testing.T) {
	folder := t.TempDir()
	write := func(name, text string) string {
		path := filepath.Join(folder, name)
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	write("c.yaml", goodFeatures+goodVariants)
	for name, c := range map[string]struct {
		text string
		line int
		says string
	}{
		"no catalogue":       {"casting: X\n", 0, "no catalogue is named"},
		"missing catalogue":  {"catalogue: [d.yaml]\n", 0, "there is no such file"},
		"unknown feature":    {"catalogue: [c.yaml]\nevidence: {horn: two}\n", 2, "is no feature"},
		"unknown answer":     {"catalogue: [c.yaml]\nevidence:\n  ribs: five\n", 3, "expected two, three, welded, or can't see it"},
		"out of span":        {"catalogue: [c.yaml]\nevidence:\n  bore: 72 in\n", 3, "a slip or another unit"},
		"no unit":            {"catalogue: [c.yaml]\nevidence:\n  bore: 72\n", 3, "the unit is missing"},
		"nothing seen":       {"catalogue: [c.yaml]\nevidence:\n  ribs: {looked: 2}\n", 3, "needs what was seen"},
		"looked not often":   {"catalogue: [c.yaml]\nevidence:\n  ribs: {is: two, looked: 0}\n", 3, "1 to 9"},
		"told by nobody":     {"catalogue: [c.yaml]\nevidence:\n  ribs: {is: two, told: perhaps}\n", 3, "true or false"},
		"unknown key":        {"catalogue: [c.yaml]\nevidence:\n  ribs: {is: two, seen: 2}\n", 3, `unknown key "seen"`},
		"a list":             {"catalogue: [c.yaml]\nevidence:\n  ribs: [two, three]\n", 3, "what was seen or measured"},
		"twice":              {"catalogue: [c.yaml]\nevidence:\n  ribs: two\n  ribs: three\n", 4, "already defined"},
		"unknown test":       {"catalogue: [c.yaml]\nmetal:\n  taste: sour\n", 3, "no test of the metal"},
		"unknown result":     {"catalogue: [c.yaml]\nmetal:\n  swarf: dust\n", 3, "expected curls, short chips, powder"},
		"hardness of glass":  {"catalogue: [c.yaml]\nmetal:\n  hardness: 900 HB\n", 0, "80 to 400 HBW"},
		"hardness no scale":  {"catalogue: [c.yaml]\nmetal:\n  hardness: 200\n", 3, "the unit is missing"},
		"carbon no unit":     {"catalogue: [c.yaml]\nmetal:\n  laboratory: {carbon: 3.4}\n", 3, "needs its unit"},
		"carbon too high":    {"catalogue: [c.yaml]\nmetal:\n  laboratory: {carbon: 34 %}\n", 0, "no share of a cast metal"},
		"unknown element":    {"catalogue: [c.yaml]\nmetal:\n  laboratory: {gold: 1 %}\n", 3, "not asked of the laboratory"},
		"laboratory unclear": {"catalogue: [c.yaml]\nmetal:\n  laboratory: good\n", 3, "expected shares"},
	} {
		_, _, err := LoadBench(write("b.yaml", c.text))
		var found axle.Findings
		if !errors.As(err, &found) {
			t.Errorf("%s: %v, expected findings", name, err)
			continue
		}
		if !strings.Contains(err.Error(), c.says) || c.line != 0 && found[0].Line != c.line {
			t.Errorf("%s: expected line %d and %q, got line %d:\n%v", name, c.line, c.says, found[0].Line, err)
		}
	}
	b, _, err := LoadBench(write("b.yaml", "catalogue: [c.yaml]\nevidence:\n  ribs: Cannot See\n  bore: 2.76 in ± 1 thou, maker\nmetal: {ring: can't see it, hardness: 30 HRC}\n"))
	if err != nil {
		t.Fatal(err)
	}
	if !b.Evidence[0].Unseen || b.Evidence[1].Origin != axle.Maker || b.Metal.Hardness.Scale != "HRC" || len(b.Metal.Answers) != 0 {
		t.Errorf("%+v", b)
	}
	if s := b.Evidence[1].Spread; s < 12.6e-6 || s > 12.8e-6 {
		t.Errorf("± 1 thou is a spread of %g m; expected half a thou", s)
	}
	if got, usual := b.Evidence[1].trust(&Feature{Reliability: 0.8}), 0.4; got != usual {
		t.Errorf("a maker's figure is no reading of this casting: trusted %g, expected %g", got, usual)
	}
}

// Whatever is written, it is read or refused in words; nothing breaks.
func FuzzLoadCatalogue(f *testing.F) {
	text, err := os.ReadFile(examples + "tarnhow-variants.yaml")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(text)
	f.Add([]byte(goodFeatures + goodVariants))
	f.Add([]byte("features: &f [{name: a, sort: rib, ask: b, answers: [x, y]}]\nvariants: [{name: v, shows: {a: *f}}]\n"))
	f.Add([]byte("variants:\n  - name: v\n    shows: ~\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		var c Catalogue
		sheet, err := axle.DecodeSheet("f.yaml", string(text), &c)
		s, found := shelf{"f.yaml": sheet}, found(err)
		for i := 0; len(found) == 0 && i < len(c.Variants); i++ {
			found = append(found, c.resolve(&c.Variants[i])...)
		}
		if len(found) == 0 {
			found = c.Check()
		}
		if len(found) > 0 {
			if s.shown("f.yaml", found).Error() == "" {
				t.Fatal("refused without a word")
			}
			return
		}
		var e Evidence
		for k := range c.Features {
			item := Item{Feature: c.Features[k].Name, Value: c.Features[k].Span.Value}
			if !c.Features[k].Measured() {
				item.Answer = c.Features[k].Answers[0]
			}
			if k%2 == 0 {
				e = append(e, item)
			}
		}
		id, err := NewMatcher(&c).Identify(Bench{Evidence: e})
		if err != nil {
			t.Fatal(err)
		}
		if _, err := json.Marshal(id); err != nil { // refuses NaN and infinity
			t.Fatal(err)
		}
	})
}
