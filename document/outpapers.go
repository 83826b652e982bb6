package document

import (
	"strconv"
	"strings"

	"axlewright/document/paper"
	"axlewright/shop"
)

// The papers that go out with a unit, or before it.

// measured is what a certificate tells of, in the order of work.
var measured = []shop.Slot{
	{Step: "donor", Item: "teeth"}, {Step: "metal", Item: "metal"}, {Step: "clean", Item: "cracks"}, {Step: "cooled", Item: "toes"}, {Step: "leak", Item: "fall"},
	{Step: "caps", Item: "torque"}, {Step: "bores", Item: "line"}, {Step: "bores", Item: "decision"}, {Step: "assemble", Item: "runout"},
	{Step: "preload", Item: "torque"}, {Step: "side", Item: "spread"}, {Step: "lash", Item: "lash"},
	{Step: "pattern", Item: "decision"}, {Step: "peg", Item: "gap"},
}

// certificateSheet says what was done and measured as the record stood when it
// was signed: marks and readings out of their range too.
func certificateSheet(s Source) paper.Paper {
	p := paper.Paper{Head: paper.Head{Title: "Certificate of build"}}
	given := s.Job.Kept(shop.EntryCertificate)
	all := s.Job.Certificates()
	signed := len(given) > 0 && len(all) == len(given)
	now := s.Job
	if signed {
		s.Job = now.AsOf(all[len(all)-1].Seq)
	} else {
		p.Add(paper.Caution{Words: "Not signed: this paper is no certificate yet."})
	}
	if s.blank() {
		p.Add(paper.Boxes{{Label: "Built", Wide: true}, {Label: "Variant"}, {Label: "Teeth"}})
	} else {
		p.Add(paper.Text{Words: s.ordered(), Bold: true})
	}
	rows, blank := [][]string{}, 0
	for _, slot := range measured {
		if row := s.measuredRow(slot); row != nil {
			rows = append(rows, row)
		} else if s.blank() {
			rows = append(rows, []string{titleOf(slot.Step) + ": " + strings.ToLower(fieldTitle(slot))})
		}
	}
	least := 0.0
	if s.blank() {
		least = 8
	}
	p.Add(paper.Table{Columns: []paper.Column{{Title: "what", Share: 2.4}, {Title: "found", Share: 3.4, Bold: true}, {Title: "range", Share: 2.4}, {Title: "", Share: 0.9}}, Rows: rows, Blank: blank, Least: least})
	if missing := s.Job.NotInRecord(); len(missing) > 0 && !s.blank() {
		words := "△ Not in the record: " + strings.Join(missing, ", ") + "."
		if signed && given[len(given)-1].Why != "" {
			words += " Signed without by " + given[len(given)-1].Who.Name + ": " + given[len(given)-1].Why
		}
		p.Add(paper.Caution{Words: words})
	}
	for _, w := range s.overrides() {
		p.Add(paper.Caution{Words: w})
	}
	p.Add(paper.Caution{Words: "This says what was done and measured. It claims no strength, is no rating and no approval for the road. Local codes and licensed inspection decide."})
	if !signed {
		p.Add(paper.Sign{"Signed by"}, paper.Notes{})
		return p
	}
	entry, c := given[len(given)-1], all[len(all)-1]
	beside := []paper.Block{
		paper.Text{Words: "Signed by " + entry.Who.Name + ", " + moment(entry.At), Bold: true},
		paper.Text{Words: c.Text(), Small: true},
		paper.Text{Words: "Signed with Ed25519 by the key of " + s.House.Name + ":\n" + string(s.Key) + "\nThe text in the square code can be verified with that key alone, by anybody.", Small: true},
	}
	if since := now.Head.Seq - c.Seq - 1; since > 0 {
		beside = append(beside, paper.Text{Words: "△ Entries written after this certificate: " + strconv.FormatInt(since, 10) + ". They are not on this paper.", Small: true, Bold: true})
	}
	p.Add(paper.Code{Text: c.Text(), Side: 48, Beside: beside}, paper.Sign{"Signed by"})
	return p
}

// measuredRow is what stands in all places of a field, with its range and mark.
func (s Source) measuredRow(slot shop.Slot) []string {
	text := standing(s.Job, slot)
	if text == "" {
		return nil
	}
	limit := ""
	verdict, queried := shop.NotYet, false
	for _, e := range s.Job.InPlaces(slot.Step, slot.Item) {
		if e.Limit != nil {
			f, _ := shop.FieldOf(slot.Step, slot.Item)
			limit = RangeText(*e.Limit, f.Dim) + ", " + string(e.Limit.Origin)
		}
		verdict = shop.Worst(verdict, e.Verdict)
		queried = queried || len(shop.Query(e)) > 0
	}
	sign := signOf(verdict)
	if queried {
		sign = inQuestion
	}
	return []string{titleOf(slot.Step) + ": " + strings.ToLower(fieldTitle(slot)), text, limit, sign}
}

// careSheet is what the customer keeps.
func careSheet(s Source) paper.Paper {
	oil := standing(s.Job, shop.Slot{Step: "run", Item: "oil"})
	p := paper.Paper{}
	p.Add(
		paper.Caution{Words: "A built unit weighs up to 45 kg (99 lb): two people or a crane, on a stand, never on a jack alone."},
		paper.Heading{Text: "Before it goes in"},
		paper.List{
			{Words: "Breather clear and led up high. Oil to the lower edge of the filler on level ground, or the maker’s level."},
			{Words: "Do not disturb shims, adjusters or the peg: they are set and locked."},
		},
		paper.Boxes{{Label: "Oil in it", Places: []paper.Place{{Text: oil}}}, {Label: "Fitted on", Unit: "day"}, {Label: "Distance then", Unit: "km or miles"}, {Label: "Fitted by"}},
		paper.Heading{Text: "The first kilometres", Note: "published for gears of this kind; the gear maker’s sheet wins"},
		paper.List{
			{Words: "20 to 30 km (12 to 19 mi) easy, stop, let it cool 20 to 30 minutes; again. No hard pull for 160 km (100 mi)."},
			{Words: "No towing before 800 km (500 mi); then first tows of 25 km (15 mi), cooling between, three times."},
			{Words: "Change the oil at 800 km (500 mi) and keep the bill. Bolts that are seen: look at them then."},
		},
		paper.Boxes{{Label: "Oil changed on", Unit: "day"}, {Label: "Distance then", Unit: "km or miles"}},
		paper.Heading{Text: "When to stop and look", Note: "common practice, no source"},
		paper.List{
			{Words: "60 to 100 °C (140 to 212 °F) on the case after a hard run is usual; past 120 °C (248 °F) and climbing: stop."},
			{Words: "A new noise, a leak, bronze in the oil: stop, and ring us before it is opened."},
		},
		paper.Heading{Text: "If it comes back"},
		paper.Text{Words: "Bring it whole and with its oil. We compare it with the record of this number."},
	)
	if w := standing(s.Job, shop.Slot{Step: "handover", Item: "warranty"}); w != "" {
		p.Add(paper.Heading{Text: "Warranty"}, paper.Text{Words: w})
	}
	if s.House.Terms != "" {
		p.Add(paper.Heading{Text: "Terms"}, paper.Text{Words: s.House.Terms, Small: true})
	}
	p.Foot = "Altering axle, ratio, tyres or brakes may call for an inspection or an engineer’s certificate where you live: ask there, and tell your insurer. This sheet is no approval."
	p.Add(paper.Notes{})
	return p
}

// quoteSheet is what the customer is offered: what would be built and for how
// much, and nothing of what it costs the shop.
func quoteSheet(s Source) paper.Paper {
	var p paper.Paper
	var q shop.Quote
	if s.Quote != nil {
		q = *s.Quote
	}
	var works []string
	for _, w := range q.Works {
		works = append(works, string(w))
	}
	offered, price, deposit := "", "", ""
	if s.Quote != nil {
		offered = "A rebuild as standard, measured and set"
		if len(works) > 0 {
			offered += ", with " + strings.Join(works, ", ")
		}
		price, deposit = q.Price.String(), q.Deposit.String()
	}
	p.Add(
		paper.Heading{Text: "We offer"},
		paper.Boxes{
			{Label: "What would be built", Wide: true, Places: []paper.Place{{Text: offered}}},
			{Label: "Price", Places: []paper.Place{{Text: price}}},
			{Label: "Given on", Unit: "day", Places: []paper.Place{{Text: q.Day}}},
			{Label: "Deposit held until the old unit is back, whole", Places: []paper.Place{{Text: deposit}}},
			{Label: "It stands until", Unit: "day"},
		},
	)
	if s.House.Terms != "" {
		p.Add(paper.Heading{Text: "Terms"}, paper.Text{Words: s.House.Terms})
	}
	p.Add(paper.Caution{Words: "What is built is set up and recorded. " + noClaim}, paper.Sign{"For the shop", "Accepted by"}, paper.Notes{})
	return p
}
