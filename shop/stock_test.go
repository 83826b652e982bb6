package shop_test

import (
	"testing"

	"axlewright/shop"
)

// What is set aside for a job and then used by it is counted once; the deposit
// on a core goes from "core owed" to "deposit to give back" to nothing.
func TestSetAsideThenUsedAndDeposits(t *testing.T) {
	b := bench(t)
	j, other := b.Open(), b.Open()
	free := func(used, reserved, want float64) {
		t.Helper()
		v, err := b.Shop.Lot(b.Ctx, b.CapBolts.ID)
		if err != nil || v.Used != used || v.Reserved != reserved || v.Free != want {
			t.Errorf("used %g, set aside %g, free %g (want %g, %g, %g): %v", v.Used, v.Reserved, v.Free, used, reserved, want, err)
		}
	}
	b.Write(j.ID, "deal", "parts", "1", shop.SetAside(b.CapBolts.ID, 40)) // all there are
	free(0, 40, 0)
	now := b.Write(j.ID, "caps", "bolts", "1", shop.Used(b.CapBolts.ID, 32))
	free(32, 8, 0)
	if e := now.Standing(shop.Slot{Step: "caps", Item: "bolts", Place: "1"}); e.Verdict != shop.Fine {
		t.Errorf("bolts set aside for it are %q: %s", e.Verdict, e.Value.Text)
	}
	// Another job has none of them left.
	now = b.Write(other.ID, "caps", "bolts", "1", shop.Used(b.CapBolts.ID, 2))
	if e := now.Standing(shop.Slot{Step: "caps", Item: "bolts", Place: "1"}); e.Verdict != shop.Look {
		t.Errorf("bolts set aside for another job are %q", e.Verdict)
	}
	b.Write(j.ID, "caps", "bolts", "2", shop.Used(b.CapBolts.ID, 8))
	free(42, 0, -2)

	marked := func(m shop.Mark) bool {
		t.Helper()
		page, err := b.Shop.FindJobs(b.Ctx, shop.JobQuery{Mark: m})
		if err != nil {
			t.Fatal(err)
		}
		return len(page.Lines) == 1 && page.Lines[0].Job == j.ID
	}
	b.Write(j.ID, "deal", "deposit", "", shop.Sum(shop.MoneyOf(150)))
	if !marked(shop.MarkCoreOwed) || marked(shop.MarkDeposit) || marked(shop.MarkReserved) {
		t.Error("with a deposit held the core is not owed, or parts used up are still set aside")
	}
	b.Write(j.ID, "deal", "core_back", "", shop.Day("2026-03-20"))
	if marked(shop.MarkCoreOwed) || !marked(shop.MarkDeposit) {
		t.Error("with the core back the deposit is not to be given back")
	}
	b.Write(j.ID, "deal", "deposit_returned", "", shop.Sum(shop.MoneyOf(150)))
	if marked(shop.MarkDeposit) {
		t.Error("the deposit is given back twice")
	}
}
