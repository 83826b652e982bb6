package kit

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"time"

	"axlewright/axle"
	"axlewright/kit/outline"
)

// Options are what is only known when a kit is drawn.
type Options struct {
	Batch string // of the steel, for the mark
	Moves []Move // where a casting's stations are, against the kit's
}

// A Move is a station that is not where the kit has it.
type Move struct {
	Frame   string
	Station int
	By      outline.Point // m
}

// A Drawn kit is a revision with all its plates worked out.
type Drawn struct {
	Name     Name      `json:"name"`
	Casting  string    `json:"casting"`
	Title    string    `json:"title"`
	Date     time.Time `json:"date"`
	Reason   Reason    `json:"reason"`
	Seal     string    `json:"seal"`
	Plates   []Plate   `json:"plates"` // by piece, left before right
	Drilling []Drilled `json:"drilling"`
}

// Draw works a kit out and checks that it can be cut.
//
// Errors: axle.Findings for everything that is wrong, with line, column and a
// caret.
func (k *Kit) Draw(o Options) (Drawn, error) {
	d := draft{k: k, options: o}
	d.heading()
	d.limits()
	d.sizes()
	d.framesWithStations()
	d.drillings()
	d.pieces()
	if len(d.found) == 0 {
		d.tabsAndSlots()
	}
	if len(d.found) > 0 {
		slices.SortStableFunc(d.found, func(a, b axle.Finding) int {
			return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
		})
		return Drawn{}, d.found
	}
	return d.done, nil
}

// A draft is a kit that is being worked out.
type draft struct {
	k       *Kit
	options Options
	found   axle.Findings
	done    Drawn

	known  names            // sizes
	frames map[string]names // sizes and stations by frame
	at     map[string]map[int]outline.Point
	rules  limits
}

// limits in SI.
type limits struct {
	hole, ligament float64 // in thicknesses
	strip, pilot   float64 // m
}

func (d *draft) bad(t Typed, field, format string, args ...any) {
	d.found = append(d.found, d.k.finding(t, field, fmt.Sprintf(format, args...)))
}

// mostPieces keeps a mistaken file from filling the memory.
const mostPieces = 200

func (d *draft) heading() {
	d.done = Drawn{Casting: d.k.Casting, Title: d.k.Title, Reason: d.k.Reason, Seal: d.k.Seal()}
	var err error
	if d.done.Name, err = ParseName(d.k.Kit.Text); err != nil {
		d.bad(d.k.Kit, "kit", "%v", err)
	} else if d.done.Name.Casting != d.k.Casting {
		d.bad(d.k.Kit, "kit", "it is for casting %q, but its name says %s", d.k.Casting, d.done.Name.Casting)
	}
	if d.done.Date, err = time.Parse("2006-01-02", d.k.Drawn.Text); err != nil {
		d.bad(d.k.Drawn, "drawn", "%q is not a date such as 2026-03-02", d.k.Drawn.Text)
	}
	if !d.k.Reason.Why.Given() {
		d.bad(d.k.Kit, "reason.why", "a revision says why it exists, in a sentence")
	}
	if d.done.Name.Revision > 1 && len(d.k.Reason.Moved) == 0 {
		d.bad(d.k.Kit, "reason.moved", "revision %d says what moved since revision %d", d.done.Name.Revision, d.done.Name.Revision-1)
	}
	switch n := len(d.k.Pieces); {
	case n == 0:
		d.bad(d.k.Kit, "pieces", "the kit has no pieces")
	case n > mostPieces:
		d.bad(d.k.Kit, "pieces", "%d pieces; the most is %d", n, mostPieces)
	}
}

// limits of common practice: holes and ligaments of one thickness and more, a
// strip of 8 mm along welds, guide holes 0.4 mm under the drill.
func (d *draft) limits() {
	l := d.k.Limits
	d.rules = limits{1.2, 1.0, 8e-3, 0.4e-3}
	ratio := func(t Typed, field string, to *float64) {
		if v, ok := d.plain(t, field, nil); ok {
			if *to = v; v < 0.5 || v > 5 {
				d.bad(t, field, "%g thicknesses; expected 0.5 to 5", v)
			}
		}
	}
	ratio(l.LeastHole, "limits.least_hole", &d.rules.hole)
	ratio(l.LeastLigament, "limits.least_ligament", &d.rules.ligament)
	for _, one := range []struct {
		t     Typed
		field string
		to    *float64
	}{{l.WeldStrip, "limits.weld_strip", &d.rules.strip}, {l.Pilot, "limits.pilot_under", &d.rules.pilot}} {
		if one.t.Given() {
			*one.to = d.within(one.t, one.field, nil, 0, 0.05)
		}
	}
}

func (d *draft) sizes() {
	d.known = names{}
	for _, s := range d.k.Sizes {
		name := s.Name.Text
		field := "sizes." + name
		if m := nameToken.FindString(name); m != name || name == "" {
			d.bad(s.Name, field, "a size is called by letters, figures and _, such as long or foot_2")
			continue
		}
		if _, twice := d.known[name]; twice {
			d.bad(s.Name, field, "%s stands twice", name)
			continue
		}
		v, err := evaluate(s.Is.Text, d.known)
		if err != nil {
			d.bad(s.Is, field, "%v", err)
		}
		d.known[name] = v
	}
}

func (d *draft) framesWithStations() {
	d.frames, d.at = map[string]names{}, map[string]map[int]outline.Point{}
	for _, f := range d.k.Frames {
		name := f.Name.Text
		if _, twice := d.frames[name]; twice || name == "" {
			d.bad(f.Name, "frames", "frame %q stands twice or has no name", name)
			continue
		}
		scope := names{}
		for n, v := range d.known {
			scope[n] = v
		}
		at := map[int]outline.Point{}
		for _, s := range f.Stations {
			field := fmt.Sprintf("frames[%s].stations[%d]", name, s.Number)
			if _, twice := at[s.Number]; twice || s.Number < 1 {
				d.bad(s.At.typed(), field, "stations are numbered from 1, each once")
			}
			p := d.spot(s.At, field+".at", d.known)
			for _, m := range d.options.Moves {
				if m.Frame == name && m.Station == s.Number {
					p = outline.Point{X: p.X + m.By.X, Y: p.Y + m.By.Y}
				}
			}
			at[s.Number] = p
			scope[fmt.Sprintf("S%d.x", s.Number)] = value{x: p.X, power: 1}
			scope[fmt.Sprintf("S%d.y", s.Number)] = value{x: p.Y, power: 1}
		}
		d.frames[name], d.at[name] = scope, at
	}
	for _, m := range d.options.Moves {
		if _, known := d.at[m.Frame][m.Station]; !known {
			d.bad(d.k.Kit, "", "station %d of frame %q was to be moved, but the kit has none", m.Station, m.Frame)
		}
	}
}

// length works out a length; of what was not typed it is nought.
func (d *draft) length(t Typed, field string, scope names) (float64, bool) {
	return d.number(t, field, scope, value.length)
}

// plain works out a number without unit.
func (d *draft) plain(t Typed, field string, scope names) (float64, bool) {
	return d.number(t, field, scope, value.plain)
}

func (d *draft) number(t Typed, field string, scope names, as func(value) (float64, error)) (float64, bool) {
	if !t.Given() {
		return 0, false
	}
	v, err := evaluate(t.Text, scope)
	x := 0.0
	if err == nil {
		x, err = as(v)
	}
	if err == nil && math.Abs(x) > 1e5 {
		err = fmt.Errorf("it is %g, more than anything here can be", x)
	}
	if err != nil {
		d.bad(t, field, "%q: %v", t.Text, err)
	}
	return x, err == nil
}

// within works out a length that must lie above one limit and not above another.
func (d *draft) within(t Typed, field string, scope names, above, most float64) float64 {
	if !t.Given() {
		d.bad(t, field, "is missing; expected a length")
		return 0
	}
	x, ok := d.length(t, field, scope)
	if ok && (x <= above || x > most) {
		d.bad(t, field, "%s is %s; expected more than %s and at most %s", t.Text, mm(x), mm(above), mm(most))
	}
	return x
}

// spot works out a place.
func (d *draft) spot(s Spot, field string, scope names) outline.Point {
	if !s.X.Given() {
		d.bad(s.typed(), field, "expected a place such as [120, 45.5]")
		return outline.Point{}
	}
	x, _ := d.length(s.X, field, scope)
	y, _ := d.length(s.Y, field, scope)
	return outline.Point{X: x, Y: y}
}
