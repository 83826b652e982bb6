package axle

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"github.com/goccy/go-yaml/ast"
	"gonum.org/v1/gonum/mat"

	"axlewright/quantity"
)

// A Compliance is how the whole casting gives at its seats, cross terms and
// all, as a finite-element run or a bench test finds it: one freedom is loaded
// at a time, the movement of each is read.
//
// It need not name every freedom. One that it leaves out gives as `seats` and
// `peg_wall` say and moves none of the others.
type Compliance struct {
	Note     string          `yaml:"note,omitempty"`  // which run or bench
	Scale    Ratio           `yaml:"scale,omitempty"` // on every entry, 1 where nothing is said; its doubt is the doubt of the whole: 1 ± 15 %
	Units    ComplianceUnits `yaml:"units"`           // of the entries
	Freedoms []Freedom       `yaml:"freedoms"`        // in the order of rows and columns: seat and axis, "turn" for about it; x along the pinion out of the nose, y along the wheel's axis from the pinion towards the back of the crown wheel, z square to both so that x, y, z are right-handed; loads and movements positive along the axis
	Rows     [][]Entry       `yaml:"rows"`            // row: the freedom that moves; column: the freedom that is loaded; the whole square, whose two halves must agree
}

// ComplianceUnits are the units of the entries: µm and kN make µm/kN.
type ComplianceUnits struct {
	Shift  string `yaml:"shift"`            // of movements along an axis, such as µm
	Force  string `yaml:"force"`            // of loads along an axis, such as kN
	Turn   string `yaml:"turn,omitempty"`   // of movements about an axis, such as µrad; needed where a freedom turns
	Moment string `yaml:"moment,omitempty"` // of loads about an axis, such as kN·m; needed where a freedom turns
}

// A Freedom is one way in which a seat can move, or the foot of the peg, and the
// load that does work on it. x points along the pinion out of the nose, y along
// the wheel's axis from the pinion towards the back of the crown wheel, z square
// to both so that x, y, z are right-handed. "near y" is the near side seat along
// y and a force on it; "near turn z" its turn about z, right-handed, and a
// moment. Loads act on the casting as the bearing, or the peg, pushes it.
type Freedom string

// Freedoms lists all freedoms of a casting: per seat along its shaft, across it
// twice, and the turns about those two; last the peg's foot.
var Freedoms = func() (all []Freedom) {
	for _, seat := range []struct{ name, along, across, round string }{
		{"head", "x", "y", "z"}, {"tail", "x", "y", "z"}, {"near", "y", "z", "x"}, {"far", "y", "z", "x"},
	} {
		for _, way := range []string{seat.along, seat.across, seat.round, "turn " + seat.across, "turn " + seat.round} {
			all = append(all, Freedom(seat.name+" "+way))
		}
	}
	return append(all, "peg y")
}()

// pinionFreedoms is how many of the list belong to the pinion.
const pinionFreedoms = 10

func (f Freedom) index() int  { return slices.Index(Freedoms, f) }
func (f Freedom) turns() bool { i := f.index(); return i < len(Freedoms)-1 && i%5 > 2 }

// An Entry of a compliance matrix is a plain number of either sign.
type Entry float64

// UnmarshalYAML reads a plain number.
func (e *Entry) UnmarshalYAML(node ast.Node) error {
	text, err := scalarText(node)
	if err != nil {
		return err
	}
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsInf(x, 0) || math.IsNaN(x) {
		return fault(node, "%q is no number; expected one without a unit, such as 4.8 or -0.31 or 1.2e-3", text)
	}
	*e = Entry(x)
	return nil
}

// worstAsymmetry is how far the two readings of a pair of freedoms may lie
// apart, as a share of √(own·own): Maxwell says that they are equal, a dial
// says that to within some percent. Their mean counts.
const worstAsymmetry = 0.05

// Matrix returns the compliance between the freedoms as listed, in m/N, rad/N
// and rad/(N·m), symmetric, with the scale on it.
//
// Errors: *BadCompliance for a unit that is none and for a matrix that is not
// square, symmetric and positive definite.
func (c *Compliance) Matrix() (*mat.SymDense, error) {
	shift, force, turn, moment, err := c.Units.inSI(slices.ContainsFunc(c.Freedoms, Freedom.turns))
	if err != nil {
		return nil, err
	}
	n := len(c.Freedoms)
	if n == 0 || len(c.Rows) != n {
		return nil, bad("rows", "%d rows for %d freedoms; expected one for each, and one freedom or more", len(c.Rows), n)
	}
	for i, f := range c.Freedoms {
		switch {
		case f.index() < 0:
			return nil, bad(item("freedoms", i), "%q is no freedom of a casting", f)
		case slices.Index(c.Freedoms, f) < i:
			return nil, bad(item("freedoms", i), "%s stands twice", f)
		case len(c.Rows[i]) != n:
			return nil, bad(item("rows", i), "%s has %d entries; expected %d, one for each freedom that is loaded", f, len(c.Rows[i]), n)
		}
	}
	scale := 1.0
	if c.Scale.Given() {
		scale = c.Scale.Value
	}
	at := func(i, j int) float64 {
		moved, load := shift, force
		if c.Freedoms[i].turns() {
			moved = turn
		}
		if c.Freedoms[j].turns() {
			load = moment
		}
		return scale * float64(c.Rows[i][j]) * moved / load
	}
	for i, f := range c.Freedoms {
		if !(at(i, i) > 0) {
			return nil, bad(item("rows", i), "%s moves by %g under its own load; expected a movement the way it is pushed, above 0", f, float64(c.Rows[i][i]))
		}
	}
	m, unit := mat.NewSymDense(n, nil), mat.NewSymDense(n, nil)
	for i := range n {
		for j := i; j < n; j++ {
			own := math.Sqrt(at(i, i) * at(j, j))
			if apart := math.Abs(at(i, j) - at(j, i)); apart > worstAsymmetry*own {
				return nil, bad(item("rows", j), "not symmetric: %s under a load at %s (%g) and %s under a load at %s (%g) differ by %.0f %% of what the two give themselves; by Maxwell's law they are equal: read them again, or look for a sign",
					c.Freedoms[i], c.Freedoms[j], float64(c.Rows[i][j]), c.Freedoms[j], c.Freedoms[i], float64(c.Rows[j][i]), 100*apart/own)
			}
			mean := (at(i, j) + at(j, i)) / 2
			m.SetSym(i, j, mean)
			unit.SetSym(i, j, mean/own)
		}
	}
	return m, positive(unit, c.Freedoms)
}

// A BadCompliance says what is wrong with a compliance matrix.
type BadCompliance struct {
	Field   string // of the compliance, "rows[3]"
	Problem string
}

func (e *BadCompliance) Error() string { return "compliance." + e.Field + ": " + e.Problem }

func bad(field, format string, args ...any) error {
	return &BadCompliance{field, fmt.Sprintf(format, args...)}
}

func item(list string, i int) string { return fmt.Sprintf("%s[%d]", list, i+1) }

// positive finds loads under which a casting would push back. unit has ones on
// its diagonal.
func positive(unit *mat.SymDense, freedoms []Freedom) error {
	const least = 1e-6 // of the mean own movement; less is lost in the digits of a reading
	var e mat.EigenSym
	if !e.Factorize(unit, true) {
		return bad("rows", "not positive definite; look for an entry that is far too large")
	}
	if e.Values(nil)[0] > least {
		return nil
	}
	var v mat.Dense
	e.VectorsTo(&v)
	var most []string // those that play the largest part in it
	for i := range freedoms {
		if math.Abs(v.At(i, 0)) > 0.3 {
			most = append(most, string(freedoms[i]))
		}
	}
	return bad("rows", "not positive definite: %s, loaded together in some way, would move against their loads, which no casting does; a reading between them is too large or has a wrong sign", enumerated(most))
}

// inSI turns the units into SI.
func (u *ComplianceUnits) inSI(turning bool) (shift, force, turn, moment float64, err error) {
	read := func(key, unit string, dim quantity.Dimension) float64 {
		q, problem := quantity.Parse("1 "+unit, dim)
		if err == nil && (problem != nil || unit == "") {
			err = bad("units."+key, "%q is no unit for it; expected one such as %s", unit, unitExamples[key])
		}
		return q.SI
	}
	shift, force = read("shift", u.Shift, quantity.Length), read("force", u.Force, quantity.Force)
	if turning {
		turn, moment = read("turn", u.Turn, quantity.Angle), read("moment", u.Moment, quantity.Torque)
	}
	return shift, force, turn, moment, err
}

var unitExamples = map[string]string{"shift": "µm", "force": "kN", "turn": "µrad", "moment": "kN·m"}

// Couples says whether the matrix ties pinion and wheel together.
func (c *Compliance) Couples() bool {
	if c == nil {
		return false
	}
	for i, row := range c.Rows {
		for j, x := range row {
			if x != 0 && c.Freedoms[i].index() < pinionFreedoms && c.Freedoms[j].index() >= pinionFreedoms {
				return true
			}
		}
	}
	return false
}
