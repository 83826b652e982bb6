package nest

import (
	"context"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"pgregory.net/rapid"

	"axlewright/kit/outline"
)

func nest(t testing.TB, parts []Part, stock []Stock, r Rules) Plan {
	t.Helper()
	plan, err := Nest(context.Background(), parts, stock, r, nil)
	if err != nil {
		t.Fatal(err)
	}
	return plan
}

func TestPlanKeepsItsRules(t *testing.T) {
	plan := nest(t, kit(6), []Stock{NewSheets("new", 1.25, 0.625, 3)}, usual())
	if err := plan.Check(); err != nil {
		t.Fatal(err)
	}
	if slices.Max(plan.Left) != 0 {
		t.Fatalf("left over: %v", plan.Left)
	}
	noOverlapByAnotherLibrary(t, plan)
	for i, s := range plan.Sheets {
		pairs := map[string]int{}
		for _, at := range s.Places {
			switch name := plan.Parts[at.Part].Name; {
			case strings.HasSuffix(name, " L"):
				pairs[name[:len(name)-2]]++
			case strings.HasSuffix(name, " R"):
				pairs[name[:len(name)-2]]--
			}
		}
		for name, more := range pairs {
			if more != 0 {
				t.Errorf("sheet %d has %d more left than right of %s", i, more, name)
			}
		}
	}
}

// noOverlapByAnotherLibrary intersects polygons that enclose the parts.
func noOverlapByAnotherLibrary(t testing.TB, plan Plan) {
	t.Helper()
	for _, s := range plan.Sheets {
		var polygons []geom.Geometry
		for _, at := range s.Places {
			polygons = append(polygons, asGeometry(plan.Outline(at).Flatten(1e-5, outline.Around)))
		}
		for i, a := range polygons {
			for _, b := range polygons[:i] {
				if shared, err := geom.Intersection(a, b); err != nil || shared.Area() > 0 {
					t.Fatalf("parts share %g m², %v", shared.Area(), err)
				}
				if apart, ok := geom.Distance(a, b); !ok || apart < plan.Rules.Gap-3e-5 {
					t.Fatalf("parts are %g m apart", apart)
				}
			}
		}
	}
}

func TestAnyPartsKeepTheirRules(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shapes := []outline.Loop{
			mm([3]float64{0, 0, 0}, [3]float64{40, 0, 0}, [3]float64{40, 15, 0}, [3]float64{15, 15, 0}, [3]float64{15, 40, 0}, [3]float64{0, 40, 0}),
			outline.Circle(outline.Point{X: 5}, 0.025), outline.Slot(outline.Point{}, 0.05, 0.01, 0.3),
			mm([3]float64{0, 0, 0.3}, [3]float64{40, 0, -0.3}, [3]float64{20, 35, 0.2}),
		}
		var parts []Part
		for i, l := range shapes {
			parts = append(parts, Part{
				Name: string(rune('a' + i)), Outline: l, Count: rapid.IntRange(0, 5).Draw(t, "count"),
				Grain: rapid.SampledFrom([]Grain{Any, Along, Across}).Draw(t, "grain"),
				Pair:  rapid.SampledFrom([]string{"", "", "p"}).Draw(t, "pair"),
			})
		}
		r := Rules{
			Gap: rapid.Float64Range(1e-4, 0.01).Draw(t, "gap"), Edge: rapid.Float64Range(0, 0.02).Draw(t, "edge"),
			Turns: rapid.SampledFrom([]int{1, 2, 4, 5}).Draw(t, "turns"), Tries: 1, Seed: rapid.Uint64().Draw(t, "seed"), LeastOffcut: 0.05,
		}
		stock := []Stock{
			NewSheets("new", rapid.Float64Range(0.06, 0.3).Draw(t, "long"), rapid.Float64Range(0.06, 0.2).Draw(t, "wide"), 2),
			{Name: "R1", Outline: bracket().Shifted(outline.Point{X: 1, Y: -1}), Count: 1, Remnant: true},
		}
		plan, err := Nest(context.Background(), parts, stock, r, nil)
		if err != nil {
			t.Fatal(err)
		}
		if err := plan.Check(); err != nil {
			t.Fatal(err)
		}
		rows, err := Rows(parts, stock, r)
		if err != nil {
			t.Fatal(err)
		}
		if err := rows.Check(); err != nil {
			t.Fatalf("rows: %v", err)
		}
	})
}

func TestSameSeedSamePlan(t *testing.T) {
	stock := []Stock{NewSheets("new", 1.25, 0.625, 3)}
	r := usual()
	r.Tries = 4
	first := nest(t, kit(3), stock, r)
	for range 2 {
		if again := nest(t, kit(3), stock, r); !reflect.DeepEqual(first, again) {
			t.Fatal("the same seed gave another plan")
		}
	}
}

func TestMoreTriesAreNeverWorse(t *testing.T) {
	stock := []Stock{NewSheets("new", 1.25, 0.625, 3)}
	one, many := usual(), usual()
	one.Tries, many.Tries = 1, 6
	a, b := nest(t, kit(5), stock, one), nest(t, kit(5), stock, many)
	if a.better(&b) {
		t.Errorf("6 tries %v, one try %v", b.merit(), a.merit())
	}
}

func TestPartsInterlock(t *testing.T) {
	// Two brackets of 120 mm in a strip of 130 mm: by boxes they need 2·120 + 3,
	// interlocked the second begins 43 mm to the right.
	parts := []Part{{Name: "bracket", Outline: bracket(), Count: 2}}
	r := Rules{Gap: 3e-3, Edge: 0, Turns: 4, Tries: 1, LeastOffcut: 0.01}
	plan := nest(t, parts, []Stock{NewSheets("strip", 1, 0.17, 1)}, r)
	if err := plan.Check(); err != nil {
		t.Fatal(err)
	}
	if long := plan.Sheets[0].Used.High.X; long > 0.167 {
		t.Errorf("two brackets take %g mm", long*1e3)
	}
}

func TestExactFit(t *testing.T) {
	// Nine squares of 100 mm with 3 mm between and 10 mm round are 326 mm.
	square := outline.Rectangle(outline.Box{High: outline.Point{X: 0.1, Y: 0.1}})
	parts := []Part{{Name: "square", Outline: square, Count: 9}}
	r := Rules{Gap: 3e-3, Edge: 10e-3, Turns: 1, Tries: 1, LeastOffcut: 0.1}
	if plan := nest(t, parts, []Stock{NewSheets("s", 0.326, 0.326, 1)}, r); plan.Left[0] != 0 || plan.Check() != nil {
		t.Errorf("left %d, %v", plan.Left[0], plan.Check())
	}
	if plan := nest(t, parts, []Stock{NewSheets("s", 0.3259, 0.326, 1)}, r); plan.Left[0] != 3 {
		t.Errorf("in 0.1 mm less: %d left, expected 3", plan.Left[0])
	}
}

func TestRemnantsComeFirst(t *testing.T) {
	parts := []Part{{Name: "disc", Outline: outline.Circle(outline.Point{}, 0.05), Count: 5}}
	angle := bracket()
	stock := []Stock{
		NewSheets("new", 1, 1, 1),
		{Name: "R2", Outline: angle, Count: 1, Remnant: true},
		{Name: "R1", Outline: outline.Rectangle(outline.Box{High: outline.Point{X: 0.07, Y: 0.07}}), Count: 1, Remnant: true},
	}
	r := Rules{Gap: 3e-3, Edge: 5e-3, Turns: 1, Tries: 1, LeastOffcut: 0.2}
	plan := nest(t, parts, stock, r)
	if err := plan.Check(); err != nil {
		t.Fatal(err)
	}
	// R1 takes one disc; no leg of R2 is wide enough for 50 mm and two rims.
	if names := []string{plan.Name(0), plan.Name(1)}; !slices.Equal(names, []string{"R1", "new 1"}) {
		t.Errorf("cut from %v", names)
	}
	parts[0].Outline = outline.Circle(outline.Point{}, 0.029)
	plan = nest(t, parts, stock, r)
	if err := plan.Check(); err != nil {
		t.Fatal(err)
	}
	if len(plan.Sheets) < 2 || plan.Name(1) != "R2" || len(plan.Sheets[1].Places) != 3 {
		t.Errorf("discs of 29 mm: %v", plan.Sheets)
	}
}

func TestOffcuts(t *testing.T) {
	sheet := outline.Box{High: outline.Point{X: 2.5, Y: 1.25}}
	r := Rules{Gap: 3e-3, LeastOffcut: 0.2}
	wide := offcuts(sheet, outline.Box{High: outline.Point{X: 1, Y: 1.2}}, r)
	if len(wide) != 1 || wide[0].Low.X != 1.003 || wide[0].Height() != 1.25 {
		t.Errorf("beside parts: %v", wide)
	}
	low := offcuts(sheet, outline.Box{High: outline.Point{X: 2.4, Y: 0.3}}, r)
	if len(low) != 1 || low[0].Low.Y != 0.303 || low[0].Width() != 2.5 {
		t.Errorf("above parts: %v", low)
	}
	both := offcuts(sheet, outline.Box{High: outline.Point{X: 1, Y: 0.6}}, r)
	if len(both) != 2 || both[0].Near(both[1], -1e-9) {
		t.Errorf("two rests: %v", both)
	}
}

func TestWhatCannotBeLaidOut(t *testing.T) {
	square := outline.Rectangle(outline.Box{High: outline.Point{X: 0.1, Y: 0.1}})
	stock := []Stock{NewSheets("s", 1, 1, 1)}
	for name, c := range map[string]struct {
		part Part
		r    Rules
		says string
	}{
		"no gap":       {Part{Outline: square}, Rules{Turns: 1, Tries: 1}, "gap"},
		"crossed":      {Part{Outline: outline.Polygon(outline.Point{}, outline.Point{X: 1, Y: 1}, outline.Point{X: 1}, outline.Point{Y: 1})}, usual(), "crosses"},
		"clockwise":    {Part{Outline: square.Reversed()}, usual(), "clockwise"},
		"grain":        {Part{Outline: square, Grain: "up"}, usual(), "grain"},
		"count":        {Part{Outline: square, Count: -1}, usual(), "count"},
		"many":         {Part{Outline: square, Count: 1e6}, usual(), "most"},
		"turns":        {Part{Outline: square}, Rules{Gap: 1e-3, Turns: 1000, Tries: 1}, "turns"},
		"not a number": {Part{Outline: square}, Rules{Gap: nan(), Turns: 1, Tries: 1}, "gap"},
	} {
		if _, err := Nest(context.Background(), []Part{c.part}, stock, c.r, nil); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, expected %q", name, err, c.says)
		}
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := Nest(ctx, kit(1), stock, usual(), nil); err == nil {
		t.Error("a cancelled nest gave a plan")
	}
}

func nan() float64 { z := 0.0; return z / z }

func TestCheckFindsWhatIsWrong(t *testing.T) {
	square := outline.Rectangle(outline.Box{High: outline.Point{X: 0.1, Y: 0.1}})
	parts := []Part{{Name: "square", Outline: square, Count: 4, Grain: Along}}
	good := nest(t, parts, []Stock{NewSheets("new", 0.25, 0.25, 1)}, usual())
	for name, spoil := range map[string]func(*Plan){
		"overlap":      func(p *Plan) { p.Sheets[0].Places[1].Shift = p.Sheets[0].Places[0].Shift },
		"too near":     func(p *Plan) { p.Sheets[0].Places[0].Shift.Y += 2e-6 }, // it lay against the next
		"over the rim": func(p *Plan) { p.Sheets[0].Places[0].Shift.X -= 2e-6 },
		"gone":         func(p *Plan) { p.Sheets[0].Places = p.Sheets[0].Places[1:] },
		"stock":        func(p *Plan) { p.Stock = []Stock{NewSheets("new", 0.25, 0.25, 0)} },
		"grain":        func(p *Plan) { p.Sheets[0].Places[0].Turn = 10 * deg },
	} {
		bad := good
		bad.Sheets = slices.Clone(good.Sheets)
		bad.Sheets[0].Places = slices.Clone(good.Sheets[0].Places)
		spoil(&bad)
		if bad.Check() == nil {
			t.Errorf("%s was not found", name)
		}
	}
}

func TestLeastSheetIsABound(t *testing.T) {
	parts := kit(4)
	plan := nest(t, parts, []Stock{NewSheets("new", 1.25, 0.625, 3)}, usual())
	least, err := LeastSheet(parts, plan.Rules)
	if err != nil {
		t.Fatal(err)
	}
	y := plan.Yield()
	if least < y.Outline || least > y.Sheet {
		t.Errorf("bound %g, parts %g, sheets %g", least, y.Outline, y.Sheet)
	}
}

func TestProgressCountsPieces(t *testing.T) {
	last, total := 0, 0
	r := usual()
	r.Tries = 1
	_, err := Nest(context.Background(), kit(2), []Stock{NewSheets("new", 1.25, 0.625, 1)}, r, func(done, of int) { last, total = max(last, done), of })
	if err != nil || last != total || total != 16 {
		t.Errorf("%d of %d, %v", last, total, err)
	}
}

// BenchmarkNest200 lays 200 pieces on a sheet of 2500 × 1250 mm.
func BenchmarkNest200(b *testing.B) {
	stock := []Stock{NewSheets("new", 2.5, 1.25, 2)}
	r := Usual(3e-3)
	for b.Loop() {
		plan := nest(b, kit(25), stock, r)
		b.ReportMetric(100*plan.Yield().OfUsed(), "%used")
		b.ReportMetric(100*plan.Yield().OfSheet(), "%sheet")
	}
}

// BenchmarkRows200 does the same in simple rows.
func BenchmarkRows200(b *testing.B) {
	stock := []Stock{NewSheets("new", 2.5, 1.25, 2)}
	for b.Loop() {
		plan, err := Rows(kit(25), stock, Usual(3e-3))
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(100*plan.Yield().OfUsed(), "%used")
		b.ReportMetric(100*plan.Yield().OfSheet(), "%sheet")
	}
}
