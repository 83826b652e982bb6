package kit

import (
	"fmt"
	"math"
	"path/filepath"
	"strconv"
	"strings"

	"axlewright/axle"
	"axlewright/calc/material"
	"axlewright/kit/nest"
	"axlewright/kit/outline"
	"axlewright/quantity"
)

// A Job is what is to be cut from which sheets, as its file says it.
type Job struct {
	Kits   []Wanted  `yaml:"kits"`
	Sheets []InStock `yaml:"sheets,omitempty"`
	Stock  Typed     `yaml:"stock,omitempty"` // a stock book, beside the job's file
	Rules  JobRules  `yaml:"rules,omitempty"`
	Rates  Rates     `yaml:"rates,omitempty"`

	drawn []Drawn
	book  StockBook
	file  string // of the book
}

// Book is the stock book that the job's sheets come from, and its file; "" where
// there is none.
func (j *Job) Book() (StockBook, string) { return j.book, j.file }

// Wanted is so many sets of a kit.
type Wanted struct {
	Kit   Typed  `yaml:"kit"` // a kit file, beside the job's file
	Sets  int    `yaml:"sets"`
	Batch string `yaml:"batch,omitempty"`
}

// InStock are sheets of a kind, or a remnant.
type InStock struct {
	Name      Typed   `yaml:"name"`
	Steel     Typed   `yaml:"steel"`
	Thickness Typed   `yaml:"thickness"`
	Long      Typed   `yaml:"long,omitempty"`    // along the rolling direction; 2500 mm where left out
	Wide      Typed   `yaml:"wide,omitempty"`    // 1250 mm where left out
	Outline   []Spot  `yaml:"outline,omitempty"` // of an odd remnant, by its corners
	Remnant   bool    `yaml:"remnant,omitempty"`
	Count     int     `yaml:"count,omitempty"` // 1 where left out
	Price     float64 `yaml:"price,omitempty"` // money each

	kept bool // it stands in a stock book
}

// JobRules change the usual rules of the nest.
type JobRules struct {
	Gap         Typed  `yaml:"gap,omitempty"`  // the thickness, 3 mm at least, where left out
	Edge        Typed  `yaml:"edge,omitempty"` // 10 mm where left out
	Turns       int    `yaml:"turns,omitempty"`
	Tries       int    `yaml:"tries,omitempty"`
	Seed        uint64 `yaml:"seed,omitempty"`
	LeastOffcut Typed  `yaml:"least_offcut,omitempty"` // shorter side of a rest that is kept; 200 mm where left out
}

// Rates are what cutting costs, in the shop's own currency.
type Rates struct {
	Cut    float64 `yaml:"cut,omitempty" json:"cut,omitempty"`       // money a metre
	Pierce float64 `yaml:"pierce,omitempty" json:"pierce,omitempty"` // money each
	Mark   float64 `yaml:"mark,omitempty" json:"mark,omitempty"`     // money a metre etched
	Sheet  float64 `yaml:"sheet,omitempty" json:"sheet,omitempty"`   // money for putting a sheet on the machine
	Scrap  float64 `yaml:"scrap,omitempty" json:"scrap,omitempty"`   // money a kilogram got for scrap
}

// NewJob is a job that comes from no file: so many sets of each drawn kit, cut
// from these sheets.
func NewJob(drawn []Drawn, sets []int, sheets []InStock, rules JobRules, rates Rates) Job {
	j := Job{Sheets: sheets, Rules: rules, Rates: rates, drawn: drawn}
	for _, n := range sets {
		j.Kits = append(j.Kits, Wanted{Sets: n})
	}
	return j
}

// Sheet sizes where a file says nothing.
const (
	usualLong = 2.5  // m
	usualWide = 1.25 // m
)

// LoadJob reads a nest file and the kits it names, which are looked for beside it.
//
// Errors: axle.Findings with line, column and a caret.
func LoadJob(path string) (Job, error) {
	var j Job
	sheet, err := axle.ReadSheet(path, &j)
	if err != nil {
		return j, err
	}
	var found axle.Findings
	bad := func(t Typed, field, format string, args ...any) {
		found = append(found, sheet.FindingAt(t.Line, t.Column, field, fmt.Sprintf(format, args...)))
	}
	if j.Stock.Given() {
		if err := j.openBook(filepath.Dir(path)); err != nil {
			if more, ok := err.(axle.Findings); ok {
				found = append(found, more...)
			} else {
				bad(j.Stock, "stock", "%v", err)
			}
		}
	}
	if len(j.Kits) == 0 || len(j.Sheets) == 0 {
		bad(Typed{}, "", "a nest needs kits to cut and sheets to cut them from")
	}
	for i, w := range j.Kits {
		field := fmt.Sprintf("kits[%d]", i)
		if w.Sets < 1 || w.Sets > 1000 {
			bad(w.Kit, field+".sets", "%d sets; expected 1 to 1000", w.Sets)
		}
		file := w.Kit.Text
		if !filepath.IsAbs(file) {
			file = filepath.Join(filepath.Dir(path), file)
		}
		k, err := Load(file)
		if err == nil {
			var d Drawn
			if d, err = k.Draw(Options{Batch: w.Batch}); err == nil {
				j.drawn = append(j.drawn, d)
			}
		}
		if more, ok := err.(axle.Findings); ok {
			found = append(found, more...)
		} else if err != nil {
			bad(w.Kit, field, "%v", err)
		}
	}
	for i := range j.Sheets {
		j.checkSheet(&j.Sheets[i], bad)
	}
	for name, x := range map[string]float64{"cut": j.Rates.Cut, "pierce": j.Rates.Pierce, "mark": j.Rates.Mark, "sheet": j.Rates.Sheet, "scrap": j.Rates.Scrap} {
		if !(x >= 0) || math.IsInf(x, 0) {
			bad(Typed{}, "rates."+name, "%g is no price", x)
		}
	}
	if _, err := j.rules(3e-3); err != nil {
		bad(Typed{}, "rules", "%v", err)
	}
	if len(found) > 0 {
		return j, found
	}
	return j, nil
}

// openBook puts what the stock book holds behind the sheets that the file names.
func (j *Job) openBook(folder string) (err error) {
	j.file = j.Stock.Text
	if !filepath.IsAbs(j.file) {
		j.file = filepath.Join(folder, j.file)
	}
	if j.book, err = LoadStock(j.file); err != nil {
		return err
	}
	for _, s := range j.book.InStock() {
		for _, own := range j.Sheets {
			if own.Name.Text == s.Name.Text {
				return fmt.Errorf("%s stands in this file and in the stock; leave it out of one", own.Name.Text)
			}
		}
		j.Sheets = append(j.Sheets, s)
	}
	return nil
}

func (j *Job) checkSheet(s *InStock, bad func(Typed, string, string, ...any)) {
	field := "sheets[" + s.Name.Text + "]"
	if m, err := material.Lookup(s.Steel.Text); err != nil {
		bad(s.Steel, field+".steel", "%v", err)
	} else {
		s.Steel.Text = m.Name
	}
	for _, one := range []struct {
		t    Typed
		name string
		need bool
	}{{s.Thickness, "thickness", true}, {s.Long, "long", false}, {s.Wide, "wide", false}} {
		if x, err := typedLength(one.t, 1); (one.need || one.t.Given()) && (err != nil || !(x > 0)) {
			bad(s.Name, field+"."+one.name, "%q is no length above nought: %v", one.t.Text, err)
		}
	}
	if s.Count < 0 || !(s.Price >= 0) {
		bad(s.Name, field, "a count of %d at a price of %g", s.Count, s.Price)
	}
	if _, err := s.stock(); err != nil {
		bad(s.Name, field, "%v", err)
	}
}

// stock is the sheet as the nest wants it.
func (s *InStock) stock() (nest.Stock, error) {
	count := max(s.Count, 1)
	if len(s.Outline) == 0 {
		long, err := typedLength(s.Long, usualLong)
		if err != nil {
			return nest.Stock{}, err
		}
		wide, err := typedLength(s.Wide, usualWide)
		if err != nil {
			return nest.Stock{}, err
		}
		n := nest.NewSheets(s.Name.Text, long, wide, count)
		n.Remnant = s.Remnant
		return n, nil
	}
	var corners []outline.Point
	for _, c := range s.Outline {
		var p outline.Point
		for _, one := range []struct {
			t  Typed
			to *float64
		}{{c.X, &p.X}, {c.Y, &p.Y}} {
			v, err := evaluate(one.t.Text, nil)
			if err == nil {
				*one.to, err = v.length()
			}
			if err != nil {
				return nest.Stock{}, err
			}
		}
		corners = append(corners, p)
	}
	l := outline.Polygon(corners...)
	return nest.Stock{Name: s.Name.Text, Outline: l, Count: count, Remnant: true}, l.Check()
}

// rules of the nest for a thickness.
func (j *Job) rules(thickness float64) (nest.Rules, error) {
	r := nest.Usual(thickness)
	for _, one := range []struct {
		t  Typed
		to *float64
	}{{j.Rules.Gap, &r.Gap}, {j.Rules.Edge, &r.Edge}, {j.Rules.LeastOffcut, &r.LeastOffcut}} {
		x, err := typedLength(one.t, *one.to)
		if err != nil {
			return r, err
		}
		*one.to = x
	}
	if j.Rules.Turns != 0 {
		r.Turns = j.Rules.Turns
	}
	if j.Rules.Tries != 0 {
		r.Tries = j.Rules.Tries
	}
	if j.Rules.Seed != 0 {
		r.Seed = j.Rules.Seed
	}
	return r, nil
}

// typedLength reads a length with its unit; what was not typed has its usual value.
func typedLength(t Typed, usual float64) (float64, error) {
	if !t.Given() {
		return usual, nil
	}
	if _, err := strconv.ParseFloat(strings.TrimSpace(t.Text), 64); err == nil {
		return 0, fmt.Errorf("%q has no unit; expected a length such as 3 mm", t.Text)
	}
	q, err := quantity.Parse(t.Text, quantity.Length)
	return q.SI, err
}
