package drawing

import (
	"regexp"
	"strconv"
	"strings"
)

// thread draws a thread to scale, so that crests may be counted against the bolt.
func (p *pen) thread() {
	diameter, pitch, known := threadOf(p.answer)
	p.understood = known
	if !known {
		p.line(contour, Point{8, 14}, Point{52, 14})
		p.line(contour, Point{8, 30}, Point{52, 30})
		p.line(Ink{Width: thin, Dash: []float64{6, 1.5, 1, 1.5}}, Point{4, 22}, Point{56, 22})
		p.add(Rect{Box: Box{16, 11, 44, 33}, Ink: asked})
		return
	}
	const scale = 2.0 // mm on paper for a millimetre
	half := 9.0
	if diameter > 0 {
		half = min(diameter*scale/2, 15)
	}
	depth := 0.6134 * pitch * scale // of an ISO thread, ISO 68-1 (from memory)
	for _, side := range []float64{-1, 1} {
		var at []Point
		crest := true
		for x := 8.0; x <= 52; x += pitch * scale / 2 {
			y := half
			if !crest {
				y -= depth
			}
			at, crest = append(at, Point{x, centre.Y + side*y}), !crest
		}
		p.line(told, at...)
	}
	p.line(Ink{Width: thin, Dash: []float64{6, 1.5, 1, 1.5}}, Point{4, centre.Y}, Point{56, centre.Y})
	y := centre.Y + half + 3.2
	p.line(contour, Point{20, y}, Point{40, y})
	p.line(contour, Point{20, y - 1.2}, Point{20, y + 1.2})
	p.line(contour, Point{40, y - 1.2}, Point{40, y + 1.2})
	p.add(Text{At: Point{30, min(y+4.4, featureHeight-1)}, Words: "10 mm: " + strconv.FormatFloat(10/pitch, 'f', 1, 64) + " crests", Size: normal, Anchor: Middle})
}

var (
	metricThread = regexp.MustCompile(`(?i)^M(\d+(?:\.\d+)?) ?[x×] ?(\d+(?:\.\d+)?)$`)
	pitchOnly    = regexp.MustCompile(`(?i)^(\d+(?:\.\d+)?) mm$`)
	perInch      = regexp.MustCompile(`(?i)^(\d+) (?:to the inch|tpi)$`)
	unified      = regexp.MustCompile(`(?i)^(\d+)/(\d+) (UNC|UNF)$`)
)

// perInchOf are the threads to the inch of the unified series, coarse and fine,
// by nominal diameter in inches.
//
// Source: ASME B1.1, UNC and UNF series (from memory).
var perInchOf = map[string][2]float64{
	"1/4": {20, 28}, "5/16": {18, 24}, "3/8": {16, 24}, "7/16": {14, 20}, "1/2": {13, 20}, "9/16": {12, 18}, "5/8": {11, 18}, "3/4": {10, 16},
}

// threadOf reads a thread in words: its diameter in mm, 0 where it is not told, and its pitch.
func threadOf(text string) (diameter, pitch float64, known bool) {
	text = strings.TrimSpace(text)
	figure := func(s string) float64 { x, _ := strconv.ParseFloat(s, 64); return x }
	switch {
	case metricThread.MatchString(text):
		m := metricThread.FindStringSubmatch(text)
		diameter, pitch = figure(m[1]), figure(m[2])
	case pitchOnly.MatchString(text):
		pitch = figure(pitchOnly.FindStringSubmatch(text)[1])
	case perInch.MatchString(text):
		pitch = 25.4 / figure(perInch.FindStringSubmatch(text)[1])
	case unified.MatchString(text):
		m := unified.FindStringSubmatch(text)
		n := perInchOf[m[1]+"/"+m[2]]
		at := 0
		if strings.EqualFold(m[3], "UNF") {
			at = 1
		}
		if n[at] > 0 {
			diameter, pitch = 25.4*figure(m[1])/figure(m[2]), 25.4/n[at]
		}
	}
	return diameter, pitch, pitch >= 0.2 && pitch <= 12
}
