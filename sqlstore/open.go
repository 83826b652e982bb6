package sqlstore

import (
	"context"
	"database/sql"
	"errors"
	"os"
	"path/filepath"
	"sync"

	"axlewright/shop"
)

// Options say where a shop is kept.
type Options struct {
	// Dir is the shop's folder. It is made where it does not exist.
	Dir string

	// Postgres is a connection string, "postgres://user@host/database". Empty is
	// SQLite in the folder. Files are in the folder in both cases.
	Postgres string

	// Shared lets several programs open the same shop in PostgreSQL: several
	// benches on one database. They must reach the same folder of files. It is
	// refused for SQLite.
	Shared bool

	// Reading opens a shop that is there to look at it only, for a backup or to
	// verify it, also while another program has it open. Nothing is locked, made
	// or brought up to date, and nothing can be written.
	Reading bool
}

// A Store is a shop.Store in a database and a folder.
type Store struct {
	dir    string
	about  string
	d      dialect
	writer *sql.DB // one connection for SQLite; nil where the shop is only read
	reader *sql.DB // the same as writer for PostgreSQL
	lock   *os.File
	guard  guard // of PostgreSQL; nil for SQLite
	hub    hub
	ends   context.CancelFunc // of what runs beside

	// turn lets one Update at a time ask for a connection, so that those that
	// wait hold none.
	turn   chan struct{}
	mu     sync.Mutex
	closed bool
	calls  sync.WaitGroup // running ones
}

// guard says whether the shop is still ours.
type guard interface {
	check(ctx context.Context, tx *sql.Tx) error
	release()
}

// Open opens a shop, making it where there is none, and holds it until Close.
// InUse means that another program has it; the sentence says which.
func Open(ctx context.Context, o Options) (*Store, error) {
	if o.Dir == "" {
		return nil, shop.Fault(shop.Invalid, "A shop needs a folder.")
	}
	if o.Shared && o.Postgres == "" {
		return nil, shop.Fault(shop.Invalid, "Only a shop in PostgreSQL can be opened by several programs.")
	}
	dir, err := filepath.Abs(o.Dir)
	if err != nil {
		return nil, fileFault(err, "The shop's folder %s cannot be found.", o.Dir)
	}
	s := &Store{dir: dir, turn: make(chan struct{}, 1)}
	beside, end := context.WithCancel(context.Background())
	s.ends = end
	if err := s.open(ctx, beside, o); err != nil {
		s.letGo()
		return nil, fault(err)
	}
	return s, nil
}

func (s *Store) open(ctx, beside context.Context, o Options) (err error) {
	switch {
	case o.Reading:
		if _, err := os.Stat(s.dir); err != nil {
			return shop.Fault(shop.NotFound, "There is no folder %s.", s.dir).Because(err)
		}
	case o.Shared:
		if err := os.MkdirAll(filepath.Join(s.dir, "files"), 0o700); err != nil {
			return fileFault(err, "The shop's folder %s cannot be made.", s.dir)
		}
	default:
		if s.lock, err = openFolder(s.dir); err != nil {
			return err
		}
	}
	if o.Postgres == "" {
		return s.openSQLite(ctx, o.Reading)
	}
	return s.openPostgres(ctx, beside, o)
}

// About says what the store is, without user or password.
func (s *Store) About() string { return s.about }

// BackupDir is where nightly backups go unless told otherwise.
func (s *Store) BackupDir() string { return filepath.Join(s.dir, "backups") }

// Watch sends changes until ctx ends.
func (s *Store) Watch(ctx context.Context) (<-chan shop.Change, error) {
	done, err := s.enter()
	if err != nil {
		return nil, err
	}
	defer done()
	return s.hub.watch(ctx), nil
}

// enter keeps the store open for one call.
func (s *Store) enter() (done func(), err error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.closed {
		return nil, shop.Fault(shop.Closed, "The shop is closed.")
	}
	s.calls.Add(1)
	return s.calls.Done, nil
}

// mayWrite refuses writing where the shop is only read.
func (s *Store) mayWrite() error {
	if s.writer == nil {
		return shop.Fault(shop.Forbidden, "This shop was opened to be read only.")
	}
	return nil
}

// Close waits for running calls and lets go of the shop.
func (s *Store) Close() error {
	s.mu.Lock()
	again := s.closed
	s.closed = true
	s.mu.Unlock()
	if again {
		return nil
	}
	s.calls.Wait()
	return fault(s.letGo())
}

func (s *Store) letGo() error {
	s.ends()
	s.hub.close()
	var errs []error
	if s.guard != nil {
		s.guard.release()
	}
	if s.reader != nil && s.reader != s.writer {
		errs = append(errs, s.reader.Close())
	}
	if s.writer != nil {
		errs = append(errs, s.writer.Close())
	}
	if s.lock != nil {
		errs = append(errs, s.lock.Close())
	}
	return errors.Join(errs...)
}
