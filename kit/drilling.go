package kit

import (
	"fmt"
	"math"
	"regexp"

	"axlewright/calc/bolt"
	"axlewright/calc/material"
	"axlewright/quantity"
)

// Verdict says whether a tapped hole will do.
type Verdict string

// The verdicts, with the words of the bench.
const (
	Fine Verdict = "fine"
	Look Verdict = "look"
	Stop Verdict = "stop"
)

// A Drilled hole is a row of the drill-and-tap table.
type Drilled struct {
	Name   string `json:"name"`
	Thread string `json:"thread"`
	Class  string `json:"class"`
	Metal  string `json:"metal"`
	Behind string `json:"behind"`

	Drill     float64  `json:"drill"`    // m, tapping drill
	Share     float64  `json:"share"`    // of the full thread depth that this drill leaves
	Need      float64  `json:"need"`     // m, of thread so that the bolt breaks before the metal strips, with 0.8·P for its ends
	Handbook  float64  `json:"handbook"` // m, the same by the handbook's rule
	Have      float64  `json:"have"`     // m, of full thread that the thinnest wall allows
	Depth     float64  `json:"depth"`    // m, to drill into the casting, to the drill's shoulder
	Point     float64  `json:"point"`    // m, the drill's point below that
	WallLow   float64  `json:"wall_low"` // m, the least that the wall may be
	Left      float64  `json:"left"`     // m, of wall under the point; nought when drilled through
	Keep      float64  `json:"keep"`     // m, that must be left
	Through   bool     `json:"through"`
	Holds     float64  `json:"holds"` // share of the bolt's breaking load that the thread holds, at most 1
	Verdict   Verdict  `json:"verdict"`
	Sentences []string `json:"sentences"` // what to do and why
}

// Screw is the thread as people write it: M16×1.5.
func (r *Drilled) Screw() string { return ScrewWords(r.Thread) }

// ScrewWords puts the sign of multiplication where a designation has the letter.
func ScrewWords(thread string) string {
	return timesInThread.ReplaceAllString(thread, "${1}×${2}")
}

var timesInThread = regexp.MustCompile(`(\d)x(\d)`)

// defaultKeep is what stays of a wall below a drill's point where the file does
// not say: common practice, no source.
const defaultKeep = 3e-3 // m

// The point of a twist drill of 118° is d/2·cot 59° high.
var pointShare = 0.5 / math.Tan(59*math.Pi/180)

// A bottoming tap cuts full thread to about two turns above its end: chamfer
// form E of ISO 8830, 1.5 to 2 threads (from memory).
const tapLead = 2 // pitches

// drillings works out the drill-and-tap table.
func (d *draft) drillings() {
	for _, row := range d.k.Drillings {
		field := fmt.Sprintf("drillings[%s]", row.Name.Text)
		for _, other := range d.done.Drilling {
			if other.Name == row.Name.Text {
				d.bad(row.Name, field, "%s stands twice", row.Name.Text)
			}
		}
		if r, ok := d.drilled(row, field); ok {
			d.done.Drilling = append(d.done.Drilling, r)
		}
	}
}

func (d *draft) drilled(row Drilling, field string) (Drilled, bool) {
	r := Drilled{Name: row.Name.Text, Thread: row.Thread.Text, Class: row.Class.Text, Metal: row.Metal.Text,
		Behind: row.Behind.Text, Through: row.Through, Keep: defaultKeep}
	before := len(d.found)
	if !row.Behind.Given() {
		d.bad(row.Name, field+".behind", "say what lies behind the wall: a bore, a gallery, open air")
	}
	thread, err := bolt.StandardThread(bolt.Designation(r.Thread))
	if err != nil {
		d.bad(row.Thread, field+".thread", "%q is no thread of the table; it holds M5 to M24 and inch threads from 1/4 to 3/4, such as M12x1.75 or 7/16-20 UNF", r.Thread)
		return r, false
	}
	r.Drill = thread.Drill
	wall, err := quantity.Parse(row.Wall.Text, quantity.Length)
	if err != nil {
		d.bad(row.Wall, field+".wall", "%v", err)
	}
	r.WallLow = wall.Low
	if row.Keep.Given() {
		r.Keep = d.within(row.Keep, field+".keep", d.known, 0, 0.1)
	}
	tapped, err := tappedMetal(row.Metal.Text)
	if err != nil {
		d.bad(row.Metal, field+".metal", "%v", err)
	}
	screw, err := boltStrength(thread, row.Class.Text)
	if err != nil {
		d.bad(row.Class, field+".class", "%v", err)
	}
	if len(d.found) > before {
		return r, false
	}
	if err := r.engagement(thread, screw, tapped); err != nil {
		d.bad(row.Thread, field, "%v", err)
		return r, false
	}
	r.depths(thread, tapped.custom)
	r.judge()
	return r, true
}

// A tapped metal with the strengths that its thread has.
type tapped struct {
	tensile, shear float64 // Pa
	custom         float64 // thread that the trade cuts, in diameters
}

func tappedMetal(name string) (tapped, error) {
	m, err := material.Lookup(name)
	if err != nil {
		return tapped{}, err
	}
	kind, custom := bolt.TappedSteel, 1.25 // common practice, no source
	switch m.Family {
	case material.GreyIron:
		kind, custom = bolt.TappedGreyIron, 1.5
	case material.DuctileIron, material.BlackheartIron, material.WhiteheartIron:
		kind, custom = bolt.TappedDuctile, 1.5
	case material.Bronze:
		return tapped{}, fmt.Errorf("there is no figure for threads in %s", m.Family)
	}
	ratio, err := bolt.ShearRatio(kind)
	return tapped{m.Tensile, ratio.Cautious * m.Tensile, custom}, err
}

// A screw is what the bolt can take.
type screw struct {
	tensile, area float64 // Pa, m²
}

func boltStrength(thread bolt.ThreadSizeResult, class string) (screw, error) {
	var s bolt.StrengthResult
	var area float64
	var err error
	switch thread.Form {
	case bolt.Metric:
		s, err = bolt.ClassStrength(bolt.Class(class), thread.Diameter)
		if err == nil {
			area, err = bolt.StressArea(thread.Diameter, thread.Pitch)
		}
	case bolt.Unified:
		s, err = bolt.UnifiedStrength(bolt.UnifiedGrade(class), thread.Diameter)
		if err == nil {
			area, err = bolt.UnifiedStressArea(thread.Diameter, thread.Pitch)
		}
	default:
		s.Tensile, err = bolt.OldGradeTensile(bolt.OldGrade(class))
		if err == nil {
			area, err = bolt.WhitworthArea(bolt.CoreRule, thread.Diameter, thread.Pitch)
		}
	}
	return screw{s.Tensile, area}, err
}
