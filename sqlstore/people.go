package sqlstore

import (
	"database/sql"
	"slices"
	"time"

	"axlewright/shop"
)

// Setting returns what is kept under a name, nil where there is nothing.
func (t *tx) Setting(key string) ([]byte, error) {
	var value []byte
	found, err := t.row("SELECT value FROM settings WHERE name = $1", []any{key}, &value)
	if err == nil && found && value == nil {
		value = []byte{}
	}
	return value, err
}

// PutSetting keeps a value under a name.
func (t *tx) PutSetting(key string, value []byte) error {
	if value == nil {
		value = []byte{}
	}
	return t.run("INSERT INTO settings (name, value) VALUES ($1, $2) ON CONFLICT (name) DO UPDATE SET value = excluded.value", key, value)
}

// Settings lists the names that have a value.
func (t *tx) Settings() ([]string, error) {
	var all []string
	err := t.rows("SELECT name FROM settings", nil, func(r *sql.Rows) error {
		var name string
		err := r.Scan(&name)
		all = append(all, name)
		return err
	})
	slices.Sort(all) // the database would sort by its collation
	return all, err
}

const sessionColumns = "token_hash, person, device, began_at, seen_at, ends_at"

func scanSession(scan func(...any) error) (shop.Session, error) {
	var s shop.Session
	var person string
	var began, seen, ends int64
	err := scan(&s.TokenHash, &person, &s.Device, &began, &seen, &ends)
	s.Person, s.Began, s.Seen, s.Ends = shop.ID(person), instant(began), instant(seen), instant(ends)
	return s, err
}

// Session returns the session of a token's hash.
func (t *tx) Session(tokenHash string) (shop.Session, error) {
	found := false
	var s shop.Session
	err := t.rows("SELECT "+sessionColumns+" FROM sessions WHERE token_hash = $1", []any{tokenHash}, func(r *sql.Rows) (err error) {
		found = true
		s, err = scanSession(r.Scan)
		return err
	})
	if err == nil && !found {
		err = shop.Fault(shop.NotFound, "There is no such session.")
	}
	return s, err
}

// PutSession keeps a session.
func (t *tx) PutSession(s shop.Session) error {
	return t.run("INSERT INTO sessions ("+sessionColumns+`) VALUES ($1, $2, $3, $4, $5, $6)
		ON CONFLICT (token_hash) DO UPDATE SET seen_at = excluded.seen_at, ends_at = excluded.ends_at, device = excluded.device`,
		s.TokenHash, string(s.Person), s.Device, micros(s.Began), micros(s.Seen), micros(s.Ends))
}

// DropSession ends one session.
func (t *tx) DropSession(tokenHash string) error {
	return t.run("DELETE FROM sessions WHERE token_hash = $1", tokenHash)
}

// DropSessions ends the sessions last seen before the time, of one person or of all.
func (t *tx) DropSessions(person shop.ID, before time.Time) error {
	if person == "" {
		return t.run("DELETE FROM sessions WHERE seen_at < $1", micros(before))
	}
	return t.run("DELETE FROM sessions WHERE person = $1 AND seen_at < $2", string(person), micros(before))
}

// Sessions lists them, newest first.
func (t *tx) Sessions() ([]shop.Session, error) {
	var all []shop.Session
	err := t.rows("SELECT "+sessionColumns+" FROM sessions ORDER BY began_at DESC", nil, func(r *sql.Rows) error {
		s, err := scanSession(r.Scan)
		all = append(all, s)
		return err
	})
	return all, err
}

// Tries returns how often signing in failed under a key.
func (t *tx) Tries(key string) (shop.Tries, error) {
	var tries shop.Tries
	var last, until int64
	_, err := t.row("SELECT count, last_at, until_at FROM tries WHERE name = $1", []any{key}, &tries.Count, &last, &until)
	tries.Last, tries.Until = instant(last), instant(until)
	return tries, err
}

// PutTries keeps how often it failed.
func (t *tx) PutTries(key string, tries shop.Tries) error {
	return t.run(`INSERT INTO tries (name, count, last_at, until_at) VALUES ($1, $2, $3, $4)
		ON CONFLICT (name) DO UPDATE SET count = excluded.count, last_at = excluded.last_at, until_at = excluded.until_at`,
		key, tries.Count, micros(tries.Last), micros(tries.Until))
}

// DropTries forgets those whose last try was before the time.
func (t *tx) DropTries(before time.Time) error {
	return t.run("DELETE FROM tries WHERE last_at < $1", micros(before))
}
