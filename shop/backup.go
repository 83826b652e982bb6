package shop

import (
	"archive/zip"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"slices"
	"time"
)

// BackupFormat is the number of a backup's form.
const BackupFormat = 1

// Program is the actor of what the program does by itself, such as the nightly
// backup, and of commands typed on the shop's own computer.
var Program = Actor{ID: "program", Name: "Axlewright", Role: RoleOwner}

// A Backup says what a backup holds.
type Backup struct {
	Format  int       `json:"format"`
	Program string    `json:"program"`
	Shop    ID        `json:"shop"`
	Name    string    `json:"name"`
	At      time.Time `json:"at"`
	Jobs    int       `json:"jobs"`
	Entries int64     `json:"entries"`
	Cards   int       `json:"cards"` // revisions
	Names   int       `json:"settings"`
	Files   int       `json:"files"`      // that the records name
	Inside  bool      `json:"files_here"` // they are in the zip file too

	// Damaged says which records were found damaged and set aside, in
	// damaged.jsonl, so that they do not keep the others from being saved.
	Damaged []string `json:"damaged,omitempty"`
	// Lost are the files that were missing or damaged.
	Lost []string `json:"lost,omitempty"`
}

// jobHead is a line of jobs.jsonl.
type jobHead struct {
	Job  ID     `json:"job"`
	Seq  int64  `json:"entry"`
	Hash string `json:"hash"`
}

// BackUp writes the whole shop as it stood at one instant, while it goes on
// working: settings with the signing key and the hashed passwords, all
// revisions of all cards, all records, and with files set the photographs and
// papers. Whoever has the file has the shop: keep it like a key. Without files
// it needs the shop's folder of files beside it, see sqlstore.Nightly.
//
// The same form is written from SQLite and PostgreSQL, and Restore puts it into
// either. Sessions are left out.
func (s *Shop) BackUp(ctx context.Context, by Actor, to io.Writer, files bool) (Backup, error) {
	b := Backup{Format: BackupFormat, Program: "Axlewright", Shop: s.id, At: instant(s.now()), Inside: files}
	if err := by.Must(ActSettings); err != nil {
		return b, err
	}
	w := &archiveWriter{zip.NewWriter(to), s.now()}
	named := map[string]File{}
	err := s.store.View(ctx, func(tx Tx) error {
		house, err := getSheet[House](tx, HouseID)
		if err != nil {
			return err
		}
		b.Name = house.Name
		return firstDone(
			func() error { return w.add("README.txt", []byte(backupReadme+recordForm), true) },
			func() error { return b.settings(tx, w) },
			func() error { return b.cards(tx, w) },
			func() error { return b.records(tx, w, named) },
		)
	})
	if err != nil {
		return b, err
	}
	b.Files = len(named)
	if files {
		for _, hash := range slices.Sorted(maps.Keys(named)) { // the same shop gives the same file
			f := named[hash]
			content, err := s.store.File(ctx, f.SHA256)
			if lost(err) {
				b.Lost = append(b.Lost, f.SHA256)
				continue
			}
			if err != nil {
				return b, err
			}
			if err := w.add(memberOf(f), content, f.Media != "image/jpeg"); err != nil {
				return b, err
			}
		}
	}
	if err := w.addJSON("backup.json", b); err != nil {
		return b, err
	}
	return b, writing(w.zip.Close())
}

// lost says whether a kept file is no longer there, or not what it was.
func lost(err error) bool {
	code := CodeOf(err)
	return code == NotFound || code == Damaged
}

// firstDone runs steps until one fails.
func firstDone(steps ...func() error) error {
	for _, step := range steps {
		if err := step(); err != nil {
			return err
		}
	}
	return nil
}

func (b *Backup) settings(tx Tx, w *archiveWriter) error {
	names, err := tx.Settings()
	if err != nil {
		return err
	}
	all := map[string][]byte{}
	for _, n := range names {
		if all[n], err = tx.Setting(n); err != nil {
			return err
		}
	}
	b.Names = len(names)
	return w.addJSON("settings.json", all)
}

func (b *Backup) cards(tx Tx, w *archiveWriter) error {
	out, err := w.create("cards.jsonl", true)
	if err != nil {
		return err
	}
	for _, kind := range CardKinds {
		for q := (CardQuery{Kind: kind, Retired: true, Limit: 1000}); ; {
			page, err := tx.FindCards(q)
			if err != nil {
				return err
			}
			for _, c := range page.Cards {
				revisions, err := tx.CardHistory(kind, c.ID)
				if err != nil {
					return err
				}
				for _, r := range revisions {
					line, err := lineOf(r)
					if err != nil {
						return err
					}
					if _, err := out.Write(line); err != nil {
						return writing(err)
					}
					b.Cards++
				}
			}
			if q.After = page.Next; q.After == nil {
				break
			}
		}
	}
	return nil
}

// records writes the records first and then their heads: a zip file is written
// one member after the other.
func (b *Backup) records(tx Tx, w *archiveWriter, named map[string]File) error {
	out, err := w.create("records.jsonl", true)
	if err != nil {
		return err
	}
	var heads []jobHead
	var damaged []Sealed
	err = eachJob(tx, func(id ID) error {
		head, err := tx.Head(id)
		if err != nil {
			return err
		}
		sealed, err := tx.Entries(id)
		if err != nil {
			return err
		}
		if found := Verify(id, sealed, head); len(found) > 0 {
			b.Damaged = append(b.Damaged, fmt.Sprintf("job %s: %s", id, found[0]))
			damaged = append(damaged, sealed...)
			return nil
		}
		for _, e := range sealed {
			if _, err := fmt.Fprintf(out, "%s\n", e.Body); err != nil {
				return writing(err)
			}
			entry, err := Unseal(e)
			if err != nil {
				return err
			}
			for _, f := range entry.Files() {
				named[f.SHA256] = f
			}
		}
		heads = append(heads, jobHead{id, head.Seq, head.Hash})
		b.Entries += int64(len(sealed))
		return nil
	})
	if err != nil {
		return err
	}
	b.Jobs = len(heads)
	if err := addLines(w, "jobs.jsonl", heads); err != nil || len(damaged) == 0 {
		return err
	}
	return addLines(w, "damaged.jsonl", damaged)
}

// addLines writes a member with one JSON value a line.
func addLines[T any](w *archiveWriter, name string, items []T) error {
	out, err := w.create(name, true)
	if err != nil {
		return err
	}
	for _, x := range items {
		line, err := json.Marshal(x)
		if err != nil {
			return Fault(Internal, "The zip file cannot be written.").Because(err)
		}
		if _, err := out.Write(append(line, '\n')); err != nil {
			return writing(err)
		}
	}
	return nil
}

// eachJob calls each for every job in the order in which they were made.
func eachJob(tx Tx, each func(ID) error) error {
	for after := ID(""); ; {
		ids, err := tx.Jobs(after, 500)
		if err != nil || len(ids) == 0 {
			return err
		}
		for _, id := range ids {
			if err := each(id); err != nil {
				return err
			}
		}
		after = ids[len(ids)-1]
	}
}

const backupReadme = `A backup of a workshop's records made by Axlewright

It holds the shop's signing key and its hashed passwords: keep it like a key.

backup.json     what is in here; compare the counts
settings.json   numbers, key and passwords; the values are base64
cards.jsonl     donors, lots, castings, customers and so on: every revision, one a line
jobs.jsonl      the end of each job's record
records.jsonl   all records, one entry a line, one job after the other
damaged.jsonl   only where records were found damaged: what is left of them
files/          photographs, papers and advice (not in nightly backups, which keep
                them in a folder beside)

To bring it back: axlewright restore. To read it without the program: the form
of the records is this.

`

// A LastBackup is what became of the last backup that the program made by itself.
type LastBackup struct {
	At    time.Time `json:"at"` // zero: there was none
	Path  string    `json:"path,omitempty"`
	Bytes int64     `json:"bytes,omitempty"`
	Fault string    `json:"fault,omitempty"` // empty: it was read back from end to end and is whole
}

// Verdict is what there is to say of it at a time: more than a day and a half
// after the last one a night was missed.
func (b LastBackup) Verdict(now time.Time) Verdict {
	switch {
	case b.At.IsZero():
		return NotYet
	case b.Fault != "":
		return Halt
	case now.Sub(b.At) > 36*time.Hour:
		return Look
	}
	return Fine
}
