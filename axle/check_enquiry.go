package axle

import (
	"fmt"
	"slices"
)

// checkEnquiry finds what is wrong with an enquiry against its catalogue. What
// is not told yet was found when it was read.
func (r *reading) checkEnquiry(e *Enquiry, c *Catalogue) {
	k, castingErr := c.Casting(e.Casting)
	if e.Casting != "" && r.clean("casting") {
		r.unknown("casting", castingErr)
	}
	if castingErr == nil {
		r.checkChoice(e, c, &k)
	}
	if e.Duty != "" && r.clean("duty") {
		_, err := c.Duty(e.Duty)
		r.unknown("duty", err)
	}
	if e.Wanted >= 1 {
		r.about("wanted_chance", "%g is not a chance; expected 0 to below 1, such as 0.95", e.Wanted)
	}
}

// checkChoice finds gears, a diff centre or fitted upgrades that do not go with
// the casting.
func (r *reading) checkChoice(e *Enquiry, c *Catalogue, k *Casting) {
	if e.Gears != "" && r.clean("gears") && !slices.Contains(k.GearSets, e.Gears) {
		r.about("gears", "gear set %q does not fit casting %q; it takes %s", e.Gears, k.Name, listed(k.GearSets))
		return
	}
	if e.Centre != "" && e.Gears != "" {
		d, err := c.DiffCentre(e.Centre)
		r.unknown("diff_centre", err)
		if g, gearErr := c.GearSet(e.Gears); err == nil && gearErr == nil {
			r.complain("diff_centre", flangeMisfit(&g, &d))
		}
	}
	fitted := true
	for i, name := range e.Fitted {
		if _, err := c.fittedUpgrade(name, k.Name, e.Fitted); err != nil {
			r.about(fmt.Sprintf("fitted[%d]", i+1), "%v", err)
			fitted = false
		}
	}
	if fitted && e.Gears != "" && r.clean("diff_centre") && r.clean("gears") {
		if _, err := c.BuildsFor(e); err != nil {
			r.about("casting", "%v", err)
		}
	}
}
