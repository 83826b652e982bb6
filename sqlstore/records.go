package sqlstore

import (
	"database/sql"

	"axlewright/shop"
)

// ordinal is the store's own number of a job.
func (t *tx) ordinal(job shop.ID) (int64, error) {
	var n int64
	found, err := t.row("SELECT ordinal FROM jobs WHERE id = $1", []any{string(job)}, &n)
	if err == nil && !found {
		err = noJob(job)
	}
	return n, err
}

func noJob(job shop.ID) error { return shop.Fault(shop.NotFound, "There is no such job (%s).", job) }

// AddJob makes a job with an empty record.
func (t *tx) AddJob(id shop.ID) error {
	if !id.Valid() {
		return shop.Fault(shop.Invalid, "This cannot be the ID of a job.")
	}
	_, err := t.exec(`INSERT INTO jobs (ordinal, id, head_seq, head_hash, state, changed_at, line, found_by)
		SELECT COALESCE(MAX(ordinal), 0) + 1, $1, 0, '', '', 0, '{}', '{}' FROM jobs`, string(id))
	return err
}

// Head returns the newest entry's number and hash.
func (t *tx) Head(job shop.ID) (shop.Head, error) {
	var h shop.Head
	found, err := t.row("SELECT head_seq, head_hash FROM jobs WHERE id = $1", []any{string(job)}, &h.Seq, &h.Hash)
	if err == nil && !found {
		err = noJob(job)
	}
	return h, err
}

// Append adds entries and moves the head.
func (t *tx) Append(job shop.ID, at shop.Head, entries []shop.Sealed) error {
	if len(entries) == 0 {
		return nil
	}
	ordinal, err := t.ordinal(job)
	if err != nil {
		return err
	}
	for i, e := range entries {
		if e.Job != job || e.Seq != at.Seq+int64(i)+1 {
			return shop.Fault(shop.Internal, "Entries are written in order, each to its own job.")
		}
		ticket := sql.NullString{String: e.Ticket, Valid: e.Ticket != ""}
		if _, err := t.exec(`INSERT INTO entries (job, seq, hash, body, slot, corrects, ticket) VALUES ($1, $2, $3, $4, $5, $6, $7)`,
			ordinal, e.Seq, e.Hash, string(e.Body), e.Slot, e.Corrects, ticket); err != nil {
			return err
		}
	}
	last := entries[len(entries)-1]
	n, err := t.exec("UPDATE jobs SET head_seq = $1, head_hash = $2 WHERE ordinal = $3 AND head_seq = $4 AND head_hash = $5",
		last.Seq, last.Hash, ordinal, at.Seq, at.Hash)
	if err == nil && n != 1 {
		err = shop.Fault(shop.Conflict, "Somebody else wrote to this job in the meantime.")
	}
	t.changes = append(t.changes, shop.Change{Job: job, Seq: last.Seq})
	return err
}

// Entries returns the record in order.
func (t *tx) Entries(job shop.ID) ([]shop.Sealed, error) {
	ordinal, err := t.ordinal(job)
	if err != nil {
		return nil, err
	}
	var all []shop.Sealed
	err = t.rows("SELECT seq, hash, body, slot, corrects, ticket FROM entries WHERE job = $1 ORDER BY seq", []any{ordinal}, func(r *sql.Rows) error {
		e := shop.Sealed{Job: job}
		var ticket sql.NullString
		var body string
		err := r.Scan(&e.Seq, &e.Hash, &body, &e.Slot, &e.Corrects, &ticket)
		e.Body, e.Ticket = []byte(body), ticket.String
		all = append(all, e)
		return err
	})
	return all, err
}

// Jobs returns IDs in the order in which they were made.
func (t *tx) Jobs(after shop.ID, limit int) ([]shop.ID, error) {
	from := int64(0)
	if after != "" {
		var err error
		if from, err = t.ordinal(after); err != nil {
			return nil, err
		}
	}
	var all []shop.ID
	err := t.rows("SELECT id FROM jobs WHERE ordinal > $1 ORDER BY ordinal LIMIT $2", []any{from, limit}, func(r *sql.Rows) error {
		var id string
		err := r.Scan(&id)
		all = append(all, shop.ID(id))
		return err
	})
	return all, err
}
