package kit

import (
	"fmt"
	"math"

	"axlewright/kit/nest"
	"axlewright/kit/outline"
)

// A Plate is one piece of a kit as it is cut: for one hand, flat, seen on the
// face that carries its mark. y is up on the casting.
type Plate struct {
	Kit       Name       `json:"kit"`
	Casting   string     `json:"casting"`
	Piece     int        `json:"piece"`
	Hand      Hand       `json:"hand"`
	Name      string     `json:"name"`
	Count     int        `json:"count"`     // in one kit
	Thickness float64    `json:"thickness"` // m
	Steel     string     `json:"steel"`
	Density   float64    `json:"density"` // kg/m³
	Grain     nest.Grain `json:"grain"`
	Frame     Frame      `json:"frame"`

	Outline  outline.Loop   `json:"outline"` // tags are Seams
	Holes    []RoundHole    `json:"holes"`
	Cutouts  []Cutout       `json:"cutouts"`
	Stations []StationPoint `json:"stations"`
	Etched   Etching        `json:"etched"`
}

// Seam says what becomes of an edge.
type Seam int

// The seams.
const (
	WeldSeam Seam = iota // welded to the casting or another plate
	OpenSeam             // never welded
	VentSeam             // left open until the last, so that the cavity can breathe
)

func (s Seam) String() string {
	return [...]string{"weld", "open", "vent"}[s]
}

var seams = map[string]Seam{"": WeldSeam, "weld": WeldSeam, "open": OpenSeam, "vent": VentSeam}

// HoleKind says what a round hole is for.
type HoleKind string

// The kinds of round holes.
const (
	Plain    HoleKind = "plain"
	Guide    HoleKind = "guide" // cut smaller, drilled through into the casting
	Pin      HoleKind = "pin"   // takes a locating pin
	VentHole HoleKind = "vent"  // closed last
)

// A RoundHole is a hole as it is cut.
type RoundHole struct {
	Label    string        `json:"label"`
	Kind     HoleKind      `json:"kind"`
	At       outline.Point `json:"at"`
	Diameter float64       `json:"diameter"` // m
	Drilling string        `json:"drilling"` // of a guide hole
	Note     string        `json:"note"`     // "guide: drill 10.2 mm, tap M12x1.75"
}

// Loop is the outline of the hole.
func (h RoundHole) Loop() outline.Loop { return outline.Circle(h.At, h.Diameter) }

// A Cutout is a hole that is not round.
type Cutout struct {
	Label string       `json:"label"`
	Kind  string       `json:"kind"` // slot, tab slot or opening
	Loop  outline.Loop `json:"loop"`
}

// A StationPoint is where a plate meets a station.
type StationPoint struct {
	Number int           `json:"number"`
	Name   string        `json:"name"`
	At     outline.Point `json:"at"`     // the station on the casting
	Corner outline.Point `json:"corner"` // the plate's corner that follows it
}

// Key names the plate within its kit: "2", "1L", "1R".
func (p *Plate) Key() string { return fmt.Sprintf("%d%s", p.Piece, p.Hand) }

// File is the plate's name for files: "KIT-T24-A.2-1L".
func (p *Plate) File() string { return p.Kit.String() + "-" + p.Key() }

// Area of the face, holes taken off.
func (p *Plate) Area() float64 {
	a := p.Outline.Area()
	for _, l := range p.inner() {
		a -= math.Abs(l.Area())
	}
	return a
}

// Mass of one plate.
func (p *Plate) Mass() float64 { return p.Area() * p.Thickness * p.Density }

// CutLength is the length of the outline and of everything cut out of it.
func (p *Plate) CutLength() float64 {
	sum := p.Outline.Length()
	for _, l := range p.inner() {
		sum += l.Length()
	}
	return sum
}

// Pierces is how often the beam starts.
func (p *Plate) Pierces() int { return 1 + len(p.Holes) + len(p.Cutouts) }

// SeamLength is the length of the outline's edges of one kind.
func (p *Plate) SeamLength(s Seam) float64 {
	sum := 0.0
	for i := range p.Outline {
		if Seam(p.Outline[i].Tag) == s {
			sum += p.Outline.Edge(i).Length()
		}
	}
	return sum
}

// inner lists the outlines of all holes and cutouts.
func (p *Plate) inner() []outline.Loop {
	var list []outline.Loop
	for _, h := range p.Holes {
		list = append(list, h.Loop())
	}
	for _, c := range p.Cutouts {
		list = append(list, c.Loop)
	}
	return list
}

// mirrored is the plate of the other hand. Its mark is etched anew, for words
// are not mirrored.
func (p Plate) mirrored() Plate {
	m := p
	m.Hand = Right
	m.Outline = p.Outline.Mirrored()
	m.Holes, m.Cutouts, m.Stations = nil, nil, nil
	for _, h := range p.Holes {
		h.At = h.At.Mirrored()
		m.Holes = append(m.Holes, h)
	}
	for _, c := range p.Cutouts {
		c.Loop = c.Loop.Mirrored()
		m.Cutouts = append(m.Cutouts, c)
	}
	for _, s := range p.Stations {
		s.At, s.Corner = s.At.Mirrored(), s.Corner.Mirrored()
		m.Stations = append(m.Stations, s)
	}
	return m
}
