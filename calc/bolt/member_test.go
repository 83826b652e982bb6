package bolt

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"
)

func drawMember(t *rapid.T, seat Seat) MemberParams {
	d := rapid.Float64Range(6, 20).Draw(t, "d") * mm
	return MemberParams{
		Bearing: 1.45 * d, Hole: 1.1 * d, Outside: d * rapid.Float64Range(1.2, 8).Draw(t, "D_A"),
		Clamp: d * rapid.Float64Range(0.8, 8).Draw(t, "l_K"), Modulus: 110 * gpa, Seat: seat,
	}
}

// The closed form against the sum of thin discs: dz/(E·π/4·(D(z)² − d_h²)).
func TestMemberResilienceIsTheSumOfItsDiscs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for _, seat := range []Seat{Nut, TappedHole} {
			p := drawMember(t, seat)
			m := must(MemberResilience(p))
			disc := func(z float64) float64 {
				depth := z
				if seat == Nut {
					depth = math.Min(z, p.Clamp-z)
				}
				D := p.Outside
				if p.Outside > p.Bearing {
					D = math.Min(p.Outside, p.Bearing+2*depth*m.TanCone)
				}
				return 1 / (p.Modulus * math.Pi / 4 * (D*D - p.Hole*p.Hole))
			}
			sum := 0.0
			const slices = 200
			for i := range slices {
				a, b := p.Clamp*float64(i)/slices, p.Clamp*float64(i+1)/slices
				sum += quad.Fixed(disc, a, b, 5, nil, 0)
			}
			if !near(m.Resilience, sum, 1e-4) {
				t.Errorf("%s %+v: closed form %g, sum %g", seat, p, m.Resilience, sum)
			}
		}
	})
}

func TestMemberResilienceLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawMember(t, Nut)
		base := must(MemberResilience(p)).Resilience
		stiff := p
		stiff.Modulus *= 2
		if got := must(MemberResilience(stiff)).Resilience; !near(got, base/2, 1e-12) {
			t.Errorf("twice the modulus: %g of %g", got, base)
		}
		thick := p
		thick.Clamp *= 1.2
		if must(MemberResilience(thick)).Resilience <= base {
			t.Error("thicker parts must give more")
		}
		wide := p
		wide.Outside *= 1.1
		if got := must(MemberResilience(wide)).Resilience; got > base {
			t.Errorf("wider parts must not give more: %g of %g", got, base)
		}
	})
}

// The cone of the guideline and the 30° frusta of the handbook are two models of
// the same parts: they must not be far apart for common proportions.
func TestConeAndFrustaAreNeighbours(t *testing.T) {
	for _, grip := range []float64{20, 30, 40, 60} {
		cone := must(MemberResilience(MemberParams{16.63 * mm, 13.5 * mm, 60 * mm, grip * mm, 207 * gpa, Nut}))
		frusta := must(FrustaStiffness(FrustaParams{[]Layer{{grip * mm, 207 * gpa}}, 16.63 * mm, 13.5 * mm, 30 * deg, Nut}))
		if ratio := cone.Resilience * frusta.Stiffness; ratio < 0.75 || ratio > 1.25 {
			t.Errorf("grip %g mm: ratio %.2f", grip, ratio)
		}
	}
}

func TestMemberResilienceRefuses(t *testing.T) {
	good := MemberParams{16.63 * mm, 13.5 * mm, 40 * mm, 30 * mm, 110 * gpa, Nut}
	bad := good
	bad.Hole = 17 * mm
	_, err := MemberResilience(bad)
	refuses(t, "Hole", err)
	bad = good
	bad.Outside = 13 * mm
	_, err = MemberResilience(bad)
	refuses(t, "Outside", err)
	bad = good
	bad.Seat = ""
	_, err = MemberResilience(bad)
	refuses(t, "Seat", err)
	bad = good
	bad.Clamp = 1e-9
	_, err = MemberResilience(bad)
	refuses(t, "Clamp", err)
}
