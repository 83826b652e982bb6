package assess

import (
	"slices"
	"testing"
)

func TestEveryFigureVisitsEverySliceOnce(t *testing.T) {
	const n, figures = 500, 7
	d := newDraws(n, figures, 1)
	for f := range figures {
		var column []float64
		for i := range n {
			p, _ := d.row(i)
			column = append(column, p[f])
		}
		slices.Sort(column)
		for i, p := range column {
			if p < float64(i)/n || p > float64(i+1)/n {
				t.Fatalf("figure %d: value %d is %g, outside its slice", f, i, p)
			}
		}
	}
}

func TestSameSeedSameDraws(t *testing.T) {
	a, b, c := newDraws(100, 3, 5), newDraws(100, 3, 5), newDraws(100, 3, 6)
	if !slices.Equal(a.p, b.p) {
		t.Error("the same seed gives other draws")
	}
	if slices.Equal(a.p, c.p) {
		t.Error("another seed gives the same draws")
	}
}

func BenchmarkDraws2000x150(b *testing.B) {
	for range b.N {
		newDraws(2000, 150, 1)
	}
}
