package assess

import (
	"fmt"
	"math/rand/v2"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"
	"gonum.org/v1/gonum/stat/samplemv"
)

// draws holds, for every draw and every doubtful figure, a probability and its
// normal score. The same row serves every build.
type draws struct {
	n, figures int
	seed       uint64
	p, z       []float64 // n rows of figures each
}

// newDraws fills n rows by Latin hypercube sampling: each figure's doubt is cut
// into n slices of equal probability and each slice is visited once, so that
// medians and bands settle far sooner than with plain random numbers.
//
// Source: McKay, Beckman & Conover, Technometrics 21 (1979); the sampling
// itself is gonum's.
func newDraws(n, figures int, seed uint64) draws {
	d := draws{n: n, figures: figures, seed: seed, p: make([]float64, n*figures), z: make([]float64, n*figures)}
	if figures == 0 {
		return d
	}
	batch := mat.NewDense(n, figures, d.p)
	samplemv.LatinHypercube{Q: unitCube{}, Src: rand.NewPCG(seed, 0)}.Sample(batch)
	for i, p := range d.p {
		d.z[i] = distuv.UnitNormal.Quantile(p)
	}
	return d
}

// row returns the probabilities and scores of one draw.
func (d draws) row(i int) (p, z []float64) {
	return d.p[i*d.figures : (i+1)*d.figures], d.z[i*d.figures : (i+1)*d.figures]
}

// unitCube maps each coordinate to itself: the figures' own distributions are
// applied later, build by build.
type unitCube struct{}

func (unitCube) Quantile(x, p []float64) []float64 {
	if x == nil {
		x = make([]float64, len(p))
	}
	copy(x, p)
	return x
}

// condition replaces the draws of calibrated figures by draws of what the bench
// has left of their doubt, correlations and all.
func (d *draws) condition(c *Calibration, column func(place string) (int, bool)) error {
	var chol mat.Cholesky
	if !chol.Factorize(c.Covariance) {
		return fmt.Errorf("calibrate: the covariance is not positive")
	}
	var lower mat.TriDense
	chol.LTo(&lower)
	columns := make([]int, len(c.Places))
	for i, place := range c.Places {
		at, known := column(place)
		if !known {
			return fmt.Errorf("calibrate: %s is not a doubtful figure of this enquiry", inWords(place))
		}
		columns[i] = at
	}
	fresh := make([]float64, len(columns))
	for row := range d.n {
		p, z := d.row(row)
		for i := range columns {
			fresh[i] = c.Mean[i]
			for j := 0; j <= i; j++ {
				fresh[i] += lower.At(i, j) * z[columns[j]]
			}
		}
		for i, at := range columns {
			z[at], p[at] = fresh[i], distuv.UnitNormal.CDF(fresh[i])
		}
	}
	return nil
}
