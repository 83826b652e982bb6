package shop_test

import (
	"strings"
	"testing"

	"axlewright/quantity"
	"axlewright/shop"
	"axlewright/shop/shoptest"
)

func TestNonsenseIsRefusedOrAskedBack(t *testing.T) {
	b := bench(t)
	j := b.Open(shop.WorkPeg)
	b.Write(j.ID, "identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T24.ID))
	for _, c := range []struct {
		step shop.StepKey
		item string
		v    shop.Value
	}{
		{"enquiry", "axle_load", shop.Figure("-5 kg", -5, quantity.Mass)},
		{"shim", "in_place", shoptest.MM("-1.2", -1.2)},
	} {
		_, err := b.TryWrite(b.Owner, j.ID, c.step, c.item, "", c.v)
		wantCode(t, err, shop.Invalid)
	}
	for _, c := range []struct {
		step  shop.StepKey
		item  string
		v     shop.Value
		meant string
	}{
		{"peg", "pitch", shoptest.MM("15", 15), "1.5 mm"},
		{"peg", "pitch", shoptest.MM("1.5", 1.5), ""},
		{"preload", "nut", shop.Figure("2000 N·m", 2000, quantity.Torque), "200.0 N·m"},
		{"preload", "nut", shop.Figure("200 N·m", 200, quantity.Torque), ""},
		{"lash", "wanted", shoptest.MM("1.5", 1.5), "0.15 mm"},
		{"lash", "wanted", shoptest.MM("1.8", 1.8), "0.18 mm"},
		{"shim", "distance", shop.Figure("1.000 m", 1, quantity.Length), "0.1000 m"},
		{"shim", "distance", shoptest.MM("100", 100), ""},
	} {
		j = b.Write(j.ID, c.step, c.item, "", c.v)
		var got []string
		for _, m := range shop.Query(j.Standing(shop.Slot{Step: c.step, Item: c.item})) {
			got = append(got, m.Typed)
		}
		if all := strings.Join(got, "; "); c.meant == "" && all != "" || !strings.Contains(all, c.meant) {
			t.Errorf("%s/%s %s: asked %q, want %q", c.step, c.item, c.v.Typed, all, c.meant)
		}
	}
	for _, c := range []struct {
		tyre string
		want shop.Verdict
	}{{"banana", shop.Look}, {"235/85R16", ""}} {
		j = b.Write(j.ID, "enquiry", "tyre_fitted", "", shop.Text(c.tyre))
		if e := j.Standing(shop.Slot{Step: "enquiry", Item: "tyre_fitted"}); e.Verdict != c.want || e.Value.Text != c.tyre {
			t.Errorf("tyre %q: %q", e.Value.Text, e.Verdict)
		}
	}
}

func TestWhatIsNextAfterAReturnAndAQuote(t *testing.T) {
	b := bench(t)
	for _, c := range []struct {
		state shop.State
		want  shop.StepKey
	}{{shop.StateBack, "return"}, {shop.StateQuoted, "donor"}} {
		j, err := b.Shop.SetState(b.Ctx, b.Owner, b.Open().ID, c.state, 0, "")
		if err != nil {
			t.Fatal(err)
		}
		if next := j.Next(j.Steps()); next != c.want {
			t.Errorf("%s: next is %q, want %q", c.state, next, c.want)
		}
	}
}

// Two readings over the caps 3 mm apart are worth a look, and so is a mark of 999.
func TestWhatCannotBeIsWorthALook(t *testing.T) {
	b := bench(t)
	j := b.Open()
	j = b.Write(j.ID, "side", "before", "", shoptest.MM("300", 300))
	for _, c := range []struct {
		step shop.StepKey
		item string
		v    shop.Value
		want shop.Verdict
	}{
		{"side", "after", shoptest.MM("303", 303), shop.Look},
		{"side", "after", shoptest.MM("300.25", 300.25), shop.Fine},
		{"shim", "new_mark", count("999"), shop.Look},
		{"shim", "new_mark", count("-2"), shop.Fine},
	} {
		j = b.Write(j.ID, c.step, c.item, "", c.v)
		if e := j.Standing(shop.Slot{Step: c.step, Item: c.item}); e.Verdict != c.want {
			t.Errorf("%s %s: %q, want %q", c.item, c.v.Typed, e.Verdict, c.want)
		}
	}
}
