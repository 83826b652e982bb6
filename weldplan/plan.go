package weldplan

import (
	"fmt"
	"math"

	"axlewright/axle"
	"axlewright/calc/material"
	"axlewright/calc/weld"
)

// A Plan is a finished weld plan. Values are in SI; it is kept as printed and not
// worked out again.
type Plan struct {
	Job       string      `json:"job"`
	Note      string      `json:"note,omitempty"`
	Variant   string      `json:"variant"`
	Metal     string      `json:"metal"`
	Family    string      `json:"family,omitempty"` // that it is planned for
	Go        bool        `json:"go"`               // nothing stops it
	Stops     []Stop      `json:"stops,omitempty"`
	Method    *Method     `json:"method,omitempty"`
	Process   Process     `json:"process,omitempty"`
	Why       string      `json:"why,omitempty"` // this process
	Filler    *Filler     `json:"filler,omitempty"`
	Hydrogen  float64     `json:"hydrogen,omitempty"` // m³/kg
	Scale     string      `json:"hydrogen_scale,omitempty"`
	Runs      []RunPlan   `json:"runs,omitempty"`
	Total     Consumables `json:"total"`
	Waiting   float64     `json:"waiting,omitempty"` // s, pauses for heat
	Learned   *Learned    `json:"learned_pace,omitempty"`
	Tacks     []Tack      `json:"tacks,omitempty"`
	Sequence  *Sequence   `json:"sequence,omitempty"`
	Vents     []VentPlan  `json:"vents,omitempty"`
	Backfills []Backfill  `json:"backfills,omitempty"`
	Stresses  []Stress    `json:"stresses,omitempty"`
	Before    []ListItem  `json:"before,omitempty"`
	After     []ListItem  `json:"after,omitempty"`
	Cautions  []Caution   `json:"cautions,omitempty"`
	Notes     []string    `json:"notes,omitempty"`
}

// Refused is why nothing is planned until a stop is cleared, "" where the plan stands.
func (p *Plan) Refused() string {
	for _, s := range p.Stops {
		if s.NoPlan {
			return s.What + ". " + s.Why
		}
	}
	return ""
}

// A RunPlan is one run as it is to be welded.
type RunPlan struct {
	Run      string      `json:"run"`
	Plate    string      `json:"plate"`
	Thick    float64     `json:"thickness"` // m, of the plate
	Joint    JointKind   `json:"joint"`
	Position Position    `json:"position"`
	Size     Size        `json:"size"`
	Amps     Amps        `json:"amps"`
	Arc      Arc         `json:"arc"`
	Start    float64     `json:"start"`              // K, least
	Between  float64     `json:"between"`            // K, most before the next bead
	Preheats []Preheat   `json:"preheats,omitempty"` // of the plate, of a steel casting
	Toes     []Toe       `json:"toes"`
	Uses     Consumables `json:"uses"`
}

// Options steer a plan.
type Options struct {
	Seed     uint64                // of the search and the doubt; zero stands for 1
	Progress func(done, total int) // of the search for an order; may be nil
}

// Make plans the welding of a job. entries are past logs.
//
// Errors: axle.Findings or a sentence, where the data cannot be worked with. A job
// that must not be welded is no error: its plan has stops.
func Make(j *Job, entries []Entry, o Options) (Plan, error) {
	if o.Seed == 0 {
		o.Seed = 1
	}
	p := Plan{
		Job: j.Name, Note: j.Note, Variant: j.Casting.Variant, Metal: j.Casting.Metal.String(),
		Stops: j.stopsOf(), Before: beforeList(j, weldableSteel(j.Casting.Metal.plannedFor())), After: afterList(j),
	}
	p.Go = len(p.Stops) == 0
	for _, s := range p.Stops {
		if s.NoPlan {
			p.Cautions = cautionsOf(j, Filler{})
			return p, nil
		}
	}
	w := work{job: j, entries: entries, family: j.Casting.Metal.plannedFor()}
	p.Family = string(w.family)
	w.settle(&p)
	p.Method = &w.method
	if w.method.Refused != "" {
		p.Go = false
		p.Stops = append(p.Stops, Stop{What: "Practice asked for", Why: w.method.Refused, Clear: "Pick one practice and write it down.", Override: nobody, NoPlan: true})
		p.Cautions = cautionsOf(j, Filler{})
		return p, nil
	}
	p.Cautions = cautionsOf(j, w.filler)
	if err := w.runs(&p); err != nil {
		return p, err
	}
	p.Vents, p.Backfills = j.ventsOf(), j.backfillsOf()
	return p, w.order(&p, o)
}

// work is a plan in the making.
type work struct {
	job     *Job
	entries []Entry
	family  material.Family
	casting material.Metal
	method  Method
	process Process
	filler  Filler
	laid    []laidOut
}

// settle chooses method, process and filler.
func (w *work) settle(p *Plan) {
	j := w.job
	w.casting, _ = j.Casting.Metal.figures()
	if len(j.Casting.Metal.Families) > 1 {
		p.Notes = append(p.Notes, fmt.Sprintf("Planned for %s, the least forgiving family with a chance of 5 %% or more (our rule).", w.family))
	}
	if iron(w.family) {
		w.method = methodFor(w.family, &j.Shop, j.Casting.Rebored)
	} else {
		w.method = steelMethod(j, w.family)
	}
	w.process, p.Why = j.Shop.Process, "as asked for"
	if w.process == ChooseProcess {
		w.process, p.Why = chooseProcess(j, w.family)
	} else if w.family == material.BlackheartIron && w.process != TIG {
		p.Why = "TIG brazing: blackheart must not melt, whatever was asked for"
		w.process = TIG
	}
	w.filler = fillerFor(w.family, w.process)
	p.Process, p.Filler = w.process, &w.filler
	p.Hydrogen = w.hydrogen()
	if scale, err := weld.HydrogenScale(p.Hydrogen); err == nil {
		p.Scale = scale.Scale
	}
	w.filler.Hydrogen = p.Hydrogen
}

// chooseProcess is TIG for thin plate, where heat must be kept low and the hand
// steers it; a filler wire or electrode for thick.
func chooseProcess(j *Job, family material.Family) (Process, string) {
	thickest := 0.0
	for _, p := range j.Plates {
		thickest = math.Max(thickest, p.Thickness.Value)
	}
	const thin = 6e-3
	switch {
	case family == material.BlackheartIron:
		return TIG, "TIG brazing: the least heat, and the iron is not melted"
	case thickest <= thin:
		return TIG, "plates up to 6 mm: little heat, clean, the hand steers it (common practice)"
	case iron(family):
		return Stick, "plates above 6 mm on iron: short beads with nickel-iron electrodes (common practice)"
	}
	return MAG, "plates above 6 mm on steel (common practice)"
}

// hydrogen is the diffusible hydrogen counted with: the shop's figure, the top of
// its scale, or the filler's class.
func (w *work) hydrogen() float64 {
	s := &w.job.Shop
	if s.Hydrogen.Given() {
		return s.Hydrogen.High
	}
	top := map[weld.Scale]float64{weld.ScaleA: 20, weld.ScaleB: 15, weld.ScaleC: 10, weld.ScaleD: 5, weld.ScaleE: 3}
	if ml, given := top[s.Scale]; given {
		return ml * mlPer100g
	}
	return w.filler.Hydrogen
}

// steelMethod is how a steel casting is welded: temperatures come with the
// preheat, the rest is custom.
func steelMethod(j *Job, family material.Family) Method {
	m := Method{
		LeastStart: warmShop, MostStart: castMost, LongestRun: steelRun,
		After: "Slow cool in still air in the jig, out of the draught.",
		Why:   []string{string(family) + ": preheat by EN 1011-2, beads in backsteps."},
	}
	for i := range j.Plates {
		if steelFigures(j.Plates[i].Steel).Family == material.FormedSteel {
			m.MostStart = formedMost
			m.Why = append(m.Why, fmt.Sprintf("Plate %s of %s: not above %s between runs, or its strength goes beside the weld.", j.Plates[i].Name, j.Plates[i].Steel, celsius(formedMost)))
			break
		}
	}
	return m
}

// thicker is the greater of plate and wall, which method B takes.
func thicker(plate, wall axle.Length) axle.Number {
	if wall.Value > plate.Value {
		return wall.Number
	}
	return plate.Number
}
