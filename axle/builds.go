package axle

import (
	"cmp"
	"fmt"
	"slices"
)

// MaxBuilds bounds the enumeration: eleven upgrades that all go together make
// 2048 builds, far more than anybody wants to choose from.
const MaxBuilds = 2048

// BuildsFor enumerates every compatible build for an enquiry: on its casting,
// with its gears, with the diff centre that is in it, at its price of labour.
// Where the enquiry names its own diff centre, upgrades to one that shares
// torque in another way are not offered: that is for the customer to ask for.
//
// Errors: *NotFound for a name that stands for nothing; parts that do not go
// together; too many builds.
func (c *Catalogue) BuildsFor(e *Enquiry) ([]Assembly, error) {
	shop := *c
	shop.Labour = cmp.Or(e.Labour, c.Labour)
	if e.Centre == "" {
		return shop.Builds(e.Casting, e.Gears, e.Fitted)
	}
	base, err := shop.Stock(e.Casting, e.Gears)
	if err != nil {
		return nil, err
	}
	if base.Centre, err = shop.DiffCentre(e.Centre); err != nil {
		return nil, err
	}
	if misfit := flangeMisfit(&base.Gears, &base.Centre); misfit != "" {
		return nil, fmt.Errorf("%s", misfit)
	}
	return shop.builds(base, e.Fitted, func(u *Upgrade) bool {
		other, err := shop.DiffCentre(u.DiffCentre)
		return u.DiffCentre == "" || err == nil && other.Name != e.Centre && other.Locking == base.Centre.Locking
	})
}

// Builds enumerates every compatible build of a casting with a gear set, the
// stock one first. fitted names upgrades that are in it already: they are in
// every build and cost nothing.
//
// Errors: as BuildsFor.
func (c *Catalogue) Builds(casting, gears string, fitted []string) ([]Assembly, error) {
	base, err := c.Stock(casting, gears)
	if err != nil {
		return nil, err
	}
	return c.builds(base, fitted, func(*Upgrade) bool { return true })
}

// builds puts every compatible set of offered upgrades on an assembly.
func (c *Catalogue) builds(base Assembly, fitted []string, wanted func(*Upgrade) bool) ([]Assembly, error) {
	casting := base.Casting.Name
	place := map[string]int{} // in the catalogue
	for i := range c.Upgrades {
		place[c.Upgrades[i].Name] = i
	}
	in := map[string]*Upgrade{}
	for _, name := range fitted {
		u, err := c.fittedUpgrade(name, casting, fitted)
		if err != nil {
			return nil, err
		}
		u.Minutes, u.Parts = 0, 0
		if base, err = c.Fit(base, u); err != nil {
			return nil, err
		}
		in[name] = &u
	}
	var offered []*Upgrade
	for i := range c.Upgrades {
		u := &c.Upgrades[i]
		clashes := slices.ContainsFunc(fitted, func(name string) bool { return incompatible(in[name], u) })
		if slices.Contains(u.Fits, casting) && in[u.Name] == nil && !clashes && wanted(u) {
			offered = append(offered, u)
		}
	}
	builds := []Assembly{base}
	for _, u := range inOrder(offered, fitted) {
		for _, b := range builds {
			if !c.takes(&b, u, place) {
				continue
			}
			with, err := c.Fit(b, *u)
			if err != nil {
				return nil, err
			}
			builds = append(builds, with)
			if len(builds) > MaxBuilds {
				return nil, fmt.Errorf("casting %q has more than %d builds: let some of the %d upgrades that fit it need or exclude each other", casting, MaxBuilds, len(offered))
			}
		}
	}
	for _, b := range builds {
		slices.SortFunc(b.Upgrades, func(x, y string) int { return cmp.Compare(place[x], place[y]) })
	}
	return builds, nil
}

// takes says whether an upgrade can go on what is in a build already.
func (c *Catalogue) takes(b *Assembly, u *Upgrade, place map[string]int) bool {
	for _, need := range u.Needs {
		if !slices.Contains(b.Upgrades, need) {
			return false
		}
	}
	return !slices.ContainsFunc(b.Upgrades, func(name string) bool {
		return incompatible(&c.Upgrades[place[name]], u)
	})
}

// inOrder sorts upgrades so that each comes after those it needs, else in the
// order of the catalogue. One that needs what is not there is left out.
func inOrder(offered []*Upgrade, there []string) []*Upgrade {
	var order []*Upgrade
	placed := slices.Clone(there)
	for left := slices.Clone(offered); ; {
		i := slices.IndexFunc(left, func(u *Upgrade) bool {
			return !slices.ContainsFunc(u.Needs, func(need string) bool { return !slices.Contains(placed, need) })
		})
		if i < 0 {
			return order
		}
		order, placed = append(order, left[i]), append(placed, left[i].Name)
		left = slices.Delete(left, i, i+1)
	}
}

// fittedUpgrade finds an upgrade that is in a casting already, and what speaks
// against that.
func (c *Catalogue) fittedUpgrade(name, casting string, fitted []string) (Upgrade, error) {
	u, err := c.Upgrade(name)
	if err != nil {
		return u, err
	}
	if !slices.Contains(u.Fits, casting) {
		return u, fmt.Errorf("upgrade %q, said to be fitted already, does not fit casting %q; it fits %s", name, casting, listed(u.Fits))
	}
	for _, need := range u.Needs {
		if !slices.Contains(fitted, need) {
			return u, fmt.Errorf("upgrade %q is not fitted without %q; name that too", name, need)
		}
	}
	for _, other := range fitted {
		o, err := c.Upgrade(other)
		if err == nil && other != name && incompatible(&u, &o) {
			return u, fmt.Errorf("upgrades %q and %q are not fitted together", name, other)
		}
	}
	if at := slices.Index(fitted, name); slices.Contains(fitted[at+1:], name) {
		return u, fmt.Errorf("upgrade %q stands twice", name)
	}
	return u, nil
}

// incompatible says whether two upgrades rule each other out, or put in the
// same part.
func incompatible(a, b *Upgrade) bool {
	return slices.Contains(a.Excludes, b.Name) || slices.Contains(b.Excludes, a.Name) || a.parts()&b.parts() != 0
}
