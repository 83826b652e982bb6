package weldplan

import (
	"axlewright/calc/material"
)

// A ListItem is one thing to do and tick off, with what counts as good.
type ListItem struct {
	Do     string `json:"do"`
	Good   string `json:"good,omitempty"`
	Source string `json:"source"`
}

// beforeList is what is checked before the first arc.
func beforeList(j *Job, steelCasting bool) []ListItem {
	list := []ListItem{
		{"Metal: tab test or analysis on this variant, written down", "tag bends or breaks in its own bead", "a trade forum of engineers"},
		{"Wash, bake 1 to 2 h at 150 to 200 °C, wipe, wash again", "no smoke when warmed", customary},
		{"Dye penetrant on ears, ribs, stud holes, nose; then clean it off", "no red line; a crack into a bore or cap ear ends the job", customary},
		{"Skin ground bright 12 to 15 mm either side of every run; plate edges free of dross, chamfered", "bright metal", customary},
		{"Fit gaps, feeler at every run", "0 to 1 mm; never above half the plate", customary},
		{"Bearings out; dummies or ground mandrel in; caps at full torque; flange bolted to a plate of 20 to 25 mm", "mandrel turns by hand, cold", customary},
		{"Each bore with a bore gauge at 0, 45 and 90 degrees, and the dial on the flange: write them down", "the figures to compare with afterwards", customary},
		{"Earth lead on the casting, never through a bearing; extraction at the arc; screens; extinguisher", "", customary},
	}
	if len(j.Cavities) > 0 {
		list = append(list, ListItem{"Every cavity has its vent open, at the top", "a wire goes in", customary})
	}
	if j.Casting.Peg != nil {
		list = append(list, ListItem{"Peg face: distance to the mandrel and squareness, written down", "0.1 mm in 30 mm", customary})
	}
	if steelCasting {
		list = append(list, ListItem{"Metal temperature, stick or gauge, at three places", "not below the preheat of this plan", "EN 1011-2"})
	}
	return list
}

// afterList is what is checked when the casting is cold.
func afterList(j *Job) []ListItem {
	list := []ListItem{
		{"Cool in the jig", "below 50 °C before a bolt is touched", customary},
		{"Mandrel out and in again by hand, caps at full torque", "0.03 to 0.04 mm feeler does not go in", customary},
		{"Each bore at 0, 45 and 90 degrees against the figures before", "side bores in line within 0.05 mm over about 140 mm", customary},
		{"Flange face against the plate", "0.10 mm feeler does not go in", customary},
		{"Nose bore square to side bores", "0.03 mm in 100 mm", customary},
		{"Eye and glass on every toe and every crater", "no undercut, no crack, no crater left hollow", customary},
		{"Dye penetrant on all toes after 24 h: cracks come late", "no red line", customary},
		{"Free, scrape with blue, line-bore or scrap: decided, signed, written down", "", customary},
	}
	if j.Casting.Peg != nil {
		list = append(list, ListItem{"Peg face: distance and squareness against the figures before", "0.1 mm in 30 mm", customary})
	}
	if len(j.Cavities) > 0 {
		list = append(list, ListItem{"Vents closed or filled only now; air test at 55 kPa (8 psi) for 45 s, never above 103 kPa (15 psi)", "falls by less than 35 kPa (5 psi)", "a published workshop manual"})
	}
	return list
}

// A Caution belongs to a step; two lines at most.
type Caution struct {
	Step string `json:"step"`
	Text string `json:"text"`
}

func cautionsOf(j *Job, f Filler) []Caution {
	list := []Caution{
		{"cleaning", "No chlorinated solvent or brake cleaner: with the arc it makes phosgene. Hay smell or irritation: out, and see a doctor even if well."},
		{"welding", "Welding fume causes cancer: extraction at the arc, and a mask if it is not enough. Shade 10 to 12, no bare skin, screens."},
		{"welding", "Hot work: 10 m clear, extinguisher at hand, watch for 60 min after. Clamp the casting; it is heavy and hot."},
	}
	if f.nickel {
		list = append(list, Caution{"welding", "Nickel in the fume is worse still: extraction and a respirator, always."})
	}
	if len(j.Cavities) > 0 {
		list = append(list, Caution{"vents", "A closed hollow can burst: vent every one before heat. Air test with regulator and relief valve, face away."})
	}
	list = append(list, Caution{"law", "This plan approves nothing. Local codes, the vehicle inspectorate and a licensed welding engineer come first; some countries want a qualified procedure and welder."})
	return list
}

// weldableSteel says whether a family takes the formulas of steel.
func weldableSteel(f material.Family) bool { return f == material.CastSteel }
