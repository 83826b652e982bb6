package weldplan

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"axlewright/quantity"
)

// A Learned is what past logs say of a figure, for one variant and position at
// one thickness.
type Learned struct {
	Enough  bool    `json:"enough"`
	Low     float64 `json:"low"`    // nine in ten of the next ones lie above
	Middle  float64 `json:"middle"` // half of them
	High    float64 `json:"high"`   // nine in ten below
	Entries int     `json:"entries"`
	Here    int     `json:"here"` // of this variant and position
	Text    string  `json:"text"`
}

// How many entries it takes. Our rule: with fewer the prediction is as wide as
// the handbook's band, and looks surer than it is.
const (
	fewestEntries = 8 // of one process
	fewestHere    = 3 // of one variant and position, before it counts as known
)

// predicted is the share of the next figures that a learned band holds.
const predicted = 0.80

// A Question asks the logs about the next run.
type Question struct {
	Variant   string
	Position  Position
	Process   Process
	Thickness float64 // m
}

// LearnAmps says what current past logs point to.
func LearnAmps(entries []Entry, q Question) Learned {
	return learn(entries, q, "A", func(e *Entry) (float64, bool) { return e.Amps.Value, true },
		func(v float64) string { return quantity.Format(v, quantity.Current) })
}

// LearnPace says how long past logs took for a metre of weld, in s/m.
func LearnPace(entries []Entry, q Question) Learned {
	return learn(entries, q, "s/m", func(e *Entry) (float64, bool) {
		if !e.Time.Given() {
			return 0, false
		}
		return e.Time.Value / e.Length.Value, true
	}, func(v float64) string { return fmt.Sprintf("%.1f min a metre", v/60) })
}

// learn fits the logarithm of a figure against the logarithm of the plate's
// thickness, over all variants and positions of one process, each of which may
// lie above or below the rest by an amount of its own. How much of that is
// believed grows with its entries.
func learn(entries []Entry, q Question, unit string, read func(*Entry) (float64, bool), print func(float64) string) Learned {
	var l Learned
	var data mixedData
	cell := q.Variant + "/" + string(q.Position)
	thinnest, thickest := math.Inf(1), 0.0
	for i := range entries {
		e := &entries[i]
		y, ok := read(e)
		if e.Process != q.Process || !ok {
			continue
		}
		group := e.Variant + "/" + string(e.Position)
		data.add(math.Log(e.Thickness.Value/unitThickness), math.Log(y), group)
		if group == cell {
			l.Here++
		}
		thinnest, thickest = math.Min(thinnest, e.Thickness.Value), math.Max(thickest, e.Thickness.Value)
	}
	l.Entries = len(data.y)
	if l.Entries < fewestEntries {
		l.Text = fmt.Sprintf("too few yet: %d of the %d entries it takes with this process", l.Entries, fewestEntries)
		return l
	}
	const beyond = 1.25
	if q.Thickness > thickest*beyond || q.Thickness < thinnest/beyond {
		l.Text = fmt.Sprintf("never yet so: %d entries, all between %s and %s", l.Entries, mm(thinnest), mm(thickest))
		return l
	}
	fit, err := data.fit()
	if err != nil {
		l.Text = "the entries do not give a line: " + err.Error()
		return l
	}
	p := fit.predict(math.Log(q.Thickness/unitThickness), cell)
	t := studentQuantile(0.5+predicted/2, p.freedom)
	l.Enough = true
	l.Low, l.Middle, l.High = math.Exp(p.mean-t*p.sd), math.Exp(p.mean), math.Exp(p.mean+t*p.sd)
	l.Text = fmt.Sprintf("%s to %s, four of five, from %d entries", print(l.Low), print(l.High), l.Entries)
	switch {
	case l.Here == 0:
		l.Text += fmt.Sprintf("; none yet of %s, %s", q.Variant, q.Position)
	case l.Here < fewestHere:
		l.Text += fmt.Sprintf("; too few yet of %s, %s: %d", q.Variant, q.Position, l.Here)
	default:
		l.Text += fmt.Sprintf(", %d of them of %s, %s", l.Here, q.Variant, q.Position)
	}
	return l
}

// unitThickness keeps the intercept near the data.
const unitThickness = 3e-3 // m

// A LearnedRow is what past logs say of one process on one variant, in one
// position and at one thickness.
type LearnedRow struct {
	Question
	Here int     // entries of exactly that
	Amps Learned // A
	Pace Learned // s/m
}

// LearnAll asks the logs about everything that was ever welded, each process,
// variant, position and thickness (to a tenth of a millimetre) once, in that order.
func LearnAll(entries []Entry) []LearnedRow {
	var rows []LearnedRow
	for i := range entries {
		e := &entries[i]
		q := Question{e.Variant, e.Position, e.Process, math.Round(e.Thickness.Value*1e4) / 1e4}
		at := slices.IndexFunc(rows, func(r LearnedRow) bool { return r.Question == q })
		if at < 0 {
			at = len(rows)
			rows = append(rows, LearnedRow{Question: q})
		}
		rows[at].Here++
	}
	for i := range rows {
		rows[i].Amps, rows[i].Pace = LearnAmps(entries, rows[i].Question), LearnPace(entries, rows[i].Question)
	}
	slices.SortFunc(rows, func(a, b LearnedRow) int {
		return cmp.Or(cmp.Compare(a.Process, b.Process), cmp.Compare(a.Variant, b.Variant), cmp.Compare(a.Position, b.Position), cmp.Compare(a.Thickness, b.Thickness))
	})
	return rows
}
