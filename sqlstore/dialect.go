package sqlstore

import (
	"context"
	"database/sql"
	"net/url"
	"os"
	"path/filepath"
	"runtime"

	"github.com/pressly/goose/v3"

	"axlewright/shop"
)

// dialect is what differs between the databases.
type dialect struct {
	goose goose.Dialect
	view  sql.TxOptions
	// alone keeps other Updates out until the transaction ends; nil where the
	// database does so by itself.
	alone func(context.Context, *sql.Tx) error
}

// FileName is the database of a shop in its folder, where it is SQLite.
const FileName = "shop.db"

// openSQLite opens shop.db with one connection that writes and several that
// read. Write transactions begin immediately: one that reads first and then
// writes would otherwise fail at once where it should wait.
func (s *Store) openSQLite(ctx context.Context, reading bool) error {
	path := filepath.Join(s.dir, FileName)
	s.about = "SQLite in " + path
	s.d = dialect{goose: goose.DialectSQLite3, view: sql.TxOptions{ReadOnly: true}}
	if _, err := os.Stat(path); reading && err != nil {
		return shop.Fault(shop.NotFound, "There is no shop in %s.", s.dir).Because(err)
	}
	var err error
	if !reading {
		if s.writer, err = sql.Open("sqlite", sqliteDSN(path, "immediate", "journal_mode(WAL)", "synchronous(FULL)", "foreign_keys(1)", "busy_timeout(5000)", "wal_autocheckpoint(1000)")); err != nil {
			return err
		}
		s.writer.SetMaxOpenConns(1)
		if err := s.migrate(ctx, s.writer); err != nil {
			return err
		}
		// The database's name is in the folder before anything is promised.
		if err := syncFolder(s.dir); err != nil {
			return fileFault(err, "The shop's folder cannot be flushed.")
		}
	}
	if s.reader, err = sql.Open("sqlite", sqliteDSN(path, "deferred", "query_only(1)", "busy_timeout(5000)")); err != nil {
		return err
	}
	s.reader.SetMaxOpenConns(max(4, runtime.NumCPU()))
	s.reader.SetMaxIdleConns(max(4, runtime.NumCPU()))
	return s.upToDate(ctx)
}

func sqliteDSN(path, txlock string, pragmas ...string) string {
	q := url.Values{"_txlock": {txlock}, "_pragma": pragmas}
	return (&url.URL{Scheme: "file", Opaque: (&url.URL{Path: filepath.ToSlash(path)}).EscapedPath(), RawQuery: q.Encode()}).String()
}

// IntegrityCheck asks SQLite to look through its whole file. PostgreSQL has no
// such question and answers nil.
func (s *Store) IntegrityCheck(ctx context.Context) error {
	done, err := s.enter()
	if err != nil {
		return err
	}
	defer done()
	if s.d.goose != goose.DialectSQLite3 {
		return nil
	}
	var answer string
	if err := s.reader.QueryRowContext(ctx, "PRAGMA integrity_check").Scan(&answer); err != nil {
		return fault(err)
	}
	if answer != "ok" {
		return shop.Fault(shop.Damaged, "The database file is damaged (%s): restore it from a backup.", answer)
	}
	return nil
}
