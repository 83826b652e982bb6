package axle

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"

	"axlewright/calc/fatigue"
	"axlewright/quantity"
)

// MaxSamples is the most samples that a record may have: fourteen hours at a
// hundred a second.
const MaxSamples = 5_000_000

// A Record is a log of what an axle did, in SI.
type Record struct {
	Times   []float64 // s, rising
	Torques []float64 // N·m, of the axle, positive where it pulls forward
	Speeds  []float64 // m/s, of the vehicle, negative backward

	Propshaft bool // the torques are those of the propshaft still, to be multiplied by the ratio
}

// A column of a record by what its heading may say.
type recordColumn struct {
	name string
	dim  quantity.Dimension
	to   func(*Record) *[]float64
}

var recordColumns = []recordColumn{
	{"time", quantity.Time, func(r *Record) *[]float64 { return &r.Times }},
	{"torque", quantity.Torque, func(r *Record) *[]float64 { return &r.Torques }},
	{"propshaft torque", quantity.Torque, func(r *Record) *[]float64 { return &r.Torques }},
	{"speed", quantity.Speed, func(r *Record) *[]float64 { return &r.Speeds }},
}

const recordHeading = "time [s],torque [N·m],speed [km/h]"

// ReadRecord reads a log of time, torque and speed, separated by commas, or by
// semicolons where the numbers have decimal commas. The first line names the
// columns with their units:
//
//	time [s],torque [N·m],speed [km/h]
//	0.00,-120,52.1
//
// A column "propshaft torque" may stand for "torque"; other columns are passed
// over, and so are lines that begin with #.
//
// Errors: Findings with the line of everything wrong.
func ReadRecord(path string) (Record, error) {
	file, err := os.Open(path)
	if err != nil {
		problem := "cannot be opened: " + plainError(err)
		if errors.Is(err, os.ErrNotExist) {
			problem = "there is no such record; check the name and the folder"
		}
		return Record{}, Findings{{File: path, Problem: problem}}
	}
	defer file.Close()
	if info, err := file.Stat(); err == nil && info.IsDir() {
		return Record{}, Findings{{File: path, Problem: "is a folder; expected a file of " + recordHeading}}
	}
	return readRecord(path, file)
}

func readRecord(path string, from io.Reader) (Record, error) {
	l := recordLines{path: path}
	from, separator := sniffSeparator(from)
	l.csv = csv.NewReader(from)
	l.csv.Comma, l.csv.Comment, l.csv.FieldsPerRecord = separator, '#', -1
	l.csv.TrimLeadingSpace, l.csv.ReuseRecord, l.csv.LazyQuotes = true, true, true
	l.heading()
	if len(l.found) > 0 {
		return l.record, l.found.errorOrNil()
	}
	for len(l.found) < mostTold && l.line() {
	}
	if len(l.found) == 0 && len(l.record.Times) < 2 {
		l.add(0, 0, "holds no log: %d samples; expected two or more under a heading such as %s", len(l.record.Times), recordHeading)
	}
	return l.record, l.found.errorOrNil()
}

// mostTold bounds the findings of one record: after so many the reader has the idea.
const mostTold = 10

// sniffSeparator looks at the first bytes for the separator in use.
func sniffSeparator(from io.Reader) (io.Reader, rune) {
	head := make([]byte, 400)
	n, _ := io.ReadFull(from, head)
	head = head[:n]
	from = io.MultiReader(strings.NewReader(strings.TrimPrefix(string(head), "\ufeff")), from)
	first, _, _ := strings.Cut(string(head), "\n")
	if strings.Count(first, ";") >= 2 {
		return from, ';'
	}
	return from, ','
}

// recordLines reads a record line by line.
type recordLines struct {
	path    string
	csv     *csv.Reader
	record  Record
	found   Findings
	columns []recordUse
}

// A recordUse is one column that is read.
type recordUse struct {
	recordColumn
	at     int
	factor float64 // from its unit to SI
}

func (l *recordLines) add(line, column int, format string, args ...any) {
	l.found = append(l.found, Finding{File: l.path, Line: line, Column: column, Problem: fmt.Sprintf(format, args...)})
}

// heading reads the first line.
func (l *recordLines) heading() {
	fields, err := l.csv.Read()
	if err != nil {
		l.add(1, 1, "has no heading; expected %s", recordHeading)
		return
	}
	for at, field := range fields {
		line, column := l.csv.FieldPos(at)
		name, unit, _ := strings.Cut(strings.TrimSpace(field), "[")
		name = strings.ToLower(strings.TrimSpace(name))
		i := slices.IndexFunc(recordColumns, func(c recordColumn) bool { return c.name == name })
		if i < 0 {
			continue
		}
		c := recordColumns[i]
		if slices.ContainsFunc(l.columns, func(u recordUse) bool { return u.to(&l.record) == c.to(&l.record) }) {
			l.add(line, column, "column %q is one too many: %s is given already", name, c.dim)
			continue
		}
		unit = strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(unit), "]"))
		q, err := quantity.Parse("1 "+unit, c.dim)
		if err != nil {
			l.add(line, column, "column %q needs its unit in brackets, as in %s (%v)", name, recordHeading, err)
			continue
		}
		l.record.Propshaft = l.record.Propshaft || c.name == "propshaft torque"
		l.columns = append(l.columns, recordUse{c, at, q.SI})
		*c.to(&l.record) = []float64{}
	}
	for _, c := range recordColumns {
		if *c.to(&l.record) == nil && c.name != "propshaft torque" && len(l.found) == 0 {
			l.add(1, 1, "has no column %q; expected a heading such as %s", c.name, recordHeading)
		}
	}
}

// line reads one sample and says whether there may be more.
func (l *recordLines) line() bool {
	fields, err := l.csv.Read()
	switch {
	case err == io.EOF:
		return false
	case err != nil:
		var parse *csv.ParseError
		if errors.As(err, &parse) {
			l.add(parse.Line, parse.Column, "cannot be read: %v", parse.Err)
			return true
		}
		l.add(0, 0, "cannot be read: %v", err)
		return false
	case len(l.record.Times) >= MaxSamples:
		l.add(0, 0, "has more than %d samples; thin it out, ten a second are plenty", MaxSamples)
		return false
	}
	for _, u := range l.columns {
		if u.at >= len(fields) {
			line, column := l.csv.FieldPos(len(fields) - 1)
			l.add(line, column, "this line has no %s: %d columns instead of %d", u.name, len(fields), u.at+1)
			return true
		}
		text := strings.TrimSpace(fields[u.at])
		if l.csv.Comma == ';' {
			text = strings.Replace(text, ",", ".", 1)
		}
		x, err := strconv.ParseFloat(text, 64)
		if err != nil || math.IsNaN(x) || math.IsInf(x*u.factor, 0) {
			line, column := l.csv.FieldPos(u.at)
			l.add(line, column, "%q is no %s; expected a number such as 12.5", text, u.name)
			return true
		}
		list := u.to(&l.record)
		*list = append(*list, x*u.factor)
	}
	if t := l.record.Times; len(t) > 1 && t[len(t)-1] <= t[len(t)-2] {
		line, column := l.csv.FieldPos(l.columns[slices.IndexFunc(l.columns, func(u recordUse) bool { return u.name == "time" })].at)
		l.add(line, column, "time does not go on: %g s after %g s", t[len(t)-1], t[len(t)-2])
	}
	return true
}

// Cycles counts the cycles of torque by the rainflow method: what shafts, bolts
// and welds feel, which do not turn past their load as teeth and rollers do.
//
// Errors: *check.RangeError for a record of fewer than two samples.
func (r Record) Cycles() ([]fatigue.Cycle, error) {
	counted, err := fatigue.Rainflow(r.Torques)
	return counted.Cycles(), err
}
