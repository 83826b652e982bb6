package setup

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"axlewright/axle"
	"axlewright/calc/gear"
)

const degree = math.Pi / 180

// light is the spec of an invented casting T24 without figures of its own.
var light = Spec{Name: "T24", Kind: LightAdjusted}

func must[T any](t testing.TB) func(T, error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// pair354 is a spiral bevel pair of 46/13 teeth, 20° and 35°.
func pair354(t testing.TB, dialRadius float64) Mesh { return pairOf(t, 13, 46, dialRadius) }

func pairOf(t testing.TB, pinion, wheel int, dialRadius float64) Mesh {
	t.Helper()
	cones := must[gear.PitchCones](t)(gear.BevelPitchCones(pinion, wheel, 35*degree, 0.094))
	return Mesh{Cones: cones, Drive: 20 * degree, Coast: 20 * degree, DialRadius: dialRadius}
}

func thou(n float64) Mark       { return Mark{Read(n), MarkThou, PlusFurther} }
func hundredths(n float64) Mark { return Mark{Read(n), MarkHundredths, PlusFurther} }

func near(a, b, within float64) bool { return math.Abs(a-b) <= within }

// wantState fails with all that the answer says.
func wantState(t *testing.T, a Answer, want State, words ...string) {
	t.Helper()
	if a.State != want {
		t.Errorf("state %q, want %q\n%s", a.State, want, told(a))
	}
	if a.Reason == "" {
		t.Errorf("no reason\n%s", told(a))
	}
	for _, w := range words {
		if !a.Has(w) {
			t.Errorf("nothing says %q\n%s", w, told(a))
		}
	}
}

// Has says whether any instruction, question, note or reason holds the words.
func (a *Answer) Has(words string) bool {
	all := slices.Concat(a.Say, a.Ask, a.Notes, []string{a.Reason})
	return slices.ContainsFunc(all, func(s string) bool { return strings.Contains(s, words) })
}

func told(a Answer) string {
	var b strings.Builder
	b.WriteString("reason: " + a.Reason)
	for _, part := range []struct {
		name  string
		lines []string
	}{{"say", a.Say}, {"ask", a.Ask}, {"note", a.Notes}} {
		for _, l := range part.lines {
			b.WriteString("\n" + part.name + ": " + l)
		}
	}
	return b.String()
}

// wantField fails unless the error names the field and says what was expected.
func wantField(t *testing.T, err error, field string) {
	t.Helper()
	var found axle.Findings
	if !errors.As(err, &found) {
		t.Errorf("%s: error %v, want findings", field, err)
		return
	}
	for _, f := range found {
		if f.Field == field {
			if !strings.Contains(f.Problem, "expected") || f.File != "" {
				t.Errorf("%s: %q does not say what was expected, or names a file", field, f)
			}
			return
		}
	}
	t.Errorf("no finding for %s in %v", field, err)
}
