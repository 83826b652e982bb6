package bolt

import (
	"testing"

	"axlewright/internal/published"
)

func TestProofLoadPublished(t *testing.T) {
	const source = "ISO 898-1:2013, table 5 (from memory)"
	const why = "the standard rounds the stress area to three figures and the load to three"
	var rows []published.Row
	for _, c := range []struct {
		class    Class
		d, pitch float64
		printed  string // N
	}{
		{Class8_8, 5, 0.8, "8230"}, {Class8_8, 8, 1.25, "21200"}, {Class8_8, 10, 1.5, "33700"}, {Class8_8, 12, 1.75, "48900"},
		{Class10_9, 5, 0.8, "11800"}, {Class10_9, 8, 1.25, "30400"}, {Class10_9, 10, 1.5, "48100"}, {Class10_9, 12, 1.75, "70000"},
		{Class12_9, 5, 0.8, "13800"}, {Class12_9, 8, 1.25, "35500"}, {Class12_9, 10, 1.5, "56300"}, {Class12_9, 12, 1.75, "81800"},
	} {
		rows = append(rows, published.Row{
			Name: string(c.class) + " proof load, N", Got: must(ProofLoad(c.class, c.d*mm, c.pitch*mm)),
			Printed: c.printed, Source: source, Within: 0.005, Why: why,
		})
	}
	published.Check(t, rows)
}

func TestProofLoadsOfTheHalfInchPublished(t *testing.T) {
	// Proof load of a 5/8-11 UNC grade 5 bolt in the pressure-vessel example.
	s := must(UnifiedStrength(Grade5, 0.625*inch))
	area := must(UnifiedStressArea(0.625*inch, inch/11))
	published.Check(t, []published.Row{
		{Name: "0.75·S_p·A_t of 5/8-11 grade 5, kip", Got: 0.75 * s.Proof * area / (lbf * 1e3), Printed: "14.4",
			Source: "Shigley's Mechanical Engineering Design, 9th ed., ex. 8-4 (from memory)"},
	})
}

func TestClassesGrowStronger(t *testing.T) {
	order := []Class{Class4_6, Class4_8, Class5_6, Class5_8, Class6_8, Class8_8, Class9_8, Class10_9, Class12_9}
	for i, class := range order {
		s := must(ClassStrength(class, 12*mm))
		if !(s.Proof < s.Yield && s.Yield < s.Tensile) {
			t.Errorf("%s: proof %g, yield %g, tensile %g", class, s.Proof, s.Yield, s.Tensile)
		}
		if i > 0 && s.Tensile < must(ClassStrength(order[i-1], 12*mm)).Tensile {
			t.Errorf("%s is weaker than %s", class, order[i-1])
		}
	}
	small, large := must(ClassStrength(Class8_8, 16*mm)), must(ClassStrength(Class8_8, 18*mm))
	if small.Proof != 580*mpa || large.Proof != 600*mpa {
		t.Errorf("8.8 proof stress: %g up to M16, %g above", small.Proof, large.Proof)
	}
}

func TestStrengthRefuses(t *testing.T) {
	_, err := ClassStrength("13.9", 12*mm)
	refuses(t, "class", err)
	_, err = ClassStrength(Class9_8, 20*mm)
	refuses(t, "d", err)
	_, err = UnifiedStrength("9", 0.5*inch)
	refuses(t, "grade", err)
	_, err = UnifiedStrength(Grade52, 1.25*inch)
	refuses(t, "d", err)
	_, err = OldGradeTensile("X")
	refuses(t, "grade", err)
}

func TestOldGradesInMegapascalPublished(t *testing.T) {
	const source = "derived: 45, 50, 55 and 65 tonf/in² at 15.4443 MPa each; the letters are from memory"
	var rows []published.Row
	for grade, printed := range map[OldGrade]string{OldGradeR: "695", OldGradeS: "772", OldGradeT: "849", OldGradeV: "1004"} {
		rows = append(rows, published.Row{Name: "grade " + string(grade), Got: must(OldGradeTensile(grade)) / mpa, Printed: printed, Source: source})
	}
	published.Check(t, rows)
}

func TestInchGradesGrowStronger(t *testing.T) {
	last := 0.0
	for _, grade := range []UnifiedGrade{Grade1, Grade2, Grade4, Grade5, Grade7, Grade8} {
		s := must(UnifiedStrength(grade, 0.5*inch))
		if s.Tensile <= last || s.Proof >= s.Yield || s.Yield >= s.Tensile {
			t.Errorf("grade %s: %+v", grade, s)
		}
		last = s.Tensile
	}
	if a, b := must(UnifiedStrength(Grade2, 0.5*inch)), must(UnifiedStrength(Grade2, inch)); a.Proof <= b.Proof {
		t.Error("grade 2 falls off above 3/4 inch")
	}
}
