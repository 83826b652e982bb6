package web

import (
	"context"
	"errors"
	"net"
	"net/http"
	"net/url"
	"strings"

	"github.com/a-h/templ"

	"axlewright/shop"
)

// A visit is one request: who asks, and for what.
type visit struct {
	*Server
	w   http.ResponseWriter
	r   *http.Request
	who shop.Actor
}

func (v *visit) ctx() context.Context { return v.r.Context() }

// bare says that the scripts of a page ask for a part of it, not for a page.
func (v *visit) bare() bool { return v.r.Header.Get("X-Bench") != "" }

// form reads the form of the request.
func (v *visit) form() (url.Values, error) {
	err := v.r.ParseForm()
	var large *http.MaxBytesError
	switch {
	case errors.As(err, &large):
		return nil, shop.Fault(shop.TooLarge, "This is more than can be sent at once.")
	case err != nil:
		return nil, shop.Fault(shop.Invalid, "The form cannot be read.").Because(err)
	}
	return v.r.PostForm, nil
}

// job reads the job that the address names.
func (v *visit) job() (*shop.Job, error) {
	id := v.jobID()
	if !id.Valid() {
		return nil, shop.Fault(shop.NotFound, "There is no such job.")
	}
	return v.shop.Job(v.ctx(), id)
}

// formOfJob reads the form of a request and the job that its address names.
func (v *visit) formOfJob() (url.Values, *shop.Job, error) {
	form, err := v.form()
	if err != nil {
		return nil, nil, err
	}
	j, err := v.job()
	return form, j, err
}

// show answers with a page.
func (v *visit) show(c templ.Component) error { return v.showAs(http.StatusOK, c) }

func (v *visit) showAs(status int, c templ.Component) error {
	v.w.Header().Set("Content-Type", "text/html; charset=utf-8")
	v.w.WriteHeader(status)
	return c.Render(v.ctx(), v.w)
}

// see sends the browser on to another page of the bench.
func (v *visit) see(path string) error {
	http.Redirect(v.w, v.r, path, http.StatusSeeOther)
	return nil
}

// A handler answers a visit. An error is shown by the page of errors.
type handler func(*visit) error

// open makes a handler for everybody, signed in or not.
func (s *Server) open(h handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		v := &visit{Server: s, w: w, r: r}
		if err := h(v); err != nil {
			v.fail(err)
		}
	})
}

// inside makes a handler for those who work here.
func (s *Server) inside(h handler) http.Handler {
	return s.open(func(v *visit) error {
		who, err := s.actor(v.r)
		if err != nil {
			return err
		}
		v.who = who
		return h(v)
	})
}

// fail answers with what went wrong.
func (v *visit) fail(err error) {
	f := faultOf(err)
	if errors.Is(err, context.Canceled) && v.ctx().Err() != nil {
		return // nobody waits for the answer
	}
	if f.Log {
		v.log.Error("a page failed", "path", v.r.URL.Path, "who", v.who.Name, "error", err)
	}
	if codeOf(err) == shop.SignIn && !v.bare() && v.r.Method == http.MethodGet {
		to := "/sign-in?next=" + url.QueryEscape(v.r.URL.RequestURI())
		if protected, e := v.shop.Protected(v.ctx()); e == nil && !protected {
			to = "/start"
		}
		_ = v.see(to)
		return
	}
	if v.bare() {
		v.w.Header().Set("Content-Type", "text/plain; charset=utf-8")
		v.w.WriteHeader(f.Status)
		_, _ = v.w.Write([]byte(f.Says))
		return
	}
	back := "/"
	if ref, e := url.Parse(v.r.Referer()); e == nil && ref.Host == v.r.Host && ref.Path != "" {
		back = ref.RequestURI()
	}
	var clash *shop.Clash
	var e *shop.Error
	if errors.As(err, &e) {
		clash = e.Clash
	}
	_ = v.showAs(f.Status, faultPage(v.frame("Not done"), f.Says, back, clash))
}

// from is the address that a request comes from.
func (v *visit) from() string {
	host, _, err := net.SplitHostPort(v.r.RemoteAddr)
	if err != nil {
		return v.r.RemoteAddr
	}
	return host
}

// local keeps an address that a form names inside the bench.
func local(path string) string {
	if !strings.HasPrefix(path, "/") || strings.HasPrefix(path, "//") || strings.ContainsAny(path, "\\\r\n\t") {
		return "/"
	}
	return path
}
