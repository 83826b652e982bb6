package drawing

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"axlewright/assess"
	"axlewright/quantity"
)

// State is how a build's chance stands to the chance that is wanted.
type State string

// The states. Each has its sign, its words and its pattern.
const (
	Fine State = "good enough"
	Look State = "not sure enough"
	Stop State = "too weak"
)

// StateOf says how a chance stands to the wanted one.
func StateOf(chance, wanted float64) State {
	switch {
	case chance >= wanted:
		return Fine
	case chance >= 0.5:
		return Look
	}
	return Stop
}

// Sign is the state's sign as a letter.
func (s State) Sign() string {
	switch s {
	case Fine:
		return "✓"
	case Look:
		return "△"
	}
	return "✕"
}

// MostShown is how many builds a ladder has room for.
const MostShown = 6

// Shown picks the builds that a ladder shows, by price: those that buy
// something, the recommended or nearest one and the next one up, at most
// MostShown. Where there are more, those next to the recommended one stay, and
// the cheapest. The first of them is build 1 on every paper.
func Shown(a *assess.Advice) []int {
	if len(a.Builds) == 0 {
		return nil
	}
	best := min(max(a.Best, 0), len(a.Builds)-1)
	picked := []int{best}
	add := func(i int) {
		if i >= 0 && i < len(a.Builds) && !slices.Contains(picked, i) && len(picked) < MostShown {
			picked = append(picked, i)
		}
	}
	add(a.Recommended)
	add(a.NextUp)
	add(slices.IndexFunc(a.Builds, func(b assess.Build) bool { return b.Frontier }))
	for away := 1; away < len(a.Builds); away++ {
		for _, i := range []int{best - away, best + away} {
			if i >= 0 && i < len(a.Builds) && a.Builds[i].Frontier {
				add(i)
			}
		}
	}
	slices.Sort(picked)
	return picked
}

// distanceWords prints a distance in km, as the advice has it, in both systems.
func distanceWords(km float64) string {
	return quantity.FormatDigits(km*1000, quantity.Length, 2)
}

// torque prints to three figures, metric and the other system apart.
func torque(x float64) (metric, other string) {
	metric, other, _ = strings.Cut(quantity.FormatDigits(x, quantity.Torque, 3), " (")
	return metric, strings.TrimSuffix(other, ")")
}

// bandWords is "4,120 N·m (3,040 lbf·ft), 3,300 to 5,100 N·m".
func bandWords(b assess.Band) string {
	switch {
	case !drawable(b.Median):
		return "beyond what was looked at"
	case !drawable(b.High):
		return fmt.Sprintf("%s, from %s", quantity.FormatDigits(b.Median, quantity.Torque, 3), first(torque(b.Low)))
	}
	return fmt.Sprintf("%s, %s", quantity.FormatDigits(b.Median, quantity.Torque, 3), rangeWords(b))
}

// rangeWords is "3,300 to 5,100 N·m".
func rangeWords(b assess.Band) string {
	low, unit, _ := strings.Cut(first(torque(b.Low)), " ")
	high, other, _ := strings.Cut(first(torque(b.High)), " ")
	if unit != other {
		return low + " " + unit + " to " + high + " " + other
	}
	return low + " to " + high + " " + unit
}

func first(a, _ string) string { return a }

// farthest is the highest torque that a scale is drawn for, N·m, far above any
// axle: what is above it counts as beyond.
const farthest = 1e7

// drawable says whether a torque has a place on a scale.
func drawable(x float64) bool { return math.Abs(x) <= farthest }
