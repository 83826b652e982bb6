package main

import (
	"context"
	"crypto/tls"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"net"
	"os"
	"os/signal"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"time"

	"github.com/spf13/cobra"

	"axlewright/shop"
	"axlewright/sqlstore"
	"axlewright/web"
)

// benchAddress is where the bench is found where nothing else is said: on this
// computer only.
const benchAddress = "127.0.0.1:8420"

// serving is how a bench is opened.
type serving struct {
	dir, listen, tls, database string
	shared                     bool // other programs may have the shop open too
	out                        io.Writer
}

func newServe() *cobra.Command {
	var s serving
	cmd := &cobra.Command{
		Use:   "serve DIR",
		Short: "Open a shop's bench in the browser",
		Long: `Open the bench of the shop in the folder DIR, which is made where there is none.
It listens on this computer only, without passwords, until somebody has a PIN.
To reach it from tablets, listen on the network; then everybody signs in:

  axlewright serve shop --listen :8420 --tls self

The catalogue files of the sums are those in DIR/catalogue, else those in DIR.
Castings are told apart by the files in DIR/identify, their measuring stations
are those in DIR/stations.
A backup is made each night into DIR/backups.

The shop is locked while it is open, so that two programs do not open it by
mistake. Several benches on one PostgreSQL each say --shared.`,
		Example: `  axlewright serve shop
  axlewright serve shop --listen :8420 --tls self
  axlewright serve shop --listen :443 --tls bench.crt,bench.key`,
		Args: arguments(cobra.ExactArgs(1), "one folder"),
		RunE: func(cmd *cobra.Command, args []string) error {
			s.dir, s.out = args[0], cmd.ErrOrStderr()
			if s.database == "" {
				s.database = os.Getenv("AXLEWRIGHT_DATABASE")
			}
			if s.shared && s.database == "" {
				return usageError{errors.New("--shared: only a shop in PostgreSQL (--database) can be opened by several programs")}
			}
			ctx, stop := signal.NotifyContext(cmd.Context(), os.Interrupt, syscall.SIGTERM)
			defer stop()
			return s.run(ctx)
		},
	}
	cmd.Flags().StringVar(&s.listen, "listen", benchAddress, "address and port to listen on")
	cmd.Flags().StringVar(&s.tls, "tls", "", `"self" for the shop's own certificate authority, or CERTIFICATE,KEY files`)
	cmd.Flags().StringVar(&s.database, "database", "", "PostgreSQL connection string in place of the file in DIR (or AXLEWRIGHT_DATABASE)")
	cmd.Flags().BoolVar(&s.shared, "shared", false, "let other benches open the same shop in PostgreSQL; all of them say so")
	return cmd
}

// run opens the bench until ctx ends.
func (s serving) run(ctx context.Context) error {
	listener, err := net.Listen("tcp", s.listen)
	if err != nil {
		return cannotListen(s.listen, err)
	}
	return s.on(ctx, listener)
}

// cannotListen says why the bench cannot be opened there.
func cannotListen(address string, err error) error {
	if errors.Is(err, syscall.EADDRINUSE) {
		return fmt.Errorf("another program is at %s already, perhaps a bench that is open: look there in the browser, close it, or take another port: --listen 127.0.0.1:8421", address)
	}
	return fmt.Errorf("the bench cannot listen on %s: %w", address, err)
}

// on opens the bench on a listener, which it closes.
func (s serving) on(ctx context.Context, listener net.Listener) error {
	defer listener.Close()
	store, err := sqlstore.Open(ctx, sqlstore.Options{Dir: s.dir, Postgres: s.database, Shared: s.shared})
	if err != nil {
		return err
	}
	defer store.Close()
	sh, err := shop.Open(ctx, store, shop.Options{})
	if err != nil {
		return err
	}
	cert, authority, err := s.certificate()
	if err != nil {
		return err
	}
	log := slog.New(slog.NewTextHandler(s.out, nil))
	nightly := &sqlstore.Nightly{Store: store, Shop: sh, Hour: 2, Done: func(path string, err error) {
		if err != nil {
			log.Error("the backup failed", "error", err)
			return
		}
		log.Info("backed up", "file", path)
	}}
	bench := web.New(web.Options{Backups: nightly, Shop: sh, Log: log, Network: !web.Loopback(s.listen), Secure: cert != nil,
		Folder: s.dir, Authority: authority})
	if err := s.greet(ctx, sh, bench, listener, authority); err != nil {
		bench.Close()
		return err
	}
	nights, endNights := context.WithCancel(ctx)
	var night sync.WaitGroup
	night.Go(func() { nightly.Run(nights) })
	err = bench.Serve(ctx, listener, cert)
	endNights()
	night.Wait()
	return err
}

// certificate reads or makes what TLS needs.
func (s serving) certificate() (*tls.Certificate, []byte, error) {
	if s.tls == "" {
		return nil, nil, nil
	}
	if s.tls == "self" {
		a, err := web.OpenAuthority(filepath.Join(s.dir, "authority"), time.Now())
		if err != nil {
			return nil, nil, fmt.Errorf("the shop's certificate authority cannot be opened: %w", err)
		}
		host, _, err := net.SplitHostPort(s.listen)
		if err != nil {
			return nil, nil, usageError{fmt.Errorf("--listen: %q is not an address and a port, such as :8420", s.listen)}
		}
		cert, err := a.Certificate(web.Names(host), time.Now())
		return &cert, a.PEM, err
	}
	certFile, keyFile, ok := strings.Cut(s.tls, ",")
	if !ok {
		return nil, nil, usageError{fmt.Errorf("--tls: %q is neither \"self\" nor CERTIFICATE,KEY", s.tls)}
	}
	cert, err := tls.LoadX509KeyPair(certFile, keyFile)
	return &cert, nil, err
}

// greet says where the bench is, and how the first one gets in.
func (s serving) greet(ctx context.Context, sh *shop.Shop, bench *web.Server, l net.Listener, authority []byte) error {
	scheme := "http"
	if s.tls != "" {
		scheme = "https"
	}
	host, port, err := net.SplitHostPort(l.Addr().String())
	if err != nil {
		return err
	}
	if web.Loopback(s.listen) {
		fmt.Fprintf(s.out, "The bench is at %s://%s, on this computer only. Ctrl-C closes it.\n", scheme, net.JoinHostPort(host, port))
		return nil
	}
	fmt.Fprintf(s.out, "The bench is on the network:\n")
	for _, n := range web.Names("") {
		if n != "127.0.0.1" && n != "::1" && n != "localhost" {
			fmt.Fprintf(s.out, "  %s://%s\n", scheme, net.JoinHostPort(n, port))
		}
	}
	if s.tls == "" {
		fmt.Fprintln(s.out, "Without --tls everybody on the network can read along, PINs too, and tablets keep no pages to read out of its reach.")
	}
	if authority != nil {
		fmt.Fprintf(s.out, "Tablets are told to trust it at %s://…/trust; fingerprint:\n  %s\n", scheme, web.Fingerprint(authority))
	}
	protected, err := sh.Protected(ctx)
	if err == nil && !protected {
		fmt.Fprintf(s.out, "Nobody has a PIN yet. The owner begins with the code  %s\n", bench.SetupCode())
	}
	return err
}
