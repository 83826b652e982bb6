package drawing

import (
	"math"
	"strings"
	"unicode"
)

// unknownLetter is the width taken for a letter that the face does not have, in
// thousandths of its size: as wide as the widest of the scripts of the world.
const unknownLetter = 1400

// Upward and downward reach of letters from the base line, in letter sizes.
const (
	ascent  = 0.78
	descent = 0.22
)

// TextWidth is the width of words set in letters of a size.
func TextWidth(words string, size float64, bold bool) float64 {
	width, _ := letters(words, bold)
	return width * size / 1000
}

// letters adds up the letters' widths and says whether all of them are known.
func letters(words string, bold bool) (width float64, known bool) {
	face := faceOf(bold)
	known = true
	for _, r := range words {
		w := face.width(r)
		if w == noLetter {
			w, known = unknownLetter, false
		}
		width += w
	}
	return width, known
}

// Box is the room that the text takes.
func (t Text) Box() Box {
	w := TextWidth(t.Words, t.Size, t.Bold)
	left := 0.0
	switch t.Anchor {
	case Middle:
		left = -w / 2
	case End:
		left = -w
	}
	b := Box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	for _, p := range (Box{left, -ascent * t.Size, left + w, descent * t.Size}).Corners() {
		x, y := t.At.X+p.X*cos+p.Y*sin, t.At.Y-p.X*sin+p.Y*cos
		b = Box{math.Min(b.Left, x), math.Min(b.Top, y), math.Max(b.Right, x), math.Max(b.Bottom, y)}
	}
	return b
}

// Clean makes one line of what somebody typed: without signs that are not
// printed or that turn the direction of writing.
func Clean(words string) string {
	printable := func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case !unicode.IsPrint(r) || r == unicode.ReplacementChar:
			return -1
		}
		return r
	}
	return strings.Join(strings.Fields(strings.Map(printable, words)), " ")
}

// Wrap breaks words into at most so many lines of a width. Where they do not
// go in, the last line ends in "…" and whole is false.
func Wrap(words string, width, size float64, bold bool, most int) (lines []string, whole bool) {
	line := ""
	for _, piece := range pieces(Clean(words)) {
		if line != "" && TextWidth(strings.TrimRight(line+piece, " "), size, bold) > width {
			lines = append(lines, strings.TrimRight(line, " "))
			line = ""
		}
		line += piece
		for line != "" && TextWidth(strings.TrimRight(line, " "), size, bold) > width { // one piece, too long for a line
			head := fitting(line, width, size, bold)
			lines = append(lines, strings.TrimRight(head, " "))
			line = strings.TrimLeft(line[len(head):], " ")
		}
	}
	if line = strings.TrimRight(line, " "); line != "" {
		lines = append(lines, line)
	}
	if len(lines) <= most {
		return lines, true
	}
	if most < 1 {
		return nil, false
	}
	last := lines[most-1]
	for last != "" && TextWidth(last+"…", size, bold) > width {
		r := []rune(last)
		last = strings.TrimRight(string(r[:len(r)-1]), " ")
	}
	return append(lines[:most-1:most-1], last+"…"), false
}

// Shorten cuts words to one line of a width.
func Shorten(words string, width, size float64, bold bool) (line string, whole bool) {
	lines, whole := Wrap(words, width, size, bold, 1)
	if len(lines) == 0 {
		return "", whole
	}
	return lines[0], whole
}

// pieces cuts words where a line may end: after a hyphen, and after a space
// unless a unit follows, which stays with its figure.
func pieces(words string) []string {
	var list []string
	from := 0
	for i, r := range words {
		if r == ' ' && !Unit(words[i+1:]) || r == '-' && i > from {
			list = append(list, words[from:i+1])
			from = i + 1
		}
	}
	return append(list, words[from:])
}

// Unit says whether words begin with a unit that belongs to a figure before it.
func Unit(words string) bool {
	word, _, _ := strings.Cut(words, " ")
	switch strings.TrimRight(word, ").,;:") {
	case "%", "N·m", "lbf·ft", "kN", "lbf", "km", "mi", "mm", "thou", "°C":
		return true
	}
	return false
}

// fitting is the longest beginning, of one letter at least, that goes into a width.
func fitting(words string, width, size float64, bold bool) string {
	end := 0
	for i, r := range words {
		next := i + len(string(r))
		if end > 0 && TextWidth(words[:next], size, bold) > width {
			break
		}
		end = next
	}
	return words[:end]
}
