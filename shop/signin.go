package shop

import (
	"context"
	"crypto/rand"
	"encoding/base64"
	"time"
)

// How long a session lasts: it ends when it has not been used for a week, and
// after a quarter of a year in any case.
const (
	sessionIdle = 7 * 24 * time.Hour
	sessionMost = 90 * 24 * time.Hour
	sessionStep = 5 * time.Minute // how exactly "last seen" is kept
)

// SignIn lets a person in by PIN or password and returns the token of a new
// session, which the browser keeps; the store knows only its hash. From is the
// address it comes from. Wrong tries are slowed down by person and by address
// (TooMany with Wait). What is wrong is never told: SignIn for an unknown
// person as for a wrong secret.
func (s *Shop) SignIn(ctx context.Context, person ID, secret, from, device string) (token string, by Actor, err error) {
	// Hashed, because anybody may send anything as a name.
	keys := []string{hashOf([]byte("person " + string(person))), hashOf([]byte("address " + from))}
	var actor Actor
	var hash []byte
	// The try is counted before the secret is looked at, so that many at once
	// do not slip through.
	err = s.store.Update(ctx, func(tx Tx) error {
		actor, hash = Actor{}, nil
		for i, key := range keys {
			t, err := tx.Tries(key)
			if err != nil {
				return err
			}
			if wait := t.Until.Sub(s.now()); wait > 0 {
				return &Error{Code: TooMany, Says: "Too many tries: wait a little.", Wait: wait}
			}
			if err := tx.PutTries(key, t.another(s.now(), free[i])); err != nil {
				return err
			}
		}
		p, err := getSheet[Person](tx, person)
		if err != nil {
			return ignore(err, NotFound)
		}
		if p.Retired {
			return nil
		}
		actor = p.actor()
		hash, err = tx.Setting(secretKey(p.ID))
		return err
	})
	if err != nil {
		return "", Actor{}, err
	}
	if !secretFits(secret, string(hash)) || actor.ID == "" {
		return "", Actor{}, Fault(SignIn, "The name or the PIN is wrong.")
	}
	token, err = s.begin(ctx, actor, printable(device, 200), keys, hash)
	return token, actor, err
}

// begin makes a session and forgets the tries that led to it.
func (s *Shop) begin(ctx context.Context, actor Actor, device string, keys []string, hash []byte) (string, error) {
	raw := make([]byte, 32)
	if _, err := rand.Read(raw); err != nil {
		return "", Fault(Internal, "No session can be made.").Because(err)
	}
	token := base64.RawURLEncoding.EncodeToString(raw)
	now := instant(s.now())
	return token, s.store.Update(ctx, func(tx Tx) error {
		if still, err := tx.Setting(secretKey(actor.ID)); err != nil || string(still) != string(hash) {
			if err == nil {
				err = Fault(SignIn, "The name or the PIN is wrong.") // changed while it was looked at
			}
			return err
		}
		for _, key := range keys {
			if err := tx.PutTries(key, Tries{}); err != nil {
				return err
			}
		}
		if err := tx.DropTries(now.Add(-24 * time.Hour)); err != nil {
			return err
		}
		if err := tx.DropSessions("", now.Add(-sessionIdle)); err != nil {
			return err
		}
		return tx.PutSession(Session{TokenHash: hashOf([]byte(token)), Person: actor.ID, Device: device, Began: now, Seen: now, Ends: now.Add(sessionMost)})
	})
}

// free is how many wrong tries cost no wait, for a person and for an address:
// behind one address may stand a whole shop.
var free = []int{4, 12}

// another counts one more try. Past the free ones each doubles the wait, from
// two seconds to a quarter of an hour; a day without a try forgets them.
func (t Tries) another(now time.Time, free int) Tries {
	if now.Sub(t.Last) > 24*time.Hour {
		t.Count = 0
	}
	t.Count++
	t.Last = instant(now)
	if over := t.Count - free; over >= 0 {
		wait := 15 * time.Minute
		if over < 9 {
			wait = min(2*time.Second<<over, wait)
		}
		t.Until = instant(now.Add(wait))
	}
	return t
}

// Who returns the person that a session token belongs to, or SignIn.
func (s *Shop) Who(ctx context.Context, token string) (Actor, error) {
	out := Fault(SignIn, "Sign in again.")
	var session Session
	var actor Actor
	err := s.store.View(ctx, func(tx Tx) (err error) {
		if session, err = tx.Session(hashOf([]byte(token))); err != nil {
			return err
		}
		p, err := getSheet[Person](tx, session.Person)
		if err == nil && !p.Retired {
			actor = p.actor()
		}
		return err
	})
	now := s.now()
	switch {
	case CodeOf(err) == NotFound || err == nil && (actor.ID == "" || now.After(session.Ends) || now.Sub(session.Seen) > sessionIdle):
		return Actor{}, out
	case err != nil:
		return Actor{}, err
	}
	if now.Sub(session.Seen) > sessionStep {
		session.Seen = instant(now)
		err = s.store.Update(ctx, func(tx Tx) error {
			if _, err := tx.Session(session.TokenHash); err != nil {
				return ignore(err, NotFound) // ended a moment ago
			}
			return tx.PutSession(session)
		})
	}
	return actor, err
}

// SignOut ends a session.
func (s *Shop) SignOut(ctx context.Context, token string) error {
	return s.store.Update(ctx, func(tx Tx) error { return tx.DropSession(hashOf([]byte(token))) })
}

// SignOutAll ends all sessions of a person.
func (s *Shop) SignOutAll(ctx context.Context, by Actor, person ID) error {
	if err := by.mustBe(person); err != nil {
		return err
	}
	return s.store.Update(ctx, func(tx Tx) error { return s.dropSessions(tx, person) })
}

// dropSessions ends the person's sessions, those too that were seen by a clock
// that ran before ours.
func (s *Shop) dropSessions(tx Tx, person ID) error {
	return tx.DropSessions(person, s.now().Add(time.Hour))
}

// Sessions lists who is signed in, newest first.
func (s *Shop) Sessions(ctx context.Context, by Actor) ([]Session, error) {
	if err := by.Must(ActSettings); err != nil {
		return nil, err
	}
	var all []Session
	err := s.store.View(ctx, func(tx Tx) (err error) {
		all, err = tx.Sessions()
		return err
	})
	return all, err
}
