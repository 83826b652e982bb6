package drawing

import "strconv"

// weldTurns: the order of the runs round a plate.
func weldTurns() Drawing {
	s := sketch{}
	s.casting(rect(4, 8, 76, 42)...)
	s.part(rect(12, 15, 68, 35)...)
	for i, run := range []struct{ from, to, y, words float64 }{
		{54, 40, 15, 20}, {26, 40, 35, 32.4}, {26, 40, 15, 20}, {54, 40, 35, 32.4},
		{68, 54, 15, 20}, {12, 26, 35, 32.4}, {12, 26, 15, 20}, {68, 54, 35, 32.4},
	} {
		inset := (run.to - run.from) / 14
		s.arrow(Point{run.from + inset, run.y}, Point{run.to - inset, run.y})
		s.bold((run.from+run.to)/2, run.words, strconv.Itoa(i+1), Middle)
	}
	for x := 12.0; x <= 68; x += 14 {
		s.add(Circle{Centre: Point{x, 15}, Radius: 0.9, Fill: Black}, Circle{Centre: Point{x, 35}, Radius: 0.9, Fill: Black})
	}
	s.circle(63, 22.5, 1.3)
	s.pointer(Point{54.5, 25.5}, Point{61.6, 22.9})
	s.words(54, 27.4, "vent: open till last", End)
	s.bold(40, 5.5, "middle outwards, sides in turn", Middle)
	s.words(40, 47.4, "dots: tacks, every 40 to 50 mm", Middle)
	s.words(40, 53.2, "each run laid back towards the middle", Middle)
	return s.drawing("weld-turns", "Runs round a plate: middle outwards, sides in turn",
		"A plate on the casting, tacked on both long edges. Eight short runs are numbered: the first ones at the middle of each edge, the last ones at its ends, one edge and the other in turn. Each run is laid back towards the middle. The vent of the cavity stays open till last.")
}

// flangeFlat: where the straightedge lies.
func flangeFlat() Drawing {
	s := sketch{}
	centre := Point{27, 27}
	s.circle(centre.X, centre.Y, 21)
	s.circle(centre.X, centre.Y, 12)
	for a := 15.0; a < 360; a += 30 {
		p := arc(centre, 17, a, a)[0]
		s.circle(p.X, p.Y, 1)
	}
	for _, a := range []float64{60, 120} {
		s.dashed(arc(centre, 25, a, a)[0], arc(centre, 25, a+180, a)[0])
	}
	s.part(rect(1, 25, 53, 29)...)
	s.words(27, 28.2, "straightedge", Middle)
	s.bold(53.4, 24, "1", Middle)
	s.bold(41.4, 5, "2", Middle)
	s.bold(12.6, 5, "3", Middle)
	s.solid(Point{41, 29.2}, Point{44, 29.2}, Point{49, 42}, Point{46, 42})
	s.words(50, 41, "feeler", Start)
	s.bold(56, 13, "three angles", Start)
	s.words(56, 17.4, "60° apart", Start)
	s.words(51, 47, "bare, clean face", Start)
	s.words(51, 51.4, "out of the jig cold", Start)
	return s.drawing("flange-flat", "Flange face: a straightedge at three angles",
		"The flange face from its end. A straightedge lies across its middle at three angles, 60 degrees apart, and a feeler is tried under it on both sides of the opening.")
}

// resinFill: the vent is the highest place.
func resinFill() Drawing {
	s := sketch{}
	tip := func(x, y float64) Point { return Point{x, y - (x-40)*0.1} }
	s.casting(tip(8, 16), tip(14, 16), tip(14, 42), tip(66, 42), tip(66, 16), tip(72, 16), tip(72, 47), tip(8, 47))
	s.add(closed(Pale, light, Point{14.3, 35}, Point{65.7, 35}, tip(65.7, 41.6), tip(14.3, 41.6)))
	s.dashed(Point{14, 26}, Point{66, 26})
	for _, span := range [][2]float64{{8, 18}, {22, 60}, {63, 72}} {
		s.part(tip(span[0], 12.4), tip(span[1], 12.4), tip(span[1], 16), tip(span[0], 16))
	}
	s.part(Point{15, 8}, Point{25, 8}, Point{21.4, 13.4}, Point{21.4, 20}, Point{18.6, 20}, Point{18.6, 13.4})
	s.arrow(Point{20, 1}, Point{20, 9})
	s.words(17.5, 4.6, "resin", End)
	s.arrow(Point{61.5, 10}, Point{61.5, 2})
	s.words(59, 4.6, "vent: highest place", End)
	s.words(40, 40, "first lift: 20 to 25 mm", Middle)
	s.words(40, 31.4, "cooled, then the next", Middle)
	s.words(40, 21.6, "last, until it stands in the vent", Middle)
	s.bold(40, 53.2, "filler, not structure", Middle)
	return s.drawing("resin-fill", "Filling a cavity: vent up, in lifts",
		"Section through a cavity under its plate, tipped so that the vent is its highest place. Resin is poured through the other hole in lifts of 20 to 25 mm, each cooled before the next, until it stands in the vent. Resin is a filler, not structure.")
}

// leakSketch: air, gauge and blanks.
func leakSketch() Drawing {
	s := sketch{}
	s.part(Point{44, 14}, Point{52, 10}, Point{72, 10}, Point{72, 38}, Point{52, 38}, Point{44, 34})
	s.solid(rect(72.3, 8, 75, 40)...)
	s.solid(rect(41.2, 15, 43.7, 33)...)
	s.line(strong, Point{2, 24}, Point{41, 24})
	s.arrow(Point{1, 24}, Point{7, 24})
	s.part(rect(8, 21, 15, 27)...)
	s.line(strong, Point{21, 24}, Point{21, 17})
	s.part(Point{19, 17}, Point{23, 17}, Point{21, 13.4})
	s.line(strong, Point{32, 24}, Point{32, 18})
	s.circle(32, 14, 4.2)
	s.line(light, Point{32, 14}, Point{33.8, 11.4})
	s.words(1, 19.4, "air", Start)
	s.words(11.5, 31.4, "regulator", Middle)
	s.pointer(Point{19, 9}, Point{21, 14.4})
	s.words(2, 7.4, "relief valve", Start)
	s.words(32, 7.4, "gauge", Middle)
	s.words(58, 5.4, "every hole blanked", Middle)
	s.pointer(Point{70, 6.4}, Point{73.6, 9})
	s.words(58, 22, "soap on welds", Middle)
	s.words(58, 26.2, "and skin", Middle)
	s.bold(2, 43.6, "55 kPa (8 psi), 45 s", Start)
	s.words(2, 48.4, "never over 103 kPa (15 psi)", Start)
	s.words(2, 53.2, "face away; before paint", Start)
	return s.drawing("leak-test", "Leak test: air through a regulator, and a gauge",
		"The casting with every hole blanked. Air comes through a regulator, past a relief valve and a gauge: 55 kPa (8 psi) for 45 seconds, never over 103 kPa (15 psi). Soap on welds and skin shows where it leaks. Keep the face away.")
}
