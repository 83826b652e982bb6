package web

import (
	"context"
	"crypto/tls"
	"errors"
	"log/slog"
	"net"
	"net/http"
	"strings"
	"time"
)

// Serve answers on a listener until ctx ends. Then it takes no more requests,
// ends the streams, and waits for what is under way, ten seconds at most.
func (s *Server) Serve(ctx context.Context, l net.Listener, cert *tls.Certificate) error {
	server := &http.Server{
		Handler:           s,
		ReadHeaderTimeout: 10 * time.Second,
		ReadTimeout:       2 * time.Minute, // a photograph over a weak signal
		WriteTimeout:      2 * time.Minute,
		IdleTimeout:       2 * time.Minute,
		MaxHeaderBytes:    64 << 10,
		ErrorLog:          slog.NewLogLogger(s.log.Handler(), slog.LevelDebug),
	}
	server.RegisterOnShutdown(s.end)
	done := make(chan error, 1)
	go func() {
		if cert == nil {
			done <- server.Serve(l)
			return
		}
		server.TLSConfig = &tls.Config{Certificates: []tls.Certificate{*cert}, MinVersion: tls.VersionTLS12}
		done <- server.ServeTLS(sendOnListener{l}, "", "")
	}()
	select {
	case err := <-done:
		s.Close()
		return err
	case <-ctx.Done():
	}
	last, cancel := context.WithTimeout(context.Background(), 10*time.Second)
	defer cancel()
	err := server.Shutdown(last)
	if err != nil {
		_ = server.Close() // what is still open is cut
	}
	s.Close()
	if e := <-done; err == nil && !errors.Is(e, http.ErrServerClosed) {
		err = e
	}
	return err
}

// Loopback says whether an address can only be reached from this computer.
func Loopback(address string) bool {
	host, _, err := net.SplitHostPort(address)
	if err != nil {
		host = address
	}
	host = strings.Trim(host, "[]") // of an IPv6 address without a port
	if host == "localhost" {
		return true
	}
	ip := net.ParseIP(host)
	return ip != nil && ip.IsLoopback()
}
