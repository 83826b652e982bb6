package web

import (
	"github.com/a-h/templ"

	"axlewright/shop"
)

// A lead is what stands before the boxes of a step where the program works
// something out of them.
type lead struct {
	Show templ.Component
	Own  string // the field whose boxes it shows itself
}

var leads = map[shop.StepKey]func(*visit, *shop.Job) (lead, error){
	"identify": identifyLead,
	"metal":    metalLead,
	"stations": stationsLead,
}

// lead makes what stands before the boxes. What cannot be worked out is said in
// its place, and the boxes serve without it.
func (v *visit) lead(j *shop.Job, step shop.StepKey) (lead, error) {
	make, ok := leads[step]
	if !ok {
		return lead{}, nil
	}
	l, err := make(v, j)
	if code := codeOf(err); err != nil && code != shop.Internal && statusOf[code] < 500 {
		return lead{Show: leadFault(faultOf(err).Says)}, nil
	}
	return l, err
}
