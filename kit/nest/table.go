package nest

import (
	"context"
	"math"
	"runtime"
	"sync"

	"axlewright/kit/outline"
)

// newTable works out what every try needs.
func newTable(ctx context.Context, parts []Part, stock []Stock, r Rules) (*table, error) {
	t := &table{parts: parts, stock: stock, rules: r}
	var err error
	if t.shapes, t.byPart, err = shapesOf(parts, r); err != nil {
		return nil, err
	}
	t.beside = make([][]noFit, len(t.shapes))
	for i := range t.beside {
		t.beside[i] = make([]noFit, len(t.shapes))
	}
	each(len(t.shapes), func(i int) {
		for j := i; j < len(t.shapes) && ctx.Err() == nil; j++ {
			n := noFitOf(t.shapes[i].cols, t.shapes[j].cols)
			t.beside[i][j] = n
			if i != j {
				t.beside[j][i] = n.mirrored()
			}
		}
	})
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	for i := range stock {
		if err := t.prepare(&stock[i]); err != nil {
			return nil, err
		}
	}
	return t, nil
}

// prepare finds the room of a sheet for the grown shapes. An odd remnant is a
// rectangle of which parts are taken.
func (t *table) prepare(s *Stock) error {
	// Grown shapes reach half a gap beyond their parts, and parts keep an edge.
	inset := t.rules.Edge - t.rules.Gap/2
	box := s.Outline.Bounds()
	low := outline.Point{X: box.Low.X + inset, Y: box.Low.Y + inset}
	size := outline.Point{X: box.Width() - 2*inset, Y: box.Height() - 2*inset}
	t.origin, t.room = append(t.origin, low), append(t.room, size)
	if sameShape(s.Outline, outline.Rectangle(box)) {
		t.blocked = append(t.blocked, nil)
		return nil
	}
	blocked := make([]columns, len(t.shapes))
	for i := range t.shapes {
		wide := size.X - t.shapes[i].wide
		if wide >= -outline.Touch {
			blocked[i] = make(columns, int(wide/step+1e-6)+1)
		}
	}
	lost, err := outside(s.Outline, box, math.Max(inset, 0))
	if err != nil {
		return err
	}
	for _, polygon := range lost {
		at, _ := bounds(polygon[0])
		shift := int(math.Floor((at.X - low.X) / step)) // the polygon begins in this column
		corner := outline.Point{X: low.X + float64(shift)*step, Y: low.Y}
		for _, ring := range polygon {
			for k := range ring {
				ring[k] = outline.Point{X: ring[k].X - corner.X, Y: ring[k].Y - corner.Y}
			}
		}
		cols := columnsOf(polygon...)
		for i := range t.shapes {
			n := noFitOf(cols, t.shapes[i].cols)
			for k := range n.at {
				if c := n.first + k + shift; c >= 0 && c < len(blocked[i]) {
					for _, r := range n.at[k] {
						blocked[i][c] = blocked[i][c].add(r)
					}
				}
			}
		}
	}
	t.blocked = append(t.blocked, blocked)
	return nil
}

// each calls f for 0 to n−1 on all cores.
func each(n int, f func(int)) {
	var wait sync.WaitGroup
	next := make(chan int)
	for range min(n, runtime.GOMAXPROCS(0)) {
		wait.Go(func() {
			for i := range next {
				f(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	wait.Wait()
}
