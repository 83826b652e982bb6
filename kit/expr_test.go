package kit

import (
	"math"
	"strings"
	"testing"
)

func TestExpressions(t *testing.T) {
	known := names{"long": {x: 0.12, power: 1}, "S3.x": {x: 0.04, power: 1}, "holes": {x: 4}}
	for text, want := range map[string]float64{ // as a length, m
		"8":                           0.008,
		"long":                        0.12,
		"long - 8":                    0.112,
		"8 + long/2":                  0.068,
		"2*(long - 2*S3.x)":           0.08,
		"-S3.x + 1 in":                -0.0146,
		"7/16 in":                     0.0111125,
		"13 mm":                       0.013,
		"long × sin(30)":              0.06,
		"sqrt(long*long + S3.x*S3.x)": math.Hypot(0.12, 0.04),
		"max(long, 5, S3.x)":          0.12,
		"min(5, S3.x)":                0.005,
		"abs(S3.x − long)":            0.08,
		"long / holes":                0.03,
		"long*tan(45) - 0.5*long":     0.06,
		"S3.x + long * cos(60)":       0.1,
		".5":                          0.0005,
		"3 mm * 2":                    0.006,
		"long * atan(1) / 45":         0.12,
	} {
		v, err := evaluate(text, known)
		if err != nil {
			t.Errorf("%s: %v", text, err)
			continue
		}
		if x, err := v.length(); err != nil || math.Abs(x-want) > 1e-15 {
			t.Errorf("%s = %.17g, %v, expected %g", text, x, err, want)
		}
	}
}

func TestExpressionsThatMeanNothing(t *testing.T) {
	known := names{"long": {x: 0.12, power: 1}, "n": {x: 4}}
	for text, says := range map[string]string{
		"":                        "nothing",
		"lond":                    "neither a size",
		"S9.x":                    "neither a size",
		"long +":                  "too early",
		"(long":                   "not closed",
		"long)":                   "not expected",
		"long long":               "not expected",
		"8 mm 9":                  "not expected",
		"long / 0":                "nought",
		"long * long":             "an area",
		"long / long":             "plain number",
		"long + n":                "cannot be added",
		"sin(long)":               "plain number",
		"sqrt(-1)":                "square root",
		"sqrt(long)":              "square root",
		"asin(2)":                 "no asin",
		"log(2)":                  "no function",
		"sin(1, 2)":               "one value",
		"8 ft":                    "not expected",
		"8; 9":                    "not understood",
		"1e999":                   "not expected",
		strings.Repeat("9", 400):  "too long",
		strings.Repeat("(", 200):  "brackets",
		strings.Repeat("-", 200):  "brackets",
		strings.Repeat("1+", 300): "longer",
		"*8":                      "not expected",
	} {
		v, err := evaluate(text, known)
		if err == nil {
			_, err = v.length()
		}
		if err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v, expected %q", text, err, says)
		}
	}
}

func FuzzExpression(f *testing.F) {
	f.Add("2*(long - 3 mm)/sin(30)")
	f.Add("-7/16 in + S1.y")
	f.Fuzz(func(t *testing.T, text string) {
		v, err := evaluate(text, names{"long": {x: 0.12, power: 1}, "S1.y": {x: 1, power: 1}})
		if err == nil && (math.IsNaN(v.x) || math.IsInf(v.x, 0)) {
			t.Errorf("%q is %v", text, v)
		}
	})
}
