package weldplan

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"axlewright/axle"
	"axlewright/calc/weld"
)

// A checker gathers findings about fields of a job.
type checker struct {
	sheet *axle.Sheet
	found axle.Findings
}

func (c *checker) add(field, format string, args ...any) {
	c.found = append(c.found, c.sheet.Finding(field, fmt.Sprintf(format, args...)))
}

// within demands a figure between two bounds, in coherent SI; needed says that it
// may not be left out. It says whether the figure can be used.
func (c *checker) within(field string, n axle.Number, low, high float64, needed bool, example string) bool {
	switch {
	case !n.Given():
		if needed {
			c.add(field, "is missing; expected such as %s", example)
		}
		return false
	case math.IsNaN(n.Value) || n.Value < low || n.Value > high:
		c.add(field, "%s is more or less than can be; expected such as %s", n.Text, example)
		return false
	case low > 0 && n.Low <= 0:
		c.add(field, "the doubt of %s reaches to nothing or below", n.Text)
		return false
	}
	return true
}

// named demands names that are there and differ.
func (c *checker) named(field, name string, seen map[string]string) {
	switch first, again := seen[name]; {
	case name == "":
		c.add(field, "has no name")
	case again:
		c.add(field+".name", "%q stands twice, first at %s", name, first)
	default:
		seen[name] = field
	}
}

// Bounds of what a shop welds: outside them a unit was mistaken.
const (
	leastThickness = 0.8e-3 // m
	mostThickness  = 40e-3  // m
	mostReach      = 1.5    // m, of any place from the origin
)

// check finds everything wrong with a job.
func (j *Job) check(s *axle.Sheet) axle.Findings {
	c := &checker{sheet: s}
	j.Casting.check(c)
	j.Shop.check(c)
	if len(j.Plates) == 0 {
		c.add("plates", "are missing: a weld plan needs plates with their runs")
	}
	names, runs, count := map[string]string{}, map[string]string{}, 0
	for i := range j.Plates {
		field := fmt.Sprintf("plates[%d]", i)
		c.named(field, j.Plates[i].Name, names)
		j.Plates[i].check(c, field, &j.Casting, runs)
		count += len(j.Plates[i].Runs)
	}
	if count > mostRuns {
		c.add("plates", "have %d runs; no more than %d are planned at once: join short ones", count, mostRuns)
	}
	j.checkCavities(c, runs)
	j.checkLoads(c, names)
	for i, h := range j.HeatSinks {
		field := fmt.Sprintf("heat_sinks[%d]", i)
		c.within(field+".mass", h.Mass.Number, 0.01, 500, true, "3.2 kg")
		for _, run := range h.Near {
			if _, known := runs[run]; !known {
				c.add(field+".near", "there is no run %q", run)
			}
		}
	}
	return c.found
}

func (s *Shop) check(c *checker) {
	if s.Process == "" {
		c.add("shop", "lacks process: one of %s", listed(processes))
	}
	if s.Cleaned == "" {
		c.add("shop", "lacks cleaned_with: one of %s", listed(cleanings))
	}
	c.within("shop.air", s.Air.Number, zeroCelsius-30, zeroCelsius+50, true, "18 °C")
	c.within("shop.preheat", s.Preheat.Number, zeroCelsius, zeroCelsius+800, false, "80 °C")
	c.within("shop.oven", s.Oven.Number, zeroCelsius+50, zeroCelsius+1200, false, "250 °C")
	c.within("shop.hydrogen", s.Hydrogen.Number, 0, 40e-5, false, "5 ml/100g")
	switch s.Scale {
	case "", weld.ScaleA, weld.ScaleB, weld.ScaleC, weld.ScaleD, weld.ScaleE:
		if s.Scale != "" && s.Hydrogen.Given() {
			c.add("shop.hydrogen_scale", "stands beside a hydrogen content; leave one out")
		}
	default:
		c.add("shop.hydrogen_scale", "%q is no hydrogen scale; expected A, B, C, D or E", s.Scale)
	}
}

func (c *checker) place(field string, p Place) bool {
	switch {
	case !p.Given:
		c.add(field, "is missing; expected a place such as [35 mm, -60 mm, 12 mm]")
		return false
	case !(r3.Norm(p.At) <= mostReach):
		c.add(field, "%s lies more than %s from the crossing of the axes; another unit?", p, mm(mostReach))
		return false
	}
	return true
}

const zeroCelsius = 273.15
