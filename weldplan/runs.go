package weldplan

import (
	"fmt"
	"math"
	"slices"

	"axlewright/axle"
	"axlewright/calc/material"
)

// runs settles every run of the job.
func (w *work) runs(p *Plan) error {
	for i := range w.job.Plates {
		plate := &w.job.Plates[i]
		for k := range plate.Runs {
			r, err := w.run(plate, &plate.Runs[k])
			if err != nil {
				return fmt.Errorf("run %s of plate %s: %w", plate.Runs[k].Name, plate.Name, err)
			}
			l, _ := lineOf(&plate.Runs[k])
			w.laid = append(w.laid, laidOut{i, k, l, bead{
				joint: r.Joint, leg: r.Size.Leg, passes: r.Size.Passes, heat: r.Arc.Heat.First, plate: plate.Thickness.Value,
				wall: plate.Runs[k].Wall.Value, gap: plate.Runs[k].Gap.Value, yield: w.filler.Yield, throat: r.Size.Throat,
			}})
			p.Runs = append(p.Runs, r)
			p.Total.add(r.Uses)
			w.notes(p, plate, &plate.Runs[k], &r)
		}
	}
	return nil
}

// run settles one run.
func (w *work) run(plate *Plate, data *Run) (RunPlan, error) {
	r := RunPlan{Run: data.Name, Plate: plate.Name, Thick: plate.Thickness.Value, Joint: data.Joint, Position: data.Position, Between: w.method.MostStart}
	l, _ := lineOf(data)
	thickness, wall := plate.Thickness.Value, data.Wall.Value
	lowHydrogen := w.filler.Hydrogen <= 5*mlPer100g
	var err error
	if r.Size, err = sizeOf(data, thickness, l, w.process, w.method.LongestRun, lowHydrogen); err != nil {
		return r, err
	}
	sink := slices.ContainsFunc(w.job.HeatSinks, func(h HeatSink) bool { return slices.Contains(h.Near, data.Name) })
	r.Amps = ampsFor(w.process, thickness, wall, w.method.Practice == Cold, iron(w.family), sink, data.Position)
	learned := LearnAmps(w.entries, Question{w.job.Casting.Variant, data.Position, w.process, thickness})
	r.Amps.Learned = &learned
	r.Amps.Used = r.Amps.Band
	if learned.Enough {
		r.Amps.Used = Band{learned.Low, learned.Middle, learned.High}
	}
	if err = w.heat(&r, plate, data, r.Amps.Used); err != nil {
		return r, err
	}
	r.Uses, err = consumablesOf(w.process, w.filler, r.Size, r.Arc.Speed.First, thickness)
	return r, err
}

// heat works out heat input, preheat and hardness of a run. Preheat hangs on heat
// input, and the cooling time on preheat: one after the other is enough, since the
// preheat does not hang on the cooling time.
func (w *work) heat(r *RunPlan, plate *Plate, data *Run, amps Band) error {
	thickness, wall := plate.Thickness.Value, data.Wall.Value
	cool := Band{w.method.LeastStart, w.method.LeastStart, w.method.MostStart}
	var err error
	if r.Arc, err = arcOf(w.process, amps, r.Size, data.Joint, thickness, wall, cool); err != nil {
		return err
	}
	r.Start = w.method.LeastStart
	plateSteel := steelFigures(plate.Steel)
	plateMade, plateKnown := steelOf(plate.Steel, plateSteel.Family, plate.Analysis)
	castMade, castKnown := steelOf(w.job.Casting.Metal.Grade, w.family, w.job.Casting.Analysis)
	if weldableSteel(w.family) {
		for _, part := range []struct {
			made  steelBand
			known bool
			d     axle.Number
		}{{plateMade, plateKnown, plate.Thickness.Number}, {castMade, castKnown, thicker(plate.Thickness, data.Wall)}} {
			if !part.known {
				continue
			}
			h, err := preheatOf(part.made, part.d, w.filler.Hydrogen, r.Arc.Heat)
			if err != nil {
				return err
			}
			r.Preheats = append(r.Preheats, h)
			if !h.OutsideRange && h.Needed {
				r.Start = math.Max(r.Start, h.High)
			}
		}
		if wish := w.job.Shop.Preheat; wish.Given() {
			r.Start = math.Max(r.Start, wish.Value)
		}
		if r.Start > r.Between { // the casting's need is above what the plate bears
			r.Between = r.Start + 25
		}
		start := Band{r.Start, r.Start, r.Between}
		if r.Arc, err = arcOf(w.process, amps, r.Size, data.Joint, thickness, wall, start); err != nil {
			return err
		}
	}
	r.Toes = []Toe{
		toeOf("plate", plateSteel.Family, plateMade, plateKnown, r.Arc.Plate, false),
		toeOf("casting", w.family, castMade, castKnown, r.Arc.Wall, w.filler.braze),
	}
	return nil
}

// notes are what is odd about a run.
func (w *work) notes(p *Plan, plate *Plate, data *Run, r *RunPlan) {
	note := func(format string, args ...any) {
		text := fmt.Sprintf(format, args...)
		if !slices.Contains(p.Notes, text) {
			p.Notes = append(p.Notes, text)
		}
	}
	if data.Gap.Given() {
		switch gap := data.Gap.Value; {
		case gap > math.Max(2e-3, plate.Thickness.Value/2) || gap > 2e-3:
			note("Run %s: a gap of %s is too much: make the piece again (limit 2 mm, or half the plate; common practice).", data.Name, data.Gap.Text)
		case gap > 1e-3:
			note("Run %s: a gap of %s is bridged with care: bead on the plate's edge first.", data.Name, data.Gap.Text)
		}
	}
	if r.Size.TooThin && len(w.job.Loads) > 0 {
		note("Throats below 3 mm may not be counted as carrying load by EN 1993-1-8; they are still shown against it.")
	}
	if plateSteel := steelFigures(plate.Steel); plateSteel.Family == material.FormedSteel {
		note("%s is taken as softened by 10 to 20 %% beside the weld (trade custom); casting wall and throat usually govern first.", plateSteel.Name)
	}
	if limb := w.limbOf(data.On); limb != nil && !limb.Wall.Given() {
		through := limb.Depth.Value
		if alongside(limb.Across.Vec(), data.Side.Vec()) {
			through = limb.Width.Value
		}
		if data.Wall.Value < 0.7*through {
			note("Run %s: a wall of %s on %s, which is solid and %s through: a leaf that shrinks off the middle bends it. Give the limb a wall if it is hollow.", data.Name, data.Wall.Text, data.On, mm(through))
		}
	}
	for _, h := range r.Preheats {
		if h.Method != "none" {
			continue
		}
		stop := Stop{What: "Steel beyond the preheat rules", Why: h.Reason, Clear: "An analysis that shows a leaner steel, or a tried procedure.", Override: engineer}
		if !slices.Contains(p.Stops, stop) {
			p.Stops = append(p.Stops, stop)
			p.Go = false
		}
	}
	if r.Between > w.method.MostStart+1 {
		note("Run %s: the casting asks for %s, more than the plate bears between runs (%s). A trial piece decides.", data.Name, celsius(r.Start), celsius(w.method.MostStart))
	}
}

func (w *work) limbOf(name string) *Limb {
	for i := range w.job.Casting.Limbs {
		if w.job.Casting.Limbs[i].Name == name {
			return &w.job.Casting.Limbs[i]
		}
	}
	return nil
}
