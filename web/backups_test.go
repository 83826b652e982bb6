package web_test

import (
	"context"
	"errors"
	"net/http"
	"strings"
	"testing"
	"time"

	"axlewright/shop"
	"axlewright/web"
)

// keeper makes backups that a test can look at.
type keeper struct {
	last shop.LastBackup
	fail error
	made chan bool
}

func (k *keeper) Last() (shop.LastBackup, error) { return k.last, nil }

func (k *keeper) Make(context.Context) error {
	k.made <- true
	return k.fail
}

// The page of the shop says when the last backup was and whether it is whole,
// makes one, and verifies all records.
func TestBackupsAndVerifyingOnTheBench(t *testing.T) {
	k := &keeper{made: make(chan bool, 1)}
	b := openBench(t, func(o *web.Options) { o.Backups = k })
	b.Open()
	for want, last := range map[string]shop.LastBackup{
		"No backup has been made yet":        {},
		"12.3 MB, read back from end to end": {At: time.Now().Add(-time.Hour), Path: "/x/shop.zip", Bytes: 12_300_000},
		"more than a night ago":              {At: time.Now().Add(-40 * time.Hour), Path: "/x/shop.zip", Bytes: 12_300_000},
		"failed: the disk is full":           {At: time.Now(), Fault: "the disk is full"},
	} {
		k.last = last
		if got := text(b.page("/settings")); !strings.Contains(got, want) {
			t.Errorf("not %q: %s", want, got)
		}
		warned := strings.Contains(text(b.page("/")), "The last backup failed or is more than a night old")
		if bad := last.Fault != "" || strings.Contains(want, "more than"); warned != bad {
			t.Errorf("%q: today's work warns %t", want, warned)
		}
	}
	k.fail = errors.New("no room")
	if a := b.post("/settings/backup"); a.status != http.StatusSeeOther {
		t.Fatalf("%d %s", a.status, a.body)
	}
	<-k.made
	if a := b.post("/settings/verify"); a.status != http.StatusSeeOther {
		t.Fatalf("%d %s", a.status, a.body)
	}
	b.eventually("/settings", "1 record with 4 entries verified today")
	b.eventually("/settings", "all whole")
}

// eventually looks at a page until it says so.
func (b *bench) eventually(path, want string) {
	b.t.Helper()
	got := ""
	for end := time.Now().Add(time.Minute); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		if got = text(b.page(path)); strings.Contains(got, want) {
			return
		}
	}
	b.t.Fatalf("%s never says %q: %s", path, want, got)
}
