package axle

import (
	"errors"
	"fmt"
	"math"
)

// fit is the largest difference of two sizes that are to go together, m: more
// than the roundings of a caliper, less than any two sizes of bearings differ.
const fit = 0.0005

func (r *reading) checkCasting(c *Catalogue, k *Casting) {
	field := "castings[" + k.Name + "]"
	if !r.clean(field) {
		return
	}
	r.checkMetal(k.Metal, field+".metal")
	r.estimateSeats(k, field)
	if k.Adjuster.Notches < 1 {
		r.about(field+".adjuster.notches", "needs one notch or more")
	}
	r.checkBolts(&k.CapBolts, field+".cap_bolts")
	if k.Compliance != nil {
		var wrong *BadCompliance
		if _, err := k.Compliance.Matrix(); errors.As(err, &wrong) {
			r.about(field+".compliance."+wrong.Field, "%s", wrong.Problem)
		}
	}
	_, err := c.Bearing(k.HeadBearing)
	r.unknown(field+".head_bearing", err)
	_, err = c.Bearing(k.TailBearing)
	r.unknown(field+".tail_bearing", err)
	_, err = c.Shafts(k.HalfShafts)
	r.unknown(field+".half_shafts", err)
	side, err := c.Bearing(k.SideBearing)
	r.unknown(field+".side_bearing", err)
	if err == nil && math.Abs(side.Outside.Value/2-k.Cap.BoreRadius.Value) > fit {
		r.about(field+".side_bearing", "%s has an outside diameter of %s and does not fit the cap's bore of radius %s",
			side.Name, side.Outside.Text, k.Cap.BoreRadius.Text)
	}
	centre, err := c.DiffCentre(k.DiffCentre)
	r.unknown(field+".diff_centre", err)
	if len(k.GearSets) == 0 {
		r.about(field+".gear_sets", "names no gear set; the casting could not be built")
	}
	for _, name := range k.GearSets {
		g, gearErr := c.GearSet(name)
		r.unknown(field+".gear_sets", gearErr)
		if gearErr != nil {
			continue
		}
		if err == nil {
			r.complain(field+".gear_sets", flangeMisfit(&g, &centre))
		}
		r.checkPinion(c, k, &g, field)
	}
}

// unknown enters a name that stands for nothing.
func (r *reading) unknown(field string, err error) {
	if err != nil {
		r.about(field, "%v", err)
	}
}

// complain enters a problem where there is one.
func (r *reading) complain(field, problem string) {
	if problem != "" {
		r.about(field, "%s", problem)
	}
}

// flangeMisfit says why a crown wheel does not sit on a diff centre, or nothing.
func flangeMisfit(g *GearSet, d *DiffCentre) string {
	if d.HubRadius.Value < g.Plate.Bore.Value && g.Plate.Bore.Value < d.FlangeRadius.Value {
		return ""
	}
	return fmt.Sprintf("the crown wheel of %s (bore radius %s) does not sit on the flange of %s (radius %s to %s)",
		g.Name, g.Plate.Bore.Text, d.Name, d.HubRadius.Text, d.FlangeRadius.Text)
}

// checkPinion finds pinion bearings that the pinion of a set does not fit.
func (r *reading) checkPinion(c *Catalogue, k *Casting, g *GearSet, field string) {
	if head, err := c.Bearing(k.HeadBearing); err == nil {
		r.complain(field+".head_bearing", neckMisfit(&head, g.Name, g.PinionNeck, g.PinionNeckMin))
	}
	if tail, err := c.Bearing(k.TailBearing); err == nil {
		if tail.Bore.Value > g.PinionShank.Value+fit || tail.Bore.Value < g.PinionSpline.Value-fit {
			r.about(field+".tail_bearing", "%s has a bore of %s and does not go over the spline (%s) on to the shank (%s) of the pinion of %s",
				tail.Name, tail.Bore.Text, g.PinionSpline.Text, g.PinionShank.Text, g.Name)
		}
	}
}

// neckMisfit says why a head bearing does not go on a pinion's neck, or nothing.
func neckMisfit(head *Bearing, pinion string, neck, least Length) string {
	switch {
	case head.Bore.Value < least.Value-fit:
		return fmt.Sprintf("%s has a bore of %s and does not go on the pinion of %s, whose neck is at least %s", head.Name, head.Bore.Text, pinion, least.Text)
	case head.Bore.Value > neck.Value+fit:
		return fmt.Sprintf("%s has a bore of %s and finds no shoulder on the pinion of %s, whose neck is %s", head.Name, head.Bore.Text, pinion, neck.Text)
	}
	return ""
}
