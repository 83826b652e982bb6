package sqlstore

import (
	"context"
	"database/sql"
	"database/sql/driver"
	"fmt"
	"sync"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/stdlib"
	"github.com/pressly/goose/v3"

	"axlewright/shop"
)

// Advisory locks are numbers. Ours are made from these words and the schema, so
// that two shops in one database do not meet.
const (
	lockOpen   = "axlewright open "   // held while a program has the shop open
	lockUpdate = "axlewright update " // held during an Update
	lockNumber = "hashtextextended($1 || current_schema(), 0)"
)

func (s *Store) openPostgres(ctx, beside context.Context, o Options) error {
	config, err := pgx.ParseConfig(o.Postgres)
	if err != nil {
		return shop.Fault(shop.Invalid, "The connection string of PostgreSQL cannot be read.") // the cause may hold the password
	}
	config.RuntimeParams["synchronous_commit"] = "on"
	config.RuntimeParams["timezone"] = "UTC"
	if config.RuntimeParams["application_name"] == "" {
		config.RuntimeParams["application_name"] = "axlewright"
	}
	if config.ConnectTimeout == 0 {
		config.ConnectTimeout = 10 * time.Second
	}
	s.about = fmt.Sprintf("PostgreSQL %s on %s, files in %s", config.Database, config.Host, s.dir)
	s.d = dialect{
		goose: goose.DialectPostgres,
		view:  sql.TxOptions{ReadOnly: true, Isolation: sql.LevelRepeatableRead},
		alone: func(ctx context.Context, tx *sql.Tx) error {
			_, err := tx.ExecContext(ctx, "SELECT pg_advisory_xact_lock("+lockNumber+")", lockUpdate)
			return err
		},
	}
	s.writer = stdlib.OpenDB(*config)
	s.reader = s.writer
	s.writer.SetMaxOpenConns(20)
	s.writer.SetMaxIdleConns(10)
	s.writer.SetConnMaxIdleTime(5 * time.Minute)
	if err := s.writer.PingContext(ctx); err != nil {
		return shop.Fault(shop.Closed, "PostgreSQL cannot be reached at %s.", config.Host).Because(err)
	}
	if o.Reading {
		s.writer = nil
		return s.upToDate(ctx)
	}
	g, err := holdShop(ctx, s.writer, o.Shared)
	if err != nil {
		return err
	}
	s.guard = g
	if err := s.migrate(ctx, s.writer); err != nil {
		return err
	}
	if o.Shared {
		return s.listen(ctx, beside, config)
	}
	return nil
}

// postgresGuard holds the shop by a lock that belongs to one connection. If
// that connection breaks, PostgreSQL gives the lock up, and another program may
// take the shop; so every Update looks whether the connection still lives.
type postgresGuard struct {
	db     *sql.DB
	shared bool
	mu     sync.Mutex
	conn   *sql.Conn
	pid    int64 // of the server process that has the lock
}

func holdShop(ctx context.Context, db *sql.DB, shared bool) (*postgresGuard, error) {
	g := &postgresGuard{db: db, shared: shared}
	return g, g.take(ctx)
}

func (g *postgresGuard) take(ctx context.Context) error {
	conn, err := g.db.Conn(ctx)
	if err != nil {
		return err
	}
	try := "SELECT pg_try_advisory_lock(" + lockNumber + ")"
	if g.shared {
		try = "SELECT pg_try_advisory_lock_shared(" + lockNumber + ")"
	}
	var got bool
	err = conn.QueryRowContext(ctx, try, lockOpen).Scan(&got)
	if err == nil && got {
		err = conn.QueryRowContext(ctx, "SELECT pg_backend_pid()").Scan(&g.pid)
	}
	if err != nil || !got {
		conn.Close()
		if err == nil {
			err = shop.Fault(shop.InUse, "Another program has this shop open in PostgreSQL. Close that one first.")
		}
		return err
	}
	g.conn = conn
	return nil
}

// check asks, within the Update's own transaction, whether the server process
// that holds our lock still does. If not it tries to take the lock again.
func (g *postgresGuard) check(ctx context.Context, tx *sql.Tx) error {
	g.mu.Lock()
	defer g.mu.Unlock()
	var held bool
	err := tx.QueryRowContext(ctx, `SELECT count(*) > 0 FROM pg_locks
		WHERE locktype = 'advisory' AND pid = $2 AND granted AND objsubid = 1
		AND ((classid::bigint << 32) | objid::bigint) = `+lockNumber, lockOpen, g.pid).Scan(&held)
	if err != nil || held {
		return err
	}
	if g.conn != nil {
		// It is broken, which only using it would show: not back into the pool.
		_ = g.conn.Raw(func(any) error { return driver.ErrBadConn })
		g.conn.Close()
		g.conn = nil
	}
	return g.take(ctx)
}

func (g *postgresGuard) release() {
	g.mu.Lock()
	defer g.mu.Unlock()
	if g.conn != nil {
		unlock := "SELECT pg_advisory_unlock_all()"
		ctx, cancel := context.WithTimeout(context.Background(), 2*time.Second)
		defer cancel()
		_, _ = g.conn.ExecContext(ctx, unlock)
		g.conn.Close()
	}
}
