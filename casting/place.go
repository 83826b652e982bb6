package casting

import (
	"fmt"
	"math"

	"axlewright/quantity"
)

// A Placement is how one casting lies in the history of its variant and what
// the kit wants there.
type Placement struct {
	Casting  string         `json:"casting"`
	Fit      Fit            `json:"fit"`
	Sentence string         `json:"sentence"`
	Stations []StationPlace `json:"stations"`
	Trims    []EdgeTrim     `json:"trims,omitempty"`
	Missing  []int          `json:"missing,omitempty"` // stations not measured
}

// A StationPlace is one reading in the history of its station.
type StationPlace struct {
	Station   int     `json:"station"`
	Name      string  `json:"name"`
	Edge      string  `json:"edge"`
	Value     float64 `json:"value"`
	Z         float64 `json:"z"`         // scales of the forecast from its mean; 0 where there are too few yet
	Larger    float64 `json:"larger"`    // share of castings that are smaller
	Clearance float64 `json:"clearance"` // m, the gap; below zero what must come off
	Fit       Fit     `json:"fit"`
	Words     string  `json:"words"` // how usual it is
	Do        string  `json:"do"`    // what to do at the edge
}

// An EdgeTrim is what must come off one edge of a plate.
type EdgeTrim struct {
	Edge    string  `json:"edge"`
	Station int     `json:"station"` // where the most must come off
	Most    float64 `json:"most"`    // m
	Words   string  `json:"words"`
}

// place puts a casting into the history.
func (g *Gauging) place(m *Measured, history []StationHistory) Placement {
	p := Placement{Casting: m.Casting, Fit: FitsAsCut}
	odd := 0
	for i := range g.Stations {
		s := &g.Stations[i]
		x, read := m.Readings.at(s.Number)
		if !read {
			p.Missing = append(p.Missing, s.Number)
			continue
		}
		sp := g.placeAt(s, x, &history[i])
		p.Fit = worse(p.Fit, sp.Fit)
		if sp.Z != 0 && tail(sp.Larger) < outside {
			odd++
		}
		p.Stations = append(p.Stations, sp)
		p.addTrim(s, sp)
	}
	p.Sentence = p.sentence(odd)
	return p
}

// Two-sided chances from which a reading is called by a stronger word.
const (
	somewhat = 0.32
	oneIn20  = 0.05
	oneIn100 = 0.01
	outside  = 0.0027 // beyond three sigma of a normal
)

// tail is the two-sided chance of lying so far out.
func tail(below float64) float64 { return 2 * math.Min(below, 1-below) }

func (g *Gauging) placeAt(s *Station, x float64, h *StationHistory) StationPlace {
	c := s.clearance(x)
	p := StationPlace{Station: s.Number, Name: s.Name, Edge: s.Edge, Value: x, Clearance: c, Fit: g.Kit.fit(c), Larger: math.NaN()}
	p.Larger = 0.5
	p.Words = "too few castings yet to say how usual it is"
	if h.Next.DoF > 0 && h.Next.Scale > 0 {
		p.Z = (x - h.Next.Mean) / h.Next.Scale
		p.Larger = h.Next.below(x)
		p.Words = usual(p.Larger)
	}
	p.Do = g.Kit.do(s, c)
	return p
}

// usual says in words where a reading lies among the others.
func usual(below float64) string {
	size, share := "larger", below
	if below < 0.5 {
		size, share = "smaller", 1-below
	}
	switch p := tail(below); {
	case p > somewhat:
		return "as usual"
	case p > oneIn20:
		return fmt.Sprintf("somewhat %s than usual, %s than %.0f in 20", size, size, math.Floor(20*share))
	case p > oneIn100:
		return fmt.Sprintf("%s than %.0f in 100", size, math.Floor(100*share))
	case p > outside:
		return fmt.Sprintf("much %s than usual, %s than %.0f in 1000", size, size, math.Floor(1000*share))
	}
	return fmt.Sprintf("%s than any that belongs: measure again on clean skin, away from the flash line", size)
}

// do says what to do at an edge with that clearance.
func (k *KitDrawing) do(s *Station, clearance float64) string {
	size := quantity.Format(math.Abs(clearance), quantity.Length)
	switch {
	case clearance > k.Gap.Value:
		return fmt.Sprintf("gap %s, wider than %s: re-make this piece", size, quantity.Format(k.Gap.Value, quantity.Length))
	case clearance < -k.Trim.Value:
		return fmt.Sprintf("%s would have to come off, more than %s: re-make this piece", size, quantity.Format(k.Trim.Value, quantity.Length))
	case clearance < 0:
		return fmt.Sprintf("take %s off %s at %s", size, s.Edge, s.Name)
	}
	return fmt.Sprintf("sits with a gap of %s", size)
}

func (p *Placement) addTrim(s *Station, sp StationPlace) {
	if sp.Clearance >= 0 {
		return
	}
	for i := range p.Trims {
		if t := &p.Trims[i]; t.Edge == s.Edge {
			if -sp.Clearance > t.Most {
				t.Station, t.Most, t.Words = s.Number, -sp.Clearance, sp.Do
			}
			return
		}
	}
	p.Trims = append(p.Trims, EdgeTrim{s.Edge, s.Number, -sp.Clearance, sp.Do})
}

func (p *Placement) sentence(odd int) string {
	var says string
	switch p.Fit {
	case FitsAsCut:
		says = "The kit goes on as cut."
	case FitsTrimmed:
		says = fmt.Sprintf("The kit goes on after trimming %d of its edges.", len(p.Trims))
	case FitsNot:
		says = "The kit does not go on: at least one piece must be re-made."
	}
	switch {
	case odd >= 2:
		says += fmt.Sprintf(" It is out of line at %d stations: is it this variant at all?", odd)
	case odd == 1:
		says += " One station is out of line: measure it again before cutting."
	}
	if len(p.Missing) > 0 {
		says += fmt.Sprintf(" %d stations were not measured.", len(p.Missing))
	}
	return says
}
