package bolt

import (
	"math"
	"testing"

	"axlewright/internal/published"

	"pgregory.net/rapid"
)

func TestShankStiffnessPublished(t *testing.T) {
	published.Check(t, []published.Row{
		{Name: "1/2-20 UNF, l_t 1.095, l_d 0.25 in, Mlbf/in", Printed: "3.69",
			Got:    must(ShankStiffness(ShankStiffnessParams{0.25 * inch, 1.095 * inch, 0.1963 * inch * inch, 0.1599 * inch * inch, 30e3 * kpsi})) / (lbf / inch) / 1e6,
			Source: "Shigley's Mechanical Engineering Design, 9th ed., ex. 8-2 (from memory)"},
	})
}

// A tapped M12 stud worked out by hand, term by term.
func TestBoltResilienceDerived(t *testing.T) {
	r := must(BoltResilience(BoltResilienceParams{
		Sections: []Section{{30 * mm, 12 * mm}, {10 * mm, 9.853 * mm}},
		Diameter: 12 * mm, Core: 9.853 * mm, Modulus: 205 * gpa, Head: Hexagon, Seat: TappedHole, SeatModulus: 110 * gpa,
	}))
	const source = "derived: l/(E·A) of each length by hand, lengths of VDI 2230-1:2015, 5.1.1.1 (from memory)"
	nm := func(x float64) float64 { return x * 1e9 } // m/N to 1e-6 mm/N
	published.Check(t, []published.Row{
		{Name: "head 6/(205000·113.097)", Got: nm(r.Head), Printed: "0.25879", Source: source},
		{Name: "grip 30/(205000·113.097) + 10/(205000·76.247)", Got: nm(r.Grip), Printed: "1.93371", Source: source},
		{Name: "thread 6/(205000·76.247)", Got: nm(r.Thread), Printed: "0.38386", Source: source},
		{Name: "hole 3.96/(110000·113.097)", Got: nm(r.Seat), Printed: "0.31831", Source: source},
		{Name: "whole, 1e-6 mm/N", Got: nm(r.Resilience), Printed: "2.89466", Source: source},
	})
}

func TestBoltResilienceLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(5, 24).Draw(t, "d") * mm
		p := BoltResilienceParams{
			Sections: []Section{{d * rapid.Float64Range(0.5, 10).Draw(t, "l"), d}}, Diameter: d, Core: 0.83 * d,
			Modulus: 205 * gpa, Head: Hexagon, Seat: Nut, SeatModulus: 205 * gpa,
		}
		whole := must(BoltResilience(p))
		bare := 1 / must(ShankStiffness(ShankStiffnessParams{p.Sections[0].Length, 0, math.Pi / 4 * d * d, 1, p.Modulus}))
		if !near(whole.Grip, bare, 1e-12) || whole.Resilience <= bare {
			t.Errorf("grip %g, bare %g, whole %g", whole.Grip, bare, whole.Resilience)
		}
		socket := p
		socket.Head = Socket
		if must(BoltResilience(socket)).Resilience >= whole.Resilience {
			t.Error("a socket head must be stiffer than a hexagon")
		}
		stiff := p
		stiff.Modulus, stiff.SeatModulus = 2*p.Modulus, 2*p.SeatModulus
		if got := must(BoltResilience(stiff)).Resilience; !near(got, whole.Resilience/2, 1e-12) {
			t.Errorf("twice the modulus gives %g of %g", got, whole.Resilience)
		}
	})
}

func TestBoltResilienceRefuses(t *testing.T) {
	good := BoltResilienceParams{[]Section{{10 * mm, 12 * mm}}, 12 * mm, 10 * mm, 205 * gpa, Hexagon, Nut, 205 * gpa}
	bad := good
	bad.Sections = nil
	_, err := BoltResilience(bad)
	refuses(t, "Sections", err)
	bad = good
	bad.Core = 13 * mm
	_, err = BoltResilience(bad)
	refuses(t, "Core", err)
	bad = good
	bad.Seat = "glue"
	_, err = BoltResilience(bad)
	refuses(t, "Seat", err)
	_, err = ShankStiffness(ShankStiffnessParams{0, 0, 1, 1, 1})
	refuses(t, "ThreadLength", err)
}
