package casting

// A StationReport is what the stations of a variant say: its history, where
// new castings lie in it, how the kit will go on, whether to redraw it, and
// which patterns would serve. It is complete: what is printed or drawn is taken
// from it and from nothing else.
type StationReport struct {
	Variant  string           `json:"variant"`
	Kit      string           `json:"kit"`
	History  []StationHistory `json:"history"`
	Placed   []Placement      `json:"placed,omitempty"`
	Fit      FitForecast      `json:"fit"`
	Redraw   Redraw           `json:"redraw"`
	Patterns PatternPlan      `json:"patterns"`
}

// Report works everything out.
//
// Errors: axle.Findings for data that cannot be.
func (g *Gauging) Report() (StationReport, error) {
	r, err := g.Placement()
	if err == nil {
		r.Patterns = g.patterns()
	}
	return r, err
}

// Placement works out all but the patterns, which take longer the more castings
// were measured.
//
// Errors: axle.Findings for data that cannot be.
func (g *Gauging) Placement() (StationReport, error) {
	if found := g.Check(); len(found) > 0 {
		return StationReport{}, found
	}
	r := StationReport{Variant: g.Variant, Kit: g.Kit.Revision}
	for i := range g.Stations {
		r.History = append(r.History, g.history(&g.Stations[i]))
	}
	for i := range g.New {
		r.Placed = append(r.Placed, g.place(&g.New[i], r.History))
	}
	r.Fit = g.fitForecast(r.History)
	r.Redraw = g.redraw(r.History)
	return r, nil
}
