package shop_test

import (
	"strconv"
	"testing"

	"axlewright/quantity"
	"axlewright/shop"
	"axlewright/shop/shoptest"
	"axlewright/sqlstore"
)

// formatLong writes a float with more digits than it needs.
func formatLong(x float64) string { return strconv.FormatFloat(x, 'e', 25, 64) }

// bench is Fellgate on a store of its own.
func bench(t *testing.T) *shoptest.Bench {
	t.Helper()
	store, err := sqlstore.Open(t.Context(), sqlstore.Options{Dir: t.TempDir()})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { store.Close() })
	return shoptest.Fellgate(t, store)
}

func wantCode(t *testing.T, err error, want shop.Code) *shop.Error {
	t.Helper()
	if got := shop.CodeOf(err); got != want {
		t.Fatalf("got error %v (%q), want %q", err, got, want)
	}
	e, _ := err.(*shop.Error)
	return e
}

// count is a plain number.
func count(typed string) shop.Value {
	x, err := strconv.ParseFloat(typed, 64)
	if err != nil {
		panic(err)
	}
	return shop.Figure(typed, x, quantity.Number)
}
