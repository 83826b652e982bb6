package web

import "axlewright/shop"

// A frame is what stands round every page.
type frame struct {
	Title string
	Plate string // what is stamped on the plate, top left; empty is the program's own
	To    string // where the plate leads
	Here  string // which entry of the menu the page belongs to
	Who   shop.Actor
	Job   shop.ID // the job that the page shows, for its stream
	Live  bool    // the page looks for changes of anything
	Wide  bool    // no steps down the side
	Alone bool    // nobody has to sign in
}

func (v *visit) frame(title string) frame {
	return frame{Title: title, To: "/", Who: v.who, Alone: !v.o.Network}
}

func (f frame) at(here string) frame {
	f.Here = here
	return f
}

// ofJob puts the job's number on the plate.
func (f frame) ofJob(j *shop.Job) frame {
	f.Plate, f.To, f.Job, f.Live = plateOf(j.Stamped(), j.NumberText()), "/job/"+string(j.ID), j.ID, true
	return f
}

// plateOf is the number that a unit goes by: the stamped one once there is one.
func plateOf(stamped, number string) string {
	if stamped != "" {
		return stamped
	}
	return "job " + number
}

// menu is the way to every page that is not of one job.
var menu = []struct{ Key, Title, To string }{
	{"today", "Today", "/"},
	{"search", "Find", "/search"},
	{"setting", "Setting-up", "/setting-up"},
	{"stock", "Stock", "/stock"},
	{"handbook", "Handbook", "/handbook"},
	{"settings", "Shop", "/settings"},
}
