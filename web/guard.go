package web

import (
	"errors"
	"net/http"
	"runtime/debug"
	"strings"
)

// policy lets a page load its own scripts, styles and pictures and nothing else.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob: data:; connect-src 'self'; " +
	"manifest-src 'self'; worker-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'"

// The largest requests.
const (
	maxForm  = 1 << 20
	maxPhoto = 26 << 20 // a photograph of shop.MaxUpload and what the form adds
	maxJob   = 300 << 20
)

// guard holds what is true of every answer: no other site's page may write
// here, nothing foreign is loaded, no request is larger than it may be.
func (s *Server) guard(next http.Handler) http.Handler {
	cross := http.NewCrossOriginProtection()
	cross.SetDenyHandler(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		http.Error(w, "This was sent by a page of another site, so nothing was written.", http.StatusForbidden)
	}))
	checked := cross.Handler(next)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		defer s.recoverFrom(w, r)
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "same-origin")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Permissions-Policy", "geolocation=(), microphone=()")
		h.Set("Cache-Control", "no-store")
		if s.o.Secure {
			h.Set("Strict-Transport-Security", "max-age=31536000")
		}
		if !s.o.Network && !Loopback(r.Host) {
			// A page of another site could have pointed its name at this computer.
			http.Error(w, "The bench is open on this computer only: use http://localhost or http://127.0.0.1.", http.StatusMisdirectedRequest)
			return
		}
		limit := int64(maxForm)
		switch {
		case strings.HasSuffix(r.URL.Path, "/photo"):
			limit = maxPhoto
		case r.URL.Path == "/settings/import":
			limit = maxJob
		}
		r.Body = http.MaxBytesReader(w, r.Body, limit)
		checked.ServeHTTP(w, r)
	})
}

// recoverFrom answers a request whose handler panicked, and keeps the place.
func (s *Server) recoverFrom(w http.ResponseWriter, r *http.Request) {
	p := recover()
	if p == nil {
		return
	}
	if err, ok := p.(error); ok && errors.Is(err, http.ErrAbortHandler) {
		panic(p)
	}
	s.log.Error("a page panicked", "path", r.URL.Path, "panic", p, "stack", string(debug.Stack()))
	http.Error(w, faultOf(errors.New("")).Says, http.StatusInternalServerError)
}
