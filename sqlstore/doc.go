// Package sqlstore keeps a shop in SQLite (in the program itself, the default)
// or in PostgreSQL, with photographs and papers as files beside it. It is a
// shop.Store and knows no rules.
//
// # A shop's folder
//
//	shop.db        the database, where it is SQLite (with shop.db-wal, shop.db-shm)
//	files/ab/abc…  photographs, papers, advice; the name is the SHA-256 of the content
//	backups/       what Nightly writes
//	shop.lock      held while a program has the shop open
//
// # One SQL
//
// Both databases get the same statements and migrations, with $1 placeholders.
// Columns are TEXT, BIGINT, INTEGER, DOUBLE PRECISION, BOOLEAN and BYTEA;
// instants are microseconds; whatever is sorted or searched by its beginning is
// BYTEA, so that no collation has a say. What differs stands in dialect.go.
//
// # One writer
//
// Updates run one at a time, on SQLite because it is so, on PostgreSQL by an
// advisory lock taken first in each: a shop writes a few entries a second, and
// rules that read before they write are then right without thought. Reading is
// never held up.
//
// # What is on the disk
//
// SQLite runs with a write-ahead log and synchronous=FULL, PostgreSQL with
// synchronous_commit=on: when Update returns, the change has been flushed. A
// file is flushed, and the folder that names it, before PutFile returns, so
// that no row ever names a file that a power cut could take.
package sqlstore
