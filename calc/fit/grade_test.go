package fit

import (
	"fmt"
	"math"
	"testing"

	"axlewright/internal/published"
)

func TestGradesPublished(t *testing.T) {
	const formula = "derived: ISO 286-1:1988, A.3.1, before the rounding of the table (formula from memory)"
	const table = "ISO 286-1:2010, table 1 (from memory)"
	var rows []published.Row
	for _, c := range []struct {
		grade          int
		from, to       float64
		before, tabled string // µm
	}{
		{6, 18, 30, "13.0738", "13"}, {7, 18, 30, "20.918", "21"},
		{6, 50, 80, "18.5614", "19"}, {7, 50, 80, "29.6983", "30"}, {8, 50, 80, "46.4036", "46"},
		{7, 80, 120, "34.7605", "35"},
	} {
		name := fmt.Sprintf("IT%d, %g to %g mm", c.grade, c.from, c.to)
		rows = append(rows,
			published.Row{Name: name + " by formula, µm", Got: must(GradeFormula(c.grade, c.from*mm, c.to*mm)) / um, Printed: c.before, Source: formula},
			published.Row{Name: name + " by table, µm", Got: must(StandardTolerance(c.grade, c.to*mm)) / um, Printed: c.tabled, Source: table})
	}
	published.Check(t, rows)
}

// Widths of h shafts, 50 to 80 and 250 to 315 mm, IT1 to IT9, as a toolmaker's catalogue reprints the ISO table.
func TestFineGradesPublished(t *testing.T) {
	const source = "ISO 286-2, limits h1 to h9, as reprinted in a toolholder catalogue"
	var rows []published.Row
	for size, printed := range map[float64][9]string{
		5:   {"1", "1.5", "2.5", "4", "5", "8", "12", "18", "30"},
		80:  {"2", "3", "5", "8", "13", "19", "30", "46", "74"},
		180: {"3.5", "5", "8", "12", "18", "25", "40", "63", "100"},
		300: {"6", "8", "12", "16", "23", "32", "52", "81", "130"},
		500: {"8", "10", "15", "20", "27", "40", "63", "97", "155"},
	} {
		for i, p := range printed {
			rows = append(rows, published.Row{Name: fmt.Sprintf("IT%d at %g mm, µm", i+1, size), Got: must(StandardTolerance(i+1, size*mm)) / um, Printed: p, Source: source})
		}
	}
	published.Check(t, rows)
}

// The whole table must follow the formula behind it within its rounding.
func TestTableFollowsTheFormula(t *testing.T) {
	from := 3.0
	for _, to := range steps[1:] {
		for grade := 5; grade <= 14; grade++ {
			table, formula := must(StandardTolerance(grade, to*mm)), must(GradeFormula(grade, from*mm, to*mm))
			if math.Abs(table-formula) > 0.05*formula+0.6*um {
				t.Errorf("IT%d to %g mm: table %.1f, formula %.1f µm", grade, to, table/um, formula/um)
			}
			if table <= must(StandardTolerance(grade-1, to*mm)) {
				t.Errorf("IT%d to %g mm is no wider than IT%d", grade, to, grade-1)
			}
		}
		from = to
	}
}

func TestASizeOnAStepBelongsToTheSmaller(t *testing.T) {
	if a, b := must(StandardTolerance(7, 80*mm)), must(StandardTolerance(7, 80.001*mm)); !near(a, 30*um, 1e-9) || !near(b, 35*um, 1e-9) {
		t.Errorf("80 mm: %g, above: %g", a, b)
	}
}

func TestGradesRefuse(t *testing.T) {
	_, err := StandardTolerance(15, 50*mm)
	refuses(t, "grade", err)
	_, err = StandardTolerance(7, 0.6)
	refuses(t, "d", err)
	_, err = GradeFormula(4, 50*mm, 80*mm)
	refuses(t, "grade", err)
	_, err = GradeFormula(7, 80*mm, 50*mm)
	refuses(t, "to", err)
}
