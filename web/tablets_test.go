//go:build browser

package web_test

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"

	"axlewright/shop"
	"axlewright/shop/shoptest"
)

// Two tablets on one job: each sees what the other writes, and where both write
// in one box nothing is written over: both are shown, and both stay in the record.
func TestTwoTabletsInTheBrowser(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	w := b.wire(t)
	one, two := newTablet(t, w, "one", 800, 1280), newTablet(t, w, "two", 800, 1280)
	at := "/job/" + string(j.ID) + "/lash"
	one.open(at)
	two.open(at)
	one.fill("lash/lash/1", "0.14")
	two.is(`document.querySelector('.box[data-slot="lash/lash/1"] .both')?.textContent.includes("0.14 mm")`)

	// Two is typing while one saves: what two types stays in the box.
	two.do(chromedp.Evaluate[chromedp.Void](`document.querySelector('.box[data-slot="lash/lash/2"] input[name=value]:not([type=hidden])').focus()`), chromedp.KeyEvent("0.1"))
	one.fill("lash/lash/2", "0.15")
	two.is(`document.activeElement.value == "0.1"`)
	two.do(chromedp.KeyEvent("9"), chromedp.Evaluate[chromedp.Void](`document.activeElement.blur()`))
	two.is(`document.querySelector('.box[data-slot="lash/lash/2"] .clash')`)
	two.is(`(() => { const t = document.querySelector('.box[data-slot="lash/lash/2"] .clash').textContent; return t.includes("0.15 mm") && t.includes("0.19 mm") })()`)
	two.picture("clash")
	// A clash outlasts the page.
	two.open(at)
	two.is(`document.querySelector('.box[data-slot="lash/lash/2"] .clash')`)
	two.tap(`.box[data-slot="lash/lash/2"] form[data-clash=mine] button`)
	two.is(`document.querySelector('.box[data-slot="lash/lash/2"] .both')?.textContent.includes("0.19 mm")`)
	one.is(`document.querySelector('.box[data-slot="lash/lash/2"] .both')?.textContent.includes("0.19 mm")`)
	one.is(`document.querySelector('.box[data-slot="lash/lash/2"] .earlier').textContent.includes("0.15 mm")`)
	one.picture("both")
	now, err := b.shop.Job(t.Context(), j.ID)
	if err != nil {
		t.Fatal(err)
	}
	if h := now.History(shop.Slot{Step: "lash", Item: "lash", Place: "2"}); len(h) != 2 {
		t.Errorf("%d entries in the box that both wrote in", len(h))
	}
}

// What was typed while the shop was out of reach outlasts the closed page.
func TestQueueOutlastsThePage(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	w := b.wire(t)
	x := newTablet(t, w, "queue", 360, 640)
	at := "/job/" + string(j.ID) + "/lash"
	x.open(at)
	w.cut.Store(true)
	x.write("lash/lash/1", "0.14")
	x.write("lash/lash/1", "0.15") // changed before it was ever sent, or after
	x.write("lash/lash/2", "0.16")
	x.is(`JSON.parse(localStorage.getItem("axlewright.queue")).length >= 2`)
	x.do(chromedp.Evaluate[chromedp.Void](`document.querySelector("form[data-note] textarea").focus()`), chromedp.KeyEvent("stays so"))
	x.tap("form[data-note] button")
	x.do(chromedp.Navigate("about:blank"))
	w.cut.Store(false)
	x.open(at)
	x.is(`document.querySelector('.box[data-slot="lash/lash/1"] .both')?.textContent.includes("0.15 mm")`)
	x.is(`document.querySelector('.box[data-slot="lash/lash/2"] .both')?.textContent.includes("0.16 mm")`)
	x.is(`JSON.parse(localStorage.getItem("axlewright.queue")).length == 0`)
	now, err := b.shop.Job(t.Context(), j.ID)
	if err != nil {
		t.Fatal(err)
	}
	if n := now.All("lash", shop.ItemNote); len(n) != 1 || n[0].Value.Text != "stays so" {
		t.Errorf("the note: %v", n)
	}
	for place, want := range map[string]string{"1": "0.15 mm", "2": "0.16 mm"} {
		if e := now.Standing(shop.Slot{Step: "lash", Item: "lash", Place: place}); e == nil || e.Value.Typed != want {
			t.Errorf("place %s: %+v", place, e)
		}
	}
}

// The keyboard alone: the first stop leads to the page, Tab goes through the
// boxes in their order and shows where it is, Enter goes on to the next box.
func TestKeyboardInTheBrowser(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	x := newTablet(t, b.wire(t), "keyboard", 1280, 800)
	x.open("/job/" + string(j.ID) + "/lash")
	x.do(chromedp.KeyEvent("\t"))
	x.is(`document.activeElement.matches("a.skip") && document.activeElement.getBoundingClientRect().width > 53`)
	x.do(chromedp.KeyEvent("\r"))
	x.is(`document.activeElement.id == "main"`)
	focus := func() string {
		return x.str(`(document.activeElement.closest(".box")?.dataset.slot || "") + " " + (document.activeElement.name || document.activeElement.tagName)`)
	}
	var order []string
	for range 120 {
		x.do(chromedp.KeyEvent("\t"))
		if at := focus(); at != "" && (len(order) == 0 || order[len(order)-1] != at) {
			order = append(order, at)
		}
		if x.str(`getComputedStyle(document.activeElement).outlineStyle`) == "none" && x.str(`document.activeElement.tagName`) != "BODY" {
			t.Errorf("nothing shows that %s has the focus", focus())
		}
	}
	var boxes []string
	for _, at := range order {
		for _, place := range []string{"1", "2", "3", "4"} {
			if at == "lash/lash/"+place+" value" {
				boxes = append(boxes, place)
			}
		}
	}
	if got := fmt.Sprint(boxes[:min(4, len(boxes))]); got != "[1 2 3 4]" {
		t.Errorf("boxes in the order %s of %v", got, order)
	}
	x.do(chromedp.Evaluate[chromedp.Void](`document.querySelector('.box[data-slot="lash/lash/1"] input[name=value]:not([type=hidden])').focus()`), chromedp.KeyEvent("0.15\r"))
	x.is(`document.activeElement.closest(".box")?.dataset.slot == "lash/lash/2"`)
	x.saved("lash/lash/1")
	x.is(`document.activeElement.closest(".box")?.dataset.slot == "lash/lash/2"`)
}

// A reading that was refused is not written later by itself, even when the
// cause is gone: it waits for the person, who sends it again or puts it away.
func TestRefusedReadingWaitsInTheBrowser(t *testing.T) {
	b := openBench(t)
	j := b.Open(shop.WorkPlates)
	x := newTablet(t, b.wire(t), "refused", 360, 740)
	at := "/job/" + string(j.ID)
	x.open(at + "/weld")
	x.write("weld/amps/1", "95")
	box := `document.querySelector('.box[data-slot="weld/amps/1"]')`
	x.is(box + `.querySelector(".refused") && ` + box + `.querySelectorAll(".again button").length == 2`)
	x.picture("refused")
	b.Write(j.ID, "metal", "metal", "", shop.Words(shop.MetalDuctile)) // the stop is gone
	x.open(at + "/weld")
	x.is(box + `.querySelector(".refused")?.textContent.includes("grey iron") && ` + box + `.querySelector("input[name=value]:not([type=hidden])").value == "95"`)
	x.open(at + "/lash")
	x.is(`document.querySelector("#queue a")?.getAttribute("href").startsWith("` + at + `/weld#")`)
	x.is(`document.querySelector("#queue").textContent.includes("“95” is not saved")`)
	other := b.Open()
	x.open("/job/" + string(other.ID) + "/lash")
	x.is(`document.querySelector("#queue a")?.textContent == "Look at it in job 0001"`)
	x.picture("refused elsewhere")
	now, err := b.shop.Job(t.Context(), j.ID)
	if err != nil {
		t.Fatal(err)
	}
	if e := now.Standing(shop.Slot{Step: "weld", Item: "amps", Place: "1"}); e != nil {
		t.Fatalf("it was written by itself: %+v", e.Value)
	}
	x.tap("#queue a")
	x.is(box)
	x.tap(`.box[data-slot="weld/amps/1"] [data-again]`)
	x.is(box + `.querySelector(".both")?.textContent.includes("95 A")`)
	x.is(`JSON.parse(localStorage.getItem("axlewright.queue")).length == 0`)

	// What is put away is gone, and the box shows what stands.
	x.open(at + "/lash")
	x.write("lash/lash/1", "tight")
	x.tap(`.box[data-slot="lash/lash/1"] [data-away]`)
	x.is(`JSON.parse(localStorage.getItem("axlewright.queue")).length == 0`)
	x.is(`(() => { const b = document.querySelector('.box[data-slot="lash/lash/1"]'); return !b.querySelector(".refused") && b.querySelector("input[name=value]:not([type=hidden])").value == "" })()`)
}

// After a certificate a correction waits for its reason, and one reason is
// asked for, not two.
func TestReasonIsAskedOnceInTheBrowser(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	b.Write(j.ID, "lash", "lash", "1", shoptest.MM("0.14", 0.14))
	b.Write(j.ID, "stamp", "number", "", shop.Text("FW-1"))
	if _, err := b.shop.Certify(b.Ctx, b.Builder, j.ID, "the rest was not ordered"); err != nil {
		t.Fatal(err)
	}
	x := newTablet(t, b.wire(t), "reason", 360, 740)
	x.open("/job/" + string(j.ID) + "/lash")
	box := `document.querySelector('.box[data-slot="lash/lash/1"]')`
	x.write("lash/lash/1", "0.16")
	x.is(box + `.querySelector(".needs") && !` + box + `.querySelector(".refused")`)
	b.Write(j.ID, "lash", "lash", "1", shoptest.MM("0.15", 0.15)) // somebody else is first
	x.do(chromedp.Evaluate[chromedp.Void](box+`.querySelector(".why input").focus()`), chromedp.KeyEvent("read again"), chromedp.Evaluate[chromedp.Void](`document.activeElement.blur()`))
	x.is(box + `.querySelector(".clash")`)
	x.is(`[...` + box + `.querySelectorAll("input[name=why]")].filter((e) => e.checkVisibility()).length == 1`)
	x.tap(`.box[data-slot="lash/lash/1"] form[data-clash=mine] button`)
	x.is(box + `.querySelector(".both")?.textContent.includes("0.16 mm")`)
	x.write("lash/lash/1", "0.17")
	x.do(chromedp.Evaluate[chromedp.Void](box+`.querySelector(".why input").focus()`), chromedp.KeyEvent("dial moved"), chromedp.Evaluate[chromedp.Void](`document.activeElement.blur()`))
	x.is(box + `.querySelector(".both")?.textContent.includes("0.17 mm")`)
}

// Without the shop, pages that were opened before open again, to be read; what
// is typed on them waits. One that was never opened says so. Signing out forgets.
func TestPagesOpenWithoutTheShopInTheBrowser(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	w := b.wire(t)
	x := newTablet(t, w, "away", 360, 740)
	at := "/job/" + string(j.ID)
	x.open("/")
	x.is(`navigator.serviceWorker.controller`)
	x.open(at + "/lash")
	x.open(at + "/preload")
	x.is(`document.querySelector("article.step[data-step=preload]")`)
	w.cut.Store(true)
	x.open(at + "/lash")
	x.is(`document.body.dataset.kept && document.querySelector("#queue").textContent.includes("This page is as it was at")`)
	x.is(`document.documentElement.classList.contains("scripts") && getComputedStyle(document.querySelector(".plate")).borderStyle == "solid"`)
	x.is(`[...document.querySelectorAll("form[data-photo] button")].every((b) => b.disabled)`)
	x.picture("away")
	x.write("lash/lash/1", "0.14")
	x.is(`document.querySelector("#queue").textContent.includes("1 reading is not yet saved") && document.querySelector("#queue").textContent.includes("sent by itself")`)
	x.open("/handbook")
	x.is(`document.querySelector("h1").textContent == "The shop cannot be reached"`)
	x.is(`[...document.querySelectorAll(".links a")].some((a) => a.getAttribute("href") == "` + at + `/lash")`)
	x.picture("never opened")
	x.open(at + "/lash")
	w.cut.Store(false)
	x.is(`!document.body.dataset.kept && document.querySelector('.box[data-slot="lash/lash/1"] .both')?.textContent.includes("0.14 mm")`)

	x.open("/sign-in")
	x.is(`document.readyState == "complete"`)
	x.do(chromedp.Evaluate[chromedp.Void](`caches.open("axlewright pages").then((c) => c.keys()).then((k) => document.title = "kept " + k.filter((r) => r.url.includes("/job/")).length)`))
	x.is(`document.title == "kept 0"`)
}
