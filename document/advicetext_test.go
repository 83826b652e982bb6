package document

import (
	"math"
	"strings"
	"testing"

	"axlewright/assess"
	"axlewright/drawing/sample"
)

func TestAdviceTextSays(t *testing.T) {
	var b strings.Builder
	if err := AdviceText(&b, sample.Advice()); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"E-0412   Hollin Bank Farm", "WHAT THE VEHICLE CAN PUT THROUGH THIS AXLE", "✓ Recommended: better cap bolts, ring dowels and bolted adjuster locks (price 866).",
		"Weak link: head bearing dents", "Next one up: better cap bolts", "lasts 60,000 km (37,000 mi)", "▸     866  ✓ 93 %", "NOT KNOWN", "seed 1",
	} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %q in\n%s", want, b.String())
		}
	}
	for _, line := range strings.Split(b.String(), "\n") {
		if n := len([]rune(line)); n > width+12 {
			t.Errorf("%d letters in %q", n, line)
		}
	}
}

func TestAdviceTextStandsAnything(t *testing.T) {
	for _, a := range []*assess.Advice{sample.Hopeless(), sample.Single(), sample.Full(), sample.Wild(), {Best: -1, Recommended: -1, NextUp: -1}} {
		var b strings.Builder
		if err := AdviceText(&b, a); err != nil || strings.Contains(b.String(), "%!") {
			t.Errorf("%v in\n%s", err, b.String())
		}
	}
}

func TestPrices(t *testing.T) {
	for x, want := range map[float64]string{0: "0", 655: "655", 1480: "1,480", 1234567: "1,234,567", -1480: "-1,480", -655: "-655"} {
		if got := price(x); got != want {
			t.Errorf("%v is %q, want %q", x, got, want)
		}
	}
}

func TestBands(t *testing.T) {
	inf := math.Inf(1)
	for _, c := range []struct {
		band assess.Band
		want string
	}{
		{assess.Band{Median: 4120, Low: 3300, High: 5100}, "4,120 N·m (3,040 lbf·ft), 3,300 to 5,100 N·m"},
		{assess.Band{Median: 4120, Low: 3300, High: inf}, "4,120 N·m (3,040 lbf·ft), from 3,300 N·m"},
		{assess.Band{Median: inf, Low: 3300, High: inf}, "beyond what was looked at"},
	} {
		if got := bandText(c.band); got != c.want {
			t.Errorf("%+v is %q, want %q", c.band, got, c.want)
		}
	}
}

func TestHiddenBuildsAreCounted(t *testing.T) {
	for _, c := range []struct {
		hidden, aside int
		want          string
	}{
		{0, 0, ""},
		{1, 0, "1 more build costs more and carries this vehicle no more surely."},
		{3, 1, "3 more builds cost more and carry this vehicle no more surely; 1 other is dearer and in no link stronger."},
		{0, 2, "2 others are dearer and in no link stronger."},
	} {
		if got := hiddenWords(c.hidden, c.aside); got != c.want {
			t.Errorf("%d, %d: %q", c.hidden, c.aside, got)
		}
	}
}

func TestAnswerWarnsOfWear(t *testing.T) {
	a := sample.Advice()
	b := &a.Builds[a.Best]
	b.Links = append(b.Links, assess.Rung{Name: "tooth flanks pit", Kind: assess.Wears})
	b.WearsFirst, b.Lasts = len(b.Links)-1, assess.Chance{Value: 0.1}
	sign, says := recommendation(a, unnamed)
	if sign != "△" || !strings.Contains(says, "likely to wear out before 60,000 km (37,000 mi): chance to last 10 %; first: tooth flanks pit") {
		t.Errorf("%s %s", sign, says)
	}
	b.Lasts.Value = 0.9
	if sign, says := recommendation(a, unnamed); sign != "✓" || !strings.Contains(says, "wears out before 60,000 km (37,000 mi): 90 %") {
		t.Errorf("%s %s", sign, says)
	}
}

func TestUnitStaysWithItsFigureAtTheEndOfALine(t *testing.T) {
	for n := range 12 { // the end of the line falls before, within and behind the figure
		var b strings.Builder
		w := &text{out: &b}
		w.wrap("· ", strings.Repeat("ab ", (width-24)/3)+strings.Repeat("a", n+1)+" of a chance of 99 %; and more")
		if !strings.Contains(b.String(), "99 %;") {
			t.Errorf("%q", b.String())
		}
	}
}
