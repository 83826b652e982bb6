package shoptest

import (
	"fmt"
	"slices"
	"sync"
	"testing"

	"axlewright/shop"
)

func testCards(t *testing.T, open Opener) {
	b := Fellgate(t, open(t))
	c := b.Customer
	equal(t, "first revision", c.Revision, 1)
	mine, theirs := c, c
	mine.Phone = "01632 960118"
	theirs.Phone = "01632 960119"
	saved, err := shop.Save(b.Ctx, b.Shop, b.Adviser, mine)
	b.must(err)
	equal(t, "second revision", saved.Revision, 2)
	equal(t, "by", saved.Who.Name, b.Adviser.Name)

	_, err = shop.Save(b.Ctx, b.Shop, b.Owner, theirs)
	e := wantCode(t, err, shop.Conflict)
	if e.Clash == nil || e.Clash.StandsCard == nil || e.Clash.RefusedCard == nil {
		t.Fatalf("the conflict carries %+v", e.Clash)
	}
	equal(t, "what stands", e.Clash.StandsCard.Revision, 2)

	// Sending the same again is no conflict and no new revision.
	again, err := shop.Save(b.Ctx, b.Shop, b.Adviser, mine)
	b.must(err)
	equal(t, "the same again", again.Revision, 2)

	history, err := shop.History[shop.Customer](b.Ctx, b.Shop, c.ID)
	b.must(err)
	if len(history) != 2 || history[0].Phone != c.Phone || history[1].Phone != mine.Phone {
		t.Errorf("history %+v", history)
	}
	_, err = shop.Get[shop.Customer](b.Ctx, b.Shop, shop.NewID())
	wantCode(t, err, shop.NotFound)
	_, err = shop.Get[shop.Customer](b.Ctx, b.Shop, b.Vehicle.ID) // another kind
	wantCode(t, err, shop.NotFound)
	_, err = shop.History[shop.Customer](b.Ctx, b.Shop, shop.NewID())
	wantCode(t, err, shop.NotFound)

	// Lists: in the order of their names whatever their case, in pages, by group,
	// by state, without those put away.
	for _, name := range []string{"ash", "Birch", "álamo", "Zelkova", "birch the second"} {
		save(b, shop.Customer{Name: name})
	}
	var names []string
	q := shop.CardQuery{Limit: 2}
	for pages := 0; pages < 10; pages++ {
		list, next, err := shop.List[shop.Customer](b.Ctx, b.Shop, q)
		b.must(err)
		for _, x := range list {
			names = append(names, x.Name)
		}
		if q.After = next; next == nil {
			break
		}
	}
	if want := []string{"álamo", "ash", "Birch", "birch the second", "Bracken of Scar End", "Zelkova"}; !slices.Equal(names, want) {
		t.Errorf("names %q, want %q", names, want)
	}
	list, _, err := shop.List[shop.Vehicle](b.Ctx, b.Shop, shop.CardQuery{Group: string(c.ID)})
	b.must(err)
	equal(t, "vehicles of the customer", len(list), 1)
	list, _, err = shop.List[shop.Vehicle](b.Ctx, b.Shop, shop.CardQuery{Terms: shop.FoldWords("fw 117")})
	b.must(err)
	equal(t, "vehicles by registration", len(list), 1)
	donors, _, err := shop.List[shop.Donor](b.Ctx, b.Shop, shop.CardQuery{States: []string{string(shop.DonorClean)}, Group: string(b.T24.ID)})
	b.must(err)
	if len(donors) != 1 || donors[0].Number != "D-12" {
		t.Errorf("clean donors of T24: %+v", donors)
	}
	saved.Retired = true
	_, err = shop.Save(b.Ctx, b.Shop, b.Adviser, saved)
	b.must(err)
	found, _, err := shop.List[shop.Customer](b.Ctx, b.Shop, shop.CardQuery{Terms: []string{"bracken"}})
	b.must(err)
	equal(t, "put away", len(found), 0)
	found, _, err = shop.List[shop.Customer](b.Ctx, b.Shop, shop.CardQuery{Terms: []string{"bracken"}, Retired: true})
	b.must(err)
	if len(found) != 1 || !found[0].Retired {
		t.Errorf("with those put away: %+v", found)
	}

	// Many change one card at once: one at a time wins.
	gauge := save(b, shop.Gauge{Name: "dial gauge 1"})
	var mu sync.Mutex
	won := 0
	var wg sync.WaitGroup
	for i := range 10 {
		wg.Go(func() {
			g := gauge
			g.Note = fmt.Sprint("tablet ", i)
			_, err := shop.Save(b.Ctx, b.Shop, b.Builder, g)
			switch shop.CodeOf(err) {
			case "":
				mu.Lock()
				won++
				mu.Unlock()
			case shop.Conflict:
			default:
				t.Error(err)
			}
		})
	}
	wg.Wait()
	equal(t, "tablets that won", won, 1)
}

func testLots(t *testing.T, open Opener) {
	b := Fellgate(t, open(t))
	var jobs []*shop.Job
	for i := range 3 {
		j := b.Open()
		b.Write(j.ID, "caps", "bolts", "1", shop.Used(b.CapBolts.ID, float64(4+i)))
		jobs = append(jobs, j)
	}
	b.Write(jobs[0].ID, "assemble", "wheel_bolts", "", shop.Used(b.WheelBolts.ID, 10))

	// Which units have this bolt lot?
	used, more, err := b.Shop.UsedIn(b.Ctx, shop.KindLot, b.CapBolts.ID, 100)
	b.must(err)
	if len(used) != 3 || more {
		t.Fatalf("used in %+v", used)
	}
	newest, more, err := b.Shop.UsedIn(b.Ctx, shop.KindLot, b.CapBolts.ID, 2)
	b.must(err)
	if len(newest) != 2 || !more || newest[0].Use != used[1].Use || newest[1].Use != used[2].Use {
		t.Errorf("the newest two of three, more %v: %+v", more, newest)
	}
	for i, u := range used {
		if u.Use.Job != jobs[i].ID || u.Use.Quantity != float64(4+i) || u.Use.Slot != "caps/bolts/1" || u.Line.Number != jobs[i].Number {
			t.Errorf("use %d: %+v", i, u)
		}
	}
	// And back: which lots has this unit?
	j, err := b.Shop.Job(b.Ctx, jobs[0].ID)
	b.must(err)
	parts := j.Parts()
	if len(parts) != 2 || parts[0].Lot.ID != b.CapBolts.ID || parts[0].Lot.Label != "cap bolts M12 10.9, lot 4711" || parts[1].Quantity != 10 {
		t.Errorf("parts %+v", parts)
	}
	left := func(id shop.ID) shop.LotView {
		t.Helper()
		v, err := b.Shop.Lot(b.Ctx, id)
		b.must(err)
		return v
	}
	equal(t, "cap bolts free", left(b.CapBolts.ID).Free, 40-15)
	// A correction counts once; a withdrawal gives back.
	b.Write(jobs[2].ID, "caps", "bolts", "1", shop.Used(b.CapBolts.ID, 4))
	equal(t, "cap bolts free after a correction", left(b.CapBolts.ID).Free, 40-13)
	b.Write(jobs[1].ID, "caps", "bolts", "1", shop.Withdrawn())
	equal(t, "cap bolts free after a withdrawal", left(b.CapBolts.ID).Free, 40-8)
	used, _, err = b.Shop.UsedIn(b.Ctx, shop.KindLot, b.CapBolts.ID, 100)
	b.must(err)
	equal(t, "units with the lot", len(used), 2)

	// Two advisers set aside the last ones at once: one gets them.
	var mu sync.Mutex
	got, short := 0, 0
	var wg sync.WaitGroup
	for i := range 2 {
		wg.Go(func() {
			_, err := b.Shop.Record(b.Ctx, b.Adviser, jobs[i].ID, b.Set("deal", "parts", "1", shop.SetAside(b.Head.ID, 4)))
			mu.Lock()
			defer mu.Unlock()
			switch shop.CodeOf(err) {
			case "":
				got++
			case shop.Short:
				short++
			default:
				t.Error(err)
			}
		})
	}
	wg.Wait()
	if got != 1 || short != 1 {
		t.Errorf("%d got them, %d were told", got, short)
	}
	head := left(b.Head.ID)
	if head.Reserved != 4 || head.Used != 0 || head.Free != 2 {
		t.Errorf("head bearings %+v", head)
	}
	// Using more than there was is written: it has happened.
	b.Write(jobs[0].ID, "assemble", "tail_bearing", "", shop.Used(b.Tail.ID, 7))
	equal(t, "tail bearings free", left(b.Tail.ID).Free, -1)
	// Fractions add up.
	for i := range 3 {
		j := b.Open(shop.WorkPlates)
		b.Write(j.ID, "metal", "metal", "", shop.Words(shop.MetalSteel))
		b.Write(j.ID, "weld", "filler", "", shop.Used(b.Filler.ID, 0.1*float64(i+1)))
	}
	if free := left(b.Filler.ID).Free; free < 4.4-1e-9 || free > 4.4+1e-9 {
		t.Errorf("filler free %v", free)
	}
	lots, _, err := b.Shop.Lots(b.Ctx, shop.CardQuery{Group: string(shop.LotBolts)})
	b.must(err)
	if len(lots) != 2 || lots[0].Lot.Title != "cap bolts M12 10.9" || lots[0].Free != 32 || lots[1].Free != 90 {
		t.Errorf("bolts %+v", lots)
	}
	shims, err := b.Shop.Shims(b.Ctx, "T24")
	b.must(err)
	if len(shims) != 3 || shims[0].Thickness != 0.001 || shims[2].Thickness != 0.0011 {
		t.Errorf("shims thinnest first: %+v", shims)
	}
}
