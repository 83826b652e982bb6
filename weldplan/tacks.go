package weldplan

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Tacks. Common practice, no source.
const (
	tackLength = 12e-3 // m
	tackPitch  = 45e-3 // m, from tack to tack
)

// A Tack is one short bead that holds a plate, in the order they are set.
type Tack struct {
	Run string     `json:"run"`
	At  [3]float64 `json:"at"` // m, its middle
}

// tackShare is how much of a run's stiffness its tacks give: their share of its
// length, and a third of that, since a tack gives way long before it has held what
// a cooling run pulls. Our assumption; the comparison of orders is made with a
// third and three times as much too.
const tackShare = tackLength / tackPitch / 3

// tacksOf sets the tacks of every plate, one at a time and each as far as can be
// from those before it: opposite sides in turn.
func tacksOf(m *model, names []string) []Tack {
	type spot struct {
		run   int
		at    r3.Vec
		plate int
	}
	var left []spot
	for i := range m.runs {
		l := m.runs[i].line
		n := max(1, int(math.Round(l.length/tackPitch)))
		if n == 1 && l.length >= tackPitch/2 {
			n = 2
		}
		for t := range n {
			share := 0.5
			if n > 1 { // half a tack in from the ends
				in := math.Min(0.5, tackLength/2/l.length)
				share = in + (1-2*in)*float64(t)/float64(n-1)
			}
			left = append(left, spot{i, l.at(share), m.runs[i].plate})
		}
	}
	var tacks []Tack
	var set []spot
	for len(left) > 0 {
		best, far := 0, -1.0
		for i, s := range left {
			near := math.Inf(1)
			for _, o := range set {
				if o.plate == s.plate {
					near = math.Min(near, r3.Norm(r3.Sub(o.at, s.at)))
				}
			}
			if s.plate != left[0].plate { // one plate after the other
				continue
			}
			if near > far+1e-9 {
				best, far = i, near
			}
		}
		s := left[best]
		set = append(set, s)
		left = append(left[:best], left[best+1:]...)
		tacks = append(tacks, Tack{names[s.run], [3]float64{s.at.X, s.at.Y, s.at.Z}})
	}
	return tacks
}

// A Piece is one bead of a run laid in backsteps.
type Piece struct {
	From [3]float64 `json:"from"` // m
	To   [3]float64 `json:"to"`
}

// backsteps cuts a run into pieces that go forward one after another while each is
// laid backwards, towards the metal already welded.
func backsteps(l line, pieces int, reversed bool) []Piece {
	point := func(share float64) [3]float64 {
		if reversed {
			share = 1 - share
		}
		p := l.at(share)
		return [3]float64{p.X, p.Y, p.Z}
	}
	list := make([]Piece, pieces)
	for i := range list {
		a, b := float64(i)/float64(pieces), float64(i+1)/float64(pieces)
		list[i] = Piece{From: point(b), To: point(a)}
	}
	if pieces == 1 {
		list[0].From, list[0].To = list[0].To, list[0].From
	}
	return list
}
