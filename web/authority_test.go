package web_test

import (
	"context"
	"crypto/tls"
	"crypto/x509"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"axlewright/web"
)

// The whole way over TLS with the shop's own authority: a browser that trusts it
// gets in, another does not; the authority is the same after a new start.
func TestServeWithOwnAuthority(t *testing.T) {
	b := guarded(t)
	dir := filepath.Join(t.TempDir(), "authority")
	a, err := web.OpenAuthority(dir, time.Now())
	if err != nil {
		t.Fatal(err)
	}
	again, err := web.OpenAuthority(dir, time.Now())
	if err != nil || string(again.PEM) != string(a.PEM) {
		t.Fatalf("another authority after a new start: %v", err)
	}
	if info, err := os.Stat(filepath.Join(dir, "authority.key")); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("others may read the key: %v %v", info.Mode(), err)
	}
	cert, err := again.Certificate([]string{"localhost", "127.0.0.1"}, time.Now())
	if err != nil {
		t.Fatal(err)
	}
	server := web.New(web.Options{Shop: b.shop, Network: true, Secure: true, Authority: a.PEM})
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(t.Context())
	done := make(chan error, 1)
	go func() { done <- server.Serve(ctx, l, &cert) }()

	pool := x509.NewCertPool()
	if !pool.AppendCertsFromPEM(a.PEM) {
		t.Fatal("the authority's certificate cannot be read")
	}
	b.url = "https://" + l.Addr().String()
	b.http = &http.Client{CheckRedirect: b.http.CheckRedirect, Transport: &http.Transport{TLSClientConfig: &tls.Config{RootCAs: pool}, ForceAttemptHTTP2: true}}
	in := b.post("/sign-in", "person", string(b.Owner.ID), "secret", ownersPIN)
	if cookie := in.header.Get("Set-Cookie"); !strings.HasPrefix(cookie, "__Host-") || !strings.Contains(cookie, "Secure") {
		t.Errorf("cookie %q", cookie)
	}
	if in.header.Get("Strict-Transport-Security") == "" {
		t.Error("a browser may come back without TLS")
	}
	// An address typed without https leads to it.
	plain := http.Client{CheckRedirect: b.http.CheckRedirect}
	sent, err := plain.Get("http://" + l.Addr().String() + "/job/x?y=1")
	if err != nil {
		t.Fatal(err)
	}
	sent.Body.Close()
	if to := sent.Header.Get("Location"); sent.StatusCode != http.StatusTemporaryRedirect || to != b.url+"/job/x?y=1" {
		t.Errorf("without https: %d %q", sent.StatusCode, to)
	}
	page := b.get("/trust")
	if page.status != http.StatusOK || !strings.Contains(page.body, web.Fingerprint(a.PEM)) {
		t.Errorf("how to trust it: %d", page.status)
	}
	if file := b.get("/trust/authority.crt"); file.status != http.StatusOK {
		t.Errorf("the certificate: %d", file.status)
	} else if parsed, err := x509.ParseCertificate([]byte(file.body)); err != nil || !parsed.IsCA {
		t.Errorf("the certificate: %v", err)
	}
	stranger := &http.Client{}
	if resp, err := stranger.Get(b.url + "/"); err == nil {
		resp.Body.Close()
		t.Error("a browser that was told nothing trusts it")
	}
	// Stopping ends a stream and lets go.
	r, err := http.NewRequest(http.MethodGet, b.url+"/live", nil)
	if err != nil {
		t.Fatal(err)
	}
	r.Header.Set("Cookie", strings.Split(in.header.Get("Set-Cookie"), ";")[0])
	resp, err := b.http.Do(r)
	if err != nil || resp.StatusCode != http.StatusOK || resp.ProtoMajor != 2 {
		t.Fatalf("a stream: %v %v", resp, err)
	}
	defer resp.Body.Close()
	stop()
	select {
	case err := <-done:
		if err != nil {
			t.Errorf("stopped with %v", err)
		}
	case <-time.After(8 * time.Second):
		t.Error("it does not stop while a stream is open")
	}
}

func TestLoopback(t *testing.T) {
	for address, want := range map[string]bool{"127.0.0.1:8420": true, "localhost:8420": true, "[::1]:8420": true, ":8420": false, "0.0.0.0:8420": false, "192.168.1.7:8420": false, "bench.local:8420": false} {
		if web.Loopback(address) != want {
			t.Errorf("%s: %v", address, !want)
		}
	}
}
