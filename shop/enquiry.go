package shop

import (
	"context"
	"strings"
)

// KeepEnquiry keeps an enquiry, as it was typed, with the job's vehicle. Where
// the job has no vehicle yet one is made with that title, so that nothing typed
// is lost.
func (s *Shop) KeepEnquiry(ctx context.Context, by Actor, job ID, title, enquiry string) (*Job, error) {
	j, err := s.Job(ctx, job)
	if err != nil {
		return nil, err
	}
	slot := Slot{"enquiry", "vehicle", ""}
	if link := j.Value(slot.Step, slot.Item).Link; link != nil {
		x, err := Get[Vehicle](ctx, s, link.ID)
		if err == nil {
			x.Enquiry = enquiry
			_, err = Save(ctx, s, by, x)
		}
		return j, err
	}
	if title = strings.TrimSpace(title); title == "" {
		title = "vehicle of job " + j.NumberText()
	}
	x := Vehicle{Title: title, Enquiry: enquiry}
	if c := j.Value("enquiry", "customer").Link; c != nil {
		x.Customer = c.ID
	}
	if x, err = Save(ctx, s, by, x); err != nil {
		return nil, err
	}
	return s.Record(ctx, by, job, Set{Slot: slot, Value: LinkTo(KindVehicle, x.ID), Corrects: lastSeq(j.Last(slot))})
}
