package setup

import (
	"slices"

	"axlewright/quantity"
)

// A Spec holds the ranges that a unit is set to: what the shop typed from the
// maker's page or as its own, and the kind of axle that picks among the ranges
// of the trade for all the rest.
type Spec struct {
	Name   string // of the variant or of the shop's sheet
	Kind   Kind
	Pegged bool           // a peg stands behind the crown wheel
	Own    map[Item]Limit // tags MakersPage (with its page) or ShopsOwn
}

// Maker returns a range from the maker's page.
func Maker(item Item, low, high float64, page string) Limit {
	return Limit{Item: item, Low: low, High: high, Tag: MakersPage, Page: page}
}

// Own returns a range of the shop's own.
func Own(item Item, low, high float64, where string) Limit {
	return Limit{Item: item, Low: low, High: high, Tag: ShopsOwn, Page: where}
}

// With returns the spec with a range of its own.
func (s Spec) With(limits ...Limit) Spec {
	own := make(map[Item]Limit, len(s.Own)+len(limits))
	for item, l := range s.Own {
		own[item] = l
	}
	for _, l := range limits {
		own[l.Item] = l
	}
	s.Own = own
	return s
}

// Check returns what is wrong with the spec, as axle.Findings.
func (s Spec) Check() error {
	var in sheet
	in.spec(s)
	return in.err()
}

// spec adds what is wrong with a spec.
func (s *sheet) spec(spec Spec) {
	if spec.Kind != "" && !slices.Contains(Kinds(), spec.Kind) {
		s.bad("Spec.Kind", "%q, expected a kind of axle such as %q", string(spec.Kind), string(LightAdjusted))
	}
	for _, item := range Items() {
		l, own := spec.Own[item]
		if !own {
			continue
		}
		field := "Spec.Own[" + string(item) + "]"
		dim := item.Dim()
		if l.Item != item {
			s.bad(field, "is a range for %q, expected one for %q", string(l.Item), string(item))
		}
		s.number(field+".Low", l.Low, dim, l.Low >= 0, "zero or more, such as "+dim.Example())
		s.number(field+".High", l.High, dim, l.High >= l.Low && l.High > 0, "the upper end of the range, above zero and not below "+shown(l.Low, dim))
		if l.hasAim() || l.AimLow != 0 {
			s.number(field+".Aim", l.AimHigh, dim, l.AimLow >= l.Low && l.AimHigh >= l.AimLow && l.AimHigh <= l.High, "an aim inside the range")
		}
		switch {
		case l.Tag != MakersPage && l.Tag != ShopsOwn:
			s.bad(field+".Tag", "%q, expected %q or %q", string(l.Tag), string(MakersPage), string(ShopsOwn))
		case l.Tag == MakersPage && l.Page == "":
			s.bad(field+".Page", "is empty, expected the page of the maker's manual, such as \"54-12\"")
		}
	}
	for item := range spec.Own {
		if !slices.Contains(Items(), item) {
			s.bad("Spec.Own["+string(item)+"]", "is not a thing with a range, expected one such as %q", string(Lash))
		}
	}
}

// Limit returns the range for an item: the spec's own, else the trade's for its
// kind of axle, else, where the trade has only ranges for other kinds, a vague
// one that spans them.
func (s Spec) Limit(item Item) Limit {
	var fit, others []Limit
	var all []Limit
	for _, b := range bands {
		if b.item != item {
			continue
		}
		l := b.limit()
		switch {
		case b.last && (len(b.kinds) == 0 || slices.Contains(b.kinds, s.Kind)):
			others = append(others, l)
		case b.last:
		case len(b.kinds) == 0 || slices.Contains(b.kinds, s.Kind):
			fit = append(fit, l)
		default:
			all = append(all, l)
		}
	}
	if item == WheelRunOut && s.Pegged {
		fit = append([]Limit{peggedRunOut.limit()}, fit...)
	}
	if l, own := s.Own[item]; own {
		l.Others = slices.Concat(fit, others)
		return l
	}
	if len(fit) > 0 {
		l := fit[0]
		l.Others = slices.Concat(fit[1:], others)
		return l
	}
	return vague(item, all, others)
}

// vague spans the ranges of all kinds of axle.
func vague(item Item, all, others []Limit) Limit {
	l := Limit{Item: item, Tag: Published, For: "axles of several kinds", Vague: true, Others: slices.Concat(all, others)}
	for i, a := range all {
		if i == 0 || a.Low < l.Low {
			l.Low = a.Low
		}
		l.High = max(l.High, a.High)
	}
	return l
}

func (b band) limit() Limit {
	return Limit{Item: b.item, Low: b.low, High: b.high, AimLow: b.aimLow, AimHigh: b.aimHigh, Tag: b.tag, For: b.note}
}

// Judge holds one reading against the range for its item: for the readings that
// need no sum, such as a feeler behind a cup or the run-out of a flange.
func Judge(spec Spec, item Item, reading Reading) (Answer, error) {
	var in sheet
	var a Answer
	in.spec(spec)
	if !slices.Contains(Items(), item) {
		in.bad("item", "%q is not a thing with a range, expected one such as %q", string(item), string(WheelRunOut))
	}
	in.need("reading", string(item), reading, item.Dim(), 0, most(item.Dim()), "zero or more, such as "+item.Dim().Example())
	if err := in.err(); err != nil {
		return Answer{}, err
	}
	if in.waiting(&a) {
		return a, nil
	}
	l := spec.Limit(item)
	a.check(string(item), reading.SI, l)
	a.finish()
	a.tellOthers(l)
	return a, nil
}

// tellOthers notes what other sources say where they disagree.
func (a *Answer) tellOthers(l Limit) {
	for _, o := range l.Others {
		if o.Low != l.Low || o.High != l.High {
			a.note("Others say %s.", o.Text())
		}
	}
}

// most is what no reading of a workshop reaches.
func most(dim quantity.Dimension) float64 {
	switch dim {
	case quantity.Length:
		return 2
	case quantity.Torque:
		return 5000
	}
	return 1000
}
