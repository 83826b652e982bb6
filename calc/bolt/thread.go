package bolt

import (
	"fmt"
	"math"

	"axlewright/calc/check"
)

// Form is a form of screw thread.
type Form string

// The forms a workshop meets on drive axles.
const (
	Metric    Form = "metric"    // ISO metric, 60°
	Unified   Form = "unified"   // UNC, UNF, UN, 60°
	Whitworth Form = "whitworth" // BSW, BSF, 55°
)

// formSize holds what differs between the forms, as multiples of the pitch.
type formSize struct {
	pitchDrop float64 // d − d2
	coreDrop  float64 // d − d3, core of the bolt
	holeDrop  float64 // d − D1, minor diameter of the hole
	root      float64 // nominal root radius
	flank     float64 // half of the thread angle, rad
}

var formSizes = map[Form]formSize{
	Metric:    {0.649519, 1.226869, 1.082532, 0.144338, math.Pi / 6},
	Unified:   {0.649519, 1.299038, 1.082532, 0.144338, math.Pi / 6},
	Whitworth: {0.640327, 1.280654, 1.280654, 0.137329, 27.5 * math.Pi / 180},
}

// ThreadResult holds the basic sizes of a thread.
type ThreadResult struct {
	PitchDiameter float64 // m, d2: pitch (effective) diameter
	CoreDiameter  float64 // m, d3: core diameter of the bolt
	HoleMinor     float64 // m, D1: minor diameter of the tapped hole
	RootRadius    float64 // m, r: nominal root radius
	LeadAngle     float64 // rad, λ: lead angle at the pitch diameter, single start
	FlankAngle    float64 // rad, β: half of the thread angle
}

// ThreadGeometry returns the basic sizes of a screw thread of the form given.
//
//	d2 = d − 0.649519·P (60°),  d − 0.640327·P (55°)
//	d3 = d − 1.226869·P (metric),  d − 1.299038·P (Unified),  d − 1.280654·P (55°)
//	D1 = d − 1.082532·P (60°),  d − 1.280654·P (55°)
//	λ = atan(P/(π·d2))
//
//	form   form of thread, name
//	d      nominal diameter, m
//	pitch  thread pitch P, m
//
// Valid for single-start threads with 0 < pitch < d/2, at basic size (no tolerance, no coating).
// Errors: *check.RangeError outside that range or for an unknown form.
// Source: ISO 68-1:1998 and ISO 724 (metric), ASME B1.1-2003 (Unified, rounded root), BS 84:1956 (55°); from memory.
func ThreadGeometry(form Form, d, pitch float64) (ThreadResult, error) {
	size, known := formSizes[form]
	if err := check.All("bolt.ThreadGeometry", knownForm("form", form, known)); err != nil {
		return ThreadResult{}, err
	}
	if err := checkThread("bolt.ThreadGeometry", d, pitch); err != nil {
		return ThreadResult{}, err
	}
	d2 := d - size.pitchDrop*pitch
	return ThreadResult{
		PitchDiameter: d2,
		CoreDiameter:  d - size.coreDrop*pitch,
		HoleMinor:     d - size.holeDrop*pitch,
		RootRadius:    size.root * pitch,
		LeadAngle:     math.Atan(pitch / (math.Pi * d2)),
		FlankAngle:    size.flank,
	}, nil
}

// ThreadShareParams describes a tapped hole as drilled.
type ThreadShareParams struct {
	Form     Form    // name, form of thread
	Diameter float64 // m, d: nominal diameter
	Pitch    float64 // m, P: thread pitch
	Drilled  float64 // m, D: bore of the hole before tapping, or as worn
}

// ThreadShare returns the depth of thread left in a tapped hole as a share of the full basic depth.
//
//	s = (d − D)/(d − D1)
//
//	s  share of the full basic depth, -
//
// Valid for d − P ≤ D < d or smaller holes down to D1; above 1 the tap has cut a full crest.
// Errors: *check.RangeError outside 0 < pitch < d/2, D below the bolt's core, or for an unknown form.
// Source: definition; D1 as in ThreadGeometry.
func ThreadShare(p ThreadShareParams) (float64, error) {
	if err := checkFormThread("bolt.ThreadShare", p.Form, p.Diameter, p.Pitch); err != nil {
		return 0, err
	}
	thread, err := ThreadGeometry(p.Form, p.Diameter, p.Pitch)
	if err != nil {
		return 0, err
	}
	if err := check.All("bolt.ThreadShare",
		check.That("Drilled", p.Drilled, p.Drilled >= thread.CoreDiameter && p.Drilled < p.Diameter, "d3 <= D < d"),
	); err != nil {
		return 0, err
	}
	return (p.Diameter - p.Drilled) / (p.Diameter - thread.HoleMinor), nil
}

// checkFormThread is checkThread with the names that parameter structs use.
func checkFormThread(fn string, form Form, d, pitch float64) error {
	_, known := formSizes[form]
	return check.All(fn,
		knownForm("Form", form, known),
		check.Positive("Diameter", d),
		check.That("Pitch", pitch, pitch > 0 && pitch < d/2, "0 < P < d/2"),
	)
}

func knownForm(param string, form Form, known bool) check.Condition {
	return check.That(param, 0, known, fmt.Sprintf("%q, %q or %q, not %q", Metric, Unified, Whitworth, form))
}
