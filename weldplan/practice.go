package weldplan

import (
	"fmt"

	"axlewright/calc/material"
	"axlewright/quantity"
)

// Temperatures of the two practices for iron, and of steel. Common practice, no
// source, unless it says otherwise.
const (
	coldMost     = zeroCelsius + 60  // cold: hand-warm, this at most before the next run
	hotLeast     = zeroCelsius + 150 // hot: whole casting, ductile and malleable
	hotMost      = zeroCelsius + 300
	formedMost   = zeroCelsius + 100 // between runs on formed steel, or its strength goes
	castMost     = zeroCelsius + 250 // between runs on cast steel
	coldRun      = 25e-3             // m, longest bead of the cold practice
	hotRun       = 60e-3             // m, longest step of the hot one
	steelRun     = 50e-3             // m, longest step on steel
	slowCool     = "wrapped or in the oven, down to hand-warm overnight"
	hotSourceOne = "100 to 200 °C for thicker ferritic ductile iron, 250 °C and more for pearlitic (a published answer of a welding institute)"
)

// A Method is how the casting is welded, and why so.
type Method struct {
	Practice   Practice `json:"practice,omitempty"` // of an iron
	Why        []string `json:"why"`
	LeastStart float64  `json:"least_start"` // K, coldest that a run may begin at
	MostStart  float64  `json:"most_start"`  // K, warmest
	LongestRun float64  `json:"longest_run"` // m, bead laid in one go
	Peen       bool     `json:"peen"`
	After      string   `json:"after"`
	Refused    string   `json:"refused,omitempty"` // why a wish was not followed and nothing is planned
}

// warmShop is the least temperature of dry metal before welding.
const warmShop = zeroCelsius + 20

// methodFor settles the method for an iron by stated rules, in this order:
//
//  1. Blackheart is brazed cold: melted, it turns white.
//  2. A wish for cold or hot is followed if the rules below allow it.
//  3. Hot needs an oven that soaks the whole casting at 150 °C or more, and bores
//     that are machined afterwards: a casting that was hot all over has moved all over.
//  4. Otherwise cold.
//
// A temperature between the two practices, or one corner heated with a torch, is
// refused: it has the stresses of the one and the hard edge of the other.
func methodFor(family material.Family, s *Shop, rebored bool) Method {
	cold := Method{
		Practice: Cold, LeastStart: warmShop, MostStart: coldMost, LongestRun: coldRun, Peen: true,
		After: "Each bead peened while it is warm; the next one on the far side; cool in still air in the jig.",
	}
	hot := Method{
		Practice: Hot, LeastStart: hotLeast, MostStart: hotMost, LongestRun: hotRun,
		After: "Back into the oven at once, then " + slowCool + "; the bores are machined after that.",
	}
	hotPossible := s.Oven.Given() && s.Oven.Value >= hotLeast && rebored
	choose := func(m Method, why string) Method { m.Why = append(m.Why, why); return m }
	wish := s.Preheat
	between := wish.Given() && wish.Value > coldMost && wish.Value < hotLeast

	var m Method
	switch {
	case s.Torch:
		m = choose(cold, "a torch on one corner was asked for")
		m.Refused = "One corner heated with a torch is the worst of all: the rest holds it, and it cracks as it cools. Either the whole casting in an oven, or cold."
		return m
	case between:
		m = choose(cold, "a preheat of "+wish.Text+" was asked for")
		m.Refused = fmt.Sprintf("%s lies between the practices: too warm to keep the iron's edge thin, too cold to keep it soft. Cold is up to %s, hot is %s to %s with the whole casting in an oven. Pick one and write it down.",
			wish.Text, celsius(coldMost), celsius(hotLeast), celsius(hotMost))
		return m
	case wish.Given() && wish.Value > hotMost:
		m = choose(hot, "a preheat of "+wish.Text+" was asked for")
		m.Refused = fmt.Sprintf("%s is the full heat of a foundry repair; it spoils every machined face. Hot is %s to %s here.", wish.Text, celsius(hotLeast), celsius(hotMost))
		return m
	case family == material.BlackheartIron:
		m = choose(cold, "Blackheart that melts turns white and brittle: it is brazed, and kept cool (rule 1).")
		if s.Practice == Hot {
			m.Refused = "Blackheart malleable is not welded hot: its edge turns white at any preheat a shop can give. Braze it cold, or leave practice out."
		}
		return m
	case (s.Practice == Hot || wish.Given() && wish.Value >= hotLeast) && !hotPossible:
		m = choose(hot, "hot was asked for")
		m.Refused = "Hot needs an oven that soaks the whole casting at " + celsius(hotLeast) + " or more, and bores that are machined afterwards (rule 3). State both (oven, bored_after), or weld cold."
		return m
	case s.Practice == Cold && wish.Given() && wish.Value >= hotLeast:
		m = choose(cold, "cold was asked for")
		m.Refused = "Practice cold and a preheat of " + wish.Text + " contradict each other. Pick one."
		return m
	case s.Practice == Hot || wish.Given() && wish.Value >= hotLeast:
		m = choose(hot, "Hot was asked for, there is an oven, and the bores are machined afterwards (rules 2 and 3).")
		m.Why = append(m.Why, "Published: "+hotSourceOne+".")
	case s.Practice == Cold:
		m = choose(cold, "Cold was asked for (rule 2).")
	case hotPossible:
		m = choose(hot, "There is an oven, and the bores are machined afterwards: a softer edge is worth the movement (rule 3).")
		m.Why = append(m.Why, "Published: "+hotSourceOne+".")
	default:
		m = choose(cold, "No oven, or the bores are finished: a casting that is hot all over moves all over (rules 3 and 4).")
	}
	if m.Practice == Hot && s.Oven.Value < m.MostStart {
		m.MostStart = s.Oven.Value
	}
	return m
}

func celsius(kelvin float64) string { return quantity.Format(kelvin, quantity.Temperature) }
