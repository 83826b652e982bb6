package casting

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"axlewright/calc/survival"
	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func tarnhow(t testing.TB) *Catalogue {
	t.Helper()
	c, err := LoadCatalogue(examples + "tarnhow-variants.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return &c
}

func TestPosteriorPublished(t *testing.T) {
	logs := []float64{math.Log(0.01) + math.Log(0.80), math.Log(0.99) + math.Log(0.096)}
	p := posterior(logs)
	weight := decibans(math.Log(0.80 / 0.096))
	published.Check(t, []published.Row{
		{Name: "screening: prior 1 %, sensitivity 80 %, false positives 9.6 %", Got: p[0], Printed: "0.078",
			Source: "Eddy, Probabilistic reasoning in clinical medicine (1982), as Gigerenzer prints it (from memory)"},
		{Name: "odds of ten to one", Got: decibans(math.Log(10)), Printed: "10",
			Source: "Good, Probability and the Weighing of Evidence (1950): ten decibans to a factor of ten (from memory)"},
		{Name: "weight of the positive test", Got: weight, Printed: "9.2", Source: "derived: 10·log10(0.80/0.096)"},
	})
	for _, step := range []struct {
		half float64 // powers of ten
		word string
	}{{0.45, "weak"}, {0.55, "fair"}, {0.95, "fair"}, {1.05, "strong"}, {1.45, "strong"}, {1.55, "very strong"}, {1.95, "very strong"}, {2.05, "all but settles it"}} {
		// the steps of Jeffreys, Theory of Probability (1939), appendix B
		for _, sign := range []float64{1, -1} {
			if got := Strength(sign * 10 * step.half); got != step.word {
				t.Errorf("10^%g is %q, expected %q", step.half, got, step.word)
			}
		}
	}
}

func TestPosteriorIsBayes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 6).Draw(t, "n")
		hypotheses := make([]survival.Hypothesis, n)
		sum := 0.0
		for i := range hypotheses {
			hypotheses[i] = survival.Hypothesis{Prior: rapid.Float64Range(0.01, 1).Draw(t, "prior"), Likelihood: rapid.Float64Range(1e-6, 1).Draw(t, "like")}
			sum += hypotheses[i].Prior
		}
		logs := make([]float64, n)
		for i := range hypotheses {
			hypotheses[i].Prior /= sum
			logs[i] = math.Log(hypotheses[i].Prior) + math.Log(hypotheses[i].Likelihood)
		}
		want, err := survival.BayesUpdate(hypotheses)
		if err != nil {
			t.Fatal(err)
		}
		for i, p := range posterior(logs) {
			if math.Abs(p-want.Posteriors[i]) > 1e-12 {
				t.Fatalf("%d: %g, Bayes says %g", i, p, want.Posteriors[i])
			}
		}
	})
}

// drawItem draws any answer or reading of a feature.
func drawItem(t *rapid.T, f *Feature) Item {
	item := Item{Feature: f.Name}
	if f.Measured() {
		item.Value = rapid.Float64Range(f.Span.Low, f.Span.High).Draw(t, f.Name)
	} else {
		item.Answer = rapid.SampledFrom(f.Answers).Draw(t, f.Name)
	}
	item.Looked = rapid.IntRange(1, 3).Draw(t, "looked")
	item.Told = rapid.Bool().Draw(t, "told")
	return item
}

func drawEvidence(t *rapid.T, c *Catalogue) Evidence {
	var e Evidence
	for k := range c.Features {
		if rapid.IntRange(0, 2).Draw(t, "has") > 0 {
			e = append(e, drawItem(t, &c.Features[k]))
		}
	}
	return e
}

func TestIdentifyLaws(t *testing.T) {
	m := NewMatcher(tarnhow(t))
	rapid.Check(t, func(t *rapid.T) {
		e := drawEvidence(t, m.cat)
		w := m.weigh(e, nil)
		if sum := total(w.id); math.Abs(sum-1) > 1e-9 {
			t.Fatalf("chances add up to %g", sum)
		}
		shuffled := slices.Clone(e)
		rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 1)).Shuffle(len(e), func(i, j int) { shuffled[i], shuffled[j] = shuffled[j], shuffled[i] })
		other := m.weigh(shuffled, nil)
		withUnseen := slices.Clone(e)
		for k := range m.cat.Features {
			if name := m.cat.Features[k].Name; !slices.ContainsFunc(e, func(i Item) bool { return i.Feature == name }) {
				withUnseen = append(withUnseen, Item{Feature: name, Unseen: true})
			}
		}
		blind := m.weigh(withUnseen, nil)
		for i := range w.id {
			if math.Abs(w.id[i]-other.id[i]) > 1e-9 {
				t.Fatalf("the order of the evidence matters: %g and %g", w.id[i], other.id[i])
			}
			if w.id[i] != blind.id[i] {
				t.Fatalf("what cannot be seen speaks: %g and %g", w.id[i], blind.id[i])
			}
		}
		id, err := m.Identify(Bench{Evidence: withUnseen})
		if err != nil {
			t.Fatal(err)
		}
		if len(id.Questions) > 0 {
			t.Fatalf("asks again what cannot be seen: %+v", id.Questions)
		}
	})
}

func total(x []float64) float64 {
	sum := 0.0
	for _, v := range x {
		sum += v
	}
	return sum
}

// Every hypothesis must give every feature chances that add up to one.
func TestLikelihoodsAddUpToOne(t *testing.T) {
	m := NewMatcher(tarnhow(t))
	for k := range m.cat.Features {
		f := &m.cat.Features[k]
		sums := make([]float64, m.hypotheses())
		out := make([]float64, m.hypotheses())
		add := func(item *Item, width float64) {
			m.likelihood(k, item, out)
			for h, l := range out {
				sums[h] += math.Exp(l) * width
			}
		}
		tolerance := 1e-12
		if f.Measured() {
			const steps = 20000
			width := f.width() / steps
			for i := range steps {
				add(&Item{Value: f.Span.Low + (float64(i)+0.5)*width}, width)
			}
			tolerance = 1e-3 // tails beyond the span
		} else {
			for _, a := range f.Answers {
				add(&Item{Answer: a}, 1)
			}
		}
		for h, sum := range sums {
			if math.Abs(sum-1) > tolerance {
				t.Errorf("%s: chances under hypothesis %d add up to %g", f.Name, h, sum)
				break
			}
		}
	}
}

// A feature of hardly any reliability must hardly matter.
func TestUnreliableEvidenceSaysNothing(t *testing.T) {
	c := tarnhow(t)
	for k := range c.Features {
		c.Features[k].Reliability = 1e-9
	}
	m := NewMatcher(c)
	before := m.weigh(nil, nil)
	after := m.weigh(Evidence{{Feature: "ribs", Answer: "four curved"}, {Feature: "head bore", Value: 0.072}, {Feature: "studs", Answer: "12"}}, nil)
	for i := range before.id {
		if math.Abs(before.id[i]-after.id[i]) > 1e-5 {
			t.Errorf("%s went from %g to %g", m.nameOf(i), before.id[i], after.id[i])
		}
	}
}

func TestLookingAgainAndHearsay(t *testing.T) {
	m := NewMatcher(tarnhow(t))
	chance := func(item Item) float64 {
		return m.weigh(Evidence{{Feature: "raised number", Answer: "20"}, item}, nil).id[m.cat.variant("T20K")]
	}
	once := chance(Item{Feature: "ribs", Answer: "four curved"})
	twice := chance(Item{Feature: "ribs", Answer: "four curved", Looked: 2})
	told := chance(Item{Feature: "ribs", Answer: "four curved", Told: true})
	if !(told < once && once < twice) {
		t.Errorf("told %g, seen once %g, seen twice %g; expected them to rise", told, once, twice)
	}
	number := func(looked int) float64 {
		return m.weigh(Evidence{{Feature: "raised number", Answer: "31", Looked: looked}}, nil).id[m.cat.variant("T31")]
	}
	if number(1) != number(3) {
		t.Error("a number plate became surer by being read three times; it may come from another mould")
	}
}
