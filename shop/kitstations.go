package shop

import (
	"context"
	"encoding/json"
	"math"
	"slices"
	"strconv"
	"strings"

	"axlewright/casting"
	"axlewright/kit"
)

// kitFamily is the kit of a revision's whole name: KIT-T24-A of KIT-T24-A.2.
func kitFamily(name string) string {
	return name[:max(strings.LastIndexByte(name, '.'), 0)]
}

// newestOpen is the newest revision of the kit of a revision that is not closed and
// fits; without one it is the revision itself.
func newestOpen(kits []Kit, name string, fits func(*KitRevision) bool) string {
	for _, k := range kits {
		if k.Name != kitFamily(name) {
			continue
		}
		for i := len(k.Revisions) - 1; i >= 0; i-- {
			if r := &k.Revisions[i]; !r.Closed && fits(r) {
				return k.Name + "." + r.Name
			}
		}
	}
	return name
}

// GaugeKit turns the stations to the kit revision that the job is built with: the
// one whose plates its record has, else the newest that is not closed and fits its
// variant, else the one of the stations' own file. why says which was taken.
//
// doubt says that the stations are not known for that revision: no trim that is
// worked out from them may be told as a fact.
func (s *Shop) GaugeKit(ctx context.Context, j *Job, g casting.Gauging) (turned casting.Gauging, why, doubt string, err error) {
	kits, _, err := List[Kit](ctx, s, CardQuery{Retired: true, Limit: 1000})
	if err != nil {
		return g, "", "", err
	}
	choices, err := s.KitsFor(ctx, j)
	if err != nil {
		return g, "", "", err
	}
	file := g.Kit.Revision
	link := j.Casting()
	name := newestOpen(kits, file, func(r *KitRevision) bool { return link != nil && slices.Contains(r.Fits, link.ID) })
	why, plates := "the newest revision that is not closed", "the newest revision is "
	if name == file {
		why = "as the file of the stations says"
	}
	if len(choices) > 0 && choices[0].Bench {
		name = choices[0].Kit.Name + "." + choices[0].Revision.Name
		why, plates = "its plates are on this job", "the plates on this job are "
		if used := j.Value("plates", "kit").Link; used.Label != "" {
			why += " (" + used.Label + ")"
		}
	}
	why = "Kit " + name + ": " + why + "."
	if name == file {
		return g, why, "", nil
	}
	if moved, ok := redrawn(g, revisionNamed(kits, file), revisionNamed(kits, name)); ok {
		moved.Kit.Revision = name
		return moved, why + " Its sizes at the stations are those of its drawing.", "", nil
	}
	return g, why, "The stations are known for " + file + "; " + plates + name + ": measure against the plate. No trim is given.", nil
}

func revisionNamed(kits []Kit, name string) *KitRevision {
	for i := range kits {
		for k := range kits[i].Revisions {
			if r := &kits[i].Revisions[k]; kits[i].Name+"."+r.Name == name {
				return r
			}
		}
	}
	return nil
}

// redrawn moves the stations from one revision to another that differs from it in
// the places of stations and in holes only: there every edge keeps its gap. A
// station lies along the one coordinate that is the size it is drawn for.
func redrawn(g casting.Gauging, from, to *KitRevision) (casting.Gauging, bool) {
	if from == nil || to == nil || from.Drawing == "" || to.Drawing == "" {
		return g, false
	}
	old, err := kit.Parse("drawing", []byte(from.Drawing))
	if err != nil {
		return g, false
	}
	now, err := kit.Parse("drawing", []byte(to.Drawing))
	if err != nil || unplaced(old) != unplaced(now) {
		return g, false
	}
	g.Stations = slices.Clone(g.Stations)
	for i := range g.Stations {
		st := &g.Stations[i]
		a, b := spotOf(old, st), spotOf(now, st)
		if a == nil || b == nil {
			return g, false
		}
		along, across := 0, 1
		if math.Abs(math.Abs(a[0])-st.DrawnFor.Value) > 1e-7 {
			along, across = 1, 0
		}
		moved := math.Abs(a[across]-b[across]) > 1e-7 || a[along]*b[along] < 0
		if moved || math.Abs(math.Abs(a[along])-st.DrawnFor.Value) > 1e-7 || math.Abs(math.Abs(a[across])-st.DrawnFor.Value) < 1e-7 {
			return g, false
		}
		st.DrawnFor.Value = math.Abs(b[along])
	}
	return g, true
}

// unplaced is all that a kit's edges hang on but the places of the stations.
func unplaced(k kit.Kit) string {
	frames, pieces := slices.Clone(k.Frames), slices.Clone(k.Pieces)
	for i := range frames {
		frames[i].Stations = nil
	}
	for i := range pieces {
		pieces[i].Holes = nil
	}
	text, err := json.Marshal([]any{k.Casting, k.Sizes, frames, pieces})
	if err != nil {
		panic("shop: " + err.Error()) // a kit is plain data
	}
	return string(text)
}

// spotOf is where a kit's drawing has a station, in metres; nil where it has it not,
// twice or not as plain numbers.
func spotOf(k kit.Kit, st *casting.Station) []float64 {
	var found []float64
	for _, f := range k.Frames {
		for _, s := range f.Stations {
			if s.Number != st.Number || s.Name != st.Name {
				continue
			}
			x, errX := strconv.ParseFloat(s.At.X.Text, 64)
			y, errY := strconv.ParseFloat(s.At.Y.Text, 64)
			if found != nil || errX != nil || errY != nil {
				return nil
			}
			found = []float64{x / 1000, y / 1000}
		}
	}
	return found
}
