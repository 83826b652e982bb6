package assess

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"

	"axlewright/axle"
)

// modelShare is how far the load path may be off for a reading beside what its
// figures explain, as a share of the reading: one standard deviation. Assumed.
const modelShare = 0.05

// A Calibration is what bench readings say about a unit's doubtful figures: a
// normal distribution of their normal scores. Before any reading every score
// has mean 0, variance 1 and no correlation.
type Calibration struct {
	Places     []string      `json:"places"` // figures of the assembly, "Casting.Seats.Side.Axial"
	Mean       []float64     `json:"mean"`   // of their scores
	Covariance *mat.SymDense `json:"-"`      // of their scores
}

// A Fit is a calibration with what it rests on.
type Fit struct {
	Calibration
	Readings []FitReading `json:"readings"`
	Figures  []FitFigure  `json:"figures"`
	Warnings []string     `json:"warnings"` // readings that contradict the model or each other
	Rounds   int          `json:"rounds"`
}

// A FitReading is one reading and what the model makes of it.
type FitReading struct {
	Name   string  `json:"name"`
	Read   float64 `json:"read"`   // m
	Error  float64 `json:"error"`  // m, one standard deviation: instrument and model
	Before float64 `json:"before"` // m, by the figures as stated
	After  float64 `json:"after"`  // m, by the figures as fitted
}

// A FitFigure is one figure before and after.
type FitFigure struct {
	Figure string  `json:"figure"`
	Place  string  `json:"place"`
	Unit   string  `json:"unit"`
	Before Band    `json:"before"`
	After  Band    `json:"after"`
	Left   float64 `json:"left"` // 0..1, of the width of its doubt
}

// calibrated says whether bench readings of the back face can tell anything of
// a figure: seats, preload and the wheel's plate.
func calibrated(place string) bool {
	return strings.HasPrefix(place, "Casting.Seats.Side.") || place == "Casting.Compliance.Scale" || place == "Casting.Preload.Side" ||
		place == "Gears.Plate.Bond" || place == "Gears.Plate.Modulus" || place == "Centre.BendingShare"
}

// Calibrate fits a unit's stiffness figures to bench readings: the most likely
// figures given what was thought before and what was read (maximum a
// posteriori), with their covariance by the curvature at that place.
//
//	minimise Σ z² + Σ ((r − m(z))/σ)²,  covariance (I + JᵀJ/σ²)⁻¹
//
// z are normal scores of the figures, so that each keeps the shape of its own
// doubt. The steps are those of Gauss and Newton, halved where they overshoot.
// Source: Gelman et al., Bayesian Data Analysis, 3rd edition, 4.1 and 13.1
// (normal approximation at the mode; from memory).
func Calibrate(e *axle.Enquiry, c *axle.Catalogue, bench *axle.Bench) (Fit, error) {
	builds, err := c.BuildsFor(e)
	if err != nil {
		return Fit{}, err
	}
	b, err := newBenchModel(&builds[0], bench)
	if err != nil {
		return Fit{}, err
	}
	z := make([]float64, len(b.places))
	before, err := b.predict(z)
	if err != nil {
		return Fit{}, err
	}
	const mostRounds = 30
	after, rounds, settled := before, 0, false
	var chol mat.Cholesky
	for ; !settled && rounds < mostRounds; rounds++ {
		gradient, curvature, err := b.normal(z, after)
		if err != nil {
			return Fit{}, err
		}
		if !chol.Factorize(curvature) {
			return Fit{}, fmt.Errorf("calibrate: the curvature is not positive")
		}
		var step mat.VecDense
		if err := chol.SolveVecTo(&step, gradient); err != nil {
			return Fit{}, err
		}
		settled = true
		now := b.misfit(z, after)
		for shrink := 1.0; shrink > 1e-4; shrink /= 2 {
			trial := make([]float64, len(z))
			for i := range trial {
				trial[i] = z[i] + shrink*step.AtVec(i)
			}
			p, err := b.predict(trial)
			if err == nil && b.misfit(trial, p) < now {
				settled = now-b.misfit(trial, p) < 1e-6
				z, after = trial, p
				break
			}
		}
	}
	var covariance mat.SymDense
	if err := chol.InverseTo(&covariance); err != nil {
		return Fit{}, err
	}
	fit := Fit{Calibration: Calibration{b.places, z, &covariance}, Rounds: rounds}
	for k, r := range bench.Readings {
		fit.Readings = append(fit.Readings, FitReading{Name: r.Name, Read: r.Reading.Value, Error: b.sigma[k], Before: before[k], After: after[k]})
	}
	b.tell(&fit)
	return fit, nil
}

// misfit is what the fit makes least.
func (b *benchModel) misfit(z, predicted []float64) float64 {
	sum := 0.0
	for _, x := range z {
		sum += x * x
	}
	for k, r := range b.bench.Readings {
		sum += math.Pow((r.Reading.Value-predicted[k])/b.sigma[k], 2)
	}
	return sum
}

// normal returns the right and left side of the normal equations of one step.
func (b *benchModel) normal(z, predicted []float64) (*mat.VecDense, *mat.SymDense, error) {
	n := len(z)
	jacobian, err := b.jacobian(z, predicted)
	if err != nil {
		return nil, nil, err
	}
	gradient, curvature := mat.NewVecDense(n, nil), mat.NewSymDense(n, nil)
	for i := range n {
		gradient.SetVec(i, -z[i])
		curvature.SetSym(i, i, 1)
	}
	for k, r := range b.bench.Readings {
		weight := 1 / (b.sigma[k] * b.sigma[k])
		for i := range n {
			gradient.SetVec(i, gradient.AtVec(i)+weight*jacobian[k][i]*(r.Reading.Value-predicted[k]))
			for j := i; j < n; j++ {
				curvature.SetSym(i, j, curvature.At(i, j)+weight*jacobian[k][i]*jacobian[k][j])
			}
		}
	}
	return gradient, curvature, nil
}

// tell fills in the figures before and after, and what does not fit.
func (b *benchModel) tell(f *Fit) {
	band := func(n axle.Number, mean, deviation float64) Band {
		at := func(score float64) float64 { return n.AtScore(distuv.UnitNormal.CDF(score), score) }
		const tenth = 1.2815515655446004 // 90 % of a normal distribution
		return Band{Median: at(mean), Low: at(mean - tenth*deviation), High: at(mean + tenth*deviation)}
	}
	for i, n := range b.figures {
		deviation := math.Sqrt(f.Covariance.At(i, i))
		f.Figures = append(f.Figures, FitFigure{
			Figure: inWords(b.places[i]), Place: b.places[i], Unit: n.Kind,
			Before: band(n, 0, 1), After: band(n, f.Mean[i], deviation), Left: deviation,
		})
		if math.Abs(f.Mean[i]) > 3 {
			f.Warnings = append(f.Warnings, fmt.Sprintf("%s would have to lie far outside its stated doubt (%.1f standard deviations): check the reading, the torque and what the unit really is.", inWords(b.places[i]), math.Abs(f.Mean[i])))
		}
	}
	sum := 0.0
	for _, r := range f.Readings {
		off := (r.Read - r.After) / r.Error
		sum += off * off
		if math.Abs(off) > 3 {
			f.Warnings = append(f.Warnings, fmt.Sprintf("reading %q contradicts the model: read %.3f mm, explained %.3f mm, %.0f times its error. Read it again; use two torques and their slope.", r.Name, 1e3*r.Read, 1e3*r.After, math.Abs(off)))
		}
	}
	if n := float64(len(f.Readings)); n > 1 {
		if p := (distuv.ChiSquared{K: n}).Survival(sum); p < 0.01 {
			f.Warnings = append(f.Warnings, fmt.Sprintf("the readings together contradict the model or each other (chance of that by luck %.1g).", p))
		}
	}
}
