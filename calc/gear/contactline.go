package gear

import "math"

// zone is the zone of action of the virtual gears: a parallelogram as wide as
// the contact pattern and as long as the path of contact, crossed by lines of
// contact that lean by the base helix.
type zone struct {
	path, face, share, lean, cosBase float64 // lean = tan β_vb + tan γ
	pitch                            float64 // between lines of contact, square to them
	middle                           float64 // distance of the middle line from the zone's centre when it carries most
	farthest                         float64 // distance at which a line leaves the zone
}

func (v VirtualGears) zone() zone {
	z := zone{path: v.Path, face: v.ActiveFace, share: v.ActiveFace / v.Face,
		lean: math.Tan(v.BaseHelix) + math.Tan(v.Slant), cosBase: math.Cos(v.BaseHelix)}
	z.pitch = v.BasePitch * z.cosBase
	z.farthest = (z.path + z.face*math.Abs(z.lean)) / 2 * z.cosBase
	z.middle = (v.BasePitch - v.Path/2) * math.Max(0, 1-v.FaceOverlap) * z.cosBase
	return z
}

// length of the line of contact at a distance f from the centre of the zone,
// shortened for the ends of an elliptical pattern.
func (z zone) length(f float64) float64 {
	if math.Abs(f) >= z.farthest {
		return 0
	}
	low, high := -z.face/2, z.face/2
	x := f / z.cosBase
	if z.lean != 0 {
		a, b := (x-z.path/2)/z.lean, (x+z.path/2)/z.lean
		low, high = math.Max(low, math.Min(a, b)), math.Min(high, math.Max(a, b))
	}
	r := f / z.farthest
	gap := 1 - math.Sqrt(z.share)
	return math.Max(0, high-low) / z.cosBase * (1 - math.Sqrt(1-r*r)*gap)
}

// area stands for the load on the line at f: its length times the peak of a
// pressure that falls off towards the edges of the zone.
func (z zone) area(f, crowning float64) float64 {
	if math.Abs(f) >= z.farthest {
		return 0
	}
	return math.Pi / 4 * (1 - math.Pow(math.Abs(f)/z.farthest, crowning)) * z.length(f)
}

// middleShare is the share of the load on the middle line of three.
func (z zone) middleShare(crowning float64) float64 {
	m := z.area(z.middle, crowning)
	return m / (m + z.area(z.middle-z.pitch, crowning) + z.area(z.middle+z.pitch, crowning))
}
