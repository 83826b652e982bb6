package main

import (
	"archive/zip"
	"bytes"
	"context"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"axlewright/shop"
	"axlewright/sqlstore"
)

// A place that the program writes to while the test reads.
type spoken struct {
	mu   sync.Mutex
	text bytes.Buffer
}

func (o *spoken) Write(p []byte) (int, error) {
	o.mu.Lock()
	defer o.mu.Unlock()
	return o.text.Write(p)
}

func (o *spoken) find(t *testing.T, pattern string) string {
	t.Helper()
	for end := time.Now().Add(5 * time.Minute); time.Now().Before(end); time.Sleep(10 * time.Millisecond) {
		o.mu.Lock()
		found := regexp.MustCompile(pattern).FindString(o.text.String())
		o.mu.Unlock()
		if found != "" {
			return found
		}
	}
	t.Fatalf("never said %s: %s", pattern, o.text.String())
	return ""
}

func run(t *testing.T, args ...string) (string, error) {
	t.Helper()
	var out bytes.Buffer
	root := newRoot()
	root.SetArgs(args)
	root.SetOut(&out)
	root.SetErr(&out)
	err := root.ExecuteContext(t.Context())
	return out.String(), err
}

func TestServeBackUpRestoreVerify(t *testing.T) {
	dir := t.TempDir()
	ctx, stop := context.WithCancel(t.Context())
	var out spoken
	done := make(chan error, 1)
	go func() { done <- serving{dir: dir, listen: "127.0.0.1:0", out: &out}.run(ctx) }()
	url := out.find(t, `http://127\.0\.0\.1:\d+`)
	resp, err := http.Post(url+"/job", "application/x-www-form-urlencoded", strings.NewReader("ticket=one"))
	if err != nil {
		t.Fatal(err)
	}
	body, _ := io.ReadAll(resp.Body)
	resp.Body.Close()
	if resp.StatusCode != http.StatusOK || !bytes.Contains(body, []byte("job 0001")) {
		t.Fatalf("%d %s", resp.StatusCode, body)
	}
	// While the bench has it open it is verified, backed up and exported, and
	// nobody else writes to it.
	if said, err := run(t, "record", "verify", dir); err != nil || !strings.Contains(said, "records: 1") {
		t.Errorf("verified beside the bench: %s %v", said, err)
	}
	early := filepath.Join(t.TempDir(), "early.zip")
	if said, err := run(t, "backup", dir, early); err != nil || !strings.Contains(said, "1 jobs") {
		t.Errorf("backed up beside the bench: %s %v", said, err)
	}
	job := filepath.Join(t.TempDir(), "job.zip")
	if said, err := run(t, "record", "export", dir, "0001", job); err != nil || !strings.Contains(said, "✓ The seal fits") {
		t.Errorf("exported beside the bench: %s %v", said, err)
	}
	if _, err := run(t, "record", "import", dir, job); shop.CodeOf(err) != shop.InUse {
		t.Errorf("imported beside the bench: %v", err)
	}
	second := serving{dir: dir, listen: "127.0.0.1:0", out: io.Discard}
	if err := second.run(t.Context()); shop.CodeOf(err) != shop.InUse {
		t.Errorf("a second bench on the same shop: %v", err)
	}
	stop()
	if err := <-done; err != nil {
		t.Fatalf("stopped with %v", err)
	}
	if said, err := run(t, "record", "verify", dir); err != nil || !strings.Contains(said, "records: 1") {
		t.Errorf("%s %v", said, err)
	}

	if said, err := run(t, "record", "verify", dir, "--against", early); err != nil {
		t.Errorf("against the backup: %s %v", said, err)
	}
	if said, err := run(t, "record", "import", dir, job); err != nil || !strings.Contains(said, "0 entries added") {
		t.Errorf("imported at home: %s %v", said, err)
	}
	if said, err := run(t, "record", "verify", job); err != nil || !strings.Contains(said, "job 0001") {
		t.Errorf("the exported job: %s %v", said, err)
	}

	file := filepath.Join(t.TempDir(), "shop.zip")
	if said, err := run(t, "backup", dir, file); err != nil || !strings.Contains(said, "1 jobs") {
		t.Fatalf("%s %v", said, err)
	}
	if said, err := run(t, "restore", "--check", file); err != nil {
		t.Errorf("%s %v", said, err)
	}
	other := filepath.Join(t.TempDir(), "other")
	if said, err := run(t, "restore", file, other); err != nil {
		t.Fatalf("%s %v", said, err)
	}
	if said, err := run(t, "record", "verify", other, "0001"); err != nil {
		t.Errorf("%s %v", said, err)
	}
	if _, err := run(t, "restore", file, other); err == nil {
		t.Error("restored over a shop that was there")
	}
	// A backup with one bit turned over in its records puts nothing anywhere.
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	parts, err := zip.NewReader(bytes.NewReader(text), int64(len(text)))
	if err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(parts.File, func(f *zip.File) bool { return f.Name == "records.jsonl" })
	if i < 0 {
		t.Fatal("the backup holds no records")
	}
	at, err := parts.File[i].DataOffset()
	if err != nil {
		t.Fatal(err)
	}
	text[at+int64(parts.File[i].CompressedSize64)/2] ^= 0x40
	if err := os.WriteFile(file, text, 0o600); err != nil {
		t.Fatal(err)
	}
	third := filepath.Join(t.TempDir(), "third")
	if _, err := run(t, "restore", file, third); err == nil {
		t.Error("a damaged backup was restored")
	}
	store, err := sqlstore.Open(t.Context(), sqlstore.Options{Dir: other})
	if err != nil {
		t.Fatal(err)
	}
	defer store.Close()
	sh, err := shop.Open(t.Context(), store, shop.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if found, err := sh.FindJobs(t.Context(), shop.JobQuery{}); err != nil || len(found.Lines) != 1 {
		t.Errorf("%d jobs restored, %v", len(found.Lines), err)
	}
}
