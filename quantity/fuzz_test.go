package quantity

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// FuzzParse: nothing panics, a refusal says what to write, and what is accepted
// is whole, can be printed and survives storage.
func FuzzParse(f *testing.F) {
	for _, text := range []string{
		"12 mm", "7/16 in", "1-1/4 in", "1¼ in", "2,500 N", "2,05 N·m", "66 lbf ft", "20 in-lb", "-3 °C",
		"1.2'", "8 %", "180..220 HB", "12 ± 0.5 mm", "(12 ± 0.5) mm", "12 mm ± 4 %", "0.15–0.30 mm",
		"0.15 to 0.30 mm", "5 ml/100g", "1.2×10⁻⁶ 1/K", "1e-320 m", "1e400 m", "12 400 lbf", "1,250,000 N",
		"80 °C ± 5 K", "NaN", "±", "..", "1..", "(", "1e", "0x10", "–", "\x00", "\xff", "1 1/0 in", "3.54:1", "2/00800",
	} {
		for dim := range kinds {
			f.Add(text, uint8(dim))
		}
	}
	f.Fuzz(func(t *testing.T, text string, which uint8) {
		dim := kinds[int(which)%len(kinds)].dim
		q, err := Parse(text, dim)
		if err != nil {
			var e *ParseError
			if !errors.As(err, &e) || e.Reason == "" || strings.Contains(e.Error(), "%!") && !strings.Contains(text, "%") ||
				!strings.Contains(e.Error(), "such as") && !strings.Contains(e.Error(), "write ") && !strings.Contains(e.Error(), "±") {
				t.Fatalf("%q: %v", text, err)
			}
			return
		}
		if dim == Name {
			return
		}
		if math.IsNaN(q.SI) || math.IsInf(q.Low, 0) || math.IsInf(q.High, 0) || q.Low > q.SI || q.SI > q.High || !(q.HalfWidth >= 0) || !(q.Resolution >= 0) {
			t.Fatalf("%q gives %+v", text, q)
		}
		if q.String() == "" || Format(q.SI, dim) == "" {
			t.Fatalf("%q prints as nothing", text)
		}
		stored := q.Exact()
		back, err := Parse(stored, dim)
		if err != nil || back.SI != q.SI || back.Low != q.Low || back.High != q.High || back.HalfWidth != q.HalfWidth || back.Spread != q.Spread {
			t.Fatalf("%q gives %+v, is stored as %q and read as %+v, %v", text, q, stored, back, err)
		}
		if again := Exact(q.SI, dim); read(t, again, dim).SI != q.SI {
			t.Fatalf("%g is stored as %q", q.SI, again)
		}
	})
}

func FuzzParseTyre(f *testing.F) {
	for _, text := range []string{"235/85R16", "33x12.50R15", "7.50R16", "750-16", "205R16", "LT235/85R16 120/116Q", "R", "1/1R1", "99x9R99"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		tyre, err := ParseTyre(text)
		if err != nil {
			if !strings.Contains(err.Error(), "235/85R16") {
				t.Fatalf("%q: %v", text, err)
			}
			return
		}
		if !(tyre.LoadedRadius < tyre.OutsideDiameter/2 && tyre.RimDiameter < tyre.OutsideDiameter && tyre.Width > 0 && len(tyre.Notes) > 0) {
			t.Fatalf("%q gives %+v", text, tyre)
		}
	})
}
