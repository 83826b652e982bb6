package demo_test

import (
	"testing"
	"time"

	"axlewright/demo"
	"axlewright/shop"
	"axlewright/sqlstore"
)

// The invented shop has a dozen jobs, one at least in every state and under
// every mark that a list is narrowed to, whole records, and no job of tomorrow.
func TestFill(t *testing.T) {
	store, err := sqlstore.Open(t.Context(), sqlstore.Options{Dir: t.TempDir()})
	if err != nil {
		t.Fatal(err)
	}
	defer store.Close()
	now := time.Now()
	filled, err := demo.Fill(t.Context(), store, now, "number: 14")
	if err != nil {
		t.Fatal(err)
	}
	sh, err := shop.Open(t.Context(), store, shop.Options{})
	if err != nil {
		t.Fatal(err)
	}
	counts, err := sh.CountJobs(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	all := 0
	for _, s := range shop.States {
		if counts[s] == 0 || len(filled.Jobs[s]) != counts[s] {
			t.Errorf("%d jobs are %q, told %d", counts[s], s, len(filled.Jobs[s]))
		}
		all += counts[s]
	}
	if all < 12 {
		t.Errorf("%d jobs, not a dozen", all)
	}
	for _, m := range []shop.Mark{shop.MarkStop, shop.MarkCoreOwed, shop.MarkReserved, shop.MarkFailed} {
		if page, err := sh.FindJobs(t.Context(), shop.JobQuery{Mark: m}); err != nil || len(page.Lines) == 0 {
			t.Errorf("no job is %q: %v", m, err)
		}
	}
	kits, _, err := shop.List[shop.Kit](t.Context(), sh, shop.CardQuery{Limit: 100})
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range kits {
		if k.Name == "KIT-T24-A" && k.Revisions[len(k.Revisions)-1].Weld == "" {
			t.Error("the kit on the bench has no weld file")
		}
	}
	page, err := sh.FindJobs(t.Context(), shop.JobQuery{Limit: 100})
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range page.Lines {
		if found, err := sh.VerifyJob(t.Context(), l.Job); err != nil || len(found) > 0 {
			t.Errorf("job %s: %v %v", l.NumberText(), found, err)
		}
		if l.Changed.After(now) {
			t.Errorf("job %s was changed at %s, after now", l.NumberText(), l.Changed)
		}
		if l.State == shop.StateOut && l.Gaps > 12 {
			t.Errorf("job %s went out with %d gaps", l.NumberText(), l.Gaps)
		}
	}
	for _, s := range []shop.State{shop.StateOut, shop.StateBack} {
		j, err := sh.Job(t.Context(), filled.Jobs[s][0])
		if err != nil || j.Stamped() == "" || len(j.Certificates()) == 0 {
			t.Errorf("%s without number or certificate: %v", s, err)
		}
	}
	if _, err := demo.Fill(t.Context(), store, now, "number: 14"); err == nil {
		t.Error("a shop that is there was filled again")
	}
}
