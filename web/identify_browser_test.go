//go:build browser

package web_test

import (
	"testing"

	"axlewright/shop"
)

// A thumb answers question after question; what is tapped while the shop cannot
// be reached waits on the tablet and goes out by itself.
func TestIdentifyInTheBrowser(t *testing.T) {
	b := openBench(t)
	j := b.Open(shop.WorkPlates)
	x := newTablet(t, b.wire(t), "phone", 360, 740)
	x.open("/job/" + string(j.ID) + "/identify?feature=raised+number")
	x.is(`document.querySelector("#ask .question").textContent.includes("Which number")`)
	x.tap(`#ask button[value="20"]`)
	x.is(`location.search == "" && document.querySelector("#ask .question").textContent.includes("How many ribs")`)
	x.is(`document.querySelector("#identify .big").textContent.includes("T20")`)
	x.picture("identify ribs")
	x.wire.cut.Store(true)
	x.tap(`#ask button[value="four curved"]`)
	x.is(`document.querySelector("#ask .box").classList.contains("unsent")`)
	x.is(`!document.getElementById("queue").hidden`)
	x.picture("identify waits")
	x.wire.cut.Store(false)
	x.is(`document.querySelector("#identify .big").textContent.includes("T20K")`)
	x.is(`document.getElementById("queue").hidden`)
	got, err := b.shop.Job(t.Context(), j.ID)
	if err != nil {
		t.Fatal(err)
	}
	for feature, says := range map[string]string{"raised number": "20", "ribs": "four curved"} {
		if all := got.History(shop.Slot{Step: "identify", Item: shop.SeenItem, Place: feature}); len(all) != 1 || all[0].Value.Text != says {
			t.Errorf("%s: %+v", feature, all)
		}
	}
}
