package web

import (
	"slices"
	"strconv"
	"strings"
	"time"

	"axlewright/quantity"
	"axlewright/shop"
)

// when is a time as it is read at the bench: today's without the day.
func when(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	t = t.Local()
	now := time.Now()
	if t.Year() == now.Year() && t.YearDay() == now.YearDay() {
		return "today " + t.Format("15:04")
	}
	if t.Year() == now.Year() {
		return t.Format("2 Jan 15:04")
	}
	return t.Format("2 Jan 2006")
}

// valueText is what an entry says, on one line and in both systems of units.
func valueText(v shop.Value) string {
	switch {
	case v.Withdrawn:
		return "taken back"
	case v.SI != nil && v.Dim != "":
		return bothUnits(v.Typed, *v.SI, v.Dim)
	case v.SI != nil:
		return v.Typed
	case len(v.Words) > 0:
		return strings.Join(v.Words, ", ")
	case v.Quantity != nil && v.Link != nil:
		text := amount(*v.Quantity) + " × " + v.Link.Label
		if v.Reserved {
			text += " (set aside)"
		}
		return text
	case v.Link != nil:
		if v.Link.Label == "" {
			return string(v.Link.Kind) + " without a name"
		}
		return v.Link.Label
	case v.Sum != nil:
		return v.Sum.String()
	case v.Day != "":
		return v.Day
	case v.Text != "":
		return v.Text
	case v.File != nil:
		return v.File.Name
	}
	return ""
}

// bothUnits prints a reading to the digits that were typed; torques in pounds
// have inch or foot spelled out.
func bothUnits(typed string, si float64, dim quantity.Dimension) string {
	if q, err := quantity.Parse(typed, dim); err == nil {
		return quantity.Spelled(q.String())
	}
	return quantity.Spelled(quantity.Format(si, dim))
}

// rangeText is a limit in both systems of units.
func rangeText(l shop.Limit, dim quantity.Dimension) string {
	switch {
	case l.Low != nil && l.High != nil:
		return quantity.Spelled(quantity.FormatRange(*l.Low, *l.High, dim))
	case l.High != nil:
		return "up to " + quantity.Spelled(quantity.Format(*l.High, dim))
	case l.Low != nil:
		return quantity.Spelled(quantity.Format(*l.Low, dim)) + " or more"
	}
	return ""
}

// markClass is the pattern of a verdict.
func markClass(v shop.Verdict) string {
	switch v {
	case shop.Fine:
		return "fine"
	case shop.Look:
		return "look"
	case shop.Halt:
		return "stop"
	}
	return "yet"
}

// stepMark is the sign, pattern and word of a step's state.
func stepMark(v shop.StepView) (class, symbol, word string) {
	switch {
	case v.State == shop.StepNotNeeded:
		return "off", "–", "not needed"
	case slices.ContainsFunc(standing(v.Stops), func(s shop.StandingStop) bool { return !s.Missing }):
		return "stop", "✕", "stop"
	case v.Verdict == shop.Halt:
		return "stop", "✕", gapWords(v)
	case v.Verdict == shop.Look && (v.State == shop.StepDone || v.State == shop.StepFull):
		return "look", "△", "look"
	case v.State == shop.StepDone, v.State == shop.StepFull:
		return "fine", "✓", doneWords(v)
	case v.State == shop.StepBegun:
		return "look", "△", gapWords(v)
	}
	return "yet", "·", "not yet"
}

func doneWords(v shop.StepView) string {
	if v.State == shop.StepDone && v.Gaps > 0 {
		return "done, " + gapWords(v)
	}
	return "done"
}

func gapWords(v shop.StepView) string {
	switch v.Gaps {
	case 0:
		return "look"
	case 1:
		return "1 gap"
	}
	return strconv.Itoa(v.Gaps) + " gaps"
}

// standing leaves out the stops that somebody has overridden.
func standing(stops []shop.StandingStop) []shop.StandingStop {
	var all []shop.StandingStop
	for _, s := range stops {
		if s.Override == nil {
			all = append(all, s)
		}
	}
	return all
}

func rolesText(roles []shop.Role) string {
	return strings.Join(words(roles), " or ")
}

func itoa[T int | int64](n T) string { return strconv.FormatInt(int64(n), 10) }

func amount(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// count writes "1 job", "3 jobs".
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return itoa(n) + " " + many
}

// sizeText is the size of a file in words.
func sizeText(bytes int64) string {
	switch {
	case bytes >= 1e6:
		return strconv.FormatFloat(float64(bytes)/1e6, 'f', 1, 64) + " MB"
	case bytes >= 1e3:
		return strconv.FormatFloat(float64(bytes)/1e3, 'f', 0, 64) + " kB"
	}
	return strconv.FormatInt(bytes, 10) + " bytes"
}
