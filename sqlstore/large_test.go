package sqlstore_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"sync"
	"testing"
	"time"

	"axlewright/shop"
	"axlewright/shop/shoptest"
	"axlewright/sqlstore"
)

// A large shop is made once for all benchmarks of a run: 50,000 jobs of 12
// entries, as an index and a record would have them, and one job of 400.
var large = struct {
	sync.Once
	dir string
	err error
}{}

const largeJobs = 50_000

func largeShop(b *testing.B) (*shoptest.Bench, shop.ID) {
	b.Helper()
	large.Do(func() {
		if large.dir, large.err = os.MkdirTemp("", "axlewright-large-*"); large.err == nil {
			large.err = fillLarge(b, large.dir)
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

func fillLarge(b *testing.B, dir string) error {
	s, err := sqlstore.Open(b.Context(), sqlstore.Options{Dir: dir})
	if err != nil {
		return err
	}
	defer s.Close()
	f := shoptest.Fellgate(b, s)
	j := f.Open()
	for i := range 400 {
		f.Write(j.ID, "stations", "gap", fmt.Sprint("piece ", i), shoptest.MM("0.5", 0.5))
	}
	f.Write(j.ID, "stamp", "number", "", shop.Text("LONGEST"))
	random := rand.New(rand.NewPCG(1, 2))
	names := []string{"bracken", "heather", "sorrel", "gorse", "rowan", "alder", "hazel", "larch"}
	castings := []string{"t20", "t20k", "t24", "t24s", "t31"}
	at := time.Date(2001, 1, 1, 8, 0, 0, 0, time.UTC)
	for from := 0; from < largeJobs; from += 1000 {
		err := s.Update(b.Context(), func(tx shop.Tx) error {
			for i := from; i < from+1000; i++ {
				id := shop.NewID()
				if err := tx.AddJob(id); err != nil {
					return err
				}
				var entries []shop.Sealed
				head := shop.Head{}
				for k := range 12 {
					e := shop.Entry{Job: id, At: at, Who: f.Owner.By(), Kind: shop.EntrySet, Step: "lash", Item: "lash", Place: fmt.Sprint(k), Value: shoptest.MM("0.15", 0.15e-3)}
					_, one, err := shop.Seal(e, head)
					if err != nil {
						return err
					}
					entries, head = append(entries, one), shop.Head{Seq: one.Seq, Hash: one.Hash}
				}
				if err := tx.Append(id, shop.Head{}, entries); err != nil {
					return err
				}
				at = at.Add(3 * time.Hour)
				name, casting := names[random.IntN(len(names))], castings[random.IntN(len(castings))]
				stamped := fmt.Sprintf("%s%05d", casting, i)
				line := shop.Line{Job: id, Number: int64(i + 2), Stamped: stamped, State: shop.States[random.IntN(len(shop.States))],
					Title: name + " of number " + fmt.Sprint(i), Casting: casting, Opened: at, Changed: at}
				x := shop.Index{Line: line, Numbers: []string{shop.FoldNumber(stamped), fmt.Sprint(i + 2)}, Terms: shop.FoldWords(line.Title + " " + casting + " " + stamped),
					Uses: []shop.Use{{Job: id, Kind: shop.KindLot, Card: f.CapBolts.ID, Slot: "caps/bolts/1", Quantity: 4}, {Job: id, Kind: shop.KindCustomer, Card: f.Customer.ID, Slot: "enquiry/customer"}}}
				if i%100 != 0 {
					x.Uses = x.Uses[1:]
				}
				if i%50 == 0 {
					line.Marks = []shop.Mark{shop.MarkCoreOwed}
					x.Line = line
				}
				if err := tx.PutIndex(id, x); err != nil {
					return err
				}
			}
			return nil
		})
		if err != nil {
			return err
		}
	}
	return nil
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
			_, err = f.Shop.UsedIn(ctx, shop.KindLot, lots[0].Lot.ID)
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
