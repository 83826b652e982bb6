package web_test

import (
	"net/http"
	"strings"
	"testing"
	"time"

	"golang.org/x/net/html"

	"axlewright/quantity"
	"axlewright/shop"
	"axlewright/shop/shoptest"
)

func TestReadingIsSavedAsItIsLeft(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	b.Write(j.ID, "identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T24.ID))
	at := "/job/" + string(j.ID)
	send := func(fields ...string) answer {
		return b.script(at+"/set", append([]string{"step", "lash", "item", "lash", "place", "2"}, fields...)...)
	}
	a := send("corrects", "0", "value", "8", "unit", "thou", "ticket", "t1", "instrument", "dial gauge 3")
	if a.status != http.StatusOK {
		t.Fatalf("%d %s", a.status, a.body)
	}
	box := boxOf(t, parse(t, a.body), "lash/lash/2")
	for _, want := range []string{"0.20 mm (8 thou)", "look", "dial gauge 3", "allowed"} {
		if want == "allowed" {
			want = "0.076 to 0.18 mm (3 to 7 thou)" // the trade's band for light 4x4s with adjusters, as T24's card says
		}
		if !strings.Contains(text(box), want) {
			t.Errorf("the box does not say %q: %s", want, text(box))
		}
	}
	first := attr(box, "data-last")

	// The same ticket again is the same entry.
	again := send("corrects", "0", "value", "8", "unit", "thou", "ticket", "t1", "instrument", "dial gauge 3")
	if got := attr(boxOf(t, parse(t, again.body), "lash/lash/2"), "data-last"); again.status != http.StatusOK || got != first {
		t.Errorf("sent twice: %d, entry %s after %s", again.status, got, first)
	}

	// A correction names what it follows and shows what stood.
	a = send("corrects", first, "value", "0.15", "unit", "mm", "ticket", "t2", "why", "read again")
	box = boxOf(t, parse(t, a.body), "lash/lash/2")
	if a.status != http.StatusOK || !strings.Contains(text(box), "was 0.20 mm (8 thou)") || !strings.Contains(text(box), "read again") || !strings.Contains(text(box), "fine") {
		t.Errorf("corrected: %d %s", a.status, text(box))
	}

	// One who saw only the first writes nothing over the second: both are shown.
	a = send("corrects", first, "value", "0.31", "unit", "mm", "ticket", "t3")
	box = boxOf(t, parse(t, a.body), "lash/lash/2")
	if a.status != http.StatusConflict || !strings.Contains(text(box), "0.15 mm (6 thou)") || !strings.Contains(text(box), "0.31 mm (12 thou)") {
		t.Errorf("a clash: %d %s", a.status, text(box))
	}
	now, err := b.shop.Job(b.Ctx, j.ID)
	if err != nil {
		t.Fatal(err)
	}
	if h := now.History(shop.Slot{Step: "lash", Item: "lash", Place: "2"}); len(h) != 2 || h[0].Instrument != "dial gauge 3" || h[0].Value.Typed != "8 thou" {
		t.Errorf("the record holds %+v", h)
	}
}

func TestRefusedReadings(t *testing.T) {
	b := openBench(t)
	j := b.Open(shop.WorkPlates)
	at := "/job/" + string(j.ID) + "/set"
	for name, c := range map[string]struct {
		status int
		says   string
		fields []string
	}{
		"no number":          {http.StatusUnprocessableEntity, "not saved", []string{"step", "lash", "item", "lash", "place", "1", "value", "tight", "unit", ""}},
		"a torque":           {http.StatusUnprocessableEntity, "not saved", []string{"step", "lash", "item", "lash", "place", "1", "value", "20 N·m"}},
		"no unit":            {http.StatusUnprocessableEntity, "not saved", []string{"step", "lash", "item", "lash", "place", "1", "value", "0.2", "unit", ""}},
		"another word":       {http.StatusUnprocessableEntity, "not saved", []string{"step", "lash", "item", "dial", "value", "sideways"}},
		"a stop stands":      {http.StatusLocked, "grey iron or not known", []string{"step", "weld", "item", "amps", "place", "1", "value", "95", "unit", "A"}},
		"a day that is none": {http.StatusUnprocessableEntity, "not saved", []string{"step", "handover", "item", "day", "value", "2026-13-40"}},
	} {
		a := b.script(at, append(c.fields, "corrects", "0")...)
		if a.status != c.status || !strings.Contains(text(parse(t, a.body)), c.says) {
			t.Errorf("%s: %d %s", name, a.status, text(parse(t, a.body)))
		}
		// What was typed is still in the box.
		if c.fields[len(c.fields)-2] == "value" && name == "no number" && !strings.Contains(a.body, c.fields[len(c.fields)-1]) {
			t.Errorf("%s: what was typed is gone", name)
		}
	}
	if a := b.script(at, "step", "lash", "item", "nothing", "value", "1"); a.status != http.StatusNotFound {
		t.Errorf("a box that is not there: %d", a.status)
	}
	if a := b.script("/job/nosuchjob/set", "step", "lash", "item", "lash", "place", "1", "value", "0.2 mm"); a.status != http.StatusNotFound {
		t.Errorf("a job that is not there: %d", a.status)
	}
}

// A reading that waited on a tablet keeps the time at which it was typed.
func TestSentLater(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	taken := time.Now().Add(-40 * time.Minute).UTC().Truncate(time.Second)
	a := b.script("/job/"+string(j.ID)+"/set", "step", "lash", "item", "lash", "place", "1", "corrects", "0", "value", "0.15 mm", "taken", taken.Format(time.RFC3339), "ticket", "late")
	if a.status != http.StatusOK || !strings.Contains(text(parse(t, a.body)), "sent later") {
		t.Fatalf("%d %s", a.status, text(parse(t, a.body)))
	}
	now, err := b.shop.Job(b.Ctx, j.ID)
	if err != nil {
		t.Fatal(err)
	}
	if e := now.Standing(shop.Slot{Step: "lash", Item: "lash", Place: "1"}); e == nil || !e.Taken.Equal(taken) {
		t.Errorf("typed at %v, kept %+v", taken, e)
	}
}

// 21 lbf·ft for 21 lbf·in is twelve times too much: 1 ft = 12 in by definition.
func TestInchAndFootAreQueried(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	b.Write(j.ID, "identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T24.ID))
	at := "/job/" + string(j.ID) + "/set"
	b.script(at, "step", "preload", "item", "bearings", "corrects", "0", "value", "new")
	a := b.script(at, "step", "preload", "item", "torque", "corrects", "0", "value", "21", "unit", "lbf·ft")
	if got := text(parse(t, a.body)); a.status != http.StatusOK || !strings.Contains(got, "Is it 2.4 N·m (21 lbf·inch)? You typed 21 lbf·ft") || !strings.Contains(got, "It is 21 lbf·ft , as typed") {
		t.Errorf("%d %s", a.status, got)
	}
	box := boxOf(t, parse(t, a.body), "preload/torque")
	a = b.script(at, "step", "preload", "item", "torque", "corrects", attr(box, "data-last"), "value", "21", "unit", "lbf·in", "why", "inch and foot mixed up")
	if got := text(parse(t, a.body)); strings.Contains(got, "Is it") || !strings.Contains(got, "fine") {
		t.Errorf("mended: %s", got)
	}
	now, err := b.shop.Job(b.Ctx, j.ID)
	if err != nil {
		t.Fatal(err)
	}
	v := now.Value("preload", "torque")
	q, err := quantity.Parse("21 lbf·in", quantity.Torque)
	if err != nil || v.SI == nil || *v.SI != q.SI {
		t.Errorf("kept %+v, %v", v, err)
	}
}

// Ten times too much is asked after, never refused: one tap puts it right, one
// keeps it, and the record says that it was confirmed.
func TestTenTimesTooMuchIsQueried(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	b.Write(j.ID, "identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T24.ID))
	at := "/job/" + string(j.ID) + "/set"
	slot := []string{"step", "lash", "item", "lash", "place", "1"}
	send := func(fields ...string) (string, *html.Node) {
		a := b.script(at, append(slot, fields...)...)
		if a.status != http.StatusOK {
			t.Fatalf("%d %s", a.status, a.body)
		}
		box := boxOf(t, parse(t, a.body), "lash/lash/1")
		return text(box), box
	}
	got, box := send("corrects", "0", "value", "1.5", "unit", "mm")
	for _, want := range []string{"Is it 0.15 mm (6 thou)? You typed 1.5 mm ; allowed 0.076 to 0.18 mm (3 to 7 thou).", "It is 0.15 mm (6 thou)", "It is 1.5 mm , as typed"} {
		if !strings.Contains(got, want) {
			t.Errorf("the box does not say %q: %s", want, got)
		}
	}
	// No sum is worked out from it before somebody has said what was meant.
	for _, place := range []string{"2", "3", "4"} {
		b.Write(j.ID, "lash", "lash", place, shoptest.MM("0.15", 0.15))
	}
	b.Write(j.ID, "lash", "dial", "", shop.Words(shop.DialAlong))
	b.Write(j.ID, "assemble", "set", "", shop.Words("new"))
	if page := text(b.page("/job/" + string(j.ID) + "/lash")); !strings.Contains(page, "Still to come: whether 1.5 mm is right (Lash: Lash at the heel, 1).") || strings.Contains(page, "Variation of lash") {
		t.Errorf("the step does not wait: %s", page)
	}

	last := attr(box, "data-last")
	got, box = send("corrects", last, "value", "1.5 mm", "confirmed", "1", "why", "confirmed as typed")
	if strings.Contains(got, "Is it") || !strings.Contains(got, "confirmed as typed") || attr(box, "data-last") == last {
		t.Errorf("confirmed: %s", got)
	}
	if page := text(b.page("/job/" + string(j.ID) + "/lash")); !strings.Contains(page, "Variation of lash") {
		t.Errorf("confirmed, it still waits: %s", page)
	}
	// Left again without a change, it stays confirmed.
	last = attr(box, "data-last")
	if got, box = send("corrects", last, "value", "1.5", "unit", "mm"); attr(box, "data-last") != last || strings.Contains(got, "Is it") {
		t.Errorf("left again: %s", got)
	}
	if got, _ = send("corrects", last, "value", "0.15 mm", "why", "the point one place out"); !strings.Contains(got, "fine") || strings.Contains(got, "Is it") || !strings.Contains(got, "the point one place out") {
		t.Errorf("put right: %s", got)
	}
}

func TestFormsWorkWithoutScripts(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	at := "/job/" + string(j.ID)
	if a := b.post(at+"/set", "step", "lash", "item", "lash", "place", "1", "corrects", "0", "value", "0.15 mm"); a.status != http.StatusSeeOther || !strings.HasPrefix(a.header.Get("Location"), at+"/lash#") {
		t.Errorf("%d %s", a.status, a.header.Get("Location"))
	}
	if a := b.post(at+"/mark", "step", "lash", "word", "done", "corrects", "0"); a.status != http.StatusSeeOther {
		t.Errorf("marked: %d", a.status)
	}
	if a := b.post(at+"/state", "state", "on the bench", "corrects", "0"); a.status != http.StatusSeeOther {
		t.Errorf("moved: %d", a.status)
	}
	if a := b.post(at+"/note", "step", "lash", "text", "stays so", "ticket", "n1"); a.status != http.StatusSeeOther {
		t.Errorf("noted: %d", a.status)
	}
	b.post(at+"/note", "step", "lash", "text", "stays so", "ticket", "n1")
	step := text(b.page(at + "/lash"))
	if strings.Count(step, "stays so") != 1 || !strings.Contains(step, "Marked “done”") {
		t.Errorf("the step says %s", step)
	}
	if got := text(b.page("/")); !strings.Contains(got, "On the bench") {
		t.Errorf("today says %s", got)
	}
}
