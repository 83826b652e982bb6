package sqlstore_test

import (
	"bytes"
	"database/sql"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"axlewright/shop"
	"axlewright/shop/shoptest"
	"axlewright/sqlstore"
)

// smallDisk mounts a disk of a few megabytes, which only root can do.
func smallDisk(t *testing.T, options string) string {
	t.Helper()
	dir, err := os.MkdirTemp("", "axlewright-disk-*") // not t.TempDir: other users may not look into that
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.Remove(dir) })
	if err := syscall.Mount("tmpfs", dir, "tmpfs", 0, options); err != nil {
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
	dir := smallDisk(t, "size=9m")
	ballast := filepath.Join(dir, "ballast")
	if err := os.WriteFile(ballast, make([]byte, 5<<20), 0o600); err != nil {
		t.Fatal(err)
	}
	s := openSQLite(t, filepath.Join(dir, "shop"))
	b := shoptest.Fellgate(t, s)
	j := b.Open()
	written := fillWithNotes(b, j.ID)
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

// fillWithNotes writes until the disk is full, which must be said, and returns
// how many notes were acknowledged.
func fillWithNotes(b *shoptest.Bench, job shop.ID) int {
	b.T.Helper()
	long := strings.Repeat("nip to touch, back off by angle ", 300)
	for written := 0; written < 5000; written++ {
		_, err := b.Shop.Note(b.Ctx, b.Builder, job, "peg", long, fmt.Sprint(written))
		if err != nil {
			if full := wantCode(b.T, err, shop.Full); !strings.Contains(full.Says, "The disk is full") {
				b.T.Errorf("it says %q", full.Says)
			}
			return written
		}
	}
	b.T.Fatal("the disk does not fill")
	return 0
}

// The same in PostgreSQL, whose tables are on the small disk. (Where the disk of
// its write-ahead log fills, PostgreSQL stops by itself, and what is written then
// is refused as by a server that cannot be reached.)
func TestDiskFullInPostgres(t *testing.T) {
	postgres, data := newPostgres(t), os.Getenv("AXLEWRIGHT_TEST_POSTGRES_DATA")
	info, err := os.Stat(data)
	if err != nil {
		t.Skipf("PostgreSQL is not on this computer: %v", err)
	}
	server := info.Sys().(*syscall.Stat_t)
	dir := smallDisk(t, fmt.Sprintf("size=9m,mode=700,uid=%d,gid=%d", server.Uid, server.Gid))
	ballast := filepath.Join(dir, "ballast")
	if err := os.WriteFile(ballast, make([]byte, 5<<20), 0o600); err != nil {
		t.Fatal(err)
	}
	space := filepath.Join(dir, "space")
	if err := errors.Join(os.Mkdir(space, 0o700), os.Chown(space, int(server.Uid), int(server.Gid))); err != nil {
		t.Fatal(err)
	}
	db, err := sql.Open("pgx", os.Getenv("AXLEWRIGHT_TEST_POSTGRES"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { db.Close() })
	if _, err := db.Exec("CREATE TABLESPACE small LOCATION '" + space + "'"); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { // after the schema is dropped
		if _, err := db.Exec("DROP TABLESPACE small"); err != nil {
			t.Error(err)
		}
	})
	s := open(t, sqlstore.Options{Dir: t.TempDir(), Postgres: postgres(t) + "&default_tablespace=small"})
	noise := rand.NewChaCha8([32]byte{1}) // what cannot be made smaller
	put := func(name string) error {
		return s.Update(t.Context(), func(tx shop.Tx) error {
			value := make([]byte, 100_000)
			noise.Read(value)
			return tx.PutSetting(name, value)
		})
	}
	written := 0
	var full error
	for ; full == nil && written < 200; written++ {
		full = put(fmt.Sprint(written))
	}
	written-- // the last one was refused
	if e := wantCode(t, full, shop.Full); !strings.Contains(e.Says, "The disk is full") || written == 0 {
		t.Errorf("after %d it says %q", written, e.Says)
	}
	err = s.View(t.Context(), func(tx shop.Tx) error {
		names, err := tx.Settings()
		if len(names) != written {
			t.Errorf("%d of %d that were acknowledged are there", len(names), written)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Remove(ballast); err != nil {
		t.Fatal(err)
	}
	if err := put("again"); err != nil {
		t.Errorf("with room: %v", err)
	}
}
