package sqlstore

import (
	"context"
	"database/sql"
	"errors"
	"strconv"
	"strings"
	"time"

	"github.com/pressly/goose/v3"

	"axlewright/shop"
)

// tx is a shop.Tx. Its methods are spread over the files of this package by
// what they keep.
type tx struct {
	ctx     context.Context
	tx      *sql.Tx
	write   bool
	changes []shop.Change
}

// View runs read on a snapshot.
func (s *Store) View(ctx context.Context, read func(shop.Tx) error) error {
	done, err := s.enter()
	if err != nil {
		return err
	}
	defer done()
	options := s.d.view
	t, err := s.reader.BeginTx(ctx, &options)
	if err != nil {
		return fault(err)
	}
	defer t.Rollback() // there is nothing to keep
	return fault(read(&tx{ctx: ctx, tx: t}))
}

// Update runs write alone and keeps what it did, or nothing.
func (s *Store) Update(ctx context.Context, write func(shop.Tx) error) error {
	done, err := s.enter()
	if err != nil {
		return err
	}
	defer done()
	if err := s.mayWrite(); err != nil {
		return err
	}
	select {
	case s.turn <- struct{}{}:
		defer func() { <-s.turn }()
	case <-ctx.Done():
		return fault(ctx.Err())
	}
	t, err := s.writer.BeginTx(ctx, nil)
	if err != nil {
		return fault(err)
	}
	defer t.Rollback() // does nothing after Commit
	if s.d.alone != nil {
		if err := s.d.alone(ctx, t); err != nil {
			return fault(err)
		}
	}
	if s.guard != nil {
		if err := s.guard.check(ctx, t); err != nil {
			return fault(err)
		}
	}
	w := &tx{ctx: ctx, tx: t, write: true}
	if err := write(w); err != nil {
		return fault(err)
	}
	shared := s.d.goose == goose.DialectPostgres && s.lock == nil
	if shared && len(w.changes) > 0 {
		if err := w.tell(); err != nil {
			return fault(err)
		}
	}
	if err := t.Commit(); err != nil {
		return commitFault(err)
	}
	s.hub.publish(w.changes)
	return nil
}

// commitFault is Closed wherever it cannot be known whether the change was kept.
func commitFault(err error) error {
	f := fault(err)
	if code := shop.CodeOf(f); code == shop.Full || code == shop.Damaged || code == shop.InUse {
		return f
	}
	return shop.Fault(shop.Closed, "It is not known whether this was saved: look, and send it again where it was not.").Because(err)
}

// exec runs a statement that changes something and says how many rows it did.
func (t *tx) exec(statement string, args ...any) (int64, error) {
	if !t.write {
		return 0, shop.Fault(shop.Internal, "This only reads.")
	}
	r, err := t.tx.ExecContext(t.ctx, statement, args...)
	if err != nil {
		return 0, fault(err)
	}
	n, err := r.RowsAffected()
	return n, fault(err)
}

// row reads one row; found is false where there is none.
func (t *tx) row(query string, args []any, into ...any) (found bool, err error) {
	err = t.tx.QueryRowContext(t.ctx, query, args...).Scan(into...)
	if errors.Is(err, sql.ErrNoRows) {
		return false, nil
	}
	return err == nil, fault(err)
}

// rows calls each for every row.
func (t *tx) rows(query string, args []any, each func(*sql.Rows) error) error {
	rows, err := t.tx.QueryContext(t.ctx, query, args...)
	if err != nil {
		return fault(err)
	}
	defer rows.Close()
	for rows.Next() {
		if err := each(rows); err != nil {
			return fault(err)
		}
	}
	return fault(rows.Err())
}

// where builds the end of a query, with $1, $2 … in order.
type where struct {
	text strings.Builder
	args []any
}

// and adds a condition; each ? in it is the next argument.
func (w *where) and(condition string, args ...any) {
	if w.text.Len() == 0 {
		w.text.WriteString(" WHERE ")
	} else {
		w.text.WriteString(" AND ")
	}
	w.add(condition, args...)
}

func (w *where) add(text string, args ...any) {
	for _, c := range text {
		if c != '?' {
			w.text.WriteRune(c)
			continue
		}
		w.args = append(w.args, args[0])
		args = args[1:]
		w.text.WriteString("$" + strconv.Itoa(len(w.args)))
	}
}

// among is a list of placeholders and its arguments, as plain strings: "(?, ?, ?)".
func among[T ~string](items []T) (string, []any) {
	args := make([]any, len(items))
	for i, x := range items {
		args[i] = string(x)
	}
	return "(" + strings.TrimSuffix(strings.Repeat("?, ", len(items)), ", ") + ")", args
}

// prefix is the range of the words that begin so. No UTF-8 text holds the byte
// 0xFF, so all of them lie below the end.
func prefix(word string) (from, to []byte) { return []byte(word), append([]byte(word), 0xFF) }

func micros(t time.Time) int64 {
	if t.IsZero() {
		return 0
	}
	return t.UnixMicro()
}

func instant(us int64) time.Time {
	if us == 0 {
		return time.Time{}
	}
	return time.UnixMicro(us).UTC()
}
