package web_test

import (
	"bytes"
	"mime/multipart"
	"net/http"
	"strings"
	"testing"

	"axlewright/shop"
)

// A job goes from one shop's page to another's, and a damaged one does not.
func TestAnExportedJobIsTakenIn(t *testing.T) {
	home, other := openBench(t), openBench(t)
	j := home.Write(home.Open().ID, "stamp", "number", "", shop.Text("T24-0117"))
	file := home.get("/job/" + string(j.ID) + "/export.zip").body
	send := func(content string) answer {
		t.Helper()
		var body bytes.Buffer
		form := multipart.NewWriter(&body)
		part, err := form.CreateFormFile("job", "job.zip")
		if err != nil {
			t.Fatal(err)
		}
		part.Write([]byte(content))
		form.Close()
		r, err := http.NewRequest(http.MethodPost, other.url+"/settings/import", &body)
		if err != nil {
			t.Fatal(err)
		}
		r.Header.Set("Content-Type", form.FormDataContentType())
		return other.do(r)
	}
	if a := send(file[:len(file)-40]); a.status < 400 || !strings.Contains(a.body, "not a whole zip file") {
		t.Errorf("cut short: %d %s", a.status, a.body)
	}
	a := send(file)
	if want := "/job/" + string(j.ID) + "/record"; a.status != http.StatusSeeOther || a.header.Get("Location") != want {
		t.Fatalf("%d to %s %s", a.status, a.header.Get("Location"), a.body)
	}
	if says := text(other.page(a.header.Get("Location"))); !strings.Contains(says, "T24-0117") {
		t.Errorf("the record lacks its number: %s", says)
	}
	if found, err := other.shop.VerifyJob(t.Context(), j.ID); err != nil || len(found) > 0 {
		t.Errorf("%v %v", found, err)
	}
}
