package casting

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/stat/distuv"

	"axlewright/calc/survival"
	"axlewright/quantity"
)

// A StationHistory is what the castings measured so far say of one station.
type StationHistory struct {
	Station  int       `json:"station"`
	Name     string    `json:"name"`
	Castings int       `json:"castings"`
	Mean     float64   `json:"mean"` // m, of all
	SD       float64   `json:"sd"`   // m, of all; zero for a single casting
	Chart    *Chart    `json:"chart,omitempty"`
	Trend    Trend     `json:"trend"`
	Drifts   bool      `json:"drifts"`
	Outliers []Outlier `json:"outliers,omitempty"`
	Next     Forecast  `json:"next"`
	Sentence string    `json:"sentence"`

	kept []float64 // residuals of the castings that are not outliers, NaN for the others, by history
}

// An Outlier is a casting that does not belong with the others at a station.
type Outlier struct {
	Casting string  `json:"casting"`
	Value   float64 `json:"value"`
	Why     string  `json:"why"`
}

// A Forecast is where the next casting's reading will lie: Student's t about
// Mean with a scale and degrees of freedom. DoF zero says: too few yet.
type Forecast struct {
	Mean  float64 `json:"mean"`  // m
	Scale float64 `json:"scale"` // m
	DoF   float64 `json:"dof"`
}

// Fewest castings for a forecast and for a trend.
const (
	fewestForForecast = 5
	fewestForTrend    = 8
)

// driftBelow is the chance below which a trend is believed, shared out over
// the stations so that one file in twenty cries wolf and not every second one.
const driftBelow = 0.05

// history works out one station.
func (g *Gauging) history(s *Station) StationHistory {
	h := StationHistory{Station: s.Number, Name: s.Name, Trend: Trend{P: 1}, kept: make([]float64, len(g.History))}
	var values []float64
	var who []int // place in the history
	for i := range g.History {
		h.kept[i] = math.NaN()
		if x, read := g.History[i].Readings.at(s.Number); read {
			values, who = append(values, x), append(who, i)
		}
	}
	h.Castings = len(values)
	h.Mean, h.SD = meanSD(values)
	if len(values) >= 2 {
		if len(values) >= fewestForTrend {
			h.Trend = TrendOf(values)
			h.Drifts = h.Trend.P < driftBelow/float64(len(g.Stations))
		}
		level := make([]float64, len(values))
		for i, x := range values {
			level[i] = x
			if h.Drifts {
				level[i] -= h.Trend.Slope * (float64(i) - float64(len(values)-1)/2)
			}
		}
		out := g.outliers(&h, level, who)
		h.forecast(values, who, out)
	}
	h.Sentence = h.sentence()
	return h
}

// outliers charts readings from which a trend was taken and returns which are
// out. What is out is taken away and the rest charted again, until nothing is
// or a third would be gone: then it is the foundry and not the casting.
func (g *Gauging) outliers(h *StationHistory, level []float64, who []int) []bool {
	out := make([]bool, len(level))
	if batches, ok := g.batches(level, who); ok {
		if c, err := Batches(batches); err == nil {
			h.Chart = &c
		}
	} else if c, err := Individuals(level); err == nil {
		h.Chart = &c
	}
	for left := len(level) / 3; left > 0; {
		var rest []float64
		var at []int
		for i, x := range level {
			if !out[i] {
				rest, at = append(rest, x), append(at, i)
			}
		}
		c, err := Individuals(rest)
		if err != nil {
			return out
		}
		// the furthest alone: with it the limits may have been too wide or too narrow for others
		far, most := -1, 0.0
		for i, p := range c.Points {
			if beyond := math.Max(p.Value-p.High, p.Low-p.Value); p.Out && beyond > most {
				far, most = i, beyond
			}
		}
		if far < 0 {
			return out
		}
		i := at[far]
		out[i] = true
		left--
		value, _ := g.History[who[i]].Readings.at(h.Station)
		h.Outliers = append(h.Outliers, Outlier{
			Casting: g.History[who[i]].Casting, Value: value,
			Why: fmt.Sprintf("%s, where the others lie from %s", quantity.Format(value, quantity.Length),
				quantity.FormatRange(c.Points[far].Low+value-level[i], c.Points[far].High+value-level[i], quantity.Length)),
		})
	}
	return out
}

// batches groups readings by batch where every casting has one and every batch
// is of 2 to 25.
func (g *Gauging) batches(level []float64, who []int) ([][]float64, bool) {
	var list [][]float64
	place := map[string]int{}
	for i, x := range level {
		name := g.History[who[i]].Batch
		if name == "" {
			return nil, false
		}
		at, known := place[name]
		if !known {
			at = len(list)
			place[name] = at
			list = append(list, nil)
		}
		list[at] = append(list[at], x)
	}
	for _, b := range list {
		if len(b) < 2 || len(b) > 25 {
			return nil, false
		}
	}
	return list, len(list) >= 2
}

// forecast tells where the next casting will lie, by the castings that are not
// out: about their mean, or on the line that they drift along.
func (h *StationHistory) forecast(values []float64, who []int, out []bool) {
	var kept []float64
	var points []survival.Point
	for i, x := range values {
		if !out[i] {
			kept = append(kept, x)
			points = append(points, survival.Point{X: float64(i), Y: x})
		}
	}
	n := float64(len(kept))
	if len(kept) < fewestForForecast {
		return
	}
	mean, sd := meanSD(kept)
	residual := func(i int) float64 { return values[i] - mean }
	h.Next = Forecast{Mean: mean, Scale: sd * math.Sqrt(1+1/n), DoF: n - 1}
	if line, err := survival.LinearRegression(points); h.Drifts && err == nil {
		h.Next = linePrediction(line, points, float64(len(values)))
		residual = func(i int) float64 { return values[i] - line.Intercept - line.Slope*float64(i) }
	}
	for i := range values {
		if !out[i] {
			h.kept[who[i]] = residual(i)
		}
	}
}

// linePrediction is where the next reading on a line lies.
//
//	ŷ ± t·s·√(1 + 1/n + (x − x̄)²/Σ (x_i − x̄)²),  n − 2 degrees of freedom
//
// Source: Draper and Smith, Applied Regression Analysis, 3rd ed. (1998), 3.1 (from memory).
func linePrediction(line survival.RegressionResult, points []survival.Point, x float64) Forecast {
	n, mean, xx := float64(len(points)), 0.0, 0.0
	for _, p := range points {
		mean += p.X / n
	}
	for _, p := range points {
		xx += (p.X - mean) * (p.X - mean)
	}
	return Forecast{
		Mean:  line.Intercept + line.Slope*x,
		Scale: line.ResidualSD * math.Sqrt(1+1/n+(x-mean)*(x-mean)/xx),
		DoF:   n - 2,
	}
}

// below is the chance that the next reading lies below x.
func (f Forecast) below(x float64) float64 {
	if f.Scale == 0 {
		if x < f.Mean {
			return 0
		}
		return 1
	}
	return distuv.StudentsT{Mu: f.Mean, Sigma: f.Scale, Nu: f.DoF}.CDF(x)
}

// meanSD is the mean and the standard deviation, which is zero for a single
// reading and for readings all alike.
func meanSD(values []float64) (mean, sd float64) {
	if s, err := survival.Summary(values); err == nil {
		return s.Mean, s.SD
	}
	for _, x := range values {
		mean += x / float64(len(values))
	}
	return mean, 0
}

func (h *StationHistory) sentence() string {
	var b strings.Builder
	switch {
	case h.Castings == 0:
		return "nobody has measured it yet"
	case h.Castings < fewestForForecast:
		fmt.Fprintf(&b, "too few yet: %d of the %d castings that a forecast needs", h.Castings, fewestForForecast)
	default:
		fmt.Fprintf(&b, "%d castings, %s", h.Castings, quantity.FormatSpread(h.Mean, 2*h.SD, quantity.Length))
	}
	if h.Drifts {
		way := "growing"
		if h.Trend.Slope < 0 {
			way = "shrinking"
		}
		fmt.Fprintf(&b, "; %s by %s every ten castings: moulds wear, or were mended", way, quantity.Format(10*math.Abs(h.Trend.Slope), quantity.Length))
	}
	if n := len(h.Outliers); n > 0 {
		fmt.Fprintf(&b, "; %d out of line", n)
	}
	if h.Chart != nil {
		for _, p := range h.Chart.Points {
			if p.Run && !h.Drifts {
				fmt.Fprintf(&b, "; %d or more in a row on one side of the mean: something was changed", longRun)
				break
			}
		}
	}
	return b.String()
}
