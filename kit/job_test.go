package kit

import (
	"context"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"axlewright/kit/nest"
)

func job(t testing.TB) Job {
	t.Helper()
	j, err := LoadJob("../examples/kits/nest-20.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func TestANestOfTwentyKits(t *testing.T) {
	j := job(t)
	j.Rules.Tries = 8
	last := 0
	cuttings, err := j.Run(context.Background(), func(done, total int) {
		if done > total {
			t.Errorf("%d of %d", done, total)
		}
		last = max(last, done)
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(cuttings) != 2 || last == 0 {
		t.Fatalf("%d cuttings, progress %d", len(cuttings), last)
	}
	for i := range cuttings {
		c := &cuttings[i]
		if err := c.Plan.Check(); err != nil {
			t.Error(err)
		}
		if slices.Max(c.Plan.Left) > 0 {
			t.Errorf("left: %v", c.Plan.Left)
		}
		y, rows := c.Plan.Yield(), c.Rows.Yield()
		var metal float64
		for _, p := range c.Plates {
			metal += p.Area() * float64(p.Count)
		}
		near(t, "metal", y.Metal, metal, 1e-12)
		if y.OfUsed() <= rows.OfUsed() {
			t.Errorf("%s: %.3f used, %.3f in simple rows", c.Steel, y.OfUsed(), rows.OfUsed())
		}
		if y.Metal/c.Least < y.OfUsed() {
			t.Errorf("%s: better than the bound", c.Steel)
		}
	}
	if name := cuttings[1].Plan.Name(0); name != "R-007" {
		t.Errorf("first cut from %s", name)
	}
}

// TestPrice works a price out by hand: one plate of 0.01 m² from a sheet of
// 0.25 × 0.2 m that costs 10.
func TestPrice(t *testing.T) {
	dir := t.TempDir()
	write := func(name, text string) string {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		return path
	}
	plain := strings.Replace(small, "    holes:\n      - {label: A, at: [50, 50], diameter: 10 mm}\n      - {label: G, kind: guide, drilling: screw, at: [20, 80]}\n", "    mark: {none: true}\n", 1)
	write("KIT-T31-B.1.yaml", plain)
	j, err := LoadJob(write("nest.yaml", `kits: [{kit: KIT-T31-B.1.yaml, sets: 1}]
sheets: [{name: s, steel: S355JR, thickness: 3 mm, long: 250 mm, wide: 200 mm, price: 10}]
rates: {cut: 2, pierce: 0.5, sheet: 4, scrap: 0.1}
rules: {tries: 1, least_offcut: 300 mm}
`))
	if err != nil {
		t.Fatal(err)
	}
	c, err := j.Run(context.Background(), nil)
	if err != nil {
		t.Fatal(err)
	}
	cost := c[0].Cost
	near(t, "sheet", cost.Sheets, 10, 1e-12)
	near(t, "cut", cost.Cut, 0.4*2, 1e-12)
	near(t, "pierce", cost.Pierces, 0.5, 1e-12)
	near(t, "scrap", cost.Scrap, (0.05-0.01)*0.003*7850*0.1, 1e-6)
	near(t, "total", cost.Total, 10+0.8+0.5+4-cost.Scrap, 1e-12)
	j.Sheets[0].Thickness.Text = "4 mm"
	if _, err := j.Run(context.Background(), nil); err == nil || !strings.Contains(err.Error(), "no sheet of S355, 3 mm") {
		t.Errorf("without a sheet: %v", err)
	}
}

func TestJobsThatCannotBeRead(t *testing.T) {
	text, err := os.ReadFile("../examples/kits/nest-20.yaml")
	if err != nil {
		t.Fatal(err)
	}
	dir, err := filepath.Abs("../examples/kits")
	if err != nil {
		t.Fatal(err)
	}
	good := strings.Replace(string(text), "KIT-T24-A.1.yaml", filepath.Join(dir, "KIT-T24-A.1.yaml"), 1)
	for says, change := range map[string][2]string{
		"no such file":         {"KIT-T24-A.1.yaml", "KIT-T24-A.7.yaml"},
		"expected 1 to 1000":   {"sets: 20", "sets: 0"},
		"no metal called":      {"steel: S700MC", "steel: S7"},
		"is no length":         {"thickness: 3 mm", "thickness: 3"},
		"crosses itself":       {"[620, 0], [620, 260]", "[620, 260], [620, 0]"},
		"a price of -1":        {"price: 190", "price: -1"},
		"unknown key":          {"count: 4", "cuont: 4"},
		"is no price":          {"cut: 0.9", "cut: .nan"},
		"kits to cut":          {good, "rates: {cut: 1}"},
		"no unit; expected a ": {"rates:", "rules: {gap: 3}\nrates:"},
	} {
		bad := strings.Replace(good, change[0], change[1], 1)
		path := filepath.Join(t.TempDir(), "nest.yaml")
		if err := os.WriteFile(path, []byte(bad), 0o644); err != nil {
			t.Fatal(err)
		}
		if _, err := LoadJob(path); bad == good || err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%v\nexpected %q", err, says)
		}
	}
}

// BenchmarkNestExample runs the nest of twenty kits as the command does.
func BenchmarkNestExample(b *testing.B) {
	j := job(b)
	for b.Loop() {
		cuttings, err := j.Run(context.Background(), nil)
		if err != nil {
			b.Fatal(err)
		}
		worst := math.Inf(1)
		for i := range cuttings {
			worst = math.Min(worst, cuttings[i].Plan.Yield().OfUsed())
		}
		b.ReportMetric(100*worst, "%worst-yield")
	}
}

// BenchmarkFullSheet lays the thin plates of 80 kits, 320 pieces, on one sheet of
// 2500 × 1250 mm.
func BenchmarkFullSheet(b *testing.B) {
	d := drawn(b, "KIT-T24-A.1")
	var j Job
	var parts []nest.Part
	for i := range d.Plates {
		if p := d.Plates[i]; p.Steel == "S700MC" {
			p.Count = 80
			parts = append(parts, j.part(&p))
		}
	}
	stock := []nest.Stock{nest.NewSheets("new", 2.5, 1.25, 1)}
	for b.Loop() {
		plan, err := nest.Nest(context.Background(), parts, stock, nest.Usual(3e-3), nil)
		if err != nil {
			b.Fatal(err)
		}
		rows, err := nest.Rows(parts, stock, nest.Usual(3e-3))
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(100*plan.Yield().OfSheet(), "%nest")
		b.ReportMetric(100*rows.Yield().OfSheet(), "%rows")
		b.ReportMetric(float64(len(plan.Sheets[0].Places)), "pieces")
	}
}
