package assess

import (
	"fmt"
	"math/bits"

	"axlewright/axle"
)

// choices tells which upgrade, if any, made each choice of a build: zero is
// the part as the maker fitted it.
type choices [16]int

func choicesOf(c *axle.Catalogue, b axle.Assembly) choices {
	var k choices
	for _, name := range b.Upgrades {
		for i := range c.Upgrades {
			if c.Upgrades[i].Name == name {
				k.note(&c.Upgrades[i], i+1)
			}
		}
	}
	if b.Welds {
		k.set(weldsPart, 1)
	}
	return k
}

// pinionKey is the same for builds whose pinions ride alike.
func pinionKey(b *axle.Assembly) string {
	if b.Casting.Compliance.Couples() {
		return stemKey(b) + caseKey(b) + plateKey(b)
	}
	return stemKey(b)
}

// wheelKey is the same for builds whose wheels ride alike: same caps, same
// body of the diff centre, same peg.
func wheelKey(b *axle.Assembly) string {
	if b.Casting.Compliance.Couples() {
		return pinionKey(b)
	}
	return caseKey(b) + plateKey(b)
}

// stemKey is the same for builds with the same pinion on the same bearings.
func stemKey(b *axle.Assembly) string {
	return fmt.Sprint(b.Head.Name, b.Tail.Name, b.Gears.PinionNeck.Number)
}

// caseKey is the same for builds that hold the wheel alike, peg or not.
func caseKey(b *axle.Assembly) string {
	c, bolts := &b.Centre, &b.Casting.CapBolts
	return fmt.Sprint(archKey(b), bolts.Thread, bolts.Grip.Number,
		c.NearOuter.Number, c.NearInner.Number, c.FarOuter.Number, c.FarInner.Number, c.BendingShare.Number)
}

// plateKey is the same for builds with the same flange and the same peg.
func plateKey(b *axle.Assembly) string {
	c := &b.Centre
	key := fmt.Sprint(c.HubRadius.Number, c.FlangeRadius.Number, c.FlangeThickness.Number)
	if b.Peg != nil {
		key += fmt.Sprint(*b.Peg)
	}
	return key
}

// byKey numbers builds from 1 by a key of their parts.
func byKey(builds []axle.Assembly, key func(*axle.Assembly) string) []int {
	ids, index := make([]int, len(builds)), map[string]int{}
	for i := range builds {
		k := key(&builds[i])
		if index[k] == 0 {
			index[k] = len(index) + 1
		}
		ids[i] = index[k]
	}
	return ids
}

func (k *choices) note(u *axle.Upgrade, id int) {
	for part, changed := range map[parts]bool{
		capBoltsPart:   u.CapBolts != nil,
		overlayPart:    u.Overlay != nil,
		dowelPart:      u.RingDowel != nil,
		lockPart:       u.Lock != nil,
		pegPart:        u.Peg != nil,
		wheelBoltsPart: u.WheelBolts != nil,
		headPart:       u.HeadBearing != "" || u.Neck != nil,
		centrePart:     u.DiffCentre != "",
		shaftsPart:     u.HalfShafts != "",
	} {
		if changed {
			k.set(part, id)
		}
	}
}

func (k *choices) set(part parts, id int) { k[bits.TrailingZeros16(uint16(part))] = id }

// key is the same for two builds that differ in none of the parts used.
func (k choices) key(used parts) string {
	var only choices
	for i := range only {
		if used&(1<<i) != 0 {
			only[i] = k[i]
		}
	}
	return fmt.Sprint(only)
}

// variants groups builds that are alike in the parts a link uses, so that each
// kind is worked out once a draw however many builds share it.
type variants struct {
	of   []int // by build: its variant
	reps []int // by variant: a build that stands for it
}

func newVariants(all []choices, used parts) variants {
	v := variants{of: make([]int, len(all))}
	index := map[string]int{}
	for b, k := range all {
		key := k.key(used)
		i, known := index[key]
		if !known {
			i = len(v.reps)
			index[key] = i
			v.reps = append(v.reps, b)
		}
		v.of[b] = i
	}
	return v
}
