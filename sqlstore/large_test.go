package sqlstore_test

import (
	"fmt"
	"os"
	"sync"
	"testing"

	"axlewright/shop"
	"axlewright/shop/shoptest"
	"axlewright/sqlstore"
)

// A large shop is made once for all benchmarks of a run.
var large = struct {
	sync.Once
	dir string
	err error
}{}

const largeJobs = 50_000

func largeShop(b *testing.B) (*shoptest.Bench, shop.ID) {
	b.Helper()
	large.Do(func() {
		if large.dir, large.err = os.MkdirTemp("", "axlewright-large-*"); large.err != nil {
			return
		}
		s, err := sqlstore.Open(b.Context(), sqlstore.Options{Dir: large.dir})
		if large.err = err; err == nil {
			shoptest.Large(shoptest.Fellgate(b, s), largeJobs)
			large.err = s.Close()
		}
	})
	if large.err != nil {
		b.Fatal(large.err)
	}
	s := open(b, sqlstore.Options{Dir: large.dir})
	bench := &shoptest.Bench{T: b, Ctx: b.Context(), Store: s}
	var err error
	if bench.Shop, err = shop.Open(bench.Ctx, s, shop.Options{}); err != nil {
		b.Fatal(err)
	}
	bench.Owner = shop.Program
	lines, err := bench.Shop.Search(bench.Ctx, "LONGEST", 1)
	if err != nil || len(lines) != 1 {
		b.Fatal(lines, err)
	}
	return bench, lines[0].Job
}

// BenchmarkLarge is what the pages of the bench ask of a shop of 50,000 jobs.
// Each of them should stay below 100 ms.
func BenchmarkLarge(b *testing.B) {
	f, long := largeShop(b)
	ctx := f.Ctx
	for name, ask := range map[string]func() error{
		"today": func() error {
			_, err := f.Shop.FindJobs(ctx, shop.JobQuery{States: []shop.State{shop.StateBench, shop.StateWaiting}})
			return err
		},
		"list":      func() error { _, err := f.Shop.FindJobs(ctx, shop.JobQuery{}); return err },
		"counts":    func() error { _, err := f.Shop.CountJobs(ctx); return err },
		"core owed": func() error { _, err := f.Shop.FindJobs(ctx, shop.JobQuery{Mark: shop.MarkCoreOwed}); return err },
		"number exactly": func() error {
			_, err := f.Shop.FindJobs(ctx, shop.JobQuery{Number: "T2431415", Exact: true})
			return err
		},
		"number":             func() error { _, err := f.Shop.Search(ctx, "t24-31415", 0); return err },
		"number, two digits": func() error { _, err := f.Shop.Search(ctx, "31", 0); return err },
		"words":              func() error { _, err := f.Shop.Search(ctx, "brack 31415", 0); return err },
		"common word":        func() error { _, err := f.Shop.Search(ctx, "heather", 0); return err },
		"no such word":       func() error { _, err := f.Shop.Search(ctx, "zebra", 0); return err },
		"a customer's": func() error {
			_, err := f.Shop.FindJobs(ctx, shop.JobQuery{Kind: shop.KindCustomer, Card: "none"})
			return err
		},
		"lot used in 500": func() error {
			lots, _, err := f.Shop.Lots(ctx, shop.CardQuery{Group: string(shop.LotBolts)})
			if err != nil {
				return err
			}
			_, _, err = f.Shop.UsedIn(ctx, shop.KindLot, lots[0].Lot.ID, 2000)
			return err
		},
		"job of 400 entries": func() error {
			j, err := f.Shop.Job(ctx, long)
			if err == nil {
				j.Steps()
			}
			return err
		},
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if err := ask(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	i := 0
	b.Run("save into 400 entries", func(b *testing.B) {
		for b.Loop() {
			i++
			v := shoptest.MM(fmt.Sprint(i%90+10), float64(i%90+10))
			if _, err := f.TryWrite(f.Owner, long, "lash", "lash", "1", v); err != nil {
				b.Fatal(err)
			}
		}
	})
}
