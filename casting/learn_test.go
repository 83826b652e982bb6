package casting

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"axlewright/axle"

	"pgregory.net/rapid"
)

// oneSize is a catalogue of one variant and one size.
func oneSize(s Size) *Catalogue {
	f := Feature{Name: "bore", Sort: Bore, Ask: "?", Reliability: 1 - 1e-12}
	f.Span = axle.Length{Number: axle.Number{Value: 0.07, Low: 0.06, High: 0.08, Shape: axle.Uniform, Origin: axle.Trade}}
	f.Instrument = axle.Length{Number: axle.Number{Value: 2e-5, Low: 2e-5, High: 2e-5, Origin: axle.Trade}}
	ribs := Feature{Name: "ribs", Sort: Rib, Ask: "?", Answers: []string{"two", "three"}, Reliability: 1 - 1e-12}
	return &Catalogue{Features: []Feature{f, ribs}, Variants: []Variant{{Name: "V", Shows: Traits{
		{Feature: "bore", Size: s}, {Feature: "ribs", Counts: []Count{{"two", 3}}},
	}}}}
}

// Reading by reading must come to what the closed formulas for all readings at
// once give (Gelman et al., Bayesian Data Analysis, 3rd ed., 3.3, from memory).
func TestLearnIsConjugate(t *testing.T) {
	start := Size{Mean: 0.07, SD: 3e-4, Instrument: 1e-5, Castings: 4, SpreadFrom: 6}
	rapid.Check(t, func(t *rapid.T) {
		readings := rapid.SliceOfN(rapid.Float64Range(0.0695, 0.0705), 1, 12).Draw(t, "readings")
		c := oneSize(start)
		var confirmed []Confirmed
		two, three := 3.0, 0.0
		for i, x := range readings {
			answer := "two"
			if i%3 == 0 {
				answer = "three"
				three++
			} else {
				two++
			}
			confirmed = append(confirmed, Confirmed{Variant: "V", Bench: Bench{Evidence: Evidence{{Feature: "bore", Value: x}, {Feature: "ribs", Answer: answer}}}})
		}
		next, _, err := c.Learn(confirmed)
		if err != nil {
			t.Fatal(err)
		}
		n, mean, square := float64(len(readings)), 0.0, 0.0
		for _, x := range readings {
			mean += x / n
		}
		for _, x := range readings {
			square += (x - mean) * (x - mean)
		}
		got := next.Variants[0].Shows[0].Size
		wantMean := (start.Castings*start.Mean + n*mean) / (start.Castings + n)
		sum := start.SpreadFrom*start.SD*start.SD + square + start.Castings*n/(start.Castings+n)*(mean-start.Mean)*(mean-start.Mean)
		wantSD := math.Sqrt(sum / (start.SpreadFrom + n))
		if math.Abs(got.Mean-wantMean) > 1e-11 || math.Abs(got.SD-wantSD) > 1e-9 || math.Abs(got.Castings-start.Castings-n) > 1e-6 {
			t.Fatalf("got %+v, expected mean %g and spread %g", got, wantMean, wantSD)
		}
		var counts [2]float64
		for _, k := range next.Variants[0].Shows[1].Counts {
			counts[map[string]int{"two": 0, "three": 1}[k.Answer]] = k.Castings
		}
		if math.Abs(counts[0]-two) > 1e-6 || math.Abs(counts[1]-three) > 1e-6 {
			t.Fatalf("counts %v, expected %g and %g", counts, two, three)
		}
		if next.Variants[0].Seen != n || c.Variants[0].Seen != 0 || c.Variants[0].Shows[0].Size != start || len(c.Variants[0].Shows[1].Counts) != 1 {
			t.Fatal("the old catalogue was changed")
		}
	})
}

func TestLearnTakesSlipsForSlips(t *testing.T) {
	c := tarnhow(t)
	before, _ := c.Variants[c.variant("T24")].trait("head bore")
	size := before.Size
	learn := func(value float64, modified bool) (Size, []Lesson) {
		next, lessons, err := c.Learn([]Confirmed{{Variant: "T24", Modified: modified, Bench: Bench{Casting: "F-1", Evidence: Evidence{{Feature: "head bore", Value: value}}}}})
		if err != nil {
			t.Fatal(err)
		}
		after, _ := next.Variants[next.variant("T24")].trait("head bore")
		return after.Size, lessons
	}
	good, _ := learn(0.08001, false)
	if !(good.Castings > size.Castings+0.9 && good.Mean > size.Mean) {
		t.Errorf("a good reading made %+v of %+v", good, size)
	}
	slip, lessons := learn(0.0760, false)
	if math.Abs(slip.SD-size.SD) > 0.05*size.SD || len(lessons) != 1 || !strings.Contains(lessons[0].Sentence, "taken for a slip") {
		t.Errorf("a slip made %+v of %+v: %+v", slip, size, lessons)
	}
	if sleeved, _ := learn(0.08001, true); sleeved != size {
		t.Errorf("learnt from a bore that a repair may have changed: %+v", sleeved)
	}
	next, _, err := c.Learn([]Confirmed{{}, {}, {Variant: "T31", Modified: true}})
	if err != nil || next.History.NewFound != c.History.NewFound+2 || next.History.ModifiedFound != c.History.ModifiedFound+1 {
		t.Errorf("%+v %v", next.History, err)
	}
	if _, _, err := c.Learn([]Confirmed{{Variant: "T99"}}); err == nil || !strings.Contains(err.Error(), "T24S") {
		t.Errorf("an unknown variant: %v", err)
	}
	if _, _, err := c.Learn([]Confirmed{{Variant: "T24", Bench: Bench{Evidence: Evidence{{Feature: "horn"}}}}}); err == nil {
		t.Error("took an unknown feature")
	}
}

// Learning must make the spread of many readings its own.
func TestLearnFindsTheSpread(t *testing.T) {
	made := newFoundry(77)
	c := made.learnt(t, 3000)
	for v := range c.Variants {
		for k := range made.features {
			if !made.features[k].Measured() {
				continue
			}
			trait, _ := c.Variants[v].trait(made.features[k].Name)
			want := math.Hypot(made.sd[v][k], 0.00005)
			if math.Abs(trait.Size.Mean-made.mean[v][k]) > 0.4*want || math.Abs(trait.Size.SD/want-1) > 0.25 {
				t.Errorf("variant %d %s: %g ± %g, made with %g ± %g", v, trait.Feature, trait.Size.Mean, trait.Size.SD, made.mean[v][k], want)
			}
		}
	}
}

func TestWriteReadsBack(t *testing.T) {
	c := tarnhow(t)
	next, _, err := c.Learn([]Confirmed{{Variant: "T24 mirrored", Bench: Bench{Evidence: Evidence{
		{Feature: "oil trough", Answer: "left"}, {Feature: "head bore", Value: 0.08003}, {Feature: "studs", Answer: "10"},
	}}}})
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "again.yaml")
	var text bytes.Buffer
	if err := next.Write(&text); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, text.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	again, err := LoadCatalogue(path)
	if err != nil {
		t.Fatalf("%v\n%s", err, text.String())
	}
	a, b := NewMatcher(&next), NewMatcher(&again)
	rapid.Check(t, func(t *rapid.T) {
		e := drawEvidence(t, &next)
		x, y := a.weigh(e, nil), b.weigh(e, nil)
		for i := range x.id {
			if math.Abs(x.id[i]-y.id[i]) > 1e-6 {
				t.Fatalf("%s: %g before it was written, %g after", a.nameOf(i), x.id[i], y.id[i])
			}
		}
	})
	bench, catalogue, err := LoadBench(examples + "new-variant.yaml")
	if err != nil {
		t.Fatal(err)
	}
	v, err := catalogue.NewVariant("T20 of the third foundry", bench)
	if err != nil {
		t.Fatal(err)
	}
	text.Reset()
	if err := WriteVariant(&text, v); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, text.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	joined, err := LoadCatalogue(examples+"tarnhow-variants.yaml", path)
	if err != nil {
		t.Fatalf("%v\n%s", err, text.String())
	}
	if len(joined.Variants) != len(catalogue.Variants)+1 {
		t.Error("the new variant did not join")
	}
}
