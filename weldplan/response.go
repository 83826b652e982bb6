package weldplan

import "math"

// A response is what one run moves when it is laid at some stage: the watched
// movements, by effect.
type response struct {
	by [effects][]float64 // m
}

// total is all effects together.
func (r *response) total(i int) float64 {
	return r.by[transverse][i] + r.by[longitudinal][i] + r.by[angular][i]
}

// A laying is how the two halves of a run cool.
type laying int

const (
	beadByBead laying = iota // backstepped: a half is cold, and holds, before the next one shrinks
	wholeBead                // one long bead: all of it holds when all of it shrinks
)

// respond works out what a run moves at a stage. Its halves are laid one after
// the other, the second first where it is laid from the other end, and cool as
// how says; each half is stiff by the time that it shrinks. Where plate and casting hold so hard that the
// weld metal would yield, it pulls no harder than that.
func (m *model) respond(s *stage, run int, reversed bool, how laying) response {
	at := s.place(run)
	own := s.moves + tiesOfRun*at
	rows := s.moves + tiesOfRun
	var small [64][columns]float64 // moves and own ties; rows are few
	for i := range rows {
		from := i
		if i >= s.moves {
			from = own + i - s.moves
		}
		copy(small[i][:], s.row(from)[columns*at:columns*(at+1)])
	}
	var out response
	for e := range out.by {
		out.by[e] = make([]float64, s.moves)
	}
	order := [halves]int{0, 1}
	if reversed {
		order = [halves]int{1, 0}
	}
	stiffen := func(h int) {
		part := &m.runs[run].half[h]
		for t := range ties {
			b := ties*h + t
			key := small[s.moves+b]
			more := part.full[t] * (1 - m.tacked)
			gain := more / (1 + more*key[b])
			for i := range rows {
				if f := gain * small[i][b]; f != 0 {
					for j, v := range key {
						small[i][j] -= f * v
					}
				}
			}
		}
	}
	if how == wholeBead {
		for h := range halves {
			stiffen(h)
		}
	}
	for _, h := range order {
		if how == beadByBead {
			stiffen(h)
		}
		part := &m.runs[run].half[h]
		draw, tip := ties*h+1, ties*h+3
		share := part.yielding(small[s.moves+draw], draw, h)
		for i := range s.moves {
			row := &small[i]
			out.by[transverse][i] += row[draw]*part.full[1]*part.misfit[1]*share + row[tiesOfRun+effects*h+transverse]
			out.by[longitudinal][i] += row[tiesOfRun+effects*h+longitudinal]
			out.by[angular][i] += row[tip]*part.full[3]*part.misfit[3] + row[tiesOfRun+effects*h+angular]
		}
	}
	return out
}

// yielding is the share of its shrinkage that a half can force on plate and
// casting before the weld metal yields. key is the answer of its own tie across.
func (p *tiedHalf) yielding(key [columns]float64, draw, h int) float64 {
	k, delta := p.full[1], p.misfit[1]
	if delta == 0 {
		return 1
	}
	given := key[draw] * k // of each metre of misfit, what gives way
	other := key[tiesOfRun+effects*h+transverse] + key[tiesOfRun+effects*h+longitudinal] + key[tiesOfRun+effects*h+angular]
	if k*(delta*(1-given)-other) <= p.most {
		return 1
	}
	share := (p.most/k + other) / (delta * (1 - given))
	return math.Min(1, math.Max(0, share))
}
