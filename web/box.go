package web

import (
	"context"
	"strings"

	"axlewright/quantity"
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
	Mixed   *mixed      // inch and foot may have been mixed up
	Locked  bool        // this person's role may not write here
	Why     bool        // a reason is wanted: a certificate was given
}

// mixed asks back after a torque that the other reading of the wrench would explain.
type mixed struct{ Text, Value, Unit string }

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
		Locked: !v.who.Role.MayRecord(step), Why: len(j.Kept(shop.EntryCertificate)) > 0 && p.Last != 0}
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
			x.Mixed = mixUp(e)
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

// mixUp says which torque was meant if inch and foot were mixed up.
func mixUp(e *shop.Entry) *mixed {
	l := e.Limit
	if e.Value.Dim != quantity.Torque || l == nil || l.Low == nil || l.High == nil || e.Verdict == shop.Fine || e.Value.SI == nil {
		return nil
	}
	meant, suspected := quantity.MeantTorque(*e.Value.SI, *l.Low, *l.High)
	if !suspected {
		return nil
	}
	number, unit := splitTyped(e.Value.Typed, unitsOf(quantity.Torque, ""))
	other := map[string]string{"lbf·in": "lbf·ft", "lbf·ft": "lbf·in"}[unit]
	m := &mixed{Text: quantity.Spelled(quantity.Format(meant, quantity.Torque)), Value: number, Unit: other}
	if other == "" { // typed in newton metres: the mix-up was in somebody's head
		m.Value, m.Unit = quantity.Exact(meant, quantity.Torque), ""
	}
	return m
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
