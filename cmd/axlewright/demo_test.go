package main

import (
	"context"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// The first command of a newcomer: it answers, says where the sheet is, opens
// the bench with its jobs, and ends when told to.
func TestDemoOpensTheBench(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "shop")
	ctx, stop := context.WithCancel(t.Context())
	defer stop()
	var out spoken
	root := newRoot()
	root.SetArgs([]string{"demo", dir, "--listen", "127.0.0.1:0"})
	root.SetOut(&out)
	root.SetErr(&out)
	done := make(chan error, 1)
	go func() {
		err := root.ExecuteContext(ctx)
		if err != nil {
			fmt.Fprintf(&out, "http://127.0.0.1:0 was never opened: %v", err) // so that the test does not wait
		}
		done <- err
	}()
	url := strings.TrimSuffix(out.find(t, `http://127\.0\.0\.1:\d+`), "/")
	for _, want := range []string{`Recommended`, `advice\.pdf: open and print it`, `Ctrl-C closes it`} {
		out.find(t, want)
	}
	for _, file := range []string{"advice.pdf", "identify.txt", "stations.txt", "plates.txt", "sheets.txt", "weld-plan.txt"} {
		if info, err := os.Stat(filepath.Join(dir, file)); err != nil || info.Size() < 200 {
			t.Errorf("%s: %v", file, err)
		}
		out.find(t, `wrote .*`+file)
	}
	for path, want := range map[string]string{"/": "Bracken of Scar End", "/search?q=FW-T24-0102": "O’Hara", "/search?state=enquiry": "Mountain rescue"} {
		resp, err := http.Get(url + path)
		if err != nil {
			t.Fatal(err)
		}
		body, _ := io.ReadAll(resp.Body)
		resp.Body.Close()
		if resp.StatusCode != http.StatusOK || !strings.Contains(string(body), want) {
			t.Errorf("%s: %d, without %q", path, resp.StatusCode, want)
		}
	}
	stop()
	if err := <-done; err != nil {
		t.Errorf("stopped with %v", err)
	}
	if said, err := run(t, "record", "verify", dir); err != nil {
		t.Errorf("its records: %v\n%s", err, said)
	}
}

func TestDemoSaysThatThePortIsTaken(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	dir := filepath.Join(t.TempDir(), "shop")
	for _, command := range []string{"demo", "serve"} {
		_, err := run(t, command, dir, "--listen", l.Addr().String())
		if err == nil || !strings.Contains(err.Error(), "another program is at "+l.Addr().String()) {
			t.Errorf("%s: %v", command, err)
		}
	}
	if _, err := os.Stat(dir); err == nil {
		t.Error("the folder was made before the port was asked for")
	}
}
