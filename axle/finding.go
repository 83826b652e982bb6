package axle

import (
	"fmt"
	"strings"
)

// A Finding is one thing wrong with the data: where, and what to do about it.
type Finding struct {
	File    string // empty where the data did not come from a file
	Line    int    // from 1; zero where it is not known
	Field   string // "castings[T24].cap.width"
	Problem string // one sentence: what is wrong, what was expected
}

func (f Finding) String() string {
	var b strings.Builder
	if f.File != "" {
		b.WriteString(f.File)
		if f.Line > 0 {
			fmt.Fprintf(&b, ":%d", f.Line)
		}
		b.WriteString(": ")
	}
	if f.Field != "" {
		b.WriteString(f.Field)
		b.WriteString(": ")
	}
	b.WriteString(f.Problem)
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

// errorOrNil keeps an empty list from being a non-nil error.
func (f Findings) errorOrNil() error {
	if len(f) == 0 {
		return nil
	}
	return f
}
