package shop_test

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"axlewright/quantity"
	"axlewright/setup"
	"axlewright/shop"
)

func TestStepsAreWhole(t *testing.T) {
	seen := map[shop.StepKey]bool{}
	for _, s := range shop.Steps() {
		if seen[s.Key] || s.Key == shop.StepJob || s.Title == "" || s.Decides == "" || s.Mistake == "" || len(s.Fields) == 0 {
			t.Errorf("step %q: doubled, or lacks a title, a decision, a mistake or fields", s.Key)
		}
		seen[s.Key] = true
		if len(s.Cautions) > 2 {
			t.Errorf("step %s has %d lines of caution; two are the most", s.Key, len(s.Cautions))
		}
		for _, c := range s.Cautions {
			if utf8.RuneCountInString(c) > 180 {
				t.Errorf("step %s: a caution of %d letters is not read", s.Key, utf8.RuneCountInString(c))
			}
		}
		fields := map[string]bool{}
		for _, f := range s.Fields {
			at := string(s.Key) + "/" + f.Key
			if fields[f.Key] || f.Title == "" || strings.Contains(f.Key, "/") || f.Key == shop.ItemNote || f.Key == shop.ItemPhoto || f.Key == shop.ItemMark {
				t.Errorf("%s: doubled, without title, or a key that cannot be", at)
			}
			fields[f.Key] = true
			checkField(t, at, s, f)
		}
	}
}

func checkField(t *testing.T, at string, s shop.Step, f shop.Field) {
	t.Helper()
	has := map[shop.FieldKind]bool{
		shop.FieldFigure: f.Dim != "", shop.FieldChoice: len(f.Options) > 1, shop.FieldChoices: len(f.Options) > 1,
		shop.FieldLink: f.Card != "", shop.FieldPart: true, shop.FieldText: true, shop.FieldDay: true, shop.FieldSum: true,
	}
	if !has[f.Kind] {
		t.Errorf("%s: a %q lacks what it needs", at, f.Kind)
	}
	if f.Wanted > len(f.Places) && !(f.Wanted == 1 && len(f.Places) == 0) {
		t.Errorf("%s wants %d of %d places", at, f.Wanted, len(f.Places))
	}
	if f.Unit != "" {
		if _, err := quantity.Parse("1 "+f.Unit, f.Dim); err != nil {
			t.Errorf("%s: %q is no unit of %s: %v", at, f.Unit, f.Dim, err)
		}
	}
	words := map[string]bool{}
	for _, o := range f.Options {
		if words[o.Word] {
			t.Errorf("%s offers %q twice", at, o.Word)
		}
		words[o.Word] = true
	}
	for _, band := range f.Bands {
		dim := band.Item.Dim()
		if dim != f.Dim && !(dim == quantity.Angle && f.Dim == quantity.Length && band.Over > 0) || !slices.Contains(setup.Items(), band.Item) {
			t.Errorf("%s: %q is no range for a %s", at, band.Item, f.Dim)
		}
	}
	for _, l := range f.Limits {
		if l.Low == nil && l.High == nil || l.Low != nil && l.High != nil && *l.Low > *l.High {
			t.Errorf("%s: a range without ends, or the wrong way round", at)
		}
		// What is built in was never measured by this shop.
		if l.Origin != shop.Trade || l.Source == "" {
			t.Errorf("%s: the band %q does not say that it is of the trade, and from where", at, l.Kind)
		}
		if l.When != nil && !slices.ContainsFunc(s.Fields, func(g shop.Field) bool {
			return g.Key == l.When.Field && slices.ContainsFunc(g.Options, func(o shop.Option) bool { return o.Word == l.When.Word })
		}) {
			t.Errorf("%s: its band waits for a word that is not offered", at)
		}
	}
}

// What can hurt somebody is said where it does, in the words of the trade's own
// list of cautions (common practice; regulations on fume, vents and pressure).
func TestCautionsStandAtTheirStep(t *testing.T) {
	for key, words := range map[shop.StepKey][]string{
		"enquiry":  {"inspection", "insurer"},
		"deal":     {"no strength rating", "local codes and licensed inspection"},
		"donor":    {"two people or a crane", "eye bolts"},
		"strip":    {"brass", "shield", "fingers", "never on a jack alone"},
		"clean":    {"chlorinated", "cut hay", "vented oven", "lidded bin", "Caustic"},
		"metal":    {"face shield", "silica", "arc weld", "local rules on hot work"},
		"stations": {"burr"},
		"plates":   {"vent in each closed cavity", "deburr", "face shield"},
		"jig":      {"never through bearings"},
		"weld":     {"Extraction", "respirator", "cancer", "nickel", "pacemaker", "60 minutes", "extinguisher", "Local rules on hot work"},
		"cooled":   {"Hot iron", "ventilate"},
		"resin":    {"nitrile", "heats itself", "neither ground dry nor welded"},
		"leak":     {"8 psi", "15 psi", "relief valve", "face away", "Local rules"},
		"drill":    {"Suction", "Clamp"},
		"caps":     {"hydrogen", "eye bolts"},
		"nose":     {"loose sleeves", "silica"},
		"stamp":    {"Goggles"},
		"paint":    {"ventilate"},
		"assemble": {"−29 °C", "Dry ice", "brass", "crane"},
		"shim":     {"shield"},
		"preload":  {"by hand"},
		"side":     {"0.30 mm"},
		"lash":     {"power tool", "fingers"},
		"pattern":  {"power tool", "fingers"},
		"peg":      {"fingers"},
		"run":      {"gloves", "jack", "local codes and licensed inspection"},
		"handover": {"No strength rating", "local codes and licensed inspection", "45 kg"},
		"return":   {"gloves"},
	} {
		s, ok := shop.StepOf(key)
		all := strings.Join(s.Cautions, " ")
		for _, w := range words {
			if !ok || !strings.Contains(all, w) {
				t.Errorf("%s does not caution of %q: %s", key, w, all)
			}
		}
	}
	for _, s := range shop.Steps() {
		if len(s.Cautions) == 0 && !slices.Contains([]shop.StepKey{"identify", "bores", "locks"}, s.Key) { // looked at and measured only
			t.Errorf("%s has no caution", s.Key)
		}
	}
}

// The figures of the bands as they are handed on in the trade (common practice
// and published manuals, no single source), in the unit in which they are said.
func TestBandsOfTheTrade(t *testing.T) {
	b := bench(t)
	j := b.Open()
	for _, c := range []struct {
		step      shop.StepKey
		field     string
		low, high string
	}{
		{"lash", "lash", "0.076 mm", "0.177 mm"},
		{"peg", "gap", "0.15 mm", "0.40 mm"},
		{"side", "spread", "0.20 mm", "0.30 mm"},
		{"assemble", "runout", "", "0.10 mm"},
		{"bores", "line", "", "0.05 mm"},
		{"bores", "feeler", "", "0.0381 mm"},
		{"nose", "wall", "6 mm", ""},
		{"clean", "bake", "150 °C", "200 °C"},
		{"leak", "pressure", "", "103 kPa"},
		{"weld", "amps", "80 A", "120 A"},
		{"peg", "nut", "30 N·m", "60 N·m"},
	} {
		f, ok := shop.FieldOf(c.step, c.field)
		l, _ := shop.LimitsFor(j, c.step, f, &b.T24, nil)
		if !ok || l == nil {
			t.Errorf("%s/%s has no band", c.step, c.field)
			continue
		}
		for end, want := range map[*float64]string{l.Low: c.low, l.High: c.high} {
			switch {
			case end == nil && want == "":
			case end == nil || want == "":
				t.Errorf("%s/%s: one end too many or too few", c.step, c.field)
			default:
				v, err := quantity.Parse(want, f.Dim)
				if err != nil {
					t.Fatal(err)
				}
				if d := v.SI - *end; d > 1e-9*v.SI || d < -1e-9*v.SI {
					t.Errorf("%s/%s: %g, want %s", c.step, c.field, *end, want)
				}
			}
		}
	}
}

// A limit of the shop's own for a thing of setting-up goes into the sums with its
// page, and one for a box into each thing that the box stands for.
func TestOwnLimitsReachTheSums(t *testing.T) {
	b := bench(t)
	mm := func(x float64) *float64 { x *= 1e-3; return &x }
	maker := func(low, high *float64, page string) shop.Limit {
		return shop.Limit{Low: low, High: high, Origin: shop.Maker, Source: page}
	}
	casting := b.T24
	casting.Specs = []shop.Spec{
		{Item: setup.LashVariation, Limit: maker(nil, mm(0.06), "manual, page 51-13")},
		{Step: "bores", Field: "line", Limit: maker(nil, mm(0.04), "manual, page 20-2")},
		{Step: "peg", Field: "gap", Limit: maker(mm(0.20), nil, "manual, page 51-20")},
	}
	house := shop.House{Specs: []shop.Spec{
		{Item: setup.LashVariation, Limit: shop.Limit{High: mm(0.09), Origin: shop.Measured, Source: "since 2019"}},
		{Item: setup.PinionUsed, Limit: shop.Limit{Low: mm(1200), High: mm(1800), Origin: shop.Measured, Source: "sheet 4"}},
	}}
	spec := shop.SetUpSpec(b.Open(shop.WorkPeg), &casting, &house)
	if err := spec.Check(); err != nil {
		t.Fatal(err)
	}
	if spec.Kind != setup.LightAdjusted || !spec.Pegged {
		t.Errorf("kind %q, pegged %v", spec.Kind, spec.Pegged)
	}
	for item, want := range map[setup.Item]string{
		setup.LashVariation: "up to 0.06 mm (2 thou) (maker: manual, page 51-13)",
		setup.BoreLine:      "up to 0.982′ (maker: manual, page 20-2)",
		setup.PegTight:      "0.20 to 0.40 mm (8 to 16 thou) (maker: manual, page 51-20; its upper end is the trade's)",
		setup.PinionUsed:    "1.2 to 1.8 N·m (11 to 16 lbf·inch) (shop's own sheet 4)",
	} {
		if got := spec.Limit(item).Text(); got != want {
			t.Errorf("%s: %q, want %q", item, got, want)
		}
	}
	for _, bad := range []shop.Spec{
		{Item: "luck", Limit: maker(nil, mm(1), "x")},
		{Item: setup.Lash, Step: "lash", Field: "lash", Limit: maker(nil, mm(1), "x")},
		{Item: setup.Lash, Limit: maker(mm(-1), mm(1), "x")},
	} {
		casting.Specs = []shop.Spec{bad}
		wantCode(t, casting.Check(), shop.Invalid)
	}
	casting.Specs, casting.AxleKind = nil, "tank"
	wantCode(t, casting.Check(), shop.Invalid)
}

func TestFailureGuideNamesBoxesThereAre(t *testing.T) {
	for _, f := range shop.Failures {
		if f.Seen == "" || f.Likely == "" || f.Ask == "" || len(f.Where) == 0 {
			t.Errorf("the line %q is not whole", f.Seen)
		}
		for _, at := range f.Where {
			if _, ok := shop.FieldOf(at.Step, at.Item); !ok {
				t.Errorf("%q points to %s, which is not there", f.Seen, at)
			}
		}
		if got, ok := shop.FailureOf(f.Seen); !ok || got.Likely != f.Likely {
			t.Errorf("%q is not found", f.Seen)
		}
	}
}

func TestStopsNameStepsThereAre(t *testing.T) {
	for _, s := range shop.AllStops() {
		if s.Sentence == "" || s.Why == "" || len(s.Steps) == 0 {
			t.Errorf("stop %s is not whole", s.Key)
		}
		for _, key := range s.Steps {
			if _, ok := shop.StepOf(key); !ok {
				t.Errorf("stop %s names the step %s", s.Key, key)
			}
		}
		for _, at := range s.Items {
			if _, ok := shop.FieldOf(at.Step, at.Item); !ok {
				t.Errorf("stop %s names the box %s", s.Key, at)
			}
		}
	}
}
