package outline

import (
	"fmt"
	"strconv"
)

// A Fault is a reason why an outline cannot be cut, in words.
type Fault struct {
	Problem string
	Edges   [2]int // the edges that it is about, by their first vertex
	At      Point  // where
}

func (f *Fault) Error() string { return f.Problem }

func fault(format string, args ...any) error {
	return &Fault{Problem: fmt.Sprintf(format, args...)}
}

// mm prints a length for a message.
func mm(x float64) string { return strconv.FormatFloat(x*1e3, 'f', -1, 32) + " mm" }

// at prints a place for a message.
func at(p Point) string {
	return fmt.Sprintf("(%s, %s)", strconv.FormatFloat(p.X*1e3, 'f', -1, 32), strconv.FormatFloat(p.Y*1e3, 'f', -1, 32))
}
