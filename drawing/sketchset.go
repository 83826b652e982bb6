package drawing

import "axlewright/setup"

// PinionShim draws the shim, the head bearing and the pinion's teeth at the crown
// wheel, and which way a thicker shim moves the pinion.
func PinionShim(push setup.Push) Drawing {
	s := sketch{}
	from, to, say, name := Point{56, 11}, Point{70, 11}, "thicker shim: pinion in", "pinion-shim"
	if push == setup.AwayFromWheel {
		from, to, say, name = to, from, "thicker shim: pinion out", "pinion-shim-out"
	}
	s.axis(Point{2, 28}, Point{78, 28})
	s.axis(Point{74, 16}, Point{74, 50})
	for _, side := range []float64{1, -1} { // above and below the axis
		y := func(v float64) float64 { return 28 - side*v }
		if push == setup.TowardsWheel {
			s.casting(Point{10, y(8)}, Point{34, y(8)}, Point{34, y(14)}, Point{46, y(14)}, Point{46, y(20)}, Point{10, y(20)})
			s.solid(Point{34.2, y(13.8)}, Point{37.3, y(13.8)}, Point{37.3, y(8.5)}, Point{34.2, y(8.5)})
		} else { // a cage holds the bearing; the shim lies under its flange
			s.casting(Point{9.6, y(16.4)}, Point{34, y(16.4)}, Point{34, y(21.6)}, Point{9.6, y(21.6)})
			s.part(Point{2, y(8)}, Point{37.4, y(8)}, Point{37.4, y(14)}, Point{46, y(14)}, Point{46, y(16)}, Point{6, y(16)}, Point{6, y(21.6)}, Point{2, y(21.6)})
			s.solid(Point{6.2, y(16.4)}, Point{9.4, y(16.4)}, Point{9.4, y(21.6)}, Point{6.2, y(21.6)})
		}
		s.bearing(37.5, min(y(14), y(5)), 46, max(y(14), y(5)))
	}
	s.part(Point{6, 24}, Point{47, 24}, Point{47, 20.5}, Point{51, 18.5}, Point{66, 23.5}, Point{66, 32.5}, Point{51, 37.5}, Point{47, 35.5}, Point{47, 32}, Point{6, 32})
	s.part(Point{50, 39}, Point{65.5, 34}, Point{71, 34}, Point{71, 38}, Point{76, 38}, Point{76, 45}, Point{50, 45})
	s.arrow(from, to)
	s.bold(78, 6, say, End)
	s.words(50, 49.5, "crown wheel", Start)
	s.words(14, 29.2, "pinion", Start)
	if push == setup.TowardsWheel {
		s.pointer(Point{30, 51}, Point{35.8, 40})
		s.words(2, 53.2, "shim, under the cup", Start)
	} else {
		s.pointer(Point{12, 51}, Point{7.8, 46})
		s.words(2, 53.2, "shim, under the cage’s flange", Start)
	}
	return s.drawing(name, "Pinion shim: "+say,
		"Section along the pinion. The shim lies "+where(push)+". A thicker one moves the pinion "+string(push)+", so that it meshes "+deeper(push)+".")
}

func where(push setup.Push) string {
	if push == setup.AwayFromWheel {
		return "between the flange of the pinion's cage and the casting"
	}
	return "between the casting and the cup of the head bearing"
}

func deeper(push setup.Push) string {
	if push == setup.AwayFromWheel {
		return "less deep"
	}
	return "deeper"
}

// turningTorque: string and spring balance on the pinion flange.
func turningTorque() Drawing {
	s := sketch{}
	hub := Point{25, 32}
	s.circle(hub.X, hub.Y, 17)
	s.circle(hub.X, hub.Y, 5)
	for _, p := range []Point{{36, 32}, {14, 32}, {25, 43}, {25, 21}} {
		s.circle(p.X, p.Y, 1.6)
	}
	s.line(heavy, Point{25, 15}, Point{52, 15})
	s.part(rect(52, 11.5, 66, 18.5)...)
	for i := range 5 {
		x := 54.5 + 2.2*float64(i)
		s.line(thin, Point{x, 13.4}, Point{x, 16.6})
	}
	s.arrow(Point{67, 15}, Point{78, 15})
	s.gap(Point{25, 32}, Point{25, 15}, 0, "")
	s.words(26.5, 26, "radius", Start)
	s.words(38, 20.5, "string", Middle)
	s.words(40, 9, "pull, steady, turning", Start)
	s.bold(45, 34, "torque =", Start)
	s.bold(45, 39, "pull × radius", Start)
	s.words(45, 47, "10 to 20 turns first", Start)
	return s.drawing("turning-torque", "Turning torque by string and spring balance",
		"The pinion flange from its end. A string is wound round it and pulled off square to the radius by a spring balance, steadily while it turns. Torque is pull times radius.")
}

// adjustersSketch: which adjuster does what.
func adjustersSketch() Drawing {
	s := sketch{}
	s.axis(Point{2, 30}, Point{78, 30})
	s.casting(rect(4, 17, 22, 43)...)
	s.casting(rect(58, 17, 76, 43)...)
	s.part(rect(24, 24, 56, 36)...)
	s.bearing(13, 21, 22.5, 39)
	s.bearing(67, 21, 57.5, 39)
	for _, left := range []float64{4, 67.5} {
		s.part(rect(left, 22, left+8.5, 38)...)
		for i := range 3 {
			x := left + 2 + 2.2*float64(i)
			s.line(thin, Point{x, 22}, Point{x, 38})
		}
	}
	s.part(Point{26, 13}, Point{31, 13}, Point{34, 16}, Point{34, 44}, Point{31, 47}, Point{26, 47})
	s.circle(40, 44, 5)
	s.words(46.5, 46.5, "pinion", Start)
	s.words(36, 21, "crown wheel", Start)
	s.gap(Point{4, 17}, Point{76, 17}, 6, "")
	s.words(40, 9.5, "over the caps: spread", Middle)
	s.arrow(Point{3, 47.5}, Point{15, 47.5})
	s.words(2, 53, "tighter: wheel in", Start)
	s.arrow(Point{65, 47.5}, Point{77, 47.5})
	s.words(78, 53, "slacker by as much", End)
	return s.drawing("adjusters", "Adjusters: one tighter, one slacker by as much",
		"The diff centre between its two side bearings, seen along the pinion. Tightening the adjuster on the crown wheel's side pushes the wheel in, towards the pinion; the other one goes slacker by as much, so that the preload stays. The spread is read over the caps.")
}

// adjusterLock: notches and what one does.
func adjusterLock() Drawing {
	s := sketch{}
	centre := Point{26, 29}
	const notches = 16
	var ring []Point
	for i := range notches {
		at := 360 * float64(i) / notches
		ring = append(ring, arc(centre, 20, at-7, at+7)[0], arc(centre, 20, at+4, at+7)[24], arc(centre, 16.5, at+7, at+7)[0], arc(centre, 16.5, at+15.5, at+15.5)[0])
	}
	s.part(ring...)
	s.circle(centre.X, centre.Y, 11)
	s.solid(Point{43, 31}, Point{50, 32.2}, Point{57, 32.2}, Point{57, 38}, Point{49, 38}, Point{49, 35.4}, Point{42.4, 34})
	s.circle(53, 35.2, 1.2)
	s.words(59, 36.4, "lock", Start)
	from, to := arc(centre, 23, 80, 80)[0], arc(centre, 23, 58, 58)[0]
	s.arrow(from, to)
	s.bold(42, 9, "one notch moves it", Start)
	s.bold(42, 14, "pitch ÷ notches", Start)
	s.words(50, 21, "1.5 mm ÷ 16", Start)
	s.words(50, 25.6, "= 0.094 mm", Start)
	s.words(2, 53.2, "last move tightening, on to the next slot", Start)
	return s.drawing("adjuster-lock", "What one notch of an adjuster does",
		"A threaded adjuster from its end, with sixteen notches round it and the lock in one of them. One notch moves it by the pitch of its thread over the number of notches: 1.5 mm over 16 is 0.094 mm. The last move tightens, on to the next slot.")
}

// dialAtHeel: where and how the dial of the lash stands.
func dialAtHeel() Drawing {
	s := sketch{}
	centre := Point{40, 100}
	band := append(arc(centre, 72, 114, 66), arc(centre, 52, 66, 114)...)
	s.part(band...)
	for a := 103.4; a >= 70; a -= 6.6 {
		s.line(medium, arc(centre, 72, a, a)[0], arc(centre, 62, a+3.2, a+3.2)[0], arc(centre, 52, a+7.6, a+7.6)[0])
	}
	touch := arc(centre, 70, 97.4, 97.4)[0]
	s.dial(Point{touch.X - 26, touch.Y + 3.4}, touch)
	s.bold(2, 18, "✓ along the turn", Start)
	out, in := arc(centre, 72, 77, 77)[0], arc(centre, 62, 80.2, 80.2)[0] // the tooth that it stands square to
	along := Point{(out.X - in.X) / 10.5, (out.Y - in.Y) / 10.5}
	other := Point{out.X - 3*along.X, out.Y - 3*along.Y}
	s.dial(Point{other.X - 19*along.Y, other.Y + 19*along.X}, other)
	s.bold(78, 11, "✕ square to the tooth", End)
	s.pointer(Point{70, 12.4}, Point{other.X - 19*along.Y, other.Y + 19*along.X - 4})
	s.words(40, 53, "toe, inner end", Middle)
	s.pointer(Point{42, 22}, Point{40, 30})
	s.words(42, 20.5, "heel, outer end", Middle)
	s.words(2, 53, "pinion held", Start)
	return s.drawing("dial-at-heel", "Dial for the lash: at the heel, along the turn",
		"The toothed face of the crown wheel. The stem of the dial touches a tooth at its heel, the outer end, and stands along the turn of the wheel. A stem square to the tooth reads about three quarters of the lash. The pinion is held still.")
}

// toothEnds: the words for the four ends and the two flanks of a tooth.
func toothEnds() Drawing {
	s := sketch{}
	t := newTooth(17, 8, 63, 24, "drive")
	s.part(t.outline()...)
	s.words(40, 18, "drive flank", Middle)
	s.bold(2, 15, "toe", Start)
	s.words(2, 19.2, "inner", Start)
	s.words(2, 23.4, "end", Start)
	s.bold(65, 15, "heel", Start)
	s.words(65, 19.2, "outer", Start)
	s.words(65, 23.4, "end", Start)
	s.bold(40, 5, "tip", Middle)
	s.bold(40, 27.6, "root", Middle)
	// The same tooth from above: one side bulges, one is hollow.
	outer, inner := arc(Point{40, 117}, 80, 107, 73), arc(Point{40, 117}, 75.5, 73, 107)
	s.part(append(outer, inner...)...)
	s.words(40, 34.4, "drive: the side that bulges", Middle)
	s.words(40, 48, "coast: the hollow side", Middle)
	return s.drawing("tooth-four-ends", "The ends and flanks of a crown wheel's tooth",
		"Above, the drive flank of one tooth: toe at the inner end, heel at the outer end, tip above, root below. Under it the tooth seen from above: the drive flank bulges, the coast flank is hollow.")
}

// pegGap: what is measured at the peg.
func pegGap() Drawing {
	s := sketch{}
	s.casting(rect(43, 7, 53, 24)...)
	s.casting(rect(43, 34, 53, 46)...)
	s.part(Point{12, 5}, Point{24, 5}, Point{24, 48}, Point{12, 48}, Point{8, 44}, Point{8, 9})
	s.words(16, 27, "crown", Middle)
	s.words(16, 31, "wheel", Middle)
	s.dashed(Point{25.6, 5}, Point{22.4, 48})
	s.solid(rect(29, 22, 36, 36)...)
	s.part(rect(36, 25, 66, 33)...)
	for x := 38.0; x < 65; x += 1.6 {
		s.line(hairline, Point{x, 25}, Point{x + 0.8, 33})
	}
	s.part(rect(54, 20, 60, 38)...)
	s.part(rect(66, 23, 72, 35)...)
	s.gap(Point{24, 20}, Point{29, 20}, 5, "")
	s.bold(26, 12.5, "gap", Start)
	s.pointer(Point{33, 43}, Point{32.5, 34})
	s.words(29, 47, "pad", Start)
	s.words(55, 17.5, "lock nut", Start)
	s.words(56, 43, "turn back", Start)
	s.words(56, 47, "a flat or two", Start)
	s.words(2, 53, "run-out (dashed) eats the gap: tight spot", Start)
	return s.drawing("peg-gap", "Gap of the peg at the wheel's tight spot",
		"Section through the peg: the back face of the crown wheel, the gap, the pad on its screw, the boss of the casting and the lock nut. The back face runs out, drawn dashed: the gap is read at the tight spot, where the face comes nearest, after locking.")
}
