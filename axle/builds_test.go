package axle

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func exampleCatalogue(t testing.TB) Catalogue {
	t.Helper()
	c, err := LoadCatalogue("../examples/tarnhow.yaml", "../examples/upgrades.yaml", "../examples/duties.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// compatible says what is wrong with a set of upgrades on a casting, from their
// own words alone.
func compatible(c *Catalogue, casting string, set []string) string {
	for _, name := range set {
		u, err := c.Upgrade(name)
		if err != nil {
			return err.Error()
		}
		if !slices.Contains(u.Fits, casting) {
			return name + " does not fit"
		}
		for _, need := range u.Needs {
			if !slices.Contains(set, need) {
				return name + " lacks " + need
			}
		}
		for _, other := range u.Excludes {
			if slices.Contains(set, other) {
				return name + " excludes " + other
			}
		}
		for _, other := range set {
			o, _ := c.Upgrade(other)
			if other != name && (u.CapBolts != nil && o.CapBolts != nil || u.Peg != nil && o.Peg != nil || u.Lock != nil && o.Lock != nil ||
				u.DiffCentre != "" && o.DiffCentre != "" || u.HeadBearing != "" && o.HeadBearing != "") {
				return name + " and " + other + " are one part"
			}
		}
	}
	return ""
}

func TestEveryBuildIsCompatibleAndNoneComesTwice(t *testing.T) {
	c := exampleCatalogue(t)
	for i := range c.Castings {
		k := &c.Castings[i]
		builds, err := c.Builds(k.Name, k.GearSets[0], nil)
		if err != nil {
			t.Fatal(err)
		}
		if n := len(builds); n < 32 || n > 64 {
			t.Errorf("%s has %d builds; the examples are to have 32 to 64", k.Name, n)
		}
		if len(builds[0].Upgrades) != 0 {
			t.Errorf("%s: the first build is %v, not stock", k.Name, builds[0].Upgrades)
		}
		seen := map[string]bool{}
		for _, b := range builds {
			key := fmt.Sprint(b.Upgrades)
			if seen[key] {
				t.Errorf("%s: %s comes twice", k.Name, key)
			}
			seen[key] = true
			if problem := compatible(&c, k.Name, b.Upgrades); problem != "" {
				t.Errorf("%s: %s: %s", k.Name, key, problem)
			}
		}
		// None is left out: count the compatible ones among all sets.
		var fits []string
		for _, u := range c.Upgrades {
			if slices.Contains(u.Fits, k.Name) {
				fits = append(fits, u.Name)
			}
		}
		all := 0
		for set := range 1 << len(fits) {
			var names []string
			for bit, name := range fits {
				if set>>bit&1 == 1 {
					names = append(names, name)
				}
			}
			if compatible(&c, k.Name, names) == "" {
				all++
			}
		}
		if all != len(builds) {
			t.Errorf("%s: %d builds of %d compatible ones", k.Name, len(builds), all)
		}
	}
}

// Of any upgrades at all, builds are exactly the sets that are allowed.
func TestBuildsOfAnyUpgrades(t *testing.T) {
	base := exampleCatalogue(t)
	rapid.Check(t, func(t *rapid.T) {
		c := base
		n := rapid.IntRange(0, 7).Draw(t, "upgrades")
		names := []string{"a", "b", "c", "d", "e", "f", "g"}[:n]
		c.Upgrades = nil
		for _, name := range names {
			u := Upgrade{Name: name, Fits: []string{"T20"}, Minutes: 10, Parts: 1}
			if rapid.Bool().Draw(t, "lock") {
				u.Lock = &Lock{Name: name}
			}
			for _, other := range names {
				if other == name {
					continue
				}
				switch rapid.IntRange(0, 7).Draw(t, "bond") {
				case 0:
					if other < name { // no circles
						u.Needs = append(u.Needs, other)
					}
				case 1:
					u.Excludes = append(u.Excludes, other)
				}
			}
			c.Upgrades = append(c.Upgrades, u)
		}
		builds, err := c.Builds("T20", "20-3.54", nil)
		if err != nil {
			t.Fatal(err)
		}
		want := map[string]bool{}
		for set := range 1 << n {
			var chosen []string
			for bit, name := range names {
				if set>>bit&1 == 1 {
					chosen = append(chosen, name)
				}
			}
			excluded := slices.ContainsFunc(chosen, func(a string) bool {
				u, _ := c.Upgrade(a)
				return slices.ContainsFunc(u.Excludes, func(b string) bool { return slices.Contains(chosen, b) })
			})
			if !excluded && compatible(&c, "T20", chosen) == "" {
				want[fmt.Sprint(chosen)] = true
			}
		}
		for _, b := range builds {
			key := fmt.Sprint(b.Upgrades)
			if !want[key] {
				t.Fatalf("%s is not allowed or comes twice", key)
			}
			delete(want, key)
			if price := b.Price - builds[0].Price; math.Abs(price-float64(len(b.Upgrades))*11) > 1e-9 {
				t.Fatalf("%s costs %g more than stock", key, price)
			}
		}
		if len(want) != 0 {
			t.Fatalf("left out: %v", want)
		}
	})
}

func TestFittedUpgradesAreInEveryBuildAtNoCost(t *testing.T) {
	c := exampleCatalogue(t)
	fitted := []string{"cap-bolts-24", "peg-24"}
	builds, err := c.Builds("T24", "24-4.11", fitted)
	if err != nil {
		t.Fatal(err)
	}
	stock, err := c.Stock("T24", "24-4.11")
	if err != nil {
		t.Fatal(err)
	}
	if first := builds[0]; first.Price != stock.Price || first.Minutes != stock.Minutes || !first.Welds || first.Peg == nil ||
		first.Casting.CapBolts.Grade != "12.9" || !slices.Equal(first.Upgrades, fitted) {
		t.Errorf("the first build is %v at %g, stock costs %g", first.Upgrades, first.Price, stock.Price)
	}
	for _, b := range builds {
		for _, name := range fitted {
			if !slices.Contains(b.Upgrades, name) {
				t.Errorf("%v lacks %s", b.Upgrades, name)
			}
		}
		if !slices.IsSortedFunc(b.Upgrades, func(x, y string) int {
			at := func(name string) int {
				return slices.IndexFunc(c.Upgrades, func(u Upgrade) bool { return u.Name == name })
			}
			return at(x) - at(y)
		}) {
			t.Errorf("%v is not in the order of the catalogue", b.Upgrades)
		}
	}
	for _, bad := range []struct {
		fitted []string
		says   string
	}{
		{[]string{"peg-20"}, `does not fit casting "T24"`},
		{[]string{"pegs"}, "the catalogue has no upgrade"},
		{[]string{"cap-dowels-24"}, `is not fitted without "cap-bolts-24"`},
		{[]string{"peg-24", "peg-24"}, "stands twice"},
	} {
		if _, err := c.Builds("T24", "24-4.11", bad.fitted); err == nil || !strings.Contains(err.Error(), bad.says) {
			t.Errorf("%v: %v, want %q", bad.fitted, err, bad.says)
		}
	}
	if _, err := c.Builds("T24", "20-3.54", nil); err == nil || !strings.Contains(err.Error(), "does not fit casting") {
		t.Errorf("gears of another casting: %v", err)
	}
	var unknown *NotFound
	if _, err := c.Builds("T99", "20-3.54", nil); !errors.As(err, &unknown) || unknown.Kind != "casting" {
		t.Errorf("an unknown casting: %v", err)
	}
}

func TestBuildsPutTheirPartsIn(t *testing.T) {
	c := exampleCatalogue(t)
	builds, err := c.Builds("T24", "24-4.11", nil)
	if err != nil {
		t.Fatal(err)
	}
	stock := builds[0]
	for _, b := range builds {
		has := func(name string) bool { return slices.Contains(b.Upgrades, name) }
		price, minutes := stock.Price, stock.Minutes
		for _, name := range b.Upgrades {
			u, _ := c.Upgrade(name)
			price += u.Minutes/60*c.Labour + u.Parts
			minutes += u.Minutes
		}
		switch {
		case (b.Peg != nil) != has("peg-24"), (b.Overlay != nil) != has("cap-overlay-24"), (b.RingDowel != nil) != has("cap-dowels-24"),
			(b.Casting.CapBolts.Grade == "12.9") != has("cap-bolts-24"), (b.Gears.WheelBolts.Grade == "12.9") != has("ring-bolts-24"),
			(b.Head.Name == "H45x92") != has("head-bearing-24"), (b.Casting.Lock.Name != stock.Casting.Lock.Name) != has("lock-24"),
			b.Welds != (has("peg-24") || has("cap-overlay-24")),
			math.Abs(b.Price-price) > 1e-9, math.Abs(b.Minutes-minutes) > 1e-9:
			t.Errorf("%v is %+v", b.Upgrades, b)
		}
		if has("head-bearing-24") && (b.Casting.HeadWall.Value != 0.005 || b.Gears.PinionNeckMin.Value != 0.045) {
			t.Errorf("%v: wall %g, neck %g", b.Upgrades, b.Casting.HeadWall.Value, b.Gears.PinionNeckMin.Value)
		}
	}
	if again, err := c.Casting("T24"); err != nil || again.CapBolts.Grade != "8.8" {
		t.Errorf("the catalogue's own casting was changed: %v", again.CapBolts)
	}
}

// Boring takes from the wall even where the upgrade does not say what is left.
func TestBoringThinsTheWall(t *testing.T) {
	c := exampleCatalogue(t)
	stock, err := c.Stock("T24", "24-4.11")
	if err != nil {
		t.Fatal(err)
	}
	u, err := c.Upgrade("head-bearing-24")
	if err != nil {
		t.Fatal(err)
	}
	u.HeadWall = nil
	b, err := c.Fit(stock, u)
	if err != nil {
		t.Fatal(err)
	}
	wall := b.Casting.HeadWall
	if math.Abs(wall.Value-0.005) > 1e-12 || wall.Origin != Computed || wall.High <= wall.Value || wall.Low >= wall.Value {
		t.Errorf("11 mm of wall less 6 mm is %+v", wall.Number)
	}
}

func TestTheCustomersOwnDiffCentreStays(t *testing.T) {
	c := exampleCatalogue(t)
	e := Enquiry{Casting: "T20", Gears: "20-3.54", Centre: "20-LK", Labour: 90}
	builds, err := c.BuildsFor(&e)
	if err != nil {
		t.Fatal(err)
	}
	for _, b := range builds {
		if b.Centre.Name != "20-LK" || b.Centre.Locking != Locked {
			t.Errorf("%v has the diff centre %s", b.Upgrades, b.Centre.Name)
		}
		if slices.Contains(b.Upgrades, "four-pin-20") {
			t.Errorf("%v takes the customer's locker out", b.Upgrades)
		}
	}
	if want := 390.0/60*90 + 265; builds[0].Price != want {
		t.Errorf("the standard rebuild costs %g, want %g at the enquiry's own labour", builds[0].Price, want)
	}
	if c.Labour != 60 {
		t.Error("the catalogue's labour was changed")
	}
	e.Centre = ""
	if builds, err = c.BuildsFor(&e); err != nil || builds[0].Centre.Name != "20-2P" || len(builds) != 64 {
		t.Errorf("without its own: %d builds with %s, %v", len(builds), builds[0].Centre.Name, err)
	}
	e.Centre = "20-XX"
	if _, err = c.BuildsFor(&e); err == nil || !strings.Contains(err.Error(), "no diff centre") {
		t.Errorf("an unknown diff centre: %v", err)
	}
}
