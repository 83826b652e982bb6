package drawing

import (
	"slices"
	"strings"

	"golang.org/x/text/unicode/bidi"
	"golang.org/x/text/unicode/norm"
)

// missingLetter stands in a PDF where the face has no letter. A paper that uses
// it says so at its foot, with the number of the letter.
const missingLetter = '□'

// Missing lists the letters of some words that a PDF cannot print, each once.
func Missing(words string) []rune {
	var list []rune
	for _, r := range norm.NFC.String(Clean(words)) {
		if faceOf(false).width(r) == noLetter && !strings.ContainsRune(string(list), r) {
			list = append(list, r)
		}
	}
	return list
}

// visual is a line as a PDF takes it: letters in the order in which they stand
// on the paper, from the left, with a box for each that the face does not have.
// A line with a Latin letter in it runs to the right, one without to the left
// where its letters do. Letters of Arabic stand unjoined.
func visual(words string) string {
	words = strings.Map(func(r rune) rune {
		if faceOf(false).width(r) == noLetter {
			return missingLetter
		}
		return r
	}, norm.NFC.String(Clean(words)))
	if !strings.ContainsFunc(words, is(bidi.R, bidi.AL)) {
		return words
	}
	var p bidi.Paragraph
	if _, err := p.SetString(words, bidi.DefaultDirection(bidi.LeftToRight)); err != nil {
		return words
	}
	order, err := p.Order()
	if err != nil {
		return words
	}
	runs := make([]string, order.NumRuns())
	for i := range runs {
		run := order.Run(i)
		runs[i] = run.String()
		if run.Direction() == bidi.RightToLeft {
			runs[i] = bidi.ReverseString(runs[i])
		}
	}
	if !strings.ContainsFunc(words, is(bidi.L)) {
		slices.Reverse(runs)
	}
	return strings.Join(runs, "")
}

// is says whether a letter is of one of some classes of direction.
func is(classes ...bidi.Class) func(rune) bool {
	return func(r rune) bool {
		p, _ := bidi.LookupRune(r)
		return slices.Contains(classes, p.Class())
	}
}
