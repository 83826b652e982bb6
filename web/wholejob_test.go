//go:build browser

package web_test

import (
	"testing"

	"axlewright/shop"

	"github.com/chromedp/chromedp"
)

// A whole job, from the telephone to the certificate, as people do it: on the
// screen of an old phone and on that of a tablet.
func TestWholeJobInTheBrowser(t *testing.T) {
	for _, screen := range []struct {
		name          string
		width, height int64
	}{{"phone", 360, 640}, {"tablet", 1280, 800}} {
		t.Run(screen.name, func(t *testing.T) {
			b := openBench(t)
			x := newTablet(t, b.wire(t), screen.name, screen.width, screen.height)
			wholeJob(t, b, x)
		})
	}
}

func wholeJob(t *testing.T, b *bench, x *tablet) {
	x.open("/")
	x.picture("today empty")
	x.tap(`form[action="/job"] button`)
	x.is(`document.querySelector("article.step[data-step=enquiry]")`)
	x.take("enquiry/customer", "Bracken")
	x.take("enquiry/vehicle", "pick-up")
	x.choose("enquiry/end", "rear")
	x.fill("enquiry/why", "Heel ends of three teeth broken off")
	x.fill("enquiry/tyre_planned", "235/85R16")
	x.fill("enquiry/axle_load", "1450")
	x.choose("enquiry/work", "peg")
	x.choose("enquiry/work", "better fixings")
	x.picture("enquiry")

	x.step("donor")
	x.take("donor/donor", "D-12")
	x.choose("donor/accept", "accepted")
	x.fill("donor/teeth", "46/13")
	x.step("identify")
	x.take("identify/casting", "T24")
	x.choose("identify/sure", "sure")

	x.step("strip")
	x.fill("strip/lash_found/1", "0.41")
	x.step("weld")
	x.is(`document.querySelector(".halt")`)
	x.picture("weld stopped")
	x.step("metal")
	x.choose("metal/metal", "ductile iron")
	x.step("weld")
	x.is(`!document.querySelector(".halt")`)

	// The wire is cut: readings wait on the tablet and go out by themselves.
	x.step("lash")
	x.fill("lash/lash/1", "0.14")
	x.wire.cut.Store(true)
	x.write("lash/lash/2", "0.15")
	x.is(`document.querySelector('.box[data-slot="lash/lash/2"]').classList.contains("unsent")`)
	x.is(`!document.getElementById("queue").hidden`)
	x.write("lash/lash/3", "0.17")
	x.write("lash/lash/4", "0.42")
	x.is(`JSON.parse(localStorage.getItem("axlewright.queue")).length == 3`)
	x.picture("lash not yet saved")
	x.wire.cut.Store(false)
	x.saved("lash/lash/2")
	x.saved("lash/lash/3")
	x.saved("lash/lash/4")
	x.is(`document.getElementById("queue").hidden && JSON.parse(localStorage.getItem("axlewright.queue")).length == 0`)
	x.choose("lash/dial", "along the turn")
	// A correction is seen: what it was, who, when.
	x.fill("lash/lash/4", "0.16")
	x.is(`document.querySelector('.box[data-slot="lash/lash/4"] .earlier').textContent.includes("0.42 mm")`)
	x.is(`document.querySelector("#chart svg")`)
	x.picture("lash")

	// Inch and foot mixed up is queried, and mended by one tap.
	x.step("preload")
	x.choose("preload/bearings", "new")
	x.unit("preload/torque", "lbf·ft")
	x.fill("preload/torque", "21")
	x.is(`document.querySelector('.box[data-slot="preload/torque"] .query')`)
	x.picture("preload queried")
	x.tap(`.box[data-slot="preload/torque"] .query button`)
	x.is(`document.querySelector('.box[data-slot="preload/torque"] .both')?.textContent.includes("2.4 N·m")`)

	x.step("peg")
	x.fill("peg/gap/tight spot", "0.2")
	x.choose("peg/touches", "clears all round")
	x.picture("peg")
	x.step("stamp")
	x.fill("stamp/number", "FW-T24-0117")
	x.step("handover")
	x.is(`document.querySelector(".plate").textContent.includes("FW-T24-0117")`)
	x.do(chromedp.Navigate(x.wire.url + "/job/" + x.str("document.body.dataset.job") + "/certificate"))
	x.picture("certificate before")
	x.is(`document.querySelector('form[action$="/certify"] input[name="why"]').value = "a trial: only these steps were done"`) // gaps are signed for by name
	x.tap(`form[action$="/certify"] button`)
	x.is(`document.querySelector("main").textContent.includes("Signed by")`)
	x.picture("certificate")

	// What the page shows is what the record holds, and the record is whole.
	job := shop.ID(x.str("document.body.dataset.job"))
	j, err := b.shop.Job(t.Context(), job)
	if err != nil {
		t.Fatal(err)
	}
	found, err := b.shop.VerifyJob(t.Context(), job)
	if err != nil || len(found) > 0 {
		t.Fatalf("record: %v %v", found, err)
	}
	if got := len(j.History(shop.Slot{Step: "lash", Item: "lash", Place: "4"})); got != 2 {
		t.Errorf("%d entries of the corrected lash, want 2", got)
	}
	if got := j.Stamped(); got != "FW-T24-0117" {
		t.Errorf("stamped %q", got)
	}
	check, err := b.shop.CheckCertificate(t.Context(), j.Certificates()[0].Text())
	if err != nil || !check.Signed || len(check.Findings) > 0 {
		t.Errorf("certificate: %+v %v", check, err)
	}
	x.open("/search?q=fw+t24+o117")
	x.is(`location.pathname == "/job/` + string(job) + `"`)
	x.picture("job")
	x.open("/")
	x.picture("today")
}
