package worked_test

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"axlewright/axle"
	"axlewright/calc/material"
	"axlewright/calc/weld"
	"axlewright/weldplan"
)

// millimetres is a length without doubt, typed in millimetres.
func millimetres(v float64) (l axle.Length) {
	l.Number = axle.Number{Value: v * 1e-3, Low: v * 1e-3, High: v * 1e-3, Origin: axle.Measured, Text: fmt.Sprintf("%g mm", v)}
	return l
}

func degrees(v float64) (d axle.Temperature) {
	d.Number = axle.Number{Value: v + 273.15, Low: v + 273.15, High: v + 273.15, Origin: axle.Measured}
	return d
}

func placeAt(x, y, z float64) weldplan.Place {
	return weldplan.Place{At: r3.Vec{X: x * 1e-3, Y: y * 1e-3, Z: z * 1e-3}, Given: true}
}

// stripOn is a bar of cast steel, 600 long, 50 wide and 40 deep, held at one end,
// with a thin strip welded along the middle of its upper face, of its lower face,
// or of both.
//
//	    strip, one fillet along the middle
//	 ___________________________________________
//	|___________________________________________|  40 mm deep
//	head bore                           tail bore
//	|<----------------- 600 mm ---------------->|
func stripOn(faces ...weldplan.Side) *weldplan.Job {
	j := &weldplan.Job{Name: "bar"}
	j.Casting = weldplan.Casting{
		Variant: "T31", Metal: weldplan.Metal{Grade: "GE240", Families: []weldplan.Chance{{Family: material.CastSteel, Chance: 1}}},
		Limbs: []weldplan.Limb{{
			Name: "bar", From: placeAt(0, 0, 0), To: placeAt(600, 0, 0), Width: millimetres(50), Depth: millimetres(40), Across: weldplan.PlusY,
		}},
		Bores: []weldplan.Bore{
			{Name: "head bore", Role: weldplan.HeadBore, At: placeAt(0, 0, 0), On: "bar"},
			{Name: "tail bore", Role: weldplan.TailBore, At: placeAt(600, 0, 0), On: "bar"},
		},
	}
	j.Casting.Mass.Number = axle.Number{Value: 9.4, Low: 9.4, High: 9.4, Origin: axle.Measured}
	j.Casting.Skin.Number = axle.Number{Value: 0.11, Low: 0.11, High: 0.11, Origin: axle.Measured}
	j.Shop = weldplan.Shop{Process: weldplan.TIG, Air: degrees(20), Cleaned: weldplan.Aqueous}
	for _, face := range faces {
		z := 20 * face.Vec().Z
		plate := weldplan.Plate{Name: "strip " + string(face), Steel: "S355", Thickness: millimetres(1.6)}
		plate.Area.Number = axle.Number{Value: 1e-4, Origin: axle.Measured} // so small that it holds nothing
		plate.Runs = []weldplan.Run{{
			Name: "run " + string(face), From: placeAt(0, 0, z), To: placeAt(600, 0, z), On: "bar", Side: face,
			Wall: millimetres(40), Joint: weldplan.Lap, Position: weldplan.Flat,
		}}
		j.Plates = append(j.Plates, plate)
	}
	return j
}

// A fillet along the whole of a bar: from the arc to how far the bar bows.
//
// Wanted: the heat of the run, its pull, and how far the bores at the ends tip out
// of line; by hand, and by the plan.
//
// Source: EN 1011-1:1998, 19; White, Leggatt and Dwight, 1980 (both from memory);
// beam theory.
func Example_weldplan1BarWeldedOnOneSide() {
	plan := weldDone(weldplan.Make(stripOn(weldplan.PlusZ), nil, weldplan.Options{}))
	run := plan.Runs[0]

	// 1. Heat: 0.6·U·I/v, with the volts of the load line.
	amps, speed := run.Amps.Used.First, run.Arc.Speed.First
	heat := weldDone(weld.HeatInput(weld.HeatInputParams{Process: weld.TIG, Voltage: 10 + 0.04*amps, Current: amps, Speed: speed}))
	fmt.Printf("1. %.0f A at %.1f mm/s: %.0f J/mm; the plan says %.0f\n", amps, speed*1e3, heat/1e3, run.Arc.Heat.First/1e3)

	// 2. Pull: 0.2 kN for each J/mm.
	pull := weldDone(weld.TendonForce(heat))
	fmt.Printf("2. pull %.0f kN\n", pull/1e3)

	// 3. Bow of the bar, 20 mm off its middle.
	bow := weldDone(weld.TendonMovement(weld.TendonParams{
		Force: pull, Offset: 20e-3, Length: 0.6, Area: 0.05 * 0.04, SecondMoment: 0.05 * math.Pow(0.04, 3) / 12, Modulus: 206e9,
	}))
	fmt.Printf("3. shortens by %.3f mm, bows by %.2f mm\n", bow.Shortening*1e3, bow.Bow*1e3)

	// 4. A bar bent evenly leaves its chord at either end at 4·bow/length; over the
	// whole length a bore tips by four times the bow.
	fmt.Printf("4. a bore tips by %.1f mm over the length\n", 4*bow.Bow*1e3)
	for _, m := range plan.Sequence.Movements {
		if m.What == "pinion bores: head bore tips about y" {
			fmt.Printf("   the plan says %.1f mm, %.1f to %.1f\n", math.Abs(m.Moves)*1e3, math.Min(math.Abs(m.Low), math.Abs(m.High))*1e3, math.Max(math.Abs(m.Low), math.Abs(m.High))*1e3)
		}
	}

	// Output:
	// 1. 63 A at 1.7 mm/s: 278 J/mm; the plan says 278
	// 2. pull 56 kN
	// 3. shortens by 0.081 mm, bows by 0.91 mm
	// 4. a bore tips by 3.6 mm over the length
	//    the plan says 3.6 mm, 1.8 to 5.5
}

// The same bar with a second strip on its lower face.
//
// Wanted: what is left of the bow, and what the plan says of preheat.
//
// Source: symmetry; EN 1011-2:2001, C.3 (formula read).
func Example_weldplan2BarWeldedOnBothSides() {
	one := weldDone(weldplan.Make(stripOn(weldplan.PlusZ), nil, weldplan.Options{}))
	both := weldDone(weldplan.Make(stripOn(weldplan.PlusZ, weldplan.MinusZ), nil, weldplan.Options{}))
	tips := func(p weldplan.Plan) float64 {
		for _, m := range p.Sequence.Movements {
			if m.What == "pinion bores: head bore tips about y" {
				return math.Abs(m.Moves)
			}
		}
		return math.NaN()
	}
	fmt.Printf("1. one strip %.1f mm, both %.2f mm\n", tips(one)*1e3, tips(both)*1e3)
	fmt.Println("2.", both.Sequence.Text[0])

	// Method B takes the thicker part, 40 mm, over all the doubt of an analysis that
	// nobody has made.
	casting := both.Runs[0].Preheats[1]
	fmt.Printf("3. CET %.2f %%, %.0f mm: %.0f to %.0f °C, so no run begins below %.0f °C\n", 100*casting.CET, casting.Thickness*1e3,
		casting.Low-273.15, casting.High-273.15, both.Runs[0].Start-273.15)

	// Output:
	// 1. one strip 3.6 mm, both 0.00 mm
	// 2. Every order and direction was weighed: none moves bores and peg face less, by this model.
	// 3. CET 0.32 %, 40 mm: 37 to 205 °C, so no run begins below 205 °C
}

// A casting that may be grey iron, or of which a preheat between the practices is
// asked for.
//
// Wanted: what the plan says.
//
// Source: common practice, no source.
func Example_weldplan3Refusals() {
	j := stripOn(weldplan.PlusZ)
	j.Casting.Metal = weldplan.Metal{Families: []weldplan.Chance{{Family: material.DuctileIron, Chance: 0.9}}, Unknown: 0.1}
	plan := weldDone(weldplan.Make(j, nil, weldplan.Options{}))
	fmt.Println("1.", plan.Stops[0].What+":", plan.Stops[0].Why)

	j.Casting.Metal = weldplan.Metal{Grade: "EN-GJS-400-15", Families: []weldplan.Chance{{Family: material.DuctileIron, Chance: 1}}}
	j.Shop.Preheat = degrees(90)
	j.Shop.Preheat.Text = "90 °C"
	plan = weldDone(weldplan.Make(j, nil, weldplan.Options{}))
	fmt.Println("2.", plan.Stops[0].Why)

	// Output:
	// 1. Grey or unknown iron not ruled out: There is a chance of 10 % that it is grey or something else (stop above 5 %, our rule).
	// 2. 90 °C lies between the practices: too warm to keep the iron's edge thin, too cold to keep it soft. Cold is up to 60 °C (140 °F), hot is 150 °C (302 °F) to 300 °C (572 °F) with the whole casting in an oven. Pick one and write it down.
}
