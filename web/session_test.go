package web_test

import (
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"axlewright/shop"
	"axlewright/web"
)

const ownersPIN, buildersPIN, readersPIN = "740218", "391746", "850213"

// guarded is a bench on the network in which everybody has a PIN.
func guarded(t *testing.T) *bench {
	t.Helper()
	b := openBench(t, func(o *web.Options) { o.Network = true })
	for who, pin := range map[shop.ID]string{b.Owner.ID: ownersPIN, b.Builder.ID: buildersPIN, b.Reader.ID: readersPIN} {
		if err := b.Shop.SetSecret(b.Ctx, b.Owner, who, pin); err != nil {
			t.Fatal(err)
		}
	}
	return b
}

// as signs somebody in on a browser of their own.
func (b *bench) as(person shop.ID, pin string) *bench {
	b.t.Helper()
	jar, err := cookiejar.New(nil)
	if err != nil {
		b.t.Fatal(err)
	}
	other := *b
	other.http = &http.Client{Jar: jar, CheckRedirect: b.http.CheckRedirect}
	if a := other.post("/sign-in", "person", string(person), "secret", pin, "next", "/stock"); a.status != http.StatusSeeOther || a.header.Get("Location") != "/stock" {
		b.t.Fatalf("signing in: %d %s", a.status, a.body)
	}
	return &other
}

func TestEverythingAsksWhoIsThere(t *testing.T) {
	b := guarded(t)
	j := b.Open()
	at := "/job/" + string(j.ID)
	for _, path := range []string{"/", "/search?q=x", at, at + "/lash", at + "/record", at + "/export.zip", at + "/file/" + strings.Repeat("a", 64), "/stock", "/stock/lots", "/cards/customer",
		"/settings", "/settings/people", "/settings/prices", "/handbook", "/setting-up", "/verify", "/live"} {
		a := b.get(path)
		if a.status != http.StatusSeeOther || !strings.HasPrefix(a.header.Get("Location"), "/sign-in?next=") {
			t.Errorf("GET %s: %d %s", path, a.status, a.header.Get("Location"))
		}
	}
	for _, path := range []string{"/job", at + "/set", at + "/note", at + "/mark", at + "/photo", at + "/state", at + "/override", at + "/certify", at + "/advice", at + "/quote",
		"/cards/customer/new", "/settings/person", "/settings/secret", "/settings/prices", "/settings/limits", "/settings/house", "/settings/out", "/verify"} {
		if a := b.script(path); a.status != http.StatusUnauthorized {
			t.Errorf("POST %s: %d", path, a.status)
		}
	}
	if a := b.get("/sign-in"); a.status != http.StatusOK {
		t.Errorf("the way in: %d", a.status)
	}
}

func TestRoles(t *testing.T) {
	b := guarded(t)
	j := b.Open()
	at := "/job/" + string(j.ID)
	reader, builder := b.as(b.Reader.ID, readersPIN), b.as(b.Builder.ID, buildersPIN)
	if a := reader.script(at+"/set", "step", "lash", "item", "lash", "place", "1", "corrects", "0", "value", "0.15 mm"); a.status != http.StatusForbidden {
		t.Errorf("a reader writes: %d", a.status)
	}
	for _, n := range find(reader.page(at+"/lash"), func(n *html.Node) bool {
		return n.Data == "input" && attr(n, "name") == "value" && attr(n, "type") != "hidden"
	}) {
		if !has(n, "disabled") && n.Parent.Parent.Data != "fieldset" {
			t.Errorf("a reader is offered a box: %v", n.Attr)
		}
	}
	if a := builder.script(at+"/set", "step", "lash", "item", "lash", "place", "1", "corrects", "0", "value", "0.15 mm"); a.status != http.StatusOK {
		t.Errorf("a builder writes: %d %s", a.status, a.body)
	}
	for path, want := range map[string]int{"/settings/prices": http.StatusForbidden, at + "/quote": http.StatusForbidden, "/settings/people": http.StatusOK, "/cards/donor/" + string(b.Donor.ID): http.StatusOK} {
		if a := builder.get(path); a.status != want {
			t.Errorf("a builder at %s: %d", path, a.status)
		}
	}
	if a := builder.get("/cards/donor/" + string(b.Donor.ID)); strings.Contains(a.body, "90.00") {
		t.Error("a builder sees what a donor cost")
	}
	if a := builder.post("/settings/person", "id", string(b.Builder.ID), "revision", "1", "name", "Wren", "role", "owner"); a.status != http.StatusForbidden {
		t.Errorf("a builder makes himself owner: %d", a.status)
	}
}

func TestSessionOutlivesTheProgram(t *testing.T) {
	b := guarded(t)
	owner := b.as(b.Owner.ID, ownersPIN)
	again := httptest.NewServer(web.New(web.Options{Shop: b.shop, Network: true}))
	defer again.Close()
	for _, c := range owner.http.Jar.Cookies(mustURL(t, b.url)) {
		r, err := http.NewRequest(http.MethodGet, again.URL+"/settings", nil)
		if err != nil {
			t.Fatal(err)
		}
		r.AddCookie(c)
		if a := b.do(r); a.status != http.StatusOK {
			t.Errorf("after a new start: %d", a.status)
		}
	}
	if a := owner.post("/sign-out"); a.status != http.StatusSeeOther {
		t.Errorf("signing out: %d", a.status)
	}
	if a := owner.get("/"); a.status != http.StatusSeeOther {
		t.Errorf("after signing out: %d", a.status)
	}
}

func TestCookies(t *testing.T) {
	b := guarded(t)
	a := b.post("/sign-in", "person", string(b.Owner.ID), "secret", ownersPIN)
	cookie := a.header.Get("Set-Cookie")
	for _, want := range []string{"HttpOnly", "SameSite=Lax", "Path=/"} {
		if !strings.Contains(cookie, want) {
			t.Errorf("%q lacks %s", cookie, want)
		}
	}
}

func TestNoWayOutOfTheBench(t *testing.T) {
	b := guarded(t)
	for _, next := range []string{"//other.example", "https://other.example", `/\other.example`, "javascript:alert(1)", "/x\r\nSet-Cookie: a=b"} {
		a := b.post("/sign-in", "person", string(b.Owner.ID), "secret", ownersPIN, "next", next)
		if to := a.header.Get("Location"); to != "/" {
			t.Errorf("%q leads to %q", next, to)
		}
	}
}

func TestWrongPINs(t *testing.T) {
	b := guarded(t)
	last := answer{}
	for range 8 {
		last = b.post("/sign-in", "person", string(b.Builder.ID), "secret", "111112")
	}
	if last.status != http.StatusTooManyRequests {
		t.Errorf("the eighth wrong try: %d", last.status)
	}
	if a := b.post("/sign-in", "person", string(b.Builder.ID), "secret", buildersPIN); a.status != http.StatusTooManyRequests {
		t.Errorf("the right one too soon after: %d", a.status)
	}
}

func TestFirstStartOnTheNetwork(t *testing.T) {
	b := openBench(t, func(o *web.Options) { o.Network = true })
	if a := b.get("/"); a.status != http.StatusSeeOther || a.header.Get("Location") != "/start" {
		t.Fatalf("%d %s", a.status, a.header.Get("Location"))
	}
	if a := b.post("/start", "code", "WRONG", "secret", ownersPIN, "again", ownersPIN); a.status != http.StatusForbidden {
		t.Errorf("a wrong code: %d", a.status)
	}
	code := b.web.SetupCode()
	for range 10 {
		b.post("/start", "code", "WRONG", "secret", ownersPIN, "again", ownersPIN)
	}
	if a := b.post("/start", "code", code, "secret", ownersPIN, "again", ownersPIN); a.status != http.StatusForbidden {
		t.Errorf("the code after ten wrong ones: %d", a.status)
	}
	if a := b.post("/start", "code", b.web.SetupCode(), "secret", "123456", "again", "123456"); a.status != http.StatusUnprocessableEntity {
		t.Errorf("the PIN that everybody tries first: %d", a.status)
	}
	if a := b.post("/start", "code", b.web.SetupCode(), "secret", ownersPIN, "again", ownersPIN); a.status != http.StatusSeeOther {
		t.Errorf("the code: %d %s", a.status, a.body)
	}
	if a := b.post("/start", "code", b.web.SetupCode(), "secret", "902847", "again", "902847"); a.status != http.StatusForbidden {
		t.Errorf("a second time: %d", a.status)
	}
	b.as(b.Owner.ID, ownersPIN)
}

// On one computer the first PIN closes the door, so it must be one's own.
func TestFirstPINIsTheOwners(t *testing.T) {
	b := openBench(t)
	if a := b.post("/settings/secret", "id", string(b.Builder.ID), "secret", buildersPIN, "again", buildersPIN); a.status != http.StatusUnprocessableEntity {
		t.Errorf("somebody else's first: %d", a.status)
	}
	if a := b.post("/settings/secret", "id", string(b.Owner.ID), "secret", ownersPIN, "again", ownersPIN); a.status != http.StatusSeeOther || a.header.Get("Set-Cookie") == "" {
		t.Errorf("one's own: %d", a.status)
	}
	if a := b.get("/"); a.status != http.StatusSeeOther {
		t.Errorf("without the session: %d", a.status)
	}
}
