package setup

import (
	"fmt"
	"strings"

	"axlewright/quantity"
)

// Tag says what stands behind a range.
type Tag string

// The tags. The one-letter ones are those of the trade's lists.
const (
	MakersPage Tag = "maker" // the maker of this axle, page noted
	ShopsOwn   Tag = "shop"  // the shop's own figure
	Published  Tag = "S"     // published for one axle or product, never a rule for others
	Custom     Tag = "T"     // common practice of the trade, no source
	WorkedOut  Tag = "C"     // worked out from a formula
	Disputed   Tag = "?"     // sources or practitioners disagree
)

// Words explains the tag.
func (t Tag) Words() string {
	switch t {
	case MakersPage:
		return "maker's page"
	case ShopsOwn:
		return "shop's own"
	case Published:
		return "published for one axle, not a rule"
	case Custom:
		return "custom of the trade, no source"
	case WorkedOut:
		return "worked out"
	case Disputed:
		return "the trade disagrees"
	}
	return "nobody says where from"
}

// A Limit is a range that a reading may lie in and where it comes from.
type Limit struct {
	Item Item

	Low, High       float64 // coherent SI; from zero where only a most is known
	AimLow, AimHigh float64 // the part to aim for; both zero where there is none

	Tag  Tag
	For  string // the kind of axle or the case it was given for
	Page string // page of the maker's manual, or where the shop keeps its figure

	// Vague limits span the bands of several kinds of axle, because the kind was
	// not said. A reading inside one is not yet fine.
	Vague bool

	Others []Limit // what other sources say of the same thing
}

// Holds says whether a value lies in the range.
func (l Limit) Holds(value float64) bool {
	slack := 1e-9 * (l.High - l.Low + l.High) // a figure typed as the limit is in it
	return value >= l.Low-slack && value <= l.High+slack
}

// Aimed says whether a value lies in the part to aim for; where there is none
// the whole range will do.
func (l Limit) Aimed(value float64) bool {
	if !l.hasAim() {
		return l.Holds(value)
	}
	aim := Limit{Low: l.AimLow, High: l.AimHigh}
	return aim.Holds(value)
}

func (l Limit) hasAim() bool { return l.AimHigh > 0 }

// Target is the middle of what to aim for.
func (l Limit) Target() float64 {
	if l.hasAim() {
		return (l.AimLow + l.AimHigh) / 2
	}
	return (l.Low + l.High) / 2
}

// Range is the range in both systems of units: "0.20 to 0.30 mm (8 to 12 thou)".
func (l Limit) Range() string {
	dim := l.Item.Dim()
	switch {
	case l.Low == 0:
		return "up to " + shown(l.High, dim)
	case l.Low == l.High:
		return shown(l.High, dim)
	}
	return shownRange(l.Low, l.High, dim)
}

// From says where the range comes from, tag included: "[S] published for one
// axle, not a rule: heavy truck".
func (l Limit) From() string {
	from := l.Tag.Words()
	switch l.Tag {
	case MakersPage, ShopsOwn:
		switch {
		case l.Tag == MakersPage && strings.Contains(l.Page, "page"): // "manual, page 54-12"
			from = "maker: " + l.Page
		case l.Page != "":
			from += " " + l.Page
		}
	default:
		from = fmt.Sprintf("[%s] %s", l.Tag, from)
	}
	if l.For != "" {
		from += ": " + l.For
	}
	return from
}

// Text is the range and where it comes from.
func (l Limit) Text() string { return l.Range() + " (" + l.From() + ")" }

// judge holds a value against the range.
func (l Limit) judge(label string, value float64) Check {
	dim := l.Item.Dim()
	c := Check{
		Label: label, Value: value, Unit: dim.Unit(), Shown: shown(value, dim),
		Allowed: l, Range: l.Range(), From: l.From(),
	}
	side, within := "over", "within "+c.Range
	if value < l.Low {
		side = "under"
	}
	if l.Low == 0 { // "within 0.03 mm", not "within up to 0.03 mm"
		within = "within " + shown(l.High, dim)
	}
	switch {
	case !l.Holds(value):
		c.State = Look
		if end := l.nearEnd(value); shown(value, dim) == shown(end, dim) { // rounded, they look alike
			c.Shown = finely(value, dim)
			within = finely(end, dim) + ", the end of " + c.Range
		}
		c.Reason = fmt.Sprintf("%s %s is %s %s (%s).", capital(label), c.Shown, side, strings.TrimPrefix(within, "within "), c.From)
	case l.Vague:
		c.State = Look
		c.Reason = fmt.Sprintf("%s %s cannot be judged: the trade's ranges run from %s, by kind of axle. Say the kind, or type the maker's figure.",
			capital(label), c.Shown, shownRange(l.Low, l.High, dim))
	case !l.Aimed(value):
		c.State = Fine
		c.Reason = fmt.Sprintf("%s %s is %s (%s); better is %s.", capital(label), c.Shown, within, c.From, l.aim(dim))
	default:
		c.State = Fine
		c.Reason = fmt.Sprintf("%s %s is %s (%s).", capital(label), c.Shown, within, c.From)
	}
	return c
}

// nearEnd is the end of the range that a value has passed.
func (l Limit) nearEnd(value float64) float64 {
	if value < l.Low {
		return l.Low
	}
	return l.High
}

// finely prints one digit more than people read.
func finely(si float64, dim quantity.Dimension) string {
	return quantity.Spelled(quantity.FormatDigits(si, dim, 3))
}

// Better is the part to aim for in both systems of units, "" where all of the
// range will do.
func (l Limit) Better() string {
	if !l.hasAim() {
		return ""
	}
	return l.aim(l.Item.Dim())
}

// Plus is the range of a reading that something else adds to, as the seal does
// to a turning torque: the part of it that holds whatever that adds. Where no
// reading holds for certain, it is the whole of it, and vague.
func (l Limit) Plus(o Limit, why string) Limit {
	low, high := l.Low+o.High, l.High+o.Low
	if low > high {
		low, high, l.Vague = l.Low+o.Low, l.High+o.High, true
	}
	l.Low, l.High, l.For = low, high, strings.TrimPrefix(l.For+", "+why, ", ")
	l.AimLow, l.AimHigh = 0, 0
	others := make([]Limit, len(l.Others))
	for i, other := range l.Others {
		others[i] = other.Plus(o, why)
	}
	l.Others = others
	return l
}

func (l Limit) aim(dim quantity.Dimension) string {
	if l.AimLow == 0 {
		return "up to " + shown(l.AimHigh, dim)
	}
	return shownRange(l.AimLow, l.AimHigh, dim)
}
