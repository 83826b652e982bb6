package shop

import (
	"context"
	"math"

	"axlewright/axle"
	"axlewright/weldplan"
)

// weldStep is where what a run of weld took is written, a place for each run.
const weldStep StepKey = "weld"

// WeldLog reads what the job's runs took, in the order in which they were first
// written: those of which at least the current is there.
func (j *Job) WeldLog() []weldplan.Entry {
	var all []weldplan.Entry
	for _, amps := range j.All(weldStep, "amps") {
		at := func(item string) Value { return j.placed(item, amps.Place) }
		e := weldplan.Entry{
			Date: amps.At.Format("2006-01-02"), Unit: j.unit(), Run: amps.Place, Who: amps.Who.Name,
			Position: weldplan.Position(at("position").Word()), Process: weldplan.Process(at("process").Word()),
			Batch: at("lot").label(),
		}
		if c := j.Casting(); c != nil {
			e.Variant = c.Label
		}
		e.Amps.Number, e.Thickness.Number, e.Length.Number = figureOf(amps.Value), figureOf(at("plate")), figureOf(at("length"))
		e.Time.Number, e.Start.Number, e.Between.Number = figureOf(at("minutes")), figureOf(at("start")), figureOf(at("interpass"))
		if n := at("runs").SI; n != nil {
			e.Passes = int(*n)
		}
		all = append(all, e)
	}
	return all
}

// WeldEntries are those of the job's runs that can be learned from: of a known
// variant, with process, position, plate, length and current.
func (j *Job) WeldEntries() []weldplan.Entry {
	var all []weldplan.Entry
	for _, e := range j.WeldLog() {
		if e.Variant != "" && e.Position != "" && e.Process != "" && e.Amps.Value > 0 && e.Thickness.Value > 0 && e.Length.Value > 0 {
			all = append(all, e)
		}
	}
	return all
}

func (j *Job) placed(item, place string) Value {
	if e := j.Standing(Slot{weldStep, item, place}); e != nil {
		return e.Value
	}
	return Value{}
}

// ampsPlates are the plates, m, that the trade's bands of current are for, in
// the order in which the field has them.
var ampsPlates = []float64{3e-3, 4.8e-3, 6e-3}

// ampsBand is the trade's band for the plate that a run is on: none where there is
// no plate of about that thickness. The shop's own limit stays as it is.
func ampsBand(f Field, limit *Limit, plate Value) *Limit {
	if limit == nil || limit.Origin != Trade || plate.SI == nil {
		return limit
	}
	const about = 0.15
	for i, t := range ampsPlates {
		if math.Abs(*plate.SI-t) <= about*t {
			return &f.Limits[i]
		}
	}
	return nil
}

// unit is the number that the job goes by.
func (j *Job) unit() string {
	if n := j.Stamped(); n != "" {
		return n
	}
	return "job " + j.NumberText()
}

// figureOf is a reading as the sums take it, without a doubt of its own.
func figureOf(v Value) axle.Number {
	if v.SI == nil {
		return axle.Number{}
	}
	return axle.Number{Value: *v.SI, Low: *v.SI, High: *v.SI, Origin: axle.Measured, Kind: string(v.Dim), Text: v.Typed}
}

// mostLearned is how many jobs are learned from: the newest, for hands, machines
// and fillers change.
const mostLearned = 300

// WeldEntries reads what welds took from the records of the newest jobs with a
// weld log, scrapped ones too: a bent casting does not make the amps untrue.
func (s *Shop) WeldEntries(ctx context.Context) ([]weldplan.Entry, error) {
	var all []weldplan.Entry
	err := s.store.View(ctx, func(tx Tx) error {
		all = nil
		page, err := tx.FindJobs(JobQuery{Mark: MarkWelds, Limit: mostLearned})
		if err != nil {
			return err
		}
		for _, line := range page.Lines {
			j, err := readJob(tx, line.Job)
			if err != nil {
				return err
			}
			if len(j.Damage) == 0 {
				all = append(all, j.WeldEntries()...)
			}
		}
		return nil
	})
	return all, err
}
