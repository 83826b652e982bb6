package shop

import (
	"strconv"
	"strings"
)

// linkCard names the card that an entry links to. A donor serves one job only.
func linkCard(tx Tx, j *Job, f Field, e *Entry) error {
	at, link := e.Slot().String(), *e.Value.Link
	card, err := tx.Card(link.Kind, link.ID)
	if err != nil {
		return fieldOf(err, at)
	}
	link.Label = card.Label
	e.Value.Link = &link
	if f.Card != KindDonor || e.Step != "donor" {
		return nil
	}
	uses, err := tx.Uses(KindDonor, link.ID, usesOfDonor)
	if err != nil {
		return err
	}
	for _, u := range uses {
		if u.Job == j.ID || u.Slot != donorSlot {
			continue
		}
		other, err := readJob(tx, u.Job)
		if err != nil {
			return err
		}
		return Fault(Short, "Donor %s is kept for job %s.", card.Label, other.NumberText()).At(at)
	}
	return nil
}

// takePart names the lot that an entry takes from. Setting aside more than is
// free is refused; using more than there was is not, because it has happened:
// the lot then shows that it was counted wrong.
func (s *Shop) takePart(tx Tx, j *Job, f Field, e *Entry) error {
	at, link := e.Slot().String(), *e.Value.Link
	lot, err := getSheet[Lot](tx, link.ID)
	if err != nil {
		return fieldOf(err, at)
	}
	if f.Lot != "" && lot.LotKind != f.Lot {
		return Fault(Invalid, "This box is for %s, and %s is a lot of %s: choose another.", f.Lot, lot.Title, lot.LotKind).At(at)
	}
	link.Label = lot.describe().label
	e.Value.Link = &link
	taken, err := tx.Taken([]ID{lot.ID})
	if err != nil {
		return err
	}
	view := s.lotView(lot, taken[lot.ID])
	free := view.Free
	if last := j.Standing(e.Slot()); last != nil && last.Value.Link != nil && last.Value.Link.ID == lot.ID && last.Value.Quantity != nil {
		free += *last.Value.Quantity // what this place has already
	}
	if !e.Value.Reserved { // what was set aside for this job is there to be used
		for _, u := range j.uses() {
			if u.Reserved && u.Card == lot.ID && u.Slot != e.Slot().String() {
				free += u.Quantity
			}
		}
	}
	if e.Value.Reserved && *e.Value.Quantity > free+crumb {
		return Fault(Short, "%s %s wanted, %s free: %s. Take less, or another lot.", amount(*e.Value.Quantity), lot.Unit, amount(max(free, 0)), link.Label).At(at)
	}
	e.Verdict = Fine
	var look []string
	if view.Expired {
		look = append(look, "It was to be used by "+lot.Expires+".")
	}
	if !e.Value.Reserved && *e.Value.Quantity > free+crumb {
		look = append(look, "By the lot’s card only "+amount(max(free, 0))+" "+lot.Unit+" were left: count it and correct the card.")
	}
	if len(look) > 0 {
		e.Verdict, e.Value.Text = Look, strings.Join(look, " ")
	}
	if lot.LotKind == LotKits {
		return kitFits(tx, lot, e)
	}
	return nil
}

// kitFits keeps beside a kit which castings its revision was drawn for, so that
// the record can be judged without the kit's card.
func kitFits(tx Tx, lot Lot, e *Entry) error {
	kit, err := getSheet[Kit](tx, lot.Kit)
	if err != nil {
		return err
	}
	rev, ok := kit.Revision(lot.Revision)
	if !ok {
		return Fault(Invalid, "Kit %s has no revision %s: correct the lot.", kit.Name, lot.Revision).At(e.Slot().String())
	}
	e.Value.Fits = []Link{}
	for _, id := range rev.Fits {
		link := Link{Kind: KindCasting, ID: id}
		if c, err := getSheet[Casting](tx, id); err == nil {
			link.Label = c.Name
		} else if CodeOf(err) != NotFound {
			return err
		}
		e.Value.Fits = append(e.Value.Fits, link)
	}
	return nil
}

func amount(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// fieldOf adds the place to an error of the store that has none.
func fieldOf(err error, at string) error {
	if e, ok := err.(*Error); ok && e.Field == "" {
		c := *e
		c.Field = at
		return &c
	}
	return err
}
