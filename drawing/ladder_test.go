package drawing

import (
	"math"
	"slices"
	"strings"
	"testing"

	"axlewright/assess"
	"axlewright/drawing/sample"
)

func TestShown(t *testing.T) {
	frontier := func(n int, best, next int) *assess.Advice {
		a := &assess.Advice{Best: best, Recommended: best, NextUp: next}
		for range n {
			a.Builds = append(a.Builds, assess.Build{Frontier: true})
		}
		return a
	}
	for name, c := range map[string]struct {
		advice *assess.Advice
		want   []int
	}{
		"the sample leaves out what buys nothing": {sample.Advice(), []int{0, 1, 2, 4, 5}},
		"none":                              {&assess.Advice{Best: -1, Recommended: -1, NextUp: -1}, nil},
		"too many: neighbours and cheapest": {frontier(20, 10, 13), []int{0, 8, 9, 10, 11, 13}},
		"nothing recommended":               {sample.Hopeless(), []int{0, 1, 2}},
	} {
		got := Shown(c.advice)
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}

func TestStateOf(t *testing.T) {
	for _, c := range []struct {
		chance float64
		want   State
	}{{0.95, Fine}, {0.9, Fine}, {0.89, Look}, {0.5, Look}, {0.49, Stop}, {math.NaN(), Stop}} {
		if got := StateOf(c.chance, 0.9); got != c.want {
			t.Errorf("%v is %q, want %q", c.chance, got, c.want)
		}
	}
}

// said joins all words of a picture, to look for what it must say.
func said(d Drawing) string {
	var list []string
	for _, t := range texts(d) {
		list = append(list, t.Words)
	}
	return strings.Join(list, " ")
}

func TestLadderSays(t *testing.T) {
	for name, c := range map[string]struct {
		advice *assess.Advice
		want   []string
	}{
		"plain": {sample.Advice(), []string{"demand", "8,300 N·m", "6,120 lbf·ft", "cap walks", "first in 58 %", "then adjuster unwinds", "wears first: near side bearing life", "lasts: 86 %", "lasts: to 60,000 km", "first in 20 %",
			"and 8 links above", "recommended", "next one up", "price 866", "93 %", "good enough", "not sure enough", "too weak", "wears out", "outside the casting", "90 % wanted"}},
		"hopeless": {sample.Hopeless(), []string{"comes nearest", "6 %", "7,700 N·m (5,680 lbf·ft)"}},
		"single":   {sample.Single(), []string{"recommended", "over 99.9 %"}},
	} {
		d := Ladder(c.advice)
		for _, want := range c.want {
			if !strings.Contains(said(d), want) {
				t.Errorf("%s: no %q in %q", name, want, said(d))
			}
		}
	}
	if desc := Ladder(sample.Advice()).Desc; !strings.Contains(desc, "Build 3, recommended: better cap bolts, ring dowels and bolted adjuster locks, price 866, chance 93 %, good enough. Weak link: head bearing dents") {
		t.Errorf("described as %q", desc)
	}
}

// The heavy rung stands where the scale says, and the label beside it.
func TestWeakRungStandsAtItsTorque(t *testing.T) {
	a := sample.Single()
	d := Ladder(a)
	l := newLadder(a, ladderWidth, ladderHeight)
	want := l.y.at(a.Builds[0].Links[a.Builds[0].Weak].GiveOut.Median)
	var rungs []float64
	var name float64
	for _, layer := range d.Layers {
		for _, s := range layer.Shapes {
			switch f := s.(type) {
			case Line:
				if layer.Name == "rungs" && f.Ink.Width == heavy {
					rungs = append(rungs, f.From.Y)
				}
			case Text:
				if f.Words == "cap walks" {
					name = f.At.Y
				}
			}
		}
	}
	if len(rungs) != 1 || rungs[0] != want {
		t.Errorf("heavy rungs at %v, want one at %v", rungs, want)
	}
	if math.Abs(name-want) > 4 {
		t.Errorf("named at %v mm, the rung is at %v mm", name, want)
	}
}

func TestKindsAreDrawnApart(t *testing.T) {
	kinds := map[string]assess.Rung{
		"breaks": {Kind: assess.Breaks}, "wears": {Kind: assess.Wears}, "moves": {Kind: assess.Moves}, "outside": {Kind: assess.Breaks, Outside: true},
	}
	shape := func(r assess.Rung) string {
		var b strings.Builder
		d := Drawing{Name: "rung", Width: 9, Height: 9, Layers: []Layer{{"r", rungShapes(&r, 1, 6, 3, Ink{Width: 0.3})}}}
		if err := WriteSVG(&b, d); err != nil {
			t.Fatal(err)
		}
		return b.String()
	}
	seen := map[string]string{}
	for name, r := range kinds {
		s := shape(r)
		if other, is := seen[s]; is {
			t.Errorf("%s looks like %s", name, other)
		}
		seen[s] = name
	}
}
