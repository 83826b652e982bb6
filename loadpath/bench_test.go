package loadpath

import (
	"math"
	"math/rand/v2"
	"testing"
)

// One equilibrium of both shafts, all rollers and the peg, from rest.
func BenchmarkEquilibriumFromRest(b *testing.B) {
	e, err := Prepare(referenceAxle(b, "B"))
	if err != nil {
		b.Fatal(err)
	}
	var s State
	b.ReportAllocs()
	for b.Loop() {
		e.wheel.forget()
		e.pinion.forget()
		e.wheel.memo.clear()
		e.pinion.memo.clear()
		if err := e.SolveInto(&s, Coast, 6000); err != nil {
			b.Fatal(err)
		}
	}
}

// The same from a torque a tenth away.
func BenchmarkEquilibriumFromNeighbour(b *testing.B) {
	e, err := Prepare(referenceAxle(b, "B"))
	if err != nil {
		b.Fatal(err)
	}
	var s State
	i := 0
	b.ReportAllocs()
	for b.Loop() {
		e.wheel.memo.clear()
		e.pinion.memo.clear()
		i++
		if err := e.SolveInto(&s, Coast, 6000+float64(i%2)*600); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPrepare(b *testing.B) {
	a := referenceAxle(b, "B")
	e, err := Prepare(a)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		e.prior = false
		if err := e.Reset(a); err != nil {
			b.Fatal(err)
		}
	}
}

// One draw of an advice: new stiffness and preload, 32 builds (two head
// bearings, two caps, eight pegs), both flanks, one torque.
func BenchmarkDrawOf32Builds(b *testing.B) {
	a, d := referenceAxle(b, "B"), referenceAxle(b, "D")
	var e Elastic
	var s State
	rng := rand.New(rand.NewPCG(1, 1))
	b.ReportAllocs()
	for b.Loop() {
		shake := math.Exp(0.2 * rng.NormFloat64())
		draw := stiffer(a, shake)
		draw.SidePreload *= 0.5 + rng.Float64()
		peg := *draw.Peg
		for head := range 2 {
			if head == 1 {
				draw.Head = d.Head
			}
			for cap := range 2 {
				if cap == 1 {
					draw.NearSeat.Cap, draw.FarSeat.Cap = d.NearSeat.Cap*shake, d.FarSeat.Cap*shake
				}
				for gap := range 8 {
					if draw.Peg = &peg; gap == 0 {
						draw.Peg = nil
					}
					peg.Gap = 0.05e-3 * float64(gap)
					if err := e.Reset(draw); err != nil {
						b.Fatal(err)
					}
					for _, flank := range flanks {
						if err := e.SolveInto(&s, flank, 4000); err != nil {
							b.Fatal(err)
						}
					}
				}
			}
			draw.NearSeat, draw.FarSeat = stiffer(a, shake).NearSeat, stiffer(a, shake).FarSeat
		}
	}
}
