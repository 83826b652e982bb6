package quantity

import (
	"errors"
	"strings"
	"testing"

	"axlewright/internal/published"
)

func tyre(t *testing.T, text string) Tyre {
	t.Helper()
	tyre, err := ParseTyre(text)
	if err != nil {
		t.Fatal(err)
	}
	return tyre
}

func TestTyreSizesPublished(t *testing.T) {
	const (
		name = "derived: the size itself, as ISO 4223-1 defines it (from memory)"
		un   = "UN Regulation 54, annex 5 (from memory)"
		why  = "the height of the section is assumed; the note says 3 %"
	)
	mm := func(text string) float64 { return tyre(t, text).OutsideDiameter * 1e3 }
	published.Check(t, []published.Row{
		{Name: "235/85R16", Got: mm("235/85R16"), Printed: "806", Source: name},
		{Name: "235/85R16 loaded", Got: tyre(t, "235/85R16").LoadedRadius * 1e3, Printed: "389", Source: "trade check value: 0.965 of half of 806 mm; common practice, no source"},
		{Name: "33x12.50R15", Got: mm("33x12.50R15") / 25.4, Printed: "33.00", Source: name},
		{Name: "195/65R15", Got: mm("195/65R15"), Printed: "635", Source: "UN Regulation 30 (from memory)"},
		{Name: "185R14", Got: mm("185R14C"), Printed: "650", Source: un, Within: 0.03, Why: why},
		{Name: "205R16", Got: mm("205R16"), Printed: "736", Source: un, Within: 0.03, Why: why},
		{Name: "6.50R16", Got: mm("6.50R16"), Printed: "742", Source: un, Within: 0.03, Why: why},
		{Name: "7.00R16", Got: mm("7.00R16"), Printed: "778", Source: un, Within: 0.03, Why: why},
		{Name: "7.50R16", Got: mm("7.50R16"), Printed: "802", Source: un, Within: 0.03, Why: why},
	})
}

func TestOneTyreHasManySpellings(t *testing.T) {
	for _, same := range [][]string{
		{"235/85R16", "235/85 R 16", "LT235/85R16", "235/85-16", "235/85 16", "235/85r16 120/116Q", "LT 235/85 R16 120/116 Q"},
		{"33x12.50R15", "33X12.50 R15", "33×12.50R15LT", "33x12.5-15", "33*12,50R15", "33x12.50R15LT 108Q"},
		{"7.50R16", "7.50-16", "7,50R16", "7.50 R 16", "750R16", "750-16", "7.50x16", "7.50-16 8PR", "7.50R16C"},
		{"205R16", "205 R 16", "205R16C"},
	} {
		want := tyre(t, same[0])
		for _, text := range same[1:] {
			got := tyre(t, text)
			if !near(got.OutsideDiameter, want.OutsideDiameter) || !near(got.Width, want.Width) || got.RimDiameter != want.RimDiameter || got.Text != text {
				t.Errorf("%s is %+v, %s is %+v", text, got, same[0], want)
			}
		}
	}
}

func TestATyreSaysWhatItAssumes(t *testing.T) {
	for text, words := range map[string][]string{
		"235/85R16":   {"0.965"},
		"7.50R16":     {"104 %", "3 %", "measure", "0.965"},
		"205R16":      {"80 %", "0.965"},
		"33x12.50R15": {"33 in", "0.965"},
	} {
		notes := strings.Join(tyre(t, text).Notes, " ")
		for _, w := range words {
			if !strings.Contains(notes, w) {
				t.Errorf("the notes of %s do not mention %q: %s", text, w, notes)
			}
		}
	}
	if n := len(tyre(t, "235/85R16").Notes); n != 1 {
		t.Errorf("235/85R16 needs one assumption, has %d", n)
	}
}

func TestTyreSizesRefused(t *testing.T) {
	for text, want := range map[string]Reason{
		"":               Empty,
		"big ones":       NotATyre,
		"235/85":         NotATyre,
		"R16":            NotATyre,
		"235/185R16":     OutOfRange,
		"235/05R16":      OutOfRange,
		"235/85R99":      OutOfRange,
		"999/85R16":      OutOfRange,
		"16x12.50R15":    OutOfRange,
		"33x12.50R15xyz": NotATyre,
		"12 mm":          NotATyre,
	} {
		_, err := ParseTyre(text)
		var e *ParseError
		if !errors.As(err, &e) || e.Reason != want {
			t.Errorf("%q: %v, want %s", text, err, want)
		} else if !strings.HasSuffix(e.Error(), "expected a tyre size such as 235/85R16, 33x12.50R15 or 7.50R16") {
			t.Errorf("%q: %v", text, err)
		}
	}
}
