package shop_test

import (
	"archive/zip"
	"bytes"
	"io"
	"strings"
	"testing"

	"axlewright/shop"
	"axlewright/shop/shoptest"
	"axlewright/sqlstore"
)

// exported is a job with a photograph, as a zip file.
func exported(b *shoptest.Bench) (shop.ID, []byte) {
	b.T.Helper()
	j := b.Write(b.Open().ID, "stamp", "number", "", shop.Text("0117"))
	if _, err := b.Shop.AddPhoto(b.Ctx, b.Owner, j.ID, "stamp", `<script>alert("x")</script>`, shoptest.Photograph(b.T, 40, 30)); err != nil {
		b.T.Fatal(err)
	}
	var out bytes.Buffer
	if err := b.Shop.Export(b.Ctx, b.Owner, j.ID, &out); err != nil {
		b.T.Fatal(err)
	}
	return j.ID, out.Bytes()
}

// members unpacks a zip file.
func members(t testing.TB, content []byte) map[string][]byte {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(content), int64(len(content)))
	if err != nil {
		t.Fatal(err)
	}
	all := map[string][]byte{}
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		if all[f.Name], err = io.ReadAll(r); err != nil {
			t.Fatal(err)
		}
		r.Close()
	}
	return all
}

func zipped(t testing.TB, all map[string][]byte) []byte {
	t.Helper()
	var out bytes.Buffer
	z := zip.NewWriter(&out)
	for name, content := range all {
		w, err := z.Create(name)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := w.Write(content); err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func TestAnExportExplainsItself(t *testing.T) {
	b := bench(t)
	_, file := exported(b)
	all := members(t, file)
	for name, want := range map[string]string{
		"README.txt":    "sha256sum",
		"job.html":      "0117",
		"manifest.json": `"signature"`,
		"record.jsonl":  `"kind":"opened"`,
		"cards.jsonl":   "Bracken of Scar End",
	} {
		if !strings.Contains(string(all[name]), want) {
			t.Errorf("%s lacks %q", name, want)
		}
	}
	page := string(all["job.html"])
	if strings.Contains(page, "<script") || !strings.Contains(page, "&lt;script&gt;") {
		t.Error("a caption is not text on the page")
	}
	photographs := 0
	for name := range all {
		if strings.HasPrefix(name, "files/") && strings.HasSuffix(name, ".jpg") {
			photographs++
		}
	}
	if photographs != 2 || !strings.Contains(page, `src="files/`) {
		t.Errorf("%d pictures", photographs)
	}
	for _, secret := range []string{"argon2", "Wren"} { // people stay at home, but for who wrote what
		if strings.Contains(string(all["cards.jsonl"]), secret) {
			t.Errorf("the cards tell %q", secret)
		}
	}
}

func TestWhatIsNotImported(t *testing.T) {
	b := bench(t)
	job, file := exported(bench(t))
	change := func(do func(all map[string][]byte)) []byte {
		all := members(t, file)
		do(all)
		return zipped(t, all)
	}
	replace := func(name, from, to string) []byte {
		return change(func(all map[string][]byte) {
			if !strings.Contains(string(all[name]), from) {
				t.Fatalf("%s has no %q", name, from)
			}
			all[name] = []byte(strings.Replace(string(all[name]), from, to, 1))
		})
	}
	photo := ""
	for name := range members(t, file) {
		if strings.HasSuffix(name, ".jpg") {
			photo = name
		}
	}
	for name, c := range map[string]struct {
		content []byte
		want    shop.Code
	}{
		"nothing":              {nil, shop.Damaged},
		"no zip file":          {[]byte("PK this is none"), shop.Damaged},
		"cut short":            {file[:len(file)-30], shop.Damaged},
		"without manifest":     {change(func(all map[string][]byte) { delete(all, "manifest.json") }), shop.Damaged},
		"without record":       {change(func(all map[string][]byte) { delete(all, "record.jsonl") }), shop.Damaged},
		"an empty record":      {change(func(all map[string][]byte) { all["record.jsonl"] = nil }), shop.Damaged},
		"without a photograph": {change(func(all map[string][]byte) { delete(all, photo) }), shop.Damaged},
		"another photograph":   {change(func(all map[string][]byte) { all[photo] = []byte("x") }), shop.Damaged},
		"an entry altered":     {replace("record.jsonl", "0117", "0118"), shop.Damaged},
		"a line cut off":       {change(func(all map[string][]byte) { all["record.jsonl"] = bytes.TrimSuffix(all["record.jsonl"], []byte("\n")) }), shop.Damaged},
		"a blank line":         {change(func(all map[string][]byte) { all["record.jsonl"] = append(all["record.jsonl"], '\n') }), shop.Damaged},
		"another head":         {replace("manifest.json", `"entry": `, `"entry": 1`), shop.Damaged},
		"another form":         {replace("manifest.json", `"format": 1`, `"format": 2`), shop.Damaged},
		"a job with a path":    {replace("manifest.json", string(job), "../../x"), shop.Damaged},
		"an owner's card": {change(func(all map[string][]byte) {
			all["cards.jsonl"] = []byte(`{"kind":"person","id":"thief","sheet":{"name":"Thief","role":"owner"}}` + "\n")
		}), shop.Damaged},
		"a card that is none": {change(func(all map[string][]byte) {
			all["cards.jsonl"] = []byte(`{"kind":"lot","id":"x","sheet":{"title":""}}` + "\n")
		}), shop.Damaged},
		"a card with a path": {change(func(all map[string][]byte) {
			all["cards.jsonl"] = []byte(`{"kind":"lot","id":"../x","sheet":{}}` + "\n")
		}), shop.Damaged},
		"a record without end":  {change(func(all map[string][]byte) { all["record.jsonl"] = bytes.Repeat([]byte("a"), 8<<20) }), shop.TooLarge},
		"a bomb for a manifest": {change(func(all map[string][]byte) { all["manifest.json"] = bytes.Repeat([]byte(" "), 50<<20) }), shop.TooLarge},
		"a bomb for a picture":  {change(func(all map[string][]byte) { all[photo] = make([]byte, 65<<20) }), shop.TooLarge},
	} {
		b := bench(t)
		_, err := b.Shop.Import(b.Ctx, b.Owner, bytes.NewReader(c.content), int64(len(c.content)))
		if got := shop.CodeOf(err); got != c.want {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
		if counts, err := b.Shop.CountJobs(b.Ctx); err != nil || len(counts) > 0 {
			t.Errorf("%s: jobs were written: %v %v", name, counts, err)
		}
	}
	// Names that lead elsewhere are not looked at, and harm nothing.
	more := change(func(all map[string][]byte) { all["../../etc/passwd"] = []byte("x"); all["/files/x"] = []byte("y") })
	if r, err := b.Shop.Import(b.Ctx, b.Owner, bytes.NewReader(more), int64(len(more))); err != nil || r.Added == 0 {
		t.Errorf("with strange names beside: %+v %v", r, err)
	}
}

// A seal of somebody else's key is told.
func TestTheSealOfAnExport(t *testing.T) {
	home, b := bench(t), bench(t)
	_, file := exported(home)
	all := members(t, file)
	all["manifest.json"] = bytes.Replace(all["manifest.json"], []byte(home.Shop.PublicKey()), []byte(b.Shop.PublicKey()), 1)
	other := zipped(t, all)
	r, err := b.Shop.Import(b.Ctx, b.Owner, bytes.NewReader(other), int64(len(other)))
	if err != nil || r.Signed {
		t.Errorf("with another key: signed %v, %v", r.Signed, err)
	}
}

// fuzzBench is Fellgate with one job, as a zip file.
func fuzzBench(f *testing.F) (*shoptest.Bench, []byte) {
	f.Helper()
	store, err := sqlstore.Open(f.Context(), sqlstore.Options{Dir: f.TempDir()})
	if err != nil {
		f.Fatal(err)
	}
	f.Cleanup(func() { store.Close() })
	b := shoptest.Fellgate(f, store)
	_, file := exported(b)
	return b, file
}

// refusedRightly demands one of the errors that a bad file may bring.
func refusedRightly(t *testing.T, what string, err error) {
	t.Helper()
	switch code := shop.CodeOf(err); code {
	case "", shop.Damaged, shop.TooLarge, shop.Invalid, shop.Conflict:
	default:
		t.Errorf("%s: %v", what, err)
	}
}

// FuzzImport is any bytes for a zip file.
func FuzzImport(f *testing.F) {
	b, file := fuzzBench(f)
	var backup bytes.Buffer
	if _, err := b.Shop.BackUp(b.Ctx, b.Owner, &backup, true); err != nil {
		f.Fatal(err)
	}
	f.Add(file)
	f.Add(backup.Bytes())
	f.Add(file[:len(file)/2])
	f.Fuzz(func(t *testing.T, content []byte) {
		_, err := b.Shop.Import(t.Context(), shop.Program, bytes.NewReader(content), int64(len(content)))
		refusedRightly(t, "import", err)
		_, err = shop.CheckBackup(bytes.NewReader(content), int64(len(content)), nil)
		refusedRightly(t, "backup", err)
	})
}

// FuzzImportParts is a good zip file of any parts. What is taken is whole.
func FuzzImportParts(f *testing.F) {
	b, file := fuzzBench(f)
	all := members(f, file)
	f.Add(all["manifest.json"], all["record.jsonl"], all["cards.jsonl"])
	f.Add([]byte(`{"format":1,"job":"a"}`), []byte("{}\n"), []byte(`{"kind":"lot","id":"x","sheet":{}}`+"\n"))
	f.Fuzz(func(t *testing.T, manifest, record, cards []byte) {
		all["manifest.json"], all["record.jsonl"], all["cards.jsonl"] = manifest, record, cards
		content := zipped(t, all)
		r, err := b.Shop.Import(t.Context(), shop.Program, bytes.NewReader(content), int64(len(content)))
		refusedRightly(t, "import", err)
		if err == nil {
			if found, err := b.Shop.VerifyJob(t.Context(), r.Job.ID); err != nil || len(found) > 0 {
				t.Errorf("taken, and not whole: %v %v", found, err)
			}
		}
	})
}
