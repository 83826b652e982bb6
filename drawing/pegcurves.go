package drawing

import (
	"fmt"
	"math"
	"slices"

	"axlewright/assess"
	"axlewright/quantity"
)

// load draws the load over torque.
func (p *pegPicture) load() {
	line := p.line(p.y1, func(q assess.PegPoint) float64 { return q.Load }, Ink{Width: 0.7})
	if t, touches := p.firstTouch(); touches { // the corner lies between two points of the curve
		at := Vertex{At: Point{p.x.at(t), p.y1.at(0)}}
		i := slices.IndexFunc(line.Vertices, func(v Vertex) bool { return v.At.X >= at.At.X })
		line.Vertices = slices.Insert(line.Vertices, i, at)
	}
	p.curves = append(p.curves, line)
}

func (p *pegPicture) line(y scale, value func(assess.PegPoint) float64, ink Ink) Path {
	path := Path{Ink: ink}
	for _, q := range p.curve {
		path.Vertices = append(path.Vertices, Vertex{At: Point{p.x.at(q.Torque), y.at(value(q))}})
	}
	return path
}

// movement draws the two movements, names each at its own line, and measures
// what the peg takes off at the demand.
func (p *pegPicture) movement() {
	with := func(q assess.PegPoint) float64 { return q.With }
	without := func(q assess.PegPoint) float64 { return q.Without }
	p.curves = append(p.curves,
		p.line(p.y2, without, Ink{Width: medium, Dash: []float64{2.4, 1}}),
		p.line(p.y2, with, Ink{Width: 0.7}))

	p.saving(with, without)

	// The names stand where the lines have parted: the upper one before its line,
	// the lower one behind its own.
	at := p.x.low + (p.x.high-p.x.low)*0.86
	upper, lower, high, low := "without the peg", "with the peg", p.between(at, without), p.between(at, with)
	if low > high {
		upper, lower, high, low = lower, upper, low, high
	}
	x := p.x.at(at)
	p.nameLine(upper, Point{x - 2, p.y2.at(high) - 1.2}, End)
	p.nameLine(lower, Point{x + 1, p.y2.at(low) + 4.2}, Middle)
}

// leastSaving is the least movement that is worth a figure: half of what a dial
// in hundredths of a millimetre shows.
const leastSaving = 0.005e-3 // m

// saving measures at the demand what the peg takes off the movement.
func (p *pegPicture) saving(with, without func(assess.PegPoint) float64) {
	d := p.advice.Demand.Peak.Median * p.flankShare()
	if !(d > p.x.low && d < p.x.high) {
		return
	}
	more, less := p.between(d, without), p.between(d, with)
	if math.Abs(p.y2.at(more)-p.y2.at(less)) > 3 { // else too little to measure on the paper
		p.labels = append(p.labels, Dimension{From: Point{p.x.at(d), p.y2.at(less)}, To: Point{p.x.at(d), p.y2.at(more)}, Ink: Ink{Width: light}})
	}
	text := "the peg takes off nothing"
	if math.Abs(more-less) >= leastSaving {
		verb := "takes off"
		if more < less {
			verb = "adds"
		}
		text = fmt.Sprintf("the peg %s %s", verb, quantity.Format(math.Abs(more-less), quantity.Length))
	}
	t := Text{At: Point{p.x.at(d) + 1.5, p.lower.Top + 4.5}, Words: text, Size: small, Anchor: Start, Clear: true}
	if t.Box().Right > p.lower.Right-1 {
		t.At.X, t.Anchor = p.x.at(d)-1.5, End
	}
	p.labels = append(p.labels, t)
}

// nameLine sets a name as near to its place as the panel and the other names let it.
func (p *pegPicture) nameLine(name string, at Point, anchor Anchor) {
	t := Text{At: at, Words: name, Size: small, Anchor: anchor, Clear: true}
	box := t.Box()
	t.At.X += max(0, p.lower.Left+1-box.Left) - max(0, box.Right-p.lower.Right+1)
	t.At.Y += max(0, p.lower.Top+1-box.Top) - max(0, box.Bottom-p.lower.Bottom+1)
	free := func() bool {
		return p.lower.Holds(t.Box()) && !slices.ContainsFunc(p.labels, func(s Shape) bool {
			other, is := s.(Text)
			return is && other.Box().Overlaps(t.Box())
		})
	}
	wish := t.At.Y
	for k := 1; !free() && k < 40; k++ { // down, up, further down, further up
		step := float64((k+1)/2) * small * 0.6
		if k%2 == 0 {
			step = -step
		}
		t.At.Y = wish + step
	}
	p.labels = append(p.labels, t)
}

// between reads a curve between its points.
func (p *pegPicture) between(torque float64, value func(assess.PegPoint) float64) float64 {
	for i := 1; i < len(p.curve); i++ {
		if a, b := p.curve[i-1], p.curve[i]; torque <= b.Torque {
			return value(a) + (value(b)-value(a))*(torque-a.Torque)/(b.Torque-a.Torque)
		}
	}
	return value(p.curve[len(p.curve)-1])
}

// firstTouch is the torque at which the load on the peg begins, read from the
// curve: the line through its first two loaded points, carried back to no load
// but not past the last point without load.
func (p *pegPicture) firstTouch() (torque float64, touches bool) {
	for i, q := range p.curve {
		if q.Load <= 0 {
			continue
		}
		if i == 0 {
			return q.Torque, true
		}
		from := p.curve[i-1].Torque
		torque = from
		if i+1 < len(p.curve) {
			if next := p.curve[i+1]; next.Load > q.Load {
				torque = q.Torque - q.Load*(next.Torque-q.Torque)/(next.Load-q.Load)
			}
		}
		return max(torque, from), true
	}
	return 0, false
}

// touch marks the first touch through both panels and names it where the load
// has not yet risen.
func (p *pegPicture) touch() {
	t, touches := p.firstTouch()
	if !touches {
		p.noteTouch("the peg is not touched up to "+p.words(p.x.high), p.upper.Left+1.5, Start)
		return
	}
	x := p.x.at(t)
	for _, panel := range []Box{p.upper, p.lower} {
		p.curves = append(p.curves, Line{Point{x, panel.Top}, Point{x, panel.Bottom}, Ink{Width: light, Dash: []float64{1, 0.8}}})
	}
	p.curves = append(p.curves, Circle{Centre: Point{x, p.y1.at(0)}, Radius: 1, Ink: Ink{Width: medium}, Fill: Paper})
	text := "first touched at " + p.words(t)
	if x+3+TextWidth(text, small, false) < p.upper.Right {
		p.noteTouch(text, x+1.5, Start)
	} else {
		p.noteTouch(text, x-1.5, End)
	}
}

func (p *pegPicture) noteTouch(text string, x float64, anchor Anchor) {
	p.labels = append(p.labels, Text{At: Point{x, p.upper.Top + 4.5}, Words: text, Size: small, Anchor: anchor, Clear: true})
}

func (p *pegPicture) words(torque float64) string {
	return quantity.FormatDigits(torque, quantity.Torque, 2)
}

func (p *pegPicture) desc() string {
	end := p.curve[len(p.curve)-1]
	touch := "The peg is not touched up to " + p.words(end.Torque) + "."
	if t, touches := p.firstTouch(); touches {
		touch = fmt.Sprintf("The peg is first touched at %s and carries %s at %s.", p.words(t),
			quantity.FormatDigits(end.Load, quantity.Force, 2), p.words(end.Torque))
	}
	return fmt.Sprintf("%s There the crown wheel has moved %s with the peg and %s without. Demand on this flank: %s.", touch,
		quantity.Format(end.With, quantity.Length), quantity.Format(end.Without, quantity.Length),
		quantity.FormatDigits(p.advice.Demand.Peak.Median*p.flankShare(), quantity.Torque, 3))
}
