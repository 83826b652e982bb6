package axle

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// A Finding is one thing wrong with the data: where, and what to do about it.
type Finding struct {
	File    string // empty where the data did not come from a file
	Line    int    // from 1; zero where it is not known
	Column  int    // from 1, in characters
	Field   string // "castings[T24].cap.width"
	Problem string // one sentence: what is wrong, what was expected
	Excerpt string // the line with a caret under the place, empty where there is none
}

// String is the finding on one line, with its excerpt on two more.
func (f Finding) String() string {
	var b strings.Builder
	if f.File != "" {
		b.WriteString(f.File)
		if f.Line > 0 {
			fmt.Fprintf(&b, ":%d:%d", f.Line, f.Column)
		}
		b.WriteString(": ")
	}
	if f.Field != "" {
		b.WriteString(f.Field)
		b.WriteString(": ")
	}
	b.WriteString(f.Problem)
	if f.Excerpt != "" {
		b.WriteString("\n")
		b.WriteString(f.Excerpt)
	}
	return b.String()
}

// Findings is an error that tells everything wrong at once.
type Findings []Finding

func (f Findings) Error() string {
	lines := make([]string, len(f))
	for i, one := range f {
		lines[i] = one.String()
	}
	return strings.Join(lines, "\n")
}

// errorOrNil keeps an empty list from being a non-nil error. Findings come out
// as they stand in their files, the files in the order they were read.
func (f Findings) errorOrNil() error {
	if len(f) == 0 {
		return nil
	}
	order := map[string]int{}
	for _, one := range f {
		if _, known := order[one.File]; !known {
			order[one.File] = len(order)
		}
	}
	sorted := slices.Clone(f)
	slices.SortStableFunc(sorted, func(a, b Finding) int {
		return cmp.Or(cmp.Compare(order[a.File], order[b.File]), cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	return slices.CompactFunc(sorted, func(a, b Finding) bool { return a == b })
}

// A source is the text of one file, kept to show places in it.
type source struct {
	file  string
	lines []string
}

// A place is where something stands.
type place struct {
	source       *source
	line, column int
}

// excerpt shows the line of a place with a caret under it. Of a long line only
// the part around the place is shown.
func (p place) excerpt() string {
	if p.source == nil || p.line < 1 || p.line > len(p.source.lines) {
		return ""
	}
	const before, width = 60, 100 // characters
	line := []rune(strings.TrimRight(strings.ReplaceAll(p.source.lines[p.line-1], "\t", " "), "\r"))
	column := min(max(p.column-1, 0), len(line))
	from := 0
	if len(line) > width {
		from = max(0, column-before)
	}
	to := min(len(line), from+width)
	number := fmt.Sprintf("%5d | ", p.line)
	return number + string(line[from:to]) + "\n" + strings.Repeat(" ", len(number)-2) + "| " + strings.Repeat(" ", column-from) + "^"
}

// finding is a finding at the place.
func (p place) finding(field, problem string) Finding {
	f := Finding{Field: field, Problem: problem, Line: p.line, Column: p.column, Excerpt: p.excerpt()}
	if p.source != nil {
		f.File = p.source.file
	}
	return f
}
