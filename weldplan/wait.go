package weldplan

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// A Pause is how long to wait before a run so that it does not begin too warm.
type Pause struct {
	Before float64 `json:"before"` // s, after the run before it
	Start  float64 `json:"start"`  // K, there, when it begins
	Body   float64 `json:"body"`   // K, of the casting as a whole
}

// Figures of the lumped estimate of cooling. Round figures of steel and iron; the
// loss to the air is free convection and radiation of rusty iron together
// (common practice, no source).
const (
	specificHeat = 500.0 // J/(kg·K)
	conductivity = 45.0  // W/(m·K)
	heatDensity  = 7600.0 * specificHeat
	toAir        = 12.0 // W/(m²·K)
	longestPause = 3600.0
)

// A warmRun is a run as a source of heat.
type warmRun struct {
	middle  r3.Vec
	length  float64 // m
	heat    float64 // J, all passes
	metre   float64 // J/m, of all passes
	wall    float64 // m, of casting and plate together
	seconds float64 // from its first arc to its last
	sink    bool    // a bar close by takes its heat at once
}

// pausesOf walks through an order and says how long to wait before each run, from a
// casting warmed to begin. The
// casting as a whole is one lump that warms by each run and cools to the air and
// into the heat sinks' mass; round each run the heat spreads in the plane of the
// wall as from a line of its length (Rykalin; Carslaw and Jaeger, Conduction of
// Heat in Solids),
//
//	ΔT = q/(d·√(4·π·λ·ρ·c·t))·exp(−r²/(4·a·t))·erf(l/(4·√(a·t))),  a = λ/(ρ·c),
//
// added on top. Counting both errs towards waiting too long.
func pausesOf(runs []warmRun, order []Step, mass, skin, air, begin, most float64) []Pause {
	pauses := make([]Pause, len(order))
	capacity := mass * specificHeat
	decay := toAir * skin / capacity // 1/s
	body, now := max(air, begin), 0.0
	type past struct {
		run int
		at  float64
	}
	var done []past
	local := func(run int, at float64) float64 {
		sum := 0.0
		for _, p := range done {
			t := at - p.at
			s := &runs[p.run]
			if t <= 0 || s.sink {
				continue
			}
			r := math.Max(0, r3.Norm(r3.Sub(runs[run].middle, s.middle))-s.length/2)
			reach := 2 * math.Sqrt(conductivity/heatDensity*t)
			spread := math.Exp(-r*r/(reach*reach)) * math.Erf(s.length/2/reach)
			sum += s.metre / (s.wall * math.Sqrt(4*math.Pi*conductivity*heatDensity*t)) * spread
		}
		return sum
	}
	for i, s := range order {
		bodyAt := func(wait float64) float64 { return air + (body-air)*math.Exp(-decay*wait) }
		warm := func(wait float64) float64 { return bodyAt(wait) + local(s.Run, now+wait) }
		wait := 0.0
		if i > 0 && warm(1) > most {
			low, high := 1.0, longestPause
			if warm(high) > most {
				low = high
			}
			for high-low > 1 {
				if mid := (low + high) / 2; warm(mid) > most {
					low = mid
				} else {
					high = mid
				}
			}
			wait = high
		}
		pauses[i] = Pause{Before: wait, Start: warm(math.Max(wait, 1)), Body: bodyAt(wait)}
		r := &runs[s.Run]
		body = bodyAt(wait+r.seconds) + r.heat/capacity
		now += wait + r.seconds
		done = append(done, past{s.Run, now})
	}
	return pauses
}
