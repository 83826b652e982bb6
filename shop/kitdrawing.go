package shop

import (
	"cmp"
	"context"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"axlewright/kit"
	"axlewright/weldplan"
)

// FileName is what the kit file of a revision is called.
func (r *KitRevision) FileName(kit string) string { return kit + "." + r.Name + ".yaml" }

// Draw works the revision's drawing out. batch is that of the steel, etched on
// every plate where it is known.
func (r *KitRevision) Draw(batch string) (kit.Drawn, error) {
	if r.Drawing == "" {
		return kit.Drawn{}, Fault(NotFound, "Revision %s has no drawing here: bring its kit file in.", r.Name)
	}
	k, err := kit.Parse("drawing", []byte(r.Drawing))
	if err != nil {
		return kit.Drawn{}, unread("The kit file cannot be used", err)
	}
	d, err := k.Draw(kit.Options{Batch: batch})
	if err != nil {
		return d, unread("The kit cannot be cut as it is drawn", err)
	}
	return d, nil
}

// unread is the refusal of a file that somebody brought in.
func unread(what string, err error) *Error {
	return Fault(Invalid, "%s: %v", what, err).At("revisions")
}

// WeldJob reads how the revision's plates are welded.
func (r *KitRevision) WeldJob() (weldplan.Job, error) {
	if r.Weld == "" {
		return weldplan.Job{}, Fault(NotFound, "How the plates of revision %s are welded is not here: bring its weld file in.", r.Name)
	}
	j, err := weldplan.ParseJob("weld file", r.Weld)
	if err != nil {
		return j, unread("The weld file cannot be used", err)
	}
	return j, nil
}

// checkDrawing demands that drawing and weld file can be used and are of this
// revision and of each other.
func (r *KitRevision) checkDrawing(name string) error {
	if r.Drawing == "" && r.Weld == "" {
		return nil
	}
	d, err := r.Draw("")
	if err != nil {
		return err
	}
	if own := name + "." + r.Name; d.Name.String() != own {
		return Fault(Invalid, "The drawing is of %s, not of %s.", d.Name, own).At("revisions")
	}
	if r.Weld == "" {
		return nil
	}
	j, err := r.WeldJob()
	if err != nil {
		return err
	}
	if j.Casting.Variant != d.Casting {
		return Fault(Invalid, "The weld file is for casting %s, the kit for %s.", j.Casting.Variant, d.Casting).At("revisions")
	}
	for i := range j.Plates {
		p := &j.Plates[i]
		at := slices.IndexFunc(d.Plates, func(q kit.Plate) bool { return q.Key() == p.Name })
		switch {
		case at < 0:
			return Fault(Invalid, "The weld file welds plate %q, which the kit does not have: call each plate by its mark, such as %q.", p.Name, d.Plates[0].Key()).At("revisions")
		case p.Steel != d.Plates[at].Steel || math.Abs(p.Thickness.Value-d.Plates[at].Thickness) > 1e-6:
			return Fault(Invalid, "Plate %s is %s of %s in the weld file, but not in the kit file.", p.Name, p.Thickness.Text, p.Steel).At("revisions")
		}
	}
	return nil
}

// DrawnRevision is a revision as its kit file says it, and the kit drawn; which
// cards of castings it fits is left open.
func DrawnRevision(drawing, weld string) (KitRevision, kit.Drawn, error) {
	r := KitRevision{Drawing: drawing, Weld: weld}
	d, err := r.Draw("")
	if err != nil {
		return r, d, err
	}
	r.Name, r.Day, r.Why = strconv.Itoa(d.Name.Revision), d.Date.Format(time.DateOnly), d.Reason.Why.Text
	r.Changed = strings.Join(d.Reason.Moved, "; ")
	for i := range d.Plates {
		r.Pieces = append(r.Pieces, d.Plates[i].Key())
	}
	return r, d, nil
}

// AddDrawing brings a drawn revision into the shop from its kit file, and how it
// is welded where weld is not empty. The kit's card is made where there is none.
// With an empty drawing only the weld file of a revision that is here is put in.
//
// What it refuses: files that cannot be used, a casting without a card, a
// revision that is here and differs.
func (s *Shop) AddDrawing(ctx context.Context, by Actor, drawing, weld string) (Kit, error) {
	r, d, err := DrawnRevision(drawing, weld)
	if err != nil {
		return Kit{}, err
	}
	castings, _, err := List[Casting](ctx, s, CardQuery{Limit: 1000})
	if err != nil {
		return Kit{}, err
	}
	for _, c := range castings {
		if c.Name == d.Casting || c.Catalogue == d.Casting {
			r.Fits = append(r.Fits, c.ID)
		}
	}
	if len(r.Fits) == 0 {
		return Kit{}, Fault(Invalid, "The kit is for casting %s, which has no card yet: make one first.", d.Casting).At("revisions")
	}
	k, err := s.kitNamed(ctx, d.Name.Family())
	if err != nil {
		return k, err
	}
	at := slices.IndexFunc(k.Revisions, func(old KitRevision) bool { return old.Name == r.Name })
	if at < 0 {
		k.Revisions = append(slices.Clone(k.Revisions), r)
		return Save(ctx, s, by, k)
	}
	k.Revisions = slices.Clone(k.Revisions)
	old := &k.Revisions[at]
	if !slices.ContainsFunc(r.Fits, func(id ID) bool { return slices.Contains(old.Fits, id) }) {
		return k, Fault(Invalid, "Revision %s of kit %s is kept here as one for other castings than %s: draw this one under another number.", r.Name, k.Name, d.Casting).At("revisions")
	}
	old.Drawing = drawing
	if weld != "" {
		old.Weld = weld
	}
	return Save(ctx, s, by, k)
}

// kitNamed is the kit's card, or a new one.
func (s *Shop) kitNamed(ctx context.Context, name string) (Kit, error) {
	all, _, err := List[Kit](ctx, s, CardQuery{Terms: FoldWords(name), Retired: true, Limit: 1000})
	for _, k := range all {
		if k.Name == name {
			return k, err
		}
	}
	return Kit{Name: name}, err
}

// A KitChoice is a kit's revision beside a job.
type KitChoice struct {
	Kit      Kit
	Revision KitRevision
	Fits     bool      // drawn for the job's variant
	Bench    bool      // its plates are in the job's record
	Lots     []LotView // cut and in stock
}

// rank is how near the choice is to being used.
func (c KitChoice) rank() int {
	rank := 0
	for i, yes := range []bool{c.Revision.Drawing != "", c.Revision.Weld != "", c.Bench} {
		if yes {
			rank |= 1 << i
		}
	}
	return rank
}

// KitsFor lists the revisions that fit the job's variant and are not closed, the
// newest of each kit first: the one whose plates the record names before all
// others, then those with a weld file, then those that are drawn.
func (s *Shop) KitsFor(ctx context.Context, j *Job) ([]KitChoice, error) {
	kits, _, err := List[Kit](ctx, s, CardQuery{Limit: 1000})
	if err != nil {
		return nil, err
	}
	lots, _, err := s.Lots(ctx, CardQuery{Group: string(LotKits), Limit: 1000})
	if err != nil {
		return nil, err
	}
	casting, bench := j.Casting(), j.Value("plates", "kit").Link
	var all []KitChoice
	for _, k := range kits {
		for i := len(k.Revisions) - 1; i >= 0; i-- {
			c := KitChoice{Kit: k, Revision: k.Revisions[i]}
			c.Fits = casting != nil && slices.Contains(c.Revision.Fits, casting.ID)
			for _, l := range lots {
				if l.Lot.Kit != k.ID || l.Lot.Revision != c.Revision.Name {
					continue
				}
				c.Bench = c.Bench || bench != nil && bench.ID == l.Lot.ID
				if l.Free > 0 {
					c.Lots = append(c.Lots, l)
				}
			}
			if c.Bench || c.Fits && !c.Revision.Closed {
				all = append(all, c)
			}
		}
	}
	slices.SortStableFunc(all, func(a, b KitChoice) int { return cmp.Compare(b.rank(), a.rank()) })
	return all, nil
}
