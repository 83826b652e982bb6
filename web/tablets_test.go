//go:build browser

package web_test

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"

	"axlewright/shop"
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
