package shop

// A Failure is a line of the guide for parts that come back: what is seen, what
// it likely means, what to ask and check first.
type Failure struct {
	Seen   string
	Likely string
	Ask    string
	Where  []Slot // readings of the build record to compare with
}

// Failures is the guide. All of it is common practice of the trade without a
// source, except the snapped pinion stem, which gear makers publish.
var Failures = []Failure{
	{"heel ends of a few teeth off, clean grey fracture", "the crown wheel moved away under shock; large lash; no peg", "lash as found, peg gap, cap bolts, side preload",
		[]Slot{{"lash", "lash", ""}, {"peg", "gap", ""}, {"caps", "torque", ""}, {"side", "spread", ""}}},
	{"one or two teeth gone, the rest good and bright", "shock: a wheel landed, or gripped dry", "driver, locker, surface", []Slot{{"enquiry", "use", ""}, {"enquiry", "differential", ""}}},
	{"smooth beach marks, then a coarse zone", "fatigue over months", "pattern too far to an end, weak setting-up", []Slot{{"pattern", "drive_along", ""}, {"pattern", "coast_along", ""}}},
	{"pits or a frosted band on the flank", "surface fatigue: oil or overload", "oil, level, pattern", []Slot{{"run", "oil", ""}, {"pattern", "drive_along", ""}}},
	{"blue heat, scuffed teeth", "starved of oil, or run in hard", "level, filling, towing", []Slot{{"run", "oil", ""}}},
	{"head bearing's inner race spalled on one half", "overload, or out of line", "bores, preload", []Slot{{"bores", "line", ""}, {"preload", "torque", ""}}},
	{"cups spalled on one side", "bores out of line, or debris", "mandrel, magnet", []Slot{{"bores", "line", ""}, {"assemble", "washed", ""}}},
	{"cap bolts loose, bright fretting at the cap's joint", "the cap walked", "register, bolts, washers", []Slot{{"caps", "register", ""}, {"caps", "bolts", ""}, {"caps", "torque", ""}}},
	{"adjuster turned, lock pin sheared", "the cup spun, or the lock was slack", "cup fit, bore wear", []Slot{{"locks", "kind", ""}, {"bores", "bore_crown", ""}}},
	{"bronze flakes in the oil", "the peg rubs", "gap, run-out, pad", []Slot{{"peg", "gap", ""}, {"assemble", "runout", ""}}},
	{"pinion stem snapped between the bearings", "preload lost or wrong", "preload, nut", []Slot{{"preload", "torque", ""}, {"preload", "nut", ""}}},
	{"tips of teeth chipped, set up by a shop twice", "lash or depth wrong, run-out", "is there a set-up sheet?", []Slot{{"lash", "lash", ""}, {"shim", "wanted", ""}, {"assemble", "runout", ""}}},
}

// FailureOf returns the line of the guide for what was seen.
func FailureOf(seen string) (Failure, bool) {
	for _, f := range Failures {
		if f.Seen == seen {
			return f, true
		}
	}
	return Failure{}, false
}

func evidenceOptions() []Option {
	var all []Option
	for _, f := range Failures {
		all = append(all, look(f.Seen, f.Likely+"; look at: "+f.Ask))
	}
	return all
}
