package assess

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"

	"axlewright/axle"
	"axlewright/loadpath"
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
	return strings.HasPrefix(place, "Casting.Seats.Side.") || place == "Casting.Preload.Side" ||
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

// A benchModel predicts readings from scores.
type benchModel struct {
	sampler *axle.Sampler[axle.Assembly]
	bench   *axle.Bench
	places  []string
	figures []axle.Number
	columns map[string]int
	p, z    []float64 // of every doubtful figure; those not calibrated stay in the middle
	at      []int     // column of each place
	plates  [][]wheelPlates
	sigma   []float64       // m, by reading: instrument and model together
	builds  []axle.Assembly // by reading: with a peg standing where the jack pushes or the dial reads
}

func newBenchModel(build *axle.Assembly, bench *axle.Bench) (*benchModel, error) {
	b := &benchModel{bench: bench, columns: map[string]int{}}
	own := *build
	axle.EachFigure(&own, "", func(place string, n *axle.Number) {
		if !n.Doubtful() {
			return
		}
		if calibrated(place) {
			b.places, b.figures, b.at = append(b.places, place), append(b.figures, *n), append(b.at, len(b.columns))
		}
		b.columns[place] = len(b.columns)
	})
	if len(b.places) == 0 {
		return nil, fmt.Errorf("calibrate: none of the unit's seats, preload or plate has a doubt that readings could narrow")
	}
	b.p, b.z = make([]float64, len(b.columns)), make([]float64, len(b.columns))
	b.sampler = axle.NewSampler(*build, "", func(place string) int { return b.columns[place] })
	for i := range bench.Readings {
		r := &bench.Readings[i].Reading
		b.sigma = append(b.sigma, math.Hypot((r.High-r.Low)/4, modelShare*r.Value))
		with, err := standing(build, &bench.Readings[i])
		if err != nil {
			return nil, err
		}
		wheel, err := newCrownWheel(&with)
		if err != nil {
			return nil, err
		}
		b.builds, b.plates = append(b.builds, with), append(b.plates, []wheelPlates{{wheel: wheel}})
	}
	return b, nil
}

// probe is a peg that stands for a jack or a dial.
func probe(radius, angle float64) *axle.Peg {
	p := &axle.Peg{}
	p.Radius.Value, p.Angle.Value, p.PadDiameter.Value = radius, angle, 0.012
	return p
}

// standing puts a probe where the jack pushes, or where the dial reads.
func standing(build *axle.Assembly, r *axle.BenchReading) (axle.Assembly, error) {
	with := *build
	dialRadius := build.Casting.Layout.DialRadius.Value
	if r.DialRadius.Given() {
		dialRadius = r.DialRadius.Value
	}
	if !r.Jack.Given() {
		with.Peg = probe(dialRadius, r.DialAngle.Value)
		return with, nil
	}
	if r.DialAngle.Value != 0 {
		return with, fmt.Errorf("reading %q: with a jack the dial must stand behind the mesh (dial_angle 0)", r.Name)
	}
	with.Casting.Layout.DialRadius.Value = dialRadius
	with.Peg = probe(r.JackRadius.Value, r.JackAngle.Value)
	return with, nil
}

// predict returns the readings for scores of the calibrated figures.
func (b *benchModel) predict(scores []float64) ([]float64, error) {
	for i := range b.p {
		b.p[i], b.z[i] = 0.5, 0
	}
	for i, column := range b.at {
		b.z[column], b.p[column] = scores[i], distuv.UnitNormal.CDF(scores[i])
	}
	b.sampler.Draw(b.p, b.z)
	out := make([]float64, len(b.bench.Readings))
	for k := range b.bench.Readings {
		var err error
		if out[k], err = b.one(k); err != nil {
			return nil, fmt.Errorf("reading %q: %w", b.bench.Readings[k].Name, err)
		}
	}
	return out, nil
}

func (b *benchModel) one(k int) (float64, error) {
	r := &b.bench.Readings[k]
	drawn := b.sampler.Drawn
	drawn.Peg, drawn.Casting.Layout.DialRadius = nil, b.builds[k].Casting.Layout.DialRadius
	one := []*axle.Assembly{&drawn}
	input, err := newPathSolver(one, b.plates[k], 1).input(&drawn, &drawn, b.plates[k][0], nil)
	if err != nil {
		return 0, err
	}
	p := b.builds[k].Peg
	input.Peg = &loadpath.Peg{
		Gap: 1, Radius: p.Radius.Value, Angle: p.Angle.Value, BackFaceY: drawn.Gears.Plate.Thickness.Value / 2,
	}
	if r.Jack.Given() {
		return underJack(input, r.Jack.Value)
	}
	elastic, err := loadpath.Prepare(input)
	if err != nil {
		return 0, err
	}
	var s loadpath.State
	ratio := float64(drawn.Gears.WheelTeeth) / float64(drawn.Gears.PinionTeeth)
	if err := elastic.SolveInto(&s, r.Flank, r.Torque.Value*ratio); err != nil {
		return 0, err
	}
	return s.Peg.Movement, nil
}

// underJack returns the dial behind the mesh when a jack pushes the back face
// towards the pinion: a rigid stop screwed in past touch until it carries the
// jack's force.
func underJack(input *loadpath.Axle, force float64) (float64, error) {
	var s loadpath.State
	short := func(travel float64) (float64, error) {
		input.Peg.Gap = -travel
		elastic, err := loadpath.Prepare(input)
		if err != nil {
			return 0, err
		}
		err = elastic.SolveInto(&s, axle.DriveFlank, 0)
		return s.Peg.Load - force, err
	}
	low, high := 0.0, 1e-4
	for range 20 {
		f, err := short(high)
		if err != nil {
			return 0, err
		}
		if f >= 0 {
			break
		}
		low, high = high, 2*high
	}
	for range 50 {
		mid := (low + high) / 2
		f, err := short(mid)
		if err != nil {
			return 0, err
		}
		if f < 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return s.Dial, nil
}

// jacobian returns how each reading changes with each score, by differences.
func (b *benchModel) jacobian(z, at []float64) ([][]float64, error) {
	const h = 0.02
	j := make([][]float64, len(at))
	for k := range j {
		j[k] = make([]float64, len(z))
	}
	for i := range z {
		moved := append([]float64(nil), z...)
		moved[i] += h
		p, err := b.predict(moved)
		if err != nil {
			return nil, err
		}
		for k := range p {
			j[k][i] = (p[k] - at[k]) / h
		}
	}
	return j, nil
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
