package drawing

import "strconv"

// guideHole: how deep a hole may go.
func guideHole() Drawing {
	s := sketch{}
	s.casting(Point{4, 18}, Point{23.5, 18}, Point{23.5, 34}, Point{27, 36.4}, Point{30.5, 34}, Point{30.5, 18}, Point{50, 18}, Point{50, 44}, Point{4, 44})
	s.part(rect(4, 13, 23.5, 18)...)
	s.part(rect(30.5, 13, 50, 18)...)
	s.part(Point{24, 3}, Point{30, 3}, Point{30, 32}, Point{27, 34.2}, Point{24, 32})
	for y := 4.0; y < 28; y += 5 {
		s.line(light, Point{24, y + 4}, Point{30, y})
	}
	s.gap(Point{30.5, 18}, Point{30.5, 34}, 6, "")
	s.gap(Point{27, 44}, Point{27, 36.4}, 9, "")
	s.words(53, 6, "guide hole", Start)
	s.pointer(Point{52.5, 6.6}, Point{31, 14})
	s.words(53, 16.6, "plate", Start)
	s.words(53, 25, "full thread:", Start)
	s.words(53, 29.2, "1.25 to 1.5 ×", Start)
	s.words(53, 33.4, "its diameter", Start)
	s.pointer(Point{52.4, 26}, Point{36.5, 26})
	s.bold(2, 9, "wall left", Start)
	s.pointer(Point{9, 10.4}, Point{17.6, 39.6})
	s.words(27, 48.6, "a bore or an oil way", Middle)
	s.bold(40, 53.2, "measure the wall first", Middle)
	return s.drawing("guide-hole", "A hole through its guide hole, and the wall behind it",
		"Section through a plate on the casting. The drill goes through the guide hole of the plate, square, and deep enough for a full thread of 1.25 to 1.5 times its diameter. Behind the hole lies a bore or an oil way: the wall is measured first, and what is left of it counts.")
}

// capMarks: whose cap it is, and its bolts in turn.
func capMarks() Drawing {
	s := sketch{}
	for i, left := range []float64{6, 48} {
		s.casting(rect(left-3, 8, left+29, 46)...)
		s.part(rect(left+3, 11, left+19, 43)...)
		for k, y := range []float64{16, 38} {
			s.circle(left+11, y, 3.6)
			s.bold(left+11, y+1.2, strconv.Itoa(2*i+k+1), Middle)
		}
		for _, x := range []float64{left + 16, left + 22} { // the same on cap and casting
			for dot := range i + 1 {
				s.add(Circle{Centre: Point{x, 26 + 2.6*float64(dot)}, Radius: 0.9, Fill: Black})
			}
		}
		s.words(left+10, 28, []string{"left", "right"}[i], Middle)
	}
	s.bold(40, 5.4, "same marks on cap and casting", Middle)
	s.words(40, 50, "bolts in turn: snug, half, full", Middle)
	return s.drawing("cap-marks", "Marks of the caps, and their bolts in turn",
		"Both caps on their casting. The left cap and the casting beside it bear one punch mark, the right cap and the casting beside it two: caps are bored with their casting and are not swapped. The four bolts are tightened in turn, snug, then half, then full torque.")
}

// boreDepths: a bore is measured near both of its ends.
func boreDepths() Drawing {
	s := sketch{}
	s.casting(rect(14, 8, 52, 17)...)
	s.casting(rect(14, 37, 52, 46)...)
	s.axis(Point{6, 27}, Point{60, 27})
	for i, x := range []float64{21, 45} {
		s.gap(Point{x, 17}, Point{x, 37}, 0, "")
		s.bold(x+2, 25, strconv.Itoa(i+1), Start)
	}
	s.words(33, 13.6, "cap, torqued", Middle)
	s.words(33, 42.6, "casting", Middle)
	s.words(56, 13, "1: outer end", Start)
	s.words(56, 18, "2: inner end", Start)
	s.words(56, 34, "differ:", Start)
	s.words(56, 38.4, "taper", Start)
	s.words(40, 53, "each depth at 0°, 45° and 90°", Middle)
	return s.drawing("bore-depths", "A side bore at two depths",
		"Section along one side bore with its cap torqued on. It is measured near its outer end and near its inner end, at 0, 45 and 90 degrees each: where the two depths differ, the bore is tapered.")
}

// stampPlace: where the number goes.
func stampPlace() Drawing {
	s := sketch{}
	s.part(Point{6, 20}, Point{38, 13}, Point{38, 43}, Point{6, 36})
	s.part(Point{8, 19.6}, Point{38, 7}, Point{38, 13})
	s.part(rect(38, 5, 44, 48)...)
	s.part(append([]Point{{44, 14}, {59, 14}}, append(arc(Point{59, 28}, 8, 90, 270), Point{59, 42}, Point{44, 42})...)...)
	s.line(heavy, Point{38.2, 42.4}, Point{24, 39.4})
	s.solid(rect(13.4, 22.4, 35.6, 33.6)...)
	s.part(rect(14, 23, 35, 33)...)
	s.bold(24.5, 29.4, "number", Middle)
	s.bold(2, 8, "✓ machined pad", Start)
	s.pointer(Point{14, 9.4}, Point{17, 22.6})
	s.words(47, 5.6, "✕ rib", Start)
	s.pointer(Point{46.6, 5}, Point{35, 11})
	s.words(62, 13, "✕ ear", Start)
	s.pointer(Point{61.6, 12.4}, Point{54, 17})
	s.words(61.5, 27, "✕ joint face", Start)
	s.pointer(Point{64, 28.6}, Point{59.2, 38})
	s.words(47, 48, "✕ flange face", Start)
	s.pointer(Point{52, 44.6}, Point{44.2, 45.4})
	s.words(2, 46, "✕ weld", Start)
	s.pointer(Point{12.8, 44.6}, Point{28, 40.4})
	s.words(40, 53.2, "5 to 6 mm, light, before paint", Middle)
	return s.drawing("stamp-place", "Where the number is stamped",
		"The casting from its side. The number goes on a machined pad, lightly, in letters 5 to 6 mm high, before paint: not on a rib, a cap ear, a joint face, the flange face or a weld.")
}
