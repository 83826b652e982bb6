package web

import (
	"fmt"
	"math"
	"strconv"

	"github.com/a-h/templ"

	"axlewright/casting"
	"axlewright/drawing"
	"axlewright/quantity"
	"axlewright/shop"
)

// A stationsShow is the casting in hand at the stations of its variant.
type stationsShow struct {
	Job      *shop.Job
	Variant  string
	Card     shop.ID
	Gauging  casting.Gauging
	Report   casting.StationReport
	Placed   *casting.Placement // nil before the first reading
	Stations []stationShow
	Missing  string // why nothing can be worked out
	Why      string // which revision of the kit was taken, and why
	Doubt    string // the stations are those of another revision: nothing is placed
}

// A stationShow is one station with its box.
type stationShow struct {
	Station casting.Station
	Box     box
	Place   *casting.StationPlace
	Chart   string
	History string
}

// stationsLead places the casting in hand among those of its variant.
func stationsLead(v *visit, j *shop.Job) (lead, error) {
	if len(v.filesIn("stations")) == 0 {
		return lead{}, nil
	}
	s, err := v.placed(j)
	switch {
	case shop.CodeOf(err) == shop.NotFound:
		return lead{}, nil
	case err != nil:
		return lead{}, err
	case s.Missing != "":
		return lead{Show: stationsMissing(s)}, nil
	}
	err = v.atStations(&s)
	return lead{stationsPart(s), shop.StationItem}, err
}

// placed puts the casting in hand into the history of its variant.
func (v *visit) placed(j *shop.Job) (stationsShow, error) {
	s := stationsShow{Job: j}
	link := j.Casting()
	if link == nil {
		s.Missing = "Which variant it is has not been written down yet: the stations belong to a variant."
		return s, nil
	}
	known, err := v.know(j)
	if err != nil {
		return s, err
	}
	s.Variant, s.Card = known.NameOf(link.ID), link.ID
	g, ok := known.gaugingOf(s.Variant)
	if !ok {
		s.Missing = fmt.Sprintf("There is no file with stations of %s: put one into the folder stations of the shop.", s.Variant)
		return s, nil
	}
	if g, s.Why, s.Doubt, err = v.shop.GaugeKit(v.ctx(), j, g); err != nil {
		return s, err
	}
	s.Gauging = known.Gauging(g, j)
	if s.Doubt != "" {
		s.Gauging.New = nil
	}
	if s.Report, err = s.Gauging.Placement(); err != nil {
		return s, err
	}
	if len(s.Report.Placed) > 0 {
		s.Placed = &s.Report.Placed[0]
	}
	return s, nil
}

// atStations makes a box for every station, with its chart.
func (v *visit) atStations(s *stationsShow) error {
	b, err := v.bounds(v.ctx(), s.Job)
	if err != nil {
		return err
	}
	step, _ := s.Job.Step("stations")
	var view shop.FieldView
	for _, f := range step.Fields {
		if f.Field.Key == shop.StationItem {
			view = f
		}
	}
	view.Field.Hint = ""
	for i := range s.Gauging.Stations {
		st := &s.Gauging.Stations[i]
		slot := shop.Slot{Step: "stations", Item: shop.StationItem, Place: strconv.Itoa(st.Number)}
		place, ok := placeOf(view, slot)
		if !ok {
			place = shop.PlaceView{Slot: slot, Last: lastSeq(s.Job, slot)}
		}
		show := stationShow{Station: *st, Box: v.boxOf(s.Job, b, "stations", view, place), History: s.Report.History[i].Sentence}
		show.Box.Title = fmt.Sprintf("%d · %s", st.Number, st.Name)
		reading := math.NaN()
		if s.Placed != nil {
			for k := range s.Placed.Stations {
				if p := &s.Placed.Stations[k]; p.Station == st.Number {
					show.Place, reading = p, p.Value
				}
			}
		}
		show.Chart = svgText(drawing.ControlChart("chart"+strconv.Itoa(st.Number), &s.Report.History[i], reading))
		s.Stations = append(s.Stations, show)
	}
	return nil
}

// gaugingOf are the stations of a variant; of several files the last.
func (k *knowledge) gaugingOf(variant string) (casting.Gauging, bool) {
	for i := len(k.Gaugings) - 1; i >= 0; i-- {
		if k.Gaugings[i].Variant == variant {
			return k.Gaugings[i], true
		}
	}
	return casting.Gauging{}, false
}

// fitSign is the sign, the pattern and the word of a fit.
func fitSign(f casting.Fit) (class, symbol, word string) {
	switch f {
	case casting.FitsAsCut:
		return "fine", "✓", "goes on as cut"
	case casting.FitsTrimmed:
		return "look", "△", "goes on after trimming"
	}
	return "stop", "✕", "does not go on"
}

// A variantShow is what the shop's castings of one variant say of its kit.
type variantShow struct {
	Card   shop.Casting
	Report casting.StationReport
	Kit    casting.KitDrawing
	Charts []string
}

// variantPage shows the history of a variant's stations, how its kit will go
// on, whether to draw it anew, and the fewest patterns that would serve.
func variantPage(v *visit) error {
	card, err := shop.Get[shop.Casting](v.ctx(), v.shop, shop.ID(v.r.PathValue("id")))
	if err != nil {
		return err
	}
	nobody := shop.Read("", nil, shop.Head{}) // no casting is in hand
	known, err := v.know(nobody)
	if err != nil {
		return err
	}
	name := known.NameOf(card.ID)
	g, ok := known.gaugingOf(name)
	if !ok {
		return shop.Fault(shop.NotFound, "There is no file with stations of %s: put one into the folder stations of the shop.", name)
	}
	g = known.Gauging(g, nobody)
	s := variantShow{Card: card, Kit: g.Kit}
	if s.Report, err = g.Report(); err != nil {
		return err
	}
	for i := range s.Report.History {
		h := &s.Report.History[i]
		s.Charts = append(s.Charts, svgText(drawing.ControlChart("chart"+strconv.Itoa(h.Station), h, math.NaN())))
	}
	return v.show(variantSheet(v.frame("Stations of "+name).at("stock"), s))
}

// shares are the chances of the three fits, in words.
func shares(c casting.FitChances) string {
	return fmt.Sprintf("as cut %s, with trimming %s, not at all %s", quantity.Chance(c.AsCut), quantity.Chance(c.Trimmed), quantity.Chance(c.Not))
}

// gauged says whether there is a file with the stations of a variant. What is
// wrong with the files is said where they are asked for.
func (v *visit) gauged(card shop.ID) bool {
	known, err := v.know(shop.Read("", nil, shop.Head{}))
	if err != nil {
		return false
	}
	_, ok := known.gaugingOf(known.NameOf(card))
	return ok
}

func variantPath(card shop.ID) templ.SafeURL {
	return templ.SafeURL("/cards/casting/" + string(card) + "/stations")
}
