package sqlstore

import (
	"context"
	"database/sql"
	"embed"
	"io/fs"

	"github.com/pressly/goose/v3"
	"github.com/pressly/goose/v3/lock"

	"axlewright/shop"
)

//go:embed migrations/*.sql
var migrations embed.FS

// migrate brings the tables to the form that this program knows. A database
// that a newer program has changed is left alone.
func (s *Store) migrate(ctx context.Context, db *sql.DB) error {
	files, err := fs.Sub(migrations, "migrations")
	if err != nil {
		return err
	}
	options := []goose.ProviderOption{goose.WithDisableGlobalRegistry(true)}
	if s.d.goose == goose.DialectPostgres { // on SQLite the folder's lock keeps others out
		locker, err := lock.NewPostgresSessionLocker()
		if err != nil {
			return err
		}
		options = append(options, goose.WithSessionLocker(locker))
	}
	p, err := goose.NewProvider(s.d.goose, db, files, options...)
	if err != nil {
		return err
	}
	have, err := p.GetDBVersion(ctx)
	if err != nil {
		return err
	}
	if err := notNewer(have, newest(p)); err != nil {
		return err
	}
	_, err = p.Up(ctx)
	return err
}

func newest(p *goose.Provider) int64 {
	sources := p.ListSources()
	return sources[len(sources)-1].Version
}

func notNewer(have, newest int64) error {
	if have > newest {
		return shop.Fault(shop.Invalid, "This shop was last opened by a newer program (its tables have number %d, this program knows %d). Use that one.", have, newest)
	}
	return nil
}

// upToDate demands tables in the form that this program knows, where they are
// only read.
func (s *Store) upToDate(ctx context.Context) error {
	files, err := fs.Sub(migrations, "migrations")
	if err != nil {
		return err
	}
	p, err := goose.NewProvider(s.d.goose, s.reader, files, goose.WithDisableGlobalRegistry(true))
	if err != nil {
		return err
	}
	var have int64
	err = s.reader.QueryRowContext(ctx, "SELECT coalesce(max(version_id), 0) FROM "+goose.DefaultTablename+" WHERE is_applied").Scan(&have)
	if err != nil {
		if f := fault(err); shop.CodeOf(f) != shop.Internal {
			return f
		}
		return shop.Fault(shop.NotFound, "There is no shop in %s.", s.about).Because(err)
	}
	known := newest(p)
	if have < known {
		return shop.Fault(shop.Invalid, "This shop was last opened by an older program (its tables have number %d, this program knows %d). Open its bench once, which brings it up to date.", have, known)
	}
	return notNewer(have, known)
}
