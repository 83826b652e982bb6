package shoptest

import (
	"bytes"
	"context"
	"slices"
	"testing"
	"time"

	"axlewright/shop"
)

func testSettings(t *testing.T, open Opener) {
	store, ctx := open(t), t.Context()
	binary := []byte{0, 1, 255, '\'', '"', 0}
	err := store.Update(ctx, func(tx shop.Tx) error {
		if x, err := tx.Setting("b"); x != nil || err != nil {
			t.Errorf("nothing: %v %v", x, err)
		}
		for name, value := range map[string][]byte{"b": binary, "a.B": {}, "a.a": []byte("x")} {
			if err := tx.PutSetting(name, value); err != nil {
				return err
			}
		}
		return tx.PutSetting("a.a", []byte("y"))
	})
	if err != nil {
		t.Fatal(err)
	}
	err = store.View(ctx, func(tx shop.Tx) error {
		names, err := tx.Settings()
		if !slices.Equal(names, []string{"a.B", "a.a", "b"}) {
			t.Errorf("names %q", names)
		}
		if x, _ := tx.Setting("b"); !bytes.Equal(x, binary) {
			t.Errorf("bytes came back as %v", x)
		}
		if x, _ := tx.Setting("a.B"); x == nil || len(x) != 0 {
			t.Errorf("an empty value came back as %v", x)
		}
		if x, _ := tx.Setting("a.a"); string(x) != "y" {
			t.Errorf("the second value is %q", x)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}

func testSessions(t *testing.T, open Opener) {
	store, ctx := open(t), t.Context()
	at := time.Date(2026, 3, 1, 12, 0, 0, 123456000, time.UTC)
	s := shop.Session{TokenHash: "h1", Person: "wren", Device: "tablet \"3\"", Began: at, Seen: at, Ends: at.Add(time.Hour)}
	later := s
	later.TokenHash, later.Began, later.Seen = "h2", at.Add(time.Minute), at.Add(time.Minute)
	other := s
	other.TokenHash, other.Person = "h3", "ash"
	err := store.Update(ctx, func(tx shop.Tx) error {
		for _, x := range []shop.Session{s, later, other} {
			if err := tx.PutSession(x); err != nil {
				return err
			}
		}
		s.Seen = at.Add(30 * time.Second)
		return tx.PutSession(s)
	})
	if err != nil {
		t.Fatal(err)
	}
	expect := func(want ...string) {
		t.Helper()
		err := store.View(ctx, func(tx shop.Tx) error {
			all, err := tx.Sessions()
			var got []string
			for _, x := range all {
				got = append(got, x.TokenHash)
			}
			slices.Sort(got)
			if !slices.Equal(got, want) {
				t.Errorf("sessions %q, want %q", got, want)
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	expect("h1", "h2", "h3")
	err = store.View(ctx, func(tx shop.Tx) error {
		if got, err := tx.Session("h1"); err != nil || got != s {
			t.Errorf("session %+v %v, want %+v", got, err, s)
		}
		_, err := tx.Session("none")
		wantCode(t, err, shop.NotFound)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	drop := func(call func(tx shop.Tx) error) {
		t.Helper()
		if err := store.Update(ctx, call); err != nil {
			t.Fatal(err)
		}
	}
	drop(func(tx shop.Tx) error { return tx.DropSessions("wren", at.Add(45*time.Second)) })
	expect("h2", "h3")
	drop(func(tx shop.Tx) error { return tx.DropSessions("", at.Add(10*time.Second)) })
	expect("h2")
	drop(func(tx shop.Tx) error { return tx.DropSession("h2") })
	expect()

	drop(func(tx shop.Tx) error {
		if x, err := tx.Tries("k"); err != nil || x != (shop.Tries{}) {
			t.Errorf("no tries: %+v %v", x, err)
		}
		return tx.PutTries("k", shop.Tries{Count: 3, Last: at, Until: at.Add(time.Minute)})
	})
	drop(func(tx shop.Tx) error {
		if x, err := tx.Tries("k"); err != nil || x != (shop.Tries{Count: 3, Last: at, Until: at.Add(time.Minute)}) {
			t.Errorf("tries: %+v %v", x, err)
		}
		return tx.DropTries(at.Add(time.Second))
	})
	drop(func(tx shop.Tx) error {
		if x, err := tx.Tries("k"); err != nil || x != (shop.Tries{}) {
			t.Errorf("forgotten tries: %+v %v", x, err)
		}
		return nil
	})
}

func testFiles(t *testing.T, open Opener) {
	store, ctx := open(t), t.Context()
	content := bytes.Repeat([]byte("photograph"), 10_000)
	hash, err := store.PutFile(ctx, content)
	if err != nil {
		t.Fatal(err)
	}
	again, err := store.PutFile(ctx, content)
	if err != nil || again != hash || len(hash) != 64 {
		t.Errorf("put again: %q %v, first %q", again, err, hash)
	}
	// SHA-256 of "abc": FIPS 180-4, example 1.
	abc, err := store.PutFile(ctx, []byte("abc"))
	if err != nil || abc != "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad" {
		t.Errorf("hash of abc: %q %v", abc, err)
	}
	back, err := store.File(ctx, hash)
	if err != nil || !bytes.Equal(back, content) {
		t.Errorf("came back with %d bytes, %v", len(back), err)
	}
	for _, bad := range []string{"", "x", "../../../etc/passwd", hash[:63] + "/", hash[:62] + "..", "0000000000000000000000000000000000000000000000000000000000000000"} {
		_, err := store.File(ctx, bad)
		wantCode(t, err, shop.NotFound)
	}
}

func testWatch(t *testing.T, open Opener) {
	b := Fellgate(t, open(t))
	ctx, cancel := context.WithCancel(b.Ctx)
	changes, err := b.Shop.Watch(ctx)
	b.must(err)
	next := func() shop.Change {
		t.Helper()
		select {
		case c, ok := <-changes:
			if !ok {
				t.Fatal("the channel is closed")
			}
			return c
		case <-time.After(10 * time.Second):
			t.Fatal("no change came")
		}
		return shop.Change{}
	}
	j := b.Open()
	last := shop.Change{}
	for last.Seq < j.Head.Seq {
		last = next()
		equal(t, "job", last.Job, j.ID)
	}
	customer := b.Customer
	customer.Note = "rings in the evening"
	save(b, customer)
	equal(t, "card", next(), shop.Change{Kind: shop.KindCustomer, Card: customer.ID})
	// What was refused, and what changed nothing, is not told.
	_, err = b.TryWrite(b.Reader, j.ID, "lash", "lash", "1", MM("0.15", 0.15))
	wantCode(t, err, shop.Forbidden)
	save(b, customer2(b))
	b.Write(j.ID, "lash", "lash", "1", MM("0.15", 0.15))
	if c := next(); c.Job != j.ID {
		t.Errorf("after what was refused came %+v", c)
	}

	// A reader that does not read is told once that it missed something, and
	// holds up nobody.
	for range 400 {
		update(b, func(tx shop.Tx) error {
			head, err := tx.Head(j.ID)
			if err != nil {
				return err
			}
			entries, _ := sealed(t, j.ID, head, string(shop.NewID()), 0, "")
			return tx.Append(j.ID, head, entries)
		})
	}
	missed := 0
	for len(changes) > 0 {
		if c := next(); c.Missed {
			missed++
		}
	}
	equal(t, "told that something was missed", missed, 1)

	cancel()
	for {
		select {
		case _, ok := <-changes:
			if !ok {
				return
			}
		case <-time.After(10 * time.Second):
			t.Fatal("the channel was not closed")
		}
	}
}

// customer2 reads the customer as it is kept, so that saving it changes nothing.
func customer2(b *Bench) shop.Customer {
	c, err := shop.Get[shop.Customer](b.Ctx, b.Shop, b.Customer.ID)
	b.must(err)
	return c
}

func testClose(t *testing.T, open Opener) {
	store, ctx := open(t), t.Context()
	inside, leave := make(chan bool), make(chan bool)
	done := make(chan error)
	go func() {
		done <- store.Update(ctx, func(tx shop.Tx) error {
			close(inside)
			<-leave
			return tx.PutSetting("x", []byte("y"))
		})
	}()
	<-inside
	changes, err := store.Watch(ctx)
	if err != nil {
		t.Fatal(err)
	}
	closed := make(chan error)
	go func() { closed <- store.Close() }()
	for { // until Close has begun
		if err := store.View(ctx, func(shop.Tx) error { return nil }); err != nil {
			wantCode(t, err, shop.Closed)
			break
		}
	}
	select {
	case <-closed:
		t.Error("Close did not wait for the Update")
	default:
	}
	close(leave)
	if err := <-done; err != nil {
		t.Errorf("the Update that ran: %v", err)
	}
	if err := <-closed; err != nil {
		t.Errorf("Close: %v", err)
	}
	if _, ok := <-changes; ok {
		t.Error("a watcher's channel is still open")
	}
	wantCode(t, store.Update(ctx, func(shop.Tx) error { return nil }), shop.Closed)
	_, err = store.PutFile(ctx, []byte("x"))
	wantCode(t, err, shop.Closed)
	_, err = store.Watch(ctx)
	wantCode(t, err, shop.Closed)
	if err := store.Close(); err != nil {
		t.Errorf("closing again: %v", err)
	}
}
