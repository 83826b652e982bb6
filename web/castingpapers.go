package web

import (
	"axlewright/document"
	"axlewright/document/paper"
	"axlewright/shop"
)

// castingCard is what was found out about the casting, as one page of PDF.
func castingCard(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	known, err := v.know(j)
	if err != nil {
		return err
	}
	sighting := j.Sighting()
	bench, _ := sighting.Bench(&known.Catalogue)
	id, err := known.Identify(bench)
	if err != nil {
		return err
	}
	head, err := v.paperHead(j, "Casting card")
	if err != nil {
		return err
	}
	return v.sendPaper(document.CastingCard(head, &id, &known.Catalogue))
}

// trimSheet is what to do at each edge of the kit, as one page of PDF.
func trimSheet(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	s, err := v.placed(j)
	if err != nil {
		return err
	}
	if s.Missing != "" {
		return shop.Fault(shop.NotFound, "%s", s.Missing)
	}
	head, err := v.paperHead(j, "Trim sheet")
	if err != nil {
		return err
	}
	return v.sendPaper(document.TrimSheet(head, &s.Gauging, &s.Report, s.Why, s.Doubt))
}

// paperHead is what stands at the top of a paper of a job.
func (v *visit) paperHead(j *shop.Job, title string) (paper.Head, error) {
	house, err := shop.Get[shop.House](v.ctx(), v.shop, shop.HouseID)
	h := paper.Head{Title: title, Number: plateOf(j.Stamped(), j.NumberText()), Subject: j.Title(), Shop: house.Name, Day: v.o.Now()}
	for _, part := range []string{house.Address, house.Phone, house.Mail} {
		if part != "" {
			h.Contact += part + "\n"
		}
	}
	if c := j.Casting(); c != nil {
		h.Subject += "\nvariant " + c.Label
	}
	return h, err
}
