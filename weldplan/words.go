package weldplan

import (
	"fmt"
	"math"
	"slices"

	"axlewright/quantity"
)

// An OrderRow is one run in its turn, in the words of the bench.
type OrderRow struct {
	Turn       int
	Run, Plate string
	Joint      string // "lap, horizontal"
	Leg        string // "3.00 mm (0.118 in)"
	Beads      string // "3 beads of 17.33 mm (0.682 in), backstepped"
	Amps       string // "begin at 99 A, band 93 to 106 A"
	From       string // where the amps are from
	Heat       string // "20 to 60 °C (68 to 140 °F)", before each bead
	Wait       string // before the run; "" where there is none

	BeadsShort, AmpsShort, WaitShort string // for a table: "3 × 17.33 mm (0.682 in)", "99 A, 93 to 106 A", "3 min, 60 °C (140 °F)"
}

// OrderRows are the runs in the order in which they are laid, as drawn where no
// order was sought.
func (plan *Plan) OrderRows() []OrderRow {
	at := map[string]*RunPlan{}
	for i := range plan.Runs {
		at[plan.Runs[i].Run] = &plan.Runs[i]
	}
	var rows []OrderRow
	if plan.Sequence == nil {
		for i := range plan.Runs {
			rows = append(rows, plan.Runs[i].row(i+1))
		}
		return rows
	}
	for i, s := range plan.Sequence.Steps {
		row := at[s.Run].row(i + 1)
		if p := s.Pause; p != nil && p.Before >= 30 {
			row.Wait = fmt.Sprintf("wait about %.0f min, until %s there", math.Ceil(p.Before/60), celsius(p.Start))
			row.WaitShort = fmt.Sprintf("%.0f min, %s", math.Ceil(p.Before/60), celsius(p.Start))
		}
		rows = append(rows, row)
	}
	return rows
}

func (r *RunPlan) row(turn int) OrderRow {
	row := OrderRow{Turn: turn, Run: r.Run, Plate: r.Plate,
		Joint: fmt.Sprintf("%s, %s", r.Joint, r.Position), Leg: mm(r.Size.Leg),
		BeadsShort: fmt.Sprintf("%d × %s", r.Size.Passes*r.Size.Pieces, mm(r.Size.Piece)),
		AmpsShort:  quantity.Format(r.Amps.Used.First, quantity.Current) + ", " + band(r.Amps.Used, quantity.Current),
		Beads:      counted(r.Size.Pieces, "bead", "beads") + " of " + mm(r.Size.Piece),
		Amps:       fmt.Sprintf("begin at %s, band %s", quantity.Format(r.Amps.Used.First, quantity.Current), band(r.Amps.Used, quantity.Current)),
		From:       r.Amps.Source,
		Heat:       quantity.FormatRange(r.Start, r.Between, quantity.Temperature)}
	if r.Size.Passes > 1 {
		row.Beads += fmt.Sprintf(", %d passes", r.Size.Passes)
	}
	if r.Size.Pieces > 1 {
		row.Beads += ", backstepped"
	}
	if l := r.Amps.Learned; l != nil {
		row.From += "; logs: " + l.Text
		if l.Enough {
			row.From = "the shop's logs: " + l.Text
		}
	}
	return row
}

// PreheatWords say what the preheat hangs on, each different sentence once.
func (plan *Plan) PreheatWords() []string {
	var all []string
	for _, r := range plan.Runs {
		for i, h := range r.Preheats {
			part := "plate " + r.Plate
			if i > 0 || len(r.Preheats) == 1 {
				part = "casting"
			}
			text := fmt.Sprintf("%s, %s: CE %.2f %%, CET %.2f %%, Pcm %.2f %%. ", part, mm(h.Thickness), 100*h.CE, 100*h.CET, 100*h.Pcm)
			switch {
			case h.Method == "none":
				text += h.Reason
			case !h.Needed:
				text += fmt.Sprintf("Method %s: no preheat at any end of the doubt; dry and at 20 °C. %s", h.Method, h.Reason)
			case h.Low < warmShop:
				text += fmt.Sprintf("Preheat by method %s: none at the lean end, %s at the rich one. %s", h.Method, celsius(h.High), h.Reason)
			default:
				text += fmt.Sprintf("Preheat by method %s: %s. %s", h.Method, quantity.FormatRange(h.Low, h.High, quantity.Temperature), h.Reason)
			}
			text += " Source: " + h.Source + "."
			if !slices.Contains(all, text) {
				all = append(all, text)
			}
		}
	}
	return all
}

// PreheatShort says how warm the runs that need it are begun, in one sentence; ""
// where none does.
func (plan *Plan) PreheatShort() string {
	low, high, method := math.Inf(1), 0.0, ""
	for _, r := range plan.Runs {
		for _, h := range r.Preheats {
			if h.Needed && h.High > high {
				high, method = h.High, h.Method
			}
			if h.Needed {
				low = math.Min(low, math.Max(h.Low, warmShop))
			}
		}
	}
	if high == 0 {
		return ""
	}
	return fmt.Sprintf("Preheat %s, the rich end of the analyses counts (EN 1011-2, method %s).", quantity.FormatRange(low, high, quantity.Temperature), method)
}

// HeatWords say how warm the metal is to be, in one sentence.
func (m *Method) HeatWords() string {
	text := fmt.Sprintf("Start no colder than %s, no bead warmer than %s before it; beads of %s at most", celsius(m.LeastStart), celsius(m.MostStart), mm(m.LongestRun))
	if m.Peen {
		text += ", peened"
	}
	return text + "."
}

// UseWords say what the welding takes.
func (plan *Plan) UseWords() []string {
	t := plan.Total
	all := []string{fmt.Sprintf("Filler %s (%.1f m), of which %s is laid.", quantity.Format(t.Filler, quantity.Mass), t.Rod, quantity.Format(t.Laid, quantity.Mass))}
	if t.Gas > 0 {
		all = append(all, fmt.Sprintf("Gas %s.", quantity.Format(t.Gas, quantity.Volume)))
	}
	all = append(all, fmt.Sprintf("Arc %.0f min; hands %.0f min, the arc burning three tenths of the time (common practice); waiting for heat %.0f min.", t.Arc/60, t.Hands/60, plan.Waiting/60))
	if l := plan.Learned; l != nil {
		all = append(all, "Pace by the shop's logs: "+l.Text+".")
	}
	return all
}

// PlaceWords is a place in the casting's frame: "x −6, y −95, z 19 mm".
func PlaceWords(at [3]float64) string { return Place{At: vecOf(at)}.String() }

// TackWords say how the plates are tacked.
func (plan *Plan) TackWords() string {
	return counted(len(plan.Tacks), "tack", "tacks") + " of 10 to 15 mm, every 40 to 50 mm, opposite sides in turn, one plate after another (common practice). " +
		"Gaps and mandrel again when all are set, before the first run. No edge is welded out first."
}

// Words is what the resin is, how much and how it cures.
func (b *Backfill) Words() string {
	return fmt.Sprintf("%s, %s of metal-filled epoxy, %s of 20 to 25 mm, %s. %s", quantity.Format(b.Volume, quantity.Volume),
		quantity.FormatRange(b.Mass.Low, b.Mass.High, quantity.Mass), counted(b.Lifts, "lift", "lifts"), counted(b.Pots, "pot", "pots"), b.Cure)
}

// Over says whether the movement may pass its limit.
func (m *Movement) Over() bool { return math.Max(math.Abs(m.Low), math.Abs(m.High)) > m.Limit }

// Seen says whether any gauge of the shop would show it, in the worst order too.
func (m *Movement) Seen() bool {
	return math.Max(math.Max(math.Abs(m.Low), math.Abs(m.High)), math.Abs(m.WorstBy)) >= unseen
}

// Words is what it is expected to do, from and to.
func (m *Movement) Words() string { return signed(m.Low) + " to " + signed(m.High) }

// LimitWords is how much of it is allowed.
func (m *Movement) LimitWords() string { return mm(m.Limit) }

// DrawnWords is what one run after another as drawn would do.
func (m *Movement) DrawnWords() string { return signed(m.Drawn) }

// WorstWords is what the worst order found would do.
func (m *Movement) WorstWords() string { return signed(m.WorstBy) }

// Words are the score of an order and its doubt.
func (c *Compared) Words() string {
	return fmt.Sprintf("%s (%s to %s)", twoDigits(c.Score), twoDigits(c.Low), twoDigits(c.High))
}
