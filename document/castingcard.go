package document

import (
	"fmt"
	"strings"

	"axlewright/casting"
	"axlewright/document/paper"
	"axlewright/drawing"
	"axlewright/quantity"
)

// CastingCard is what was found out about one casting on a page that is kept
// with it: which variant, how sure, by what evidence, of what metal, and what
// would settle it.
func CastingCard(head paper.Head, id *casting.Identification, c *casting.Catalogue) paper.Paper {
	p := paper.Paper{Head: head, Foot: "An identification is an opinion with its chance, not a proof; it rates nothing."}
	sign := "△"
	switch {
	case id.Verdict == casting.ModifiedBefore:
		sign = "✕"
	case id.Enough:
		sign = "✓"
	}
	p.Add(paper.Text{Words: sign + " " + id.Sentence, Big: true, Bold: true}, paper.Text{Words: id.Why})
	for _, d := range id.Do {
		p.Add(paper.List{{Mark: "→", Words: d}})
	}
	for _, s := range id.Stops {
		p.Add(paper.Caution{Words: "STOP. " + s.What + " " + s.Why + " May be overruled by: " + s.Overrule})
	}
	p.Add(paper.Heading{Text: "It may be", Note: "modified before: " + quantity.Chance(id.Modified.Chance)}, candidates(id))
	p.Add(paper.Heading{Text: "What was seen, the heaviest first"}, evidenceTable(id))
	var mind paper.List
	for _, x := range id.Contradictions {
		mind = append(mind, paper.Item{Mark: "△", Words: x.Sentence})
	}
	for _, w := range id.Warnings {
		mind = append(mind, paper.Item{Mark: "△", Words: w})
	}
	if len(mind) > 0 {
		p.Add(paper.Heading{Text: "Mind"}, mind)
	}
	p.Add(paper.Heading{Text: "Metal"}, paper.Text{Words: strings.TrimSpace(id.Metal.Sentence + " " + id.Metal.Disagrees)})
	if len(id.Questions) > 0 && !id.Enough {
		q := id.Questions[0]
		p.Add(paper.Heading{Text: "To settle it"}, paper.Text{Words: q.Ask + " (" + q.Tool + ")"})
		if f, ok := c.Feature(q.Feature); ok {
			p.Add(paper.Picture{Drawing: drawing.Feature("next", f, ""), Width: 45})
		}
		p.Add(paper.Boxes{{Label: upperFirst(q.Feature), Wide: true}})
	}
	p.Add(paper.Sign{"Called by"})
	return p
}

func candidates(id *casting.Identification) paper.Table {
	t := paper.Table{Columns: []paper.Column{{Title: "variant", Share: 2, Bold: true}, {Title: "chance", Right: true}, {Title: "kit and metal on record", Share: 5}}}
	for _, c := range id.Ranked {
		about := []string{c.Kit, string(c.Metal)}
		if c.Variant == casting.NoneOfTheseName {
			about = []string{"a new variant", id.New.Like}
			if id.New.Like != "" {
				about[1] = "like " + id.New.Like
			}
		}
		t.Rows = append(t.Rows, []string{c.Variant, quantity.Chance(c.Chance), joinGiven(about)})
	}
	return t
}

func evidenceTable(id *casting.Identification) paper.Table {
	t := paper.Table{Columns: []paper.Column{{Share: 0.5}, {Title: "seen", Share: 20}, {Title: "speaks strongly against", Share: 8}}}
	for _, e := range id.Evidence {
		mark := "·"
		switch {
		case e.Decibans >= 1:
			mark = "+"
		case e.Decibans <= -1:
			mark = "−"
		}
		t.Rows = append(t.Rows, []string{mark, e.Sentence, strings.Join(e.Disproves, ", ")})
	}
	if len(id.Unseen) > 0 {
		t.Rows = append(t.Rows, []string{"·", "cannot be seen: " + strings.Join(id.Unseen, ", "), ""})
	}
	if len(t.Rows) == 0 {
		t.Blank = 8
	}
	return t
}

// TrimSheet is what to do at each edge so that the kit sits on one casting.
// Stations that were not measured are left open, for the pencil. why
// says which revision of the kit was taken; doubt, that no trim may be given.
func TrimSheet(head paper.Head, g *casting.Gauging, r *casting.StationReport, why, doubt string) paper.Paper {
	p := paper.Paper{Head: head, Foot: "Measured to clean skin, not to the flash line. A trim beyond what the sheet allows is a piece made anew, never a wider weld."}
	p.Add(paper.Text{Words: fmt.Sprintf("Kit %s: gaps up to %s are welded across, up to %s is ground off an edge.", g.Kit.Revision,
		quantity.Format(g.Kit.Gap.Value, quantity.Length), quantity.Format(g.Kit.Trim.Value, quantity.Length))})
	if why != "" {
		p.Add(paper.Text{Words: why})
	}
	if doubt != "" {
		p.Add(paper.Caution{Words: doubt})
	}
	var placed *casting.Placement
	if len(r.Placed) > 0 && doubt == "" {
		placed = &r.Placed[0]
		sign := map[casting.Fit]string{casting.FitsAsCut: "✓", casting.FitsTrimmed: "△", casting.FitsNot: "✕"}[placed.Fit]
		p.Add(paper.Text{Words: sign + " " + placed.Sentence, Big: true, Bold: true})
		for _, t := range placed.Trims {
			p.Add(paper.Boxes{{Label: upperFirst(t.Words), Options: []string{"done", "sits"}}})
		}
	}
	p.Add(paper.Caution{Words: "Grinding: guard on, face shield, mask for iron dust. Deburr what was cut; chamfer before welding."},
		paper.Heading{Text: "Stations"}, stationTable(g, placed), paper.Text{Words: r.Fit.Sentence + " " + r.Redraw.Sentence, Small: true}, paper.Sign{"Trimmed by"}, paper.Notes{})
	return p
}

func stationTable(g *casting.Gauging, placed *casting.Placement) paper.Table {
	t := paper.Table{Least: 9, Columns: []paper.Column{{Title: "no", Share: 1.4, Bold: true}, {Title: "station, and how", Share: 9}, {Title: "drawn for", Share: 5, Right: true}, {Title: "read", Share: 5.4, Right: true, Bold: true}, {Title: "at the edge", Share: 8.5}, {Title: "among the others", Share: 7.5}}}
	for i := range g.Stations {
		s := &g.Stations[i]
		row := []string{fmt.Sprint(s.Number), joinGiven([]string{s.Name, s.How}), quantity.Format(s.DrawnFor.Value, quantity.Length), "", "", ""}
		if placed != nil {
			for _, x := range placed.Stations {
				if x.Station == s.Number {
					row[3], row[4], row[5] = quantity.Format(x.Value, quantity.Length), x.Do, x.Words
				}
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// joinGiven joins what is not empty.
func joinGiven(parts []string) string {
	var given []string
	for _, p := range parts {
		if p != "" {
			given = append(given, p)
		}
	}
	return strings.Join(given, ", ")
}

func upperFirst(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
