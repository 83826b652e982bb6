package axle

import (
	"fmt"
	"strings"
)

// A NotFound says that a name stands for nothing in the catalogue.
type NotFound struct {
	Kind  string   // "bearing"
	Name  string   // what was asked for
	Known []string // what there is
}

func (e *NotFound) Error() string {
	const few = 12
	near := nearest(e.Name, e.Known)
	switch {
	case len(e.Known) == 0:
		return fmt.Sprintf("the catalogue has no %s %q, nor any other; name all files of the catalogue", e.Kind, e.Name)
	case near != "" && len(e.Known) > few:
		return fmt.Sprintf("the catalogue has no %s %q; is %q meant?", e.Kind, e.Name, near)
	case near != "":
		return fmt.Sprintf("the catalogue has no %s %q; is %q meant? It has %s", e.Kind, e.Name, near, listed(e.Known))
	}
	return fmt.Sprintf("the catalogue has no %s %q; it has %s", e.Kind, e.Name, listed(e.Known))
}

// listed shows some names of a list that may be long.
func listed(names []string) string {
	const most = 20
	switch n := len(names); {
	case n == 0:
		return "none"
	case n > most:
		return fmt.Sprintf("%s and %d more", strings.Join(names[:most], ", "), n-most)
	}
	return strings.Join(names, ", ")
}

// named finds an item by its name.
func named[T any](kind string, items []T, name string, nameOf func(*T) string) (T, error) {
	for i := range items {
		if nameOf(&items[i]) == name {
			return items[i], nil
		}
	}
	known := make([]string, len(items))
	for i := range items {
		known[i] = nameOf(&items[i])
	}
	var none T
	return none, &NotFound{kind, name, known}
}

// Casting returns the casting of that name, or a *NotFound.
func (c *Catalogue) Casting(name string) (Casting, error) {
	return named("casting", c.Castings, name, func(x *Casting) string { return x.Name })
}

// GearSet returns the gear set of that name, or a *NotFound.
func (c *Catalogue) GearSet(name string) (GearSet, error) {
	return named("gear set", c.GearSets, name, func(x *GearSet) string { return x.Name })
}

// Bearing returns the bearing of that name, or a *NotFound.
func (c *Catalogue) Bearing(name string) (Bearing, error) {
	return named("bearing", c.Bearings, name, func(x *Bearing) string { return x.Name })
}

// DiffCentre returns the diff centre of that name, or a *NotFound.
func (c *Catalogue) DiffCentre(name string) (DiffCentre, error) {
	return named("diff centre", c.DiffCentres, name, func(x *DiffCentre) string { return x.Name })
}

// Shafts returns the half-shafts of that name, or a *NotFound.
func (c *Catalogue) Shafts(name string) (HalfShafts, error) {
	return named("pair of half-shafts", c.HalfShafts, name, func(x *HalfShafts) string { return x.Name })
}

// Duty returns the duty of that name, or a *NotFound.
func (c *Catalogue) Duty(name string) (Duty, error) {
	return named("duty", c.Duties, name, func(x *Duty) string { return x.Name })
}

// Upgrade returns the upgrade of that name, or a *NotFound.
func (c *Catalogue) Upgrade(name string) (Upgrade, error) {
	return named("upgrade", c.Upgrades, name, func(x *Upgrade) string { return x.Name })
}
