package setup

import (
	"math"

	"axlewright/calc/gear"
	"axlewright/quantity"
)

// Along is where along the tooth the paint has been rubbed off: the toe is the
// inner end, the heel the outer.
type Along string

// The places along the tooth.
const (
	AtToe       Along = "at the toe"
	TowardsToe  Along = "towards the toe"
	MidLength   Along = "in the middle of the length"
	TowardsHeel Along = "towards the heel"
	AtHeel      Along = "at the heel"
)

// Alongs lists them, from the toe to the heel.
var Alongs = []Along{AtToe, TowardsToe, MidLength, TowardsHeel, AtHeel}

// Height is where between root and tip.
type Height string

// The places up the tooth.
const (
	AtTip       Height = "at the tip"
	TowardsTip  Height = "towards the tip"
	MidHeight   Height = "in the middle of the height"
	TowardsRoot Height = "towards the root"
	AtRoot      Height = "at the root"
)

// Heights lists them, from the tip to the root.
var Heights = []Height{AtTip, TowardsTip, MidHeight, TowardsRoot, AtRoot}

// Shape is what the mark looks like.
type Shape string

// The shapes.
const (
	EvenShape   Shape = "even"
	NarrowBand  Shape = "narrow, both ends fading"
	PatchyShape Shape = "patchy or split"
	Wandering   Shape = "wanders round the wheel"
)

// Shapes lists them.
var Shapes = []Shape{EvenShape, NarrowBand, PatchyShape, Wandering}

// Depth is how the teeth were cut: as tall at the toe as at the heel or not.
type Depth string

// The depths.
const (
	TaperedDepth  Depth = "tapered"  // lower at the toe: cut tooth by tooth
	ParallelDepth Depth = "parallel" // as tall at the toe as at the heel: cut in one go
	UnknownDepth  Depth = "unknown"
)

// Depths lists them.
var Depths = []Depth{TaperedDepth, ParallelDepth, UnknownDepth}

// Seen is the mark on one flank of the crown wheel's teeth. The zero Seen is a
// flank that nobody has looked at yet.
type Seen struct {
	Along   Along
	Height  Height
	Shape   Shape
	OffEdge bool // it runs off an edge of the tooth
}

func (f Seen) taken() bool { return f != Seen{} }

// Pattern asks what the marks mean and for one correction. Drive is the convex
// flank of the crown wheel, whichever way the vehicle then goes.
type Pattern struct {
	Spec          Spec
	Drive, Coast  Seen
	Depth         Depth
	Gears         Gears
	Use           Use
	Load          string // how the wheel was loaded, in the fitter's words
	Lash          Reading
	AsFoundLash   Reading
	Mesh          Mesh
	Adjusters     Adjusters // left out, amounts are told without notches
	ThickerPushes Push      // left out, the shim's direction is not told
}

// Correction is the kind of correction a pattern asks for.
type Correction string

// The corrections.
const (
	NoCorrection Correction = "none"
	LookAtRunOut Correction = "run-out first"
	RestoreOld   Correction = "restore lash and place as found"
	SetLash      Correction = "lash into its range first"
	MovePinion   Correction = "pinion"
	MoveWheel    Correction = "crown wheel"
	CheckBores   Correction = "bores and axes"
	AskDepth     Correction = "find out how the teeth are cut"
)

// A PatternResult is what a pattern means. A drawing takes its marks and moves
// from here.
type PatternResult struct {
	Answer
	Correction Correction
	PinionIn   float64 // m, pinion towards the crown wheel; negative is out
	Shim       float64 // m, shim thicker by; negative is thinner; zero where it is not known which way a shim pushes
	WheelIn    float64 // m, crown wheel towards the pinion; negative is away
	LashChange float64 // m, that the correction makes by itself
	KeepLash   float64 // m, crown wheel towards the pinion that would undo it; negative is away
	Marks      []ToothMark
}

// A ToothMark places a mark on one flank of a tooth for a drawing.
type ToothMark struct {
	Flank  gear.Flank
	Along  float64 // 0 at the toe, 1 at the heel, of the middle of the mark
	Height float64 // 0 at the root, 1 at the tip
	Length float64 // share of the tooth's length
	Width  float64 // share of its height
	Shape  Shape
}

// ReadPattern reads the marks, drive flank first, and gives one correction at a
// time.
//
// Height before length, depth before lash is common practice. Which way marks
// move is that of gear makers' charts for the two ways of cutting; public
// manuals of heavy vehicles agree with it, except on crossed marks, where some
// reject the set. How far they move for a given shift no rule tells: the amounts
// are the trade's steps, and only the lash that goes with them is geometry.
func ReadPattern(in Pattern) (PatternResult, error) {
	var s sheet
	var r PatternResult
	s.spec(in.Spec)
	s.mesh(in.Mesh)
	s.seen("Drive", "drive flank, the convex one, which is read first", in.Drive, true)
	s.seen("Coast", "coast flank", in.Coast, false)
	if in.Depth != "" {
		choose(&s, "Depth", "", in.Depth, TaperedDepth, ParallelDepth, UnknownDepth)
	}
	choose(&s, "Gears", "are the gears a new set or one that has run", in.Gears, NewGears, UsedGears)
	s.optional("Lash", in.Lash, quantity.Length, 0, 3*mm, "a lash such as 0.15 mm")
	if in.ThickerPushes != "" {
		choose(&s, "ThickerPushes", pushQuestion, in.ThickerPushes, TowardsWheel, AwayFromWheel)
	}
	if in.Adjusters != (Adjusters{}) {
		s.adjusters(in.Adjusters)
	}
	if err := s.err(); err != nil {
		return PatternResult{}, err
	}
	r.marks(in)
	if s.waiting(&r.Answer) {
		return r, nil
	}
	sens, err := in.Mesh.Sensitivity()
	if err != nil {
		return PatternResult{}, err
	}
	rule := patternRule{in: in, r: &r, sens: sens}
	rule.read()
	r.patternNotes(in)
	return r, nil
}

func (s *sheet) seen(field, words string, f Seen, must bool) {
	if !f.taken() {
		if must {
			s.waits("the pattern on the " + words)
		}
		return
	}
	choose(s, field+".Along", "where along the tooth the "+words+" is marked", f.Along, AtToe, TowardsToe, MidLength, TowardsHeel, AtHeel)
	choose(s, field+".Height", "where between root and tip the "+words+" is marked", f.Height, AtTip, TowardsTip, MidHeight, TowardsRoot, AtRoot)
	choose(s, field+".Shape", "what shape the mark on the "+words+" has", f.Shape, EvenShape, NarrowBand, PatchyShape, Wandering)
}

var (
	alongAt  = map[Along]int{AtToe: -2, TowardsToe: -1, MidLength: 0, TowardsHeel: 1, AtHeel: 2}
	heightAt = map[Height]int{AtRoot: -2, TowardsRoot: -1, MidHeight: 0, TowardsTip: 1, AtTip: 2}
)

// marks places the marks for a drawing.
func (r *PatternResult) marks(in Pattern) {
	if in.Drive.taken() {
		r.Marks = append(r.Marks, in.Drive.Mark(gear.Drive))
	}
	if in.Coast.taken() {
		r.Marks = append(r.Marks, in.Coast.Mark(gear.Coast))
	}
}

// Mark places what was seen for a drawing.
func (f Seen) Mark(flank gear.Flank) ToothMark {
	m := ToothMark{Flank: flank, Shape: f.Shape, Length: 0.45, Width: 0.5,
		Along:  0.5 + 0.16*float64(alongAt[f.Along]),
		Height: 0.5 + 0.14*float64(heightAt[f.Height]),
	}
	if f.Shape == NarrowBand {
		m.Width = 0.2
	}
	if f.OffEdge { // pushed against the nearest edge
		m.Along = clampTo(m.Along, m.Length/2)
	}
	return m
}

// clampTo moves a mark off the middle until its end reaches the end of the tooth.
func clampTo(at, half float64) float64 {
	switch {
	case at < 0.5:
		return math.Min(at, half)
	case at > 0.5:
		return math.Max(at, 1-half)
	}
	return at
}

func (r *PatternResult) patternNotes(in Pattern) {
	if !in.Coast.taken() {
		r.note("The coast flank was not looked at: read it before the next correction.")
	}
	if in.Load == "" {
		r.note("Write beside the photograph how the wheel was loaded: the mark moves towards the heel under load.")
	}
	if in.Use == CompetitionUse {
		r.note("[S] For competition some set the mark on the inner third to half, just up from the toe, because it moves towards the heel under load.")
	}
	if r.Correction == MovePinion || r.Correction == MoveWheel {
		r.say("Paint again and turn both ways. One change at a time.")
	}
}
