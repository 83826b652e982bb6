package web

import (
	"net/url"
	"slices"
	"strconv"
	"strings"
	"time"

	"axlewright/shop"
)

func queryEscape(text string) string { return url.QueryEscape(text) }

// A search is what was asked for and what was found.
type search struct {
	Text  string
	State shop.State
	Mark  shop.Mark
	Lines []shop.Line
	Cards []shop.Card // lots, donors, customers of that name
	Next  string      // the following page; empty at the end
	Count map[shop.State]int
	Asked bool
}

// searchPage finds units by number or words, or lists those in a state.
func searchPage(v *visit) error {
	q := v.r.URL.Query()
	s := search{Text: strings.TrimSpace(q.Get("q")), State: shop.State(q.Get("state")), Mark: shop.Mark(q.Get("mark"))}
	s.Asked = s.Text != "" || s.State != "" || s.Mark != ""
	var err error
	switch {
	case s.Text != "":
		if s.Lines, err = v.shop.Search(v.ctx(), s.Text, 100); err == nil {
			s.Cards, err = v.shop.SearchCards(v.ctx(), s.Text, 20)
		}
	default:
		query := shop.JobQuery{Limit: 50, After: cursorOf(q.Get("after"))}
		if slices.Contains(shop.States, s.State) {
			query.States = []shop.State{s.State}
		}
		if slices.Contains(shop.Marks, s.Mark) {
			query.Mark = s.Mark
		}
		var found shop.JobPage
		found, err = v.shop.FindJobs(v.ctx(), query)
		s.Lines = found.Lines
		if found.Next != nil {
			next := url.Values{"after": {found.Next.Changed.Format(time.RFC3339Nano) + " " + strconv.FormatInt(found.Next.Ordinal, 10)}}
			if s.State != "" {
				next.Set("state", string(s.State))
			}
			if s.Mark != "" {
				next.Set("mark", string(s.Mark))
			}
			s.Next = "/search?" + next.Encode()
		}
	}
	if err != nil {
		return err
	}
	// The one unit of that number is shown at once.
	if s.Text != "" && len(s.Lines) == 1 && shop.FoldNumber(s.Lines[0].Stamped) == shop.FoldNumber(s.Text) && s.Lines[0].Stamped != "" {
		return v.see("/job/" + string(s.Lines[0].Job))
	}
	if s.Count, err = v.shop.CountJobs(v.ctx()); err != nil {
		return err
	}
	f := v.frame("Find a unit").at("search")
	f.Wide = true
	return v.show(searchSheet(f, s))
}

// cursorOf reads the place in a list from an address; anything else is its start.
func cursorOf(text string) *shop.JobCursor {
	changed, ordinal, ok := strings.Cut(text, " ")
	if !ok {
		return nil
	}
	t, err := time.Parse(time.RFC3339Nano, changed)
	n, err2 := strconv.ParseInt(ordinal, 10, 64)
	if err != nil || err2 != nil {
		return nil
	}
	return &shop.JobCursor{Changed: t, Ordinal: n}
}
