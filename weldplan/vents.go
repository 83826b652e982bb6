package weldplan

import (
	"fmt"
	"math"

	"axlewright/quantity"
)

// A VentPlan is how a cavity breathes, and when that ends.
type VentPlan struct {
	Cavity string   `json:"cavity"`
	Vent   string   `json:"vent"`
	Last   string   `json:"last"` // what is done with it, and when
	Why    string   `json:"why"`
	Notes  []string `json:"notes,omitempty"`
}

// Sizes of vents. Common practice, no source.
const (
	leastHole, mostHole         = 3e-3, 4e-3
	leastUnwelded, mostUnwelded = 6e-3, 8e-3
)

func (j *Job) ventsOf() (plans []VentPlan) {
	for _, v := range j.Cavities {
		if v.Vent == nil { // a stop
			continue
		}
		t := v.Vent
		p := VentPlan{
			Cavity: v.Name,
			Why:    "Gas that cannot get out blows the bead open from behind, and air that cannot get in tears it as it cools.",
		}
		outside := func(x, low, high float64, what string) {
			if x < low || x > high {
				p.Notes = append(p.Notes, fmt.Sprintf("%s is not the usual %s (common practice)", what, quantity.FormatRange(low, high, quantity.Length)))
			}
		}
		if t.Hole.Given() {
			p.Vent = "hole of " + mm(t.Hole.Value)
			outside(t.Hole.Value, leastHole, mostHole, "a hole of "+mm(t.Hole.Value))
		} else {
			p.Vent = mm(t.Unwelded.Value) + " left unwelded"
			outside(t.Unwelded.Value, leastUnwelded, mostUnwelded, mm(t.Unwelded.Value)+" unwelded")
		}
		if t.Run != "" {
			p.Vent += ", in run " + t.Run
		}
		if !t.AtTop {
			p.Notes = append(p.Notes, "put it at the top of the cavity as the casting lies for welding and for filling, or gas and air stay in")
		}
		p.Last = "Open until every other run is finished and the casting is hand-warm; closed last, in one short bead."
		if v.Backfill {
			p.Last = "Open until every run is finished and cold; it is where the filler goes in, and the filler closes it. It is never welded over filler."
		}
		plans = append(plans, p)
	}
	return plans
}

// A Backfill is the resin for one cavity.
type Backfill struct {
	Cavity   string   `json:"cavity"`
	Volume   float64  `json:"volume"` // m³
	Mass     Band     `json:"mass"`   // kg
	Lifts    int      `json:"lifts"`
	Pots     int      `json:"pots"`
	Cure     string   `json:"cure"`
	Limit    string   `json:"limit"`
	Cautions []string `json:"cautions"`
	Source   string   `json:"source"`
}

// Figures for metal-filled epoxy. Common practice, no source, but for the
// strengths, which are published for grouts.
const (
	lightResin, usualResin, heavyResin = 1600.0, 2000.0, 2400.0 // kg/m³
	lift                               = 25e-3                  // m, height poured at once
	pot                                = 0.2                    // kg, mixed at once before it heats itself
)

func (j *Job) backfillsOf() (fills []Backfill) {
	for _, v := range j.Cavities {
		if !v.Backfill {
			continue
		}
		b := Backfill{
			Cavity: v.Name, Volume: v.Volume.Value, Lifts: 1,
			Cure:  "Casting at 30 to 40 °C and oil-free, vent up. 24 h at 20 °C, then 4 h at 60 to 80 °C. The resin's data sheet comes first.",
			Limit: "Filler, sealer and damper, never structure: published epoxy grouts fall from 55 to 124 MPa in compression at room temperature to 7 to 48 MPa at 71 °C, and axle oil runs at 80 to 120 °C. No strength is counted on it.",
			Cautions: []string{
				"Resin sensitises skin: gloves, extraction; no more than " + quantity.Format(pot, quantity.Mass) + " mixed at once, it heats itself.",
				"Stamp or label RESIN FILLED: whoever welds here later breathes it.",
			},
			Source: "trade custom; strengths published for grouts",
		}
		if b.Volume == 0 {
			b.Volume = v.Area.Value * v.Depth.Value
		}
		b.Mass = Band{b.Volume * lightResin, b.Volume * usualResin, b.Volume * heavyResin}
		if v.Resin.Given() {
			b.Mass = Band{b.Volume * v.Resin.Low, b.Volume * v.Resin.Value, b.Volume * v.Resin.High}
		}
		if v.Depth.Given() {
			b.Lifts = max(1, int(math.Ceil(v.Depth.Value/lift-1e-9)))
		}
		b.Pots = max(1, int(math.Ceil(b.Mass.High/pot-1e-9)))
		fills = append(fills, b)
	}
	return fills
}
