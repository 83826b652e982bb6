package web

import "axlewright/shop"

// A group is some jobs under a heading.
type group struct {
	Title string
	Lines []shop.Line
	More  string // where the rest is, empty where this is all
}

// todayStates is what is shown first each morning, the bench before the telephone.
var todayStates = []struct {
	title  string
	states []shop.State
}{
	{"On the bench", []shop.State{shop.StateBench}},
	{"Come back", []shop.State{shop.StateBack}},
	{"Waiting for something", []shop.State{shop.StateWaiting}},
	{"Accepted, not begun", []shop.State{shop.StateAccepted}},
	{"Ready to go out", []shop.State{shop.StateReady}},
	{"Enquiries and quotes", []shop.State{shop.StateEnquiry, shop.StateQuoted}},
}

// inHand are the states of jobs that are worked at: a stop of one that was
// scrapped or has gone out holds nobody up.
var inHand = []shop.State{shop.StateEnquiry, shop.StateQuoted, shop.StateAccepted, shop.StateBench, shop.StateWaiting, shop.StateReady, shop.StateBack}

// shownToday is how many jobs a group of today's work shows.
const shownToday = 8

// todayPage is what there is to do.
func todayPage(v *visit) error {
	var groups []group
	for _, t := range todayStates {
		found, err := v.shop.FindJobs(v.ctx(), shop.JobQuery{States: t.states, Limit: shownToday})
		if err != nil {
			return err
		}
		g := group{Title: t.title, Lines: found.Lines}
		if found.Next != nil {
			g.More = "/search?state=" + queryEscape(string(t.states[0]))
		}
		if len(g.Lines) > 0 {
			groups = append(groups, g)
		}
	}
	stops, err := v.shop.FindJobs(v.ctx(), shop.JobQuery{Mark: shop.MarkStop, States: inHand, Limit: shownToday})
	if err != nil {
		return err
	}
	owed, err := v.shop.FindJobs(v.ctx(), shop.JobQuery{Mark: shop.MarkCoreOwed, Limit: shownToday})
	if err != nil {
		return err
	}
	back, err := v.shop.FindJobs(v.ctx(), shop.JobQuery{Mark: shop.MarkDeposit, Limit: shownToday})
	if err != nil {
		return err
	}
	f := v.frame("Today’s work").at("today")
	f.Live, f.Wide = true, true
	return v.show(todaySheet(f, groups, stops.Lines, owed.Lines, back.Lines, v.who.Role.May(shop.ActSell), v.who.Role.May(shop.ActSettings) && v.unsafe()))
}

// openJob begins a job and shows its first step.
func openJob(v *visit) error {
	form, err := v.form()
	if err != nil {
		return err
	}
	j, err := v.shop.OpenJob(v.ctx(), v.who, form.Get("ticket"))
	if err != nil {
		return err
	}
	return v.see("/job/" + string(j.ID) + "/enquiry")
}
