package weldplan

import (
	"slices"
	"strings"
	"testing"

	"axlewright/calc/material"
)

func TestEveryStopStops(t *testing.T) {
	for _, c := range []struct {
		name     string
		spoil    func(*Job)
		what     string
		override string
		noPlan   bool
	}{
		{"grey", func(j *Job) { j.Casting.Metal = Metal{Families: []Chance{{material.GreyIron, 1}}} }, "Grey iron", "nobody", true},
		{"probably grey", func(j *Job) {
			j.Casting.Metal = Metal{Families: []Chance{{material.GreyIron, 0.6}, {material.DuctileIron, 0.4}}}
		}, "Grey iron", "nobody", true},
		{"unknown", func(j *Job) { j.Casting.Metal = Metal{Unknown: 1} }, "Unknown metal", "nobody", true},
		{"grey not ruled out", func(j *Job) {
			j.Casting.Metal = Metal{Families: []Chance{{material.DuctileIron, 0.93}, {material.GreyIron, 0.07}}}
		}, "not ruled out", "nobody", false},
		{"half of it grey or unknown", func(j *Job) {
			j.Casting.Metal = Metal{Families: []Chance{{material.DuctileIron, 0.4}, {material.GreyIron, 0.3}}, Unknown: 0.3}
		}, "Unknown metal", "nobody", true},
		{"a steel nobody can preheat", func(j *Job) {
			j.Casting.Metal = Metal{Grade: "G42CrMo4+QT", Families: []Chance{{material.CastSteel, 1}}}
		}, "beyond the preheat rules", "engineer", false},
		{"chlorinated", func(j *Job) { j.Shop.Cleaned = Chlorinated }, "Chlorinated", "nobody", false},
		{"not known what cleaned it", func(j *Job) { j.Shop.Cleaned = NotKnown }, "Not known", "nobody", false},
		{"resin", func(j *Job) { j.Shop.Resin = true }, "Resin", "nobody", false},
		{"bearings", func(j *Job) { j.Shop.Bearings = true }, "Bearings", "nobody", false},
		{"damp", func(j *Job) { j.Shop.Damp = true }, "cold or damp", "welder", false},
		{"cold", func(j *Job) { j.Shop.Air = kelvin(-2, "-2 °C") }, "cold or damp", "welder", false},
		{"closed cavity", func(j *Job) { j.Cavities = []Cavity{{Name: "behind the cheek"}} }, "without a vent", "nobody", false},
		{"heat-treated plate", func(j *Job) { j.Plates[0].Steel = "42CrMo4+QT" }, "heat-treated", "engineer", false},
	} {
		j := manyRuns(t, 4)
		if sound := planOf(t, j); !sound.Go {
			t.Fatalf("the sound job stops: %+v", sound.Stops)
		}
		c.spoil(j)
		p := planOf(t, j)
		i := slices.IndexFunc(p.Stops, func(s Stop) bool { return strings.Contains(s.What, c.what) })
		if p.Go || i < 0 {
			t.Errorf("%s: goes ahead; stops %+v", c.name, p.Stops)
			continue
		}
		s := p.Stops[i]
		if !strings.Contains(s.Override, c.override) || s.NoPlan != c.noPlan || s.Why == "" || s.Clear == "" {
			t.Errorf("%s: %+v", c.name, s)
		}
		if (len(p.Runs) == 0) != c.noPlan {
			t.Errorf("%s: %d runs planned", c.name, len(p.Runs))
		}
	}
}

// Cautions are two lines of a page at most, and stand where they belong.
func TestCautionsAreShort(t *testing.T) {
	for _, f := range []Filler{{}, nickelIron} {
		list := cautionsOf(&Job{Cavities: []Cavity{{Name: "c"}}}, f)
		for _, c := range list {
			if n := len([]rune(c.Text)); n > 190 || c.Step == "" {
				t.Errorf("%d characters at %q: %s", n, c.Step, c.Text)
			}
		}
		if !slices.ContainsFunc(list, func(c Caution) bool { return strings.Contains(c.Text, "licensed") }) {
			t.Error("nobody is deferred to")
		}
	}
}
