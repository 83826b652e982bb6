//go:build browser

package web_test

import (
	"fmt"
	"net/http"
	"os"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"axlewright/shop"
	"axlewright/shop/shoptest"
)

// screens are an old phone, a tablet and a screen on the wall.
var screens = []struct {
	name          string
	width, height int64
}{{"phone", 360, 640}, {"tablet", 1280, 800}, {"wall", 2560, 1440}}

// Every page on every screen: nothing wider than it, everything named, large
// enough for a glove and readable; no fault and no refusal told by the browser.
// With AXE_CORE naming the file of that checker its findings count too.
func TestEveryPageInTheBrowser(t *testing.T) {
	look, err := os.ReadFile("testdata/look.js")
	if err != nil {
		t.Fatal(err)
	}
	b := openBench(t)
	job := b.busyJob(t)
	paths := append(b.allPages(job), b.castingPages(&shop.Job{ID: job})...)
	if advice := b.advise(t, job); advice != "" {
		paths = append(paths, advice)
	}
	w := b.wire(t)
	for _, s := range screens {
		t.Run(s.name, func(t *testing.T) {
			x := newTablet(t, w, s.name, s.width, s.height)
			told := x.complaints()
			for _, path := range paths {
				x.open(path)
				x.is(`document.readyState == "complete" && document.documentElement.classList.contains("scripts")`)
				wrong, err := chromedp.Run(x.ctx, chromedp.Evaluate[[]string](string(look)))
				if err != nil {
					t.Fatal(path, err)
				}
				for _, say := range append(wrong, x.axe()...) {
					t.Errorf("%s: %s", path, say)
				}
				x.picture(strings.Trim(strings.NewReplacer("/", " ", string(job), "job", "?", " ", "=", " ", "&", " ").Replace(path), " "))
			}
			for _, say := range told() {
				t.Error(say)
			}
		})
	}
}

// complaints collects what the browser itself complains of: errors of scripts,
// things that the page's own policy refused.
func (x *tablet) complaints() func() []string {
	var mu sync.Mutex
	var all []string
	add := func(say string) {
		mu.Lock()
		defer mu.Unlock()
		if !strings.Contains(say, "404 (Not Found)") { // the page that is not there
			all = append(all, say)
		}
	}
	faults, told := chromedp.Events(x.ctx, runtime.ExceptionThrown), chromedp.Events(x.ctx, log.EntryAdded)
	go func() {
		for e, err := range faults {
			if err != nil {
				return
			}
			add("script: " + e.ExceptionDetails.Text)
		}
	}()
	go func() {
		for e, err := range told {
			if err != nil {
				return
			}
			add("browser: " + e.Entry.Text + " " + e.Entry.URL)
		}
	}()
	return func() []string {
		mu.Lock()
		defer mu.Unlock()
		return all
	}
}

// axe runs that checker in the page.
func (x *tablet) axe() []string {
	x.t.Helper()
	path := os.Getenv("AXE_CORE")
	if path == "" {
		return nil
	}
	source, err := os.ReadFile(path)
	if err != nil {
		x.t.Fatal(err)
	}
	x.do(chromedp.Evaluate[chromedp.Void](string(source) + ";0"))
	x.do(chromedp.Evaluate[chromedp.Void](`window._axe = null; axe.run(document, {runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]}).then((r) => { window._axe = r.violations.map((v) => v.id + ": " + v.help + ": " + v.nodes[0].html.slice(0, 140)) })`))
	x.is(`window._axe`)
	found, err := chromedp.Run(x.ctx, chromedp.Evaluate[[]string](`window._axe`))
	if err != nil {
		x.t.Fatal(err)
	}
	return found
}

// allPages are the pages of the site map, each once.
func (b *bench) allPages(job shop.ID) []string {
	at := "/job/" + string(job)
	paths := []string{"/", "/search", "/search?q=bracken", "/search?state=enquiry", at, at + "/record", at + "/certificate", at + "/advice", at + "/quote",
		at + "/choose?step=caps&item=bolts&place=1", at + "/choose?step=enquiry&item=customer",
		"/setting-up", "/setting-up/marks?asked=1&push=towards+the+crown+wheel&old=1.25&old_mark=2&new_mark=-3&mark_unit=thou&mark_plus=plus+sits+further+from+the+crown+wheel",
		"/setting-up/lash?job=" + string(job) + "&asked=1&gears=new", "/setting-up/peg", "/setting-up/adjust", "/setting-up/bores", "/setting-up/pattern", "/setting-up/spacer",
		at + "/kit", at + "/weld-plan", at + "/weld-log", "/welding", "/stock/kits", "/stock/sheets",
		"/stock", "/stock/lots", "/stock/lot/" + string(b.CapBolts.ID), "/cards/donor/" + string(b.Donor.ID), "/cards/kit/" + string(b.Kit.ID), "/cards/casting/" + string(b.T24.ID), "/cards/customer", "/cards/lot/new",
		"/handbook", "/handbook/bolt.stress-area", "/handbook/bolt.stress-area?d=12+mm&pitch=1.75+mm", "/handbook/bolt.stress-area?d=12+mm&pitch=99+mm",
		"/settings", "/settings/people", "/settings/prices", "/settings/limits", "/returns", "/verify", "/nowhere"}
	for _, s := range shop.Steps() {
		paths = append(paths, at+"/"+string(s.Key))
	}
	return paths
}

// busyJob is a job with readings, corrections, lots, notes, a stop, and names
// that try what can be tried.
func (b *bench) busyJob(t *testing.T) shop.ID {
	t.Helper()
	j := b.Open(shop.WorkFixings, shop.WorkPeg, shop.WorkPlates)
	for i, mm := range []string{"0.14", "0.16", "0.19", "0.17", "0.15"} {
		b.Write(j.ID, "lash", "lash", fmt.Sprint(i+1), shoptest.MM(mm, []float64{.14, .16, .19, .17, .15}[i]))
	}
	b.Write(j.ID, "lash", "lash", "3", shoptest.MM("0.17", 0.17))
	b.Write(j.ID, "identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T24.ID))
	b.Write(j.ID, "caps", "bolts", "1", shop.Used(b.CapBolts.ID, 8))
	b.Write(j.ID, "clean", "wash", "", shop.Words(shop.SolventChlorinated))
	b.Write(j.ID, "stamp", "number", "", shop.Text("FW-T24-0117"))
	b.Write(j.ID, "enquiry", "driver", "", shop.Text(`O’Malley "the <b>fast</b>" עומר 🐏`))
	if _, err := b.Shop.Note(b.Ctx, b.Builder, j.ID, "lash", "Turned twice; <script>alert(1)</script> it stays so.", ""); err != nil {
		t.Fatal(err)
	}
	return j.ID
}

// advise asks for advice as a page does and returns where it is kept.
func (b *bench) advise(t *testing.T, job shop.ID) string {
	t.Helper()
	at := "/job/" + string(job) + "/advice"
	if a := b.post(at, adviceFields...); a.status != http.StatusSeeOther {
		t.Fatalf("advice: %d %s", a.status, a.body)
	}
	for end := time.Now().Add(4 * time.Minute); time.Now().Before(end); time.Sleep(200 * time.Millisecond) {
		j, err := b.shop.Job(t.Context(), job)
		if err != nil {
			t.Fatal(err)
		}
		if len(j.Kept(shop.EntryAdvice)) > 0 {
			return at + "/1"
		}
	}
	t.Fatalf("no advice came: %s", text(b.page(at)))
	return ""
}
