package web

import (
	"context"
	"crypto/rand"
	"log/slog"
	"net/http"
	"sync"
	"time"

	"axlewright/shop"
)

// Options of New.
type Options struct {
	Shop *shop.Shop
	Log  *slog.Logger // nil is the usual one

	// Network says that other computers can reach the program. Then everybody
	// signs in, and a shop in which nobody can is set up with the code that
	// SetupCode returns.
	Network bool
	Secure  bool // reached by TLS: cookies never travel in the open

	Folder    string  // the shop's, with the catalogue of the sums; empty is none
	Backups   Backups // nil where the program makes none
	Authority []byte  // certificate of the shop's own authority, PEM; nil where there is none
	Now       func() time.Time
}

// A Server answers the browsers of one shop.
type Server struct {
	o       Options
	shop    *shop.Shop
	log     *slog.Logger
	handler http.Handler
	sums    *sums
	shelf   shelf
	tasks   *sums // looking after the shop: backups, verifying
	checked checkedRecords

	ended context.Context // done when the program stops: streams end with it
	end   context.CancelFunc

	setup setupCode
	gears gearShelf // of the catalogue, for the sums of setting-up
}

// New makes a server. Close ends what it has running.
func New(o Options) *Server {
	if o.Log == nil {
		o.Log = slog.Default()
	}
	if o.Now == nil {
		o.Now = time.Now
	}
	s := &Server{o: o, shop: o.Shop, log: o.Log}
	s.ended, s.end = context.WithCancel(context.Background())
	s.sums, s.tasks = newSums(s.ended), newSums(s.ended)
	s.setup.code = rand.Text()[:10]
	s.handler = s.guard(s.routes())
	return s
}

// ServeHTTP answers one request.
func (s *Server) ServeHTTP(w http.ResponseWriter, r *http.Request) { s.handler.ServeHTTP(w, r) }

// Close ends streams and sums and waits for the sums.
func (s *Server) Close() {
	s.end()
	s.sums.wait()
	s.tasks.wait()
}

// SetupCode is the code with which the first owner of a shop on the network
// chooses a PIN. It is shown where the program was started.
func (s *Server) SetupCode() string {
	s.setup.Lock()
	defer s.setup.Unlock()
	return s.setup.code
}

// A setupCode is changed after too many wrong tries.
type setupCode struct {
	sync.Mutex
	code  string
	wrong int
}
