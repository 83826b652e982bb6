package casting

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// bruteForce is what expect works out, by going through every answer or a fine
// grid of readings and every hypothesis.
func bruteForce(w *bench, k int) (bits, right float64) {
	f := &w.cat.Features[k]
	type event struct {
		item  Item
		width float64
	}
	var events []event
	if f.Measured() {
		const steps = 12000
		width := f.width() / steps
		for i := range steps {
			events = append(events, event{Item{Value: f.Span.Low + (float64(i)+0.5)*width}, width})
		}
	} else {
		for _, a := range f.Answers {
			events = append(events, event{Item{Answer: a}, 1})
		}
	}
	class := make([]float64, w.classes())
	for h, p := range w.p {
		class[w.classOf(h)] += p
	}
	like := make([]float64, w.hypotheses())
	joint := make([]float64, w.classes())
	for _, e := range events {
		w.likelihood(k, &e.item, like)
		clear(joint)
		all := 0.0
		for h, p := range w.p {
			j := p * math.Exp(like[h]) * e.width
			joint[w.classOf(h)] += j
			all += j
		}
		best := 0.0
		for c, j := range joint {
			if j > 0 {
				bits += j * math.Log2(j/(all*class[c]))
			}
			if c%2 == 0 {
				best = math.Max(best, j+joint[c+1])
			}
		}
		right += best
	}
	return bits, right
}

func TestExpectedInformationAgainstBruteForce(t *testing.T) {
	m := NewMatcher(tarnhow(t))
	for _, e := range []Evidence{
		nil,
		{{Feature: "raised number", Answer: "20"}},
		{{Feature: "raised number", Answer: "ground off"}, {Feature: "head bore", Value: 0.072}},
		{{Feature: "old work", Answer: "sleeve"}, {Feature: "studs", Answer: "10"}},
	} {
		w := m.weigh(e, nil)
		for k := range m.cat.Features {
			bits, right := w.expect(k)
			wantBits, wantRight := bruteForce(w, k)
			// a size is told apart in steps and its far tails count as anywhere
			tolerance := 1e-9
			if m.cat.Features[k].Measured() {
				tolerance = 0.02*wantBits + 1e-3
			}
			if math.Abs(bits-wantBits) > tolerance || math.Abs(right-wantRight) > math.Max(tolerance/2, 1e-9) {
				t.Errorf("%s: %g bit, right %g; brute force %g bit, right %g", m.cat.Features[k].Name, bits, right, wantBits, wantRight)
			}
		}
	}
}

func TestExpectationLaws(t *testing.T) {
	m := NewMatcher(tarnhow(t))
	rapid.Check(t, func(t *rapid.T) {
		w := m.weigh(drawEvidence(t, m.cat), nil)
		doubt := entropyOfClasses(w)
		now := total(w.id[argmax(w.id) : argmax(w.id)+1])
		k := rapid.IntRange(0, len(m.cat.Features)-1).Draw(t, "feature")
		f := &m.cat.Features[k]
		bits, right := w.expect(k)
		if bits < 0 || bits > doubt+1e-9 {
			t.Fatalf("%s is expected to give %g bit of a doubt of %g", f.Name, bits, doubt)
		}
		if right < now-1e-6 {
			t.Fatalf("%s is expected to make it worse: %g before, %g after", f.Name, now, right)
		}
		if f.Measured() {
			return
		}
		// what is expected of the chances is what they are
		mean := make([]float64, len(w.id))
		like := make([]float64, w.hypotheses())
		for _, a := range f.Answers {
			w.likelihood(k, &Item{Answer: a}, like)
			for h, p := range w.p {
				mean[w.identityOf(h)] += p * math.Exp(like[h])
			}
		}
		for i := range mean {
			if math.Abs(mean[i]-w.id[i]) > 1e-9 {
				t.Fatalf("%s: %s is %g and expected to be %g after", f.Name, w.nameOf(i), w.id[i], mean[i])
			}
		}
	})
}

func entropyOfClasses(w *bench) float64 {
	class := make([]float64, w.classes())
	for h, p := range w.p {
		class[w.classOf(h)] += p
	}
	return entropy(class)
}

func TestQuestionsAreRankedByWorthForTrouble(t *testing.T) {
	id, _ := identify(t, "same-number")
	if len(id.Questions) < 3 {
		t.Fatalf("only %d questions", len(id.Questions))
	}
	for i := 1; i < len(id.Questions); i++ {
		a, b := id.Questions[i-1], id.Questions[i]
		if a.Worth == b.Worth && a.Bits/(a.Cost+moment) < b.Bits/(b.Cost+moment) {
			t.Errorf("%s stands before %s, which tells more for its trouble", a.Feature, b.Feature)
		}
	}
	for _, q := range id.Questions {
		sum := 0.0
		for _, o := range q.Outcomes {
			sum += o.Chance
		}
		if math.Abs(sum-1) > 0.05 {
			t.Errorf("%s: the outcomes' chances add up to %g", q.Feature, sum)
		}
	}
	// a laboratory would tell as much as a look: the look comes first
	dear := func(b *Bench) {}
	_, m := identify(t, "same-number", dear)
	c := m.cat.clone()
	c.Features = append([]Feature(nil), c.Features...)
	at := c.feature("ribs")
	c.Features[at].With = "laboratory"
	id, err := NewMatcher(&c).Identify(Bench{Evidence: Evidence{{Feature: "raised number", Answer: "20"}}})
	if err != nil {
		t.Fatal(err)
	}
	if id.Questions[0].Feature == "ribs" {
		t.Error("asks for the laboratory where a look would do")
	}
}
