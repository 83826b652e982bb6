package sqlstore_test

import (
	"testing"

	"axlewright/shop"
	"axlewright/shop/shoptest"
	"axlewright/sqlstore"
)

func TestSQLiteIsAStore(t *testing.T) {
	shoptest.Run(t, func(t *testing.T) shop.Store { return openSQLite(t, t.TempDir()) })
}

func TestPostgresIsAStore(t *testing.T) {
	postgres := newPostgres(t)
	shoptest.Run(t, func(t *testing.T) shop.Store {
		return open(t, sqlstore.Options{Dir: t.TempDir(), Postgres: postgres(t)})
	})
}

func openSQLite(t testing.TB, dir string) *sqlstore.Store {
	return open(t, sqlstore.Options{Dir: dir})
}

func open(t testing.TB, o sqlstore.Options) *sqlstore.Store {
	t.Helper()
	s, err := sqlstore.Open(t.Context(), o)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := s.Close(); err != nil {
			t.Error(err)
		}
	})
	return s
}
