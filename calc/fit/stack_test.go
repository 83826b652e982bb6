package fit

import (
	"testing"

	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func TestGapPublished(t *testing.T) {
	const source = "Shigley's Mechanical Engineering Design, 9th ed., ex. 1-7 (from memory)"
	r := must(Stack(StackParams{[]Dimension{
		{1.750 * inch, 0.003 * inch, false}, {0.750 * inch, 0.001 * inch, true},
		{0.120 * inch, 0.005 * inch, true}, {0.875 * inch, 0.001 * inch, true},
	}, 1}))
	published.Check(t, []published.Row{
		{Name: "gap, in", Got: r.Gap / inch, Printed: "0.005", Source: source},
		{Name: "worst case, in", Got: r.WorstCase / inch, Printed: "0.010", Source: source},
		{Name: "root of squares, in", Got: r.Statistical / inch, Printed: "0.006", Source: "derived: √(3² + 1² + 5² + 1²) thou"},
		{Name: "least gap, in", Got: r.Least / inch, Printed: "-0.005", Source: source},
		{Name: "greatest gap, in", Got: r.Greatest / inch, Printed: "0.015", Source: source},
	})
}

func TestShimStackPublished(t *testing.T) {
	const source = "derived: Σt, √Σt² and 1.5·√Σt² of ± 0.02, 0.03, 0.013, 0.025, 0.01 mm"
	var parts []Dimension
	for _, t := range []float64{0.02, 0.03, 0.013, 0.025, 0.01} {
		parts = append(parts, Dimension{0, t * mm, false})
	}
	plain, inflated := must(Stack(StackParams{parts, 1})), must(Stack(StackParams{parts, 1.5}))
	published.Check(t, []published.Row{
		{Name: "worst case, mm", Got: plain.WorstCase / mm, Printed: "0.098", Source: source},
		{Name: "root of squares, mm", Got: plain.Statistical / mm, Printed: "0.0468402", Source: source},
		{Name: "inflated by 1.5, mm", Got: inflated.Statistical / mm, Printed: "0.0702602", Source: source},
		{Name: "± 0.03 mm, evenly likely, as a standard deviation, mm", Got: must(UniformDeviation(0.03*mm)) / mm, Printed: "0.0173", Source: "derived: 0.03/√3 of JCGM 100:2008, 4.3.7"},
	})
}

func TestStackLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 8).Draw(t, "n")
		var parts []Dimension
		for range n {
			parts = append(parts, Dimension{rapid.Float64Range(0, 100).Draw(t, "d") * mm, rapid.Float64Range(0.001, 0.2).Draw(t, "t") * mm, rapid.Bool().Draw(t, "closes")})
		}
		r := must(Stack(StackParams{parts, 1}))
		if r.Statistical > r.WorstCase*(1+1e-12) || n == 1 && !near(r.Statistical, r.WorstCase, 1e-12) {
			t.Errorf("statistical %g, worst %g of %d parts", r.Statistical, r.WorstCase, n)
		}
		for i := range parts {
			parts[i].Closes = !parts[i].Closes
		}
		if turned := must(Stack(StackParams{parts, 1})); turned.Gap != -r.Gap || turned.WorstCase != r.WorstCase {
			t.Errorf("turned round: %+v of %+v", turned, r)
		}
	})
}

func TestStackRefuses(t *testing.T) {
	_, err := Stack(StackParams{nil, 1})
	refuses(t, "Dimensions", err)
	_, err = Stack(StackParams{[]Dimension{{1, -1, false}}, 1})
	refuses(t, "Dimensions", err)
	_, err = Stack(StackParams{[]Dimension{{1, 1, false}}, 0.5})
	refuses(t, "Inflation", err)
	_, err = UniformDeviation(-1)
	refuses(t, "tolerance", err)
}
