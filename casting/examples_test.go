package casting

import (
	"slices"
	"strings"
	"testing"
)

const examples = "../examples/identify/"

func identify(t *testing.T, name string, change ...func(*Bench)) (Identification, *Matcher) {
	t.Helper()
	bench, catalogue, err := LoadBench(examples + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range change {
		f(&bench)
	}
	m := NewMatcher(&catalogue)
	id, err := m.Identify(bench)
	if err != nil {
		t.Fatal(err)
	}
	return id, m
}

func chanceOf(id Identification, variant string) float64 {
	for _, c := range id.Ranked {
		if c.Variant == variant {
			return c.Chance
		}
	}
	return 0
}

func says(list []string, part string) bool {
	return slices.ContainsFunc(list, func(s string) bool { return strings.Contains(s, part) })
}

// Two noses of one raised number: the number supports both, the ribs decide,
// and the other's kit does not sit (common practice of the trade, no source).
func TestSameNumberTwoRibs(t *testing.T) {
	id, _ := identify(t, "same-number")
	if id.Enough || id.Verdict == SureEnough {
		t.Errorf("a raised number alone made it %q: %s", id.Verdict, id.Sentence)
	}
	if a, b := chanceOf(id, "T20"), chanceOf(id, "T20K"); a < 0.2 || b < 0.2 {
		t.Errorf("the number supports T20 with %.2f and T20K with %.2f; expected both", a, b)
	}
	if len(id.Questions) == 0 || id.Questions[0].Feature != "ribs" {
		t.Fatalf("next look is %+v; expected ribs", id.Questions)
	}
	if !says(id.Warnings, "1.50 mm (59 thou)") {
		t.Errorf("no warning of the boss height: %q", id.Warnings)
	}
	for _, o := range id.Questions[0].Outcomes {
		switch o.Says {
		case "three straight":
			if o.Leads != "T20" {
				t.Errorf("three straight ribs would lead to %s", o.Leads)
			}
		case "four curved":
			if o.Leads != "T20K" {
				t.Errorf("four curved ribs would lead to %s", o.Leads)
			}
		}
	}
	id, _ = identify(t, "same-number-ribs")
	if id.Verdict != SureEnough || id.Ranked[0].Variant != "T20K" || id.Ranked[0].Kit != "KIT-T20K-A.2" || len(id.Stops) != 1 {
		t.Errorf("with ribs and foundry mark: %s, %+v", id.Sentence, id.Ranked[0])
	}
	if !says(id.Warnings, "T20 has 1.50 mm (59 thou) less in boss height") {
		t.Errorf("no warning of the boss height: %q", id.Warnings)
	}
	if !slices.Contains(id.Unseen, "date") {
		t.Error("the date that cannot be seen is not told")
	}
}

func TestNumberGroundOff(t *testing.T) {
	id, _ := identify(t, "number-ground-off")
	if len(id.Ranked) < 3 || id.Ranked[0].Variant != "T20K" || id.Enough {
		t.Fatalf("%s %+v", id.Sentence, id.Ranked)
	}
	for _, e := range id.Evidence {
		if e.Feature == "head bore" && (!slices.Contains(e.Disproves, "T24") || slices.Contains(e.Disproves, "T20")) {
			t.Errorf("the bore disproves %v; expected T24 but not T20", e.Disproves)
		}
		if e.Feature == "cap bolt" && !slices.Contains(e.Disproves, "T20") {
			t.Errorf("the thread disproves %v; expected T20", e.Disproves)
		}
		if e.Feature == "paint" && e.Strength != "says nothing" {
			t.Errorf("paint %s", e.Strength)
		}
	}
	if q := id.Questions[0]; q.Feature != "cap seat" || !q.Worth || !slices.ContainsFunc(q.Outcomes, func(o Outcome) bool { return o.Leads == "T20K" && slices.Contains(o.Disproves, "T20") }) {
		t.Errorf("next is %+v; expected the cap seat, 58 or 60 mm, which can rule out the T20", q)
	}
	if id.Modified.Chance > 0.2 {
		t.Errorf("a ground-off number alone makes it modified with %.2f", id.Modified.Chance)
	}
	id, _ = identify(t, "number-ground-off", func(b *Bench) {
		b.Evidence = append(b.Evidence, Item{Feature: "cap seat", Value: 0.0600})
	})
	if !id.Enough || id.Ranked[0].Variant != "T20K" {
		t.Errorf("with the cap seat: %s", id.Sentence)
	}
}

func TestModifiedBefore(t *testing.T) {
	id, _ := identify(t, "modified-before")
	if id.Verdict != ModifiedBefore || id.Enough || id.Modified.Chance < 0.8 {
		t.Fatalf("%s, enough %v, modified %.2f", id.Verdict, id.Enough, id.Modified.Chance)
	}
	for _, part := range []string{"penetrant", "bore gauge: head bore", "line-boring", "No standard kit"} {
		if !says(id.Do, part) {
			t.Errorf("%q is not demanded: %q", part, id.Do)
		}
	}
	if len(id.Stops) == 0 || id.Stops[0].Overrule == "" {
		t.Errorf("no stop: %+v", id.Stops)
	}
	if len(id.Modified.Signs) != 2 {
		t.Errorf("signs %q", id.Modified.Signs)
	}
}

func TestMetalDisagreesWithShape(t *testing.T) {
	id, _ := identify(t, "grey-replacement")
	if id.Ranked[0].Variant != "T24" || id.Metal.Families[0].Family != "grey iron" {
		t.Fatalf("%s %+v", id.Sentence, id.Metal.Families)
	}
	if !strings.Contains(id.Metal.Disagrees, "ductile iron") || len(id.Metal.Stops) != 2 {
		t.Errorf("%q %+v", id.Metal.Disagrees, id.Metal.Stops)
	}
	if !strings.Contains(id.Stops[0].What, "do not weld") || !strings.Contains(id.Stops[0].Overrule, "Nobody at the bench") {
		t.Errorf("%+v", id.Stops[0])
	}
}

func TestNoneOfTheseBecomesAVariant(t *testing.T) {
	id, m := identify(t, "new-variant")
	if id.Verdict != NoneOfThese || id.New.Like != "T20" || id.New.Chance < 0.5 {
		t.Fatalf("%s %+v", id.Verdict, id.New)
	}
	if want := []string{"ribs", "web", "head bore"}; !slices.Equal(id.New.Differs, want) {
		t.Errorf("differs in %q, expected %q", id.New.Differs, want)
	}
	if len(id.Contradictions) != 3 {
		t.Errorf("contradictions %+v", id.Contradictions)
	}
	bench, _, err := LoadBench(examples + "new-variant.yaml")
	if err != nil {
		t.Fatal(err)
	}
	v, err := m.cat.NewVariant("T20 of the third foundry", bench)
	if err != nil {
		t.Fatal(err)
	}
	more := m.cat.clone()
	more.Variants = append(more.Variants, v)
	if found := more.Check(); len(found) > 0 {
		t.Fatal(found)
	}
	again, err := NewMatcher(&more).Identify(bench)
	if err != nil {
		t.Fatal(err)
	}
	if again.Ranked[0].Variant != v.Name {
		t.Errorf("its own casting is now %s %+v", again.Sentence, again.Ranked)
	}
	if _, err := m.cat.NewVariant("T24", bench); err == nil {
		t.Error("took a name that is taken")
	}
	bench.Evidence = append(bench.Evidence, Item{Feature: "peg boss", Answer: "welded on"})
	if _, err := m.cat.NewVariant("T99", bench); err == nil {
		t.Error("made a variant from a repair")
	}
}

func TestMirrorCastings(t *testing.T) {
	id, _ := identify(t, "wrong-end")
	if id.Enough || !says(id.Warnings, "other way round") {
		t.Errorf("%s %q", id.Verdict, id.Warnings)
	}
	base := func(b *Bench) {
		b.Evidence = Evidence{
			{Feature: "ribs", Answer: "four straight"}, {Feature: "head bore", Value: 0.0800}, {Feature: "cap seat", Value: 0.0640},
		}
	}
	id, _ = identify(t, "wrong-end", base)
	if !says(id.Warnings, "T24 and T24 mirrored are mirror images") || id.Enough {
		t.Errorf("twins alike in all: %s %q", id.Sentence, id.Warnings)
	}
	side := func(answer string) func(*Bench) {
		return func(b *Bench) {
			b.Evidence = append(b.Evidence, Item{Feature: "oil trough", Answer: answer}, Item{Feature: "peg boss", Answer: answer})
		}
	}
	for answer, want := range map[string]string{"right": "T24", "left": "T24 mirrored"} {
		id, _ = identify(t, "wrong-end", base, side(answer))
		if id.Ranked[0].Variant != want || !id.Enough {
			t.Errorf("sides on the %s: %s, expected %s", answer, id.Sentence, want)
		}
	}
}
