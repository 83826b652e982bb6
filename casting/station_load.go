package casting

import (
	"fmt"
	"math"
	"strconv"
	"time"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"

	"axlewright/axle"
	"axlewright/quantity"
)

// LoadGauging reads the stations, the kit and the history of one variant.
//
// Errors: axle.Findings for everything wrong with the data, with file and line.
func LoadGauging(path string) (Gauging, error) {
	var g Gauging
	s := shelf{}
	found := s.read(path, &g)
	if len(found) == 0 {
		found = g.Check()
	}
	if len(found) > 0 {
		return g, s.shown(path, found)
	}
	return g, nil
}

// UnmarshalYAML keeps the line for findings.
func (m *Measured) UnmarshalYAML(node ast.Node) error {
	type plain Measured
	var p plain
	if err := yaml.NodeToValue(node, &p, yaml.Strict()); err != nil {
		return err
	}
	*m = Measured(p)
	m.Line = startLine(node)
	return nil
}

// UnmarshalYAML reads
//
//	readings: {1: 14.2 mm, 2: [8.1 mm, 8.3 mm, 8.2 mm], 4: can't reach it}
func (r *Readings) UnmarshalYAML(node ast.Node) error {
	list, err := pairs(node, "station numbers and readings, such as {1: 14.2 mm, 2: 8.1 mm}")
	if err != nil {
		return err
	}
	for _, p := range list {
		number, err := strconv.Atoi(p.key)
		if err != nil {
			return at(p.value, fmt.Sprintf("%q is not the number of a station", p.key))
		}
		texts := []ast.Node{p.value}
		if several, ok := p.value.(*ast.SequenceNode); ok {
			texts = several.Values
		}
		x := StationReading{Station: number, Line: p.line}
		for _, n := range texts {
			text, plain := word(n)
			if !plain {
				return at(n, "expected a reading such as 14.2 mm")
			}
			if isUnseen(text) {
				continue
			}
			q, err := quantity.Parse(text, quantity.Length)
			if err != nil {
				return at(n, err.Error())
			}
			x.Value += q.SI
			x.Times++
		}
		if x.Times > 0 {
			x.Value /= float64(x.Times)
			*r = append(*r, x)
		}
	}
	return nil
}

// Limits of a gauging: more is a mistake, not a workshop.
const (
	mostStations = 60
	mostMeasured = 2000
	furthest     = 2.0 // m, no nose is larger
)

// Check finds everything wrong with a gauging.
func (g *Gauging) Check() axle.Findings {
	var found axle.Findings
	add := func(line int, field, format string, args ...any) {
		found = append(found, axle.Finding{Line: line, Field: field, Problem: fmt.Sprintf(format, args...)})
	}
	if g.Variant == "" {
		add(0, "variant", "is missing: whose stations are these?")
	}
	for _, n := range []struct {
		name string
		n    axle.Number
	}{{"gap", g.Kit.Gap.Number}, {"trim", g.Kit.Trim.Number}} {
		if !n.n.Given() || !(n.n.Value > 0 && n.n.Value < 0.05) {
			add(n.n.Line, "kit."+n.name, "is missing or out of reason: expected a length above zero and below 50 mm, such as 1 mm")
		}
	}
	if w := g.Kit.Wanted; w != 0 && !(w > 0 && w <= 1) {
		add(0, "kit.wanted", "%g is not a share above zero and up to one, such as 0.9", w)
	}
	for _, x := range []float64{g.Effort.Trim, g.Effort.Remake, g.Effort.Redraw, g.Effort.ToCome} {
		if !(x >= 0 && x < 1e6) {
			add(0, "effort", "%g is neither minutes nor castings", x)
		}
	}
	numbers := map[int]bool{}
	for i := range g.Stations {
		g.Stations[i].check(numbers, add)
	}
	if n := len(g.Stations); n == 0 || n > mostStations {
		add(0, "stations", "there are %d; expected 1 to %d", n, mostStations)
	}
	if n := len(g.History) + len(g.New); n > mostMeasured {
		add(0, "history", "holds %d castings; no more than %d are taken", n, mostMeasured)
	}
	names := map[string]bool{}
	last := ""
	for i := range g.History {
		g.History[i].check("history", numbers, names, add)
		if d := g.History[i].Date; d != "" {
			if d < last {
				add(g.History[i].Line, "history["+g.History[i].Casting+"].date", "%s comes before %s: put the oldest first", d, last)
			}
			last = d
		}
	}
	for i := range g.New {
		g.New[i].check("new", numbers, names, add)
	}
	return found
}

type lineAdder func(line int, field, format string, args ...any)

func (s *Station) check(numbers map[int]bool, add lineAdder) {
	field := fmt.Sprintf("stations[%d]", s.Number)
	line := s.DrawnFor.Line
	switch {
	case s.Number < 1 || s.Number > 999:
		add(line, field+".number", "expected a number from 1 to 999")
	case numbers[s.Number]:
		add(line, field+".number", "stands twice; stations are told apart by their numbers")
	}
	numbers[s.Number] = true
	if s.Name == "" || s.Edge == "" {
		add(line, field, "needs a name and the edge of the plate that lies there")
	}
	if s.More != MoreGap && s.More != MoreTrim {
		add(line, field+".more", "%q is not one of gap, trim: what does a larger reading mean for the plate?", s.More)
	}
	for name, n := range map[string]axle.Length{"drawn_for": s.DrawnFor, "drawn_gap": s.DrawnGap} {
		if !n.Given() || !(math.Abs(n.Value) < furthest) {
			add(n.Line, field+"."+name, "is missing or out of reason; expected such as 14 mm")
		}
	}
}

func (m *Measured) check(list string, numbers map[int]bool, names map[string]bool, add lineAdder) {
	field := list + "[" + m.Casting + "]"
	switch {
	case m.Casting == "":
		add(m.Line, list, "a casting without its tag cannot be found again")
	case names[m.Casting]:
		add(m.Line, field, "stands twice; give each casting once")
	}
	names[m.Casting] = true
	if m.Date != "" {
		if _, err := time.Parse("2006-01-02", m.Date); err != nil {
			add(m.Line, field+".date", "%q is no date; expected such as 2023-05-17", m.Date)
		}
	}
	if len(m.Readings) == 0 {
		add(m.Line, field+".readings", "are missing")
	}
	for _, x := range m.Readings {
		if !numbers[x.Station] {
			add(x.Line, fmt.Sprintf("%s.readings.%d", field, x.Station), "there is no station %d", x.Station)
		}
		if !(math.Abs(x.Value) < furthest) {
			add(x.Line, fmt.Sprintf("%s.readings.%d", field, x.Station), "%s is more than any nose measures", quantity.Format(x.Value, quantity.Length))
		}
	}
}
