package shoptest

import (
	"fmt"
	"math/rand/v2"
	"time"

	"axlewright/shop"
)

// Large fills the workshop with so many jobs of 12 entries, as a record and an
// index would have them, and one job of 400, stamped LONGEST, which it returns.
func Large(b *Bench, jobs int) shop.ID {
	b.T.Helper()
	long := b.Open()
	for i := range 400 {
		b.Write(long.ID, "stations", "gap", fmt.Sprint("piece ", i), MM("0.5", 0.5))
	}
	b.Write(long.ID, "stamp", "number", "", shop.Text("LONGEST"))
	random := rand.New(rand.NewPCG(1, 2))
	names := []string{"bracken", "heather", "sorrel", "gorse", "rowan", "alder", "hazel", "larch"}
	castings := []string{"t20", "t20k", "t24", "t24s", "t31"}
	at := time.Date(2001, 1, 1, 8, 0, 0, 0, time.UTC)
	for from := 0; from < jobs; from += 1000 {
		err := b.Store.Update(b.Ctx, func(tx shop.Tx) error {
			for i := from; i < min(from+1000, jobs); i++ {
				id := shop.NewID()
				if err := tx.AddJob(id); err != nil {
					return err
				}
				var entries []shop.Sealed
				head := shop.Head{}
				for k := range 12 {
					e := shop.Entry{Job: id, At: at, Who: b.Owner.By(), Kind: shop.EntrySet, Step: "lash", Item: "lash", Place: fmt.Sprint(k), Value: MM("0.15", 0.15)}
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
				holds := 0.95
				line := shop.Line{Job: id, Origin: b.Shop.ID(), Works: shop.Works[:i%4], Number: int64(i + 2), Stamped: stamped, State: shop.States[random.IntN(len(shop.States))],
					Title: name + " of number " + fmt.Sprint(i), Casting: casting, Opened: at, Changed: at}
				if line.State == shop.StateOut || line.State == shop.StateBack {
					line.Outcome = &shop.Outcome{Out: at.Format(time.DateOnly), Holds: &holds}
					if i%20 == 0 {
						line.Outcome.Back, line.Outcome.Seen = at.AddDate(1, 0, i%1000).Format(time.DateOnly), []string{shop.Failures[i%7].Seen}
					}
				}
				x := shop.Index{Line: line, Numbers: []string{shop.FoldNumber(stamped), fmt.Sprint(i + 2)}, Terms: shop.FoldWords(line.Title + " " + casting + " " + stamped),
					Uses: []shop.Use{{Job: id, Kind: shop.KindLot, Card: b.CapBolts.ID, Slot: "caps/bolts/1", Quantity: 4}, {Job: id, Kind: shop.KindCustomer, Card: b.Customer.ID, Slot: "enquiry/customer"}}}
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
		b.must(err)
	}
	return long.ID
}
