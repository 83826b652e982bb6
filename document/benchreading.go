package document

import (
	"axlewright/document/paper"
	"axlewright/drawing"
)

// BenchReading is the procedure of a bench reading, with boxes for the readings.
func BenchReading() paper.Paper {
	p := paper.Paper{Head: paper.Head{Title: "Bench reading"}}
	p.Add(
		paper.Text{Words: "How stiff is this casting? A dial on the back face of the crown wheel under a known load tells how the casting, the bearings' seats and the wheel give. It narrows the wheel's movement and the peg's load. It says nothing of caps that walk or bolts that slip."},
		paper.Picture{Drawing: drawing.BenchSet(), Width: 140},
		paper.Caution{Words: "A lever under load stores energy: stand clear of its sweep, chain it, never leave it loaded. No fingers near the gears.\nA bare casting weighs 12 to 20 kg, a built unit 28 to 45 kg (62 to 99 lb): two people or a crane."},
		paper.List{
			{Mark: "1", Words: "Build the unit as it will run: caps torqued, side and pinion preload set, peg screwed well clear of the wheel. Bolt the flange to a plate that does not move."},
			{Mark: "2", Words: "Hold both output sides so that the crown wheel cannot turn. Stand the dial on the back face behind the mesh, its foot on the casting, square to the face."},
			{Mark: "3", Words: "Load once to the highest torque and let go: everything seats. Set the dial to zero."},
			{Mark: "4", Words: "Pull a known torque at the pinion flange: lever and weight, or a torque wrench. Read. Let go: it must come back to zero within the dial's error, or begin again."},
			{Mark: "5", Words: "Take at least two torques on each flank, about 150 and 300 N·m (110 and 220 lbf·foot) at the pinion. Two torques and their slope matter: preload bends a single reading."},
			{Mark: "6", Words: "Or: with a jack of known force between casting and back face, read the dial behind the mesh."},
		},
		paper.Table{Least: 11, Rows: [][]string{{"1"}, {"2"}, {"3"}, {"4"}, {"5"}, {"6"}}, Columns: []paper.Column{{Title: "no.", Share: 0.4, Bold: true},
			{Title: "torque at pinion, N·m, or jack, kN"}, {Title: "flank: drive or coast"}, {Title: "dial, 0.01 mm or thou: say which"}, {Title: "back to zero?"}, {Title: "dial's error"}}},
		paper.Boxes{{Label: "Jack: radius from the wheel's axis", Unit: "mm"}, {Label: "Jack: angle round from the mesh", Unit: "degrees"}, {Label: "Dial: radius", Unit: "mm"}},
		paper.Text{Words: "Then write the enquiry's file and the readings in a file, an item each row, as in the demo's bench/t24-readings.yaml: name, pinion_torque and flank (or jack, jack_radius and jack_angle), and reading ± the dial's error, such as “0.055 mm ± 0.006 mm, measured”. A reading is plus where the wheel moves away from the pinion. Then run: axlewright calibrate FILE. A reading that contradicts the model is told.", Small: true},
		paper.Notes{},
	)
	p.Foot = "A comparison of stiffness, not a strength test: local codes and licensed practice decide on road use."
	return p
}
