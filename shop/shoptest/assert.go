package shoptest

import (
	"sync"
	"testing"

	"axlewright/shop"
)

var clockMu sync.Mutex

// wantCode fails unless err has the code.
func wantCode(t testing.TB, err error, want shop.Code) *shop.Error {
	t.Helper()
	if got := shop.CodeOf(err); got != want {
		t.Fatalf("got error %v (%q), want %q", err, got, want)
	}
	e, _ := err.(*shop.Error)
	return e
}

func equal[T comparable](t testing.TB, what string, got, want T) {
	t.Helper()
	if got != want {
		t.Errorf("%s: got %v, want %v", what, got, want)
	}
}

func view(b *Bench, read func(shop.Tx) error) {
	b.T.Helper()
	b.must(b.Store.View(b.Ctx, read))
}

func update(b *Bench, write func(shop.Tx) error) {
	b.T.Helper()
	b.must(b.Store.Update(b.Ctx, write))
}
