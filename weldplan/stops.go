package weldplan

import (
	"fmt"

	"axlewright/calc/material"
	"axlewright/quantity"
)

// A Stop is a reason not to strike an arc, and who may set it aside.
type Stop struct {
	What     string `json:"what"`
	Why      string `json:"why"`
	Clear    string `json:"clear"`    // what takes it away
	Override string `json:"override"` // who may go on regardless
	NoPlan   bool   `json:"no_plan"`  // nothing is planned until it is cleared
}

// Who may set a stop aside.
const (
	nobody   = "nobody"
	engineer = "a welding engineer, in writing, with a procedure trial on the same metal"
	welder   = "the welder, once it is put right"
)

// greyMost is the chance of grey or unknown iron from which on a job stops. Our rule.
const greyMost = 0.05

// coldest that the steel and iron may be at all, and the air's part in it. Common
// practice, no source.
const coldestMetal = zeroCelsius + 5

// stopsOf lists what keeps a job from being welded.
func (j *Job) stopsOf() (stops []Stop) {
	add := func(s Stop) { stops = append(stops, s) }
	metal := j.Casting.Metal
	grey := metal.chance(material.GreyIron)
	switch {
	case grey >= 0.5:
		add(Stop{
			What: "Grey iron", NoPlan: true, Override: nobody + " for plates that carry load; closing a crack is another job, by " + engineer,
			Why:   "It has no stretch beside a weld: a hard white line forms and it cracks, sometimes hours later.",
			Clear: "Another casting.",
		})
	case grey+metal.Unknown >= 0.5 || metal.plannedFor() == "":
		add(Stop{
			What: "Unknown metal", NoPlan: true, Override: nobody,
			Why:   "One procedure for all castings is how they crack.",
			Clear: "Swarf, chip, spark and ring, then a 6 mm tab welded where it does not matter and knocked off from the weld side; best, a laboratory's carbon and silicon.",
		})
	case grey+metal.Unknown > greyMost:
		add(Stop{
			What: "Grey or unknown iron not ruled out", Override: nobody,
			Why:   fmt.Sprintf("There is a chance of %s that it is grey or something else (stop above %s, our rule).", quantity.Chance(grey+metal.Unknown), quantity.Percent(greyMost)),
			Clear: "The tab test, or an analysis.",
		})
	}
	s := &j.Shop
	if s.Cleaned == Chlorinated {
		add(Stop{
			What: "Chlorinated solvent", Override: nobody,
			Why:   "The arc turns traces of it into phosgene, which harms the lungs hours later.",
			Clear: "Hot aqueous wash, bake 1 to 2 h at 150 to 200 °C, wipe, and no brake cleaner near it again.",
		})
	}
	if s.Cleaned == NotKnown {
		add(Stop{
			What: "Not known what it was cleaned with", Override: nobody,
			Why:   "It may have been chlorinated solvent: phosgene.",
			Clear: "Hot aqueous wash, then bake 1 to 2 h at 150 to 200 °C.",
		})
	}
	if s.Resin {
		add(Stop{
			What: "Resin inside", Override: nobody,
			Why:   "Burning resin gives toxic fume, gas blows the bead open, and a closed cavity can burst.",
			Clear: "The resin out down to bare metal, or another casting.",
		})
	}
	if s.Bearings {
		add(Stop{
			What: "Bearings in", Override: nobody,
			Why:   "Welding current through rollers pits them, and heat takes their temper.",
			Clear: "Bearings out, dummy bearings or the mandrel in, earth lead on the casting.",
		})
	}
	if s.Damp || s.Air.Value < coldestMetal {
		add(Stop{
			What: "Too cold or damp", Override: welder,
			Why:   "Water in the joint is hydrogen in the weld, and cold metal quenches it.",
			Clear: "All of the casting and the plates dry and above 20 °C, without a torch on one corner.",
		})
	}
	for _, v := range j.Cavities {
		if v.Vent == nil {
			add(Stop{
				What: "Closed cavity without a vent: " + v.Name, Override: nobody,
				Why:   "Hot gas blows through the last bead, or the cavity bursts.",
				Clear: "A hole of 3 to 4 mm, or 6 to 8 mm left unwelded, at the top of the cavity.",
			})
		}
	}
	for i := range j.Plates {
		steel := steelFigures(j.Plates[i].Steel)
		if steel.Family == material.TreatedSteel || steel.Family == material.CaseHardenedSteel {
			info, _ := material.FamilyOf(steel.Family)
			add(Stop{
				What: fmt.Sprintf("Plate %s of %s (%s)", j.Plates[i].Name, steel.Name, steel.Family), Override: engineer,
				Why: info.Weld, Clear: "The plate in S355 or S700MC.",
			})
		}
	}
	return stops
}
