package sqlstore_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"axlewright/shop"
	"axlewright/shop/shoptest"
)

// smallDisk mounts a disk of a few megabytes, which only root can do.
func smallDisk(t *testing.T, size string) string {
	t.Helper()
	dir := t.TempDir()
	if err := syscall.Mount("tmpfs", dir, "tmpfs", 0, "size="+size); err != nil {
		t.Skipf("no small disk can be mounted here: %v", err)
	}
	t.Cleanup(func() {
		if err := syscall.Unmount(dir, 0); err != nil {
			t.Error(err)
		}
	})
	return dir
}

// The disk fills up: a clear sentence, nothing half written, nothing of what was
// acknowledged lost, and the work goes on once there is room.
func TestDiskFull(t *testing.T) {
	dir := smallDisk(t, "9m")
	ballast := filepath.Join(dir, "ballast")
	if err := os.WriteFile(ballast, make([]byte, 5<<20), 0o600); err != nil {
		t.Fatal(err)
	}
	s := openSQLite(t, filepath.Join(dir, "shop"))
	b := shoptest.Fellgate(t, s)
	j := b.Open()
	long := strings.Repeat("nip to touch, back off by angle ", 300)
	var full *shop.Error
	written := 0
	for full == nil {
		_, err := b.Shop.Note(b.Ctx, b.Builder, j.ID, "peg", long, fmt.Sprint(written))
		switch {
		case err == nil:
			if written++; written > 5000 {
				t.Fatal("the disk does not fill")
			}
		default:
			full = wantCode(t, err, shop.Full)
		}
	}
	if !strings.Contains(full.Says, "The disk is full") {
		t.Errorf("it says %q", full.Says)
	}
	_, err := s.PutFile(b.Ctx, bytes.Repeat([]byte("x"), 8<<20))
	wantCode(t, err, shop.Full)
	_, err = s.BackUpFile(b.Ctx, b.Shop, filepath.Join(dir, "shop.zip"))
	wantCode(t, err, shop.Full)
	_, err = s.BackUpInto(b.Ctx, b.Shop, filepath.Join(dir, "nightly"), 3, time.Now())
	wantCode(t, err, shop.Full)
	if left, err := filepath.Glob(filepath.Join(dir, "*.part")); err != nil || len(left) > 0 {
		t.Errorf("left behind: %v %v", left, err)
	}

	read, err := b.Shop.Job(b.Ctx, j.ID) // reading goes on
	if err != nil {
		t.Fatal(err)
	}
	if got := len(read.All("peg", shop.ItemNote)); got != written || len(read.Damage) > 0 {
		t.Errorf("%d notes of %d are there, damage %v", got, written, read.Damage)
	}
	if err := os.Remove(ballast); err != nil {
		t.Fatal(err)
	}
	if _, err := b.Shop.Note(b.Ctx, b.Builder, j.ID, "peg", "room again", "again"); err != nil {
		t.Errorf("with room: %v", err)
	}
	if err := s.IntegrityCheck(b.Ctx); err != nil {
		t.Error(err)
	}
}
