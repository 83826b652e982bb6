package web_test

import (
	"bytes"
	"image"
	"image/png"
	"mime/multipart"
	"net/http"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"axlewright/shop"
	"axlewright/web"
)

// hostile are names that try to become something else in a page.
var hostile = []string{`<script>alert(1)</script>`, `"><img src=x onerror=alert(1)>`, `' onfocus='alert(1)`, `{{.}} ${7*7} </textarea><script>`, "javascript:alert(1)",
	"עומר בן־דוד", "مهدي", "🐏 Ram & Sons", `O’Malley "the fast"`, "\u202eesrever"}

func TestNamesStayWords(t *testing.T) {
	b := openBench(t)
	for _, name := range hostile {
		b.Customer.Name = name
		c, err := shop.Save(b.Ctx, b.Shop, b.Owner, b.Customer)
		if err != nil {
			t.Fatal(err)
		}
		b.Customer = c
		j := b.Open()
		b.Write(j.ID, "enquiry", "why", "", shop.Text(name))
		at := "/job/" + string(j.ID)
		for _, path := range []string{"/", at, at + "/enquiry", at + "/record", at + "/choose?step=enquiry&item=customer&q=" + strings.Repeat("%3Cb%3E", 2), "/cards/customer/" + string(c.ID), "/search?q=" + "%3Cscript%3E"} {
			doc := b.page(path)
			for _, n := range find(doc, func(n *html.Node) bool {
				return n.Data == "script" || n.Data == "img" || n.Data == "iframe" || n.Data == "object"
			}) {
				if n.Data != "script" || !strings.HasPrefix(attr(n, "src"), "/static/") || n.FirstChild != nil {
					t.Errorf("%s with %q holds <%s %v>", path, name, n.Data, n.Attr)
				}
			}
			for _, n := range find(doc, func(*html.Node) bool { return true }) {
				for _, a := range n.Attr {
					if strings.HasPrefix(a.Key, "on") || a.Key == "style" || (a.Key == "href" || a.Key == "action") && strings.HasPrefix(a.Val, "javascript") {
						t.Errorf("%s with %q has %s=%q", path, name, a.Key, a.Val)
					}
				}
			}
		}
		if got := text(b.page(at + "/record")); !strings.Contains(got, strings.Join(strings.Fields(name), " ")) {
			t.Errorf("the record does not show %q as it was typed", name)
		}
	}
}

func TestHeaders(t *testing.T) {
	b := openBench(t)
	for _, path := range []string{"/", "/nowhere", "/static/bench.css"} {
		h := b.get(path).header
		policy := h.Get("Content-Security-Policy")
		if !strings.Contains(policy, "default-src 'none'") || strings.Contains(policy, "unsafe") || !strings.Contains(policy, "frame-ancestors 'none'") {
			t.Errorf("%s: policy %q", path, policy)
		}
		if h.Get("X-Content-Type-Options") != "nosniff" {
			t.Errorf("%s: kinds of content may be guessed", path)
		}
	}
}

func TestOtherSitesWriteNothing(t *testing.T) {
	b := openBench(t)
	for name, change := range map[string]func(*http.Request){
		"by Sec-Fetch-Site":       func(r *http.Request) { r.Header.Set("Sec-Fetch-Site", "cross-site") },
		"from a neighbour's name": func(r *http.Request) { r.Header.Set("Sec-Fetch-Site", "same-site") },
		"by Origin alone":         func(r *http.Request) { r.Header.Set("Origin", "https://other.example") },
	} {
		r := b.form("/job")
		change(r)
		if a := b.do(r); a.status != http.StatusForbidden {
			t.Errorf("%s: %d", name, a.status)
		}
	}
	// A name of another site that points here.
	r := b.form("/job")
	r.Host = "other.example"
	if a := b.do(r); a.status != http.StatusMisdirectedRequest {
		t.Errorf("another name: %d", a.status)
	}
	if found, err := b.shop.FindJobs(b.Ctx, shop.JobQuery{}); err != nil || len(found.Lines) != 0 {
		t.Errorf("%d jobs were opened, %v", len(found.Lines), err)
	}
	if a := b.post("/job"); a.status != http.StatusSeeOther {
		t.Errorf("the bench's own page: %d", a.status)
	}
}

func TestPathsLeadNowhereElse(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	for _, path := range []string{"/static/../server.go", "/static/%2e%2e/server.go", "/static/..%2fshop.db", "/static/", "/job/" + string(j.ID) + "/file/..%2f..%2fshop.db",
		"/job/" + string(j.ID) + "/file/" + strings.Repeat("a", 64), "/job/..%2f..%2fetc", "/job/%00", "/cards/person/owner", "/cards/house/house", "/cards/..%2fx/y",
		"/handbook/..%2fx", "/setting-up/nothing", "/job/" + string(j.ID) + "/paper/nothing", "/job/" + string(j.ID) + "/advice/9", "/stock/lot/..%2f"} {
		if a := b.get(path); a.status != http.StatusNotFound && a.status != http.StatusMovedPermanently && a.status != http.StatusTemporaryRedirect && a.status != http.StatusPermanentRedirect {
			t.Errorf("%s: %d", path, a.status)
		}
	}
	// Only files that this job's record names are handed out.
	other := b.Open()
	if _, err := b.Shop.AddPhoto(b.Ctx, b.Owner, other.ID, "strip", "", picture(t, 40, 30)); err != nil {
		t.Fatal(err)
	}
	o, err := b.Shop.Job(b.Ctx, other.ID)
	if err != nil {
		t.Fatal(err)
	}
	hash := o.Kept(shop.EntryPhoto)[0].Value.File.SHA256
	if a := b.get("/job/" + string(other.ID) + "/file/" + hash); a.status != http.StatusOK || a.header.Get("Content-Type") != "image/jpeg" {
		t.Errorf("its own photograph: %d %s", a.status, a.header.Get("Content-Type"))
	}
	if a := b.get("/job/" + string(j.ID) + "/file/" + hash); a.status != http.StatusNotFound {
		t.Errorf("another job's photograph: %d", a.status)
	}
}

func picture(t testing.TB, width, height int) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := png.Encode(&out, image.NewGray(image.Rect(0, 0, width, height))); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func (b *bench) upload(job shop.ID, name string, content []byte) answer {
	b.t.Helper()
	var body bytes.Buffer
	w := multipart.NewWriter(&body)
	_ = w.WriteField("step", "strip")
	_ = w.WriteField("caption", `the "nose" <i>`)
	part, err := w.CreateFormFile("photo", name)
	if err == nil {
		_, err = part.Write(content)
	}
	if err != nil || w.Close() != nil {
		b.t.Fatal(err)
	}
	r, err := http.NewRequest(http.MethodPost, b.url+"/job/"+string(job)+"/photo", &body)
	if err != nil {
		b.t.Fatal(err)
	}
	r.Header.Set("Content-Type", w.FormDataContentType())
	return b.do(r)
}

func TestHostileUploads(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	huge := picture(t, 40, 30)
	copy(huge[16:24], []byte{0, 1, 0x86, 0xa0, 0, 1, 0x86, 0xa0}) // says that it is 100,000 × 100,000 points
	for name, content := range map[string][]byte{
		"page.html":      []byte("<script>alert(1)</script>"),
		"picture.svg":    []byte(`<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>`),
		"empty.jpg":      {},
		"cut.png":        picture(t, 400, 300)[:80],
		"huge.png":       huge,
		"../../shop.db":  []byte("SQLite format 3\x00"),
		"more than 25MB": bytes.Repeat([]byte{0xff}, shop.MaxUpload+10),
	} {
		if a := b.upload(j.ID, name, content); a.status != http.StatusUnprocessableEntity && a.status != http.StatusRequestEntityTooLarge {
			t.Errorf("%s: %d", name, a.status)
		}
	}
	now, err := b.shop.Job(b.Ctx, j.ID)
	if err != nil || len(now.Kept(shop.EntryPhoto)) != 0 {
		t.Fatalf("%d were kept, %v", len(now.Kept(shop.EntryPhoto)), err)
	}
	// A picture with a page behind it is kept as its pixels alone.
	if a := b.upload(j.ID, "real.png", append(picture(t, 400, 300), "<script>alert(1)</script>"...)); a.status != http.StatusSeeOther {
		t.Fatalf("a real one: %d %s", a.status, a.body)
	}
	if now, err = b.shop.Job(b.Ctx, j.ID); err != nil || len(now.Kept(shop.EntryPhoto)) != 1 {
		t.Fatalf("%v", err)
	}
	a := b.get("/job/" + string(j.ID) + "/file/" + now.Kept(shop.EntryPhoto)[0].Value.File.SHA256)
	if a.status != http.StatusOK || strings.Contains(a.body, "script") || a.header.Get("Content-Type") != "image/jpeg" {
		t.Errorf("kept as %d %s with the page in it: %v", a.status, a.header.Get("Content-Type"), strings.Contains(a.body, "script"))
	}
}

func TestFormsTooLarge(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	if a := b.post("/job/"+string(j.ID)+"/note", "step", "strip", "text", strings.Repeat("x", 2<<20)); a.status != http.StatusRequestEntityTooLarge {
		t.Errorf("two megabytes of note: %d", a.status)
	}
}

// The figures of an enquiry are figures: none of them becomes another line of
// the file that the sums read, and none names another file.
func TestEnquiryHoldsNothingElse(t *testing.T) {
	b := openBench(t, func(o *web.Options) { o.Secure = false })
	j := b.Open()
	fields := append([]string{}, adviceFields...)
	for i := 0; i < len(fields); i += 2 {
		if fields[i] == "casting" {
			fields[i+1] = "T20\ncatalogue: [/etc/passwd]\nx: &a [*a]"
		}
	}
	a := b.post("/job/"+string(j.ID)+"/advice", append(fields, "catalogue", "/etc/passwd")...)
	if said := text(parse(t, a.body)); a.status != http.StatusUnprocessableEntity || !strings.Contains(said, "the catalogue has no casting") || strings.Contains(said, "root:") || strings.Contains(said, "/tmp/") {
		t.Errorf("%d, the page says: %.600s", a.status, said)
	}
}
