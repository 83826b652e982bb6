package casting

import (
	"slices"

	"axlewright/axle"
)

// NewVariant makes a variant from what was seen of one casting that is none of
// the known ones. It takes over nothing that was not seen, least of all from
// the variant that it resembles; of sizes only the spread is the usual one.
//
// Errors: axle.Findings for evidence that the catalogue does not know, for a
// name that is taken, or for a casting that was modified: a repair is no variant.
func (c *Catalogue) NewVariant(name string, b Bench) (Variant, error) {
	b.Evidence = slices.Clone(b.Evidence)
	found := b.resolve(c)
	if name == "" || c.variant(name) >= 0 {
		found = append(found, axle.Finding{Field: "name", Problem: "a new variant needs a name that no other has"})
	}
	v := Variant{Name: name, Seen: 1, Note: "made from " + b.Casting}
	for i := range b.Evidence {
		item := &b.Evidence[i]
		k := c.feature(item.Feature)
		if k < 0 || item.Unseen || item.Told {
			continue
		}
		f := &c.Features[k]
		if !f.Measured() && f.sign(item.Answer) {
			found = append(found, axle.Finding{Line: item.Line, Field: "evidence." + f.Name, Problem: "is the sign of a repair: make a variant from a casting that is as it was cast"})
			continue
		}
		t := Trait{Feature: f.Name}
		if f.Measured() {
			t.Size = Size{Mean: item.Value, SD: c.typicalSpread(f), Instrument: f.spread(), Castings: 1, SpreadFrom: statedWorth, Origin: axle.Measured}
		} else {
			t.Counts = []Count{{item.Answer, 1}}
		}
		v.Shows = append(v.Shows, t)
	}
	if len(v.Shows) == 0 {
		found = append(found, axle.Finding{Field: "evidence", Problem: "nothing was seen that a variant could be made from"})
	}
	if len(found) > 0 {
		return Variant{}, found
	}
	return v, nil
}
