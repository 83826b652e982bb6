package drawing

import (
	"math"

	"axlewright/calc/gear"
	"axlewright/setup"
)

// toothWidth and toothHeight are the paper of one flank, small enough for
// several in a row and large enough for a gloved thumb.
const toothWidth, toothHeight = 46, 30

// A tooth is one flank of a crown wheel's tooth on paper, its toe on the side
// where it is when one looks at that flank.
type tooth struct {
	left, right, tip, root float64 // of the whole flank at the heel
	coast                  bool
}

// at places a point of the flank: along from the toe to the heel, height from
// the root to the tip.
func (t tooth) at(along, height float64) Point {
	const toeHeight = 0.72 // of the heel's: the tooth is lower at its inner end
	x := t.left + (t.right-t.left)*along
	if t.coast {
		x = t.right - (t.right-t.left)*along
	}
	full := (t.root - t.tip) * (toeHeight + (1-toeHeight)*along)
	bow := 1.3 * math.Sin(math.Pi*along) // the flank is curved: convex on the drive side, hollow on the coast side
	if t.coast {
		bow = -bow
	}
	return Point{x, t.root - full*height - bow}
}

func (t tooth) outline() []Point {
	const steps = 12
	var points []Point
	for i := range steps + 1 {
		points = append(points, t.at(float64(i)/steps, 0))
	}
	for i := range steps + 1 {
		points = append(points, t.at(1-float64(i)/steps, 1))
	}
	return points
}

// mark draws where the paint is rubbed off.
func (t tooth) mark(s *sketch, m setup.ToothMark) {
	for _, spot := range spotsOf(m) {
		const steps = 28
		var points []Point
		for i := range steps {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / steps)
			points = append(points, t.at(within(spot.Along+spot.Length/2*cos), within(spot.Height+spot.Width/2*sin)))
		}
		s.add(closed(Paper, 0, points...), Hatch{Outline: points, Angle: 60, Spacing: 0.9, Crossed: true, Ink: Ink{Width: thin}}, closed("", strong, points...))
	}
}

// spotsOf are the spots of a mark: a patchy one has several.
func spotsOf(m setup.ToothMark) []setup.ToothMark {
	if m.Shape != setup.PatchyShape {
		return []setup.ToothMark{m}
	}
	var spots []setup.ToothMark
	for _, off := range []Point{{-0.17, 0.14}, {0.02, -0.16}, {0.18, 0.12}} {
		spots = append(spots, setup.ToothMark{Along: m.Along + off.X, Height: m.Height + off.Y, Length: 0.16, Width: 0.26})
	}
	return spots
}

func within(x float64) float64 { return math.Max(0.01, math.Min(0.99, x)) }

func newTooth(left, top, right, bottom float64, flank gear.Flank) tooth {
	return tooth{left: left, right: right, tip: top, root: bottom, coast: flank == gear.Coast}
}

// ToothFlank draws one flank with a mark on it. A mark that wanders is drawn on
// three teeth of the wheel.
func ToothFlank(name, title string, m setup.ToothMark) Drawing {
	s := sketch{}
	draw := func(t tooth, m setup.ToothMark) {
		s.add(closed(Paper, medium, t.outline()...))
		t.mark(&s, m)
	}
	if m.Shape == setup.Wandering {
		for i, along := range []float64{0.2, 0.5, 0.8} {
			top := 2.4 + 8*float64(i)
			wanders := setup.ToothMark{Along: along, Height: m.Height, Length: 0.28, Width: 0.6}
			draw(newTooth(3, top, toothWidth-3, top+6.4, m.Flank), wanders)
		}
	} else {
		draw(newTooth(3, 4.5, toothWidth-3, toothHeight-6, m.Flank), m)
	}
	toe, heel := Point{3, toothHeight - 1}, Point{toothWidth - 3, toothHeight - 1}
	toeAt, heelAt := Start, End
	if m.Flank == gear.Coast {
		toe, heel, toeAt, heelAt = heel, toe, heelAt, toeAt
	}
	s.words(toe.X, toe.Y, "toe", toeAt)
	s.words(heel.X, heel.Y, "heel", heelAt)
	d := s.drawing(name, title, "One "+string(m.Flank)+" flank of the crown wheel's teeth, toe to heel, the mark hatched: "+title+".")
	d.Width, d.Height = toothWidth, toothHeight
	return d
}

// ToothDepth draws a tooth from its side: as tall at the toe as at the heel or not.
func ToothDepth(name string, depth setup.Depth) Drawing {
	s := sketch{}
	toe := 8.0
	switch depth {
	case setup.ParallelDepth:
		toe = 4
	case setup.UnknownDepth:
		toe = 6
	}
	points := []Point{{3, toe + 6}, {toothWidth - 3, 4}, {toothWidth - 3, 20}, {3, 20}}
	if depth == setup.ParallelDepth {
		points[0].Y = 4
	}
	if depth == setup.UnknownDepth {
		s.dashed(points[0], points[1])
		s.dashed(Point{3, 4}, points[1])
		s.line(medium, points[1], points[2], points[3], Point{3, 4})
		s.add(Text{At: Point{toothWidth / 2, 16}, Words: "?", Size: 7, Anchor: Middle, Bold: true})
	} else {
		s.part(points...)
		s.gap(Point{6, points[0].Y + (4-points[0].Y)*3/(toothWidth-6)}, Point{6, 20}, 0, "")
		s.gap(Point{toothWidth - 6, 4.5}, Point{toothWidth - 6, 20}, 0, "")
	}
	s.words(3, toothHeight-4, "toe", Start)
	s.words(toothWidth-3, toothHeight-4, "heel", End)
	d := s.drawing(name, "Teeth: "+string(depth), "A tooth of the crown wheel from its side, toe to heel: "+string(depth)+" depth.")
	d.Width, d.Height = toothWidth, toothHeight
	return d
}
