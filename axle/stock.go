package axle

import (
	"fmt"
	"slices"

	"axlewright/quantity"
)

// Stock returns the casting as its maker built it, with the gear set: the
// assembly that upgrades are put on. It costs the standard rebuild.
//
// Errors: *NotFound for a name that stands for nothing; gears that do not fit.
func (c *Catalogue) Stock(casting, gears string) (Assembly, error) {
	var a Assembly
	var err error
	if a.Casting, err = c.Casting(casting); err != nil {
		return a, err
	}
	if a.Gears, err = c.GearSet(gears); err != nil {
		return a, err
	}
	if !slices.Contains(a.Casting.GearSets, gears) {
		return a, fmt.Errorf("gear set %q does not fit casting %q; it takes %s", gears, casting, listed(a.Casting.GearSets))
	}
	if a.Head, err = c.Bearing(a.Casting.HeadBearing); err != nil {
		return a, err
	}
	if a.Tail, err = c.Bearing(a.Casting.TailBearing); err != nil {
		return a, err
	}
	if a.Side, err = c.Bearing(a.Casting.SideBearing); err != nil {
		return a, err
	}
	if a.Centre, err = c.DiffCentre(a.Casting.DiffCentre); err != nil {
		return a, err
	}
	if a.HalfShafts, err = c.Shafts(a.Casting.HalfShafts); err != nil {
		return a, err
	}
	a.Minutes = c.Standard.Minutes
	a.Price = c.Standard.Minutes/60*c.Labour + c.Standard.Parts
	return a, nil
}

// Fit puts an upgrade on an assembly. The assembly itself is not changed.
//
// Errors: *NotFound for a part that is not in the catalogue.
func (c *Catalogue) Fit(a Assembly, u Upgrade) (Assembly, error) {
	a.Upgrades = append(slices.Clone(a.Upgrades), u.Name)
	a.Minutes += u.Minutes
	a.Price += u.Minutes/60*c.Labour + u.Parts
	a.Welds = a.Welds || u.Welds
	put(&a.Casting.CapBolts, u.CapBolts)
	put(&a.Casting.Lock, u.Lock)
	put(&a.Gears.WheelBolts, u.WheelBolts)
	if u.Overlay != nil {
		a.Overlay = u.Overlay
	}
	if u.RingDowel != nil {
		a.RingDowel = u.RingDowel
	}
	if u.Peg != nil {
		a.Peg = u.Peg
	}
	if u.Neck != nil {
		a.Gears.PinionNeck, a.Gears.PinionNeckMin = u.Neck.Diameter, u.Neck.Least
	}
	var err error
	if u.HeadBearing != "" {
		was := a.Head
		if a.Head, err = c.Bearing(u.HeadBearing); err != nil {
			return a, err
		}
		a.Casting.HeadWall = bored(a.Casting.HeadWall, (a.Head.Outside.Value-was.Outside.Value)/2)
	}
	put(&a.Casting.HeadWall, u.HeadWall)
	if u.DiffCentre != "" {
		if a.Centre, err = c.DiffCentre(u.DiffCentre); err != nil {
			return a, err
		}
	}
	if u.HalfShafts != "" {
		if a.HalfShafts, err = c.Shafts(u.HalfShafts); err != nil {
			return a, err
		}
	}
	return a, nil
}

func put[T any](part *T, replacement *T) {
	if replacement != nil {
		*part = *replacement
	}
}

// bored is a wall from which boring took so much. Its doubt stays as wide as it
// was, in metres.
func bored(wall Length, taken float64) Length {
	left := wall.Value - taken
	if taken == 0 || left <= 0 { // what leaves no wall is refused with the catalogue
		return wall
	}
	n := Number{
		Value: left, Low: wall.Low - taken, High: wall.High - taken, Shape: wall.Shape,
		Origin: Computed, ByDefault: wall.ByDefault, Certain: wall.Certain, Kind: wall.Kind, Line: wall.Line,
		Text: quantity.Format(left, quantity.Length) + ", computed",
	}
	for _, choice := range wall.Choices {
		n.Choices = append(n.Choices, Choice{Value: choice.Value - taken, Share: choice.Share})
	}
	if n.Shape == Lognormal {
		n.spreadShare((wall.High - wall.Value) / left)
	}
	n.keepWithin(rangeOf(""))
	return Length{Number: n}
}

// parts is the set of parts that an upgrade puts in, as bits.
func (u *Upgrade) parts() int {
	set := 0
	for i, there := range []bool{
		u.CapBolts != nil, u.Overlay != nil, u.RingDowel != nil, u.Lock != nil, u.Peg != nil, u.WheelBolts != nil,
		u.HeadBearing != "", u.Neck != nil, u.HeadWall != nil, u.DiffCentre != "", u.HalfShafts != "",
	} {
		if there {
			set |= 1 << i
		}
	}
	return set
}
