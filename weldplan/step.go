package weldplan

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"
)

// A stage is the casting when some runs are finished: how it answers to what the
// rest will do. Its rows are the watched movements and the ties of the runs to
// come, its columns the ties and the loads of the runs to come; every entry is
// row·K⁻¹·column for the stiffness K of that stage. A run that is finished stiffens
// its ties one after another (Sherman and Morrison's formula), and drops out.
type stage struct {
	live  []int // runs to come, rising
	moves int
	cells []float64
}

const (
	tiesOfRun  = halves * ties
	loadsOfRun = halves * effects
	columns    = tiesOfRun + loadsOfRun // of one run
)

func (s *stage) width() int { return columns * len(s.live) }
func (s *stage) rows() int  { return s.moves + tiesOfRun*len(s.live) }

// row returns one row of the stage.
func (s *stage) row(i int) []float64 { w := s.width(); return s.cells[i*w : (i+1)*w] }

// place is where a run stands among those to come.
func (s *stage) place(run int) int {
	for i, r := range s.live {
		if r == run {
			return i
		}
	}
	return -1
}

// errLoose is a casting that does not hold together.
var errLoose = errors.New("the model of the casting does not hold together: a plate has too few runs, or a limb is no limb")

// stiff is the stiffness with every run at the given share, tacked or whole.
func (m *model) stiff(share func(run int) float64) (*mat.Cholesky, error) {
	all := m.skeleton.stiffness()
	for r := range m.runs {
		for h := range m.runs[r].half {
			part := &m.runs[r].half[h]
			for t := range part.tie {
				addSquare(all, part.tie[t], part.full[t]*share(r))
			}
		}
	}
	var c mat.Cholesky
	if !c.Factorize(all) {
		return nil, errLoose
	}
	return &c, nil
}

// addSquare adds k·row·rowᵀ, of a row that is mostly empty.
func addSquare(all *mat.SymDense, row []float64, k float64) {
	var at []int
	for i, v := range row {
		if v != 0 {
			at = append(at, i)
		}
	}
	for n, i := range at {
		for _, j := range at[n:] {
			all.SetSym(i, j, all.At(i, j)+k*row[i]*row[j])
		}
	}
}

// first is the stage before any run, all plates tacked on.
func (m *model) first() (*stage, error) {
	chol, err := m.stiff(func(int) float64 { return m.tacked })
	if err != nil {
		return nil, err
	}
	n := len(m.runs)
	s := &stage{moves: len(m.moves), live: make([]int, n)}
	right := mat.NewDense(m.skeleton.dofs, columns*n, nil)
	left := mat.NewDense(len(m.moves)+tiesOfRun*n, m.skeleton.dofs, nil)
	for i := range m.moves {
		left.SetRow(i, m.moves[i].row)
	}
	for r := range m.runs {
		s.live[r] = r
		for h := range m.runs[r].half {
			part := &m.runs[r].half[h]
			for t := range part.tie {
				right.SetCol(columns*r+ties*h+t, part.tie[t])
				left.SetRow(len(m.moves)+tiesOfRun*r+ties*h+t, part.tie[t])
			}
			for e := range part.load {
				right.SetCol(columns*r+tiesOfRun+effects*h+e, part.load[e])
			}
		}
	}
	var solved, cells mat.Dense
	if err := chol.SolveTo(&solved, right); err != nil {
		var ill mat.Condition
		if !errors.As(err, &ill) || math.IsInf(float64(ill), 1) {
			return nil, errLoose
		}
	}
	cells.Mul(left, &solved)
	s.cells = cells.RawMatrix().Data
	return s, nil
}

// finish is the stage after one more run.
func (m *model) finish(s *stage, run int) *stage {
	at := s.place(run)
	w, own := s.width(), columns*at
	work := append([]float64(nil), s.cells...)
	line := func(i int) []float64 { return work[i*w : (i+1)*w] }
	for h := range halves {
		for t := range ties {
			b := ties*h + t
			key := line(s.moves + tiesOfRun*at + b)
			more := m.runs[run].half[h].full[t] * (1 - m.tacked)
			gain := more / (1 + more*key[own+b])
			pivot := append([]float64(nil), key...)
			for i := range s.rows() {
				to := line(i)
				if f := gain * to[own+b]; f != 0 {
					for j, v := range pivot {
						to[j] -= f * v
					}
				}
			}
		}
	}
	next := &stage{moves: s.moves, live: make([]int, 0, len(s.live)-1)}
	for _, r := range s.live {
		if r != run {
			next.live = append(next.live, r)
		}
	}
	next.cells = make([]float64, 0, next.rows()*next.width())
	for i := range s.rows() {
		if i >= s.moves+tiesOfRun*at && i < s.moves+tiesOfRun*(at+1) {
			continue
		}
		from := line(i)
		next.cells = append(append(next.cells, from[:own]...), from[own+columns:]...)
	}
	return next
}
