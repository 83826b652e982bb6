package document

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"axlewright/assess"
	"axlewright/drawing"
	"axlewright/quantity"
)

// A section is a heading with its items.
type section struct {
	Title string
	Items []item
}

// An item is a paragraph behind a mark, with a few words to lead.
type item struct{ Mark, Lead, Text string }

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
			next = append(next, fmt.Sprintf("It is the stronger of the two in %s of the cases we cannot tell apart from yours.", quantity.Chance(c.Stronger.Value)))
		}
	}
	return append(
		sectionOf("Weak link:", item{Text: weakWords(nearest(a))}),
		sectionOf("Next one up:", item{Text: strings.Join(next, " ")})...)
}

// belowLadder are the other sections, in the order of reading.
func belowLadder(a *assess.Advice) []section {
	return slices.Concat(
		sectionOf("Peg:", item{Text: a.Peg.Text}),
		sectionOf("Beside the sums", ruleItems(a.Rules)...),
		sectionOf("What to measure next, and the 10 to 90 % band before and after", measureItems(a)...),
		sectionOf("Not known:", item{Text: strings.Join(a.Unknown, " · ")}),
		sectionOf("Cautions:", item{Text: marked("△", a.Caution)}),
		sectionOf("Care:", item{Text: "new oil after 800 km (500 mi), then every 20,000 km (12,000 mi) and after deep water; breather free. Custom of the trade, no source."}),
	)
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
		doubt = append(doubt, fmt.Sprintf("%s %s (%s)", s.Figure, quantity.Chance(s.Share), s.Origin))
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
