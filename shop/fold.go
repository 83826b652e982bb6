package shop

import (
	"strings"
	"unicode"

	"golang.org/x/text/cases"
	"golang.org/x/text/unicode/norm"
)

// FoldNumber brings a number that was stamped, typed or read off rusty iron to
// one form: capitals and plain digits only, no spaces or hyphens, the letter O
// as the digit 0 and the letter I as the digit 1.
func FoldNumber(number string) string {
	var b strings.Builder
	for _, r := range norm.NFKC.String(number) {
		r = unicode.ToUpper(r)
		switch {
		case r == 'O' || r == 'О' || r == 'Ο': // Latin, Cyrillic, Greek
			b.WriteByte('0')
		case r == 'I' || r == 'І' || r == 'Ι':
			b.WriteByte('1')
		case unicode.IsDigit(r):
			b.WriteByte(byte('0' + digit(r)))
		case unicode.IsLetter(r):
			b.WriteRune(r)
		}
	}
	return cut(b.String(), 60)
}

// digit is the value of a decimal digit of any script: its zero is the first of
// ten that follow each other. (Runs that adjoin are mathematical signs, which
// NFKC has already made plain.)
func digit(r rune) int {
	n := 0
	for n < 9 && unicode.IsDigit(r-rune(n)-1) {
		n++
	}
	return n
}

// FoldWords splits a text into words to be found by: small letters without
// accents, digits, single signs such as emoji. At most 100 words of 40 letters.
func FoldWords(text string) []string {
	var words []string
	seen := map[string]bool{}
	for _, w := range strings.FieldsFunc(signsApart(folded(text)), func(r rune) bool { return !wordRune(r) }) {
		w = cut(w, 40)
		if !seen[w] && len(words) < 100 {
			seen[w] = true
			words = append(words, w)
		}
	}
	return words
}

// FoldLabel is a label to sort by.
func FoldLabel(label string) string {
	return cut(strings.Join(strings.FieldsFunc(folded(label), func(r rune) bool { return !wordRune(r) }), " "), 200)
}

// folded drops case, accents and what cannot be seen (marks of direction, joiners).
func folded(text string) string {
	decomposed := norm.NFKD.String(cases.Fold().String(text))
	return strings.Map(func(r rune) rune {
		if unicode.In(r, unicode.Mn, unicode.Cf) || strings.ContainsRune("'’ʼ`´", r) { // O’Hara is asked for as ohara
			return -1
		}
		return r
	}, decomposed)
}

// foundBy are the words of a text and, so that “son” finds Sykeson, the ends of
// its longer words of letters.
func foundBy(text string) []string {
	words := FoldWords(text)
	for _, w := range words[:len(words):len(words)] {
		runes := []rune(w)
		if strings.ContainsFunc(w, unicode.IsDigit) {
			continue // numbers are found by their beginning
		}
		for i := 1; i+shortestEnd <= len(runes); i++ {
			if end := string(runes[i:]); !oneOf(end, words) {
				words = append(words, end)
			}
		}
	}
	return words
}

// shortestEnd is how many letters of a word's end it is found by.
const shortestEnd = 3

// signsApart makes every sign, such as an emoji, a word of its own.
func signsApart(text string) string {
	var b strings.Builder
	for _, r := range text {
		if unicode.Is(unicode.So, r) {
			b.WriteRune(' ')
			b.WriteRune(r)
			b.WriteRune(' ')
			continue
		}
		b.WriteRune(r)
	}
	return b.String()
}

func wordRune(r rune) bool {
	return unicode.In(r, unicode.L, unicode.N, unicode.So, unicode.Mc, unicode.Me)
}

// cut keeps the first n runes.
func cut(s string, n int) string {
	for i := range s {
		if n == 0 {
			return s[:i]
		}
		n--
	}
	return s
}
