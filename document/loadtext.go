package document

import (
	"fmt"
	"io"
	"math"
	"strings"

	"axlewright/assess"
	"axlewright/quantity"
)

// bearingNames orders the bearings with their words.
var bearingNames = []struct{ key, words string }{
	{"head", "head (by the teeth)"}, {"tail", "tail (at the flange)"},
	{"near", "near side (crown wheel)"}, {"far", "far side"},
}

// LoadText writes one equilibrium for a terminal.
func LoadText(out io.Writer, c *assess.LoadCase) error {
	t := &text{out: out}
	t.wrap("", fmt.Sprintf("%s at %s on the %s flank", capital(c.Label), torque(c.Torque), c.Flank))
	t.wrap("", "Movements count from the assembled, preloaded, torque-free axle; every figure at its stated value.")
	if words := givenOut(c); words != "" {
		t.blank()
		t.wrap("✕ ", words)
	}
	t.heading("Tooth force on the crown wheel")
	t.line("  along the tooth's way  %s", show(c.Tooth.Tangential, quantity.Force))
	t.line("  radially apart         %s", show(c.Tooth.Radial, quantity.Force))
	t.line("  off the pinion         %s", show(c.Tooth.WheelAxial, quantity.Force))
	t.line("  pinion, out of nose    %s", show(c.Tooth.PinionAxial, quantity.Force))
	t.heading("Movement at the mesh")
	t.line("  crown wheel   %s", moved(c.Mesh.WheelAxial, "away from the pinion", "towards the pinion"))
	t.line("  pinion        %s", moved(c.Mesh.PinionAxial, "out of the nose", "into the nose"))
	t.line("  offset        %s", moved(c.Mesh.Offset, "larger", "smaller"))
	angle := "opens"
	if c.Mesh.ShaftAngle < 0 {
		angle = "closes"
	}
	t.line("  shaft angle   %s by %s", angle, show(math.Abs(c.Mesh.ShaftAngle), quantity.Angle))
	t.line("  dial, back face of the crown wheel: %s", moved(c.Dial, "away from the pinion", "towards the pinion"))
	t.heading("Bearings")
	for _, b := range bearingNames {
		s := c.Bearings[b.key]
		t.line("  %-24s radial %s, axial %s, moment %s", b.words, show(s.Radial, quantity.Force), show(s.Axial, quantity.Force), show(s.Moment, quantity.Torque))
		t.line("  %-24s %d rollers loaded, hardest %s at %s, static safety %.2f", "", s.Loaded, show(s.MaxRoller, quantity.Force), show(s.MaxPressure, quantity.Pressure), s.StaticSafety)
		t.line("  %-24s life at this load %s turns (ISO 281), %s with its tilt (ISO/TS 16281)", "", turns(s.LifeRating), turns(s.LifeReference))
	}
	t.peg(c)
	t.heading("Links at this torque")
	for _, l := range c.Links {
		dim, _ := quantity.ByUnit(l.Unit)
		gives := "holds beyond what was looked at"
		if l.GiveOut != nil {
			gives = "gives out at " + torque(*l.GiveOut)
		}
		capacity := first(show(l.Capacity, dim))
		if l.Capacity <= 0 {
			capacity = "nothing"
			if l.Name == "cap walks" { // friction holds it while the bolts clamp
				capacity = "nothing, as the cap's joint is open"
			}
		}
		t.line("  %-34s %s of %s; %s", l.Name, first(show(l.Demand, dim)), capacity, gives)
	}
	return t.err
}

// givenOut says how many links have given out below the torque and which was
// first, "" where all hold.
func givenOut(c *assess.LoadCase) string {
	out := 0
	var weakest *assess.LinkState
	for i := range c.Links {
		l := &c.Links[i]
		if l.GiveOut == nil || *l.GiveOut >= c.Torque {
			continue
		}
		out++
		if weakest == nil || *l.GiveOut < *weakest.GiveOut {
			weakest = l
		}
	}
	if out == 0 {
		return ""
	}
	have := "links have"
	if out == 1 {
		have = "link has"
	}
	return fmt.Sprintf("At this torque %d of %d %s given out; first: %s, at %s. The figures below take the unit as still whole.",
		out, len(c.Links), have, weakest.Name, torque(*weakest.GiveOut))
}

func (t *text) peg(c *assess.LoadCase) {
	t.heading("Peg")
	p := c.Peg
	if p == nil {
		t.line("  none; to see one, name it under \"fitted\" in the enquiry")
		return
	}
	t.line("  gap %s, load %s", show(p.Gap, quantity.Length), show(p.Load, quantity.Force))
	t.line("  back face moves %s; without the peg it would be %s", show(p.Movement, quantity.Length), show(p.FreeMovement, quantity.Length))
	if p.FirstTouchTorque == nil {
		t.line("  does not touch on this flank up to twice this torque")
	} else {
		slack := "not up to twice this torque at the slack one"
		if p.FirstTouchSlack != nil {
			slack = torque(*p.FirstTouchSlack) + " at the slack one"
		}
		t.wrap("  ", fmt.Sprintf("first touch at %s at the tight spot of the turn, %s", torque(*p.FirstTouchTorque), slack))
	}
	if c.Gap != nil {
		for _, sentence := range c.Gap.Text {
			t.wrap("  ", sentence)
		}
	}
}

// LoadSweepText writes the curves of a sweep as a table in both systems.
func LoadSweepText(out io.Writer, cases []assess.LoadCase) error {
	t := &text{out: out}
	t.wrap("", fmt.Sprintf("%s, %s flank", capital(cases[0].Label), cases[0].Flank))
	t.wrap("", "Movements count from the assembled, preloaded, torque-free axle; every figure at its stated value. Crown wheel and dial: + is away from the pinion, − towards it. Pinion: + is out of the nose, − into it. Head bearing: its radial load.")
	t.blank()
	t.line("%15s %15s %15s %15s %15s %15s", "torque", "crown wheel", "pinion", "dial", "peg", "head bearing")
	t.line("%7s %7s %7s %7s %7s %7s %7s %7s %7s %7s %7s %7s", "N·m", "lbf·ft", "mm", "thou", "mm", "thou", "mm", "thou", "kN", "lbf", "kN", "lbf")
	for _, c := range cases {
		load := 0.0
		if c.Peg != nil {
			load = c.Peg.Load
		}
		moved := func(m float64) string { return fmt.Sprintf("%7.3f %7.1f", 1e3*m+0, m/thou+0) }
		force := func(n float64) string { return fmt.Sprintf("%7.2f %7.0f", n/1e3, n/poundForce) }
		line := fmt.Sprintf("%7.0f %7.0f %s %s %s %s %s", c.Torque, c.Torque/poundForceFoot, moved(c.Mesh.WheelAxial), moved(c.Mesh.PinionAxial), moved(c.Dial), force(load), force(c.Bearings["head"].Radial))
		t.line("%s", strings.ReplaceAll(line, "-", "−"))
	}
	return t.err
}

// Units of the second system, exact: 1 thou, 1 lbf and 1 lbf·ft.
const (
	thou           = 25.4e-6             // m
	poundForce     = 4.4482216152605     // N
	poundForceFoot = poundForce * 0.3048 // N·m
)

func show(x float64, dim quantity.Dimension) string {
	if math.IsInf(x, 0) {
		return "without end"
	}
	return quantity.FormatDigits(x, dim, 3)
}

// moved says a movement with its direction in words.
func moved(x float64, positive, negative string) string {
	if x < 0 {
		return show(-x, quantity.Length) + " " + negative
	}
	return show(x, quantity.Length) + " " + positive
}

// first is the metric part of a quantity in both systems.
func first(both string) string {
	for i, r := range both {
		if r == '(' {
			return both[:i-1]
		}
	}
	return both
}

// turns prints a number of turns to two figures.
func turns(x float64) string {
	if math.IsInf(x, 0) {
		return "endless"
	}
	return quantity.FormatDigits(x/1e6, quantity.Number, 2) + " million"
}
