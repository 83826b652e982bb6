package shop_test

import (
	"bytes"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"axlewright/quantity"
	"axlewright/shop"
)

var renew = flag.Bool("update", false, "write the golden files anew")

// fixedRecord is a record with nothing of chance in it.
func fixedRecord(t *testing.T) ([]shop.Sealed, shop.Head) {
	t.Helper()
	const job = "fellgate-job-1"
	at := time.Date(2026, 3, 2, 8, 15, 0, 123456789, time.FixedZone("UTC+1", 3600))
	low, high := 0.076e-3, 0.177e-3
	number := 117.0
	by := shop.By{ID: "wren", Name: "Wren <O’Brien> \"✓\""}
	entries := []shop.Entry{
		{Kind: shop.EntryOpened, Step: shop.StepJob, Item: "opened", Value: shop.Value{Typed: "0117", SI: &number, Link: &shop.Link{Kind: shop.KindHouse, ID: "fellgate", Label: "Fellgate Axle Works"}}},
		{Kind: shop.EntrySet, Step: "lash", Item: "lash", Place: "1", Instrument: "dial gauge 3", Ticket: "t-1", Value: shop.Figure("6 thou", 6*25.4e-6, quantity.Length),
			Limit: &shop.Limit{Low: &low, High: &high, Origin: shop.Maker, Source: "manual, page 51-12"}, Verdict: shop.Fine},
		{Kind: shop.EntryNote, Step: "weld", Item: "note", Place: "n", Value: shop.Text("مرحبا\n👩‍🔧 <script>")},
		{Kind: shop.EntrySet, Step: "lash", Item: "lash", Place: "1", Corrects: 2, Why: "read again", Taken: at, Value: shop.Figure("0.18 mm", 0.18e-3, quantity.Length), Verdict: shop.Halt},
	}
	var all []shop.Sealed
	head := shop.Head{}
	for i, e := range entries {
		e.Job, e.Who, e.At = job, by, at.Add(time.Duration(i)*time.Minute)
		_, s, err := shop.Seal(e, head)
		if err != nil {
			t.Fatal(err)
		}
		all, head = append(all, s), shop.Head{Seq: s.Seq, Hash: s.Hash}
	}
	return all, head
}

func jsonl(sealed []shop.Sealed) []byte {
	var out bytes.Buffer
	for _, s := range sealed {
		out.Write(s.Body)
		out.WriteByte('\n')
	}
	return out.Bytes()
}

// The form of a record must stay what it is for decades: this file changes only
// together with RecordFormat and RECORD.md.
func TestRecordFormPinned(t *testing.T) {
	sealed, head := fixedRecord(t)
	path := filepath.Join("testdata", "record-1.jsonl")
	if *renew {
		if err := os.WriteFile(path, jsonl(sealed), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got := jsonl(sealed); !bytes.Equal(got, want) {
		t.Errorf("the form has changed:\n%s", got)
	}
	if want := "35ececd21c5e84b26d7e169db20401b17a34873ddd63d0c21d99fa76891946e4"; head.Hash != want {
		t.Errorf("the head is %s, not %s", head.Hash, want)
	}
	if found := shop.Verify("fellgate-job-1", sealed, head); len(found) > 0 {
		t.Errorf("the pinned record: %v", found)
	}
}

// RECORD.md says that the hash of a line is the prev of the next, and that it
// can be had with sha256sum. So it is tried with sha256sum.
func TestRecordIsCheckedByHandAsWritten(t *testing.T) {
	sum, err := exec.LookPath("sha256sum")
	if err != nil {
		t.Skip("there is no sha256sum here")
	}
	path := filepath.Join("testdata", "record-1.jsonl")
	lines, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	all := strings.Split(strings.TrimSuffix(string(lines), "\n"), "\n")
	for i := range len(all) - 1 {
		c := exec.Command(sum)
		c.Stdin = strings.NewReader(all[i])
		out, err := c.Output()
		if err != nil {
			t.Fatal(err)
		}
		if want := `"prev":"` + strings.Fields(string(out))[0] + `"`; !strings.Contains(all[i+1], want) {
			t.Errorf("line %d lacks %s", i+2, want)
		}
	}
}

func TestVerifyFindsWhatWasDone(t *testing.T) {
	sealed, head := fixedRecord(t)
	const job = "fellgate-job-1"
	seal := func(s shop.Sealed, change func(*shop.Entry), after shop.Head) shop.Sealed {
		e, err := shop.Unseal(s)
		if err != nil {
			t.Fatal(err)
		}
		change(&e)
		_, again, err := shop.Seal(e, after)
		if err != nil {
			t.Fatal(err)
		}
		return again
	}
	cut := func(n int) shop.Head { return shop.Head{Seq: int64(n), Hash: sealed[n-1].Hash} }
	for name, c := range map[string]struct {
		entries []shop.Sealed
		head    shop.Head
		want    string
	}{
		"a word altered": {func() []shop.Sealed {
			x := slices.Clone(sealed)
			x[1].Body = bytes.Replace(x[1].Body, []byte("6 thou"), []byte("7 thou"), 1)
			return x
		}(), head, "altered"},
		"an entry altered and hashed anew": {func() []shop.Sealed {
			x := slices.Clone(sealed)
			x[1] = seal(x[1], func(e *shop.Entry) { e.Value.Typed = "7 thou" }, cut(1))
			return x
		}(), head, "does not follow"},
		"the first missing":  {sealed[1:], head, "missing"},
		"one missing":        {slices.Delete(slices.Clone(sealed), 2, 3), head, "missing"},
		"the last missing":   {sealed[:3], head, "should end with entry 4"},
		"two changed places": {[]shop.Sealed{sealed[0], sealed[2], sealed[1], sealed[3]}, head, "moved"},
		"one doubled":        {append(slices.Clone(sealed), sealed[3]), head, "doubled"},
		"another job's":      {sealed, head, ""},
		"the index altered": {func() []shop.Sealed {
			x := slices.Clone(sealed)
			x[1].Slot = "lash/lash/2"
			return x
		}(), head, "index"},
		"not canonical": {func() []shop.Sealed {
			x := slices.Clone(sealed)
			x[3].Body = append([]byte(" "), x[3].Body...)
			return x
		}(), head, "canonical"},
		"no JSON": {func() []shop.Sealed {
			x := slices.Clone(sealed)
			x[3].Body = []byte("{")
			return x
		}(), head, "cannot be read"},
	} {
		id := shop.ID(job)
		if name == "another job's" {
			id, c.want = "another-job", "belongs to another job"
		}
		found := shop.Verify(id, c.entries, c.head)
		if !slices.ContainsFunc(found, func(f shop.Finding) bool { return strings.Contains(f.String(), c.want) }) {
			t.Errorf("%s: found %v, want something with %q", name, found, c.want)
		}
	}

	// Somebody computes the whole chain anew: only a witness from outside tells.
	forged, at := []shop.Sealed{}, shop.Head{}
	for i, s := range sealed {
		f := seal(s, func(e *shop.Entry) {
			if i == 1 {
				e.Value.Typed = "7 thou"
			}
		}, at)
		forged, at = append(forged, f), shop.Head{Seq: f.Seq, Hash: f.Hash}
	}
	if found := shop.Verify(job, forged, at); len(found) > 0 {
		t.Errorf("a chain computed anew is whole in itself: %v", found)
	}
	if found := shop.Verify(job, forged, at, cut(4)); len(found) != 1 || !strings.Contains(found[0].Says, "signed") {
		t.Errorf("with a witness: %v", found)
	}
	if found := shop.Verify(job, sealed, head, cut(2), cut(4)); len(found) > 0 {
		t.Errorf("whole, with witnesses: %v", found)
	}
	if found := shop.Verify(job, nil, shop.Head{}); len(found) > 0 {
		t.Errorf("an empty record: %v", found)
	}
}

// A record in a store, altered behind the program's back, is shown as damaged
// and takes no more entries.
func TestADamagedRecordTakesNoEntries(t *testing.T) {
	sealed, head := fixedRecord(t)
	sealed[1].Body = bytes.Replace(sealed[1].Body, []byte("6 thou"), []byte("7 thou"), 1)
	j := shop.Read("fellgate-job-1", sealed, head)
	if len(j.Damage) == 0 {
		t.Error("the damage is not shown")
	}
	if got := len(j.Entries()); got != 4 {
		t.Errorf("%d entries can still be read", got)
	}
}
