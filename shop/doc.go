// Package shop is what a workshop does: jobs and their record, donors and
// stock, customers, quotes, people, and the rules for all of them. It knows no
// SQL and no HTTP: a Store keeps the data (package sqlstore), and the screens
// call the methods of Shop.
//
// # A job is a record
//
// A job is one unit from enquiry to return. All that is known of it is its
// record: a list of entries that only ever grows. An Entry puts one Value at
// one Place of one item of one step ("lash at the heel, place 3: 0.20 mm").
// Nothing is changed or deleted: a correction is a new entry that names the
// entry it corrects, and a withdrawal is a correction to nothing. What is
// shown of a job is a fold over its entries, made by Read.
//
// Each entry carries the SHA-256 of the one before it, so that a record with
// an entry altered, lost or moved can be told from a whole one (Verify). The
// form of the record is written down in RECORD.md, which goes into every
// export, so that it can be read and checked without this program.
//
// # Steps
//
// Steps are data (Steps): title, fields, ranges with where they come from,
// cautions, papers. They may be filled in any order; gaps are shown and
// nothing is forced, except that a Stop refuses entries at some steps until
// its cause is gone or a named person overrides it with a reason.
//
// # Cards
//
// Everything beside jobs is a card: a Donor, Lot, Casting, Kit, Customer,
// Vehicle, Prices, House. Get, Save and List work on all of them. A card has a
// revision; saving an old revision is refused with a conflict that carries
// both. Every former revision is kept and can be shown (History).
//
// # Castings
//
// What was seen of a casting is entries of its job. Sighting reads them,
// Variants joins the shop's catalogue files with what the confirmed castings of
// its jobs taught, and CallCasting writes which variant it is. Nothing that was
// learnt is kept: it follows from the records each time it is asked for.
//
// # Where to begin
//
// Open a Shop on a Store, sign a person in (or use Shop.Alone on a bench
// without passwords), then Shop.OpenJob, Shop.Record, Shop.Job, Shop.FindJobs.
// Numbers that people type are parsed at the edge by package quantity; the
// shop stores the text as typed, the SI value and the dimension.
package shop
