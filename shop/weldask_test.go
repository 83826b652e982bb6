package shop_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"axlewright/calc/material"
	"axlewright/examples"
	"axlewright/shop"
	"axlewright/shop/shoptest"
	"axlewright/sqlstore"
	"axlewright/weldplan"
)

// What a weld plan is made from: the kit's weld file, and over it what the record
// says of this casting.
func TestAWeldPlanIsAskedForFromTheRecord(t *testing.T) {
	store, err := sqlstore.Open(t.Context(), sqlstore.Options{Dir: t.TempDir()})
	if err != nil {
		t.Fatal(err)
	}
	defer store.Close()
	b := shoptest.Fellgate(t, store)
	text := func(name string) string {
		file, err := examples.Files.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		return string(file)
	}
	if _, err := b.Shop.AddDrawing(t.Context(), b.Reader, text("kits/KIT-T24-B.1.yaml"), ""); shop.CodeOf(err) != shop.Forbidden {
		t.Errorf("a reader brings a kit in: %v", err)
	}
	if _, err := b.Shop.AddDrawing(t.Context(), b.Owner, text("kits/KIT-T24-B.1.yaml"), text("weld/t24-cheeks.yaml")); err != nil {
		t.Fatal(err)
	}
	j := b.Open(shop.WorkPlates)
	ask := func() (shop.WeldAsk, error) {
		job, err := b.Shop.Job(t.Context(), j.ID)
		if err != nil {
			t.Fatal(err)
		}
		return b.Shop.AskWeld(t.Context(), job)
	}
	if _, err := ask(); shop.CodeOf(err) != shop.NotFound || !strings.Contains(err.Error(), "variant") {
		t.Errorf("without a variant: %v", err)
	}
	b.Write(j.ID, "identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T24.ID))
	a, err := ask()
	if err != nil {
		t.Fatal(err)
	}
	if a.Job.Casting.Metal.Unknown != 1 || a.Job.Shop.Cleaned != weldplan.NotKnown || a.Job.Shop.Baked || len(a.From) != 0 || len(a.Assumed) < 4 || len(a.FromSeqs) != 0 {
		t.Errorf("of an empty record: %+v, from %q, assumed %q", a.Job.Shop, a.From, a.Assumed)
	}
	plan, err := weldplan.Make(&a.Job, nil, weldplan.Options{})
	if err != nil || !strings.Contains(plan.Refused(), "Unknown metal") {
		t.Errorf("planned without a metal: %q %v", plan.Refused(), err)
	}

	b.Write(j.ID, "metal", "metal", "", shop.Words(shop.MetalMalleable))
	b.Write(j.ID, "clean", "wash", "", shop.Words("caustic", shop.SolventChlorinated))
	b.Write(j.ID, "plates", "fit", "1", shoptest.MM("1.3", 1.3))
	b.Write(j.ID, "plates", "fit", "2", shoptest.MM("0.4", 0.4))
	b.Write(j.ID, "plates", "fit", "LC top", shoptest.MM("0.2", 0.2))
	b.Write(j.ID, "plates", "vents", "", shop.Words(shop.VentMissing))
	if a, err = ask(); err != nil {
		t.Fatal(err)
	}
	families := a.Job.Casting.Metal.Families
	if len(families) != 2 || !slices.ContainsFunc(families, func(c weldplan.Chance) bool { return c.Family == material.BlackheartIron && c.Chance == 0.5 }) {
		t.Errorf("malleable iron: %+v", families)
	}
	if a.Job.Shop.Cleaned != weldplan.Chlorinated || a.Job.Cavities[0].Vent != nil {
		t.Errorf("cleaned with %q, vent %+v", a.Job.Shop.Cleaned, a.Job.Cavities[0].Vent)
	}
	for i := range a.Job.Plates {
		for _, r := range a.Job.Plates[i].Runs {
			want := 1.3e-3 // the worst of those that name no run
			if r.Name == "LC top" {
				want = 0.2e-3
			}
			if math.Abs(r.Gap.Value-want) > 1e-12 {
				t.Errorf("gap of %s: %g m, expected %g", r.Name, r.Gap.Value, want)
			}
		}
	}
	if len(a.FromSeqs) != 6 || !slices.IsSorted(a.FromSeqs) || !slices.ContainsFunc(a.From, func(s string) bool { return strings.HasPrefix(s, "Metal: malleable iron (Owner, ") }) {
		t.Errorf("from entries %v: %q", a.FromSeqs, a.From)
	}
	if plan, err = weldplan.Make(&a.Job, nil, weldplan.Options{}); err != nil || plan.Go {
		t.Errorf("chlorinated solvent and no vent, and yet it goes: %v", err)
	}

	b.Write(j.ID, "identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T31.ID))
	if _, err := ask(); shop.CodeOf(err) != shop.NotFound || !strings.Contains(err.Error(), "T31") {
		t.Errorf("a kit of another casting: %v", err)
	}
}
