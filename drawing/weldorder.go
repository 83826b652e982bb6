package drawing

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"axlewright/weldplan"
)

// WeldOrder shows in which order and direction the runs are laid: views of the
// casting in third angle (ISO 5456-2) about the one from behind, each with the
// runs on the faces that look that way, and the casting's limbs thin. wide is of
// the picture, mm.
func WeldOrder(j *weldplan.Job, s *weldplan.Sequence, wide float64) Drawing {
	o := weldOrder{}
	for i := range s.Steps {
		o.run(j, &s.Steps[i], i+1)
	}
	high := o.lay(wide)
	var words []string
	if wide >= 150 { // a small one stands on a paper that says it
		words, _ = Wrap(WeldOrderSays, wide-8, small, false, 4)
	}
	var below []Shape
	for _, l := range words {
		below = append(below, Text{At: Point{4, high}, Words: l, Size: small})
		high += small * spread
	}
	d := Drawing{Name: "weld-order", Width: wide, Height: high, Title: fmt.Sprintf("Order of %d runs", len(s.Steps)), Desc: WeldOrderSays}
	d.Layers = []Layer{{"paper", []Shape{Rect{Box: Box{0, 0, wide, high}, Fill: Paper}}}, {"casting", o.casting(j)}, {"runs", o.arrows()}, {"turns", o.turns()}, {"words", below}}
	return d
}

// WeldOrderSays is how the picture of an order is read.
const WeldOrderSays = "Thick arrows: the runs in their order, and which way each goes on; its beads are laid backwards, one after another. x out of the nose, y along the wheel’s axis, z up. Thin lines: limbs of the casting; circles: bores."

// A weldView is one view: where it stands about the one from behind, and which
// way its paper runs.
type weldView struct {
	name         string
	facing       r3.Vec // the way the faces that it shows look
	right, up    r3.Vec
	column, line int
}

var weldViews = []weldView{
	{"from behind", r3.Vec{X: -1}, r3.Vec{Y: -1}, r3.Vec{Z: 1}, 1, 1},
	{"from above", r3.Vec{Z: 1}, r3.Vec{Y: -1}, r3.Vec{X: 1}, 1, 0},
	{"from below", r3.Vec{Z: -1}, r3.Vec{Y: -1}, r3.Vec{X: -1}, 1, 2},
	{"from the side −y", r3.Vec{Y: -1}, r3.Vec{X: 1}, r3.Vec{Z: 1}, 2, 1},
	{"from the side +y", r3.Vec{Y: 1}, r3.Vec{X: -1}, r3.Vec{Z: 1}, 0, 1},
	{"from the nose", r3.Vec{X: 1}, r3.Vec{Y: 1}, r3.Vec{Z: 1}, 3, 1},
}

// A weldOrder is the picture in the making.
type weldOrder struct {
	runs   []orderRun
	frame  [6]Box // of each view on paper; empty where it shows nothing
	scale  float64
	radius float64  // mm, of the circles round the turns
	low    [6]Point // m, of each view's lower left corner
}

type orderRun struct {
	turn int
	view int
	line []r3.Vec // in the way it is laid
	out  Point    // on paper, away from its plate's middle
	at   Point    // on paper, of its number
}

// run is one step: its ends, and between them where its beads meet.
func (o *weldOrder) run(j *weldplan.Job, step *weldplan.SequenceStep, turn int) {
	vec := func(v [3]float64) r3.Vec { return r3.Vec{X: v[0], Y: v[1], Z: v[2]} }
	r := orderRun{turn: turn, line: []r3.Vec{vec(step.From)}}
	for _, p := range step.Pieces[:max(0, len(step.Pieces)-1)] {
		r.line = append(r.line, vec(p.From)) // laid backwards: where this bead begins, the next ends
	}
	r.line = append(r.line, vec(step.To))
	for i := range j.Plates {
		var middle r3.Vec
		var own *weldplan.Run
		for k := range j.Plates[i].Runs {
			data := &j.Plates[i].Runs[k]
			middle = r3.Add(middle, r3.Scale(0.5/float64(len(j.Plates[i].Runs)), r3.Add(data.From.At, data.To.At)))
			if data.Name == step.Run {
				own = data
			}
		}
		if own == nil {
			continue
		}
		for v := range weldViews {
			if r3.Dot(own.Side.Vec(), weldViews[v].facing) > r3.Dot(own.Side.Vec(), weldViews[r.view].facing)+1e-9 {
				r.view = v
			}
		}
		a, b := weldViews[r.view].flat(r3.Scale(0.5, r3.Add(own.From.At, own.To.At))), weldViews[r.view].flat(middle)
		r.out = Point{a.X - b.X, b.Y - a.Y}
	}
	if size := math.Hypot(r.out.X, r.out.Y); size > 0 {
		r.out = Point{r.out.X / size, r.out.Y / size}
	} else {
		r.out = Point{0, -1}
	}
	o.runs = append(o.runs, r)
}

// flat is where a place lies in a view, in metres, y up.
func (v *weldView) flat(p r3.Vec) Point { return Point{r3.Dot(p, v.right), r3.Dot(p, v.up)} }

// lay puts the views on paper of a width and returns how high it is. Views side
// by side share their height, and those above each other their width.
func (o *weldOrder) lay(wide float64) float64 {
	const beyond = 16e-3 // m, shown round the runs
	const gap, margin, head, foot = 5.0, 2.0, 5.0, 3.0
	least, most := [3]float64{math.Inf(1), math.Inf(1), math.Inf(1)}, [3]float64{math.Inf(-1), math.Inf(-1), math.Inf(-1)}
	shown := [6]bool{}
	for _, r := range o.runs {
		shown[r.view] = true
		facing := weldViews[r.view].facing
		for _, p := range r.line {
			for axis, x := range [3]float64{p.X, p.Y, p.Z} {
				if [3]float64{facing.X, facing.Y, facing.Z}[axis] == 0 {
					least[axis], most[axis] = math.Min(least[axis], x-beyond), math.Max(most[axis], x+beyond)
				}
			}
		}
	}
	var columns [4]float64 // m
	var lines [3]float64
	for v := range weldViews {
		if !shown[v] {
			continue
		}
		w := &weldViews[v]
		a, b := w.flat(r3.Vec{X: least[0], Y: least[1], Z: least[2]}), w.flat(r3.Vec{X: most[0], Y: most[1], Z: most[2]})
		o.low[v] = Point{math.Min(a.X, b.X), math.Min(a.Y, b.Y)}
		columns[w.column] = math.Abs(a.X - b.X)
		lines[w.line] = math.Abs(a.Y - b.Y)
	}
	total, count := 0.0, 0
	for _, c := range columns {
		if c > 0 {
			total, count = total+c, count+1
		}
	}
	deep, rows := 0.0, 0
	for _, l := range lines {
		if l > 0 {
			deep, rows = deep+l, rows+1
		}
	}
	tallest := 0.62 * wide                                              // so that it goes on a page beside words
	o.scale = math.Min((wide-2*margin-gap*float64(count-1))/total, 900) // mm on paper for a metre
	o.scale = math.Min(o.scale, (tallest-float64(rows)*(head+2))/deep)
	y := margin
	for l := range lines {
		if lines[l] == 0 {
			continue
		}
		y += head
		x := (wide - total*o.scale - gap*float64(count-1)) / 2
		for c := range columns {
			for v := range weldViews {
				if shown[v] && weldViews[v].column == c && weldViews[v].line == l {
					o.frame[v] = Box{x, y, x + columns[c]*o.scale, y + lines[l]*o.scale}
				}
			}
			if columns[c] > 0 {
				x += columns[c]*o.scale + gap
			}
		}
		y += lines[l]*o.scale + 2
	}
	o.radius = 3.0
	if wide < 150 {
		o.radius = 2.2
	}
	o.number(wide)
	return y + foot
}

// on is where a place lies on paper in a view.
func (o *weldOrder) on(v int, p r3.Vec) Point {
	q := weldViews[v].flat(p)
	return Point{o.frame[v].Left + (q.X-o.low[v].X)*o.scale, o.frame[v].Bottom - (q.Y-o.low[v].Y)*o.scale}
}

// number puts the turns beside their runs, on a small picture on them, and pushes
// apart those that meet.
func (o *weldOrder) number(wide float64) {
	beside := o.radius + 1.6
	if wide < 150 {
		beside = 0
	}
	for i := range o.runs {
		r := &o.runs[i]
		m := o.middle(r)
		r.at = Point{m.X + r.out.X*beside, m.Y + r.out.Y*beside}
	}
	apart := 2*o.radius + 0.4
	for range 200 {
		moved := false
		for i := range o.runs {
			for k := range i {
				a, b := &o.runs[i].at, &o.runs[k].at
				d := math.Hypot(a.X-b.X, a.Y-b.Y)
				if d >= apart {
					continue
				}
				moved = true
				way := Point{1, 0}
				if d > 1e-6 {
					way = Point{(a.X - b.X) / d, (a.Y - b.Y) / d}
				}
				push := (apart - d) / 2
				*a, *b = Point{a.X + way.X*push, a.Y + way.Y*push}, Point{b.X - way.X*push, b.Y - way.Y*push}
			}
		}
		if !moved {
			break
		}
	}
}

// middle is half way along a run, on paper.
func (o *weldOrder) middle(r *orderRun) Point {
	n := len(r.line)
	a, b := o.on(r.view, r.line[(n-1)/2]), o.on(r.view, r.line[n/2])
	return Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}
}

// casting draws the limbs in each view, as far as its frame goes, and the bores.
func (o *weldOrder) casting(j *weldplan.Job) []Shape {
	var shapes []Shape
	for v := range weldViews {
		f := o.frame[v]
		if f.Width() == 0 {
			continue
		}
		shapes = append(shapes, Text{At: Point{f.Left, f.Top - 1.6}, Words: weldViews[v].name, Size: small, Bold: true},
			Rect{Box: f, Ink: Ink{Width: hairline, Tone: Pale}})
		for i := range j.Casting.Limbs {
			for _, e := range edgesOf(&j.Casting.Limbs[i]) {
				if a, b, in := f.clip(o.on(v, e[0]), o.on(v, e[1])); in {
					shapes = append(shapes, Line{a, b, Ink{Width: hairline, Tone: Grey}})
				}
			}
		}
		for _, b := range j.Casting.Bores {
			at := o.on(v, b.At.At)
			if r := 1.6; f.Holds(Box{at.X - r, at.Y - r, at.X + r, at.Y + r}) {
				shapes = append(shapes, Circle{Centre: at, Radius: r, Ink: Ink{Width: light, Tone: Grey}})
			}
		}
	}
	return shapes
}

// edgesOf are the edges of a limb as a box of its width and depth.
func edgesOf(l *weldplan.Limb) [][2]r3.Vec {
	along := r3.Unit(r3.Sub(l.To.At, l.From.At))
	wide := r3.Unit(l.Across.Vec())
	deep := r3.Cross(along, wide)
	var corner [2][4]r3.Vec
	for e, end := range []r3.Vec{l.From.At, l.To.At} {
		for c, s := range [4][2]float64{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}} {
			corner[e][c] = r3.Add(end, r3.Add(r3.Scale(s[0]*l.Width.Value/2, wide), r3.Scale(s[1]*l.Depth.Value/2, deep)))
		}
	}
	var edges [][2]r3.Vec
	for c := range 4 {
		next := (c + 1) % 4
		edges = append(edges, [2]r3.Vec{corner[0][c], corner[0][next]}, [2]r3.Vec{corner[1][c], corner[1][next]}, [2]r3.Vec{corner[0][c], corner[1][c]})
	}
	return edges
}

// clip cuts a line off at the box (Liang and Barsky); in says that some is left.
func (b Box) clip(from, to Point) (p, q Point, in bool) {
	enter, leave := 0.0, 1.0
	dx, dy := to.X-from.X, to.Y-from.Y
	for _, s := range [4][2]float64{{-dx, from.X - b.Left}, {dx, b.Right - from.X}, {-dy, from.Y - b.Top}, {dy, b.Bottom - from.Y}} {
		switch {
		case s[0] == 0 && s[1] < 0:
			return p, q, false
		case s[0] < 0:
			enter = math.Max(enter, s[1]/s[0])
		case s[0] > 0:
			leave = math.Min(leave, s[1]/s[0])
		}
	}
	if enter >= leave {
		return p, q, false
	}
	return Point{from.X + enter*dx, from.Y + enter*dy}, Point{from.X + leave*dx, from.Y + leave*dy}, true
}

// arrows are the runs, each with a head at its end.
func (o *weldOrder) arrows() []Shape {
	var shapes []Shape
	for i := range o.runs {
		r := &o.runs[i]
		v := make([]Vertex, len(r.line))
		for k := range r.line {
			v[k] = Vertex{At: o.on(r.view, r.line[k])}
		}
		tip, from := v[len(v)-1].At, v[len(v)-2].At
		d := math.Hypot(tip.X-from.X, tip.Y-from.Y)
		if d == 0 { // end on to the view
			shapes = append(shapes, Circle{Centre: tip, Radius: 1, Fill: Black})
			continue
		}
		u := Point{(tip.X - from.X) / d, (tip.Y - from.Y) / d}
		const long, half = 3.0, 1.3
		root := Point{tip.X - u.X*long, tip.Y - u.Y*long}
		v[len(v)-1].At = root
		shapes = append(shapes, Path{Vertices: v, Ink: Ink{Width: heavy}},
			Path{Vertices: []Vertex{{At: tip}, {At: Point{root.X - u.Y*half, root.Y + u.X*half}}, {At: Point{root.X + u.Y*half, root.Y - u.X*half}}}, Closed: true, Fill: Black, Ink: Ink{Width: hairline}})
	}
	return shapes
}

func (o *weldOrder) turns() []Shape {
	var shapes []Shape
	for i := range o.runs {
		r := &o.runs[i]
		shapes = append(shapes, Line{o.middle(r), r.at, Ink{Width: thin}},
			Circle{Centre: r.at, Radius: o.radius, Ink: Ink{Width: light}, Fill: Paper},
			Text{At: Point{r.at.X, r.at.Y + 0.42*o.radius}, Words: fmt.Sprint(r.turn), Size: 1.2 * o.radius, Anchor: Middle, Bold: true})
	}
	return shapes
}
