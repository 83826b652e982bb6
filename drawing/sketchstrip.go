package drawing

// donorViews: the six photographs of a donor, each with a scale.
func donorViews() Drawing {
	s := sketch{}
	ends := func(x, y float64) {
		s.circle(x, y, 6.5)
		for a := 0.0; a < 360; a += 45 {
			p := arc(Point{x, y}, 5.4, a, a)[0]
			s.circle(p.X, p.Y, 0.5)
		}
	}
	side := func(x, y, way float64) {
		s.part(Point{x - way*8, y - 2}, Point{x, y - 4}, Point{x, y + 4}, Point{x - way*8, y + 2})
		s.part(Point{x, y - 6.5}, Point{x + way*1.5, y - 6.5}, Point{x + way*1.5, y + 6.5}, Point{x, y + 6.5})
		s.part(Point{x + way*1.5, y - 4}, Point{x + way*7, y - 4}, Point{x + way*7, y + 4}, Point{x + way*1.5, y + 4})
		s.line(light, Point{x + way*4.5, y - 4}, Point{x + way*4.5, y + 4})
	}
	views := []struct {
		words string
		draw  func(x, y float64)
	}{
		{"1 front", func(x, y float64) { ends(x, y); s.circle(x, y, 3); s.circle(x, y, 1) }},
		{"2 rear", func(x, y float64) {
			ends(x, y)
			s.part(rect(x-1.4, y-4, x+1.4, y+4)...)
			s.part(rect(x-4.6, y-2.4, x-2.4, y+2.4)...)
			s.part(rect(x+2.4, y-2.4, x+4.6, y+2.4)...)
		}},
		{"3 left", func(x, y float64) { side(x, y, 1) }},
		{"4 right", func(x, y float64) { side(x, y, -1) }},
		{"5 top", func(x, y float64) {
			s.part(Point{x - 2, y + 6.5}, Point{x - 4, y}, Point{x + 4, y}, Point{x + 2, y + 6.5})
			s.part(rect(x-8, y-1.5, x+8, y)...)
			s.part(rect(x-5, y-6, x-2.4, y-1.5)...)
			s.part(rect(x+2.4, y-6, x+5, y-1.5)...)
		}},
		{"6 number, close", func(x, y float64) {
			s.part(rect(x-9, y-3.5, x+9, y+3.5)...)
			s.bold(x, y+1.2, "0 0 0 0", Middle)
		}},
	}
	for i, v := range views {
		left, top := 2+26*float64(i%3), 1+25*float64(i/3)
		s.add(closed(Paper, thin, rect(left, top, left+24, top+19)...))
		v.draw(left+12, top+7.6)
		s.scale(left+4, top+15.4)
		s.words(left+12, top+22.8, v.words, Middle)
	}
	s.bold(40, 53.2, "a scale in every frame", Middle)
	return s.drawing("donor-views", "Six photographs of a donor",
		"Six frames: the donor from the front, that is from its pinion flange, from the rear, from the left, from the right, from above, and its cast number close up. A scale lies in every frame.")
}

// scale is a short rule with every other division black.
func (s *sketch) scale(left, top float64) {
	s.part(rect(left, top, left+16, top+2)...)
	for i := 0; i < 8; i += 2 {
		s.add(closed(Black, 0, rect(left+2*float64(i), top, left+2*float64(i)+2, top+2)...))
	}
}

// crackPlaces: where a nose casting cracks.
func crackPlaces() Drawing {
	s := sketch{}
	s.part(Point{8, 22}, Point{36, 17}, Point{36, 41}, Point{8, 36})
	s.part(Point{14, 21}, Point{36, 10}, Point{36, 17}) // the rib, on the nose
	s.dashed(Point{8, 25}, Point{36, 25})
	s.dashed(Point{8, 33}, Point{36, 33})
	s.part(rect(36, 6, 41, 48)...)
	s.part(append([]Point{{41, 15}, {56, 15}}, append(arc(Point{56, 29}, 8, 90, 270), Point{56, 43}, Point{41, 43})...)...)
	s.part(append(arc(Point{56.8, 29}, 14, 90, -90), arc(Point{56.8, 29}, 8, -90, 90)...)...)
	for _, y := range []float64{18, 40} {
		s.dashed(Point{45, y - 1.2}, Point{64, y - 1.2})
		s.dashed(Point{45, y + 1.2}, Point{64, y + 1.2})
	}
	s.crack(Point{41, 15}, Point{42.6, 17.4}, Point{42, 19.4}, Point{44, 22})
	s.crack(Point{56, 19.2}, Point{54.6, 20.4}, Point{54.8, 21.4}, Point{53, 22.2})
	s.crack(Point{13, 21.1}, Point{15.4, 22.4}, Point{16.2, 21.6}, Point{19, 23})
	s.crack(Point{8, 33}, Point{9.6, 34}, Point{9.2, 34.9}, Point{10.6, 36})
	s.words(2, 9, "rib at the nose", Start)
	s.pointer(Point{10, 10.4}, Point{14.4, 20.6})
	s.words(43, 5.4, "base of a cap ear", Start)
	s.pointer(Point{46, 6.6}, Point{42.2, 15.6})
	s.words(78, 11.4, "cap bolt hole", End)
	s.pointer(Point{66, 12.4}, Point{56, 19.2})
	s.words(2, 45, "end face of", Start)
	s.words(2, 49, "the pinion bore", Start)
	s.pointer(Point{8, 41.4}, Point{8.6, 34.4})
	s.words(78, 48, "and flange stud holes", End)
	s.bold(78, 53.2, "line: crack · dots: pores", End)
	return s.drawing("crack-places", "Where a nose casting cracks",
		"A nose casting from its side, nose at left, cap ears at right. Cracks are drawn at the base of a cap ear, beside a cap bolt hole, where a rib meets the nose, and at the end face of the pinion bore; look round the flange stud holes too. Penetrant shows a crack as a line and pores as dots.")
}

// crack is a broken line that the eye should go to.
func (s *sketch) crack(points ...Point) {
	for i := range points[1:] {
		s.add(Line{From: points[i], To: points[i+1], Ink: Ink{Width: heavy, Tone: Accent}})
	}
}

// swarfSketch: what a drill throws up.
func swarfSketch() Drawing {
	s := sketch{}
	for _, x := range []float64{20, 60} {
		s.casting(Point{x - 16, 32}, Point{x - 4, 32}, Point{x, 36}, Point{x + 4, 32}, Point{x + 16, 32}, Point{x + 16, 42}, Point{x - 16, 42})
		s.part(Point{x - 4, 10}, Point{x + 4, 10}, Point{x + 4, 31.6}, Point{x, 35.6}, Point{x - 4, 31.6})
		for y := 12.0; y < 28; y += 5 {
			s.line(light, Point{x - 4, y + 4}, Point{x + 4, y})
		}
	}
	for _, way := range []float64{-1, 1} {
		var curl []Point
		for i := range 60 {
			t := float64(i) / 60
			p := arc(Point{20 + way*(5+9*t), 29 - 9*t}, 1.9, 1500*t, 0)[0]
			curl = append(curl, p)
		}
		s.line(medium, curl...)
		for i := range 28 { // a heap, and some dust beside it
			row := float64(i / 7)
			s.add(Circle{Centre: Point{60 + way*(5+1.3*float64(i%7)*(1-row/5)+row*0.7), 31.4 - row*1.1}, Radius: 0.35, Fill: Black})
		}
	}
	s.bold(20, 5.5, "curls", Middle)
	s.bold(60, 5.5, "powder", Middle)
	s.words(20, 47, "like steel, or ductile", Middle)
	s.words(60, 47, "like grey iron", Middle)
	s.words(40, 53.2, "one sign of several: test again", Middle)
	return s.drawing("swarf", "Swarf that curls, swarf that is powder",
		"Two drills in iron. At left the swarf comes off in curls: the metal is like steel, or ductile iron. At right it is powder: the metal is like grey iron. It is one sign of several.")
}
