package shoptest

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"sync"
	"testing"
	"time"

	"axlewright/shop"
)

// sealed makes entries of one slot after a head.
func sealed(t testing.TB, job shop.ID, after shop.Head, slot string, corrects int64, tickets ...string) ([]shop.Sealed, shop.Head) {
	t.Helper()
	var all []shop.Sealed
	for _, ticket := range tickets {
		e := shop.Entry{Job: job, At: time.Unix(1_700_000_000+after.Seq, 0), Kind: shop.EntryNote, Step: "lash", Item: slot,
			Corrects: corrects, Ticket: ticket, Value: shop.Text("ticket " + ticket)}
		_, s, err := shop.Seal(e, after)
		if err != nil {
			t.Fatal(err)
		}
		all, after, corrects = append(all, s), shop.Head{Seq: s.Seq, Hash: s.Hash}, s.Seq
	}
	return all, after
}

func testRecord(t *testing.T, open Opener) {
	store, ctx := open(t), t.Context()
	job := shop.NewID()
	entries, head := sealed(t, job, shop.Head{}, "a", 0, "1", "2", "3")
	err := store.Update(ctx, func(tx shop.Tx) error {
		if _, err := tx.Head(job); shop.CodeOf(err) != shop.NotFound {
			return fmt.Errorf("head of no job: %v", err)
		}
		if err := tx.AddJob(job); err != nil {
			return err
		}
		if h, err := tx.Head(job); err != nil || h.Seq != 0 {
			return fmt.Errorf("head of an empty record: %v %v", h, err)
		}
		return tx.Append(job, shop.Head{}, entries)
	})
	if err != nil {
		t.Fatal(err)
	}
	wantCode(t, store.Update(ctx, func(tx shop.Tx) error { return tx.AddJob(job) }), shop.Conflict)
	err = store.View(ctx, func(tx shop.Tx) error {
		got, err := tx.Entries(job)
		if err != nil {
			return err
		}
		if !slices.EqualFunc(got, entries, func(a, b shop.Sealed) bool {
			return bytes.Equal(a.Body, b.Body) && a.Hash == b.Hash && a.Seq == b.Seq && a.Slot == b.Slot && a.Corrects == b.Corrects && a.Ticket == b.Ticket && a.Job == b.Job
		}) {
			t.Errorf("entries came back as %+v", got)
		}
		if h, err := tx.Head(job); err != nil || h != head {
			t.Errorf("head %v %v, want %v", h, err, head)
		}
		if _, err := tx.Entries(shop.NewID()); shop.CodeOf(err) != shop.NotFound {
			t.Errorf("entries of no job: %v", err)
		}
		if _, err := tx.Line(shop.NewID()); shop.CodeOf(err) != shop.NotFound {
			t.Errorf("line of no job: %v", err)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}

	refused := func(name string, at shop.Head, entries []shop.Sealed) {
		t.Helper()
		err := store.Update(ctx, func(tx shop.Tx) error { return tx.Append(job, at, entries) })
		if shop.CodeOf(err) != shop.Conflict {
			t.Errorf("%s: got %v, want a conflict", name, err)
		}
	}
	stale, _ := sealed(t, job, shop.Head{Seq: 2, Hash: entries[1].Hash}, "b", 0, "4")
	refused("after an entry that is not the head", shop.Head{Seq: 2, Hash: entries[1].Hash}, stale)
	twice, _ := sealed(t, job, head, "b", 0, "2")
	refused("a ticket that was used", head, twice)
	fork, _ := sealed(t, job, head, "a", 1, "4")
	refused("a second entry that follows the first of its slot", head, fork)
	first, _ := sealed(t, job, head, "a", 0, "4")
	refused("a second first entry of a slot", head, first)
	wrong := shop.Head{Seq: 3, Hash: entries[0].Hash}
	lost, _ := sealed(t, job, wrong, "b", 0, "4")
	refused("after another hash", wrong, lost)

	next, _ := sealed(t, job, head, "b", 0, "4")
	if err := store.Update(ctx, func(tx shop.Tx) error { return tx.Append(job, head, next) }); err != nil {
		t.Errorf("after all that was refused: %v", err)
	}
	// A slot of another job, a ticket of another job: no clash.
	other := shop.NewID()
	same, _ := sealed(t, other, shop.Head{}, "a", 0, "1")
	err = store.Update(ctx, func(tx shop.Tx) error {
		return errors.Join(tx.AddJob(other), tx.Append(other, shop.Head{}, same))
	})
	if err != nil {
		t.Error(err)
	}
}

func testChain(t *testing.T, open Opener) {
	b := Fellgate(t, open(t))
	j := b.Open()
	for i := range 5 {
		b.Write(j.ID, "lash", "lash", fmt.Sprint(i%3+1), MM(fmt.Sprintf("0.1%d", i), 0.1+float64(i)/100))
	}
	findings, err := b.Shop.VerifyJob(b.Ctx, j.ID)
	b.must(err)
	if len(findings) != 0 {
		t.Fatalf("a whole record: %v", findings)
	}
	var entries []shop.Sealed
	var head shop.Head
	view(b, func(tx shop.Tx) (err error) {
		if head, err = tx.Head(j.ID); err != nil {
			return err
		}
		entries, err = tx.Entries(j.ID)
		return err
	})
	if len(entries) < 9 {
		t.Fatalf("only %d entries", len(entries))
	}
	for i, e := range entries {
		damaged := slices.Clone(entries)
		damaged[i].Body = bytes.Replace(bytes.Clone(e.Body), []byte(`"format":1`), []byte(`"format":2`), 1)
		if found := shop.Verify(j.ID, damaged, head); len(found) == 0 {
			t.Errorf("entry %d altered and not found", e.Seq)
		}
		if found := shop.Verify(j.ID, slices.Delete(slices.Clone(entries), i, i+1), head); len(found) == 0 {
			t.Errorf("entry %d taken out and not found", e.Seq)
		}
	}
}

func testAllOrNothing(t *testing.T, open Opener) {
	store, ctx := open(t), t.Context()
	sorry := errors.New("sorry")
	attempt := func(name string, call func(write func(shop.Tx) error) error) {
		job := shop.NewID()
		err := call(func(tx shop.Tx) error {
			entries, _ := sealed(t, job, shop.Head{}, "a", 0, "1")
			return errors.Join(tx.AddJob(job), tx.Append(job, shop.Head{}, entries), tx.PutSetting("left", []byte(name)))
		})
		if err == nil {
			t.Errorf("%s: no error", name)
		}
		err = store.View(ctx, func(tx shop.Tx) error {
			if _, err := tx.Head(job); shop.CodeOf(err) != shop.NotFound {
				t.Errorf("%s: the job is there (%v)", name, err)
			}
			if left, err := tx.Setting("left"); left != nil || err != nil {
				t.Errorf("%s: a setting was left: %q %v", name, left, err)
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	attempt("error", func(write func(shop.Tx) error) error {
		return store.Update(ctx, func(tx shop.Tx) error { return errors.Join(write(tx), sorry) })
	})
	attempt("panic", func(write func(shop.Tx) error) (err error) {
		defer func() { err = fmt.Errorf("%v", recover()) }()
		return store.Update(ctx, func(tx shop.Tx) error {
			if err := write(tx); err != nil {
				return err
			}
			panic("oh")
		})
	})
	attempt("end of context", func(write func(shop.Tx) error) error {
		short, cancel := contextOf(t)
		return store.Update(short, func(tx shop.Tx) error {
			err := write(tx)
			cancel()
			return err
		})
	})
	attempt("writing in a View", func(write func(shop.Tx) error) error {
		err := store.View(ctx, write)
		wantCode(t, err, shop.Internal)
		return err
	})
	// And the store still works.
	if err := store.Update(ctx, func(tx shop.Tx) error { return tx.PutSetting("after", []byte("all")) }); err != nil {
		t.Error(err)
	}
}

func testSnapshot(t *testing.T, open Opener) {
	store, ctx := open(t), t.Context()
	put := func(x string) error {
		return store.Update(ctx, func(tx shop.Tx) error { return tx.PutSetting("x", []byte(x)) })
	}
	if err := put("old"); err != nil {
		t.Fatal(err)
	}
	err := store.View(ctx, func(tx shop.Tx) error {
		before, err := tx.Setting("x")
		if err != nil {
			return err
		}
		if err := put("new"); err != nil { // while the View is open: neither waits for the other
			return err
		}
		after, err := tx.Setting("x")
		if string(before) != "old" || string(after) != "old" {
			t.Errorf("within a View: %q, then %q", before, after)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	err = store.View(ctx, func(tx shop.Tx) error {
		x, err := tx.Setting("x")
		equal(t, "the next View", string(x), "new")
		return err
	})
	if err != nil {
		t.Fatal(err)
	}

	// Reading and then writing in one Update loses nothing.
	var wg sync.WaitGroup
	for range 8 {
		wg.Go(func() {
			for range 10 {
				err := store.Update(ctx, func(tx shop.Tx) error {
					n, err := tx.Setting("n")
					if err != nil {
						return err
					}
					return tx.PutSetting("n", append(n, 'x'))
				})
				if err != nil {
					t.Error(err)
				}
			}
		})
	}
	wg.Wait()
	err = store.View(ctx, func(tx shop.Tx) error {
		n, err := tx.Setting("n")
		equal(t, "counted", len(n), 80)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}
