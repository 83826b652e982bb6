package shoptest

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"axlewright/shop"
)

func ids(lines []shop.Line) []shop.ID {
	var all []shop.ID
	for _, l := range lines {
		all = append(all, l.Job)
	}
	return all
}

func testFindJobs(t *testing.T, open Opener) {
	b := Fellgate(t, open(t))
	plain := b.Open()
	pegged := b.Open(shop.WorkPeg)
	b.Write(pegged.ID, "stamp", "number", "", shop.Text("O117-T24 / A.3"))
	b.Write(pegged.ID, "identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T24.ID))
	b.Write(pegged.ID, "donor", "donor", "", shop.LinkTo(shop.KindDonor, b.Donor.ID))
	b.Write(pegged.ID, "clean", "cracks", "", shop.Words(shop.CrackEar))
	_, err := b.Shop.SetState(b.Ctx, b.Builder, pegged.ID, shop.StateBench, 0, "")
	b.must(err)

	search := func(text string) []shop.ID {
		t.Helper()
		lines, err := b.Shop.Search(b.Ctx, text, 0)
		b.must(err)
		return ids(lines)
	}
	// However the stamp is read or typed: O for 0, no hyphens, small letters, the
	// beginning only, other digits.
	for _, text := range []string{"O117-T24 / A.3", "0117t24a3", "o117 T24", "0117T24", "٠١١٧ T24"} {
		if got := search(text); !slices.Equal(got, []shop.ID{pegged.ID}) {
			t.Errorf("search %q found %v", text, got)
		}
	}
	for _, text := range []string{"1", "0001", "O0O1"} {
		if got := search(text); len(got) == 0 || got[0] != plain.ID {
			t.Errorf("search %q found %v, want job 1 first", text, got)
		}
	}
	for _, text := range []string{"bracken", "BRACKEN", "scar brack", "pick-up hill", "d-12"} {
		if !slices.Contains(search(text), pegged.ID) {
			t.Errorf("search %q did not find the job", text)
		}
	}
	for _, text := range []string{"", "zzz", "bracken zzz", "9", "%", "_", "0117T24A3X"} {
		if got := search(text); len(got) != 0 {
			t.Errorf("search %q found %v", text, got)
		}
	}

	find := func(q shop.JobQuery) []shop.ID {
		t.Helper()
		page, err := b.Shop.FindJobs(b.Ctx, q)
		b.must(err)
		return ids(page.Lines)
	}
	for name, q := range map[string]shop.JobQuery{
		"state":           {States: []shop.State{shop.StateBench, shop.StateOut}},
		"mark":            {Mark: shop.MarkStop},
		"card":            {Kind: shop.KindDonor, Card: b.Donor.ID},
		"casting":         {Kind: shop.KindCasting, Card: b.T24.ID},
		"state and words": {States: []shop.State{shop.StateBench}, Terms: []string{"brack"}},
	} {
		if got := find(q); !slices.Equal(got, []shop.ID{pegged.ID}) {
			t.Errorf("%s: found %v", name, got)
		}
	}
	if got := find(shop.JobQuery{Kind: shop.KindCustomer, Card: b.Customer.ID}); !slices.Equal(got, []shop.ID{pegged.ID, plain.ID}) {
		t.Errorf("the customer's jobs, newest change first: %v", got)
	}
	counts, err := b.Shop.CountJobs(b.Ctx)
	b.must(err)
	if len(counts) != 2 || counts[shop.StateBench] != 1 || counts[shop.StateEnquiry] != 1 {
		t.Errorf("counts %v", counts)
	}

	// What no longer holds no longer finds.
	b.Write(pegged.ID, "stamp", "number", "", shop.Text("0118"))
	b.Write(pegged.ID, "clean", "cracks", "", shop.Words(shop.CrackNone))
	if got := search("0117T24"); len(got) != 0 {
		t.Errorf("the old number still finds %v", got)
	}
	if got := find(shop.JobQuery{Mark: shop.MarkStop}); len(got) != 0 {
		t.Errorf("the old mark still finds %v", got)
	}
	line := find(shop.JobQuery{Limit: 1})
	if !slices.Equal(line, []shop.ID{pegged.ID}) {
		t.Errorf("newest change first: %v", line)
	}
}

func testPagesOfJobs(t *testing.T, open Opener) {
	store, ctx := open(t), t.Context()
	const n = 25
	want := map[shop.ID]bool{}
	err := store.Update(ctx, func(tx shop.Tx) error {
		for i := range n {
			id := shop.NewID()
			want[id] = true
			if err := tx.AddJob(id); err != nil {
				return err
			}
			// Three and three have the same time.
			line := shop.Line{Job: id, Number: int64(i), State: shop.StateBench, Changed: time.UnixMicro(int64(1_000_000 + i/3)).UTC()}
			if err := tx.PutIndex(id, shop.Index{Line: line, Terms: []string{"same", fmt.Sprint("only", i)}}); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, limit := range []int{1, 4, 25, 100} {
		seen, last := map[shop.ID]bool{}, time.Time{}
		pages := 0
		for q := (shop.JobQuery{Terms: []string{"sam"}, Limit: limit}); ; pages++ {
			var page shop.JobPage
			err := store.View(ctx, func(tx shop.Tx) (err error) {
				page, err = tx.FindJobs(q)
				return err
			})
			if err != nil {
				t.Fatal(err)
			}
			if len(page.Lines) > limit {
				t.Errorf("limit %d: a page of %d", limit, len(page.Lines))
			}
			for _, l := range page.Lines {
				if seen[l.Job] || !last.IsZero() && l.Changed.After(last) {
					t.Errorf("limit %d: job %d twice or out of order", limit, l.Number)
				}
				seen[l.Job], last = true, l.Changed
			}
			if q.After = page.Next; q.After == nil || pages > n {
				break
			}
		}
		equal(t, fmt.Sprintf("jobs seen with limit %d", limit), len(seen), n)
	}
	var order []shop.ID
	err = store.View(ctx, func(tx shop.Tx) error {
		for after := shop.ID(""); ; after = order[len(order)-1] {
			part, err := tx.Jobs(after, 7)
			if err != nil || len(part) == 0 {
				return err
			}
			order = append(order, part...)
		}
	})
	if err != nil || len(order) != n {
		t.Errorf("all jobs: %d, %v", len(order), err)
	}
}

// hostile are names that have broken programs.
var hostile = []string{
	`O'Brien & "Söhne" <b>`, `Robert'); DROP TABLE jobs;--`, "مرحبا بالعالم", "שלום עולם", "\u202etxt.exe", "👩‍🔧🔩 Werkstatt",
	"Ünïcödé Čapek Ångström", "ﬁne ﬂange", "$1 ? % _ \\ \x7f"[:11], "../../etc/passwd", "{{.}} ${x} #{y}", "日本語の名前", "a\tb\nc", "İstanbul ıI", "ß STRASSE",
}

func testHostileNames(t *testing.T, open Opener) {
	b := Fellgate(t, open(t))
	for _, name := range hostile {
		c := save(b, shop.Customer{Name: name, Note: name})
		back, err := shop.Get[shop.Customer](b.Ctx, b.Shop, c.ID)
		b.must(err)
		equal(t, "name", back.Name, name)
		equal(t, "note", back.Note, name)

		j, err := b.Shop.OpenJob(b.Ctx, b.Owner, name, b.Set("enquiry", "customer", "", shop.LinkTo(shop.KindCustomer, c.ID)), b.Set("enquiry", "why", "", shop.Text(name)))
		if shop.CodeOf(err) == shop.Invalid { // a ticket with control characters
			j, err = b.Shop.OpenJob(b.Ctx, b.Owner, "", b.Set("enquiry", "customer", "", shop.LinkTo(shop.KindCustomer, c.ID)), b.Set("enquiry", "why", "", shop.Text(name)))
		}
		b.must(err)
		again, err := b.Shop.Job(b.Ctx, j.ID)
		b.must(err)
		equal(t, "text", again.Value("enquiry", "why").Text, name)
		equal(t, "label", again.Value("enquiry", "customer").Link.Label, name)
		if found, err := b.Shop.VerifyJob(b.Ctx, j.ID); err != nil || len(found) > 0 {
			t.Errorf("%q: %v %v", name, found, err)
		}
		if len(shop.FoldWords(name)) == 0 {
			continue // nothing in it that could be searched for
		}
		lines, err := b.Shop.Search(b.Ctx, name, 0)
		b.must(err)
		if !slices.Contains(ids(lines), j.ID) {
			t.Errorf("searching %q does not find its job", name)
		}
		found, _, err := shop.List[shop.Customer](b.Ctx, b.Shop, shop.CardQuery{Terms: shop.FoldWords(name)})
		b.must(err)
		if !slices.ContainsFunc(found, func(f shop.Customer) bool { return f.ID == c.ID }) {
			t.Errorf("searching %q does not find its customer", name)
		}
	}
	// Without accents, in capitals, with other spellings of the same letters.
	for text, want := range map[string]string{"unicode ANGSTROM": hostile[6], "strasse": hostile[14], "fine flange": hostile[7], "🔩": hostile[5]} {
		found, _, err := shop.List[shop.Customer](b.Ctx, b.Shop, shop.CardQuery{Terms: shop.FoldWords(text)})
		b.must(err)
		if len(found) != 1 || found[0].Name != want {
			t.Errorf("searching %q found %v", text, found)
		}
	}
	// What no screen can show is refused, everywhere the same.
	for _, bad := range []string{"nul\x00nul", "bell\x07", string([]byte{'a', 0xff})} {
		_, err := shop.Save(b.Ctx, b.Shop, b.Owner, shop.Customer{Name: bad})
		wantCode(t, err, shop.Invalid)
		_, err = b.TryWrite(b.Owner, b.Open().ID, "enquiry", "why", "", shop.Text(bad))
		wantCode(t, err, shop.Invalid)
		_, err = b.Shop.Search(b.Ctx, bad, 0)
		b.must(err)
		_, _, err = b.Shop.SignIn(b.Ctx, shop.ID(bad), bad, bad, bad)
		wantCode(t, err, shop.SignIn)
	}
}
