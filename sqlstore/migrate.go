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
	sources := p.ListSources()
	have, err := p.GetDBVersion(ctx)
	if err != nil {
		return err
	}
	if newest := sources[len(sources)-1].Version; have > newest {
		return shop.Fault(shop.Invalid, "This shop was last opened by a newer program (its tables have number %d, this program knows %d). Use that one.", have, newest)
	}
	_, err = p.Up(ctx)
	return err
}
