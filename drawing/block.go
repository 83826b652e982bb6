package drawing

// words is a block of wrapped lines of one size.
type words struct {
	size, width float64
	tone        Tone
	lines       []Text // without places
}

// add wraps a text into at most so many more lines, and says whether it went
// in whole. Where it did not, the whole of it goes with the last line.
func (w *words) add(text string, bold bool, most int) bool {
	lines, whole := Wrap(text, w.width, w.size, bold, most)
	for _, line := range lines {
		w.lines = append(w.lines, Text{Words: line, Size: w.size, Anchor: Start, Bold: bold, Tone: orBlack(w.tone), Clear: true})
	}
	if !whole && len(lines) > 0 {
		w.lines[len(w.lines)-1].Full = Clean(text)
	}
	return whole
}

func (w *words) height() float64 {
	if len(w.lines) == 0 {
		return 0
	}
	return w.size * (1 + spread*float64(len(w.lines)-1))
}

// shapes places the block with its left edge and its middle height.
func (w *words) shapes(left, middle float64) []Shape {
	y := middle - w.height()/2 + ascent*w.size
	list := make([]Shape, len(w.lines))
	for i, t := range w.lines {
		t.At = Point{left, y + float64(i)*spread*w.size}
		list[i] = t
	}
	return list
}
