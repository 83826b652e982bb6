package document

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"strings"

	"axlewright/assess"
	"axlewright/drawing"
)

// AdviceSheet writes advice as one page of A4 in HTML: everything is in the one
// file, and it reads in black and white.
func AdviceSheet(w io.Writer, a *assess.Advice) error {
	s := newSheet(a)
	var err error
	draw := func(d drawing.Drawing) string {
		var picture bytes.Buffer
		if e := drawing.WriteSVG(&picture, d); e != nil && err == nil {
			err = e
		}
		return picture.String()
	}
	s.Picture = draw(drawing.LadderSized(a, paperWidth, s.fit.ladder))
	s.DoubtPicture = draw(drawing.DoubtBars(a))
	if len(a.Peg.Curve) > 1 {
		s.PegPicture = draw(drawing.PegCurve(a))
	}
	if a.Peg.Gap != nil {
		s.Gap = a.Peg.Gap.Text
	}
	if err != nil {
		return err
	}
	return adviceSheet(s).Render(context.Background(), w)
}

// sheet is all that is on the page, as text.
type sheet struct {
	fit fit

	Number, Title string
	NumberLines   []string
	TitleLines    []string // as it goes in beside the number
	Facts, Flank  string
	Demand        []demandRow
	Why           []string
	Sign, Answer  string
	Carries       bool // a build is recommended
	Picture       string
	Note          string // how the ladder is read
	PegPicture    string // behind the page, on the screen only
	DoubtPicture  string
	Gap           []string // the peg's gap window in sentences
	Loads         []loadRow
	Builds        []buildRow
	Hidden        string
	Beside        []section // beside the demand, below the answer
	Left, Right   []section // below the ladder
	Footer        string
}

func newSheet(a *assess.Advice) *sheet {
	s := &sheet{
		Loads: loadRows(a), Number: drawing.Clean(a.Enquiry), Title: strings.TrimSuffix("Advice for "+drawing.Clean(a.Customer), " for "),
		Facts: fmt.Sprintf("Casting %s, gear set %s, %s axle.", clip(a.Casting, 70), clip(a.Gears, 70), a.Mounting.Position),
		Flank: fmt.Sprintf("It pulls forward on the %s side of the crown wheel's teeth. The two sides push the crown wheel off the pinion with different force, and caps, adjusters and peg must hold it. %s",
			a.Mounting.Forward, flankWords(a)),
		Demand: demandRows(&a.Demand), Why: demandWhy(&a.Demand),
		Carries: a.Recommended >= 0,
		Footer:  fmt.Sprintf("%d draws, seed %d. Torques at the axle, both wheels together. \"10 to 90 %%\" is our doubt, not a tolerance. This is a comparison, not a rating.", a.Draws, a.Seed),
	}
	s.NumberLines, s.TitleLines = s.headLines()
	s.Sign, s.Answer = recommendation(a, numbered(a))
	s.Answer = clip(s.Answer, 380)
	s.Builds, s.Hidden = buildRows(a)
	s.Note = ladderNote(a)
	s.arrange(besideDemand(a), belowLadder(a))
	return s
}

// clip cleans a text and cuts what is longer than anybody needs, so that one
// field filled without end cannot push the rest off the page.
func clip(words string, most int) string {
	r := []rune(drawing.Clean(words))
	if len(r) <= most {
		return string(r)
	}
	return strings.TrimRight(string(r[:most-1]), " ") + "…"
}

// ladderNote tells how the ladder is read.
func ladderNote(a *assess.Advice) string {
	wear := ""
	lasts := ""
	if a.Distance > 0 {
		wear = ", or (hollow end) wears out before " + distance(a.Distance)
		lasts = " Lasts: the chance that nothing wears out before that."
	}
	return "A rung is the torque at which a link slips, breaks, moves too far" + wear +
		"; its whisker holds 10 to 90 % of the draws. First in 58 %: it goes first in 58 % of them." + lasts
}
