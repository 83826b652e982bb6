package kit

import (
	"math"
	"strings"

	"axlewright/kit/outline"
)

// An Etching is the mark of a plate: what it says and the strokes that say it.
type Etching struct {
	Lines   []string      `json:"lines"`
	At      outline.Point `json:"at"`      // middle of the block
	Turn    float64       `json:"turn"`    // rad
	Size    float64       `json:"size"`    // m, height of capitals
	Strokes []Stroke      `json:"strokes"` // words, and an arrow that points up on the casting
}

// Length of all strokes.
func (e Etching) Length() float64 {
	sum := 0.0
	for _, s := range e.Strokes {
		sum += s.Length()
	}
	return sum
}

// Sizes of etched letters: common practice, no source.
const (
	leastLetters = 2.5e-3 // m
	mostLetters  = 4e-3   // m
	markMargin   = 1.5e-3 // m, between a mark and a hole or an unwelded edge
)

// sayings are the ways to break a mark into lines, the flattest first.
func sayings(p *Plate, batch string) [][]string {
	piece := "P" + p.Key()
	words := []string{p.Kit.String(), piece, p.Steel}
	if batch != "" {
		words = append(words, batch)
	}
	join := func(from, to int) string { return strings.Join(words[from:min(to, len(words))], " ") }
	return [][]string{
		{join(0, 2), join(2, 4)},
		{words[0], join(1, 4)},
		{words[0], join(1, 3), join(3, 4)},
		{words[0], piece, words[2], join(3, 4)},
	}
}

// etch finds room for the mark of a plate, or puts it where the file says. Of a
// pair, the right one has it where its left twin has.
func (d *draft) etch(plate *Plate, p *Piece, scope names, field string, twin *Plate) {
	m := p.Mark
	if m.None {
		return
	}
	ways := sayings(plate, d.options.Batch)
	sizes := []float64{3e-3, leastLetters}
	if m.Size.Given() {
		size, _ := d.length(m.Size, field+".size", scope)
		if size < leastLetters-outline.Touch || size > mostLetters+outline.Touch {
			d.bad(m.Size, field+".size", "letters of %s; expected %s to %s", mm(size), mm(leastLetters), mm(mostLetters))
			return
		}
		sizes = []float64{size}
	}
	turns := []float64{0, math.Pi / 2}
	if m.Turn.Given() {
		turns = []float64{d.degrees(m.Turn, field+".turn", scope)}
	}
	var at []outline.Point
	if m.At.given() {
		at = []outline.Point{d.spot(m.At, field+".at", scope)}
	}
	if twin != nil {
		sizes, at = []float64{twin.Etched.Size}, []outline.Point{twin.Etched.At.Mirrored()}
		if m.Turn.Given() {
			turns[0] = 0 - turns[0]
		}
	}
	for _, size := range sizes {
		for _, turn := range turns {
			for _, lines := range ways {
				b := block{lines: lines, size: size, turn: turn}
				if b.find(plate, at, d.rules.strip) {
					if err := b.write(plate); err != nil {
						d.bad(p.Number, field, "%v", err)
					}
					return
				}
			}
		}
	}
	where := "anywhere on the plate"
	if at != nil {
		where = "there"
	}
	d.bad(p.Number, field, "the mark of %s letters has no room %s: it keeps %s from welded edges and %s from holes; move it, or say none: true",
		mm(sizes[len(sizes)-1]), where, mm(d.rules.strip), mm(markMargin))
}

// A block is a mark that is looking for its place.
type block struct {
	lines []string
	size  float64
	turn  float64
	at    outline.Point
}

// arrow is the room for the arrow, right of the words, in letter sizes.
const arrowRoom = 1.2

func (b *block) wide() float64 {
	most := 0.0
	for _, l := range b.lines {
		most = math.Max(most, LineWidth(l, b.size))
	}
	return most + arrowRoom*b.size
}

func (b *block) high() float64 {
	n := 0
	for _, l := range b.lines {
		if l != "" {
			n++
		}
	}
	return (1 + float64(n-1)*linePitch) * b.size
}

func (b *block) rim(at outline.Point) outline.Loop {
	return outline.Oblong(at, b.wide(), b.high(), b.turn)
}

// find looks for the place with the most room, or tries the places given.
func (b *block) find(p *Plate, places []outline.Point, strip float64) bool {
	if places == nil {
		box := p.Outline.Bounds()
		// Fine enough to find room on a small plate, not endless on a large one.
		grid := math.Max(2.5e-3, math.Max(box.Width(), box.Height())/60)
		for y := box.Low.Y + grid; y < box.High.Y; y += grid {
			for x := box.Low.X + grid; x < box.High.X; x += grid {
				places = append(places, outline.Point{X: x, Y: y})
			}
		}
	}
	best := 0.0
	for _, at := range places {
		if room := b.room(p, at, strip); room > best+outline.Touch {
			best, b.at = room, at
		}
	}
	return best > 0
}

// room is how much further the block could grow at a place, nought or less
// where it may not lie.
func (b *block) room(p *Plate, at outline.Point, strip float64) float64 {
	half := math.Min(b.wide(), b.high()) / 2
	if p.Outline.Margin(at) < half+markMargin {
		return -1
	}
	rim := b.rim(at)
	least := math.Inf(1)
	for i := range p.Outline {
		keep := markMargin
		if Seam(p.Outline[i].Tag) != OpenSeam {
			keep = strip
		}
		e := p.Outline.Edge(i)
		for k := range rim {
			least = math.Min(least, rim.Edge(k).Gap(e)-keep)
		}
		if least <= 0 {
			return least
		}
	}
	for _, hole := range p.inner() {
		if rim.Contains(hole[0].At) {
			return -1
		}
		least = math.Min(least, rim.Gap(hole, math.Inf(1))-markMargin)
	}
	return least
}

// write etches the words and the arrow.
func (b *block) write(p *Plate) error {
	e := Etching{At: b.at, Turn: b.turn, Size: b.size}
	wide, high := b.wide(), b.high()
	y := high/2 - b.size
	place := func(s Stroke, by outline.Point) Stroke {
		moved := make(Stroke, len(s))
		for i, v := range s {
			at := outline.Point{X: v.At.X + by.X, Y: v.At.Y + by.Y}.Turned(b.turn)
			moved[i] = outline.Vertex{At: outline.Point{X: at.X + b.at.X, Y: at.Y + b.at.Y}, Bulge: v.Bulge}
		}
		return moved
	}
	for _, line := range b.lines {
		if line == "" {
			continue
		}
		strokes, err := WriteLine(line, b.size)
		if err != nil {
			return err
		}
		for _, s := range strokes {
			e.Strokes = append(e.Strokes, place(s, outline.Point{X: -wide / 2, Y: y}))
		}
		e.Lines = append(e.Lines, line)
		y -= linePitch * b.size
	}
	// The arrow points up on the casting, whichever way the words run.
	middle := outline.Point{X: wide/2 - arrowRoom*b.size/2 + 0.1*b.size}.Turned(b.turn)
	for _, s := range letters['↑'] {
		up := make(Stroke, len(s))
		for i, v := range s {
			up[i] = outline.Vertex{At: outline.Point{
				X: b.at.X + middle.X + (v.At.X-1./3)*b.size,
				Y: b.at.Y + middle.Y + (v.At.Y-0.5)*b.size,
			}, Bulge: v.Bulge}
		}
		e.Strokes = append(e.Strokes, up)
	}
	p.Etched = e
	return nil
}
