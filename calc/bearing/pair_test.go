package bearing

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"axlewright/internal/published"
)

func TestDirectPairPublished(t *testing.T) {
	const source = "Shigley, Mechanical Engineering Design, 9th ed., ex. 11-8, first trial (remembered print)"
	const frA, frB, thrust = 2170, 2654, 1690
	a, err := InducedThrust(frA, 1.5, RatioK)
	must(t, a, err)
	b, err := InducedThrust(frB, 1.5, RatioK)
	must(t, b, err)
	// The gear pushes the shaft towards A; the mounting is direct, so A is seated.
	pair, err := PairThrust(PairParams{Mounting: Direct, InducedA: a, InducedB: b, Thrust: -thrust})
	must(t, pair, err)
	feA := 0.4*frA + 1.5*pair.AxialA
	published.Check(t, []published.Row{
		{Name: "F_iA", Got: a, Printed: "680", Source: source},
		{Name: "F_iB", Got: b, Printed: "832", Source: source},
		{Name: "F_eA", Got: feA, Printed: "4651", Source: source, Within: 2e-4, Why: "the book rounds F_iB to 832 before it goes on"},
	})
	if pair.Seated != "A" || pair.AxialB != b {
		t.Errorf("got %+v, want A seated and B with its own thrust", pair)
	}
}

func TestHubPairPublished(t *testing.T) {
	const source = "derived: Shigley 10th ed., prob. 11-43, statement read, answer worked here a second time"
	a, err := InducedThrust(12e3, 1.5, RatioK)
	must(t, a, err)
	b, err := InducedThrust(25e3, 1.5, RatioK)
	must(t, b, err)
	// The hub pushes its cups from A towards B, which is a push on the shaft the
	// other way. The figure is not at hand: the answer seats A, as a direct
	// mounting does.
	pair, err := PairThrust(PairParams{Mounting: Direct, InducedA: a, InducedB: b, Thrust: -5e3})
	must(t, pair, err)
	published.Check(t, []published.Row{
		{Name: "F_iA, kN", Got: a / 1e3, Printed: "3.76", Source: source},
		{Name: "F_iB, kN", Got: b / 1e3, Printed: "7.83333", Source: source},
		{Name: "F_eA, kN", Got: (0.4*12e3 + 1.5*pair.AxialA) / 1e3, Printed: "24.05", Source: source},
	})
	other, err := PairThrust(PairParams{Mounting: Indirect, InducedA: a, InducedB: b, Thrust: -5e3})
	if must(t, other, err).Seated != "B" {
		t.Errorf("backs outwards: got %+v, want B seated", other)
	}
	if pair.Seated != "A" {
		t.Errorf("got %+v, want A seated", pair)
	}
}

// The two forms of the induced thrust are two roundings of what a row with half
// its rollers loaded really gives: J_a/J_r·tan α at ε = 0.5.
func TestInducedThrustIsThatOfTheHalfCircle(t *testing.T) {
	z, err := LoadZone(LoadZoneParams{Epsilon: 0.5, Exponent: LineContactExponent})
	must(t, z, err)
	for _, angle := range []float64{12, 15, 20, 28} {
		f, err := LoadFactors(angle * degree)
		must(t, f, err)
		exact := 1000 * math.Tan(angle*degree) * z.Ja / z.Jr
		half, err := InducedThrust(1000, f.Y, HalfOverY)
		near(t, "F_r/2Y", must(t, half, err), exact, 0.01)
		ratio, err := InducedThrust(1000, f.K, RatioK)
		near(t, "0.47·F_r/K", must(t, ratio, err), exact, 0.05)
	}
}

func TestPairThrustKeepsItsLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := PairParams{
			Mounting: rapid.SampledFrom([]Mounting{Direct, Indirect}).Draw(t, "mounting"),
			InducedA: rapid.Float64Range(0, 1e4).Draw(t, "S_A"),
			InducedB: rapid.Float64Range(0, 1e4).Draw(t, "S_B"),
			Thrust:   rapid.Float64Range(-2e4, 2e4).Draw(t, "K_a"),
		}
		r, err := PairThrust(p)
		if err != nil {
			t.Fatal(err)
		}
		onShaft := r.AxialA - r.AxialB // A of an indirect pair holds a push towards B
		if p.Mounting == Direct {
			onShaft = -onShaft
		}
		if math.Abs(onShaft-p.Thrust) > 1e-9*(math.Abs(p.Thrust)+1) {
			t.Fatalf("shaft out of balance: %+v gives %+v", p, r)
		}
		if r.AxialA < p.InducedA-1e-9 || r.AxialB < p.InducedB-1e-9 {
			t.Fatalf("a bearing carries less than its own thrust: %+v gives %+v", p, r)
		}
		// the same pair seen from the other side of the shaft
		q := PairParams{Mounting: p.Mounting, InducedA: p.InducedB, InducedB: p.InducedA, Thrust: -p.Thrust}
		s, err := PairThrust(q)
		if err != nil || math.Abs(s.AxialA-r.AxialB) > 1e-9*(r.AxialB+1) || math.Abs(s.AxialB-r.AxialA) > 1e-9*(r.AxialA+1) {
			t.Fatalf("seen from behind %+v, from the front %+v (%v)", s, r, err)
		}
	})
}

func TestPairRefusesUnknownNames(t *testing.T) {
	if _, err := PairThrust(PairParams{Mounting: "sideways"}); err == nil {
		t.Error("an unknown mounting is accepted")
	}
	if _, err := InducedThrust(1, 1, "guess"); err == nil {
		t.Error("an unknown form is accepted")
	}
}
