package nest

import (
	"math"

	"axlewright/kit/outline"
)

// A table holds what every try needs: the shapes, where each may not lie beside
// another, and where it may not lie on each kind of sheet.
type table struct {
	parts   []Part
	stock   []Stock
	rules   Rules
	shapes  []shape
	byPart  [][]int         // shapes of a part
	beside  [][]noFit       // [lying][coming]
	origin  []outline.Point // of each stock: the lower left corner of the room for grown shapes
	room    []outline.Point // and its size
	blocked [][]columns     // [stock][shape]: spans that the sheet itself takes; nil for a rectangle
}

// A bed is one sheet that is being filled: for every shape the spans of y that
// its lower corner may not have, for every column.
type bed struct {
	t     *table
	stock int
	taken []columns // by shape
	from  []int     // by shape: the columns before this one are full
	laid  []laid
	want  []int // by part: how many may still come; of the others nobody needs to know
}

type laid struct {
	shape  int
	column int
	y      float64
}

func (t *table) newBed(stock int) *bed {
	b := &bed{t: t, stock: stock, want: make([]int, len(t.parts))}
	b.clear()
	return b
}

// clear takes everything off the sheet.
func (b *bed) clear() {
	n := len(b.t.shapes)
	b.taken, b.from, b.laid = make([]columns, n), make([]int, n), nil
	for s := range b.t.shapes {
		wide := b.t.room[b.stock].X - b.t.shapes[s].wide
		if wide < -outline.Touch {
			continue
		}
		b.taken[s] = make(columns, int(math.Floor(wide/step+1e-6))+1)
		if blocked := b.t.blocked[b.stock]; blocked != nil {
			for c := range b.taken[s] {
				b.taken[s][c] = append(spans(nil), blocked[s][c]...)
			}
		}
	}
}

// place finds the leftmost place of a shape, and the lowest of those.
func (b *bed) place(s int) (column int, y float64, ok bool) {
	most := b.t.room[b.stock].Y - b.t.shapes[s].high + outline.Touch/2
	if most < 0 {
		return 0, 0, false
	}
	for c := b.from[s]; c < len(b.taken[s]); c++ {
		if y, ok := b.taken[s][c].free(most); ok {
			b.from[s] = c
			return c, y, true
		}
	}
	b.from[s] = len(b.taken[s])
	return 0, 0, false
}

// lay puts a shape down and takes its room from all shapes.
func (b *bed) lay(l laid) {
	b.laid = append(b.laid, l)
	for s := range b.taken {
		if b.want[b.t.shapes[s].part] == 0 {
			continue
		}
		n := &b.t.beside[l.shape][s]
		first := l.column + n.first
		for k := max(0, -first); k < len(n.at) && first+k < len(b.taken[s]); k++ {
			list := b.taken[s][first+k]
			for _, r := range n.at[k] {
				list = list.add(span{r.low + l.y, r.high + l.y})
			}
			b.taken[s][first+k] = list
		}
	}
}

// undo takes the last so many shapes off again.
func (b *bed) undo(count int) {
	keep := b.laid[:len(b.laid)-count]
	b.clear()
	for _, l := range keep {
		b.lay(l)
	}
}
