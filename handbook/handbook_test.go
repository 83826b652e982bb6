package handbook

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"axlewright/calc"
)

// notFormulas are exported functions of calc that prepare a solver or look
// something up by name for code; they have no result a bench could show.
var notFormulas = map[string]bool{
	"bearing.NewRow":         true, // prepares a row of rollers for the load path
	"material.Families":      true, // lists the families
	"material.FamilyOf":      true, // looks a family up
	"material.InFamily":      true,
	"material.Lookup":        true,
	"material.Names":         true,
	"ring.CrownWheel":        true, // prepares a plate for the load path
	"ring.NewPlate":          true,
	"shaft.Influence":        true, // a matrix for a solver
	"shaft.StationStiffness": true,
}

func TestEveryFormulaOfCalcIsInTheHandbook(t *testing.T) {
	lib, err := readLibrary(calc.Source)
	if err != nil {
		t.Fatal(err)
	}
	have := map[string]bool{}
	for _, f := range All() {
		if have[f.Func] {
			t.Errorf("%s is listed twice in subjects", f.Func)
		}
		have[f.Func] = true
	}
	for _, name := range slices.Sorted(maps.Keys(lib.formulas)) {
		if strings.HasPrefix(name, "check.") || notFormulas[name] {
			continue
		}
		if !have[name] {
			t.Errorf("%s is missing from handbook/subjects.go", name)
		}
	}
	for name := range notFormulas {
		if _, there := lib.formulas[name]; !there {
			t.Errorf("%s no longer exists: strike it from notFormulas", name)
		}
	}
}

func TestEveryDocstringHasItsParts(t *testing.T) {
	lib, err := readLibrary(calc.Source)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range All() {
		doc := lib.formulas[f.Func]
		_, word, _ := strings.Cut(f.Func, ".")
		for fault, found := range map[string]bool{
			"the docstring does not begin with its name":      !strings.HasPrefix(doc.summary, word+" "),
			"the first paragraph is more than one sentence":   strings.Contains(doc.summary, ". "),
			"the first paragraph does not end in a full stop": !strings.HasSuffix(doc.summary, "."),
			"no formula line":  len(f.Lines) == 0,
			"no \"Valid …\"":   f.Valid == "",
			"no \"Source: …\"": f.Source == "",
			"no results":       len(f.Results) == 0,
		} {
			if found {
				t.Errorf("%s: %s", f.Func, fault)
			}
		}
		for _, s := range slices.Concat(f.Inputs, f.Results) {
			if s.Meaning == "" {
				t.Errorf("%s: %s has no meaning", f.Func, s.Key)
			}
		}
		keys := map[string]bool{}
		for _, s := range f.Inputs {
			if keys[s.Key] {
				t.Errorf("%s: input key %s stands for two inputs", f.Func, s.Key)
			}
			keys[s.Key] = true
		}
	}
}

func TestComputeShowsWorkingAndSource(t *testing.T) {
	f, err := Find("bolt.stress-area")
	if err != nil {
		t.Fatal(err)
	}
	w, err := f.Compute(map[string]string{"d": "12mm", "pitch": "1.75 mm"})
	if err != nil {
		t.Fatal(err)
	}
	if len(w.Results) != 1 || w.Results[0].Symbol != "A_s" || w.Results[0].Unit != "m²" ||
		w.Results[0].SI < 84.2e-6 || w.Results[0].SI > 84.3e-6 { // ISO 898-1 prints 84.3 mm²
		t.Errorf("results %+v", w.Results)
	}
	if w.Inputs[0].SI != 0.012 || w.Inputs[0].Typed != "12mm" {
		t.Errorf("inputs %+v", w.Inputs)
	}
	if !strings.Contains(w.Source, "ISO 898-1") {
		t.Errorf("source %q", w.Source)
	}
}

func TestComputeNamesEveryFaultAtOnce(t *testing.T) {
	f, err := Find("bolt.stress-area")
	if err != nil {
		t.Fatal(err)
	}
	_, err = f.Compute(map[string]string{"d": "12 N", "width": "3 mm"})
	if err == nil {
		t.Fatal("accepted nonsense")
	}
	if _, err := f.Compute(map[string]string{"d": "12 mm ± 0.5 mm", "pitch": "1.75 mm"}); err == nil || !strings.Contains(err.Error(), "has a doubt") {
		t.Errorf("a doubt was dropped: %v", err)
	}
	for _, want := range []string{"d: ", "pitch is missing", "width is not an input"} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("%q does not say %q", err, want)
		}
	}
}

func TestFindSuggestsNeighbours(t *testing.T) {
	if _, err := Find("stress-area"); err == nil || !strings.Contains(err.Error(), "bolt.stress-area") {
		t.Errorf("got %v", err)
	}
	if _, err := Find("nothing like it"); err == nil {
		t.Error("found a formula that does not exist")
	}
}

func TestKebab(t *testing.T) {
	for in, want := range map[string]string{
		"StressArea": "stress-area", "ISOGrade": "iso-grade", "D2": "d2", "MaxT8to5": "max-t8to5",
	} {
		if got := kebab(in); got != want {
			t.Errorf("kebab(%q) = %q, want %q", in, got, want)
		}
	}
}
