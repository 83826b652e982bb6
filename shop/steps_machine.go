package shop

import (
	"axlewright/quantity"
	"axlewright/setup"
)

// LockHalf is the lock that also holds half way between two notches.
const LockHalf = "bolted, half notch"

var stepsMachine = []Step{
	{
		Key: "drill", Title: "Drill and tap", Pictures: []string{"guide-hole", "peg-hole"}, For: []Work{WorkPlates, WorkPeg, WorkFixings},
		Decides: "Holes through the guide holes, square and deep enough.",
		Mistake: "Breaking through into a bore or an oil gallery: measure the wall first.",
		Fields: []Field{
			{Key: "wall", Title: "Wall measured before drilling", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm"},
			{Key: "square", Title: "Peg hole out of square, per 30 mm", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", For: []Work{WorkPeg}, Limits: []Limit{upTo(0.10, "to the crown wheel's back face, per 30 mm", custom)}},
			{Key: "holes", Title: "Hole", Kind: FieldText, Places: numbered(12), Open: true, Optional: true, Hint: "thread, drill, depth of full thread"},
		},
		Cautions: []string{"Suction, not an air line, to clear blind holes. Clamp the casting: a tap drill that grips turns it."},
	},
	{
		Key: "caps", Title: "Caps", Pictures: []string{"cap-marks", "cap-register"},
		Decides: "The caps sit on their own casting and cannot walk.",
		Mistake: "Painted faces, or studs and bolts mixed: the cap settles, side preload goes, lash grows.",
		Fields: []Field{
			{Key: "register", Title: "Side clearance in the register", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: []string{"crown side", "other side"}, Bands: items(setup.CapRegister)},
			{Key: "joint", Title: "0.04 mm feeler at the nipped joint", Kind: FieldChoice, Options: []Option{fine("does not enter"), look("enters", "Faces: clean, file, or bore anew.")}},
			{Key: "skimmed", Title: "Skimmed", Kind: FieldChoice, Options: []Option{fine("no"), look("yes", "The bores must be made round again: torque, line-bore.")}},
			{Key: "bolts", Title: "Cap bolts or studs, lot", Kind: FieldPart, Lot: LotBolts, Places: numbered(2), Wanted: 1},
			{Key: "engagement", Title: "Thread engaged in the casting", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm"},
			{Key: "torque", Title: "Torqued to", Kind: FieldFigure, Dim: quantity.Torque, Unit: "N·m", Places: []string{"crown side", "other side"}, Hint: "oiled or dry, with which wrench"},
		},
		Cautions: []string{"12.9 bolts are never pickled or plated: hydrogen breaks them days later. No eye bolts in cap threads to lift by."},
	},
	{
		Key: "bores", Title: "Bores in line", Pictures: []string{"mandrel", "bore-gauge", "bore-depths"},
		Decides: "Accept, scrape, line-bore or scrap.",
		Mistake: "Measuring without the caps torqued.",
		Fields: []Field{
			{Key: "caps", Title: "Caps while the bores were measured", Kind: FieldChoice, Options: capsOptions},
			{Key: "mandrel", Title: "Mandrel through both side bores", Kind: FieldChoice, Options: mandrelOptions},
			{Key: "feeler", Title: "Thickest feeler that enters beside it", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Optional: true, Bands: items(setup.CupGap)},
			{Key: "bore_crown", Title: "Crown-side bore", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: boreDirections, Optional: true, Hint: "Where it was measured after the weld and nothing was cut since, leave it."},
			{Key: "bore_other", Title: "Other side bore", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: boreDirections, Optional: true},
			{Key: "line", Title: "Side bores out of line, over 140 mm", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Bands: []Band{{Item: setup.BoreLine, Over: 0.140}}},
			{Key: "offset", Title: "Pinion axis to side axis", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Bands: items(setup.AxisOffset)},
			{Key: "square", Title: "Out of square, per 100 mm", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Bands: []Band{{Item: setup.AxisSquare, Over: 0.100}}},
			{Key: "decision", Title: "Decided", Kind: FieldChoice, Options: []Option{fine("accepted"), look("scraped", ""), look("line-bored", ""), halt("scrapped", "")}},
		},
	},
	{
		Key: "nose", Title: "Bore the nose for the big pinion bearing", Pictures: []string{"bearing-stack"}, For: []Work{WorkBearing},
		Decides: "Is there wall for it, and what it does to the shim.",
		Mistake: "Forgetting that the new bearing stands higher: gears 0.3 to 1 mm wrong at the first try.",
		Fields: []Field{
			{Key: "wall", Title: "Iron left round the cup", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: numbered(4), Wanted: 1, Limits: []Limit{{Low: metres(6), Kind: "any", Origin: Trade, Source: custom}}},
			{Key: "cup", Title: "Cup interference", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Limits: []Limit{between(0.025, 0.050, "cup standing in iron", custom)}},
			{Key: "cone", Title: "Cone on the pinion", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Limits: []Limit{between(0.013, 0.040, "cone turning", custom)}},
			{Key: "shoulder", Title: "Shoulder out of square", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Limits: []Limit{upTo(0.02, "across", custom)}},
			{Key: "old_stack", Title: "Old bearing, cup and cone together", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm"},
			{Key: "new_stack", Title: "New bearing, cup and cone together", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm"},
			{Key: "where", Title: "Bored by", Kind: FieldText, Optional: true},
		},
		Cautions: []string{"No gloves and no loose sleeves at a turning bar; clamp the casting. Dust of iron holds graphite and silica: suction."},
	},
	{
		Key: "locks", Title: "Adjuster locks", Pictures: []string{"adjuster-lock"},
		Decides: "Which lock, and how fine its steps are.",
		Mistake: "Bending a tab twice; a pin left proud that touches the crown wheel's bolts.",
		Fields: []Field{
			{Key: "kind", Title: "Lock", Kind: FieldChoice, Options: plain("finger and pin", "bolted tab", LockHalf)},
			{Key: "wheel_side", Title: "The crown wheel is on the", Kind: FieldChoice, Options: plain(wordsOf(setup.Sides)...), Hint: "Seen from the pinion flange."},
			{Key: "pitch", Title: "Thread pitch", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm"},
			{Key: "notches", Title: "Notches round", Kind: FieldFigure, Dim: quantity.Number},
			{Key: "clearance", Title: "Clear of the crown wheel's bolts", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Limits: []Limit{{Low: metres(2), Kind: "all round", Origin: Trade, Source: custom}}},
		},
	},
	{
		Key: "stamp", Title: "Stamp the number", Pictures: []string{"stamp-place"},
		Decides: "The number under which it is found for good.",
		Mistake: "Stamping paint, or deep into a rib or ear that pulls.",
		Fields: []Field{
			{Key: "number", Title: "Stamped number", Kind: FieldText, Hint: "Machined pad, 5 to 6 mm, light; away from welds, ears and ribs. Photograph it."},
		},
		Cautions: []string{"Goggles: a stamp or the hammer's face can chip."},
	},
	{
		Key: "paint", Title: "Paint",
		Decides: "Thin, and nowhere that something seats.",
		Mistake: "Paint under a washer: preload relaxes with it.",
		Fields: []Field{
			{Key: "masked", Title: "Masked: gasket face, cap seats, bores, breather, threads, stamp", Kind: FieldChoice, Options: []Option{fine("yes"), look("no", "Clean them before assembly.")}},
			{Key: "paint", Title: "Paint", Kind: FieldText, Optional: true},
		},
		Cautions: []string{"Solvent vapour: ventilate, no flame, no arc near by."},
	},
}
