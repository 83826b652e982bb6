package setup

import (
	"fmt"
	"math"

	"axlewright/quantity"
)

// MarkUnit is what the number on a pinion counts.
type MarkUnit string

// The units of marks. An m beside the number means hundredths on some.
const (
	MarkThou       MarkUnit = "thou"
	MarkHundredths MarkUnit = "0.01 mm"
)

// MarkUnits lists them.
var MarkUnits = []MarkUnit{MarkThou, MarkHundredths}

func (u MarkUnit) size() float64 {
	if u == MarkThou {
		return 25.4e-6
	}
	return 10e-6
}

// MarkSense says what a plus on a pinion means. Makers differ, and the sign is
// the commonest mistake there is: it is asked, never assumed.
type MarkSense string

// The senses.
const (
	PlusFurther MarkSense = "plus sits further from the crown wheel" // a longer mounting distance
	PlusNearer  MarkSense = "plus sits nearer the crown wheel"
)

// MarkSenses lists them.
var MarkSenses = []MarkSense{PlusFurther, PlusNearer}

// A Mark is the number that says how far a pinion wants to sit off its nominal
// place.
type Mark struct {
	Count Reading   // the number as marked, with its sign
	Unit  MarkUnit  // what it counts
	Plus  MarkSense // what its plus means
}

// further is how much further from the crown wheel the pinion wants to sit, m.
func (m Mark) further() float64 {
	away := m.Count.SI * m.Unit.size()
	if m.Plus == PlusNearer {
		return -away
	}
	return away
}

// text is the mark as it is read: "+2 thou".
func (m Mark) text() string {
	switch {
	case m.Count.SI == 0:
		return "0"
	case m.Unit == MarkThou:
		return fmt.Sprintf("%+g thou", m.Count.SI)
	}
	return fmt.Sprintf("%+g × %s", m.Count.SI, m.Unit)
}

// mark asks for a mark and what it means. A mark of zero has neither unit nor
// sign.
func (s *sheet) mark(field, whose string, m Mark) {
	if !m.Count.Taken {
		s.waits("mark on the " + whose)
		return
	}
	s.number(field+".Count", m.Count.SI, quantity.Number, m.Count.SI >= -500 && m.Count.SI <= 500, "the number as marked, such as -2")
	if m.Count.SI == 0 {
		return
	}
	choose(s, field+".Unit", "does the mark on the "+whose+" count thou or 0.01 mm", m.Unit, MarkThou, MarkHundredths)
	choose(s, field+".Plus", "does plus on the "+whose+" mean it sits further from the crown wheel or nearer", m.Plus, PlusFurther, PlusNearer)
}

// doubtMark asks again where a mark is larger than marks are.
func (a *Answer) doubtMark(spec Spec, whose string, m Mark) {
	l := spec.Limit(MarkSize)
	away := math.Abs(m.further())
	if a.only("mark on the "+whose, away, l) == Look {
		a.settle(Look, "The mark on the %s comes to %s, more than marks are (%s).", whose, length(away), l.Text())
		a.ask("Is %s on the %s really the mark for its place, and does it count %s?", m.text(), whose, m.Unit)
	}
}
