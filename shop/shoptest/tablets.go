package shoptest

import (
	"context"
	"errors"
	"fmt"
	"sync"
	"testing"

	"axlewright/shop"
)

func contextOf(t *testing.T) (context.Context, context.CancelFunc) {
	return context.WithCancel(t.Context())
}

// testConflict is two tablets on one job.
func testConflict(t *testing.T, open Opener) {
	b := Fellgate(t, open(t))
	j := b.Open()
	slot := shop.Slot{Step: "lash", Item: "lash", Place: "1"}
	first := shop.Set{Slot: slot, Value: MM("0.15", 0.15), Ticket: "tablet-a-1"}
	second := shop.Set{Slot: slot, Value: MM("0.16", 0.16), Ticket: "tablet-b-1"}

	j, err := b.Shop.Record(b.Ctx, b.Builder, j.ID, first)
	b.must(err)
	one := j.Standing(slot)
	_, err = b.Shop.Record(b.Ctx, b.Owner, j.ID, second)
	e := wantCode(t, err, shop.Conflict)
	if e.Clash == nil || e.Clash.Stands == nil || e.Clash.Refused == nil {
		t.Fatalf("the conflict carries %+v", e.Clash)
	}
	equal(t, "what stands", e.Clash.Stands.Value.Typed, "0.15 mm")
	equal(t, "who wrote it", e.Clash.Stands.Who.Name, b.Builder.Name)
	equal(t, "what was refused", e.Clash.Refused.Value.Typed, "0.16 mm")
	equal(t, "field", e.Field, "lash/lash/1")

	// Having seen it, the second tablet corrects it by name.
	second.Corrects, second.Why = one.Seq, "read again"
	j, err = b.Shop.Record(b.Ctx, b.Owner, j.ID, second)
	b.must(err)
	history := j.History(slot)
	if len(history) != 2 || history[0].Value.Typed != "0.15 mm" || history[1].Value.Typed != "0.16 mm" || history[1].Corrects != one.Seq {
		t.Errorf("history %+v", history)
	}

	// The same ticket again is answered as the first time, and writes nothing.
	again, err := b.Shop.Record(b.Ctx, b.Builder, j.ID, first)
	b.must(err)
	equal(t, "entries after the same ticket", len(again.Entries()), len(j.Entries()))
	// The same ticket for something else is refused.
	other := first
	other.Value = MM("0.99", 0.99)
	_, err = b.Shop.Record(b.Ctx, b.Builder, j.ID, other)
	wantCode(t, err, shop.Conflict)
	// All or none: the good one of two is not written either.
	_, err = b.Shop.Record(b.Ctx, b.Owner, j.ID, b.Set("lash", "lash", "2", MM("0.17", 0.17)), b.Set("lash", "lash", "1", MM("0.18", 0.18)))
	wantCode(t, err, shop.Conflict)
	j, err = b.Shop.Job(b.Ctx, j.ID)
	b.must(err)
	if j.Standing(shop.Slot{Step: "lash", Item: "lash", Place: "2"}) != nil {
		t.Error("half of what was refused was written")
	}
}

// testManyAtOnce is twenty tablets on three jobs: places of their own, and one
// place that all of them want.
func testManyAtOnce(t *testing.T, open Opener) {
	b := Fellgate(t, open(t))
	jobs := []*shop.Job{b.Open(), b.Open(), b.Open()}
	const tablets, rounds = 20, 6
	var mu sync.Mutex
	acknowledged := map[string]shop.ID{} // ticket
	won := map[shop.ID]int{}
	var wg sync.WaitGroup
	for tablet := range tablets {
		wg.Go(func() {
			for round := range rounds {
				j := jobs[(tablet+round)%len(jobs)].ID
				ticket := fmt.Sprintf("%d-%d", tablet, round)
				place := fmt.Sprintf("piece %d-%d", tablet, round)
				_, err := b.Shop.Record(b.Ctx, b.Builder, j, shop.Set{Slot: shop.Slot{Step: "stations", Item: "gap", Place: place}, Value: MM("0.5", 0.5), Ticket: ticket})
				if err != nil {
					t.Errorf("%s: %v", ticket, err)
					continue
				}
				mu.Lock()
				acknowledged[ticket] = j
				mu.Unlock()
				if _, err := b.Shop.Job(b.Ctx, j); err != nil {
					t.Error(err)
				}
			}
			for _, j := range jobs {
				_, err := b.Shop.Record(b.Ctx, b.Builder, j.ID, b.Set("stamp", "number", "", shop.Text(fmt.Sprintf("N%d", tablet))))
				var e *shop.Error
				switch {
				case err == nil:
					mu.Lock()
					won[j.ID]++
					mu.Unlock()
				case !errors.As(err, &e) || e.Code != shop.Conflict || e.Clash == nil:
					t.Errorf("tablet %d: %v", tablet, err)
				}
			}
		})
	}
	wg.Wait()
	tickets := map[string]shop.ID{}
	for _, j := range jobs {
		equal(t, "tablets that won the number", won[j.ID], 1)
		job, err := b.Shop.Job(b.Ctx, j.ID)
		b.must(err)
		for _, e := range job.Entries() {
			if e.Ticket != "" {
				tickets[e.Ticket] = j.ID
			}
		}
		if found, err := b.Shop.VerifyJob(b.Ctx, j.ID); err != nil || len(found) > 0 {
			t.Errorf("chain: %v %v", found, err)
		}
	}
	for ticket, j := range acknowledged {
		if tickets[ticket] != j {
			t.Errorf("reading %s was acknowledged and is lost", ticket)
		}
	}
	equal(t, "readings", len(tickets), tablets*rounds)
}
