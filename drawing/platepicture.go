package drawing

import (
	"fmt"
	"math"

	"axlewright/kit"
)

// PlatePicture shows one plate for a screen: welded edges heavy, edges that are
// not welded thin, vents dashed, holes with their labels, the mark as etched.
func PlatePicture(p *kit.Plate) Drawing {
	const wide, most, left, right, top, bottom = 92.0, 84.0, 15.0, 8.0, 8.0, 16.0 // mm; a station stands up to 7.4 outside
	b := p.Outline.Bounds()
	times := math.Min((wide-left-right)/(b.Width()*1e3), most/(b.Height()*1e3))
	high := top + b.Height()*1e3*times + bottom
	s := kitSheet{plate: p, scale: paperScale{times: times}, low: b.Low, foot0: high - bottom}
	s.left = left + (wide-left-right-b.Width()*1e3*times)/2
	return Drawing{
		Name: "piece-" + fileWord(p.File()), Width: wide, Height: high, Title: fmt.Sprintf("Piece %s, %s", p.Key(), p.Name),
		Desc:   fmt.Sprintf("%s by %s, %d holes and cutouts; %s of edge is welded.", lengthWords(b.Width()), lengthWords(b.Height()), p.Pierces()-1, lengthWords(p.SeamLength(kit.WeldSeam))),
		Layers: []Layer{{"paper", []Shape{Rect{Box: Box{0, 0, wide, high}, Fill: Paper}}}, {"plate", s.picture()}, {"dimensions", s.dimensions()}},
	}
}
