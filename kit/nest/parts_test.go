package nest

import (
	"math"

	"axlewright/kit/outline"
)

// mm makes an outline of x, y and bulge in millimetres.
func mm(vertices ...[3]float64) outline.Loop {
	l := make(outline.Loop, len(vertices))
	for i, v := range vertices {
		l[i] = outline.Vertex{At: outline.Point{X: v[0] * 1e-3, Y: v[1] * 1e-3}, Bulge: v[2]}
	}
	return l
}

// kit is a set of plates like those of a nose casting: a pair of side plates
// with a curved foot, a peg plate, a triangular rib, a strap and a disc.
func kit(sets int) []Part {
	side := mm([3]float64{0, 0, 0}, [3]float64{150, 0, 0}, [3]float64{165, 40, 0.2}, [3]float64{120, 95, 0},
		[3]float64{60, 110, -0.3}, [3]float64{20, 80, 0}, [3]float64{0, 70, 0})
	rib := mm([3]float64{0, 0, 0}, [3]float64{90, 0, 0}, [3]float64{0, 60, -0.25})
	strap := mm([3]float64{0, 0, 0}, [3]float64{110, 0, 1}, [3]float64{110, 30, 0}, [3]float64{0, 30, 1})
	peg := mm([3]float64{0, 0, 0}, [3]float64{80, 0, 0}, [3]float64{80, 70, 0.4}, [3]float64{0, 70, 0})
	return []Part{
		{Name: "side L", Outline: side, Count: sets, Pair: "side"},
		{Name: "side R", Outline: side.Mirrored(), Count: sets, Pair: "side"},
		{Name: "peg plate", Outline: peg, Count: sets},
		{Name: "rib L", Outline: rib, Count: sets, Pair: "rib"},
		{Name: "rib R", Outline: rib.Mirrored(), Count: sets, Pair: "rib"},
		{Name: "strap", Outline: strap, Count: 2 * sets, Grain: Along},
		{Name: "disc", Outline: outline.Circle(outline.Point{}, 0.035), Count: sets},
	}
}

func usual() Rules {
	r := Usual(3e-3)
	r.Tries = 2
	return r
}

// bracket is an angle plate; two of them interlock.
func bracket() outline.Loop {
	return mm([3]float64{0, 0, 0}, [3]float64{120, 0, 0}, [3]float64{120, 40, 0}, [3]float64{40, 40, 0}, [3]float64{40, 120, 0}, [3]float64{0, 120, 0})
}

const deg = math.Pi / 180
