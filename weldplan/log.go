package weldplan

import (
	"fmt"

	"axlewright/axle"
)

// A Log is the file in which the shop writes down what was really used.
type Log struct {
	Entries []Entry `yaml:"entries"`
}

// An Entry is one run, or runs alike, as welded.
type Entry struct {
	Date      string           `yaml:"date,omitempty"`
	Unit      string           `yaml:"unit,omitempty"` // stamped number or job
	Variant   string           `yaml:"variant"`
	Plate     string           `yaml:"plate,omitempty"`
	Run       string           `yaml:"run,omitempty"`
	Position  Position         `yaml:"position"`
	Process   Process          `yaml:"process"`
	Filler    string           `yaml:"filler,omitempty"` // class
	Batch     string           `yaml:"batch,omitempty"`  // lot of the filler
	Thickness axle.Length      `yaml:"thickness"`        // m, of the plate
	Wall      axle.Length      `yaml:"wall,omitempty"`   // m
	Leg       axle.Length      `yaml:"leg,omitempty"`    // m, as measured
	Length    axle.Length      `yaml:"length"`           // m, of weld
	Passes    int              `yaml:"passes,omitempty"`
	Amps      Current          `yaml:"amps"`
	Time      axle.Duration    `yaml:"time,omitempty"`    // s, from first arc to last, pauses for heat left out
	Start     axle.Temperature `yaml:"start,omitempty"`   // K, coldest
	Between   axle.Temperature `yaml:"between,omitempty"` // K, warmest before a run
	Who       string           `yaml:"who,omitempty"`
	Photo     string           `yaml:"photo,omitempty"`
	Note      string           `yaml:"note,omitempty"`
}

// LoadLog reads a weld log and checks it.
//
// Errors: axle.Findings with file, line and column.
func LoadLog(path string) ([]Entry, error) {
	var log Log
	s, err := axle.ReadSheet(path, &log)
	if err != nil {
		return nil, err
	}
	c := &checker{sheet: s}
	for i := range log.Entries {
		log.Entries[i].check(c, fmt.Sprintf("entries[%d]", i))
	}
	if len(c.found) > 0 {
		return nil, c.found
	}
	return log.Entries, nil
}

func (e *Entry) check(c *checker, field string) {
	if e.Variant == "" {
		c.add(field, "lacks variant: which casting it was")
	}
	if e.Position == "" {
		c.add(field, "lacks position: %s", listed(positions))
	}
	if e.Process == "" || e.Process == ChooseProcess {
		c.add(field, "lacks process: what was used, %s", listed(processes[1:]))
	}
	c.within(field+".thickness", e.Thickness.Number, leastThickness, mostThickness, true, "3 mm")
	c.within(field+".wall", e.Wall.Number, 1e-3, 0.2, false, "12 mm")
	c.within(field+".leg", e.Leg.Number, 0.5e-3, 30e-3, false, "3.5 mm")
	c.within(field+".length", e.Length.Number, 5e-3, 20, true, "180 mm")
	c.within(field+".amps", e.Amps.Number, 5, 600, true, "105 A")
	c.within(field+".time", e.Time.Number, 1, 86400, false, "6.5 min")
	c.within(field+".start", e.Start.Number, zeroCelsius-30, zeroCelsius+800, false, "22 °C")
	c.within(field+".between", e.Between.Number, zeroCelsius-30, zeroCelsius+800, false, "55 °C")
	if e.Passes < 0 || e.Passes > 50 {
		c.add(field+".passes", "%d passes are no count", e.Passes)
	}
}
