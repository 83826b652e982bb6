package quantity

import "strings"

// unitIndex finds units by dimension and spelling: as spelled, and without
// regard to capitals where that leaves one unit only.
type unitIndex struct {
	exact  map[Dimension]map[string]*unit
	folded map[Dimension]map[string]*unit // nil value: two units differ by capitals only
}

var index = func() unitIndex {
	x := unitIndex{map[Dimension]map[string]*unit{}, map[Dimension]map[string]*unit{}}
	for _, table := range [][]unit{units, loadUnits} {
		for i := range table {
			x.add(&table[i])
		}
	}
	return x
}()

func (x unitIndex) add(u *unit) {
	if x.exact[u.dim] == nil {
		x.exact[u.dim] = map[string]*unit{}
		x.folded[u.dim] = map[string]*unit{}
	}
	for _, key := range u.keys() {
		x.exact[u.dim][key] = u
		low := strings.ToLower(key)
		if other, taken := x.folded[u.dim][low]; taken && other != u {
			x.folded[u.dim][low] = nil
		} else {
			x.folded[u.dim][low] = u
		}
	}
}

// keys are all spellings of a unit, its printed symbol first.
func (u *unit) keys() []string {
	return append([]string{unitKey(u.symbol)}, strings.Fields(u.also)...)
}

// find returns the unit of dim that is spelled so, or nil.
func (x unitIndex) find(dim Dimension, spelling string) *unit {
	key := unitKey(spelling)
	if u := x.exact[dim][key]; u != nil {
		return u
	}
	return x.folded[dim][strings.ToLower(key)]
}

// elsewhere returns a dimension other than dim that has a unit spelled so.
func (x unitIndex) elsewhere(dim Dimension, spelling string) (Dimension, bool) {
	key := unitKey(spelling)
	for _, k := range kinds {
		if k.dim != dim && x.exact[k.dim][key] != nil {
			return k.dim, true
		}
	}
	for _, k := range kinds {
		if k.dim != dim && x.find(k.dim, spelling) != nil {
			return k.dim, true
		}
	}
	return "", false
}
