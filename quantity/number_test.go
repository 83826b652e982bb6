package quantity

import (
	"errors"
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestNumbersAreReadExactly(t *testing.T) {
	for _, c := range []struct{ text, value, step, rest string }{
		{"12", "12", "1", ""},
		{"0.20", "1/5", "1/100", ""},
		{".5", "1/2", "1/10", ""},
		{"+3", "3", "1", ""},
		{"- 3", "-3", "1", ""},
		{"2,05", "41/20", "1/100", ""},
		{"0,250", "1/4", "1/1000", ""},
		{"1234,567", "1234567/1000", "1/1000", ""},
		{"1,250,000", "1250000", "1", ""},
		{"1,250.5", "2501/2", "1/10", ""},
		{"12 400", "12400", "1", ""},
		{"12 400.5", "24801/2", "1/10", ""},
		{"7/16", "7/16", "1/16", ""},
		{"1 1/4", "5/4", "1/4", ""},
		{"1-1/4", "5/4", "1/4", ""},
		{"-1-1/4", "-5/4", "1/4", ""},
		{"1¼", "5/4", "1/4", ""},
		{"¼", "1/4", "1/4", ""},
		{"1 ⅜", "11/8", "1/8", ""},
		{"010", "10", "1", ""}, // no octal numbers in a workshop
		{"010/016", "5/8", "1/16", ""},
		{"2/00800", "1/400", "1/800", ""},
		{"0.010", "1/100", "1/1000", ""},
		{"46/13", "46/13", "1/13", ""},
		{"1.25e6", "1250000", "10000", ""},
		{"1.2E-5", "3/250000", "1/1000000", ""},
		{"1.2×10^-5", "3/250000", "1/1000000", ""},
		{"2 x10^3", "2000", "1000", ""},
		{"30 1/min", "30", "1", " 1/min"},
		{"5 ml/100g", "5", "1", " ml/100g"},
		{"12mm", "12", "1", "mm"},
		{"5..8", "5", "1", "..8"},
		{"1 2345", "1", "1", " 2345"},
	} {
		n, rest, fault := readNumber(c.text)
		if fault != nil {
			t.Errorf("%q: %s", c.text, fault.says)
			continue
		}
		if n.value.Cmp(rat(c.value)) != 0 || n.step.Cmp(rat(c.step)) != 0 || rest != c.rest {
			t.Errorf("%q = %s, step %s, rest %q; want %s, %s, %q", c.text, n.value, n.step, rest, c.value, c.step, c.rest)
		}
	}
}

func TestNumbersThatCannotBeRead(t *testing.T) {
	for text, want := range map[string]Reason{
		"2,500":     AmbiguousText, // 2500 or 2.5
		"999,000":   AmbiguousText,
		"0-1/4":     AmbiguousText, // a fraction or a range
		"1.2.3":     NotANumber,
		"1.250,5":   NotANumber,
		"1,2,3":     NotANumber,
		"1,25,000":  NotANumber,
		"1 5/4":     NotANumber, // the fraction is not below one
		"7/0":       NotANumber,
		"7/000":     NotANumber,
		"NaN":       NotANumber,
		"Inf":       NotANumber,
		"mm":        NotANumber,
		"-":         NotANumber,
		",5":        NotANumber,
		"1e999":     OutOfRange,
		"1e9999999": OutOfRange,
	} {
		if n, _, fault := readNumber(text); fault == nil {
			t.Errorf("%q is read as %s", text, n.value)
		} else if fault.reason != want {
			t.Errorf("%q: %s (%s), want %s", text, fault.reason, fault.says, want)
		}
	}
}

// The factor of a unit is exact, so a fraction of an inch is the float64
// nearest to the true length, not a product of rounded numbers.
func TestFractionsOfAnInchAreExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := int64(1) << rapid.IntRange(1, 7).Draw(t, "halvings")
		over := rapid.Int64Range(1, parts-1).Draw(t, "over")
		whole := rapid.Int64Range(1, 500).Draw(t, "whole")
		text := big.NewInt(whole).String() + " " + big.NewInt(over).String() + "/" + big.NewInt(parts).String() + " in"
		want, _ := new(big.Rat).Mul(big.NewRat(whole*parts+over, parts), big.NewRat(254, 10000)).Float64()
		q, err := Parse(text, Length)
		if err != nil || q.SI != want {
			t.Fatalf("%s = %v, %v; want %v", text, q.SI, err, want)
		}
	})
}

func TestNumbersTooLongToBeMeantAreRefused(t *testing.T) {
	digits := strings.Repeat("9", mostDigits)
	for _, text := range []string{digits + "9", "1 1/" + digits, "1e999999999999999999999"} {
		if n, _, fault := readNumber(text); fault == nil {
			t.Errorf("%.20s… is read as %s", text, n.value)
		}
	}
}

func TestResolutionIsTheLastDigitTyped(t *testing.T) {
	for _, c := range []struct {
		text string
		dim  Dimension
		want float64
	}{
		{"0.20 mm", Length, 1e-5},
		{"0.2 mm", Length, 1e-4},
		{"8 thou", Length, 25.4e-6},
		{"7/16 in", Length, 0.0254 / 16},
		{"1450 kg", Mass, 1},
		{"80.0 °C", Temperature, 0.1},
		{"2,05 N·m", Torque, 0.01},
		{"8 %", Share, 0.01},
		{"0.15..0.3 mm", Length, 1e-4}, // the coarser end
		{"12.0 mm ± 1 mm", Length, 1e-4},
	} {
		if q := read(t, c.text, c.dim); !near(q.Resolution, c.want) {
			t.Errorf("%s resolves %g, want %g", c.text, q.Resolution, c.want)
		}
	}
}

func TestParseErrorCarriesItsReason(t *testing.T) {
	_, err := Parse("2,500 N", Force)
	var e *ParseError
	if !errors.As(err, &e) || e.Reason != AmbiguousText || e.Text != "2,500 N" || e.Dim != Force {
		t.Errorf("got %#v", err)
	}
}
