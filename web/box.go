package web

import (
	"context"
	"strings"

	"axlewright/document"
	"axlewright/shop"
)

// A box is one place of a field of a job, ready to be filled.
type box struct {
	Job   shop.ID
	Step  shop.StepKey
	Field shop.Field
	Place shop.PlaceView
	Title string // of the place where there are several, else of the field
	Lone  bool   // the only place of its field

	Limit  *shop.Limit  // what a reading is judged against
	Others []shop.Limit // other bands of the trade

	Typed string // what stands in the input
	Unit  string // chosen beside it
	Units []unit

	Refused string      // why what was sent was not written
	Clash   *shop.Clash // both, where somebody else was first
	Query   *query      // a slip would explain the reading
	Locked  bool        // this person's role may not write here
	Why     bool        // a reason is wanted: a certificate was given
}

// A query asks back after a reading outside its range that a slip would explain.
type query struct {
	Typed, Range string
	Meant        []meantShow
}

type meantShow struct {
	shop.Meant
	Text string // in both systems
}

// ID of the box in the page.
func (b box) ID() string { return boxID(b.Place.Slot) }

// boxID makes a name for an element out of a slot: letters, digits and hyphens
// stay, everything else is written as its number.
func boxID(s shop.Slot) string {
	var id strings.Builder
	id.WriteString("box")
	for _, part := range []string{string(s.Step), s.Item, s.Place} {
		id.WriteByte('-')
		for _, r := range part {
			if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' {
				id.WriteRune(r)
				continue
			}
			id.WriteString("_" + itoa(int64(r)))
		}
	}
	return id.String()
}

// bounds finds the ranges beside a field.
type bounds struct {
	casting *shop.Casting
	house   *shop.House
}

func (s *Server) bounds(ctx context.Context, j *shop.Job) (bounds, error) {
	var b bounds
	house, err := shop.Get[shop.House](ctx, s.shop, shop.HouseID)
	if err != nil {
		return b, err
	}
	b.house = &house
	if link := j.Casting(); link != nil {
		c, err := shop.Get[shop.Casting](ctx, s.shop, link.ID)
		if err != nil && shop.CodeOf(err) != shop.NotFound {
			return b, err
		}
		if err == nil {
			b.casting = &c
		}
	}
	return b, nil
}

// boxOf makes one box ready.
func (v *visit) boxOf(j *shop.Job, b bounds, step shop.StepKey, f shop.FieldView, p shop.PlaceView) box {
	x := box{Job: j.ID, Step: step, Field: f.Field, Place: p, Title: p.Slot.Place, Lone: p.Slot.Place == "",
		Locked: !v.who.Role.MayRecord(step), Why: j.Certified(p.Slot)}
	if x.Lone {
		x.Title = f.Field.Title
	}
	if f.Field.Kind == shop.FieldFigure {
		x.Limit, x.Others = shop.LimitsFor(j, step, f.Field, b.casting, b.house)
		x.Units = unitsOf(f.Field.Dim, f.Field.Unit)
	}
	if e := p.Entry; e != nil {
		x.Typed = e.Value.Typed
		switch f.Field.Kind {
		case shop.FieldFigure:
			x.Typed, x.Unit = splitTyped(e.Value.Typed, x.Units)
			x.Query = queryOf(e)
		case shop.FieldText:
			x.Typed = e.Value.Text
		case shop.FieldDay:
			x.Typed = e.Value.Day
		case shop.FieldSum:
			x.Typed = strings.TrimSuffix(e.Value.Sum.String(), ".00")
		}
	}
	return x
}

// drawn says whether the words of a choice are line drawings to tap.
func (b box) drawn() bool { return len(b.Field.Options) > 0 && b.Field.Options[0].Picture != "" }

// queryOf asks back after a reading that a slip would explain.
func queryOf(e *shop.Entry) *query {
	meant := shop.Query(e)
	if len(meant) == 0 {
		return nil
	}
	q := &query{Typed: e.Value.Typed, Range: document.RangeText(*e.Limit, e.Value.Dim)}
	for _, m := range meant {
		q.Meant = append(q.Meant, meantShow{Meant: m, Text: document.Reading(m.Typed, m.SI, e.Value.Dim)})
	}
	return q
}

// origin is the small word under a reading.
func (b box) origin() string {
	if b.Step == "enquiry" {
		return "as told"
	}
	return "measured"
}

// with names the instrument of a reading.
func with(instrument string) string {
	if instrument == "" {
		return ""
	}
	return ", with " + instrument
}

func sentLater(e shop.Entry) string {
	if e.Taken.IsZero() {
		return ""
	}
	return ", typed " + when(e.Taken) + " and sent later"
}
