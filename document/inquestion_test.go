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

// The certificate says what is not in the record.
func TestTheCertificateNamesItsGaps(t *testing.T) {
	_, jobs := demoJobs(t)
	for _, j := range jobs {
		missing := j.NotInRecord()
		if len(missing) == 0 {
			continue
		}
		_, text := laid(t, shop.PaperCertificate, document.Source{Job: j, House: house})
		text = strings.Join(strings.Fields(text), " ")
		if len(j.Certificates()) == 0 && !strings.Contains(text, "Not in the record: "+strings.Fields(missing[0])[0]) {
			t.Errorf("job %s: the certificate does not name %q", j.NumberText(), missing[0])
		}
	}
}
