package shop

import (
	"slices"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"
)

// longText is the longest note, in characters.
const longText = 10_000

// firstFault returns the first error that is not nil.
func firstFault(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// required demands a text with something in it that can be seen.
func required(field, text string) error {
	for _, r := range text {
		if unicode.IsGraphic(r) && !unicode.IsSpace(r) {
			return nil
		}
	}
	return Fault(Invalid, "This cannot be left empty.").At(field)
}

// lengthOf demands a text that is UTF-8, not too long and without control
// characters other than line ends and tabs.
func lengthOf(field, text string, most int) error {
	if !utf8.ValidString(text) {
		return Fault(Invalid, "This is not readable text.").At(field)
	}
	if n := utf8.RuneCountInString(text); n > most {
		return Fault(TooLarge, "This is %d characters long; %d is the most.", n, most).At(field)
	}
	for _, r := range text {
		if unicode.Is(unicode.Cc, r) && r != '\n' && r != '\t' && r != '\r' {
			return Fault(Invalid, "This holds characters that cannot be printed.").At(field)
		}
	}
	return nil
}

// dayOrEmpty demands a date as 2026-11-25.
func dayOrEmpty(field, day string) error {
	if day == "" {
		return nil
	}
	if t, err := time.Parse(time.DateOnly, day); err != nil || t.Year() < 1900 || t.Year() > 2999 {
		return Fault(Invalid, "Write a day as 2026-11-25.").At(field)
	}
	return nil
}

// printable drops what cannot be printed and keeps the first n runes.
func printable(text string, n int) string {
	return cut(strings.Map(func(r rune) rune {
		if !unicode.IsPrint(r) {
			return -1
		}
		return r
	}, strings.ToValidUTF8(text, "")), n)
}

func oneOf[T comparable](x T, all []T) bool { return slices.Contains(all, x) }
