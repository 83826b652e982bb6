package web

import (
	"slices"
	"strconv"
	"strings"
	"time"

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
	case v.Verdict == shop.Halt && v.Gaps > 0:
		return "stop", "✕", "stop, " + gapWords(v)
	case v.Verdict == shop.Halt:
		return "stop", "✕", "stop"
	case v.Verdict == shop.Look && (v.State == shop.StepDone || v.State == shop.StepFull):
		return "look", "△", "look"
	case v.State == shop.StepDone && v.Gaps > 0:
		return "look", "△", "said to be done, " + gapWords(v)
	case v.State == shop.StepDone, v.State == shop.StepFull:
		return "fine", "✓", "done"
	case v.State == shop.StepBegun:
		return "look", "△", gapWords(v)
	}
	return "yet", "·", "not yet"
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
