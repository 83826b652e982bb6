package shop

import (
	"axlewright/calc/material"
	"axlewright/casting"
	"axlewright/quantity"
)

var stepsStrip = []Step{
	{
		Key: "strip", Title: "Strip", Pictures: []string{"dial-at-heel"},
		Decides: "What can be used again; what the unit was like before anybody touched it.",
		Mistake: "Levering side cups out through the adjuster thread: the first thread is hurt and feigns preload.",
		Fields: []Field{
			{Key: "lash_found", Title: "Lash as found", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: numbered(4), Hint: "Free evidence, nearly always skipped."},
			{Key: "runout_found", Title: "Back-face run-out as found", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm"},
			{Key: "torque_found", Title: "Turning torque as found", Kind: FieldFigure, Dim: quantity.Torque, Unit: "N·m"},
			{Key: "peg_found", Title: "Peg gap as found", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Optional: true},
			{Key: "old_shim", Title: "Old pinion shim", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Hint: "Bag and label it: the best first guess there is."},
			{Key: "old_mark", Title: "Mark on the old pinion", Kind: FieldFigure, Dim: quantity.Number, Optional: true, Hint: "As it stands there, with its sign: -2, 0, +3."},
			{Key: "reuse", Title: "Used again", Kind: FieldText, Optional: true, Hint: "Bearings: no, unless their numbers say so. Crown wheel bolts: new."},
		},
		Cautions: []string{"Drifts of brass on bearings; press behind a shield; fingers away from the gears. Support the unit on a stand, never on a jack alone."},
	},
	{
		Key: "clean", Title: "Clean and crack check", Pictures: []string{"crack-places"},
		Decides: "Is the casting clean to the bone, and is it cracked where it matters?",
		Mistake: "“It looks fine”: the crack is found after three hours of welding.",
		Fields: []Field{
			{Key: "wash", Title: "Washed with", Kind: FieldChoices, Options: []Option{fine("hot aqueous wash"), fine("caustic"), fine("acetone or alcohol, dried"),
				halt(SolventChlorinated, "Arc heat and light turn traces into phosgene: this casting is not welded.")}},
			{Key: "bake", Title: "Baked at", Kind: FieldFigure, Dim: quantity.Temperature, Unit: "°C", Limits: []Limit{celsius(150, 200, "iron", custom)}},
			{Key: "bake_time", Title: "Baked for", Kind: FieldFigure, Dim: quantity.Time, Unit: "min"},
			{Key: "smoke", Title: "Smokes when warmed", Kind: FieldChoice, Options: []Option{fine("no"), look("yes", "It is not clean: bake again.")}},
			{Key: "method", Title: "Crack check by", Kind: FieldChoice, Options: []Option{fine("penetrant"), fine("magnetic particle"), look("eye only", "Cracks at cap ears are not seen by eye.")}},
			{Key: "cracks", Title: "Cracks found", Kind: FieldChoices, Options: []Option{fine(CrackNone),
				halt(CrackEar, "Reject for strengthening."), halt(CrackBore, "Reject for strengthening."),
				look("flange or outer rib, under 25 mm", "May be drilled 3 mm at its ends and repaired, recorded."),
				halt("elsewhere or longer", "Mark it on a photograph and decide with the owner.")}},
			{Key: "finds", Title: "Each find, and where", Kind: FieldText, Optional: true},
		},
		Cautions: []string{
			"Never chlorinated solvent or brake cleaner on anything that will be welded. A smell of cut hay or sore eyes: leave, and see a doctor even if well.",
			"Iron bleeds oil in the oven: vented oven, extraction, rags in a lidded bin. Caustic and rust acid: goggles, gauntlets.",
		},
	},
	{
		Key: "metal", Title: "What metal", Pictures: []string{"swarf"}, For: []Work{WorkPlates, WorkPeg, WorkFixings, WorkBearing},
		Decides: "Which metal it is, which decides whether it may be welded and how.",
		Mistake: "One weld procedure for all donors: a hard white line, and a ping hours later.",
		Fields: []Field{
			metalTest("swarf", "Drill swarf"),
			metalTest("ring", "Struck"),
			metalTest("chip", "Chisel chip"),
			metalTest("spark", "Spark against known pieces"),
			metalTest("tab", "Tag welded on and knocked off"),
			{Key: "hardness", Title: "Hardness on bare metal", Kind: FieldFigure, Dim: quantity.HardnessBrinell, Unit: "HB", Optional: true},
			{Key: "carbon", Title: "Laboratory: carbon", Kind: FieldFigure, Dim: quantity.Share, Unit: "%", Optional: true},
			{Key: "silicon", Title: "Laboratory: silicon", Kind: FieldFigure, Dim: quantity.Share, Unit: "%", Optional: true},
			{Key: "magnesium", Title: "Laboratory: magnesium", Kind: FieldFigure, Dim: quantity.Share, Unit: "%", Optional: true, Hint: "It alone tells ductile iron from grey."},
			{Key: "metal", Title: "Decided", Kind: FieldChoice, Options: []Option{
				fine(MetalSteel), look(MetalMalleable, "By a tried procedure, cold or hot, one of the two."), look(MetalDuctile, "By a tried procedure, cold or hot, one of the two."),
				halt(MetalGrey, "No structural plates are welded on grey iron."), halt(MetalUnknown, "Find out first: a tab, or 10 g of drillings to a laboratory.")}},
		},
		Cautions: []string{"Grinding: guard, wheel for iron, face shield; the dust of iron holds graphite and silica.",
			"The tab is an arc weld: extraction, helmet 10 to 12, nothing washed in chlorinated solvent; local rules on hot work come first."},
	},
	{
		Key: "stations", Title: "Measure the casting", For: []Work{WorkPlates},
		Decides: "Does this casting fall inside what the kit was drawn for; which edges want trimming.",
		Mistake: "Measuring to a flash line instead of clean skin.",
		Fields: []Field{
			{Key: StationItem, Title: "Reading at a station", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: numbered(12), Wanted: 1, Open: true, Optional: true,
				Hint: "The numbered stations of the variant, on clean skin."},
			{Key: "gap", Title: "Gap of the bare plate", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: numbered(12), Wanted: 8, Open: true,
				Limits: []Limit{upTo(2, "3 mm plate", custom)}},
			{Key: "boss", Title: "Boss height", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: numbered(4), Open: true, Optional: true},
			{Key: "wall", Title: "Wall", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: numbered(3), Optional: true},
			{Key: "ear", Title: "Cap ear thickness", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: []string{"crown side", "other side"}, Optional: true},
			{Key: "rear_wall", Title: "Bore centre to rear wall", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Optional: true},
		},
		Cautions: []string{"Plates fresh from the laser carry a burr like a blade: gloves. A bare casting weighs 12 to 20 kg: it stands on the bench, not on a knee."},
	},
}

// metalTest is the field of a test of the metal: its question and its answers
// are those that the chances of the metals are worked out from.
func metalTest(name, title string) Field {
	for _, t := range casting.MetalTests {
		if t.Name == name {
			f := Field{Key: name, Title: title, Hint: t.Ask, Kind: FieldChoice, Optional: true}
			for _, a := range t.Answers {
				o := Option{Word: a, Verdict: NotYet}
				if t.Suits(a) == material.GreyIron {
					o = look(a, "Suits grey iron best.")
				}
				f.Options = append(f.Options, o)
			}
			return f
		}
	}
	panic("there is no test of the metal called " + name)
}

// The words on which identification, stops and stations turn.
const (
	SeenItem    = "seen"    // at identify: what was seen, a place for each feature
	StationItem = "station" // at stations: a reading, a place for each numbered station

	SureYes     = "sure"
	SureNew     = "a new variant"
	ModifiedYes = "yes"

	SolventChlorinated = "chlorinated solvent or brake cleaner"

	CrackNone = "none"
	CrackEar  = "cap ear"
	CrackBore = "bearing bore"

	MetalSteel     = "cast steel"
	MetalMalleable = "malleable iron"
	MetalDuctile   = "ductile iron"
	MetalGrey      = "grey iron"
	MetalUnknown   = "not known"

	VentsOpen   = "every cavity has its vent"
	VentsNone   = "no closed cavity"
	VentMissing = "a cavity has no vent"

	CapsTorqued    = "torqued"
	CapsNotTorqued = "not torqued"
)
