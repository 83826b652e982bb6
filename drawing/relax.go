package drawing

// A slot is a label's room in a column: where its middle should be, and its height.
type slot struct{ wish, height float64 }

// relax returns middles for slots, sorted by wish, so that none overlap, all lie
// between low and high, and the sum of squares of the ways they were moved is
// least. They must go in: their heights and gaps may not add up to more than
// high − low.
//
// With the room before each slot taken off, places must only rise: that is
// isotonic regression, solved by pooling neighbours that are out of order
// (Barlow, Bartholomew, Bremner & Brunk, Statistical Inference under Order
// Restrictions, 1972, the pool-adjacent-violators rule; from memory).
func relax(slots []slot, gap, low, high float64) []float64 {
	type pool struct {
		sum   float64
		count int
	}
	before := make([]float64, len(slots)) // from the middle of the first to that of each, close packed
	for i := 1; i < len(slots); i++ {
		before[i] = before[i-1] + (slots[i-1].height+slots[i].height)/2 + gap
	}
	var pools []pool
	for i, s := range slots {
		pools = append(pools, pool{s.wish - before[i], 1})
		for k := len(pools) - 1; k > 0 && pools[k-1].sum/float64(pools[k-1].count) > pools[k].sum/float64(pools[k].count); k-- {
			pools[k-1].sum += pools[k].sum
			pools[k-1].count += pools[k].count
			pools = pools[:k]
		}
	}
	var middles []float64
	for _, p := range pools {
		for range p.count {
			middles = append(middles, p.sum/float64(p.count))
		}
	}
	if len(slots) == 0 {
		return nil
	}
	last := len(slots) - 1
	lowest, highest := low+slots[0].height/2, high-slots[last].height/2-before[last]
	for i := range middles {
		middles[i] = max(min(middles[i], highest), lowest) + before[i]
	}
	return middles
}

// room is the least height that slots need.
func room(slots []slot, gap float64) float64 {
	total := gap * float64(max(0, len(slots)-1))
	for _, s := range slots {
		total += s.height
	}
	return total
}
