package casting

import (
	"fmt"
	"math"

	"axlewright/quantity"
)

// A Redraw says whether the kit should be drawn anew, and for what.
type Redraw struct {
	Now      bool         `json:"now"`
	Minutes  float64      `json:"minutes"` // lost on each casting to come with the kit as drawn
	After    float64      `json:"after"`   // and with the kit drawn anew
	Whole    FitChances   `json:"whole"`   // of the kit drawn anew
	Stations []NewNominal `json:"stations,omitempty"`
	Sentence string       `json:"sentence"`
}

// A NewNominal is a station at which the kit should be drawn for another reading.
type NewNominal struct {
	Station  int     `json:"station"`
	Name     string  `json:"name"`
	DrawnFor float64 `json:"drawn_for"` // m, as it is
	New      float64 `json:"new"`       // m, to a tenth of a millimetre
	Saves    float64 `json:"saves"`     // minutes a casting
	Words    string  `json:"words"`
}

// drawingStep is how finely a drawing is changed.
const drawingStep = 1e-4

func (e Effort) filled() Effort {
	u := usualEffort
	for _, f := range []struct{ given, into *float64 }{{&e.Trim, &u.Trim}, {&e.Remake, &u.Remake}, {&e.Redraw, &u.Redraw}, {&e.ToCome, &u.ToCome}} {
		if *f.given > 0 {
			*f.into = *f.given
		}
	}
	return u
}

// minutes that a station is expected to cost on a casting.
func (e Effort) minutes(c FitChances) float64 { return e.Trim*c.Trimmed + e.Remake*c.Not }

// redraw finds, station by station, what the kit had best be drawn for, and
// weighs what that saves on the castings to come against a new drawing.
func (g *Gauging) redraw(history []StationHistory) Redraw {
	e := g.Effort.filled()
	var out Redraw
	shifts := make([]float64, len(g.Stations))
	for i := range g.Stations {
		s, f := &g.Stations[i], history[i].Next
		if f.DoF == 0 {
			return Redraw{Sentence: fmt.Sprintf("Too few castings yet to say whether to redraw: station %d has %d, it needs %d.", s.Number, history[i].Castings, fewestForForecast)}
		}
		now := e.minutes(g.chancesAt(s, f, 0))
		shift, best := g.bestShift(s, f, e)
		out.Minutes += now
		if now-best < leastSaving {
			out.After += now
			continue
		}
		shifts[i] = shift
		out.After += best
		n := NewNominal{Station: s.Number, Name: s.Name, DrawnFor: s.DrawnFor.Value, New: s.DrawnFor.Value + shift, Saves: now - best}
		n.Words = fmt.Sprintf("%d %s: draw for %s instead of %s", s.Number, s.Name,
			quantity.Format(n.New, quantity.Length), quantity.Format(n.DrawnFor, quantity.Length))
		out.Stations = append(out.Stations, n)
	}
	out.Whole = g.forecastFit(history, shifts)
	saved := (out.Minutes - out.After) * e.ToCome
	out.Now = len(out.Stations) > 0 && saved > e.Redraw
	switch {
	case len(out.Stations) == 0:
		out.Sentence = "The kit is drawn where it should be."
	case out.Now:
		out.Sentence = fmt.Sprintf("Redraw it: %.0f minutes a casting lost now, %.0f after; %.0f castings to come save %.0f minutes, a new drawing takes %.0f.",
			out.Minutes, out.After, e.ToCome, saved, e.Redraw)
	default:
		out.Sentence = fmt.Sprintf("Not worth a new drawing yet: it would save %.0f minutes on %.0f castings and take %.0f.", saved, e.ToCome, e.Redraw)
	}
	return out
}

// leastSaving is what a change at one station must save on a casting, minutes.
const leastSaving = 0.5

// bestShift looks for the reading to draw for that costs least, a tenth of a
// millimetre at a time, from the furthest that could make sense one way to the
// furthest the other way. Of shifts that cost the same the smallest wins.
func (g *Gauging) bestShift(s *Station, f Forecast, e Effort) (shift, minutes float64) {
	centre := f.Mean - s.DrawnFor.Value
	reach := g.Kit.Gap.Value + g.Kit.Trim.Value + math.Abs(s.DrawnGap.Value) + 4*f.Scale
	from, to := int(math.Floor((centre-reach)/drawingStep)), int(math.Ceil((centre+reach)/drawingStep))
	minutes = math.Inf(1)
	for i := from; i <= to; i++ {
		x := float64(i) * drawingStep
		m := e.minutes(g.chancesAt(s, f, x))
		if m < minutes-1e-9 || m < minutes+1e-9 && math.Abs(x) < math.Abs(shift) {
			shift, minutes = x, m
		}
	}
	return shift, minutes
}

func length(x float64) string { return quantity.Format(x, quantity.Length) }
