package drawing

// backFace: places round the back face, to tell the wheel's run-out from the seat's.
func backFace() Drawing {
	s := sketch{}
	centre := Point{27, 27}
	s.circle(centre.X, centre.Y, 23)
	s.circle(centre.X, centre.Y, 12)
	for i := range 10 {
		p := arc(centre, 15, 36*float64(i)+18, 0)[0]
		s.circle(p.X, p.Y, 1.1)
	}
	for i := range 8 {
		p := arc(centre, 19.5, 90-45*float64(i), 0)[0]
		s.words(p.X, p.Y+1.2, string(rune('1'+i)), Middle)
	}
	s.solid(Point{27, 6}, Point{25.4, 2.6}, Point{28.6, 2.6})
	s.pointer(Point{52, 6}, Point{28.6, 3.4})
	s.words(53, 7, "mark both", Start)
	s.words(53, 11, "wheel and", Start)
	s.words(53, 15, "diff centre", Start)
	s.words(53, 24, "read 8 places,", Start)
	s.words(53, 28, "turn the wheel", Start)
	s.words(53, 32, "on its holes,", Start)
	s.words(53, 36, "read again", Start)
	s.words(53, 45, "swing =", Start)
	s.bold(53, 49, "run-out", Start)
	return s.drawing("back-face", "Eight places on the back face, twice",
		"The back face of the crown wheel with eight places numbered from a mark. They are read, the wheel is turned on its bolt holes, and they are read again: what turns with the wheel is the wheel's run-out, what stays is the seat's.")
}

// boreGauge: the three directions in which a bore is measured.
func boreGauge() Drawing {
	s := sketch{}
	centre := Point{28, 30}
	s.casting(Point{4, 30}, Point{52, 30}, Point{52, 50}, Point{4, 50})
	s.casting(arc(centre, 22, 180, 0)...)
	s.circle(centre.X, centre.Y, 15)
	for _, d := range []struct {
		at    float64
		words string
	}{{0, "0°"}, {45, "45°"}, {90, "90°"}} {
		s.gap(arc(centre, 15, d.at+180, 0)[0], arc(centre, 15, d.at, 0)[0], 0, "")
	}
	s.bold(19, 28.8, "0°", Middle)
	s.bold(40.5, 23.6, "45°", End)
	s.bold(29, 42, "90°", Start)
	s.words(56, 12, "cap, torqued", Start)
	s.words(56, 29, "joint", Start)
	s.pointer(Point{55.5, 28}, Point{51, 30})
	s.words(56, 42, "casting", Start)
	return s.drawing("bore-gauge", "A side bore in three directions",
		"One side bore with its cap torqued on. It is measured along the joint, 0 degrees; aslant, 45 degrees; and through the crown of the cap, 90 degrees.")
}

// mandrelSketch: bores in line.
func mandrelSketch() Drawing {
	s := sketch{}
	for _, left := range []float64{10, 54} {
		s.casting(rect(left, 31, left+16, 46)...)
		s.casting(rect(left, 10, left+16, 21)...)
		s.line(strong, Point{left + 8, 6}, Point{left + 8, 10})
		s.part(rect(left+5, 4, left+11, 7)...)
	}
	s.part(rect(2, 21, 78, 31)...)
	s.axis(Point{1, 26}, Point{79, 26})
	s.words(40, 27.2, "mandrel turns by hand", Middle)
	s.pointer(Point{40, 39}, Point{26.4, 31.2})
	s.words(40, 42.5, "no feeler", Middle)
	s.words(40, 46.5, "enters", Middle)
	s.bold(40, 53, "caps torqued", Middle)
	return s.drawing("mandrel", "A ground mandrel through both side bores",
		"Both side bores with their caps torqued and a ground mandrel through them. It turns by hand, and a feeler of 0.04 mm does not enter beside it.")
}

// capRegister: where a cap may walk.
func capRegister() Drawing {
	s := sketch{}
	s.casting(Point{6, 34}, Point{16, 34}, Point{16, 38}, Point{64, 38}, Point{64, 34}, Point{74, 34}, Point{74, 47}, Point{6, 47})
	s.casting(append(arc(Point{40, 36}, 22, 180, 0), Point{63, 36}, Point{63, 37.4}, Point{17, 37.4}, Point{17, 36})...)
	s.circle(40, 37.7, 8)
	for _, x := range []float64{21, 59} {
		s.line(strong, Point{x, 12}, Point{x, 46})
		s.part(rect(x-3, 9, x+3, 13)...)
	}
	s.pointer(Point{69, 49}, Point{63.5, 35.5})
	s.words(78, 53, "side clearance", End)
	s.pointer(Point{9, 49}, Point{22, 37.7})
	s.words(2, 53, "joint", Start)
	s.words(40, 5.5, "washers flat on bare metal", Middle)
	return s.drawing("cap-register", "A cap in its register",
		"A side bearing cap on its casting, from its end. The clearance of its sides in the register lets it walk; at the nipped joint a feeler of 0.04 mm must not enter. The washers lie flat on bare metal.")
}

// bearingStack: how a head bearing of another height moves the pinion.
func bearingStack() Drawing {
	s := sketch{}
	for _, b := range []struct {
		left, height float64
		words        string
	}{{8, 16, "old"}, {46, 24, "new"}} {
		s.casting(rect(b.left, 42, b.left+26, 48)...)
		s.bearing(b.left, 42-b.height, b.left+10, 42)
		s.bearing(b.left+16, 42-b.height, b.left+26, 42)
		s.gap(Point{b.left + 26, 42}, Point{b.left + 26, 42 - b.height}, -3, "")
		s.bold(b.left+13, 14, b.words, Middle)
	}
	s.words(40, 5.5, "over cup and cone together", Middle)
	s.words(40, 53, "another height: another shim", Middle)
	return s.drawing("bearing-stack", "Head bearings of different height",
		"The old and the new head bearing on their seat. The height over cup and cone together differs, and the shim changes by the difference.")
}

// pegHole: the hole of the peg is square to the back face.
func pegHole() Drawing {
	s := sketch{}
	s.part(rect(8, 6, 18, 48)...)
	s.words(13, 52.8, "back face", Middle)
	s.casting(rect(36, 8, 50, 22)...)
	s.casting(rect(36, 32, 50, 46)...)
	s.part(rect(24, 22, 76, 32)...)
	s.axis(Point{18, 27}, Point{79, 27})
	s.line(light, Point{18, 24}, Point{21, 24}, Point{21, 27})
	s.words(52, 19, "ground mandrel", Start)
	s.words(54, 40, "within 0.10", Start)
	s.words(54, 44, "over 30 mm", Start)
	return s.drawing("peg-hole", "The peg's hole is square to the back face",
		"A mandrel in the tapped hole of the peg, seen with the back face of the crown wheel: it stands square to the face within 0.10 mm over 30 mm.")
}
