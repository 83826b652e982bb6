package casting

import (
	"fmt"
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"

	"axlewright/calc/survival"
	"axlewright/quantity"
)

// FitChances are the chances of the three fits for the next casting.
type FitChances struct {
	AsCut   float64 `json:"as_cut"`
	Trimmed float64 `json:"trimmed"`
	Not     float64 `json:"not"`
}

// A FitForecast is how a revision of the kit will go on castings to come.
type FitForecast struct {
	Enough   bool         `json:"enough"` // measured castings at every station
	Whole    FitChances   `json:"whole"`  // the kit on a casting
	Stations []StationFit `json:"stations"`
	Past     FitChances   `json:"past"` // castings of the history, counted
	Counted  int          `json:"counted"`
	Doubt    string       `json:"doubt,omitempty"` // forecast and count do not go together
	Sentence string       `json:"sentence"`
}

// A StationFit is the forecast at one station.
type StationFit struct {
	Station      int        `json:"station"`
	Name         string     `json:"name"`
	Edge         string     `json:"edge"`
	Chances      FitChances `json:"chances"`
	ExpectedTrim float64    `json:"expected_trim"` // m, mean over all castings, those with none included
	OneInTen     float64    `json:"one_in_ten"`    // m, trim that one casting in ten exceeds
	Words        string     `json:"words"`
}

// stationFit is exact: the forecast is Student's t.
func (g *Gauging) stationFit(s *Station, f Forecast) StationFit {
	out := StationFit{Station: s.Number, Name: s.Name, Edge: s.Edge, Chances: g.chancesAt(s, f, 0)}
	out.ExpectedTrim, out.OneInTen = trims(s, f)
	out.Words = trimWords(s, out)
	return out
}

// chancesAt are the chances at a station if the kit were drawn for a reading
// that is larger by shift.
func (g *Gauging) chancesAt(s *Station, f Forecast, shift float64) FitChances {
	below := func(clearance float64) float64 { // chance that the clearance is below
		p := f.below(s.reading(clearance) + shift)
		if s.More == MoreTrim {
			return 1 - p
		}
		return p
	}
	wide, touch, deep := below(g.Kit.Gap.Value), below(0), below(-g.Kit.Trim.Value)
	return FitChances{AsCut: wide - touch, Trimmed: touch - deep, Not: math.Max(1-wide+deep, 0)}
}

// trims is the mean of what must come off and what one casting in ten exceeds.
func trims(s *Station, f Forecast) (mean, oneInTen float64) {
	middle := s.clearance(f.Mean)
	if f.Scale == 0 {
		return math.Max(-middle, 0), math.Max(-middle, 0)
	}
	t := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: f.DoF}
	z := -middle / f.Scale // clearance is below zero where t is below z
	// E[(z − t)+] = z·P(t < z) + ∫ of the tail, which for Student's t is closed
	part := (f.DoF + z*z) / (f.DoF - 1) * t.Prob(z)
	mean = f.Scale * (z*t.CDF(z) + part)
	oneInTen = math.Max(f.Scale*(z-t.Quantile(0.1)), 0)
	return mean, oneInTen
}

// seldom is the trim that nobody reaches for the grinder for.
const seldom = 5e-5 // m

func trimWords(s *Station, f StationFit) string {
	switch {
	case f.OneInTen < seldom:
		return fmt.Sprintf("%s at %s seldom needs the grinder", s.Edge, s.Name)
	case f.Chances.Trimmed+f.Chances.Not < 0.5:
		return fmt.Sprintf("%s at %s: one casting in ten needs more than %s off", s.Edge, s.Name, length(f.OneInTen))
	}
	return fmt.Sprintf("%s at %s: expect to take %s off, one casting in ten more than %s", s.Edge, s.Name, length(f.ExpectedTrim), length(f.OneInTen))
}

// Draws of castings to come, and the seed that makes every answer come again.
const (
	drawnCastings = 20000
	drawSeed      = 20
)

// forecastFit draws castings to come, with the likeness of their stations to
// one another, and counts how the kit goes on. shifts are added to what the
// kit is drawn for.
func (g *Gauging) forecastFit(history []StationHistory, shifts []float64) FitChances {
	k := len(g.Stations)
	root := likeness(history)
	dof := math.Inf(1)
	for i := range history {
		dof = math.Min(dof, history[i].Next.DoF)
	}
	source := rand.NewPCG(drawSeed, 0)
	r := rand.New(source)
	chi := distuv.ChiSquared{K: dof, Src: source}
	z := make([]float64, k)
	var count FitChances
	for range drawnCastings {
		for i := range z {
			z[i] = r.NormFloat64()
		}
		wide := math.Sqrt(dof / chi.Rand())
		fit := FitsAsCut
		for i := range g.Stations {
			sum := 0.0
			for j := range i + 1 {
				sum += root.At(i, j) * z[j]
			}
			x := history[i].Next.Mean + history[i].Next.Scale*sum*wide
			fit = worse(fit, g.Kit.fit(g.Stations[i].clearance(x-shifts[i])))
		}
		count.add(fit, 1.0/drawnCastings)
	}
	return count
}

func (c *FitChances) add(f Fit, share float64) {
	switch f {
	case FitsAsCut:
		c.AsCut += share
	case FitsTrimmed:
		c.Trimmed += share
	default:
		c.Not += share
	}
}

// likeness is the lower root of the correlation of the stations, drawn towards
// none at all the fewer castings there are for so many stations.
func likeness(history []StationHistory) *mat.TriDense {
	k := len(history)
	r := mat.NewSymDense(k, nil)
	for i := range k {
		r.SetSym(i, i, 1)
		for j := range i {
			c, n := correlation(history[i].kept, history[j].kept)
			r.SetSym(i, j, c*n/(n+float64(k)))
		}
	}
	for {
		var root mat.Cholesky
		if root.Factorize(r) {
			var lower mat.TriDense
			root.LTo(&lower)
			return &lower
		}
		for i := range k { // pairs from different castings need not go together
			for j := range i {
				r.SetSym(i, j, 0.9*r.At(i, j))
			}
		}
	}
}

// correlation of residuals over castings that have both.
func correlation(a, b []float64) (r, n float64) {
	var aa, ab, bb float64
	for i := range a {
		if math.IsNaN(a[i]) || math.IsNaN(b[i]) {
			continue
		}
		aa, ab, bb, n = aa+a[i]*a[i], ab+a[i]*b[i], bb+b[i]*b[i], n+1
	}
	if aa == 0 || bb == 0 || n < 3 {
		return 0, n
	}
	return ab / math.Sqrt(aa*bb), n
}

// forecast of the kit as drawn.
func (g *Gauging) fitForecast(history []StationHistory) FitForecast {
	out := FitForecast{Enough: true}
	for i := range g.Stations {
		if history[i].Next.DoF == 0 {
			out.Enough = false
			continue
		}
		out.Stations = append(out.Stations, g.stationFit(&g.Stations[i], history[i].Next))
	}
	for i := range g.History {
		fit, whole := g.fitOf(&g.History[i])
		if whole {
			out.Past.add(fit, 1)
			out.Counted++
		}
	}
	if out.Counted > 0 {
		n := float64(out.Counted)
		out.Past = FitChances{out.Past.AsCut / n, out.Past.Trimmed / n, out.Past.Not / n}
	}
	if !out.Enough {
		out.Sentence = fmt.Sprintf("Too few castings yet to say how revision %s will go on: every station needs %d.", g.Kit.Revision, fewestForForecast)
		return out
	}
	out.Whole = g.forecastFit(history, make([]float64, len(g.Stations)))
	out.Doubt = out.doubt()
	out.Sentence = fmt.Sprintf("Revision %s on the next casting: as cut %s, with trimming %s, not at all %s.",
		g.Kit.Revision, quantity.Chance(out.Whole.AsCut), quantity.Chance(out.Whole.Trimmed), quantity.Chance(out.Whole.Not))
	return out
}

// doubt says so where the forecast lies outside what the count allows, nineteen
// times in twenty: then the castings do not lie about one middle.
func (f *FitForecast) doubt() string {
	for _, x := range []struct{ past, next float64 }{{f.Past.AsCut, f.Whole.AsCut}, {f.Past.Trimmed, f.Whole.Trimmed}, {f.Past.Not, f.Whole.Not}} {
		count, err := survival.ClopperPearson(survival.ClopperPearsonParams{
			Cases: int(math.Round(x.past * float64(f.Counted))), Trials: f.Counted, Confidence: 0.95,
		})
		if err == nil && (x.next < count.Low || x.next > count.High) {
			return "The count and the forecast do not go together: these castings may be of two kinds, such as two cavities. Trust the count, and see the patterns."
		}
	}
	return ""
}

// fitOf a casting that was measured; whole says whether at every station.
func (g *Gauging) fitOf(m *Measured) (fit Fit, whole bool) {
	fit, whole = FitsAsCut, true
	for i := range g.Stations {
		x, read := m.Readings.at(g.Stations[i].Number)
		if !read {
			whole = false
			continue
		}
		fit = worse(fit, g.Kit.fit(g.Stations[i].clearance(x)))
	}
	return fit, whole
}
