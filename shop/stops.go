package shop

import "slices"

// stops is everything that may refuse an entry. It is meant to stay short.
var stops = []Stop{
	{
		Key: "iron", Sentence: "No structural weld: the metal is grey iron or not known.",
		Why:   "Grey iron cracks beside the weld, often hours later.",
		Steps: []StepKey{"weld"},
		stands: func(j *Job) ([]*Entry, bool) {
			e := j.Standing(Slot{"metal", "metal", ""})
			switch {
			case e == nil:
				return nil, true
			case e.Value.Word() == MetalGrey || e.Value.Word() == MetalUnknown:
				return []*Entry{e}, true
			}
			if tests := j.metalTests(); j.maybeGrey() {
				return append(tests, e), true
			}
			return nil, false
		},
	},
	{
		Key: "vent", Sentence: "No weld: a closed cavity has no vent.",
		Why:   "Heated air and residues in a closed cavity burst it.",
		Steps: []StepKey{"weld"}, Owner: true,
		stands: func(j *Job) ([]*Entry, bool) { return j.saying("plates", "vents", VentMissing) },
	},
	{
		Key: "solvent", Sentence: "No weld: chlorinated solvent was used on this casting.",
		Why:   "The arc turns its traces into phosgene, which kills hours later.",
		Steps: []StepKey{"weld"}, Owner: true,
		stands: func(j *Job) ([]*Entry, bool) { return j.saying("clean", "wash", SolventChlorinated) },
	},
	{
		Key: "crack", Sentence: "Cracked at a cap ear or bearing bore: not for strengthening.",
		Why:    "The crack runs on under the load that the build is meant to carry.",
		Steps:  []StepKey{"jig", "weld", "drill", "nose", "assemble"},
		stands: func(j *Job) ([]*Entry, bool) { return j.saying("clean", "cracks", CrackEar, CrackBore) },
	},
	{
		Key: "kit", Sentence: "The plate kit's revision was not drawn for this variant.",
		Why:   "Forced plates leave gaps, big welds and a bent casting.",
		Steps: []StepKey{"jig", "weld"},
		stands: func(j *Job) ([]*Entry, bool) {
			kit, casting := j.Standing(Slot{"plates", "kit", ""}), j.Standing(Slot{"identify", "casting", ""})
			switch {
			case kit == nil:
				return nil, false
			case casting == nil || casting.Value.Link == nil:
				return []*Entry{kit}, true
			case slices.ContainsFunc(kit.Value.Fits, func(l Link) bool { return l.ID == casting.Value.Link.ID }):
				return nil, false
			}
			return []*Entry{casting, kit}, true
		},
	},
	{
		Key: "bores", Sentence: "The bores were measured without the caps torqued: measure again.",
		Why:    "Bores change by 0.02 to 0.05 mm when the caps are torqued.",
		Steps:  []StepKey{"assemble", "side", "lash", "handover"},
		Items:  []Slot{{"bores", "decision", ""}, {"cooled", "decision", ""}},
		stands: boresWithoutCaps,
	},
	{
		Key: "peg", Sentence: "The peg touches the crown wheel: set it again.",
		Why:    "A peg that always touches burns its pad and ruins the bearings.",
		Steps:  []StepKey{"run", "handover"},
		stands: pegTouches,
	},
}

// AllStops returns the stops that there are. Do not change the slice.
func AllStops() []Stop { return stops }

// saying returns the entry of a field that holds one of the words.
func (j *Job) saying(step StepKey, item string, words ...string) ([]*Entry, bool) {
	e := j.Standing(Slot{step, item, ""})
	if e == nil || !slices.ContainsFunc(e.Value.Words, func(w string) bool { return slices.Contains(words, w) }) {
		return nil, false
	}
	return []*Entry{e}, true
}

// boresWithoutCaps looks at both steps at which bores are measured.
func boresWithoutCaps(j *Job) (because []*Entry, yes bool) {
	measured := map[StepKey][]string{
		"cooled": {"bore_crown", "bore_other"},
		"bores":  {"bore_crown", "bore_other", "line", "offset", "square"},
	}
	for _, step := range []StepKey{"cooled", "bores"} {
		var readings []*Entry
		for _, item := range measured[step] {
			readings = append(readings, j.All(step, item)...)
		}
		caps := j.Standing(Slot{step, "caps", ""})
		if len(readings) == 0 || caps != nil && caps.Value.Word() == CapsTorqued {
			continue
		}
		yes = true
		because = append(because, readings...)
		if caps != nil {
			because = append(because, caps)
		}
	}
	return because, yes
}

// Stops returns every stop whose cause stands, overridden or not.
func (j *Job) Stops() []StandingStop {
	var all []StandingStop
	for _, s := range stops {
		because, yes := s.stands(j)
		if !yes {
			continue
		}
		st := StandingStop{Key: s.Key, Sentence: s.Sentence, Why: s.Why, Steps: s.Steps, Items: s.Items, May: []Role{RoleOwner, RoleBuilder},
			Because: []int64{}, Missing: len(because) == 0}
		if s.Owner {
			st.May = []Role{RoleOwner}
		}
		for _, e := range because {
			st.Because = append(st.Because, e.Seq)
		}
		slices.Sort(st.Because)
		// An override covers what was known when it was given. A new cause,
		// or the same field filled anew, needs a new one.
		if o := j.Standing(Slot{StepJob, "override", s.Key}); o != nil && slices.Equal(o.Value.Because, st.Because) {
			st.Override = o
		}
		all = append(all, st)
	}
	return all
}

// stopAt returns the stop that refuses an entry at a step, nil where none does.
func (j *Job) stopAt(step StepKey, item string) *StandingStop {
	for _, s := range j.Stops() {
		if s.Override == nil && (slices.Contains(s.Steps, step) || slices.Contains(s.Items, Slot{step, item, ""})) {
			return &s
		}
	}
	return nil
}

// refusal is the error of an entry that a stop refuses.
func (s *StandingStop) refusal(slot Slot) *Error {
	return &Error{Code: Stopped, Says: s.Sentence, Field: slot.String(), Stop: s}
}
