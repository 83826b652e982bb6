package axle

import (
	"fmt"
	"strings"
)

// nearest returns the known word that a typed one was probably meant to be, or
// nothing where none is near.
func nearest(typed string, known []string) string {
	best, least := "", len(typed)/3+1
	for _, word := range known {
		if d := changes(strings.ToLower(typed), strings.ToLower(word)); d <= least && (best == "" || d < least) {
			best, least = word, d
		}
	}
	return best
}

// changes counts the letters to put in, take out or replace to make one word of
// the other (Levenshtein 1966).
func changes(a, b string) int {
	x, y := []rune(a), []rune(b)
	const long = 60 // nobody mistypes a word of this length
	if len(x) > long || len(y) > long {
		return long
	}
	row := make([]int, len(y)+1)
	for j := range row {
		row[j] = j
	}
	for i := range x {
		diagonal := row[0]
		row[0] = i + 1
		for j := range y {
			cost := diagonal
			if x[i] != y[j] {
				cost++
			}
			diagonal = row[j+1]
			row[j+1] = min(cost, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(y)]
}

// quoted lists words for a sentence: "open", "locked" or "limited slip".
func quoted(words []string) string {
	var b strings.Builder
	for i, word := range words {
		switch {
		case i == 0:
		case i == len(words)-1:
			b.WriteString(" or ")
		default:
			b.WriteString(", ")
		}
		fmt.Fprintf(&b, "%q", word)
	}
	return b.String()
}
