package shop

import (
	"math"
	"slices"

	"axlewright/setup"
)

// A Band says that a reading is held against a range that package setup keeps:
// the spec's own, else the trade's for the kind of axle on the variant's card.
type Band struct {
	Item setup.Item
	When *When   // it holds only where this word was chosen
	Over float64 // m; the item is an angle, the reading what it rises over this length
	// Split says that the record picks among several items, such as for new and for
	// used bearings: limits of the shop's own are set for those, not for the reading.
	Split bool

	// find changes the range by what else the record says; nil takes it as it is.
	find func(*Job, setup.Spec) setup.Limit
}

func (b Band) limit(j *Job, spec setup.Spec) setup.Limit {
	if b.find != nil {
		return b.find(j, spec)
	}
	return spec.Limit(b.Item)
}

// items are bands that always hold.
func items(all ...setup.Item) []Band {
	var bands []Band
	for _, i := range all {
		bands = append(bands, Band{Item: i})
	}
	return bands
}

// SetUpSpec returns the ranges that a job is set up to: those typed for the
// variant, else those of the house, else the trade's for the variant's kind of
// axle. Casting and house may be nil.
func SetUpSpec(j *Job, casting *Casting, house *House) setup.Spec {
	spec := setup.Spec{Pegged: slices.Contains(j.Works(), WorkPeg), Own: map[setup.Item]setup.Limit{}}
	if casting != nil {
		spec.Name, spec.Kind = casting.Name, casting.AxleKind
		addOwn(&spec, casting.Specs)
	}
	if house != nil {
		addOwn(&spec, house.Specs)
	}
	return spec
}

// addOwn adds the limits that nobody before has set.
func addOwn(spec *setup.Spec, specs []Spec) {
	for _, s := range specs {
		for _, b := range s.bands() {
			if _, set := spec.Own[b.Item]; !set {
				spec.Own[b.Item] = ownLimit(*spec, s.Limit, b)
			}
		}
	}
}

// bands are the items that a limit of the shop's own is for.
func (s Spec) bands() []Band {
	if s.Item != "" {
		return items(s.Item)
	}
	f, _ := FieldOf(s.Step, s.Field)
	return f.Bands
}

// A Limitable is something that the shop may set a limit of its own for: a
// reading of a step, or a thing of setting-up that no single box is held against.
type Limitable struct {
	Step  StepKey
	Field Field
	Item  setup.Item
}

// Limitables lists what limits may be set for: readings in the order of the work,
// then the things of setting-up that none of them stands for.
func Limitables() []Limitable {
	var all []Limitable
	var covered []setup.Item
	for _, s := range steps {
		for _, f := range s.Fields {
			if f.Kind != FieldFigure || slices.ContainsFunc(f.Bands, func(b Band) bool { return b.Split }) {
				continue
			}
			all = append(all, Limitable{Step: s.Key, Field: f})
			for _, b := range f.Bands {
				covered = append(covered, b.Item)
			}
		}
	}
	for _, item := range setup.Items() {
		if !slices.Contains(covered, item) {
			all = append(all, Limitable{Item: item})
		}
	}
	return all
}

// ownLimit is a limit of the shop's own as package setup has it. Where only a
// least is set, the trade's most stays above it.
func ownLimit(spec setup.Spec, l Limit, b Band) setup.Limit {
	own := setup.Limit{Item: b.Item, Tag: setup.ShopsOwn, Page: l.Source}
	if l.Origin == Maker {
		own.Tag = setup.MakersPage
	}
	if l.Low != nil {
		own.Low = b.item(*l.Low)
	}
	if l.High != nil {
		own.High = b.item(*l.High)
		return own
	}
	trade := setup.Spec{Kind: spec.Kind, Pegged: spec.Pegged}.Limit(b.Item)
	own.High = max(trade.High, own.Low)
	own.Page += "; its upper end is the trade's"
	return own
}

// item turns a reading into what the item is counted in, reading back again.
func (b Band) item(reading float64) float64 {
	if b.Over == 0 {
		return reading
	}
	return math.Atan(reading / b.Over)
}

func (b Band) reading(item float64) float64 {
	if b.Over == 0 {
		return item
	}
	return math.Tan(item) * b.Over
}

// limits are the range of a band as it stands beside a box, and what else is
// said of the same thing.
func (b Band) limits(j *Job, spec setup.Spec) []Limit {
	l := b.limit(j, spec)
	all := []Limit{b.shown(l)}
	for _, o := range l.Others {
		all = append(all, b.shown(o))
	}
	return all
}

func (b Band) shown(l setup.Limit) Limit {
	high := b.reading(l.High)
	s := Limit{High: &high, Kind: l.For, Origin: Trade, Vague: l.Vague, When: b.When}
	if l.Low > 0 {
		low := b.reading(l.Low)
		s.Low = &low
	}
	if better := l.Better(); better != "" {
		s.Kind = joinWords(s.Kind, "better "+better)
	}
	switch l.Tag {
	case setup.MakersPage:
		s.Origin, s.Source = Maker, l.Page
	case setup.ShopsOwn:
		s.Origin, s.Source = Measured, l.Page
	case setup.Published:
		s.Source = published
	case setup.Disputed:
		s.Source = "the trade disagrees, no source"
	case setup.WorkedOut:
		s.Origin, s.Source = Computed, "worked out from the geometry"
	default:
		s.Source = custom
	}
	return s
}

func joinWords(a, b string) string {
	if a == "" {
		return b
	}
	return a + "; " + b
}
