package setup

import (
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"
)

// turn makes readings round a turn from waves and noise.
func turn(places int, mean float64, noise func() float64, waves ...func(angle float64) float64) []Reading {
	readings := make([]Reading, places)
	for i := range readings {
		angle := 2 * math.Pi * float64(i) / float64(places)
		v := mean + noise()
		for _, w := range waves {
			v += w(angle)
		}
		readings[i] = Read(v)
	}
	return readings
}

func hump(n int, amplitude, high float64) func(float64) float64 {
	return func(angle float64) float64 { return amplitude * math.Cos(float64(n)*angle-high) }
}

func quiet() float64 { return 0 }

func TestFirstHarmonicUnderNoise(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		amplitude := rapid.Float64Range(0.01, 0.1).Draw(rt, "amplitude") * mm
		high := rapid.Float64Range(0, 2*math.Pi).Draw(rt, "high")
		places := rapid.IntRange(6, 16).Draw(rt, "places")
		sigma := rapid.Float64Range(0, 0.003).Draw(rt, "noise") * mm
		rng := rand.New(rand.NewPCG(rapid.Uint64().Draw(rt, "seed"), 1))
		readings := turn(places, 0.15*mm, func() float64 { return sigma * rng.NormFloat64() }, hump(1, amplitude, high))
		var points []point
		for i, r := range readings {
			points = append(points, point{2 * math.Pi * float64(i) / float64(places), r.SI})
		}
		means, found, rest, ok := sets{points}.fit([][]column{{{humps: 1, set: -1}}})
		if !ok {
			rt.Fatal("no fit")
		}
		w := waveOf(found[0])
		// Each part of the wave has a standard deviation of σ·√(2/n).
		doubt := 5*sigma*math.Sqrt(2/float64(places)) + 1e-12
		if !near(w.Amplitude, amplitude, doubt) {
			rt.Errorf("amplitude %g, want %g ± %g", w.Amplitude, amplitude, doubt)
		}
		if off := math.Abs(math.Remainder(w.High-high, 2*math.Pi)); off > doubt/amplitude*1.5+1e-9 {
			rt.Errorf("high at %g, want %g", w.High, high)
		}
		if !near(means[0], 0.15*mm, doubt) || rest > 4*sigma+1e-12 {
			rt.Errorf("mean %g, rest %g", means[0], rest)
		}
	})
}

func TestReadingsThatTellNothing(t *testing.T) {
	same := sets{{{1, 0}, {1, 0}, {1, 0.1}, {1, 0.2}}}
	if _, _, _, ok := same.fit([][]column{{{humps: 1, set: -1}}}); ok {
		t.Error("four readings at one place gave a wave")
	}
	if _, _, _, ok := (sets{{{0, 0}, {2, 0}}}).fit([][]column{{{humps: 1, set: -1}}}); ok {
		t.Error("two readings gave a wave")
	}
	if w := waveOf(complex(-1, -1e-30)); w.High < 0 || w.High >= 2*math.Pi+1e-9 {
		t.Errorf("high at %g", w.High)
	}
}
