package shop

import "strconv"

// Index makes what the job is found by. Home is the shop that keeps it.
func (j *Job) Index(home ID) Index {
	views := j.Steps()
	line := Line{Job: j.ID, Origin: j.Origin.ID, Number: j.Number, Stamped: j.Stamped(), State: j.State(), Title: j.Title(),
		Works: j.Works(), Due: j.Value("enquiry", "due").Day, Next: j.Next(views), Gaps: Gaps(views), Outcome: j.outcome(), Opened: j.Opened}
	if c := j.Casting(); c != nil {
		line.Casting = c.Label
	}
	if n := len(j.entries); n > 0 {
		line.Changed = j.entries[n-1].At
	}
	for _, s := range j.Stops() {
		if s.Override == nil && !s.Missing {
			line.Stops++
		}
	}
	x := Index{Uses: j.uses()}
	line.Marks = j.marks(home, line.Stops, x.Uses)
	x.Line = line
	x.Numbers = j.numbers()
	x.Terms = foundBy(line.Title + " " + line.Casting + " " + line.Stamped + " " + j.Value("donor", "donor").label() + " " +
		j.Value("plates", "kit").label() + " " + j.Value("enquiry", "axle").Text)
	return x
}

func (v Value) label() string {
	if v.Link == nil {
		return ""
	}
	return v.Link.Label
}

// uses collects the cards that the record names. A job that was declined keeps
// no donor and nothing set aside; a scrapped one keeps nothing set aside.
func (j *Job) uses() []Use {
	state := j.State()
	var all []Use
	for i := range j.entries {
		e := &j.entries[i]
		l := e.Value.Link
		if l == nil || l.Kind == KindHouse || j.Standing(e.Slot()) != e {
			continue
		}
		u := Use{Job: j.ID, Kind: l.Kind, Card: l.ID, Slot: e.Slot().String(), Reserved: e.Value.Reserved}
		if e.Value.Quantity != nil {
			u.Quantity = *e.Value.Quantity
		}
		if u.Reserved && (state == StateDeclined || state == StateScrapped) || l.Kind == KindDonor && e.Step == "donor" && state == StateDeclined {
			continue
		}
		all = append(all, u)
	}
	return usedUp(all)
}

// usedUp takes what a job has used of a lot off what it had set aside of it: the
// same pieces are not counted twice.
func usedUp(all []Use) []Use {
	used := map[ID]float64{}
	for _, u := range all {
		if !u.Reserved && u.Kind == KindLot {
			used[u.Card] += u.Quantity
		}
	}
	var left []Use
	for _, u := range all {
		if u.Reserved {
			taken := min(u.Quantity, used[u.Card])
			used[u.Card] -= taken
			if u.Quantity -= taken; u.Quantity <= crumb {
				continue
			}
		}
		left = append(left, u)
	}
	return left
}

// crumb is what kilograms that add up inexactly may leave.
const crumb = 1e-9

func (j *Job) marks(home ID, stops int, uses []Use) []Mark {
	var all []Mark
	if stops > 0 {
		all = append(all, MarkStop)
	}
	if d := j.Value("deal", "deposit").Sum; d != nil && *d > 0 && j.Value("deal", "core_back").Day == "" {
		all = append(all, MarkCoreOwed)
	} else if d != nil && *d > 0 && j.Value("deal", "deposit_returned").Sum == nil {
		all = append(all, MarkDeposit)
	}
	for _, u := range uses {
		if u.Reserved {
			all = append(all, MarkReserved)
			break
		}
	}
	if len(j.Value("return", "evidence").Words) > 0 {
		all = append(all, MarkFailed)
	}
	if j.Origin.ID != home {
		all = append(all, MarkForeign)
	}
	if len(j.WeldEntries()) > 0 {
		all = append(all, MarkWelds)
	}
	return all
}

// numbers are what the job may be asked for by, folded: what is stamped, the
// running number with and without its zeros, the donor's tag.
func (j *Job) numbers() []string {
	var all []string
	for _, n := range []string{j.Stamped(), numberText(j.Number), strconv.FormatInt(j.Number, 10), j.Value("donor", "donor").label()} {
		if f := FoldNumber(n); f != "" && !oneOf(f, all) {
			all = append(all, f)
		}
	}
	return all
}
