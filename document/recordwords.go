package document

import (
	"strconv"
	"strings"
	"time"

	"axlewright/quantity"
	"axlewright/shop"
)

// The words of a job's record, for the screen and for paper alike.

// ValueText is what an entry says, on one line and in both systems of units.
func ValueText(v shop.Value) string {
	switch {
	case v.Withdrawn:
		return "taken back"
	case v.SI != nil && v.Dim != "":
		return Reading(v.Typed, *v.SI, v.Dim)
	case v.SI != nil:
		return v.Typed
	case len(v.Words) > 0:
		return strings.Join(v.Words, ", ")
	case v.Quantity != nil && v.Link != nil:
		text := strconv.FormatFloat(*v.Quantity, 'f', -1, 64) + " × " + v.Link.Label
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

// Reading prints a reading to the digits that were typed; torques in pounds
// have inch or foot spelled out.
func Reading(typed string, si float64, dim quantity.Dimension) string {
	if q, err := quantity.Parse(typed, dim); err == nil {
		return quantity.Spelled(q.String())
	}
	return quantity.Spelled(quantity.Format(si, dim))
}

// RangeText is a limit in both systems of units.
func RangeText(l shop.Limit, dim quantity.Dimension) string {
	switch {
	case l.Low != nil && l.High != nil && *l.Low == *l.High:
		return quantity.Spelled(quantity.Format(*l.Low, dim))
	case l.Low != nil && l.High != nil:
		return quantity.Spelled(quantity.FormatRange(*l.Low, *l.High, dim))
	case l.High != nil:
		return "up to " + quantity.Spelled(quantity.Format(*l.High, dim))
	case l.Low != nil:
		return quantity.Spelled(quantity.Format(*l.Low, dim)) + " or more"
	}
	return ""
}

// standing is what stands in all places of a field, in their order; "" where
// nothing does.
func standing(j *shop.Job, s shop.Slot) string {
	var parts []string
	for _, e := range j.InPlaces(s.Step, s.Item) {
		text := ValueText(e.Value)
		if e.Place != "" {
			text = e.Place + ": " + text
		}
		if len(shop.Query(e)) > 0 {
			text += " (in question)"
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, "; ")
}

// day is a date as it is printed for good.
func day(t time.Time) string { return t.Local().Format("2 Jan 2006") }

// moment is a time as it is printed for good.
func moment(t time.Time) string { return t.Local().Format("2 Jan 2006 15:04") }

// titles of a step and of a field.
func titleOf(key shop.StepKey) string {
	if s, ok := shop.StepOf(key); ok {
		return s.Title
	}
	if key == shop.StepJob {
		return "The job"
	}
	return string(key)
}

func fieldTitle(s shop.Slot) string {
	if f, ok := shop.FieldOf(s.Step, s.Item); ok {
		return f.Title
	}
	return s.Item
}
