package shop

// steps is the whole job, in the order in which it is usually done. Each part
// of the table stands in a file of its own.
var steps = join(stepsEnquiry, stepsStrip, stepsWeld, stepsMachine, stepsSetting, stepsOut)

func join(parts ...[]Step) []Step {
	var all []Step
	for _, p := range parts {
		all = append(all, p...)
	}
	return all
}

// Steps returns all steps in their usual order. The slice is shared: do not change it.
func Steps() []Step { return steps }

// StepOf returns the step of that key.
func StepOf(key StepKey) (Step, bool) {
	for _, s := range steps {
		if s.Key == key {
			return s, true
		}
	}
	return Step{}, false
}

// FieldOf returns the field of that key at a step.
func FieldOf(step StepKey, field string) (Field, bool) {
	s, ok := StepOf(step)
	if !ok {
		return Field{}, false
	}
	for _, f := range s.Fields {
		if f.Key == field {
			return f, true
		}
	}
	return Field{}, false
}
