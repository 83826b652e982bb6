package shop

import (
	"axlewright/quantity"
	"axlewright/setup"
)

var stepsWeld = []Step{
	{
		Key: "plates", Title: "Trim the plates", For: []Work{WorkPlates},
		Decides: "Do the plates sit; is every closed cavity vented?",
		Mistake: "Dross and oxide left on laser-cut edges: pores in the weld.",
		Fields: []Field{
			{Key: "kit", Title: "Kit and batch", Kind: FieldPart, Lot: LotKits, Hint: "The marks on the plates: kit, revision, batch."},
			{Key: "trim", Title: "Trimmed: which edge, how much", Kind: FieldText, Optional: true},
			{Key: "fit", Title: "Gap at the weld, worst", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: numbered(12), Wanted: 1, Open: true,
				Limits: []Limit{upTo(1, "any plate", custom), upTo(2, "bridged with care; never above half the plate", custom)}},
			{Key: "bright", Title: "Bright metal 12 to 15 mm beside every weld", Kind: FieldChoice, Options: []Option{fine("yes"), look("no", "The hard skin of the casting stays out of the weld.")}},
			{Key: "vents", Title: "Vents", Kind: FieldChoice, Options: []Option{fine(VentsOpen), fine(VentsNone),
				halt(VentMissing, "A closed cavity bursts when heated.")}, Hint: "3 to 4 mm hole, or 6 to 8 mm left unwelded, at the top of each closed cavity."},
		},
		Cautions: []string{"A vent in each closed cavity before preheat, cut or weld: fuel and solvent left inside explode.",
			"Grinding: guard, wheel for iron, face shield. Laser edges carry a burr like a blade: deburr, gloves."},
	},
	{
		Key: "jig", Title: "Jig", Pictures: []string{"mandrel"}, For: []Work{WorkPlates, WorkPeg},
		Decides: "Is it held so that it can only move where it is seen to move?",
		Mistake: "Welding the bare casting on the bench: side bores 0.1 to 0.3 mm out.",
		Fields: []Field{
			{Key: "caps", Title: "Caps on and torqued over mandrel or dummy bearings", Kind: FieldChoice, Options: []Option{fine("yes"), halt("no", "The bores will go out of round.")}},
			{Key: "mandrel", Title: "Mandrel turns by hand, cold", Kind: FieldChoice, Options: []Option{fine("free"), look("tight", "Find out why before welding.")}},
			{Key: "dial", Title: "Dial at the flange face", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm"},
			{Key: "bore_crown", Title: "Crown-side bore before welding", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: boreDirections, Optional: true, Hint: "Caps torqued. What welding moved is told by it."},
			{Key: "bore_other", Title: "Other side bore before welding", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: boreDirections, Optional: true},
		},
		Cautions: []string{"Earth lead to the part, never through bearings: weld with bearings out."},
	},
	{
		Key: "weld", Title: "Tack and weld", Pictures: []string{"weld-turns"}, For: []Work{WorkPlates, WorkPeg},
		Decides: "Each run: where, how hot, with what, by whom.",
		Mistake: "One run right round: 0.3 to 0.5 mm shrinkage over 150 mm, caps pulled in.",
		Papers:  []Paper{PaperWeldLog},
		Fields: []Field{
			{Key: "method", Title: "Method", Kind: FieldChoice, Options: []Option{fine("cold, short runs"), fine("hot, whole casting"), fine("steel, no preheat"),
				halt("one corner with a torch", "The worst of both: cold iron pulls against hot.")}},
			{Key: "filler", Title: "Filler and batch", Kind: FieldPart, Lot: LotFiller},
			{Key: "start", Title: "Casting warm at the start", Kind: FieldFigure, Dim: quantity.Temperature, Unit: "°C", Places: numbered(12), Wanted: 1, Open: true,
				Limits: []Limit{celsius(20, noEnd, "dry", custom)}},
			{Key: "interpass", Title: "Between runs", Kind: FieldFigure, Dim: quantity.Temperature, Unit: "°C", Places: numbered(12), Wanted: 1, Open: true,
				Limits: []Limit{when("method", "cold, short runs", celsius(noEnd, 50, "cold method on iron", published)),
					when("method", "hot, whole casting", celsius(150, 250, "whole casting, ductile or malleable", custom)),
					celsius(noEnd, 100, "700 MPa plate", published)}},
			{Key: "amps", Title: "Amps", Kind: FieldFigure, Dim: quantity.Current, Unit: "A", Places: numbered(12), Wanted: 1, Open: true, Hint: "One place for each piece of the kit.",
				Limits: []Limit{{Low: ampere(80), High: ampere(120), Kind: "3 mm plate, fillet", Origin: Trade, Source: published},
					{Low: ampere(135), High: ampere(175), Kind: "4.8 mm plate, fillet", Origin: Trade, Source: published},
					{Low: ampere(170), High: ampere(200), Kind: "6 mm plate, fillet", Origin: Trade, Source: published}}},
			{Key: "runs", Title: "Runs", Kind: FieldFigure, Dim: quantity.Number, Places: numbered(12), Wanted: 1, Open: true},
			{Key: "volts", Title: "Volts", Kind: FieldFigure, Dim: quantity.Voltage, Unit: "V", Open: true, Optional: true, Run: true},
			{Key: "minutes", Title: "From first arc to last, pauses for heat left out", Kind: FieldFigure, Dim: quantity.Time, Unit: "min", Open: true, Optional: true, Run: true},
			{Key: "lot", Title: "Filler lot", Kind: FieldLink, Card: KindLot, Lot: LotFiller, Open: true, Optional: true, Run: true},
			{Key: "process", Title: "Process", Kind: FieldChoice, Open: true, Optional: true, Run: true, Options: plain("TIG", "MAG", "stick")},
			{Key: "position", Title: "Position", Kind: FieldChoice, Open: true, Optional: true, Run: true, Options: plain("flat", "horizontal", "vertical", "overhead")},
			{Key: "plate", Title: "Thickness of the plate", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Open: true, Optional: true, Run: true},
			{Key: "length", Title: "Length welded", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Open: true, Optional: true, Run: true},
			{Key: "watch", Title: "Fire watch kept until", Kind: FieldText, Optional: true, Hint: "60 minutes after the last arc"},
		},
		Cautions: []string{
			"Extraction at the arc and a respirator, however short the job: welding fume causes cancer, nickel filler worse. Helmet 10 to 12, screens; not with a pacemaker.",
			"Clear 10 m or shield, extinguisher at hand, watch for 60 minutes after. Local rules on hot work come first.",
		},
	},
	{
		Key: "cooled", Title: "After the weld", Pictures: []string{"mandrel", "bore-gauge", "flange-flat"}, For: []Work{WorkPlates, WorkPeg},
		Decides: "Free, scrape with blue, line-bore, or scrap.",
		Mistake: "Out of the jig warm: it moves on the bench.",
		Fields: []Field{
			{Key: "temperature", Title: "Out of the jig at", Kind: FieldFigure, Dim: quantity.Temperature, Unit: "°C", Limits: []Limit{celsius(noEnd, 50, "in the jig", custom)}},
			{Key: "mandrel", Title: "Mandrel out and in by hand", Kind: FieldChoice, Options: mandrelOptions},
			{Key: "caps", Title: "Caps while the bores were measured", Kind: FieldChoice, Options: capsOptions},
			{Key: "bore_crown", Title: "Crown-side bore", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: boreDirections, Hint: "0° along the joint of the cap, 90° through its crown."},
			{Key: "bore_other", Title: "Other side bore", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: boreDirections},
			{Key: "flange", Title: "Flange face out of flat", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Bands: items(setup.FaceFlat)},
			{Key: "square", Title: "Nose to side bores out of square, per 100 mm", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Bands: []Band{{Item: setup.AxisSquare, Over: 0.100}}},
			{Key: "toes", Title: "Penetrant on the toes of the welds after 24 h", Kind: FieldChoice, Options: []Option{fine("clean"), halt("cracked", "Cracks that come late grow on.")}},
			{Key: "decision", Title: "Decided", Kind: FieldChoice, Options: []Option{fine("free"), look("scrape", ""), look("line-bore", ""), halt("scrap", "")}},
		},
		Cautions: []string{"Hot iron looks like cold iron: gloves until it has been measured. Penetrant and its cleaner: ventilate, no flame, no arc."},
	},
	{
		Key: "resin", Title: "Fill the cavities", Pictures: []string{"resin-fill"}, For: []Work{WorkPlates},
		Decides: "Filler, sealer and damper; not structure, and soft when hot.",
		Mistake: "Resin before the last weld, or on an oily wall. A later weld over resin gives toxic fume.",
		Fields: []Field{
			{Key: "resin", Title: "Resin and batch", Kind: FieldPart, Lot: LotResin, Optional: true},
			{Key: "mass", Title: "Poured", Kind: FieldFigure, Dim: quantity.Mass, Unit: "g", Optional: true},
			{Key: "casting", Title: "Casting at", Kind: FieldFigure, Dim: quantity.Temperature, Unit: "°C", Limits: []Limit{celsius(30, 40, "pouring", custom)}, Optional: true},
			{Key: "cure", Title: "Cured", Kind: FieldText, Optional: true, Hint: "24 h at 20 °C, then 4 h at 60 to 80 °C; the data sheet wins."},
			{Key: "label", Title: "Stamped or labelled RESIN FILLED", Kind: FieldChoice, Optional: true, Options: []Option{fine("yes"), look("no", "The next welder must know.")}},
		},
		Cautions: []string{"Resin makes skin allergic: nitrile gloves, no solvent on skin, extraction. More than 200 g in one pot heats itself.",
			"Cured resin is neither ground dry nor welded."},
	},
	{
		Key: "leak", Title: "Leak test", Pictures: []string{"leak-test"},
		Decides: "Does it hold air before it is painted?",
		Mistake: "Testing after paint: paint hides it for a month.",
		Fields: []Field{
			{Key: "pressure", Title: "Air at", Kind: FieldFigure, Dim: quantity.Pressure, Unit: "kPa",
				Limits: []Limit{{High: pascal(103e3), Kind: "seals fail above", Origin: Trade, Source: published, Hard: true}}},
			{Key: "fall", Title: "Fell in 45 s by", Kind: FieldFigure, Dim: quantity.Pressure, Unit: "kPa",
				Limits: []Limit{{High: pascal(35e3), Kind: "from 55 kPa (8 psi)", Origin: Trade, Source: published}}},
			{Key: "finds", Title: "Bubbles where", Kind: FieldText, Optional: true},
			{Key: "repair", Title: "Repaired how", Kind: FieldText, Optional: true, Hint: "Pinholes to 6 mm cleaned and filled; bigger drilled, tapped and plugged."},
		},
		Cautions: []string{"55 kPa (8 psi) and never over 103 kPa (15 psi): regulator and relief valve, face away, never shop-line pressure. Local rules on pressure tests come first."},
	},
}

var capsOptions = []Option{fine(CapsTorqued), halt(CapsNotTorqued, "Bores change by 0.02 to 0.05 mm when the caps are torqued: measure again.")}

// boreDirections are where a bore is measured: along the joint, aslant, through
// the crown of the cap.
var boreDirections = []string{"0°", "45°", "90°"}

var mandrelOptions = []Option{fine(string(setup.MandrelFree)), look(string(setup.MandrelStiff), "Blue it: scrape or bore."), halt(string(setup.MandrelBlocks), "Line-bore or scrap.")}

func ampere(a float64) *float64 { return &a }
func pascal(p float64) *float64 { return &p }
