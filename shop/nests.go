package shop

import (
	"context"
	"fmt"
	"math"
	"slices"
	"time"

	"axlewright/kit"
	"axlewright/kit/nest"
)

// PlanNest lays sets of kits out on the sheets and remnants in stock, remnants
// first. Nothing is taken from stock until CutNest. tries is how many orders are
// tried; the id names the nest's card.
func (s *Shop) PlanNest(ctx context.Context, by Actor, id ID, wanted []NestWanted, rates kit.Rates, tries int, progress nest.Progress) (Nest, error) {
	n := Nest{Meta: Meta{ID: id}, Day: s.now().UTC().Format(time.DateOnly), Wanted: slices.Clone(wanted), Rates: rates}
	if err := by.Must(ActStock); err != nil {
		return n, err
	}
	if tries < 1 || tries > 1000 {
		return n, Fault(Invalid, "Try 1 to 1000 orders.").At("tries")
	}
	drawn, sets, err := s.wantedKits(ctx, n.Wanted)
	if err != nil {
		return n, err
	}
	steels, _, err := List[Steel](ctx, s, CardQuery{Limit: 5000})
	if err != nil {
		return n, err
	}
	steels = slices.DeleteFunc(steels, func(c Steel) bool { return c.Count == 0 })
	var sheets []kit.InStock
	for i := range steels {
		sheets = append(sheets, steels[i].inStock())
	}
	job := kit.NewJob(drawn, sets, sheets, kit.JobRules{Tries: tries}, rates)
	cuttings, err := job.Run(ctx, progress)
	if err != nil {
		return n, Fault(Short, "It cannot be laid out: %v.", err).Because(err)
	}
	for i := range cuttings {
		c := &cuttings[i]
		one := NestCutting{Steel: c.Steel, Thickness: c.Thickness, Plan: c.Plan, InRows: c.Rows.Yield(), Least: c.Least, Cost: c.Cost}
		for _, k := range steels { // the plan has its stock in the same order
			if k.Grade == c.Steel && math.Abs(k.Thickness-c.Thickness) < 1e-6 {
				one.Stock = append(one.Stock, k.ID)
			}
		}
		if len(one.Stock) != len(c.Plan.Stock) {
			return n, Fault(Internal, "A sheet of the nest is none of the stock.")
		}
		n.Cuttings = append(n.Cuttings, one)
	}
	if n.Name, err = s.nextNest(ctx); err != nil {
		return n, err
	}
	return Save(ctx, s, by, n)
}

// nextNest is the next of N-0001, N-0002 ….
func (s *Shop) nextNest(ctx context.Context) (string, error) {
	count := int64(1)
	for q := (CardQuery{Kind: KindNest, Retired: true, Limit: 1000}); ; {
		var page CardPage
		err := s.store.View(ctx, func(tx Tx) (err error) {
			page, err = tx.FindCards(q)
			return err
		})
		if err != nil {
			return "", err
		}
		count += int64(len(page.Cards))
		if q.After = page.Next; q.After == nil {
			return "N-" + numberText(count), nil
		}
	}
}

// wantedKits draws what is wanted and fills in its labels.
func (s *Shop) wantedKits(ctx context.Context, wanted []NestWanted) (drawn []kit.Drawn, sets []int, err error) {
	if len(wanted) == 0 {
		return nil, nil, Fault(Invalid, "Say which kit, and how many sets.").At("wanted")
	}
	for i := range wanted {
		w := &wanted[i]
		if w.Sets < 1 || w.Sets > 1000 {
			return nil, nil, Fault(Invalid, "Cut 1 to 1000 sets of a kit.").At("sets")
		}
		d, err := s.wantedKit(ctx, w)
		if err != nil {
			return nil, nil, err
		}
		drawn, sets = append(drawn, d), append(sets, w.Sets)
	}
	return drawn, sets, nil
}

func (s *Shop) wantedKit(ctx context.Context, w *NestWanted) (kit.Drawn, error) {
	k, err := Get[Kit](ctx, s, w.Kit.ID)
	if err != nil {
		return kit.Drawn{}, err
	}
	w.Kit = Link{Kind: KindKit, ID: k.ID, Label: k.Name}
	r, ok := k.Revision(w.Revision)
	if !ok {
		return kit.Drawn{}, Fault(NotFound, "Kit %s has no revision %s.", k.Name, w.Revision)
	}
	return r.Draw(w.Batch)
}

// Drawn is the nest's cuttings as they are drawn: the kept plan, and the plates of
// its kits drawn anew.
func (s *Shop) Drawn(ctx context.Context, n *Nest) ([]kit.Cutting, error) {
	plates := map[string]kit.Plate{}
	for i := range n.Wanted {
		d, err := s.wantedKit(ctx, &n.Wanted[i])
		if err != nil {
			return nil, err
		}
		for _, p := range d.Plates {
			plates[p.File()] = p
		}
	}
	var all []kit.Cutting
	for i := range n.Cuttings {
		c := &n.Cuttings[i]
		one := kit.Cutting{Steel: c.Steel, Thickness: c.Thickness, Plan: c.Plan, Least: c.Least, Cost: c.Cost}
		for _, part := range c.Plan.Parts {
			p, ok := plates[part.Name]
			if !ok {
				return nil, Fault(Damaged, "The nest cuts %s, which its kits do not have.", part.Name)
			}
			one.Plates = append(one.Plates, p)
		}
		all = append(all, one)
	}
	return all, nil
}

// CutNest says that a nest was cut: its sheets and remnants leave the stock, what
// is left of them goes back as remnants, and the plates come in as lots of kits.
// All of it happens or nothing.
//
// What it refuses: pieces without room (Invalid), a nest that was cut already
// (Conflict), sheets that are gone by now (Short).
func (s *Shop) CutNest(ctx context.Context, by Actor, id ID) (Nest, error) {
	var n Nest
	if err := by.Must(ActStock); err != nil {
		return n, err
	}
	err := s.store.Update(ctx, func(tx Tx) error {
		var err error
		if n, err = getSheet[Nest](tx, id); err != nil {
			return err
		}
		if n.Cut != "" {
			return Fault(Conflict, "Nest %s was cut on %s.", n.Name, n.Cut)
		}
		for i := range n.Cuttings {
			if left := n.Cuttings[i].Left(); left > 0 {
				return Fault(Invalid, "%d pieces of %s have no room: get more of it in, and lay it out again.", left, n.Cuttings[i].Steel)
			}
		}
		c := cutting{s: s, tx: tx, by: by, nest: &n, day: s.now().UTC().Format(time.DateOnly)}
		for i := range n.Cuttings {
			if err := c.take(&n.Cuttings[i]); err != nil {
				return err
			}
		}
		if err := c.kits(); err != nil {
			return err
		}
		n.Cut = c.day
		return saveSheet(tx, s.now(), by.By(), &n)
	})
	if err != nil {
		return Nest{}, err
	}
	return Get[Nest](ctx, s, id)
}

// A cutting is a nest that is being taken from stock.
type cutting struct {
	s    *Shop
	tx   Tx
	by   Actor
	nest *Nest
	day  string
}

// take takes the sheets of one cutting and puts what is left of them back.
func (c *cutting) take(one *NestCutting) error {
	used := map[ID]int{}
	for _, sheet := range one.Plan.Sheets {
		used[one.Stock[sheet.Stock]]++
	}
	for _, id := range one.Stock {
		if used[id] == 0 {
			continue
		}
		steel, err := getSheet[Steel](c.tx, id)
		if err != nil {
			return err
		}
		if steel.Count < used[id] || steel.Retired {
			return Fault(Short, "Of %s %d are left, and the nest cuts %d: lay it out again.", steel.Name, steel.Count, used[id])
		}
		steel.Count -= used[id]
		steel.Retired = steel.Count == 0
		if err := saveSheet(c.tx, c.s.now(), c.by.By(), &steel); err != nil {
			return err
		}
	}
	for i := range one.Plan.Sheets {
		sheet := &one.Plan.Sheets[i]
		if len(sheet.Offcuts) == 0 {
			continue
		}
		from, err := getSheet[Steel](c.tx, one.Stock[sheet.Stock])
		if err != nil {
			return err
		}
		whole := from.outline().Area()
		for _, o := range sheet.Offcuts {
			rest := Steel{Meta: Meta{ID: NewID()}, Name: fmt.Sprintf("R-%s-%d", c.nest.Name[2:], len(c.nest.Remnants)+1), Grade: from.Grade, Thickness: from.Thickness,
				Long: o.Width(), Wide: o.Height(), Remnant: true, Count: 1, Price: MoneyOf(from.Price.Units() * o.Width() * o.Height() / whole),
				Batch: from.Batch, Came: c.day, Place: from.Place, From: c.nest.Name}
			if err := saveSheet(c.tx, c.s.now(), c.by.By(), &rest); err != nil {
				return err
			}
			c.nest.Remnants = append(c.nest.Remnants, rest.ID)
		}
	}
	return nil
}

// kits puts the plates into stock as lots that can be traced. What a set costs is
// the nest's price by the sets' share; of several kits it is not told apart.
func (c *cutting) kits() error {
	total, sets := 0.0, 0
	for i := range c.nest.Cuttings {
		total += c.nest.Cuttings[i].Cost.Total
	}
	for _, w := range c.nest.Wanted {
		sets += w.Sets
	}
	for i := range c.nest.Wanted {
		w := &c.nest.Wanted[i]
		lot := Lot{Meta: Meta{ID: NewID()}, LotKind: LotKits, Title: w.Name(), Batch: w.Batch, Came: c.day, Quantity: float64(w.Sets), Unit: "kits",
			Kit: w.Kit.ID, Revision: w.Revision, Note: "cut by nest " + c.nest.Name}
		if lot.Batch == "" {
			lot.Batch = c.nest.Name
		}
		if len(c.nest.Wanted) == 1 {
			lot.Cost = MoneyOf(total / float64(sets))
		}
		if err := saveSheet(c.tx, c.s.now(), c.by.By(), &lot); err != nil {
			return err
		}
		c.nest.Lots = append(c.nest.Lots, lot.ID)
	}
	return nil
}
