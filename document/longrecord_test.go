package document_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"axlewright/document"
	"axlewright/shop"
	"axlewright/shop/shoptest"
	"axlewright/sqlstore"
)

// A record of 500 entries is printed whole, on as many pages as it takes.
func TestLongRecordIsPrintedWhole(t *testing.T) {
	store, err := sqlstore.Open(t.Context(), sqlstore.Options{Dir: t.TempDir()})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { store.Close() })
	b := shoptest.Fellgate(t, store)
	j := b.Open(shop.WorkPeg)
	for i := int64(0); len(j.Entries()) < 500; i++ { // one reading, corrected over and over
		j = b.Write(j.ID, "lash", "lash", fmt.Sprint(i%8+1), shoptest.MM(fmt.Sprintf("0.%03d", 100+i%99), 0.1+float64(i%99)/1000))
	}
	s := document.Source{Job: j, House: house, Day: time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)}
	pages, text := laid(t, shop.PaperRecord, s)
	last := fmt.Sprintf("page %d of %d", pages, pages)
	if pages < 5 || !strings.Contains(text, last) || !strings.Contains(text, j.Head.Hash) || strings.Count(text, "△ corrects no.") < 480 {
		t.Errorf("%d pages; the last page, the hash or a correction is missing", pages)
	}
	for _, e := range j.Entries() {
		if !strings.Contains(text, fmt.Sprintf("%d ", e.Seq)) {
			t.Errorf("entry %d is lost", e.Seq)
		}
	}
	if _, text := laid(t, shop.PaperBuildRecord, s); strings.Count(text, "△ Lash at the heel") < 480 {
		t.Error("the build record leaves corrections out")
	}
}
