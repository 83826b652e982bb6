package shoptest

import (
	"context"
	"testing"
	"time"

	"axlewright/quantity"
	"axlewright/setup"
	"axlewright/shop"
)

// A Bench is the invented workshop Fellgate Axle Works on some store.
type Bench struct {
	T     testing.TB
	Ctx   context.Context
	Shop  *shop.Shop
	Store shop.Store
	Clock *Clock

	Owner, Builder, Adviser, Reader shop.Actor

	T24, T31           shop.Casting
	Kit                shop.Kit // of T24, revision 3
	Kits, Filler       shop.Lot
	CapBolts           shop.Lot
	WheelBolts, Resin  shop.Lot
	Head, Tail, Sides  shop.Lot
	Shims              []shop.Lot // 1.00, 1.05, 1.10 mm
	Donor, SecondDonor shop.Donor
	Customer           shop.Customer
	Vehicle            shop.Vehicle
}

// A Clock stands still until it is moved.
type Clock struct{ now time.Time }

// Now is the time on the clock; it moves on by a hundredth of a second each time it is read,
// so that no two entries have the same one.
func (c *Clock) Now() time.Time {
	clockMu.Lock()
	defer clockMu.Unlock()
	c.now = c.now.Add(10 * time.Millisecond)
	return c.now
}

// Move moves the clock on.
func (c *Clock) Move(d time.Duration) {
	clockMu.Lock()
	defer clockMu.Unlock()
	c.now = c.now.Add(d)
}

// Fellgate opens a shop on an empty store and fills it.
func Fellgate(t testing.TB, store shop.Store) *Bench {
	t.Helper()
	b := &Bench{T: t, Ctx: t.Context(), Store: store, Clock: &Clock{time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)}}
	var err error
	if b.Shop, err = shop.Open(b.Ctx, store, shop.Options{Now: b.Clock.Now}); err != nil {
		t.Fatal(err)
	}
	if b.Owner, err = b.Shop.Alone(b.Ctx); err != nil {
		t.Fatal(err)
	}
	b.Builder = b.person("Wren", shop.RoleBuilder)
	b.Adviser = b.person("Ash", shop.RoleAdviser)
	b.Reader = b.person("Rowan", shop.RoleReader)
	house, err := shop.Get[shop.House](b.Ctx, b.Shop, shop.HouseID)
	b.must(err)
	house.Name = "Fellgate Axle Works"
	save(b, house)

	b.T24 = save(b, shop.Casting{Name: "T24", Maker: "Tarnhow", AxleKind: setup.LightAdjusted, Metal: shop.MetalDuctile})
	b.T31 = save(b, shop.Casting{Name: "T31", Maker: "Tarnhow"})
	b.Kit = save(b, shop.Kit{Name: "KIT-T24-A", Revisions: []shop.KitRevision{
		{Name: "2", Fits: []shop.ID{b.T31.ID}}, {Name: "3", Fits: []shop.ID{b.T24.ID}, Changed: "rib clearance", Why: "curved rib"}}})
	b.Kits = save(b, shop.Lot{LotKind: shop.LotKits, Title: "KIT-T24-A.3", Batch: "L7", Quantity: 20, Unit: "pieces", Kit: b.Kit.ID, Revision: "3"})
	b.Filler = save(b, shop.Lot{LotKind: shop.LotFiller, Title: "nickel-iron rod", Batch: "N55", Quantity: 5, Unit: "kg"})
	b.CapBolts = save(b, shop.Lot{LotKind: shop.LotBolts, Title: "cap bolts M12 10.9", Batch: "4711", Quantity: 40, Unit: "pieces", Papers: "3.1, folder 2"})
	b.WheelBolts = save(b, shop.Lot{LotKind: shop.LotBolts, Title: "wheel bolts M10 12.9", Batch: "88A", Quantity: 100, Unit: "pieces"})
	b.Resin = save(b, shop.Lot{LotKind: shop.LotResin, Title: "metal-filled resin", Batch: "R9", Quantity: 2, Unit: "kg", Expires: "2026-02-28"})
	b.Head = save(b, shop.Lot{LotKind: shop.LotBearings, Title: "head bearing", Batch: "B1", Quantity: 6, Unit: "pieces", Size: "35 × 80 × 33"})
	b.Tail = save(b, shop.Lot{LotKind: shop.LotBearings, Title: "tail bearing", Batch: "B2", Quantity: 6, Unit: "pieces"})
	b.Sides = save(b, shop.Lot{LotKind: shop.LotBearings, Title: "side bearing", Batch: "B3", Quantity: 12, Unit: "pieces"})
	for _, mm := range []float64{1.10, 1.00, 1.05} {
		thick := mm * 1e-3
		b.Shims = append(b.Shims, save(b, shop.Lot{LotKind: shop.LotShims, Title: "T24 pinion shim", Batch: "S" + quantity.Format(thick, quantity.Length),
			Quantity: 10, Unit: "pieces", Thickness: &thick}))
	}
	b.Donor = save(b, shop.Donor{Number: "D-12", Class: "A", State: shop.DonorClean, Casting: b.T24.ID, Price: shop.MoneyOf(90)})
	b.SecondDonor = save(b, shop.Donor{Number: "D-13", Class: "B", State: shop.DonorDirty})
	b.Customer = save(b, shop.Customer{Name: "Bracken of Scar End", Phone: "01632 960117"})
	b.Vehicle = save(b, shop.Vehicle{Title: "hill-farm pick-up", Customer: b.Customer.ID, Registration: "FW 117"})
	return b
}

func (b *Bench) person(name string, role shop.Role) shop.Actor {
	b.T.Helper()
	p := save(b, shop.Person{Name: name, Role: role})
	return shop.Actor{ID: p.ID, Name: p.Name, Role: p.Role}
}

func (b *Bench) must(err error) {
	b.T.Helper()
	if err != nil {
		b.T.Fatal(err)
	}
}

func save[T any, P shop.Sheet[T]](b *Bench, sheet T) T {
	b.T.Helper()
	saved, err := shop.Save[T, P](b.Ctx, b.Shop, b.Owner, sheet)
	b.must(err)
	return saved
}

// Open opens a job for the customer's vehicle, rear, with these works.
func (b *Bench) Open(works ...shop.Work) *shop.Job {
	b.T.Helper()
	sets := []shop.Set{
		b.Set("enquiry", "customer", "", shop.LinkTo(shop.KindCustomer, b.Customer.ID)),
		b.Set("enquiry", "vehicle", "", shop.LinkTo(shop.KindVehicle, b.Vehicle.ID)),
		b.Set("enquiry", "end", "", shop.Words("rear")),
	}
	if len(works) > 0 {
		var words []string
		for _, w := range works {
			words = append(words, string(w))
		}
		sets = append(sets, b.Set("enquiry", "work", "", shop.Words(words...)))
	}
	j, err := b.Shop.OpenJob(b.Ctx, b.Owner, "", sets...)
	b.must(err)
	return j
}

// Set is a set of an empty place.
func (b *Bench) Set(step shop.StepKey, item, place string, v shop.Value) shop.Set {
	return shop.Set{Slot: shop.Slot{Step: step, Item: item, Place: place}, Value: v}
}

// Write records one value as the owner, on top of whatever stands there.
func (b *Bench) Write(job shop.ID, step shop.StepKey, item, place string, v shop.Value) *shop.Job {
	b.T.Helper()
	j, err := b.TryWrite(b.Owner, job, step, item, place, v)
	b.must(err)
	return j
}

// TryWrite is Write by anybody, with its error.
func (b *Bench) TryWrite(by shop.Actor, job shop.ID, step shop.StepKey, item, place string, v shop.Value) (*shop.Job, error) {
	b.T.Helper()
	j, err := b.Shop.Job(b.Ctx, job)
	b.must(err)
	set := b.Set(step, item, place, v)
	if last := j.Last(set.Slot); last != nil {
		set.Corrects, set.Why = last.Seq, "corrected"
	}
	return b.Shop.Record(b.Ctx, by, job, set)
}

// MM is a length as typed in millimetres.
func MM(typed string, mm float64) shop.Value {
	return shop.Figure(typed+" mm", mm*1e-3, quantity.Length)
}
