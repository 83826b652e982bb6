package document_test

import (
	"strings"
	"testing"

	"axlewright/document"
	"axlewright/shop"
	"axlewright/shop/shoptest"
	"axlewright/sqlstore"
)

// A reading that is asked back stands on no paper as a measured fact.
func TestPapersMarkWhatIsInQuestion(t *testing.T) {
	store, err := sqlstore.Open(t.Context(), sqlstore.Options{Dir: t.TempDir()})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { store.Close() })
	b := shoptest.Fellgate(t, store)
	j := b.Open()
	b.Write(j.ID, "identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T24.ID))
	for _, c := range []struct {
		typed  string
		mm     float64
		marked bool
	}{{"1.5", 1.5, true}, {"0.15", 0.15, false}} {
		j = b.Write(j.ID, "lash", "lash", "1", shoptest.MM(c.typed, c.mm))
		for _, kind := range []shop.Paper{shop.PaperCertificate, shop.PaperSetUpSheet, shop.PaperBuildRecord} {
			_, text := laid(t, kind, document.Source{Job: j, House: house})
			if got := strings.Contains(strings.Join(strings.Fields(text), " "), "in question"); got != c.marked {
				t.Errorf("%s with a lash of %s: in question %v, want %v", kind, c.typed, got, c.marked)
			}
		}
	}
}
