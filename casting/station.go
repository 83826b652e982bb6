package casting

import (
	"math"

	"axlewright/axle"
)

// A Gauging is the measuring stations of one variant, the plate kit that is
// drawn for it, and the castings that were measured, oldest first.
type Gauging struct {
	Variant  string     `yaml:"variant"`
	Note     string     `yaml:"note,omitempty"`
	Kit      KitDrawing `yaml:"kit"`
	Effort   Effort     `yaml:"effort,omitempty"`
	Stations []Station  `yaml:"stations"`
	History  []Measured `yaml:"history,omitempty"`
	New      []Measured `yaml:"new,omitempty"` // castings to be placed
}

// A KitDrawing is a revision of a plate kit and what it may be asked to bear.
type KitDrawing struct {
	Revision string      `yaml:"revision"`
	Gap      axle.Length `yaml:"gap"`              // m, the widest gap that is welded across
	Trim     axle.Length `yaml:"trim"`             // m, the most that is ground off an edge
	Wanted   float64     `yaml:"wanted,omitempty"` // 0..1, share of castings that a set of patterns must serve
}

// Effort is what trimming, re-making and redrawing cost in minutes. Zeros take
// the usual figures.
type Effort struct {
	Trim   float64 `yaml:"trim,omitempty"`    // one edge at one station
	Remake float64 `yaml:"remake,omitempty"`  // a piece that does not go on
	Redraw float64 `yaml:"redraw,omitempty"`  // a new revision, drawn and tried
	ToCome float64 `yaml:"to_come,omitempty"` // castings that the next batch of kits is for
}

// The usual figures: an hour of fettling for a kit that does not sit and
// batches of 20 are custom of the trade, no source; the others are assumed.
var usualEffort = Effort{Trim: 5, Remake: 60, Redraw: 240, ToCome: 20}

const usualWanted = 0.9

// A Station is a numbered place at which a casting is measured and an edge of a
// plate comes to lie.
type Station struct {
	Number   int         `yaml:"number"`
	Name     string      `yaml:"name"`
	Edge     string      `yaml:"edge"`                  // of which plate
	More     Sense       `yaml:"more"`                  // what a larger reading means for the plate
	DrawnFor axle.Length `yaml:"drawn_for" range:"any"` // m, the reading that the kit is drawn for
	DrawnGap axle.Length `yaml:"drawn_gap" range:"any"` // m, the gap at that reading
	How      string      `yaml:"how,omitempty"`
	Sketch   string      `yaml:"sketch,omitempty"`
}

// Sense is what a larger reading means for the plate.
type Sense string

// The senses.
const (
	MoreGap  Sense = "gap"  // the casting stands further back: a wider gap
	MoreTrim Sense = "trim" // the casting stands further out: more to trim
)

// A Measured casting has readings at stations. A reading taken several times
// stands as their mean.
type Measured struct {
	Casting  string   `yaml:"casting"`
	Date     string   `yaml:"date,omitempty"`  // 2023-05-17
	Batch    string   `yaml:"batch,omitempty"` // castings of one pour or one day
	Readings Readings `yaml:"readings"`
	Line     int      `yaml:"-"`
}

// Readings are by station number, in the order of the file.
type Readings []StationReading

// A StationReading is what was read at one station.
type StationReading struct {
	Station int
	Value   float64 // m
	Times   int     // how many readings it is the mean of
	Line    int
}

// at returns the reading at a station.
func (r Readings) at(station int) (float64, bool) {
	for _, x := range r {
		if x.Station == station {
			return x.Value, true
		}
	}
	return 0, false
}

// clearance is the gap that the kit as drawn has at a station with that
// reading, to the nanometre; below zero the plate must be trimmed by as much.
func (s *Station) clearance(reading float64) float64 {
	more := reading - s.DrawnFor.Value
	if s.More == MoreTrim {
		more = -more
	}
	return math.Round((s.DrawnGap.Value+more)*1e9) / 1e9
}

// reading is the inverse of clearance.
func (s *Station) reading(clearance float64) float64 {
	if s.More == MoreTrim {
		return s.DrawnFor.Value - (clearance - s.DrawnGap.Value)
	}
	return s.DrawnFor.Value + (clearance - s.DrawnGap.Value)
}

// A Fit is how a plate goes on.
type Fit string

// The fits.
const (
	FitsAsCut   Fit = "as cut"
	FitsTrimmed Fit = "with trimming"
	FitsNot     Fit = "not at all"
)

// fit of one station by its clearance.
func (k *KitDrawing) fit(clearance float64) Fit {
	switch {
	case clearance > k.Gap.Value || clearance < -k.Trim.Value:
		return FitsNot
	case clearance < 0:
		return FitsTrimmed
	}
	return FitsAsCut
}

// worse returns the worse of two fits.
func worse(a, b Fit) Fit {
	if a == FitsNot || b == FitsNot {
		return FitsNot
	}
	if a == FitsTrimmed || b == FitsTrimmed {
		return FitsTrimmed
	}
	return FitsAsCut
}
