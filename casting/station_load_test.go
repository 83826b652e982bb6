package casting

import (
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"axlewright/axle"

	"pgregory.net/rapid"
)

func TestMalformedGaugings(t *testing.T) {
	good, err := os.ReadFile(gaugings + "t31-too-few.yaml")
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "g.yaml")
	for name, c := range map[string]struct{ from, to, says string }{
		"unknown key":        {"variant: T31", "varient: T31", `unknown key; is "variant" meant`},
		"no variant":         {"variant: T31\n", "", "whose stations"},
		"gap without unit":   {`gap: "1.0 mm, trade"`, "gap: 1.0", "the unit is missing"},
		"gap too wide":       {`gap: "1.0 mm, trade"`, "gap: 1.0 m", "out of reason"},
		"no trim":            {`, trim: "1.5 mm, trade"`, "", "kit.trim"},
		"wanted too much":    {`trim: "1.5 mm, trade"`, `trim: 1.5 mm, wanted: 90`, "not a share"},
		"station twice":      {"number: 2", "number: 1", "stands twice"},
		"unknown sense":      {"more: gap", "more: fun", "not one of gap, trim"},
		"no edge":            {"edge: left cheek, ", "", "the edge of the plate"},
		"drawn for nothing":  {"drawn_for: 16.0 mm, ", "", "drawn_for"},
		"unknown station":    {"{1: 16.2 mm, 2: 40.1 mm}", "{1: 16.2 mm, 3: 40.1 mm}", "there is no station 3"},
		"station by name":    {"{1: 16.2 mm, 2: 40.1 mm}", "{foot: 16.2 mm}", "not the number of a station"},
		"reading no unit":    {"1: 16.2 mm", "1: 16.2", "the unit is missing"},
		"reading a mass":     {"1: 16.2 mm", "1: 16.2 kg", "got a mass"},
		"reading enormous":   {"1: 16.2 mm", "1: 16.2 km", "more than any nose"},
		"reading in a map":   {"1: 16.2 mm", "1: {a: 16.2 mm}", "expected a reading"},
		"casting twice":      {"F-2111", "F-2101", "give each casting once"},
		"casting without":    {"casting: F-2111, ", "", "without its tag"},
		"date no date":       {"casting: F-2111,", "casting: F-2111, date: yesterday,", "no date"},
		"dates backwards":    {"casting: F-2101,", "casting: F-2101, date: 2024-01-01,", ""},
		"no readings at all": {", readings: {1: 15.8 mm, 2: 40.6 mm}", "", "are missing"},
		"no stations":        {"stations:", "history:", "already defined"},
		"negative effort":    {"stations:", "effort: {trim: -3}\nstations:", "neither minutes nor castings"},
	} {
		text := strings.Replace(string(good), c.from, c.to, 1)
		if name == "dates backwards" {
			text = strings.Replace(text, "casting: F-2111,", "casting: F-2111, date: 2023-01-01,", 1)
			c.says = "put the oldest first"
		}
		if text == string(good) {
			t.Fatalf("%s: %q is not in the file", name, c.from)
		}
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		_, err := LoadGauging(path)
		var found axle.Findings
		if !errors.As(err, &found) || !strings.Contains(err.Error(), c.says) || found[0].File != path {
			t.Errorf("%s: expected %q, got:\n%v", name, c.says, err)
		}
	}
}

func TestReportNeverBreaks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := drawGauging(t, rapid.IntRange(0, 12).Draw(t, "castings"), rapid.IntRange(1, 4).Draw(t, "stations"))
		for i := range g.History {
			if n := len(g.History[i].Readings); rapid.IntRange(0, 4).Draw(t, "gap") == 0 && n > 1 {
				g.History[i].Readings = g.History[i].Readings[:n-1]
			}
		}
		if n := len(g.History); n > 1 && rapid.Bool().Draw(t, "new") {
			g.New, g.History = g.History[n-1:], g.History[:n-1]
		}
		r, err := g.Report()
		if err != nil {
			t.Fatal(err)
		}
		if _, err := json.Marshal(r); err != nil { // refuses NaN and infinity
			t.Fatal(err)
		}
	})
}

// Whatever is written, it is read or refused in words; nothing breaks.
func FuzzLoadGauging(f *testing.F) {
	for _, name := range []string{"t24", "t31-too-few"} {
		text, err := os.ReadFile(gaugings + name + ".yaml")
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
	}
	f.Add([]byte("variant: T31\nstations:\n !- ")) // broke the YAML library
	f.Add([]byte("variant: &a x\nstations: *a\n"))
	f.Add([]byte("history: [{casting: a, readings: {1: [], 2: ~}}]\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		var g Gauging
		sheet, err := axle.DecodeSheet("f.yaml", string(text), &g)
		s, found := shelf{"f.yaml": sheet}, found(err)
		if len(found) == 0 {
			found = g.Check()
		}
		if len(found) > 0 {
			if s.shown("f.yaml", found).Error() == "" {
				t.Fatal("refused without a word")
			}
			return
		}
		if len(g.History)+len(g.New) > 40 || len(g.Stations) > 10 {
			return // slow, and nothing new
		}
		r, err := g.Report()
		if err != nil {
			t.Fatal(err)
		}
		if _, err := json.Marshal(r); err != nil {
			t.Fatal(err)
		}
	})
}
