package sqlstore

import (
	"context"
	"database/sql"
	"errors"

	"github.com/jackc/pgx/v5/pgconn"
	"modernc.org/sqlite"
	lib "modernc.org/sqlite/lib"

	"axlewright/shop"
)

const fullSays = "The disk is full: nothing was saved. Make room, then try again."

// fault turns an error of the database into one of the shop's.
func fault(err error) error {
	var ours *shop.Error
	switch {
	case err == nil || errors.As(err, &ours):
		return err
	case errors.Is(err, context.Canceled) || errors.Is(err, context.DeadlineExceeded):
		return shop.Fault(shop.Closed, "Broken off before it was saved.").Because(err)
	case errors.Is(err, sql.ErrConnDone) || errors.Is(err, sql.ErrTxDone):
		return shop.Fault(shop.Closed, "The connection to the database is lost.").Because(err)
	case diskFull(err):
		return shop.Fault(shop.Full, fullSays).Because(err)
	}
	var lite *sqlite.Error
	if errors.As(err, &lite) {
		return sqliteFault(lite)
	}
	var pg *pgconn.PgError
	if errors.As(err, &pg) {
		return postgresFault(pg)
	}
	var connect *pgconn.ConnectError
	if errors.As(err, &connect) || pgconn.SafeToRetry(err) {
		return shop.Fault(shop.Closed, "The database cannot be reached.").Because(err)
	}
	return shop.Fault(shop.Internal, "The database failed.").Because(err)
}

func sqliteFault(err *sqlite.Error) error {
	switch err.Code() & 0xff { // the primary code
	case lib.SQLITE_FULL:
		return shop.Fault(shop.Full, fullSays).Because(err)
	case lib.SQLITE_CONSTRAINT:
		if c := err.Code(); c == lib.SQLITE_CONSTRAINT_UNIQUE || c == lib.SQLITE_CONSTRAINT_PRIMARYKEY || c == lib.SQLITE_CONSTRAINT_ROWID {
			return shop.Fault(shop.Conflict, "This is there already.").Because(err)
		}
	case lib.SQLITE_BUSY:
		return shop.Fault(shop.InUse, "Another program is writing to the shop's database.").Because(err)
	case lib.SQLITE_CORRUPT, lib.SQLITE_NOTADB:
		return shop.Fault(shop.Damaged, "The database file is damaged: restore it from a backup.").Because(err)
	case lib.SQLITE_INTERRUPT:
		return shop.Fault(shop.Closed, "Broken off before it was saved.").Because(err)
	case lib.SQLITE_READONLY, lib.SQLITE_CANTOPEN:
		return shop.Fault(shop.Internal, "The database file cannot be opened for writing.").Because(err)
	}
	return shop.Fault(shop.Internal, "The database failed.").Because(err)
}

func postgresFault(err *pgconn.PgError) error {
	switch {
	case err.Code == "23505":
		return shop.Fault(shop.Conflict, "This is there already.").Because(err)
	case err.Code == "53100":
		return shop.Fault(shop.Full, fullSays).Because(err)
	case err.Code[:2] == "08" || err.Code[:2] == "57" || err.Code[:2] == "53":
		return shop.Fault(shop.Closed, "The database is not there for us now.").Because(err)
	case err.Code == "22021" || err.Code == "22P05":
		return shop.Fault(shop.Invalid, "This holds characters that cannot be kept.").Because(err)
	case err.Code == "25006":
		return shop.Fault(shop.Internal, "This only reads.").Because(err)
	case err.Code[:2] == "XX":
		return shop.Fault(shop.Damaged, "The database is damaged: restore it from a backup.").Because(err)
	}
	return shop.Fault(shop.Internal, "The database failed.").Because(err)
}

// fileFault turns an error of the disk into one of the shop's.
func fileFault(err error, says string, args ...any) error {
	if diskFull(err) {
		return shop.Fault(shop.Full, fullSays).Because(err)
	}
	return shop.Fault(shop.Internal, says, args...).Because(err)
}
