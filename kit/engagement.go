package kit

import (
	"fmt"
	"math"

	"axlewright/calc/bolt"
	"axlewright/quantity"
)

// engagement finds the length of thread at which the bolt breaks first: by the
// guideline's shear areas, which decides, and by the handbook's rule beside it.
func (r *Drilled) engagement(thread bolt.ThreadSizeResult, s screw, t tapped) error {
	need, err := bolt.RequiredEngagement(bolt.EngagementParams{
		Form: thread.Form, Diameter: thread.Diameter, Pitch: thread.Pitch,
		Force: s.tensile * s.area, Shear: t.shear, Keep: 1,
	})
	if err != nil {
		return err
	}
	r.Need = need.Total
	r.Share, err = bolt.ThreadShare(bolt.ThreadShareParams{Form: thread.Form, Diameter: thread.Diameter, Pitch: thread.Pitch, Drilled: r.Drill})
	if err != nil {
		return err
	}
	g, err := bolt.ThreadGeometry(thread.Form, thread.Diameter, thread.Pitch)
	if err != nil {
		return err
	}
	areas, err := bolt.ShearArea(bolt.ShearAreaParams{
		Form: thread.Form, Pitch: thread.Pitch, Engagement: thread.Diameter, BoltMajor: thread.Diameter,
		BoltPitch: g.PitchDiameter, HolePitch: g.PitchDiameter, HoleMinor: g.HoleMinor,
	})
	if err != nil {
		return err
	}
	handbook, err := bolt.HandbookEngagement(bolt.HandbookEngagementParams{
		StressArea: s.area, BoltArea: areas.Bolt, HoleArea: areas.Hole, Length: thread.Diameter,
		BoltTensile: s.tensile, HoleTensile: t.tensile,
	})
	r.Handbook = handbook.Length
	return err
}

// depths finds how deep to drill and what thread that leaves, at the thinnest
// that the wall may be: the trade's length of thread where the wall has it,
// else as much as it has.
func (r *Drilled) depths(thread bolt.ThreadSizeResult, custom float64) {
	r.Point = pointShare * r.Drill
	if r.Through {
		r.Have, r.Depth = r.WallLow, r.WallLow
	} else {
		lead := tapLead * thread.Pitch
		deepest := math.Max(0, r.WallLow-r.Keep-r.Point)
		wanted := math.Max(r.Need, custom*thread.Diameter) + lead
		const half = 0.5e-3 // m: what a depth stop is set to
		r.Depth = math.Ceil(wanted/half-1e-6) * half
		if r.Depth > deepest {
			r.Depth = math.Floor(deepest/half+1e-6) * half
		}
		r.Have = math.Max(0, r.Depth-lead)
		r.Left = r.WallLow - r.Depth - r.Point
	}
	// The first 0.8·P of any thread are incomplete and hold nothing.
	ends := 0.8 * thread.Pitch
	r.Holds = math.Min(1, math.Max(0, r.Have-ends)/(r.Need-ends))
}

// judge says in words what the figures mean.
func (r *Drilled) judge() {
	length := func(x float64) string { return quantity.Format(x, quantity.Length) }
	say := func(v Verdict, format string, args ...any) {
		if v == Stop || r.Verdict == "" || v == Look && r.Verdict == Fine {
			r.Verdict = v
		}
		r.Sentences = append(r.Sentences, fmt.Sprintf(format, args...))
	}
	switch {
	case r.Have <= 0:
		say(Stop, "Do not drill: with the drill's point, a wall of %s leaves no thread above %s of metal to %s.", length(r.WallLow), length(r.Keep), r.Behind)
		return
	case r.Through:
		say(Fine, "Drill through into %s.", r.Behind)
	default:
		say(Fine, "Drill %s deep from the casting's face, and the plate more; the point stops %s short of %s.", length(r.Depth), length(r.Left), r.Behind)
	}
	switch {
	case r.Holds < 0.8:
		say(Stop, "The thread strips at %s of what breaks the bolt: %s of thread where %s is needed. Use a boss, an insert or a lower class.",
			quantity.Percent(r.Holds), length(r.Have), length(r.Need))
	case r.Holds < 1:
		say(Look, "The thread strips first, at %s of what breaks the bolt: %s of thread where %s is needed. Torque for the thread, not the bolt.",
			quantity.Percent(r.Holds), length(r.Have), length(r.Need))
	default:
		say(Fine, "The bolt breaks before the thread strips: %s of thread, %s is needed.", length(r.Have), length(r.Need))
	}
	if r.Handbook > r.Need && r.Have < r.Handbook {
		say(Fine, "A handbook's rule, shear strength half of tensile, asks for %s.", length(r.Handbook))
	}
	if r.Share < 0.6 || r.Share > 1 {
		say(Look, "The drill leaves %s of the full thread depth; usual is 60 to 100 %%.", quantity.Percent(r.Share))
	}
}
