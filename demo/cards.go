package demo

import (
	"fmt"
	"strings"

	"axlewright/examples"
	"axlewright/quantity"
	"axlewright/setup"
	"axlewright/shop"
)

// idOf makes the ID of a card of its name: what stands beside letters and
// digits becomes a hyphen.
func idOf(name string) shop.ID {
	id := strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' {
			return r
		}
		return '-'
	}, strings.ToLower(name))
	return shop.ID(id[:min(len(id), 60)])
}

func named(name string) shop.Meta { return shop.Meta{ID: idOf(name)} }

// keep saves a card as the owner and remembers it under its name.
func keep[T any, P shop.Sheet[T]](f *filling, name string, sheet T) error {
	f.cards[name] = card{P(&sheet).Kind(), idOf(name)}
	_, err := shop.Save[T, P](f.ctx, f.shop, f.owner, sheet)
	return err
}

// house names the shop and its people and lays in its stock.
func (f *filling) house() (err error) {
	if f.owner, err = f.shop.Alone(f.ctx); err != nil {
		return err
	}
	house, err := shop.Get[shop.House](f.ctx, f.shop, shop.HouseID)
	if err != nil {
		return err
	}
	house.Name, house.Address, house.Phone = "Fellgate Axle Works", "The Old Creamery, Fellgate", "01632 960120"
	house.Terms = "Weld and setting-up: 12 months. Not covered: gears, shock, water, oil level, fitting. Run in as on the care sheet; bring it back whole, with its oil."
	if _, err := shop.Save(f.ctx, f.shop, f.owner, house); err != nil {
		return err
	}
	if _, err := shop.Save(f.ctx, f.shop, f.owner, shop.StartPrices()); err != nil {
		return err
	}
	for _, p := range []struct {
		name string
		role shop.Role
		as   *shop.Actor
	}{{"Wren", shop.RoleBuilder, &f.builder}, {"Ash", shop.RoleAdviser, &f.adviser}, {"Rowan", shop.RoleReader, new(shop.Actor)}} {
		if err := keep(f, p.name, shop.Person{Meta: named(p.name), Name: p.name, Role: p.role}); err != nil {
			return err
		}
		*p.as = shop.Actor{ID: idOf(p.name), Name: p.name, Role: p.role}
	}
	for _, lay := range []func() error{f.castings, f.donors, f.lots, f.customers} {
		if err := lay(); err != nil {
			return err
		}
	}
	return keep(f, "dial gauge 3", shop.Gauge{Meta: named("dial gauge 3"), Name: "dial gauge 3", Checked: f.day(-70), Against: "1.000 mm gauge block"})
}

func (f *filling) castings() error {
	for _, c := range []struct{ name, metal, how, marks string }{
		{"T20", "", "", "four straight ribs, 11 mm cap bolts"},
		{"T20K", shop.MetalDuctile, "tab test", "four curved ribs; a flat behind the crown wheel"},
		{"T24", shop.MetalDuctile, "laboratory, 3.5 % carbon and 0.04 % magnesium, folder 1 page 3", "six straight ribs"},
		{"T24S", shop.MetalDuctile, "tab test", "six straight ribs, service mould: earlier number, later shape"},
		{"T31", shop.MetalSteel, "laboratory, 0.23 % carbon, folder 1 page 8", "no ribs, machined pads"},
	} {
		if err := keep(f, c.name, shop.Casting{Meta: named(c.name), Name: c.name, Maker: "Tarnhow", Catalogue: c.name, AxleKind: setup.LightAdjusted, Metal: c.metal, MetalHow: c.how, Marks: c.marks}); err != nil {
			return err
		}
	}
	return f.kits()
}

// kits are drawn as the example files have them; the newest revision of two of them
// has its weld file too.
func (f *filling) kits() error {
	for _, k := range []struct {
		name, casting string
		revisions     int
		weld          string
	}{{"KIT-T24-A", "T24", 2, "weld/t24-side-plates.yaml"}, {"KIT-T20K-A", "T20K", 2, ""}, {"KIT-T24-B", "T24", 1, "weld/t24-cheeks.yaml"}} {
		sheet := shop.Kit{Meta: named(k.name), Name: k.name}
		for n := range k.revisions {
			drawing, err := examples.Files.ReadFile(fmt.Sprintf("kits/%s.%d.yaml", k.name, n+1))
			if err != nil {
				return err
			}
			var weld []byte
			if k.weld != "" && n+1 == k.revisions {
				if weld, err = examples.Files.ReadFile(k.weld); err != nil {
					return err
				}
			}
			r, _, err := shop.DrawnRevision(string(drawing), string(weld))
			if err != nil {
				return err
			}
			r.Fits, r.Closed = []shop.ID{idOf(k.casting)}, n+1 < k.revisions
			sheet.Revisions = append(sheet.Revisions, r)
		}
		if err := keep(f, k.name, sheet); err != nil {
			return err
		}
	}
	for _, s := range []shop.Steel{
		{Name: "S700MC 3 mm", Grade: "S700MC", Thickness: 3e-3, Long: 2.5, Wide: 1.25, Count: 3, Price: shop.MoneyOf(190), Batch: "B0417", Place: "rack 2"},
		{Name: "S355 8 mm", Grade: "S355", Thickness: 8e-3, Long: 2, Wide: 1, Count: 2, Price: shop.MoneyOf(230), Batch: "H2291", Place: "rack 3"},
		{Name: "S355 5 mm", Grade: "S355", Thickness: 5e-3, Long: 2, Wide: 1, Count: 1, Price: shop.MoneyOf(150), Batch: "H2290", Place: "rack 3"},
		{Name: "R-7", Grade: "S700MC", Thickness: 3e-3, Long: 0.62, Wide: 0.48, Count: 1, Remnant: true, Price: shop.MoneyOf(20), Batch: "B0398", Place: "rack 1"},
	} {
		s.Meta, s.Came = named("steel "+s.Name), f.day(-30)
		if err := keep(f, "steel "+s.Name, s); err != nil {
			return err
		}
	}
	return nil
}

func (f *filling) donors() error {
	for _, d := range []struct {
		number, casting, class string
		state                  shop.DonorState
		came                   int
		price                  float64
		teeth, place           string
	}{
		{"D-07", "T24", "A", shop.DonorSold, -160, 110, "46/13", ""},
		{"D-08", "T24", "B", shop.DonorSold, -150, 80, "46/13", ""},
		{"D-09", "T20K", "A", shop.DonorSold, -110, 120, "43/12", ""},
		{"D-10", "T24", "A", shop.DonorBuilt, -70, 110, "37/9", "bench 2"},
		{"D-11", "T24", "A", shop.DonorWelded, -40, 95, "46/13", "jig"},
		{"D-12", "T24S", "B", shop.DonorClean, -30, 60, "37/9", "shelf 1"},
		{"D-13", "T20", "C", shop.DonorClean, -28, 40, "47/11", "shelf 2"},
		{"D-14", "T24", "A", shop.DonorClean, -20, 105, "37/9", "shelf 1"},
		{"D-15", "T31", "A", shop.DonorDirty, -12, 180, "41/10", "yard"},
		{"D-16", "", "B", shop.DonorDirty, -6, 70, "", "yard"},
		{"D-17", "T24", "scrap", shop.DonorScrap, -45, 30, "46/13", ""},
		{"D-18", "T20K", "B", shop.DonorClean, -9, 85, "43/12", "shelf 2"},
	} {
		sheet := shop.Donor{Meta: named(d.number), Number: d.number, Class: d.class, State: d.state, Came: f.day(d.came), Price: shop.MoneyOf(d.price),
			Teeth: d.teeth, Place: d.place, Caps: "both, marked as the casting"}
		if d.casting != "" {
			sheet.Casting = idOf(d.casting)
		}
		if err := keep(f, d.number, sheet); err != nil {
			return err
		}
	}
	return nil
}

func (f *filling) lots() error {
	for _, l := range []shop.Lot{
		{LotKind: shop.LotBolts, Title: "cap bolts M12 × 80 10.9", Batch: "4711", Quantity: 60, Unit: "pieces", Reorder: 16, Papers: "inspection certificate, folder 2", Place: "drawer 4"},
		{LotKind: shop.LotBolts, Title: "crown wheel bolts M10 12.9", Batch: "88A", Quantity: 120, Unit: "pieces", Reorder: 30, Place: "drawer 5"},
		{LotKind: shop.LotFiller, Title: "nickel-iron rod 2.4 mm", Batch: "N55", Quantity: 5, Unit: "kg", Reorder: 1, Place: "rod oven"},
		{LotKind: shop.LotFiller, Title: "steel wire 1.0 mm", Batch: "W18", Quantity: 15, Unit: "kg", Reorder: 5},
		{LotKind: shop.LotResin, Title: "metal-filled resin", Batch: "R9", Quantity: 3, Unit: "kg", Expires: f.day(40)},
		{LotKind: shop.LotResin, Title: "metal-filled resin", Batch: "R7", Quantity: 1, Unit: "kg", Expires: f.day(-35)},
		{LotKind: shop.LotBearings, Title: "head bearing", Batch: "B1", Quantity: 8, Unit: "pieces", Size: "35 × 80 × 33", Reorder: 2},
		{LotKind: shop.LotBearings, Title: "tail bearing", Batch: "B2", Quantity: 8, Unit: "pieces", Size: "30 × 72 × 29", Reorder: 2},
		{LotKind: shop.LotBearings, Title: "side bearings", Batch: "B3", Quantity: 16, Unit: "pieces", Size: "45 × 85 × 21", Reorder: 4},
		{LotKind: shop.LotKits, Title: "KIT-T24-A.2", Batch: "L7", Quantity: 20, Unit: "pieces", Kit: idOf("KIT-T24-A"), Revision: "2"},
		{LotKind: shop.LotKits, Title: "KIT-T20K-A.2", Batch: "L9", Quantity: 10, Unit: "pieces", Kit: idOf("KIT-T20K-A"), Revision: "2"},
		{LotKind: shop.LotPads, Title: "bronze pads", Batch: "P3", Quantity: 12, Unit: "pieces", Reorder: 3},
		{LotKind: shop.LotSeals, Title: "pinion seals", Batch: "Q2", Quantity: 10, Unit: "pieces", Reorder: 2},
		{LotKind: shop.LotGears, Title: "gear set 37/9", Batch: "G5", Quantity: 2, Unit: "pieces"},
	} {
		name := l.Title + ", lot " + l.Batch
		l.Meta, l.Came = named(name), f.day(-180)
		if err := keep(f, name, l); err != nil {
			return err
		}
	}
	for _, mm := range []string{"1.000", "1.025", "1.050", "1.075", "1.100", "1.125", "1.150", "1.200", "1.250"} {
		q, err := quantity.Parse(mm+" mm", quantity.Length)
		if err != nil {
			return err
		}
		name := "pinion shim " + mm + " mm"
		if err := keep(f, name, shop.Lot{Meta: named(name), LotKind: shop.LotShims, Title: name, Quantity: 8, Unit: "pieces", Reorder: 2, Thickness: &q.SI, Place: "shim cabinet"}); err != nil {
			return err
		}
	}
	return nil
}

func (f *filling) customers() error {
	for _, c := range []struct{ name, phone, vehicle, registration, use string }{
		{"Bracken of Scar End", "01632 960117", "hill-farm pick-up", "FW 117", "farm, trailer of 2.5 t"},
		{"Nan O’Hara", "01632 960131", "forest tipper", "NO 31", "forest"},
		{"Sykeson & Daughter", "01632 960142", "recovery truck", "SD 42", "recovery, road"},
		{"Mountain rescue, Fellgate", "01632 960155", "rescue vehicle", "MR 4", "expedition, salted roads"},
		{"Ingrid Thwaite", "01632 960163", "overland camper", "IT 63", "overland"},
		{"Quarry at Black Nab", "01632 960178", "quarry water cart", "BN 8", "quarry"},
		{"Pia Lindqvist-Marr", "01632 960184", "competition car", "PL 84", "competition"},
		{"Tom Garth, restorer", "01632 960199", "1960s pick-up", "TG 60", "road, shows"},
	} {
		if err := keep(f, c.name, shop.Customer{Meta: named(c.name), Name: c.name, Phone: c.phone, Country: "as where the shop is"}); err != nil {
			return err
		}
		vehicle := shop.Vehicle{Meta: named(c.vehicle), Customer: idOf(c.name), Title: c.vehicle, Registration: c.registration, Use: c.use}
		if c.vehicle == "rescue vehicle" {
			vehicle.Enquiry = f.enquiry
		}
		if err := keep(f, c.vehicle, vehicle); err != nil {
			return err
		}
	}
	return nil
}
