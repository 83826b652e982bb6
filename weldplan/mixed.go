package weldplan

import (
	"errors"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"
)

// mixedData is readings y at x, in groups.
type mixedData struct {
	x, y   []float64
	group  []int
	groups []string
}

func (d *mixedData) add(x, y float64, group string) {
	g := slices.Index(d.groups, group)
	if g < 0 {
		g = len(d.groups)
		d.groups = append(d.groups, group)
	}
	d.x, d.y, d.group = append(d.x, x), append(d.y, y), append(d.group, g)
}

// A mixedFit is the line y = b0 + b1·x + u_g + e with u_g of each group drawn from
// N(0, λ·σ²) and e from N(0, σ²): a random intercept, fitted by restricted maximum
// likelihood (Patterson and Thompson, 1971). With λ = 0 it is ordinary least squares.
type mixedFit struct {
	data     *mixedData
	line     int        // 2 with a slope, 1 where x never changes
	lambda   float64    // variance between groups over that within
	sigma2   float64    // σ²
	solution []float64  // b0, b1, then u of each group
	inverse  *mat.Dense // of the mixed-model equations (Henderson)
}

var errNoSpread = errors.New("all figures are alike")

// fit fits the data.
func (d *mixedData) fit() (*mixedFit, error) {
	f := &mixedFit{data: d, line: 1}
	for _, x := range d.x {
		if math.Abs(x-d.x[0]) > 1e-9 {
			f.line = 2
		}
	}
	if len(d.y) <= f.line+1 {
		return nil, errors.New("too few")
	}
	if f.separable() {
		f.lambda = f.bestLambda()
	}
	if err := f.solve(); err != nil {
		return nil, err
	}
	if !(f.sigma2 > 1e-10) {
		return nil, errNoSpread
	}
	return f, nil
}

// separable says whether the spread between groups can be told from that within:
// two groups at least, and one with two readings.
func (f *mixedFit) separable() bool {
	counts := make([]int, len(f.data.groups))
	most := 0
	for _, g := range f.data.group {
		counts[g]++
		most = max(most, counts[g])
	}
	return len(counts) > 1 && most > 1
}

// bestLambda maximises the restricted likelihood over λ, by a coarse walk on its
// logarithm and golden section; zero where that is no worse.
func (f *mixedFit) bestLambda() float64 {
	const low, high, steps = -12.0, 12.0, 48
	best, at := f.restricted(0), math.Inf(-1)
	for i := range steps + 1 {
		l := low + (high-low)*float64(i)/steps
		if v := f.restricted(math.Exp(l)); v > best+1e-12 {
			best, at = v, l
		}
	}
	if math.IsInf(at, -1) {
		return 0
	}
	a, b := at-(high-low)/steps, at+(high-low)/steps
	const golden = 0.6180339887498949
	for range 60 {
		c, d := b-golden*(b-a), a+golden*(b-a)
		if f.restricted(math.Exp(c)) > f.restricted(math.Exp(d)) {
			b = d
		} else {
			a = c
		}
	}
	return math.Exp((a + b) / 2)
}

// normal are XᵀV⁻¹X, XᵀV⁻¹y and yᵀV⁻¹y with V = I + λ·Z·Zᵀ, group by group: the
// inverse of a group's block is I − λ/(1 + n·λ)·1·1ᵀ.
func (f *mixedFit) normal(lambda float64) (xx [2][2]float64, xy [2]float64, yy, logDet float64) {
	d := f.data
	n := make([]float64, len(d.groups))
	sx, sy := make([]float64, len(n)), make([]float64, len(n))
	for i, g := range d.group {
		x, y := d.x[i], d.y[i]
		n[g]++
		sx[g] += x
		sy[g] += y
		xx[0][0]++
		xx[0][1] += x
		xx[1][1] += x * x
		xy[0] += y
		xy[1] += x * y
		yy += y * y
	}
	for g := range n {
		c := lambda / (1 + n[g]*lambda)
		xx[0][0] -= c * n[g] * n[g]
		xx[0][1] -= c * n[g] * sx[g]
		xx[1][1] -= c * sx[g] * sx[g]
		xy[0] -= c * n[g] * sy[g]
		xy[1] -= c * sx[g] * sy[g]
		yy -= c * sy[g] * sy[g]
		logDet += math.Log1p(n[g] * lambda)
	}
	xx[1][0] = xx[0][1]
	return xx, xy, yy, logDet
}

// restricted is the restricted log-likelihood at λ, constants left out.
func (f *mixedFit) restricted(lambda float64) float64 {
	xx, xy, yy, logDet := f.normal(lambda)
	free := float64(len(f.data.y) - f.line)
	var rest, det float64
	if f.line == 1 {
		det = xx[0][0]
		rest = yy - xy[0]*xy[0]/xx[0][0]
	} else {
		det = xx[0][0]*xx[1][1] - xx[0][1]*xx[0][1]
		b0 := (xx[1][1]*xy[0] - xx[0][1]*xy[1]) / det
		b1 := (xx[0][0]*xy[1] - xx[0][1]*xy[0]) / det
		rest = yy - b0*xy[0] - b1*xy[1]
	}
	return -0.5 * (free*math.Log(math.Max(rest, 1e-300)/free) + logDet + math.Log(det))
}

// solve sets up Henderson's equations for the line and the groups at once.
func (f *mixedFit) solve() error {
	d := f.data
	size := f.line
	if f.lambda > 0 {
		size += len(d.groups)
	}
	all, right := mat.NewDense(size, size, nil), mat.NewVecDense(size, nil)
	for i := range d.y {
		row := f.row(d.x[i], d.group[i])
		for p, v := range row {
			right.SetVec(p, right.AtVec(p)+v*d.y[i])
			for q, w := range row {
				all.Set(p, q, all.At(p, q)+v*w)
			}
		}
	}
	for g := f.line; g < size; g++ {
		all.Set(g, g, all.At(g, g)+1/f.lambda)
	}
	f.inverse = mat.NewDense(size, size, nil)
	if err := f.inverse.Inverse(all); err != nil {
		return errors.New("the thicknesses hardly differ")
	}
	var solution mat.VecDense
	solution.MulVec(f.inverse, right)
	f.solution = solution.RawVector().Data
	rest := 0.0 // yᵀ(y − fitted), which is σ² times its freedom
	for i := range d.y {
		fitted := 0.0
		for p, v := range f.row(d.x[i], d.group[i]) {
			fitted += v * f.solution[p]
		}
		rest += d.y[i] * (d.y[i] - fitted)
	}
	f.sigma2 = rest / float64(len(d.y)-f.line)
	return nil
}

// row is what the line and the groups count for at x; group −1 is a new one.
func (f *mixedFit) row(x float64, group int) []float64 {
	size := f.line
	if f.lambda > 0 {
		size += len(f.data.groups)
	}
	row := make([]float64, size)
	row[0] = 1
	if f.line == 2 {
		row[1] = x
	}
	if f.lambda > 0 && group >= 0 {
		row[f.line+group] = 1
	}
	return row
}

// A prediction is of the next reading.
type prediction struct {
	mean, sd float64
	freedom  float64
}

// predict says where the next reading of a group lies at x, a group that has none
// yet included.
func (f *mixedFit) predict(x float64, group string) prediction {
	g := slices.Index(f.data.groups, group)
	row := mat.NewVecDense(len(f.row(x, g)), f.row(x, g))
	variance := f.sigma2 * (1 + mat.Inner(row, f.inverse, row))
	freedom := float64(len(f.data.y) - f.line)
	if f.lambda > 0 {
		freedom -= float64(len(f.data.groups) - 1) // as if each group had its own intercept
		if g < 0 {
			variance += f.sigma2 * f.lambda
		}
	}
	return prediction{mat.Dot(row, mat.NewVecDense(len(f.solution), f.solution)), math.Sqrt(variance), math.Max(1, freedom)}
}

// studentQuantile is Student's t.
func studentQuantile(p, freedom float64) float64 {
	return distuv.StudentsT{Mu: 0, Sigma: 1, Nu: freedom}.Quantile(p)
}
