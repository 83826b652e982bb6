package drawing

import (
	"math"
	"strings"

	"axlewright/assess"
	"axlewright/quantity"
)

// Size of a ladder on a sheet of A4.
const (
	ladderWidth  = 190
	ladderHeight = 104
)

// Ladder draws the ladder for a sheet of A4; see LadderSized.
func Ladder(a *assess.Advice) Drawing { return LadderSized(a, ladderWidth, ladderHeight) }

// LadderSized draws axle torque upward and a column for each build shown. Each
// link is a rung at its median with a whisker from 10 to 90 %; the demand of
// the vehicle is a hatched band across. The weak link is named at its own
// height, the runner-up with it. It needs some 120 by 70 mm to be read.
func LadderSized(a *assess.Advice, width, height float64) Drawing {
	l := newLadder(a, width, height)
	d := Drawing{Name: "ladder", Width: width, Height: height, Title: l.title(), Desc: l.desc()}
	if len(l.columns) == 0 {
		d.Layers = []Layer{{"labels", []Shape{Text{At: Point{2, 6}, Words: "No build to show.", Size: normal}}}}
		return d
	}
	l.demandBand()
	l.axes()
	for i := range l.columns {
		c := &l.columns[i]
		l.frame(c)
		l.rungs(c)
		l.label(c)
		l.footOf(c)
	}
	l.legend()
	d.Layers = []Layer{
		{"demand", l.demand}, {"axes", l.grid}, {"frame", l.frames}, {"rungs", l.rung}, {"labels", l.labels}, {"foot", l.feet}, {"legend", l.key},
	}
	return d
}

// ladder is the layout of the picture and the shapes made so far, by layer.
type ladder struct {
	advice  *assess.Advice
	columns []ladderColumn
	box     Box     // of the whole picture
	plot    Box     // of rungs and demand
	foot    float64 // height of the foot of the columns
	gutter  Box     // left part of the plot, where the demand is named
	y       scale

	demand, grid, frames, rung, labels, feet, key []Shape
}

// A ladderColumn is the room of one build.
type ladderColumn struct {
	build    *assess.Build
	index    int // into Advice.Builds
	number   int // as on every paper, from 1
	box      Box // over the height of the plot
	rails    Box // where the rungs are
	words    Box // where the labels are
	optional bool
}

// Heights around the plot, mm.
const (
	headRoom   = 6.2
	footRoom   = 17.2 // and lastsRoom more where a distance is wanted
	lastsRoom  = 3.2
	legendRoom = 4.6
	axisRoom   = 11.2
)

func newLadder(a *assess.Advice, width, height float64) *ladder {
	l := &ladder{advice: a, box: Box{0, 0, width, height}, foot: footRoom}
	if l.distance() {
		l.foot += lastsRoom
	}
	shown := Shown(a)
	l.plot = Box{axisRoom, headRoom, width - axisRoom, height - l.foot - legendRoom}
	l.gutter = l.plot
	l.gutter.Right = l.plot.Left + 26
	if len(shown) > 4 {
		l.gutter.Right = l.plot.Left + 19.5
	}
	top := l.top(shown)
	l.y = scale{low: l.bottom(shown, top), high: top, from: l.plot.Bottom, to: l.plot.Top}
	each := 0.0
	if len(shown) > 0 {
		each = (l.plot.Right - l.gutter.Right) / float64(len(shown))
	}
	for i, index := range shown {
		left := l.gutter.Right + float64(i)*each
		c := ladderColumn{build: &a.Builds[index], index: index, number: i + 1, box: Box{left, l.plot.Top, left + each, l.plot.Bottom}}
		railWidth := min(max(each*0.2, 4.5), 9)
		c.rails = Box{left + 1.2, l.plot.Top, left + 1.2 + railWidth, l.plot.Bottom}
		c.words = Box{c.rails.Right + 2.2, l.plot.Top + 0.6, left + each - 0.9, l.plot.Bottom - 0.4}
		c.optional = c.words.Width() > 25
		l.columns = append(l.columns, c)
	}
	return l
}

// distance says whether the builds were asked to last one.
func (l *ladder) distance() bool { return l.advice.Distance > 0 && l.advice.Distance < 1e7 }

// top is the torque at the top of the picture: over the demand and the rungs
// that matter, but not so far over the demand that it would shrink to nothing.
func (l *ladder) top(shown []int) float64 {
	d := &l.advice.Demand.Peak
	most := func(high float64, values ...float64) float64 {
		for _, v := range values {
			if drawable(v) {
				high = math.Max(high, v)
			}
		}
		return high
	}
	demand := most(0, d.Median, d.High)
	top := demand * 1.25
	for _, i := range shown {
		b := &l.advice.Builds[i]
		if weak, there := rungAt(b, b.Weak); there {
			top = most(top, weak.GiveOut.Median*1.1, math.Min(weak.GiveOut.High*1.04, weak.GiveOut.Median*1.6))
		}
		if next, there := rungAt(b, b.RunnerUp); there {
			top = most(top, next.GiveOut.Median*1.06)
		}
	}
	if demand > 0 {
		top = math.Min(top, demand*2.5)
	}
	if top < 1 { // nothing to show, or nothing that an axle knows
		return 1000
	}
	return top
}

// bottom is the torque at the foot of the picture: nothing, or where all that
// is drawn lies far above nothing, a round torque below it.
func (l *ladder) bottom(shown []int, top float64) float64 {
	lowest := top
	least := func(values ...float64) {
		for _, v := range values {
			if drawable(v) {
				lowest = math.Min(lowest, v)
			}
		}
	}
	least(l.advice.Demand.Peak.Low, l.advice.Demand.Peak.Median)
	for _, i := range shown {
		b := &l.advice.Builds[i]
		for _, r := range b.Links {
			least(r.GiveOut.Median)
		}
		for _, i := range []int{b.Weak, b.RunnerUp} {
			if r, there := rungAt(b, i); there {
				least(r.GiveOut.Low)
			}
		}
	}
	if lowest < 0.25*top {
		return 0
	}
	below := ticks(0, lowest*0.93, 12)
	return below[len(below)-1]
}

// place is the height of a torque, held within the plot.
func (l *ladder) place(torque float64) float64 {
	return max(min(l.y.at(torque), l.plot.Bottom), l.plot.Top)
}

func rungAt(b *assess.Build, i int) (*assess.Rung, bool) {
	if i < 0 || i >= len(b.Links) {
		return nil, false
	}
	return &b.Links[i], true
}

// wearsFirst is the link that most often is the first to wear out.
func wearsFirst(b *assess.Build) (*assess.Rung, bool) {
	r, there := rungAt(b, b.WearsFirst)
	return r, there && r.Kind == assess.Wears
}

// axes are the round torques of both systems, with their units at the head.
func (l *ladder) axes() {
	most := max(int(l.plot.Height()/6), 2)
	for side, unit := range []string{"N·m", "lbf·ft"} {
		u := unitFor(unit, quantity.Torque, l.y.high)
		x, out, anchor := l.plot.Left, -1.0, End
		if side == 1 {
			x, out, anchor = l.plot.Right, 1, Start
		}
		for _, t := range ticks(l.y.low/u.size, l.y.high/u.size, most) {
			y := l.y.at(t * u.size)
			if l.y.low > 0 && y > l.plot.Bottom-4 {
				continue // the sign of the broken axis stands there
			}
			if side == 0 {
				l.grid = append(l.grid, Line{Point{l.plot.Left, y}, Point{l.plot.Right, y}, Ink{Width: hairline, Tone: Pale, Dash: []float64{0.3, 1.2}}})
			}
			l.grid = append(l.grid,
				Line{Point{x, y}, Point{x + out*1.2, y}, Ink{Width: thin}},
				Text{At: Point{x + out*1.7, min(y+small*0.36, l.plot.Bottom)}, Words: tickWords(t), Size: small, Anchor: anchor})
		}
		l.grid = append(l.grid, Line{Point{x, l.plot.Top}, Point{x, l.plot.Bottom}, Ink{Width: thin}})
		if l.y.low > 0 {
			l.grid = append(l.grid, broken(Point{x, l.plot.Bottom})...)
		}
		name := Text{At: Point{0.3, l.plot.Top - 2.4}, Words: u.words, Size: small, Anchor: Start, Bold: true}
		if side == 1 {
			name.At.X, name.Anchor = l.box.Right-0.3, End
		}
		l.grid = append(l.grid, name)
	}
	l.grid = append(l.grid, Line{Point{l.plot.Left, l.plot.Bottom}, Point{l.plot.Right, l.plot.Bottom}, Ink{Width: light}})
}

// broken is the sign across the foot of an axis that does not begin at nothing.
func broken(foot Point) []Shape {
	at := func(x, y float64) Vertex { return Vertex{At: Point{foot.X + x, foot.Y + y}} }
	return []Shape{
		Path{Vertices: []Vertex{at(-1, -0.7), at(1, -1.7), at(1, -2.7), at(-1, -1.7)}, Closed: true, Fill: Paper},
		Path{Vertices: []Vertex{at(-1, -0.7), at(1, -1.7)}, Ink: Ink{Width: thin}},
		Path{Vertices: []Vertex{at(-1, -1.7), at(1, -2.7)}, Ink: Ink{Width: thin}},
	}
}

// demandBand hatches the demand across all columns and names it in the gutter.
func (l *ladder) demandBand() {
	d := l.advice.Demand.Peak
	if !drawable(d.Median) || d.Median <= 0 {
		return
	}
	low, high := d.Low, d.High
	if !drawable(low) {
		low = d.Median
	}
	if !drawable(high) {
		high = l.y.high
	}
	band := Box{l.plot.Left, l.place(high), l.plot.Right, l.place(low)}
	y := l.place(d.Median)
	l.demand = append(l.demand,
		Hatch{Outline: band.Corners(), Angle: 45, Spacing: 1.5, Ink: Ink{Width: hairline, Tone: Pale}},
		Line{Point{band.Left, band.Top}, Point{band.Right, band.Top}, Ink{Width: hairline, Tone: Grey}},
		Line{Point{band.Left, band.Bottom}, Point{band.Right, band.Bottom}, Ink{Width: hairline, Tone: Grey}},
		Line{Point{band.Left, y}, Point{band.Right, y}, Ink{Width: medium, Dash: []float64{3, 0.9, 0.6, 0.9}}})
	l.demand = append(l.demand, whisker(l.gutter.Left+2.2, band.Top, band.Bottom, 1.6, Ink{Width: strong}, !drawable(d.High) || d.High > l.y.high, false)...)

	metric, other := torque(d.Median)
	left, width := l.gutter.Left+4.4, l.gutter.Width()-5.4
	block := words{size: small, width: width}
	block.add("demand", true, 2)
	block.add("peak, with shock", false, 2)
	block.add(metric, true, 2)
	block.add(other, false, 2)
	block.add(strings.TrimSuffix(rangeWords(d), " N·m"), false, 2)
	middle := relax([]slot{{y, block.height()}}, 0, l.plot.Top+0.5, l.plot.Bottom-0.5)[0]
	l.demand = append(l.demand, block.shapes(left, middle)...)
}
