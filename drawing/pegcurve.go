package drawing

import (
	"fmt"
	"math"

	"axlewright/assess"
	"axlewright/quantity"
)

// PegCurve draws the load on the peg, and below it the movement of the crown
// wheel with and without the peg, over the torque at the axle on the flank that
// loads the peg. The demand on that flank is a hatched band across both, and
// the torque at which the peg is first touched is marked.
func PegCurve(a *assess.Advice) Drawing {
	const width, height = 150.0, 124.0
	d := Drawing{Name: "peg", Width: width, Height: height, Title: "The peg: its load, and the movement of the crown wheel with and without it"}
	p := pegPicture{advice: a, curve: usable(a.Peg.Curve), width: width, height: height}
	if len(p.curve) < 2 {
		line := Clean(a.Peg.Text)
		if line == "" || a.Peg.Offered {
			line = "There is no curve of the peg to show."
		}
		b := words{size: normal, width: width - 10}
		b.add(line, false, 6)
		d.Height, d.Desc = 12+b.height(), line
		d.Layers = []Layer{{"labels", b.shapes(5, d.Height/2)}}
		return d
	}
	p.crop()
	p.layOut()
	p.demandBand()
	p.axes()
	p.load()
	p.movement()
	p.touch()
	d.Desc = p.desc()
	d.Layers = []Layer{{"demand", p.demand}, {"axes", p.grid}, {"curves", p.curves}, {"labels", p.labels}}
	return d
}

// usable leaves out points that have no place on a scale.
func usable(curve []assess.PegPoint) []assess.PegPoint {
	var list []assess.PegPoint
	for _, p := range curve {
		sound := drawable(p.Torque) && math.Abs(p.Load) < 1e9 && math.Abs(p.With) < 1 && math.Abs(p.Without) < 1
		if sound && (len(list) == 0 || p.Torque > list[len(list)-1].Torque) {
			list = append(list, p)
		}
	}
	return list
}

// pegPicture is the layout of the picture and the shapes made so far, by layer.
type pegPicture struct {
	advice        *assess.Advice
	curve         []assess.PegPoint
	width, height float64
	upper, lower  Box   // the two panels
	x, y1, y2     scale // torque, load, movement

	demand, grid, curves, labels []Shape
}

// crop leaves off what lies far above the demand and the first touch.
func (p *pegPicture) crop() {
	far := p.advice.Demand.Peak.High * p.flankShare() * 1.5
	if t, touches := p.firstTouch(); touches {
		far = max(far, 1.5*t)
	}
	for i, q := range p.curve {
		if i >= 2 && far > 0 && q.Torque >= far {
			p.curve = p.curve[:i+1]
			return
		}
	}
}

func (p *pegPicture) layOut() {
	const side, head, between, foot = 17.0, 11.0, 11.0, 14.0
	tall := (p.height - head - between - foot) / 2
	p.upper = Box{side, head, p.width - side, head + tall}
	p.lower = Box{side, head + tall + between, p.width - side, p.height - foot}
	end := p.curve[len(p.curve)-1]
	most, low, high := 0.0, 0.0, 0.0
	for _, q := range p.curve {
		most = max(most, q.Load)
		low, high = min(low, q.With, q.Without), max(high, q.With, q.Without)
	}
	if most == 0 {
		most = 1000
	}
	if high == low {
		high = low + 1e-4
	}
	margin := (high - low) * 0.08
	if low < 0 {
		low -= margin
	}
	p.x = scale{min(0, p.curve[0].Torque), end.Torque, p.upper.Left, p.upper.Right}
	p.y1 = scale{0, most * 1.08, p.upper.Bottom, p.upper.Top}
	p.y2 = scale{low, high + margin, p.lower.Bottom, p.lower.Top}
}

// flankShare is the part of the peak that reaches the flank which loads the peg.
func (p *pegPicture) flankShare() float64 {
	if p.advice.Peg.Flank == p.advice.Mounting.Forward {
		return p.advice.Demand.Forward
	}
	return p.advice.Demand.Backward
}

func (p *pegPicture) demandBand() {
	d, share := p.advice.Demand.Peak, p.flankShare()
	if !drawable(d.Low*share) || !drawable(d.High*share) || !(d.Median*share > 0) {
		return
	}
	on := func(t float64) float64 { return max(min(p.x.at(t*share), p.x.to), p.x.from) }
	for _, panel := range []Box{p.upper, p.lower} {
		band := Box{on(d.Low), panel.Top, on(d.High), panel.Bottom}
		p.demand = append(p.demand,
			Hatch{Outline: band.Corners(), Angle: 45, Spacing: 1.5, Ink: Ink{Width: hairline, Tone: Pale}},
			Line{Point{band.Left, band.Top}, Point{band.Left, band.Bottom}, Ink{Width: hairline, Tone: Grey}},
			Line{Point{band.Right, band.Top}, Point{band.Right, band.Bottom}, Ink{Width: hairline, Tone: Grey}})
		if d.Median*share <= p.x.high {
			x := on(d.Median)
			p.demand = append(p.demand, Line{Point{x, band.Top}, Point{x, band.Bottom}, Ink{Width: medium, Dash: []float64{3, 0.9, 0.6, 0.9}}})
		}
	}
	p.note(p.upper.Top-6.6, (on(d.Low)+on(d.High))/2,
		fmt.Sprintf("demand on this flank, peak: %s", quantity.FormatDigits(d.Median*share, quantity.Torque, 3)), true)
	p.demand = append(p.demand, Line{Point{on(d.Low), p.upper.Top - 1}, Point{on(d.High), p.upper.Top - 1}, Ink{Width: strong}})
}

// note sets words with their middle as near to x as the paper lets them.
func (p *pegPicture) note(base, x float64, text string, bold bool) {
	line, whole := Shorten(text, p.width-2, small, bold)
	half := TextWidth(line, small, bold)/2 + 0.5
	t := Text{At: Point{max(min(x, p.width-half), half), base}, Words: line, Size: small, Anchor: Middle, Bold: bold, Clear: true}
	if !whole {
		t.Full = text
	}
	p.labels = append(p.labels, t)
}

// axes rules both panels, metric to the left and below, the other system to the
// right and below that.
func (p *pegPicture) axes() {
	p.upright(p.upper, p.y1, "kN", "lbf", quantity.Force, "load on the peg")
	p.upright(p.lower, p.y2, "mm", "thou", quantity.Length, "movement of the crown wheel away from the pinion")
	for row, unit := range []string{"N·m", "lbf·ft"} {
		u := unitFor(unit, quantity.Torque, p.x.high)
		base := p.lower.Bottom + 4.4 + 4.2*float64(row)
		for _, t := range ticks(p.x.low/u.size, p.x.high/u.size, 7) {
			x := p.x.at(t * u.size)
			if row == 0 {
				p.grid = append(p.grid, Line{Point{x, p.lower.Bottom}, Point{x, p.lower.Bottom + 1.2}, Ink{Width: thin}})
				p.grid = append(p.grid, Line{Point{x, p.upper.Bottom}, Point{x, p.upper.Bottom + 1.2}, Ink{Width: thin}})
			}
			p.grid = append(p.grid, Text{At: Point{x, base}, Words: tickWords(t), Size: small, Anchor: Middle})
		}
		p.grid = append(p.grid, Text{At: Point{p.width - 1, base}, Words: u.words, Size: small, Anchor: End, Bold: true})
	}
	flank := "torque at the axle"
	if p.advice.Peg.Flank != "" {
		flank = fmt.Sprintf("torque at the axle, on the %s side of the crown wheel's teeth", p.advice.Peg.Flank)
	}
	p.grid = append(p.grid, Text{At: Point{(p.lower.Left + p.lower.Right) / 2, p.height - 1.2}, Words: flank, Size: small, Anchor: Middle})
}

func (p *pegPicture) upright(panel Box, y scale, metric, other string, dim quantity.Dimension, name string) {
	for side, unit := range []string{metric, other} {
		u := unitFor(unit, dim, y.high)
		x, out, anchor := panel.Left, -1.0, End
		if side == 1 {
			x, out, anchor = panel.Right, 1, Start
		}
		for _, v := range ticks(y.low/u.size, y.high/u.size, 6) {
			at := y.at(v * u.size)
			if side == 0 {
				p.grid = append(p.grid, Line{Point{panel.Left, at}, Point{panel.Right, at}, Ink{Width: hairline, Tone: Pale, Dash: []float64{0.3, 1.2}}})
			}
			p.grid = append(p.grid, Line{Point{x, at}, Point{x + out*1.2, at}, Ink{Width: thin}},
				Text{At: Point{x + out*1.7, at + small*0.36}, Words: tickWords(v), Size: small, Anchor: anchor})
		}
		p.grid = append(p.grid, Line{Point{x, panel.Top}, Point{x, panel.Bottom}, Ink{Width: thin}})
		t := Text{At: Point{1, panel.Top - 2.2}, Words: u.words, Size: small, Anchor: Start, Bold: true}
		if side == 1 {
			t.At.X, t.Anchor = p.width-1, End
		}
		p.grid = append(p.grid, t)
	}
	p.grid = append(p.grid, Line{Point{panel.Left, panel.Bottom}, Point{panel.Right, panel.Bottom}, Ink{Width: light}},
		Text{At: Point{panel.Left, panel.Top - 2.2}, Words: name, Size: small, Anchor: Start, Bold: true})
}
