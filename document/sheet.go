package document

import (
	"bytes"
	"cmp"
	"context"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/a-h/templ"

	"axlewright/assess"
	"axlewright/drawing"
)

// AdviceSheet writes advice as one page of A4 in HTML: everything is in the one
// file, and it reads in black and white.
func AdviceSheet(w io.Writer, a *assess.Advice) error {
	s := newSheet(a)
	var picture bytes.Buffer
	if err := drawing.WriteSVG(&picture, drawing.LadderSized(a, paperWidth, s.fit.ladder)); err != nil {
		return err
	}
	s.Picture = picture.String()
	if len(a.Peg.Curve) > 1 {
		picture.Reset()
		if err := drawing.WriteSVG(&picture, drawing.PegCurve(a)); err != nil {
			return err
		}
		s.PegPicture = picture.String()
	}
	if a.Peg.Gap != nil {
		s.Gap = a.Peg.Gap.Text
	}
	picture.Reset()
	if err := drawing.WriteSVG(&picture, drawing.DoubtBars(a)); err != nil {
		return err
	}
	s.DoubtPicture = picture.String()
	return adviceSheet(s).Render(context.Background(), w)
}

// sheet is all that is on the page, as text.
type sheet struct {
	fit fit

	Number, Title string
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

// A loadRow is what one bearing carries at the peak, radial and axial in kN.
type loadRow struct{ Bearing, DriveRadial, DriveAxial, CoastRadial, CoastAxial string }

func loadRows(a *assess.Advice) []loadRow {
	kN := func(x float64) string { return fmt.Sprintf("%.1f", x/1e3) }
	var rows []loadRow
	for _, l := range a.Loads {
		rows = append(rows, loadRow{l.Bearing, kN(l.DriveRadial), kN(l.DriveAxial), kN(l.CoastRadial), kN(l.CoastAxial)})
	}
	return rows
}

// A demandRow is one torque of the vehicle.
type demandRow struct {
	Name, Metric, Other, Range string
	Strong                     bool
}

// A buildRow is one build shown, numbered as on the ladder.
type buildRow struct {
	Number                                             int
	Label, Price, Carries, Lasts, Metric, Other, Range string
	Full                                               string // the whole label where it was shortened
	Recommended                                        bool
}

// A section is a heading with its items.
type section struct {
	Title string
	Items []item
	More  string // of items that found no room
	Firm  bool   // shortened last of all
}

// An item is a paragraph behind a mark, with a few words to lead.
type item struct{ Mark, Lead, Text, Full string }

func newSheet(a *assess.Advice) *sheet {
	s := &sheet{
		Loads: loadRows(a), Number: drawing.Clean(a.Enquiry), Title: strings.TrimSuffix("Advice for "+drawing.Clean(a.Customer), " for "),
		Facts: fmt.Sprintf("Casting %s, gear set %s, %s axle.", drawing.Clean(a.Casting), drawing.Clean(a.Gears), a.Mounting.Position),
		Flank: fmt.Sprintf("It pulls forward on the %s side of the crown wheel's teeth. The two sides push the crown wheel off the pinion with different force, and caps, adjusters and peg must hold it. %s",
			a.Mounting.Forward, flankWords(a)),
		Demand: demandRows(&a.Demand), Why: demandWhy(&a.Demand),
		Carries: a.Recommended >= 0,
		Footer:  fmt.Sprintf("%d draws, seed %d. Torques at the axle, both wheels together. \"10 to 90 %%\" is our doubt, not a tolerance. This is a comparison, not a rating.", a.Draws, a.Seed),
	}
	s.TitleLines = s.titleLines(s.Title)
	s.Sign, s.Answer = recommendation(a, numbered(a))
	s.Builds, s.Hidden = buildRows(a)
	s.Note = ladderNote(a)
	s.arrange(besideDemand(a), belowLadder(a))
	return s
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

func demandRows(d *assess.Demand) []demandRow {
	row := func(name string, b assess.Band, strong bool) demandRow {
		r := demandRow{Name: name, Strong: strong}
		r.Metric, r.Other, r.Range = columns(b)
		return r
	}
	return []demandRow{
		row("engine could send", d.Engine, false),
		row("tyres can hold", d.Grip, false),
		row(fmt.Sprintf("%s governs (%.0f %% of draws)", d.Limit, 100*d.Share), d.Governing, false),
		row("peak, with shock", d.Peak, true),
	}
}

// columns prints a band for columns headed N·m, lbf·ft and 10 to 90 % in N·m.
func columns(b assess.Band) (inMetric, inOther, span string) {
	if !finite(b.Median) {
		return "beyond", "", ""
	}
	bare := strings.NewReplacer(" N·m", "", " lbf·ft", "")
	return bare.Replace(metric(b.Median)), bare.Replace(other(b.Median)), bare.Replace(rangeText(b))
}

func demandWhy(d *assess.Demand) []string {
	var list []string
	if d.Why != "" {
		list = append(list, "Why: "+drawing.Clean(d.Why)+".")
	}
	if d.IndexText != "" {
		list = append(list, "Demand index "+drawing.Clean(d.IndexText)+".")
	}
	return list
}

func buildRows(a *assess.Advice) (rows []buildRow, hidden string) {
	shown := drawing.Shown(a)
	for n, i := range shown {
		b := &a.Builds[i]
		row := buildRow{
			Number: n + 1, Label: drawing.Clean(b.Label()), Recommended: i == a.Recommended,
			Carries: drawing.StateOf(b.Carries.Value, a.Wanted).Sign() + " " + chance(b.Carries),
		}
		if a.Distance > 0 {
			row.Lasts = chance(b.Lasts)
		}
		row.Price, _ = drawing.Shorten(price(b.Price), columnWidths[2]-1.6, 7.5*mm, true)
		row.Metric, row.Other, row.Range = columns(b.GiveOut)
		rows = append(rows, row)
	}
	return rows, hiddenWords(len(a.Builds)-len(shown), len(a.SetAside))
}

// sectionOf cleans the items of a section and leaves out the empty ones; none
// is left where all are empty.
func sectionOf(title string, items ...item) []section {
	items = slices.DeleteFunc(items, func(i item) bool { return i.Text == "" })
	for i := range items {
		items[i].Lead, items[i].Text = drawing.Clean(items[i].Lead), drawing.Clean(items[i].Text)
	}
	if len(items) == 0 {
		return nil
	}
	return []section{{Title: title, Items: items}}
}

// besideDemand are the sections that belong to the answer.
func besideDemand(a *assess.Advice) []section {
	if len(a.Builds) == 0 {
		return nil
	}
	next := []string{nextWords(a, numbered(a))}
	for _, c := range a.Comparisons {
		if c.Cheaper != a.Recommended || c.Dearer != a.NextUp {
			continue
		}
		if c.TooClose {
			next = append(next, "Which of the two is stronger is too close to call.")
		} else {
			next = append(next, fmt.Sprintf("It is the stronger of the two in %.0f %% of the cases we cannot tell apart from yours.", 100*c.Stronger.Value))
		}
	}
	return append(
		firm(sectionOf("Weak link:", item{Text: weakWords(nearest(a))})),
		firm(sectionOf("Next one up:", item{Text: strings.Join(next, " ")}))...)
}

// belowLadder are the other sections, in the order of reading.
func belowLadder(a *assess.Advice) []section {
	return slices.Concat(
		firm(sectionOf("Peg:", item{Text: a.Peg.Text})),
		sectionOf("Beside the sums", ruleItems(a.Rules)...),
		sectionOf("What to measure next, and the 10 to 90 % band before and after", measureItems(a)...),
		sectionOf("Not known:", item{Text: strings.Join(a.Unknown, " · ")}),
		firm(sectionOf("Cautions:", item{Text: marked("△", a.Caution)})),
		firm(sectionOf("Care:", item{Text: "new oil after 800 km (500 mi), then every 20,000 km (12,000 mi) and after deep water; breather free. Custom of the trade, no source."})),
	)
}

func firm(list []section) []section {
	for i := range list {
		list[i].Firm = true
	}
	return list
}

// runsIn says whether the heading stands in the line of its only paragraph.
func (s section) runsIn() bool { return strings.HasSuffix(s.Title, ":") }

// ruleItems puts first what overruled the sums.
func ruleItems(rules []assess.Rule) []item {
	sorted := slices.SortedStableFunc(slices.Values(rules), func(p, q assess.Rule) int {
		rank := map[bool]int{true: 0, false: 1}
		return cmp.Compare(rank[p.Overrides], rank[q.Overrides])
	})
	var items []item
	for _, r := range sorted {
		i := item{Mark: "·", Lead: r.Because + ":", Text: r.Text}
		if r.Overrides {
			i.Mark = "△"
		}
		items = append(items, i)
	}
	return items
}

func measureItems(a *assess.Advice) []item {
	var items []item
	for i, m := range a.Measure {
		if i == 3 {
			break
		}
		items = append(items, item{
			Mark: fmt.Sprint(i + 1),
			Text: fmt.Sprintf("%s (price %s): from %s to about %s.", strings.TrimSuffix(capital(m.How), "."), price(m.Cost), torque(m.Before), torque(m.After)),
		})
	}
	if len(items) == 0 {
		items = append(items, item{Text: "No measurement in the catalogue would narrow it."})
	}
	var doubt []string
	for i, s := range a.Shares {
		if i == 3 {
			break
		}
		doubt = append(doubt, fmt.Sprintf("%s %.0f %% (%s)", s.Figure, 100*s.Share, s.Origin))
	}
	if len(doubt) > 0 {
		items = append(items, item{Mark: "·", Lead: "The doubt hangs on", Text: strings.Join(doubt, ", ") + "."})
	}
	return items
}

// marked runs sentences together with a mark before each.
func marked(mark string, texts []string) string {
	list := make([]string, len(texts))
	for i, t := range texts {
		list[i] = mark + " " + capital(t)
	}
	return strings.Join(list, " ")
}

// numbered names builds by their numbers on the page.
func numbered(a *assess.Advice) func(build int) string {
	shown := drawing.Shown(a)
	return func(build int) string {
		if n := slices.Index(shown, build); n >= 0 {
			return fmt.Sprintf("build %d, ", n+1)
		}
		return ""
	}
}

// capital makes the first letter of a sentence large.
func capital(words string) string {
	for i, r := range words {
		return strings.ToUpper(string(r)) + words[i+len(string(r)):]
	}
	return words
}

// tip holds the whole of a text that was shortened.
func tip(full string) templ.Attributes {
	if full == "" {
		return nil
	}
	return templ.Attributes{"title": full}
}
