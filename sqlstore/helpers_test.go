package sqlstore_test

import (
	"database/sql"
	"path/filepath"
	"testing"

	"axlewright/shop"
)

func wantCode(t testing.TB, err error, want shop.Code) *shop.Error {
	t.Helper()
	if got := shop.CodeOf(err); got != want {
		t.Fatalf("got error %v (%q), want %q", err, got, want)
	}
	e, _ := err.(*shop.Error)
	return e
}

// alter changes a SQLite shop behind the program's back.
func alter(t testing.TB, dir, statement string) {
	t.Helper()
	db, err := sql.Open("sqlite", "file:"+filepath.Join(dir, "shop.db")+"?_pragma=busy_timeout(5000)")
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	r, err := db.Exec(statement)
	if err != nil {
		t.Fatal(err)
	}
	if n, err := r.RowsAffected(); err != nil || n == 0 {
		t.Fatalf("%d rows altered, %v", n, err)
	}
}
