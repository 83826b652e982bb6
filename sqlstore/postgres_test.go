package sqlstore_test

import (
	"database/sql"
	"net/url"
	"os"
	"strings"
	"testing"

	_ "github.com/jackc/pgx/v5/stdlib"

	"axlewright/shop"
)

// newPostgres returns a maker of empty schemas in the database that
// AXLEWRIGHT_TEST_POSTGRES names. Without it the test is skipped, or failed
// where AXLEWRIGHT_REQUIRE_POSTGRES is 1.
func newPostgres(t testing.TB) func(testing.TB) string {
	t.Helper()
	base := os.Getenv("AXLEWRIGHT_TEST_POSTGRES")
	if base == "" {
		if os.Getenv("AXLEWRIGHT_REQUIRE_POSTGRES") == "1" {
			t.Fatal("AXLEWRIGHT_TEST_POSTGRES is not set: run this under .ci/postgres")
		}
		t.Skip("AXLEWRIGHT_TEST_POSTGRES is not set: PostgreSQL is not tested here")
	}
	return func(t testing.TB) string {
		t.Helper()
		db, err := sql.Open("pgx", base)
		if err != nil {
			t.Fatal(err)
		}
		schema := "shop_" + string(shop.NewID())
		if _, err := db.Exec("CREATE SCHEMA " + schema); err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() {
			if _, err := db.Exec("DROP SCHEMA " + schema + " CASCADE"); err != nil {
				t.Error(err)
			}
			db.Close()
		})
		separator := "?"
		if strings.Contains(base, "?") {
			separator = "&"
		}
		return base + separator + url.Values{"search_path": {schema}}.Encode()
	}
}
