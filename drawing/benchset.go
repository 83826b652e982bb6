package drawing

// BenchSet draws how the crown wheel, the dial and the jack stand for a bench
// reading, seen along the pinion.
func BenchSet() Drawing {
	d := Drawing{
		Name: "bench", Width: 150, Height: 62, Title: "Dial and jack on the back face of the crown wheel",
		Desc: "The crown wheel on its diff centre between two side bearings, seen along the pinion. The pinion meshes at the bottom of the toothed face. " +
			"The dial stands on the back face behind the mesh, its foot on the casting. The jack stands between casting and back face and pushes the wheel towards the pinion.",
	}
	ink := Ink{Width: medium}
	axis := Ink{Width: thin, Dash: []float64{6, 1.5, 1, 1.5}}
	box := func(left, top, right, bottom float64) Rect {
		return Rect{Box: Box{Left: left, Top: top, Right: right, Bottom: bottom}, Ink: ink}
	}
	label := func(x, y float64, words string, anchor Anchor) Text {
		return Text{At: Point{x, y}, Words: words, Size: normal, Anchor: anchor}
	}
	pointer := func(fromX, fromY, toX, toY float64) Line {
		return Line{From: Point{fromX, fromY}, To: Point{toX, toY}, Ink: Ink{Width: thin}}
	}
	d.Layers = []Layer{
		{Name: "casting", Shapes: []Shape{
			Hatch{Outline: []Point{{18, 22}, {26, 22}, {26, 40}, {18, 40}}, Angle: 45, Spacing: 1.6, Ink: Ink{Width: thin, Tone: Grey}},
			Hatch{Outline: []Point{{112, 22}, {120, 22}, {120, 40}, {112, 40}}, Angle: 45, Spacing: 1.6, Ink: Ink{Width: thin, Tone: Grey}},
			Hatch{Outline: []Point{{84, 4}, {120, 4}, {120, 9}, {84, 9}}, Angle: 45, Spacing: 1.6, Ink: Ink{Width: thin, Tone: Grey}},
			box(18, 22, 26, 40), box(112, 22, 120, 40), box(84, 4, 120, 9),
		}},
		{Name: "wheel", Shapes: []Shape{
			box(26, 26, 54, 36), box(66, 26, 112, 36), box(60, 20, 66, 42), // centre and its flange
			box(54, 10, 60, 52), // crown wheel: teeth to the left, back face to the right
			Line{From: Point{12, 31}, To: Point{126, 31}, Ink: axis},
			Circle{Centre: Point{48.5, 49}, Radius: 5, Ink: ink}, label(48.5, 60, "pinion, seen end on", Middle),
		}},
		{Name: "reading", Shapes: []Shape{
			Line{From: Point{60.4, 49}, To: Point{74, 49}, Ink: Ink{Width: strong}}, // dial's plunger
			Circle{Centre: Point{78.5, 49}, Radius: 4.5, Ink: ink}, Line{From: Point{78.5, 49}, To: Point{80.5, 46}, Ink: ink},
			Line{From: Point{83, 49}, To: Point{114, 49}, Ink: Ink{Width: strong}}, Line{From: Point{114, 49}, To: Point{114, 40}, Ink: Ink{Width: strong}},
			label(88, 55, "dial behind the mesh, foot on the casting", Start),
			Line{From: Point{60.4, 14}, To: Point{76, 14}, Ink: Ink{Width: strong, Tone: Accent}}, box(76, 11.5, 84, 16.5),
			Line{From: Point{84, 14}, To: Point{90, 14}, Ink: Ink{Width: strong, Tone: Accent}},
			Line{From: Point{90, 14}, To: Point{90, 9}, Ink: Ink{Width: strong, Tone: Accent}},
			label(92, 16, "jack, if no torque is used", Start),
			pointer(53.6, 12, 40, 8), label(39, 9, "teeth", End), pointer(60.3, 17.5, 70, 19), label(71, 20.5, "back face", Start),
			label(22, 46, "far side", Middle), label(116, 46, "near side", Start),
		}},
	}
	return d
}
