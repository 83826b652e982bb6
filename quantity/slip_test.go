package quantity

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestSlips(t *testing.T) {
	mm, units := 1e-3, []string{"mm", "thou", "in"}
	open := math.Inf(1)
	for _, c := range []struct {
		typed     string
		low, high float64
		want      string // "" is no query
	}{
		{"1.8 mm", 0.076 * mm, 0.177 * mm, "0.18 mm"}, // the tenth lies near the band
		{"2.1 mm", 0.076 * mm, 0.177 * mm, ""},        // and here it does not
		{"2.0 mm", 0.15 * mm, 0.25 * mm, "0.20 mm"},
		{"0.020 mm", 0.15 * mm, 0.25 * mm, "0.20 mm"},
		{"0,02 mm", 0.15 * mm, 0.25 * mm, "0.2 mm"},
		{"20 thou", 0.05 * mm, 0.10 * mm, "2.0 thou"},
		{"6 mm", 0.076 * mm, 0.177 * mm, "6 thou"}, // 6 × 0.0254 mm = 0.152 mm
		{"0.006 mm", 0.076 * mm, 0.177 * mm, "0.006 in"},
		{"0.20 mm", 0.15 * mm, 0.25 * mm, ""}, // within
		{"0.30 mm", 0.15 * mm, 0.25 * mm, ""}, // outside, and no slip explains it
		{"0.12 mm", 0, 0.10 * mm, ""},         // a run-out that is a little large is a reading
		{"0.8 mm", 0, 0.10 * mm, "0.08 mm"},
		{"0.7 mm", 6 * mm, open, "7 mm"},
		{"5 mm", 6 * mm, open, ""},
		{"0 mm", 0.15 * mm, 0.25 * mm, ""},
		{"1/16 in", 0.15 * mm, 0.16 * mm, ""}, // a fraction is not retyped
		{"2.0 ± 0.1 mm", 0.15 * mm, 0.25 * mm, ""},
	} {
		slips := Slips(c.typed, Length, c.low, c.high, units)
		got := ""
		if len(slips) > 0 {
			got = slips[0].Typed
		}
		if got != c.want {
			t.Errorf("%s for %g to %g: %q, want %q", c.typed, c.low, c.high, got, c.want)
		}
	}
}

// Whatever is asked after lies within the range and can be typed.
func TestSlipsLieWithin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		typed := rapid.StringMatching(`[0-9]{0,4}[.,]?[0-9]{0,4} ?(mm|thou|in|)`).Draw(t, "typed")
		low := rapid.Float64Range(0, 1e-2).Draw(t, "low")
		high := low * rapid.Float64Range(1, 20).Draw(t, "wide")
		for _, s := range Slips(typed, Length, low, high, []string{"mm", "thou", "in"}) {
			q, err := Parse(s.Typed, Length)
			if err != nil || q.SI != s.SI || q.SI < low*(1-1e-9)*0.9 || q.SI > high*(1+1e-9)*1.1 {
				t.Fatalf("%q for %g to %g: %+v, %v", typed, low, high, s, err)
			}
		}
	})
}

func TestMovePoint(t *testing.T) {
	for _, c := range []struct {
		number string
		places int
		want   string
	}{{"2.0", -1, "0.20"}, {"2", -1, "0.2"}, {"0.02", 1, "0.2"}, {"15", -1, "1.5"}, {"20", 1, "200"}, {"0.5", 1, "5"}, {".5", -1, "0.05"}, {"1,25", 1, "12.5"}} {
		if got, ok := movePoint(c.number, c.places); !ok || got != c.want {
			t.Errorf("%s by %d: %q, want %q", c.number, c.places, got, c.want)
		}
	}
}
