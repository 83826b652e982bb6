package axle

import (
	"fmt"
	"slices"
	"strings"
)

// MaxBuilds bounds the enumeration: thirteen upgrades that all go together
// already make 8192 builds.
const MaxBuilds = 8192

// A NotFound says that a name stands for nothing in the catalogue.
type NotFound struct {
	Kind  string   // "bearing"
	Name  string   // what was asked for
	Known []string // what there is
}

func (e *NotFound) Error() string {
	return fmt.Sprintf("the catalogue has no %s %q; it has %s", e.Kind, e.Name, listed(e.Known))
}

func listed(names []string) string {
	if len(names) == 0 {
		return "none"
	}
	return strings.Join(names, ", ")
}

// named finds an item by its name.
func named[T any](kind string, items []T, name string, nameOf func(T) string) (T, error) {
	var known []string
	for _, item := range items {
		if nameOf(item) == name {
			return item, nil
		}
		known = append(known, nameOf(item))
	}
	var none T
	return none, &NotFound{kind, name, known}
}

// Casting returns the casting of that name, or a *NotFound.
func (c *Catalogue) Casting(name string) (Casting, error) {
	return named("casting", c.Castings, name, func(x Casting) string { return x.Name })
}

// GearSet returns the gear set of that name, or a *NotFound.
func (c *Catalogue) GearSet(name string) (GearSet, error) {
	return named("gear set", c.GearSets, name, func(x GearSet) string { return x.Name })
}

// Bearing returns the bearing of that name, or a *NotFound.
func (c *Catalogue) Bearing(name string) (Bearing, error) {
	return named("bearing", c.Bearings, name, func(x Bearing) string { return x.Name })
}

// DiffCentre returns the diff centre of that name, or a *NotFound.
func (c *Catalogue) DiffCentre(name string) (DiffCentre, error) {
	return named("diff centre", c.DiffCentres, name, func(x DiffCentre) string { return x.Name })
}

// Shafts returns the half-shafts of that name, or a *NotFound.
func (c *Catalogue) Shafts(name string) (HalfShafts, error) {
	return named("pair of half-shafts", c.HalfShafts, name, func(x HalfShafts) string { return x.Name })
}

// Duty returns the duty of that name, or a *NotFound.
func (c *Catalogue) Duty(name string) (Duty, error) {
	return named("duty", c.Duties, name, func(x Duty) string { return x.Name })
}

// Upgrade returns the upgrade of that name, or a *NotFound.
func (c *Catalogue) Upgrade(name string) (Upgrade, error) {
	return named("upgrade", c.Upgrades, name, func(x Upgrade) string { return x.Name })
}

// Stock returns the casting as its maker built it, with the gear set: the
// assembly that upgrades are put on.
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
		return a, fmt.Errorf("gear set %q does not fit casting %q; those that fit: %s", gears, casting, listed(a.Casting.GearSets))
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
func (c *Catalogue) Fit(a Assembly, u Upgrade) (Assembly, error) {
	a.Upgrades = append(slices.Clone(a.Upgrades), u.Name)
	a.Minutes += u.Minutes
	a.Price += u.Minutes/60*c.Labour + u.Parts
	a.Welds = a.Welds || u.Welds
	put(&a.Casting.CapBolts, u.CapBolts)
	put(&a.Casting.Lock, u.Lock)
	put(&a.Casting.HeadWall, u.HeadWall)
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
		if a.Head, err = c.Bearing(u.HeadBearing); err != nil {
			return a, err
		}
	}
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

// Builds enumerates every compatible build of a casting with a gear set, the
// stock one first. fitted names upgrades that are in it already: they are in
// every build and cost nothing.
func (c *Catalogue) Builds(casting, gears string, fitted []string) ([]Assembly, error) {
	base, err := c.Stock(casting, gears)
	if err != nil {
		return nil, err
	}
	for _, name := range fitted {
		u, err := c.Upgrade(name)
		if err != nil {
			return nil, err
		}
		if !slices.Contains(u.Fits, casting) {
			return nil, fmt.Errorf("upgrade %q, said to be fitted already, fits no %q; it fits %s", name, casting, listed(u.Fits))
		}
		u.Minutes, u.Parts = 0, 0
		if base, err = c.Fit(base, u); err != nil {
			return nil, err
		}
	}
	var offered []Upgrade
	for _, u := range c.Upgrades {
		if slices.Contains(u.Fits, casting) && !slices.Contains(fitted, u.Name) {
			offered = append(offered, u)
		}
	}
	builds := []Assembly{base}
	for _, u := range offered {
		for _, b := range builds {
			if excluded(c, b, u) {
				continue
			}
			with, err := c.Fit(b, u)
			if err != nil {
				return nil, err
			}
			builds = append(builds, with)
			if len(builds) > MaxBuilds {
				return nil, fmt.Errorf("casting %q has more than %d builds: let some of its %d upgrades exclude each other", casting, MaxBuilds, len(offered))
			}
		}
	}
	return slices.DeleteFunc(builds, func(b Assembly) bool { return needsMore(c, b) }), nil
}

// excluded says whether u and something in b rule each other out, or put in
// the same part twice.
func excluded(c *Catalogue, b Assembly, u Upgrade) bool {
	for _, name := range b.Upgrades {
		other, err := c.Upgrade(name)
		if err != nil {
			continue // fitted ones were checked already
		}
		if slices.Contains(u.Excludes, name) || slices.Contains(other.Excludes, u.Name) || samePart(other, u) {
			return true
		}
	}
	return false
}

// samePart says whether two upgrades put in the same part.
func samePart(a, b Upgrade) bool {
	return a.CapBolts != nil && b.CapBolts != nil ||
		a.Overlay != nil && b.Overlay != nil ||
		a.RingDowel != nil && b.RingDowel != nil ||
		a.Lock != nil && b.Lock != nil ||
		a.Peg != nil && b.Peg != nil ||
		a.WheelBolts != nil && b.WheelBolts != nil ||
		a.HeadBearing != "" && b.HeadBearing != "" ||
		a.DiffCentre != "" && b.DiffCentre != "" ||
		a.HalfShafts != "" && b.HalfShafts != ""
}

// needsMore says whether b lacks something that one of its upgrades needs.
func needsMore(c *Catalogue, b Assembly) bool {
	for _, name := range b.Upgrades {
		u, err := c.Upgrade(name)
		if err != nil {
			continue
		}
		for _, need := range u.Needs {
			if !slices.Contains(b.Upgrades, need) {
				return true
			}
		}
	}
	return false
}
