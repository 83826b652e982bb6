package axle

import (
	"errors"
	"math"
	"os"
	"slices"
	"strings"
	"testing"
)

const matrixFile = "../examples/matrix/casting.yaml"

func measuredCasting(t *testing.T) *Compliance {
	t.Helper()
	_, c, err := LoadEnquiry("../examples/matrix/t24-bench.yaml")
	if err != nil {
		t.Fatal(err)
	}
	k, err := c.Casting("T24-bench")
	if err != nil {
		t.Fatal(err)
	}
	return k.Compliance
}

// The entries come out in SI whatever their units, and the mean of the two
// readings of a pair counts.
func TestComplianceInSI(t *testing.T) {
	c := measuredCasting(t)
	if !c.Couples() {
		t.Error("pinion and wheel are not coupled")
	}
	check := func(of *Compliance) {
		t.Helper()
		m, err := of.Matrix()
		if err != nil {
			t.Fatal(err)
		}
		for _, x := range []struct {
			i, j int
			want float64
		}{
			{0, 0, 1.02e-9},             // µm/kN in m/N
			{2, 2, 690e-9},              // µrad/(kN·m) in rad/(N·m)
			{1, 2, (8.2 + 8) / 2 / 1e9}, // µm/(kN·m) and µrad/kN
			{2, 1, (8.2 + 8) / 2 / 1e9},
			{5, 0, -0.205e-9},
		} {
			if got := m.At(x.i, x.j); math.Abs(got-x.want) > 1e-12*math.Abs(x.want) {
				t.Errorf("%d,%d: %g, want %g", x.i, x.j, got, x.want)
			}
		}
	}
	check(c)
	// The same in units that are not a thousand apart: mixed entries need their own.
	other := *c
	other.Units = ComplianceUnits{Shift: "mm", Force: "N", Turn: "rad", Moment: "kN·m"}
	other.Rows = nil
	for i, row := range c.Rows {
		own := slices.Clone(row)
		for j := range own {
			own[j] *= 1e-3 // µm in mm
			if c.Freedoms[i].turns() {
				own[j] *= 1e-3 // µrad in rad
			}
			if !c.Freedoms[j].turns() {
				own[j] *= 1e-3 // for each kN in for each N
			}
		}
		other.Rows = append(other.Rows, own)
	}
	check(&other)
	scaled := *c
	scaled.Scale.Number = Number{Value: 1.5, Origin: Measured}
	m, err := scaled.Matrix()
	if err != nil || math.Abs(m.At(0, 0)-1.53e-9) > 1e-20 {
		t.Errorf("scaled: %v %v", m.At(0, 0), err)
	}
}

// Every freedom has its name once, pinion first.
func TestFreedomsOfACasting(t *testing.T) {
	want := "head x,head y,head z,head turn y,head turn z,tail x,tail y,tail z,tail turn y,tail turn z," +
		"near y,near z,near x,near turn z,near turn x,far y,far z,far x,far turn z,far turn x,peg y"
	var got []string
	turning := 0
	for _, f := range Freedoms {
		got = append(got, string(f))
		if f.turns() {
			turning++
		}
		if f.turns() != strings.Contains(string(f), "turn") {
			t.Errorf("%s: turns %v", f, f.turns())
		}
	}
	if strings.Join(got, ",") != want || turning != 8 {
		t.Errorf("%d turn, %s", turning, strings.Join(got, ","))
	}
	for i, f := range Freedoms {
		if pinion := strings.HasPrefix(string(f), "head") || strings.HasPrefix(string(f), "tail"); pinion != (i < pinionFreedoms) {
			t.Errorf("%s stands at %d", f, i)
		}
	}
}

// A matrix that no casting has is told where it is wrong.
func TestBrokenCompliance(t *testing.T) {
	text, err := os.ReadFile(matrixFile)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		old, with   string
		field, says string
	}{
		{"shift: µm,", "shift: µm/kN,", "units.shift", `"µm/kN" is no unit for it; expected one such as µm`},
		{", moment: kN·m}", "}", "units.moment", `"" is no unit for it; expected one such as kN·m`},
		{"[head x, head y,", "[head x, head x,", "freedoms[2]", "head x stands twice"},
		{"[head x, head y,", "[head x, head w,", "freedoms[2]", `"head w" is no`},
		{"- [0.20,  0.11,  1.8,  0.83, 0.12,  0.28, 0.05,  2.9]", "", "rows", "7 rows for 8 freedoms"},
		{"0.28, 0.05,  2.9]", "0.28, 2.9]", "rows[8]", "peg y has 7 entries; expected 8"},
		{"0.28, 0.05,  2.9]", "0.28, 0.05, -2.9]", "rows[8]", "peg y moves by -2.9 under its own load"},
		{"0.28, 0.05,  2.9]", "0.28, 0.05, soft]", "rows[8][8]", `"soft" is no number`},
		{"- [-0.20, 0.10,", "- [0.20, 0.10,", "rows[6]", "not symmetric: head x under a load at far y (-0.21) and far y under a load at head x (0.2)"},
		{"- [0.20,  0.11,  1.8,  0.83,", "- [0.20,  0.11,  1.8,  0.43,", "rows[8]", "by Maxwell's law they are equal"},
	} {
		file := strings.Replace(string(text), c.old, c.with, 1)
		if file == string(text) {
			t.Fatalf("the example has no %q", c.old)
		}
		folder := t.TempDir()
		_, err := LoadCatalogue("../examples/tarnhow.yaml", "../examples/upgrades.yaml", write(t, folder, "casting.yaml", file))
		expect(t, findings(t, err), 0, "castings[T24-bench].compliance."+c.field, c.says)
	}
}

// Loads along an eigenvector of negative compliance would give energy back.
func TestComplianceMustBePositive(t *testing.T) {
	c := &Compliance{
		Units:    ComplianceUnits{Shift: "µm", Force: "kN"},
		Freedoms: []Freedom{"near y", "head x", "far y"},
		Rows:     [][]Entry{{4, 0.1, 4.2}, {0.1, 1, 0}, {4.2, 0, 4}},
	}
	_, err := c.Matrix()
	var wrong *BadCompliance
	if !errors.As(err, &wrong) || !strings.Contains(wrong.Problem, "near y and far y, loaded together") {
		t.Error(err)
	}
	c.Rows[0][2], c.Rows[2][0] = 3.9, 3.9
	if _, err := c.Matrix(); err != nil {
		t.Error(err)
	}
}
