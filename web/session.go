package web

import (
	"crypto/rand"
	"crypto/subtle"
	"net/http"
	"strings"

	"axlewright/shop"
)

// cookieName is where the browser keeps the token of its session. With TLS the
// name itself binds it to this computer and to TLS.
func (s *Server) cookieName() string {
	if s.o.Secure {
		return "__Host-axlewright"
	}
	return "axlewright"
}

// actor says who asks. On a bench that nobody else can reach and in which
// nobody has a PIN it is the owner.
func (s *Server) actor(r *http.Request) (shop.Actor, error) {
	if c, err := r.Cookie(s.cookieName()); err == nil && c.Value != "" {
		return s.shop.Who(r.Context(), c.Value)
	}
	if s.o.Network {
		return shop.Actor{}, shop.Fault(shop.SignIn, "Sign in first.")
	}
	return s.shop.Alone(r.Context())
}

func (v *visit) keepToken(token string) {
	http.SetCookie(v.w, &http.Cookie{Name: v.cookieName(), Value: token, Path: "/", MaxAge: 90 * 24 * 3600,
		HttpOnly: true, Secure: v.o.Secure, SameSite: http.SameSiteLaxMode})
}

// signInPage asks who is there.
func signInPage(v *visit) error {
	if protected, err := v.shop.Protected(v.ctx()); err != nil {
		return err
	} else if !protected {
		if v.o.Network {
			return v.see("/start")
		}
		return v.see("/")
	}
	return v.showSignIn("", "", http.StatusOK)
}

func (v *visit) showSignIn(person shop.ID, says string, status int) error {
	people, _, err := shop.List[shop.Person](v.ctx(), v.shop, shop.CardQuery{})
	if err != nil {
		return err
	}
	next := local(v.r.FormValue("next"))
	return v.showAs(status, signInSheet(v.frame("Sign in"), people, person, next, says))
}

// signIn lets somebody in.
func signIn(v *visit) error {
	form, err := v.form()
	if err != nil {
		return err
	}
	person := shop.ID(form.Get("person"))
	token, _, err := v.shop.SignIn(v.ctx(), person, form.Get("secret"), v.from(), v.r.UserAgent())
	switch shop.CodeOf(err) {
	case "":
	case shop.SignIn, shop.TooMany:
		f := faultOf(err)
		return v.showSignIn(person, f.Says, f.Status)
	default:
		return err
	}
	v.keepToken(token)
	return v.see(local(form.Get("next")))
}

// signOut ends the session of this browser.
func signOut(v *visit) error {
	if c, err := v.r.Cookie(v.cookieName()); err == nil {
		if err := v.shop.SignOut(v.ctx(), c.Value); err != nil {
			return err
		}
	}
	http.SetCookie(v.w, &http.Cookie{Name: v.cookieName(), Path: "/", MaxAge: -1, HttpOnly: true, Secure: v.o.Secure})
	return v.see("/sign-in")
}

// startPage is what a shop on the network shows before anybody has a PIN.
func startPage(v *visit) error {
	if protected, err := v.shop.Protected(v.ctx()); err != nil {
		return err
	} else if protected || !v.o.Network {
		return v.see("/")
	}
	return v.show(startSheet(v.frame("First start"), ""))
}

// start gives the first owner a PIN, to whoever knows the code shown where the
// program was started.
func start(v *visit) error {
	form, err := v.form()
	if err != nil {
		return err
	}
	protected, err := v.shop.Protected(v.ctx())
	if err != nil {
		return err
	}
	if protected || !v.o.Network {
		return shop.Fault(shop.Forbidden, "This shop has been set up already.")
	}
	again := func(err error) error {
		f := faultOf(err)
		return v.showAs(f.Status, startSheet(v.frame("First start"), f.Says))
	}
	before := v.SetupCode()
	if !v.setup.fits(form.Get("code")) {
		if now := v.SetupCode(); now != before {
			v.log.Warn("ten wrong codes were tried; the owner now begins with another", "code", now, "from", v.from())
		}
		return again(shop.Fault(shop.Forbidden, "This is not the code. It stands where the program was started; after ten wrong tries it is a new one."))
	}
	if form.Get("secret") != form.Get("again") {
		return again(shop.Fault(shop.Invalid, "The two PINs differ."))
	}
	owner, err := v.shop.Alone(v.ctx())
	if err != nil {
		return err
	}
	if err := v.shop.SetSecret(v.ctx(), owner, owner.ID, form.Get("secret")); err != nil {
		if shop.CodeOf(err) == shop.Invalid {
			return again(err)
		}
		return err
	}
	token, _, err := v.shop.SignIn(v.ctx(), owner.ID, form.Get("secret"), v.from(), v.r.UserAgent())
	if err != nil {
		return err
	}
	v.keepToken(token)
	return v.see("/settings")
}

// fits compares in constant time; ten wrong tries make a new code.
func (c *setupCode) fits(typed string) bool {
	c.Lock()
	defer c.Unlock()
	typed = strings.ToUpper(strings.TrimSpace(typed))
	if subtle.ConstantTimeCompare([]byte(typed), []byte(c.code)) == 1 {
		return true
	}
	if c.wrong++; c.wrong >= 10 {
		c.code, c.wrong = rand.Text()[:10], 0
	}
	return false
}
