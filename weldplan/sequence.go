package weldplan

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"axlewright/quantity"
)

// A Sequence is in which order and direction the runs are laid, what the casting
// is expected to do, and how that compares.
type Sequence struct {
	Steps     []SequenceStep `json:"steps"`
	Movements []Movement     `json:"movements"`
	Compared  []Compared     `json:"compared"` // the chosen order first, then the trade's rules, then the worst
	Proved    bool           `json:"proved"`   // no order does better, by this model
	Tried     int            `json:"tried"`
	Seed      uint64         `json:"seed"`
	Text      []string       `json:"text"`
}

// A SequenceStep is one run in its turn.
type SequenceStep struct {
	Run      string     `json:"run"`
	Plate    string     `json:"plate"`
	Reversed bool       `json:"reversed"` // laid from the other end than drawn
	From     [3]float64 `json:"from"`     // m
	To       [3]float64 `json:"to"`
	Pieces   []Piece    `json:"pieces"` // beads, each laid backwards
	Pause    *Pause     `json:"pause,omitempty"`
}

// A Movement is what a watched thing is expected to do, and its doubt of a half.
type Movement struct {
	What    string  `json:"what"`
	Moves   float64 `json:"moves"` // m
	Low     float64 `json:"low"`
	High    float64 `json:"high"`
	Limit   float64 `json:"limit"`
	Source  string  `json:"source"` // of the limit
	Drawn   float64 `json:"drawn"`  // m, one after another as drawn
	WorstBy float64 `json:"worst"`  // m, in the worst order found
}

// Differences that say nothing. Our rules.
const (
	closeEnough = 0.95 // share of the other's movement
	tooClose    = 0.65 // chance
)

// half is how good the formulas of shrinkage are.
const half = 0.5

// sequenceOf searches for the order and compares it.
func sequenceOf(j *Job, m *model, runs []laidOut, pieces []int, o Options) (*Sequence, error) {
	y, err := newYard(m)
	if err != nil {
		return nil, err
	}
	seed := o.Seed
	y.progress = o.Progress
	var begin [][]Step
	var others []namedOrder
	for _, r := range append(append([]rule(nil), tradeRules...), roundInOneGo) {
		order := r.order(m)
		begin = append(begin, order)
		same := slices.IndexFunc(others, func(o namedOrder) bool { return slices.Equal(o.order, order) })
		if same >= 0 {
			others[same].name += " (and " + r.name + ": the same here)"
			continue
		}
		others = append(others, namedOrder{name: r.name, order: order})
	}
	best := y.search(begin, seed, 1)
	worst := y.search(begin, seed, -1)
	if slices.ContainsFunc(pieces, func(n int) bool { return n > 1 }) {
		others = append(others, namedOrder{name: "the same order without backsteps, each run one bead", order: best.Order, how: wholeBead})
	}
	others = append(others, namedOrder{name: "the worst order found", order: worst.Order})
	s := &Sequence{Proved: best.Proved, Tried: best.Tried, Seed: seed}
	yards := []*yard{y}
	for _, times := range []float64{1.0 / 3, 3} {
		other := *m
		other.tacked *= times
		more, err := newYard(&other)
		if err != nil {
			return nil, err
		}
		yards = append(yards, more)
	}
	s.Compared = compare(yards, append([]namedOrder{{name: "the order chosen here", order: best.Order}}, others...), seed)
	s.describe(j, m, y, best.Order, worst.Order)
	for _, step := range best.Order {
		r := runs[step.Run]
		data := &j.Plates[r.plate].Runs[r.run]
		from, to := r.line.from, r.line.to
		if step.Reversed {
			from, to = to, from
		}
		s.Steps = append(s.Steps, SequenceStep{
			Run: data.Name, Plate: j.Plates[r.plate].Name, Reversed: step.Reversed, From: triple(from), To: triple(to),
			Pieces: backsteps(r.line, pieces[step.Run], step.Reversed),
		})
	}
	s.Text = s.words(&best)
	return s, nil
}

func triple(v r3.Vec) [3]float64 { return [3]float64{v.X, v.Y, v.Z} }

func (s *Sequence) describe(j *Job, m *model, y *yard, best, worst []Step) {
	chosen := totals(m, y.responses(best, beadByBead))
	drawn := totals(m, y.responses(asDrawn(len(m.runs)), beadByBead))
	bad := totals(m, y.responses(worst, beadByBead))
	share, low, high := 1.0, 1-half, 1+half
	if own := j.Casting.Measured; own.Given() { // what this variant has done before
		share, low, high = own.Value, own.Low/own.Value, own.High/own.Value
		if low == high { // no doubt stated: the formulas' own stands
			low, high = 1-half, 1+half
		}
	}
	for i, w := range m.moves {
		moves := chosen[i] * share
		s.Movements = append(s.Movements, Movement{
			What: w.what, Moves: moves, Low: math.Min(moves*low, moves*high), High: math.Max(moves*low, moves*high),
			Limit: w.limit, Source: w.from, Drawn: drawn[i] * share, WorstBy: bad[i] * share,
		})
	}
}

// words says what the comparison is worth.
func (s *Sequence) words(best *Found) []string {
	var text []string
	switch {
	case best.Proved:
		text = append(text, "Every order and direction was weighed: none moves bores and peg face less, by this model.")
	case best.Bound > 0 && best.Bound < best.Score:
		text = append(text, fmt.Sprintf("The best of %d orders; none can be better by more than %s, by this model.", best.Tried, quantity.Percent(1-best.Bound/best.Score)))
	default:
		text = append(text, fmt.Sprintf("The best of %d orders looked at; nothing proves that there is none better.", best.Tried))
	}
	worst := s.Compared[len(s.Compared)-1]
	for _, c := range s.Compared[1:] {
		much := quantity.Percent(s.Compared[0].Score / c.Score)
		switch {
		case s.Compared[0].Score > closeEnough*c.Score:
			text = append(text, fmt.Sprintf("As good as %q: it moves %s as much.", c.Name, much))
		case c.Chance < tooClose:
			text = append(text, fmt.Sprintf("Too close to call against %q: better in %s of the draws.", c.Name, quantity.Chance(c.Chance)))
		default:
			text = append(text, fmt.Sprintf("Against %q: moves %s as much, better in %s of the draws.", c.Name, much, quantity.Chance(c.Chance)))
		}
	}
	if worst.Score > 0 && s.Compared[0].Score > 0.8*worst.Score {
		text = append(text, "Order matters little here: what moves, moves in any order. Heat, fit and the jig matter more.")
	}
	text = append(text,
		"The formulas of shrinkage are good to about a half, and the casting is a skeleton of beams: this ranks orders, it does not forecast. Then MEASURE: mandrel, bores at three angles.",
		"Of backsteps the sums know only that each bead is cold and holds before the next one shrinks. That heat opens the joint ahead of a long bead is not in them; the trade backsteps for that.")
	return text
}
