package nest

import (
	"cmp"
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"sync/atomic"

	"axlewright/kit/outline"
)

// A counter counts placed pieces over all tries.
type counter struct {
	progress Progress
	done     atomic.Int64
	total    int
}

func newCounter(p Progress, total int) *counter { return &counter{progress: p, total: total} }

func (c *counter) add(n int) {
	if done := c.done.Add(int64(n)); c.progress != nil {
		c.progress(int(done), c.total)
	}
}

// A lot is what goes on one sheet together: one piece, or one of each part of a
// pair.
type lot struct {
	parts []int
	count int
	sizes [3]float64 // by which lots are put in order: area, long side, short side of the box
}

// A try is one way to fill the sheets.
type try struct {
	order []int // lots, each as often as it is wanted
	lean  float64
	plan  Plan
}

// A part goes where its left side plus lean times its width is furthest left:
// 1 looks at where it ends, 0 at where it begins.
var leans = []float64{1, 0.5, 0.75, 0.25, 1.25, 0}

// beginnings are the orders by one of the sizes, with each lean.
var beginnings = 3 * len(leans)

// first is the order by one of the sizes with one of the leans, by its number.
func (t *table) first(lots []lot, number int) try {
	var f try
	for i, l := range lots {
		for range l.count {
			f.order = append(f.order, i)
		}
	}
	by := number / len(leans) % 3
	slices.SortStableFunc(f.order, func(a, b int) int {
		return cmp.Or(cmp.Compare(lots[b].sizes[by], lots[a].sizes[by]), cmp.Compare(lots[b].sizes[0], lots[a].sizes[0]))
	})
	f.lean = leans[number%len(leans)]
	return f
}

// changed is a try with some lots taken out of their places in the order and
// put elsewhere.
func (f *try) changed(random *rand.Rand) try {
	g := try{order: slices.Clone(f.order), lean: f.lean}
	if random.IntN(4) == 0 {
		g.lean = leans[random.IntN(len(leans))]
	}
	n := len(g.order)
	for range 1 + random.IntN(4) {
		if n < 2 {
			break
		}
		from, to := random.IntN(n), random.IntN(n)
		long := 1 + random.IntN(1+min(n/4, n-from-1))
		long = min(long, n-from)
		block := slices.Clone(g.order[from : from+long])
		g.order = slices.Delete(g.order, from, from+long)
		g.order = slices.Insert(g.order, min(to, len(g.order)), block...)
	}
	return g
}

// run fills sheets in the order of the try.
func (t *table) run(ctx context.Context, f *try, lots []lot, steps *counter) {
	f.plan = Plan{Parts: t.parts, Stock: t.stock, Rules: t.rules, Left: make([]int, len(t.parts))}
	rest := f.order
	for _, s := range t.inOrder() {
		for serial := 1; serial <= t.stock[s].Count && len(rest) > 0 && ctx.Err() == nil; serial++ {
			b := t.newBed(s)
			rest = b.fill(ctx, rest, lots, f.lean, steps)
			if len(b.laid) == 0 {
				break // nor will the next of its kind take any
			}
			f.plan.Sheets = append(f.plan.Sheets, b.sheet(serial))
		}
	}
	for _, i := range rest {
		steps.add(len(lots[i].parts))
		for _, p := range lots[i].parts {
			f.plan.Left[p]++
		}
	}
}

// lots puts parts of one pair together. What one of them has more stays by itself.
func (t *table) lots() []lot {
	var list []lot
	pairs := map[string][]int{}
	var order []string
	for i, p := range t.parts {
		switch {
		case p.Count == 0:
		case p.Pair == "":
			list = append(list, lot{[]int{i}, p.Count, sizesOf(p)})
		default:
			if pairs[p.Pair] == nil {
				order = append(order, p.Pair)
			}
			pairs[p.Pair] = append(pairs[p.Pair], i)
		}
	}
	for _, name := range order {
		together := t.parts[pairs[name][0]].Count
		for _, i := range pairs[name] {
			together = min(together, t.parts[i].Count)
		}
		list = append(list, lot{pairs[name], together, sizesOf(t.parts[pairs[name][0]])})
		for _, i := range pairs[name] {
			if more := t.parts[i].Count - together; more > 0 {
				list = append(list, lot{[]int{i}, more, sizesOf(t.parts[i])})
			}
		}
	}
	return list
}

func sizesOf(p Part) [3]float64 {
	b := p.Outline.Bounds()
	return [3]float64{p.Outline.Area(), math.Max(b.Width(), b.Height()), math.Min(b.Width(), b.Height())}
}

// inOrder lists remnants from small to large, then sheets as given.
func (t *table) inOrder() []int {
	list := make([]int, len(t.stock))
	for i := range list {
		list[i] = i
	}
	slices.SortStableFunc(list, func(a, b int) int {
		x, y := &t.stock[a], &t.stock[b]
		switch {
		case x.Remnant && y.Remnant:
			return cmp.Compare(math.Abs(x.Outline.Area()), math.Abs(y.Outline.Area()))
		case x.Remnant:
			return -1
		case y.Remnant:
			return 1
		}
		return 0
	})
	return list
}

// fill lays lots on a sheet in their order and returns those for which it has
// no room. A lot for which there was none is not tried again: there is less
// room ever after.
func (b *bed) fill(ctx context.Context, order []int, lots []lot, lean float64, steps *counter) (rest []int) {
	full := make([]bool, len(lots))
	count := func(lot, by int) {
		for _, part := range lots[lot].parts {
			b.want[part] += by
		}
	}
	for _, i := range order {
		count(i, 1)
	}
	for k, i := range order {
		if ctx.Err() != nil {
			return append(rest, order[k:]...)
		}
		if !full[i] && b.layLot(lots[i].parts, lean) {
			steps.add(len(lots[i].parts))
			count(i, -1)
			continue
		}
		full[i] = true
		rest = append(rest, i)
		count(i, -1)
	}
	return rest
}

// layLot lays all parts of a lot or none.
func (b *bed) layLot(parts []int, lean float64) bool {
	for n, part := range parts {
		l, ok := b.choose(part, lean)
		if !ok {
			if n > 0 {
				b.undo(n)
			}
			return false
		}
		b.lay(l)
	}
	return true
}

// choose finds the best place of a part among its turns.
func (b *bed) choose(part int, lean float64) (laid, bool) {
	best, found, least := laid{}, false, math.Inf(1)
	for _, s := range b.t.byPart[part] {
		column, y, ok := b.place(s)
		if !ok {
			continue
		}
		merit := float64(column)*step + lean*b.t.shapes[s].wide + y*1e-6
		if merit < least-1e-9 {
			best, found, least = laid{s, column, y}, true, merit
		}
	}
	return best, found
}

// sheet is the finished bed with exact places.
func (b *bed) sheet(serial int) Sheet {
	s := Sheet{Stock: b.stock, Serial: serial}
	origin := b.t.origin[b.stock]
	for _, l := range b.laid {
		shape := &b.t.shapes[l.shape]
		s.Places = append(s.Places, Place{Part: shape.part, Turn: shape.turn, Shift: outline.Point{
			X: origin.X + float64(l.column)*step + shape.shift.X,
			Y: origin.Y + l.y + shape.shift.Y,
		}})
	}
	s.finish(b.t.parts, &b.t.stock[b.stock], b.t.rules)
	return s
}
