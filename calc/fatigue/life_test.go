package fatigue

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
	"axlewright/internal/published"
)

const kpsi = 6.894757293168e6 // Pa

func TestMinerSumPublished(t *testing.T) {
	damage, err := MinerSum([]MinerBlock{{2e4, 1e5}, {5e4, 4e5}, {1e5, 2e6}})
	if err != nil {
		t.Fatal(err)
	}
	published.Check(t, []published.Row{{Name: "three blocks", Got: damage, Printed: "0.375",
		Source: "derived: 0.2 + 0.125 + 0.05 by the Palmgren–Miner sum"}})
	var r *check.RangeError
	if _, err := MinerSum([]MinerBlock{{1, 1}, {1, 0}}); !errors.As(err, &r) || r.Param != "blocks[1].Life" {
		t.Errorf("no life: got %v, want a range error on blocks[1].Life", err)
	}
	if _, err := MinerSum(nil); !errors.As(err, &r) {
		t.Errorf("no block: got %v, want a range error", err)
	}
}

func TestLifeRatioPublished(t *testing.T) {
	const (
		gears    = "derived: torque × 1.2 on the life-factor slopes of ISO 10300-2 and -3 for carburised bevels (anchors from memory)"
		bearings = "life with load, roller bearings, common practice from ISO 281's exponent 10/3"
	)
	var rows []published.Row
	for _, c := range []struct {
		name         string
		ratio, slope float64
		printed      string
		source       string
		within       float64
		why          string
	}{
		{"tooth root, torque × 1.2", 1.2, 8.74, "0.203215", gears, 0, ""},
		{"tooth flank, torque × 1.2, half the stress slope 13.2", 1.2, 6.6, "0.299648", gears, 0.005, "recomputed from the anchors, whose slope of 13.22 is given as 13.2"},
		{"roller bearing, load × 1.05", 1.05, 10.0 / 3, "0.85", bearings, 0, ""},
		{"roller bearing, load × 1.10", 1.10, 10.0 / 3, "0.73", bearings, 0, ""},
		{"roller bearing, load × 1.15", 1.15, 10.0 / 3, "0.63", bearings, 0, ""},
		{"roller bearing, load × 1.20", 1.20, 10.0 / 3, "0.545", bearings, 0, ""},
		{"roller bearing, rating up by 20 %", 1 / 1.2, 10.0 / 3, "1.84", bearings, 0, ""},
	} {
		got, err := LifeRatio(LifeRatioParams{c.ratio, c.slope})
		if err != nil {
			t.Fatal(err)
		}
		rows = append(rows, published.Row{Name: c.name, Got: got, Printed: c.printed, Source: c.source, Within: c.within, Why: c.why})
	}
	published.Check(t, rows)
}

func TestBasquinPublished(t *testing.T) {
	const (
		example = "Shigley's Mechanical Engineering Design, 8th ed., example 6-2 (from memory)"
		exact   = example + ", recomputed without rounding"
		problem = "Shigley's Mechanical Engineering Design, 8th ed., problem 6-15 and its printed solution"
	)
	line, err := BasquinThrough(BasquinParams{1e3, 0.86 * 90 * kpsi, 1e6, 45 * kpsi})
	if err != nil {
		t.Fatal(err)
	}
	strength, _ := BasquinStrength(line, 1e4)
	life, _ := BasquinLife(line, 55*kpsi)
	second, err := BasquinThrough(BasquinParams{1e3, 0.9 * 551e6, 1e6, 276e6})
	if err != nil {
		t.Fatal(err)
	}
	secondLife, _ := BasquinLife(second, 358.5e6)
	published.Check(t, []published.Row{
		{Name: "a, kpsi", Got: line.Coefficient / kpsi, Printed: "133.128", Source: exact},
		{Name: "b", Got: line.Exponent, Printed: "-0.0785095", Source: exact},
		{Name: "strength at 10⁴, kpsi", Got: strength / kpsi, Printed: "64.5998", Source: exact},
		{Name: "life at 55 kpsi", Got: life, Printed: "77614.1", Source: exact},
		{Name: "a, kpsi", Got: line.Coefficient / kpsi, Printed: "133.1", Source: example},
		{Name: "b", Got: line.Exponent, Printed: "-0.0785", Source: example},
		{Name: "strength at 10⁴, kpsi", Got: strength / kpsi, Printed: "64.6", Source: example},
		{Name: "life at 55 kpsi", Got: life, Printed: "77500", Source: example,
			Within: 0.01, Why: "the book rounds a and b before the power"},
		{Name: "problem: a, MPa", Got: second.Coefficient / 1e6, Printed: "891.0", Source: problem},
		{Name: "problem: b", Got: second.Exponent, Printed: "-0.084828", Source: problem},
		{Name: "problem: life", Got: secondLife, Printed: "45800", Source: problem,
			Within: 0.002, Why: "the book rounds the life to three figures"},
	})
	for _, n := range []float64{1e3, 3e4, 1e6} {
		s, _ := BasquinStrength(line, n)
		if back, _ := BasquinLife(line, s); math.Abs(back/n-1) > 1e-9 {
			t.Errorf("life %g gives %g back", n, back)
		}
	}
}

func TestFatigueSafetyPublished(t *testing.T) {
	const (
		tables  = "derived: forms of Shigley's Mechanical Engineering Design, 8th ed., tables 6-6 to 6-8 (from memory)"
		problem = "Shigley's Mechanical Engineering Design, 8th ed., problem 6-15 and its printed solution"
	)
	var rows []published.Row
	for _, c := range []struct {
		criterion Criterion
		printed   string
	}{
		{Goodman, "1.30597"}, {Gerber, "1.63095"}, {ASMEEllipse, "1.60046"}, {Soderberg, "1.13636"},
	} {
		n, err := FatigueSafety(MeanStressParams{c.criterion, 120e6, 200e6, 250e6, 700e6, 500e6})
		if err != nil {
			t.Fatal(err)
		}
		rows = append(rows, published.Row{Name: string(c.criterion), Got: n, Printed: c.printed, Source: tables})
		n, err = FatigueSafety(MeanStressParams{c.criterion, 358.5e6, 0, 276e6, 551e6, 413e6})
		if err != nil {
			t.Fatal(err)
		}
		rows = append(rows, published.Row{Name: string(c.criterion) + " without steady stress", Got: n, Printed: "0.77", Source: problem})
	}
	published.Check(t, rows)
}

// At the safety factor found, the scaled stress lies on the criterion's own line.
func TestFatigueSafetyLandsOnItsLine(t *testing.T) {
	p := MeanStressParams{Amplitude: 80e6, Mean: 260e6, Endurance: 210e6, Ultimate: 640e6, Yield: 430e6}
	for criterion, line := range map[Criterion]func(a, m float64) float64{
		Goodman:     func(a, m float64) float64 { return a/p.Endurance + m/p.Ultimate },
		Gerber:      func(a, m float64) float64 { return a/p.Endurance + math.Pow(m/p.Ultimate, 2) },
		ASMEEllipse: func(a, m float64) float64 { return math.Pow(a/p.Endurance, 2) + math.Pow(m/p.Yield, 2) },
		Soderberg:   func(a, m float64) float64 { return a/p.Endurance + m/p.Yield },
	} {
		p.Criterion = criterion
		n, err := FatigueSafety(p)
		if err != nil {
			t.Fatal(err)
		}
		if got := line(n*p.Amplitude, n*p.Mean); math.Abs(got-1) > 1e-12 {
			t.Errorf("%s: n = %g lands at %g, want 1", criterion, n, got)
		}
	}
}

// A cycle turned into its reversed one must be as near its limit: where the
// reversed amplitude equals the endurance limit, the safety factor is 1.
func TestReversedAmplitudeAgreesWithTheSafetyFactor(t *testing.T) {
	const endurance, strength, mean = 200e6, 600e6, 240e6
	for _, criterion := range []Criterion{Goodman, Gerber, ASMEEllipse, Soderberg} {
		one, err := ReversedAmplitude(ReversedAmplitudeParams{criterion, 1, mean, strength})
		if err != nil {
			t.Fatal(err)
		}
		n, err := FatigueSafety(MeanStressParams{criterion, endurance / one, mean, endurance, strength, strength})
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(n-1) > 1e-12 {
			t.Errorf("%s: safety %g at its limit", criterion, n)
		}
	}
}

func TestMeanStressRefusals(t *testing.T) {
	var r *check.RangeError
	if _, err := FatigueSafety(MeanStressParams{Criterion: "hope", Amplitude: 1, Endurance: 1}); !errors.As(err, &r) || r.Param != "Criterion" {
		t.Errorf("unknown criterion: got %v", err)
	}
	if _, err := FatigueSafety(MeanStressParams{Criterion: Soderberg, Amplitude: 1, Endurance: 1, Ultimate: 5}); !errors.As(err, &r) || r.Param != "Yield" {
		t.Errorf("soderberg without a yield strength: got %v", err)
	}
	if _, err := ReversedAmplitude(ReversedAmplitudeParams{Goodman, 1, -1, 5}); !errors.As(err, &r) || r.Param != "Mean" {
		t.Errorf("a steady stress that presses: got %v", err)
	}
	if _, err := ReversedAmplitude(ReversedAmplitudeParams{"hope", 1, 1, 5}); !errors.As(err, &r) || r.Param != "Criterion" {
		t.Errorf("unknown criterion: got %v", err)
	}
	if _, err := BasquinThrough(BasquinParams{1e3, 100, 1e6, 200}); !errors.As(err, &r) {
		t.Errorf("a line that climbs: got %v", err)
	}
}
