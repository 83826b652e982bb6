package setup

import (
	"math"
	"math/cmplx"

	"gonum.org/v1/gonum/mat"
)

// A Wave is one part of what a dial shows round a turn.
type Wave struct {
	Amplitude float64 // m; the dial swings by twice that
	High      float64 // rad, place of the highest reading from the mark, 0 to 2π; of a wave of two humps the first
}

// FullReading is the swing of the dial.
func (w Wave) FullReading() float64 { return 2 * w.Amplitude }

func waveOf(z complex128) Wave {
	w := Wave{Amplitude: cmplx.Abs(z), High: cmplx.Phase(z)}
	if w.High < 0 {
		w.High += 2 * math.Pi
	}
	return w
}

// A column of a fit: a wave of so many humps, turned on by shift, in the rows of
// one set of readings or of all.
type column struct {
	humps int
	shift float64
	set   int // -1 is all sets
}

// sets are readings taken round a turn, one set without moving the parts.
type sets [][]point

type point struct{ angle, value float64 }

// fit finds by least squares a mean for each set and the waves asked for, each
// given by the columns that belong to it (one for each set that sees it turned).
// rest is what the waves leave, as a standard deviation. It says false where the
// readings do not tell the waves apart.
func (data sets) fit(waves [][]column) (means []float64, found []complex128, rest float64, ok bool) {
	rows := 0
	for _, set := range data {
		rows += len(set)
	}
	unknowns := len(data) + 2*len(waves)
	if rows < unknowns {
		return nil, nil, 0, false
	}
	a := mat.NewDense(rows, unknowns, nil)
	b := mat.NewVecDense(rows, nil)
	i := 0
	for k, set := range data {
		for _, p := range set {
			b.SetVec(i, p.value)
			a.Set(i, k, 1)
			for w, columns := range waves {
				for _, c := range columns {
					if c.set != -1 && c.set != k {
						continue
					}
					sin, cos := math.Sincos(float64(c.humps) * (p.angle - c.shift))
					a.Set(i, len(data)+2*w, cos)
					a.Set(i, len(data)+2*w+1, sin)
				}
			}
			i++
		}
	}
	var qr mat.QR
	qr.Factorize(a)
	const worst = 1e6 // beyond it the readings stand too close together to tell
	if qr.Cond() > worst {
		return nil, nil, 0, false
	}
	var x mat.VecDense
	if err := qr.SolveVecTo(&x, false, b); err != nil {
		return nil, nil, 0, false
	}
	for k := range data {
		means = append(means, x.AtVec(k))
	}
	for w := range waves {
		found = append(found, complex(x.AtVec(len(data)+2*w), x.AtVec(len(data)+2*w+1)))
	}
	var left mat.VecDense
	left.MulVec(a, &x)
	left.SubVec(b, &left)
	if rows > unknowns {
		rest = mat.Norm(&left, 2) / math.Sqrt(float64(rows-unknowns))
	}
	return means, found, rest, true
}

// extremes are the least and the most of some readings and the index of each.
func extremes(values []float64) (least, most float64, at, top int) {
	least, most = values[0], values[0]
	for i, v := range values {
		if v < least {
			least, at = v, i
		}
		if v > most {
			most, top = v, i
		}
	}
	return least, most, at, top
}
