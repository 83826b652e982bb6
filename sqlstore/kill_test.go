package sqlstore_test

import (
	"bufio"
	"flag"
	"math/rand/v2"
	"testing"
	"time"

	"axlewright/shop"
	"axlewright/shop/shoptest"
	"axlewright/sqlstore"
)

var kills = flag.Int("kills", 200, "how often the program is killed while it saves")

// The program is killed in the middle of saving, again and again: every reading
// that was acknowledged is there, and the record is whole.
func TestKilledWhileSaving(t *testing.T) {
	killWhileSaving(t, t.TempDir(), "")
}

func TestKilledWhileSavingInPostgres(t *testing.T) {
	killWhileSaving(t, t.TempDir(), newPostgres(t)(t))
}

func killWhileSaving(t *testing.T, dir, url string) {
	options := sqlstore.Options{Dir: dir, Postgres: url}
	if testing.Short() {
		*kills = min(*kills, 20)
	}
	s, err := sqlstore.Open(t.Context(), options)
	if err != nil {
		t.Fatal(err)
	}
	b := shoptest.Fellgate(t, s)
	var jobs []shop.ID
	acknowledged := map[string]shop.ID{}
	for round := range *kills {
		if round%10 == 0 { // records that stay short enough to be read at once
			jobs = append(jobs, b.Open().ID)
		}
		job := jobs[len(jobs)-1]
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
		saved := killOne(t, dir, url, job)
		for _, ticket := range saved {
			acknowledged[ticket] = job
		}
		s = reopen(t, options)
		b.Store = s
		if b.Shop, err = shop.Open(t.Context(), s, shop.Options{Now: b.Clock.Now}); err != nil {
			t.Fatal(err)
		}
		j, err := b.Shop.Job(t.Context(), job)
		if err != nil {
			t.Fatal(err)
		}
		if len(j.Damage) > 0 {
			t.Fatalf("after %d kills the record is damaged: %v", round+1, j.Damage)
		}
	}
	defer s.Close()
	if len(acknowledged) < *kills/4 {
		t.Errorf("only %d readings were acknowledged in %d rounds: the kills come too early to show anything", len(acknowledged), *kills)
	}
	there := map[string]shop.ID{}
	for _, id := range jobs {
		j, err := b.Shop.Job(t.Context(), id)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range j.Entries() {
			there[e.Ticket] = id
		}
		if found, err := b.Shop.VerifyJob(t.Context(), id); err != nil || len(found) > 0 {
			t.Errorf("job %s: %v %v", id, found, err)
		}
	}
	for ticket, job := range acknowledged {
		if there[ticket] != job {
			t.Errorf("reading %s was acknowledged and is lost", ticket)
		}
	}
	if err := s.IntegrityCheck(t.Context()); err != nil {
		t.Error(err)
	}
	t.Logf("%d kills, %d readings acknowledged", *kills, len(acknowledged))
}

// killOne starts the program, lets it save for a moment, kills it and returns
// what it had acknowledged.
func killOne(t *testing.T, dir, url string, job shop.ID) []string {
	t.Helper()
	c := child(t, "save", dir, url, string(job), "no photograph")
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	lines := bufio.NewScanner(out)
	var saved []string
	timer := time.AfterFunc(30*time.Second, func() { c.Process.Kill() })
	if lines.Scan() { // it is under way
		saved = append(saved, lines.Text())
		timer.Reset(time.Duration(rand.Int64N(int64(40 * time.Millisecond))))
	}
	for lines.Scan() {
		saved = append(saved, lines.Text())
	}
	timer.Stop()
	if err := c.Wait(); err == nil {
		t.Fatal("the program ended by itself")
	}
	return saved
}

// reopen opens the shop of a program that was killed. PostgreSQL may take a
// moment to notice that it is gone.
func reopen(t *testing.T, o sqlstore.Options) *sqlstore.Store {
	t.Helper()
	for tries := 0; ; tries++ {
		s, err := sqlstore.Open(t.Context(), o)
		if err == nil {
			return s
		}
		if shop.CodeOf(err) != shop.InUse || tries > 200 {
			t.Fatal(err)
		}
		time.Sleep(20 * time.Millisecond)
	}
}
