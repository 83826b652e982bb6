package assess

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"axlewright/axle"
	"axlewright/loadpath"
)

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
