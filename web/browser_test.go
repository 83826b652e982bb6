//go:build browser

package web_test

import (
	"context"
	"fmt"
	"net"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// chromium is Debian's. Without it these tests fail: they are asked for by a tag.
const chromium = "/usr/bin/chromium"

// browser starts one Chromium without any network but this computer's.
func browser(t *testing.T) context.Context {
	t.Helper()
	if _, err := os.Stat(chromium); err != nil {
		t.Fatalf("the browser tests need Chromium: %v", err)
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(chromium), chromedp.NoSandbox, chromedp.DisableGPU,
		chromedp.UserDataDir(t.TempDir()), chromedp.Flag("disable-background-networking", true), chromedp.Flag("disable-component-update", true),
		chromedp.Flag("disable-sync", true), chromedp.Flag("host-resolver-rules", "MAP * ~NOTFOUND, EXCLUDE 127.0.0.1"))
	allocator, stop := chromedp.NewExecAllocator(t.Context(), options...)
	t.Cleanup(stop)
	ctx, cancel := chromedp.NewContext(allocator)
	t.Cleanup(cancel)
	if err := chromedp.Do(ctx, chromedp.Navigate("about:blank")); err != nil {
		t.Fatal(err)
	}
	return ctx
}

// A wire stands between tablets and shop, and can be cut.
type wire struct {
	url string
	cut atomic.Bool
}

func (b *bench) wire(t *testing.T) *wire {
	t.Helper()
	w := &wire{}
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	var ts *httptest.Server
	ts = &httptest.Server{Listener: l, Config: &http.Server{Handler: http.HandlerFunc(func(rw http.ResponseWriter, r *http.Request) {
		if w.cut.Load() {
			panic(http.ErrAbortHandler)
		}
		b.web.ServeHTTP(rw, r)
	})}}
	ts.Start()
	t.Cleanup(ts.Close)
	t.Cleanup(b.web.Close)
	w.url = ts.URL
	return w
}

// A tablet is a browser of its own with a screen of its own size.
type tablet struct {
	t    *testing.T
	ctx  context.Context
	wire *wire
	name string
	n    int
}

func newTablet(t *testing.T, w *wire, name string, width, height int64) *tablet {
	t.Helper()
	x := &tablet{t: t, ctx: browser(t), wire: w, name: name}
	x.do(chromedp.EmulateViewport(width, height, chromedp.EmulateMobile, chromedp.EmulateTouch))
	return x
}

func (x *tablet) do(steps ...chromedp.Action[chromedp.Void]) {
	x.t.Helper()
	ctx, cancel := context.WithTimeout(x.ctx, 30*time.Second)
	defer cancel()
	if err := chromedp.Do(ctx, steps...); err != nil {
		x.picture("failed")
		x.t.Fatalf("%s: %v", x.name, err)
	}
}

func (x *tablet) open(path string) {
	x.t.Helper()
	x.do(chromedp.Navigate(x.wire.url + path))
}

// is waits until an expression of the page is true.
func (x *tablet) is(expression string) {
	x.t.Helper()
	deadline := time.Now().Add(15 * time.Second)
	for time.Now().Before(deadline) {
		ok, err := chromedp.Run(x.ctx, chromedp.Evaluate[bool]("!!("+expression+")"))
		if err == nil && ok {
			return
		}
		time.Sleep(40 * time.Millisecond)
	}
	x.picture("failed")
	here, _ := chromedp.Run(x.ctx, chromedp.Evaluate[string](`location.href + " wide " + document.documentElement.scrollWidth + "/" + innerWidth + " scale " + visualViewport.scale + " checked " + [...document.querySelectorAll(":checked")].map((e) => e.value) + " queue " + localStorage.getItem("axlewright.queue")`))
	x.t.Fatalf("%s: at %s, never true: %s", x.name, here, expression)
}

func (x *tablet) str(expression string) string {
	x.t.Helper()
	s, err := chromedp.Run(x.ctx, chromedp.Evaluate[string](expression))
	if err != nil {
		x.t.Fatalf("%s: %s: %v", x.name, expression, err)
	}
	return s
}

// slot is the selector of a box.
func slot(name string) string { return fmt.Sprintf(`.box[data-slot=%q]`, name) }

// write types a reading into its box and leaves it.
func (x *tablet) write(box, text string) {
	x.t.Helper()
	in := slot(box) + ` form[data-box] [name=value]:not([type=hidden])`
	x.is(fmt.Sprintf("document.querySelector(%q)", in))
	x.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`{const e = document.querySelector(%q); e.scrollIntoView({block: "center"}); e.focus(); e.select && e.select()}`, in)),
		chromedp.KeyEvent(text),
		chromedp.Evaluate[chromedp.Void](`document.activeElement.blur()`))
}

// unit chooses the unit beside a box.
func (x *tablet) unit(box, unit string) {
	x.t.Helper()
	x.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`{const e = document.querySelector(%q); e.value = %q; e.dispatchEvent(new Event("change", {bubbles: true}))}`, slot(box)+` select[name=unit]`, unit)))
}

// choose taps a word of a choice.
func (x *tablet) choose(box, word string) {
	x.t.Helper()
	in := slot(box) + fmt.Sprintf(` input:not([type=hidden])[value=%q]`, word)
	x.tap(in)
	x.saved(box)
}

// tap puts a finger on the middle of an element, which nothing may cover.
func (x *tablet) tap(selector string) {
	x.t.Helper()
	x.is(fmt.Sprintf("document.querySelector(%q)", selector))
	x.is(`document.readyState == "complete"`)
	var at, last []float64
	var err error
	for try := range 60 { // a page that has just been loaded may still scroll to its place
		at, err = chromedp.Run(x.ctx, chromedp.Evaluate[[]float64](fmt.Sprintf(`(() => {
		const e = document.querySelector(%q);
		if (%t) e.scrollIntoView({block: "center"});
		const r = e.getBoundingClientRect(), p = [r.x + r.width/2, r.y + r.height/2], top = document.elementFromPoint(...p);
		return top && (e.contains(top) || top.contains(e)) ? p : [];
	})()`, selector, try%4 == 0)))
		if err == nil && len(at) == 2 && slices.Equal(at, last) {
			break
		}
		last = at
		time.Sleep(50 * time.Millisecond)
	}
	if err != nil || len(at) != 2 {
		x.picture("failed")
		x.t.Fatalf("%s: %s cannot be tapped: %v %v", x.name, selector, at, err)
	}
	x.do(chromedp.MouseClickXY(at[0], at[1]))
}

// saved waits until a box holds an entry and nothing of it waits.
func (x *tablet) saved(box string) {
	x.t.Helper()
	x.is(fmt.Sprintf(`document.querySelector(%q)?.dataset.last > 0 && !document.querySelector(%q).classList.contains("unsent")`, slot(box), slot(box)))
}

// fill writes a reading and waits until it is saved.
func (x *tablet) fill(box, text string) {
	x.t.Helper()
	before := x.str(fmt.Sprintf(`document.querySelector(%q)?.dataset.last || "none"`, slot(box)))
	x.write(box, text)
	x.is(fmt.Sprintf(`document.querySelector(%q)?.dataset.last != %q`, slot(box), before))
}

// take puts the first card whose words hold text into a box.
func (x *tablet) take(box, text string) {
	x.t.Helper()
	x.tap(slot(box) + ` .pick a.button`)
	x.is(`document.querySelector("form[role=search] input[name=q]")`)
	x.is(fmt.Sprintf(`[...document.querySelectorAll(".picks li")].some((l) => l.textContent.includes(%q))`, text))
	x.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`[...document.querySelectorAll(".picks li")].find((l) => l.textContent.includes(%q)).querySelector("button").click()`, text)))
	x.saved(box)
}

// step goes to a step of the job that the tablet shows.
func (x *tablet) step(key string) {
	x.t.Helper()
	job := x.str("document.body.dataset.job")
	x.open("/job/" + job + "/" + key)
	x.is(fmt.Sprintf(`document.querySelector("article.step[data-step=%s]")`, key))
}

// picture keeps what the screen shows, where a folder for pictures is named.
func (x *tablet) picture(name string) {
	x.t.Helper()
	dir := os.Getenv("BENCH_PICTURES")
	if dir == "" {
		return
	}
	x.n++
	png, err := chromedp.Run(x.ctx, chromedp.FullScreenshot(100))
	if err != nil {
		x.t.Log(err)
		return
	}
	path := filepath.Join(dir, fmt.Sprintf("%s-%02d-%s.png", x.name, x.n, strings.ReplaceAll(name, " ", "-")))
	if err := os.WriteFile(path, png, 0o644); err != nil {
		x.t.Log(err)
	}
}
