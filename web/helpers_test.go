package web_test

import (
	"errors"
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"net/url"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"axlewright/examples"
	"axlewright/shop"
	"axlewright/shop/shoptest"
	"axlewright/sqlstore"
	"axlewright/web"

	"os"
)

// A bench is the invented workshop with its server.
type bench struct {
	*shoptest.Bench
	t    testing.TB
	shop *shop.Shop // on the clock of this computer
	web  *web.Server
	url  string
	http *http.Client
}

// openBench opens the invented workshop in a folder of its own.
func openBench(t testing.TB, change ...func(*web.Options)) *bench {
	t.Helper()
	dir := t.TempDir()
	store, err := sqlstore.Open(t.Context(), sqlstore.Options{Dir: dir})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { store.Close() })
	b := &bench{Bench: shoptest.Fellgate(t, store), t: t}
	if b.shop, err = shop.Open(t.Context(), store, shop.Options{}); err != nil {
		t.Fatal(err)
	}
	o := web.Options{Shop: b.shop, Log: slog.New(slog.NewTextHandler(io.Discard, nil)), Folder: dir}
	catalogue(t, dir)
	variants(t, dir)
	for _, c := range change {
		c(&o)
	}
	b.web = web.New(o)
	ts := httptest.NewServer(b.web)
	t.Cleanup(func() {
		b.web.Close()
		ts.Close()
	})
	b.url = ts.URL
	b.http = &http.Client{CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	return b
}

// catalogue copies the invented catalogue into the shop's folder.
func catalogue(t testing.TB, dir string) {
	t.Helper()
	for _, name := range []string{"tarnhow.yaml", "upgrades.yaml", "duties.yaml"} {
		text, err := examples.Files.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, name), text, 0o600); err != nil {
			t.Fatal(err)
		}
	}
}

// variants copies the invented variants and their stations into the shop's folder.
func variants(t testing.TB, dir string) {
	t.Helper()
	for _, name := range []string{"identify/tarnhow-variants.yaml", "identify/same-number.yaml", "stations/t24.yaml"} {
		text, err := examples.Files.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		path := filepath.Join(dir, filepath.FromSlash(name))
		if err := errors.Join(os.MkdirAll(filepath.Dir(path), 0o700), os.WriteFile(path, text, 0o600)); err != nil {
			t.Fatal(err)
		}
	}
}

// An answer is what the server said.
type answer struct {
	status int
	header http.Header
	body   string
}

func (b *bench) do(r *http.Request) answer {
	b.t.Helper()
	resp, err := b.http.Do(r)
	if err != nil {
		b.t.Fatal(err)
	}
	defer resp.Body.Close()
	body, err := io.ReadAll(resp.Body)
	if err != nil {
		b.t.Fatal(err)
	}
	return answer{resp.StatusCode, resp.Header, string(body)}
}

func (b *bench) get(path string) answer {
	b.t.Helper()
	r, err := http.NewRequest(http.MethodGet, b.url+path, nil)
	if err != nil {
		b.t.Fatal(err)
	}
	return b.do(r)
}

// page gets a page that must be there.
func (b *bench) page(path string) *html.Node {
	b.t.Helper()
	a := b.get(path)
	if a.status != http.StatusOK {
		b.t.Fatalf("%s: %d\n%s", path, a.status, a.body)
	}
	return parse(b.t, a.body)
}

// post sends a form as a page without scripts does.
func (b *bench) post(path string, fields ...string) answer {
	b.t.Helper()
	return b.do(b.form(path, fields...))
}

// script sends a form as the scripts of a page do.
func (b *bench) script(path string, fields ...string) answer {
	b.t.Helper()
	r := b.form(path, fields...)
	r.Header.Set("X-Bench", "box")
	return b.do(r)
}

func (b *bench) form(path string, fields ...string) *http.Request {
	b.t.Helper()
	form := url.Values{}
	for i := 0; i+1 < len(fields); i += 2 {
		form.Add(fields[i], fields[i+1])
	}
	r, err := http.NewRequest(http.MethodPost, b.url+path, strings.NewReader(form.Encode()))
	if err != nil {
		b.t.Fatal(err)
	}
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	return r
}

func parse(t testing.TB, text string) *html.Node {
	t.Helper()
	doc, err := html.Parse(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// find returns the elements for which is says so, in the order of the page.
func find(n *html.Node, is func(*html.Node) bool) []*html.Node {
	var all []*html.Node
	for c := range n.Descendants() {
		if c.Type == html.ElementNode && is(c) {
			all = append(all, c)
		}
	}
	return all
}

// attr returns an attribute, "" where there is none.
func attr(n *html.Node, name string) string {
	for _, a := range n.Attr {
		if a.Key == name {
			return a.Val
		}
	}
	return ""
}

func has(n *html.Node, name string) bool {
	for _, a := range n.Attr {
		if a.Key == name {
			return true
		}
	}
	return false
}

// text is all the words of an element, with single spaces.
func text(n *html.Node) string {
	var b strings.Builder
	for c := range n.Descendants() {
		if c.Type == html.TextNode && c.Parent.Data != "script" && c.Parent.Data != "style" {
			b.WriteString(c.Data + " ")
		}
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

// boxOf finds the box of a place, "lash/lash/1".
func boxOf(t testing.TB, doc *html.Node, slot string) *html.Node {
	t.Helper()
	all := find(doc, func(n *html.Node) bool { return attr(n, "data-slot") == slot })
	if len(all) != 1 {
		t.Fatalf("%d boxes for %s", len(all), slot)
	}
	return all[0]
}

func mustURL(t testing.TB, text string) *url.URL {
	t.Helper()
	u, err := url.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return u
}

func itoa(n int64) string { return strconv.FormatInt(n, 10) }
