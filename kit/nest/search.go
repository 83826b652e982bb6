package nest

import (
	"context"
	"math/rand/v2"
)

// together is how many orders are tried at a time, whatever the cores: the
// result may not depend on them.
const together = 8

// search tries the orders by size with each lean, and then orders near the best
// one so far.
func (t *table) search(ctx context.Context, steps *counter) Plan {
	lots := t.lots()
	random := rand.New(rand.NewPCG(t.rules.Seed, 0x6e657374))
	var best *try
	for done := 0; done < t.rules.Tries && ctx.Err() == nil; done += together {
		tries := make([]try, min(together, t.rules.Tries-done))
		for i := range tries {
			if number := done + i; best == nil || number < beginnings {
				tries[i] = t.first(lots, number)
			} else {
				tries[i] = best.changed(random)
			}
		}
		each(len(tries), func(i int) { t.run(ctx, &tries[i], lots, steps) })
		for i := range tries {
			if best == nil || tries[i].plan.better(&best.plan) {
				best = &tries[i]
			}
		}
	}
	if best == nil {
		return Plan{}
	}
	return best.plan
}
