package axle

import (
	"math"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

// readLength reads a figure of a length through the YAML library.
func readLength(t *testing.T, text string) (Length, error) {
	t.Helper()
	var q Length
	err := yaml.Unmarshal([]byte(text), &q)
	return q, err
}

func TestFiguresAreReadAsTyped(t *testing.T) {
	for _, c := range []struct {
		text              string
		value, low, high  float64
		shape             Shape
		origin            Origin
		certain, doubtful bool
	}{
		{"26 mm", 0.026, 0.026, 0.026, Exact, Assumed, false, false},
		{"26 mm, measured", 0.026, 0.026, 0.026, Exact, Measured, false, false},
		{"26 mm, maker, exact", 0.026, 0.026, 0.026, Exact, Maker, true, false},
		{"26 mm, exact, maker", 0.026, 0.026, 0.026, Exact, Maker, true, false},
		{"26 mm ± 0.5 mm, trade", 0.026, 0.0255, 0.0265, Normal, Trade, false, true},
		{"26 ± 0.5 mm", 0.026, 0.0255, 0.0265, Normal, Assumed, false, true},
		{"20 mm ± 25 %, computed", 0.020, 0.016, 0.025, Lognormal, Computed, false, true},
		{"-20 mm ± 25 %", -0.020, -0.025, -0.016, Lognormal, Assumed, false, true},
		{"0.15..0.30 mm", 0.000225, 0.00015, 0.0003, Uniform, Assumed, false, true},
		{"1 in", 0.0254, 0.0254, 0.0254, Exact, Assumed, false, false},
		{"8 thou", 0.0002032, 0.0002032, 0.0002032, Exact, Assumed, false, false},
		{"{value: 26 mm}", 0.026, 0.026, 0.026, Exact, Assumed, false, false},
		{"{value: 26 mm, spread: 0.5 mm, origin: measured}", 0.026, 0.0255, 0.0265, Normal, Measured, false, true},
		{"{value: 26 mm, spread: ± 0.5 mm, shape: uniform}", 0.026, 0.0255, 0.0265, Uniform, Assumed, false, true},
		{"{value: 26 mm, spread: 0.5 mm, shape: triangular}", 0.026, 0.0255, 0.0265, Triangular, Assumed, false, true},
		{"{value: 20 mm, spread: 5 mm, shape: lognormal}", 0.020, 0.016, 0.025, Lognormal, Assumed, false, true},
		{"{value: 20 mm, spread: 25 %, shape: normal}", 0.020, 0.015, 0.025, Normal, Assumed, false, true},
		{"{value: 1..4 mm, shape: lognormal}", 0.002, 0.001, 0.004, Lognormal, Assumed, false, true},
		{"{value: 1..4 mm, shape: triangular}", 0.0025, 0.001, 0.004, Triangular, Assumed, false, true},
		{"{low: 1 mm, high: 4 mm}", 0.0025, 0.001, 0.004, Uniform, Assumed, false, true},
		{"{value: 2 mm, low: 1 mm, high: 4 mm}", 0.002, 0.001, 0.004, Triangular, Assumed, false, true},
		{"{value: 2 mm, low: 1 mm, high: 4 mm, shape: lognormal}", 0.002, 0.001, 0.004, Lognormal, Assumed, false, true},
		{"{value: 2 mm, low: 1 mm, high: 3 mm, shape: normal}", 0.002, 0.001, 0.003, Normal, Assumed, false, true},
		{"{one_of: [1 mm, 4 mm, 2 mm], weights: [1, 1, 3], origin: maker}", 0.002, 0.001, 0.004, Discrete, Maker, false, true},
	} {
		q, err := readLength(t, c.text)
		if err != nil {
			t.Errorf("%s: %v", c.text, err)
			continue
		}
		near := func(a, b float64) bool { return math.Abs(a-b) <= 1e-12 }
		if !near(q.Value, c.value) || !near(q.Low, c.low) || !near(q.High, c.high) || q.Shape != c.shape ||
			q.Origin != c.origin || q.Certain != c.certain || q.Doubtful() != c.doubtful || q.Kind != "length" || q.Line != 1 {
			t.Errorf("%s is read as %+v", c.text, q.Number)
		}
	}
}

func TestAShareOfAPlainNumberIsRelative(t *testing.T) {
	var q Ratio
	if err := yaml.Unmarshal([]byte("0.20 ± 25 %"), &q); err != nil {
		t.Fatal(err)
	}
	if q.Shape != Lognormal || math.Abs(q.Low-0.16) > 1e-12 || math.Abs(q.High-0.25) > 1e-12 {
		t.Errorf("read as %+v, want 0.16 to 0.25", q.Number)
	}
	for _, text := range []string{"0.2 ± -25 %", "0.1..0.3 ± 25 %", "0.2 ± 25 % ± 3 %"} {
		if err := yaml.Unmarshal([]byte(text), &q); err == nil {
			t.Errorf("%q is read as %+v", text, q.Number)
		}
	}
}

func TestFiguresRefused(t *testing.T) {
	for _, c := range []struct{ text, says string }{
		{"26", "the unit is missing"},
		{"26 kg", "expected a length such as 12 mm, got a mass"},
		{"26 mm ± -0.5 mm", "a spread is not negative: write 26 mm ± 0.5 mm"},
		{"{value: 26 mm, spread: -0.5 mm}", "a spread is not negative"},
		{"26 mm ± 0.5 mm, exact", "says both exact and a doubt"},
		{"26 mm ± 500 %", "a doubt of more than 300 % says nothing"},
		{"{value: 26 mm, spread: 301 %}", "a doubt of more than 300 % says nothing"},
		{"26 mm, guessed", `"guessed" is no origin`},
		{"{value: 26 mm, origin: guessed}", `"guessed" is no origin; expected measured, maker, trade, computed or assumed`},
		{"{value: 26 mm, spred: 1 mm}", `unknown key "spred" of a figure; is "spread" meant?`},
		{"{value: 26 mm, measured}", "inside { } a comma ends a value"},
		{"{spread: 1 mm}", "a figure needs a value, such as {value: 12 mm}"},
		{"{value: 26 mm, shape: normal}", "a shape needs a spread"},
		{"{value: 26 mm, spread: 1 mm, shape: round}", `"round" is no shape of a doubt`},
		{"{value: 1 mm, spread: 2 mm, shape: lognormal}", "never reaches zero"},
		{"{low: 3 mm, high: 1 mm}", "low 3 mm is above high 1 mm"},
		{"{low: 3 mm}", "low and high go together"},
		{"{value: 9 mm, low: 1 mm, high: 3 mm}", "the value lies outside low and high"},
		{"{value: 2.5 mm, low: 1 mm, high: 3 mm, shape: normal}", "has its value in the middle"},
		{"{value: 2.5 mm, low: 1 mm, high: 3 mm, shape: lognormal}", "square root of low times high"},
		{"{low: 1 mm, high: 3 mm, shape: normal}", "needs its value beside low and high"},
		{"{value: 2 mm, low: 1..2 mm, high: 3 mm}", "has a doubt of its own"},
		{"{value: 2 mm, low: 1 mm, high: 3 mm, spread: 1 mm}", "leave one out"},
		{"{one_of: [1 mm]}", "a list of two values or more"},
		{"{one_of: 1 mm}", "a list of two values or more"},
		{"{one_of: [1 mm, 2 mm], weights: [1]}", "a list of 2 numbers"},
		{"{one_of: [1 mm, 2 mm], weights: [1, -1]}", `"-1" is no weight`},
		{"{one_of: [1 mm, 2 mm], value: 1 mm}", "has no value"},
		{"{one_of: [1 mm, 2 mm], shape: normal}", "is discrete, not normal"},
		{"{weights: [1, 2]}", "weights go with one_of"},
		{"{value: {a: 1}}", "expected one value"},
		{"[1 mm]", "expected one value, not a list"},
		{"~", "there is no value here"},
		{"!!str 3 mm", "tags (!) are not used"},
		{"1e999 m", "out of reach"},
		{".nan", "it does not start with a number"},
		{strings.Repeat("1", 500) + " mm", "too long"},
	} {
		q, err := readLength(t, c.text)
		if err == nil {
			t.Errorf("%s is read as %+v", c.text, q.Number)
			continue
		}
		if !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: the refusal is\n%v\nwant %q in it", c.text, err, c.says)
		}
	}
}

func TestQuantilesAreThoseOfTheDistributions(t *testing.T) {
	type quantiler interface{ Quantile(float64) float64 }
	triangle := distuv.NewTriangle(1, 5, 2, nil)
	for _, c := range []struct {
		name   string
		figure Number
		want   quantiler
	}{
		{"normal", Number{Value: 10, Low: 8, High: 12, Shape: Normal}, distuv.Normal{Mu: 10, Sigma: 1}},
		{"lognormal", Number{Value: 10, Low: 8, High: 12.5, Shape: Lognormal}, distuv.LogNormal{Mu: math.Log(10), Sigma: math.Log(1.25) / 2}},
		{"uniform", Number{Value: 3, Low: 1, High: 5, Shape: Uniform}, distuv.Uniform{Min: 1, Max: 5}},
		{"triangular", Number{Value: 2, Low: 1, High: 5, Shape: Triangular}, triangle},
	} {
		for p := 0.005; p < 1; p += 0.005 {
			got, want := c.figure.Quantile(p), c.want.Quantile(p)
			if math.Abs(got-want) > 1e-9*math.Abs(want) {
				t.Fatalf("%s at %g: %g, want %g", c.name, p, got, want)
			}
		}
	}
	if got := (Number{Value: 7, Shape: Exact}).Quantile(0.01); got != 7 {
		t.Errorf("an exact figure gives %g", got)
	}
}

func TestADiscreteFigureComesUpByItsWeights(t *testing.T) {
	q, err := readLength(t, "{one_of: [3 mm, 1 mm, 2 mm], weights: [1, 2, 5]}")
	if err != nil {
		t.Fatal(err)
	}
	const n = 8000
	count := map[float64]int{}
	before := 0.0
	for i := range n {
		x := q.Quantile((float64(i) + 0.5) / n)
		if x < before {
			t.Fatal("the quantile falls")
		}
		before = x
		count[x]++
	}
	if count[0.001] != 2000 || count[0.002] != 5000 || count[0.003] != 1000 {
		t.Errorf("of %d draws: %v, want 2:5:1", n, count)
	}
}

// The tail that would leave the range is cut off and the rest stays in
// proportion: the quantiles are those of the truncated distribution.
func TestADoubtIsCutOffWhereItCannotBe(t *testing.T) {
	n := Number{Value: 0.9, Low: 0.7, High: 1.1, Shape: Normal}
	n.keepWithin(0, 1)
	uncut := distuv.Normal{Mu: 0.9, Sigma: 0.1}
	below, above := uncut.CDF(0), uncut.CDF(1)
	for p := 0.001; p < 1; p += 0.001 {
		x := n.Quantile(p)
		if x < 0 || x > 1 {
			t.Fatalf("at %g it is %g", p, x)
		}
		if got := (uncut.CDF(x) - below) / (above - below); math.Abs(got-p) > 1e-9 {
			t.Fatalf("%g stays below %g with probability %g", p, x, got)
		}
	}
	share := Number{Value: 0.95, Shape: Lognormal}
	share.spreadShare(0.2)
	share.keepWithin(0, 1)
	if top := share.Quantile(0.9999); top > 1 || top < 0.99 {
		t.Errorf("the top of a share is %g", top)
	}
	far := Number{Value: 10, Low: 9.9, High: 10.1, Shape: Normal}
	far.keepWithin(0, math.Inf(1))
	if far.bounds.cut {
		t.Error("a doubt far from its bounds was cut")
	}
	for _, still := range []Number{{Value: 3, Low: 3, High: 3, Shape: Normal}, {Value: -2, Low: -3, High: -1.5, Shape: Lognormal}, {Value: 1, Low: 0, High: 2, Shape: Uniform}} {
		still.keepWithin(0, 1)
		if x := still.Quantile(0.5); math.IsNaN(x) {
			t.Errorf("%+v becomes %g", still, x)
		}
	}
}

// What is written reads back as the same figure, whether it was typed or made.
func TestWrittenFiguresReadBackTheSame(t *testing.T) {
	finite := rapid.Float64Range(1e-6, 1e6)
	rapid.Check(t, func(t *rapid.T) {
		n := Number{Origin: rapid.SampledFrom(origins).Draw(t, "origin")}
		n.Value = finite.Draw(t, "value")
		n.Low, n.High = n.Value, n.Value
		switch n.Shape = rapid.SampledFrom([]Shape{Exact, Normal, Lognormal, Uniform, Triangular, Discrete}).Draw(t, "shape"); n.Shape {
		case Exact:
			n.Certain = rapid.Bool().Draw(t, "certain")
		case Normal:
			half := n.Value * rapid.Float64Range(0.001, 1).Draw(t, "share")
			n.Low, n.High = n.Value-half, n.Value+half
		case Lognormal:
			n.spreadShare(rapid.Float64Range(0.001, 3).Draw(t, "share"))
		case Uniform:
			n.High = n.Low + finite.Draw(t, "width")
			n.Value = (n.Low + n.High) / 2
		case Triangular:
			n.Low, n.High = n.Value*rapid.Float64Range(0, 1).Draw(t, "down"), n.Value*rapid.Float64Range(1, 3).Draw(t, "up")
		case Discrete:
			n.Choices = []Choice{{n.Value, 0.75}, {n.Value * 2, 0.25}}
			n.High = n.Value * 2
		}
		if rapid.Bool().Draw(t, "noted") {
			n.Note = rapid.StringMatching(`[a-zA-Z0-9:#,'"{}\[\] µ±%-]{1,30}`).Draw(t, "note")
			if strings.TrimSpace(n.Note) == "" {
				n.Note = "x"
			}
		}
		text, err := yaml.Marshal(map[string]Length{"width": {Number: n}})
		if err != nil {
			t.Fatal(err)
		}
		var back map[string]Length
		if err := yaml.Unmarshal(text, &back); err != nil {
			t.Fatalf("%+v is written as %s\nand refused: %v", n, text, err)
		}
		if got := back["width"].Number; !n.same(got) {
			t.Fatalf("%+v is written as %s\nand read as %+v", n, text, got)
		}
	})
}

func TestTypedFiguresAreWrittenAsTyped(t *testing.T) {
	for _, text := range []string{
		"26 mm", "26.0 mm ± 0.50 mm, measured", "7/16 in, maker, exact", "20 mm ± 25 %", "0.15..0.30 mm",
		"{value: 26 mm, spread: 0.5 mm, shape: triangular, origin: measured, note: by caliper}",
		"{one_of: [1 mm, 2 mm], weights: [3, 1]}",
	} {
		q, err := readLength(t, text)
		if err != nil {
			t.Fatal(err)
		}
		out, err := yaml.Marshal(q)
		if err != nil || strings.TrimSpace(string(out)) != text {
			t.Errorf("%s is written as %s (%v)", text, out, err)
		}
	}
	for _, text := range []string{"0.180", "3.54", "41/10 ± 2 %"} {
		var q Ratio
		if err := yaml.Unmarshal([]byte(text), &q); err != nil {
			t.Fatal(err)
		}
		if out, err := yaml.Marshal(q); err != nil || strings.TrimSpace(string(out)) != text {
			t.Errorf("%s is written as %s (%v)", text, out, err)
		}
	}
}

func TestAChangedFigureIsWrittenChanged(t *testing.T) {
	q, err := readLength(t, "26 mm ± 0.5 mm, measured")
	if err != nil {
		t.Fatal(err)
	}
	q.Value, q.Low, q.High = 0.03, 0.029, 0.031
	out, err := yaml.Marshal(q)
	if err != nil {
		t.Fatal(err)
	}
	again, err := readLength(t, string(out))
	if err != nil || !q.same(again.Number) {
		t.Errorf("written as %s, read as %+v (%v)", out, again.Number, err)
	}
}
