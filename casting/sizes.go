package casting

// A SizeOf is what a variant measures at a feature: nineteen of twenty castings
// read within Reach of Mean, both m.
type SizeOf struct {
	Variant string
	Chance  float64
	Mean    float64
	Reach   float64
}

// Sizes tells what the candidates of an identification measure at a feature,
// the likeliest first; those of which it is not known are left out.
func (m *Matcher) Sizes(id *Identification, feature string) []SizeOf {
	k, known := m.index[feature]
	if !known {
		return nil
	}
	f := &m.cat.Features[k]
	var list []SizeOf
	for _, c := range id.Ranked {
		v := m.cat.variant(c.Variant)
		if v < 0 || !f.Measured() || c.Chance < aliveFrom {
			continue
		}
		if l := &m.known[k][v]; l.sd > 0 {
			list = append(list, SizeOf{c.Variant, c.Chance, l.mean, 2 * l.scale(f, 0)})
		}
	}
	return list
}
