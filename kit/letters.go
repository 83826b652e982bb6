package kit

import (
	"fmt"
	"strconv"
	"strings"

	"axlewright/kit/outline"
)

// A Stroke is one movement of the etching beam, open, along lines and arcs.
type Stroke []outline.Vertex

// Length of the stroke.
func (s Stroke) Length() float64 {
	sum := 0.0
	for i := 1; i < len(s); i++ {
		sum += outline.Edge{From: s[i-1].At, To: s[i].At, Bulge: s[i-1].Bulge}.Length()
	}
	return sum
}

// letterForms are single-stroke letters on a grid 4 wide and 6 high, the base
// line at 0. Strokes are parted by ";", places by blanks: x,y or x,y,bulge of
// the piece to the next place. 0 carries a dot, so that it is not taken for O;
// 1 has its foot and I its serifs.
var letterForms = map[rune]string{
	'A': "0,0 2,6 4,0;0.8,2.4 3.2,2.4",
	'B': "0,0 0,6 2.5,6,-1 2.5,3.2 0,3.2;2.5,3.2,-1 2.5,0 0,0",
	'C': "4,5,0.41 2.5,6 2,6,0.41 0,4 0,2,0.41 2,0 2.5,0,0.41 4,1",
	'D': "0,0 0,6 2,6,-0.4142 4,4 4,2,-0.4142 2,0 0,0",
	'E': "4,6 0,6 0,0 4,0;0,3.2 3,3.2",
	'F': "4,6 0,6 0,0;0,3.2 3,3.2",
	'G': "4,5,0.41 2.5,6 2,6,0.41 0,4 0,2,0.41 2,0 2.5,0,0.41 4,1.5 4,2.8 2.4,2.8",
	'H': "0,0 0,6;4,0 4,6;0,3.2 4,3.2",
	'I': "1,0 3,0;2,0 2,6;1,6 3,6",
	'J': "3.4,6 3.4,1.7,-1 0,1.7",
	'K': "0,0 0,6;4,6 0,2.4;1.3,3.57 4,0",
	'L': "0,6 0,0 3.6,0",
	'M': "0,0 0,6 2,2.6 4,6 4,0",
	'N': "0,0 0,6 4,0 4,6",
	'O': "0,4,-0.4142 2,6,-0.4142 4,4 4,2,-0.4142 2,0,-0.4142 0,2 0,4",
	'P': "0,0 0,6 2.4,6,-1 2.4,2.8 0,2.8",
	'Q': "0,4,-0.4142 2,6,-0.4142 4,4 4,2,-0.4142 2,0,-0.4142 0,2 0,4;2.4,1.8 4.2,-0.3",
	'R': "0,0 0,6 2.4,6,-1 2.4,2.8 0,2.8;2.2,2.8 4,0",
	'S': "3.8,5,0.41 2.4,6 1.6,6,1 1.6,3 2.4,3,-1 2.4,0 1.6,0,-0.41 0.2,1",
	'T': "0,6 4,6;2,6 2,0",
	'U': "0,6 0,2,1 4,2 4,6",
	'V': "0,6 2,0 4,6",
	'W': "0,6 0.9,0 2,4 3.1,0 4,6",
	'X': "0,0 4,6;0,6 4,0",
	'Y': "0,6 2,3 4,6;2,3 2,0",
	'Z': "0,6 4,6 0,0 4,0",
	'0': "0.4,4.4,-1 3.6,4.4 3.6,1.6,-1 0.4,1.6 0.4,4.4;2,2.6 2,3.4",
	'1': "0.7,4.7 2,6 2,0;0.8,0 3.2,0",
	'2': "0.3,4.4,-0.9 3.5,4.4,-0.25 2.9,3 0.2,0 3.8,0",
	'3': "0.4,6 3.6,6 1.7,3.6 2,3.6,-1 2,0,-0.41 0.2,1",
	'4': "3,0 3,6 0,1.8 4,1.8",
	'5': "3.6,6 0.6,6 0.4,3.3 1.8,3.7,-0.95 1.8,0,-0.41 0.2,0.8",
	'6': "3.2,6,0.3 0.3,1.9,1 3.7,1.9,1 0.3,1.9",
	'7': "0.2,6 3.8,6 1.4,0",
	'8': "2,3.4,1 2,6,1 2,3.4,-1 2,0,-1 2,3.4",
	'9': "0.8,0,0.3 3.7,4.1,1 0.3,4.1,1 3.7,4.1",
	'-': "0.8,2.8 3.2,2.8",
	'+': "0.6,2.8 3.4,2.8;2,1.4 2,4.2",
	'=': "0.6,2 3.4,2;0.6,3.6 3.4,3.6",
	'_': "0,-0.6 4,-0.6",
	'.': "1.8,0,1 2.2,0,1 1.8,0",
	',': "2.1,0.3 1.6,-1",
	':': "1.8,0.6,1 2.2,0.6,1 1.8,0.6;1.8,3.6,1 2.2,3.6,1 1.8,3.6",
	'/': "0.4,-0.4 3.6,6.4",
	'(': "2.8,6.6,0.35 2.8,-0.6",
	')': "1.2,6.6,-0.35 1.2,-0.6",
	'×': "0.8,1.4 3.2,3.8;0.8,3.8 3.2,1.4",
	'Ø': "0,3,1 4,3,1 0,3;0.4,0.4 3.6,5.6",
	'°': "1,5,1 2.6,5,1 1,5",
	'±': "0.6,3.4 3.4,3.4;2,2 2,4.8;0.6,0.6 3.4,0.6",
	'↑': "2,0 2,6;0.6,3.8 2,6 3.4,3.8",
	' ': "",
}

// Pitch of letters and of lines, in cap heights.
const (
	letterPitch = 0.95
	letterWidth = 4.0 / 6
	linePitch   = 1.7
)

var letters = func() map[rune][]Stroke {
	all := map[rune][]Stroke{}
	for r, form := range letterForms {
		for _, stroke := range strings.Split(form, ";") {
			if stroke == "" {
				continue
			}
			var s Stroke
			for _, place := range strings.Fields(stroke) {
				var n [3]float64
				for i, part := range strings.Split(place, ",") {
					x, err := strconv.ParseFloat(part, 64)
					if err != nil {
						panic("kit: letter " + string(r) + ": " + err.Error()) // the forms are constants
					}
					n[i] = x
				}
				s = append(s, outline.Vertex{At: outline.Point{X: n[0] / 6, Y: n[1] / 6}, Bulge: n[2]})
			}
			all[r] = append(all[r], s)
		}
		if all[r] == nil {
			all[r] = []Stroke{}
		}
	}
	return all
}()

// WriteLine is one line of text in single strokes, its base line beginning at
// the origin, in capitals of a height.
//
// Errors: a letter that there is no form for.
func WriteLine(text string, height float64) ([]Stroke, error) {
	var list []Stroke
	x := 0.0
	for _, r := range strings.ToUpper(text) {
		forms, known := letters[r]
		if !known {
			return nil, fmt.Errorf("there is no stroke letter for %q; expected A to Z, 0 to 9 and - + = _ . , : / ( ) × Ø ° ±", string(r))
		}
		for _, form := range forms {
			s := make(Stroke, len(form))
			for i, v := range form {
				s[i] = outline.Vertex{At: outline.Point{X: x + v.At.X*height, Y: v.At.Y * height}, Bulge: v.Bulge}
			}
			list = append(list, s)
		}
		x += letterPitch * height
	}
	return list, nil
}

// LineWidth is the width that a line of text takes.
func LineWidth(text string, height float64) float64 {
	n := len([]rune(text))
	if n == 0 {
		return 0
	}
	return (float64(n-1)*letterPitch + letterWidth) * height
}
