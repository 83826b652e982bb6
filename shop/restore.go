package shop

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
)

// FilesBeside gives a kept file by its hash where a backup does not hold it;
// nil is that there is no such folder.
type FilesBeside func(hash string) ([]byte, error)

// CheckBackup reads a backup from end to end: every record's chain against its
// head, every card, every file, the counts. It needs no store.
func CheckBackup(r io.ReaderAt, size int64, beside FilesBeside) (Backup, error) {
	a, b, err := openBackup(r, size)
	if err != nil {
		return b, err
	}
	count := &counted{}
	if _, err := backupSettings(a, count); err != nil {
		return b, err
	}
	if err := backupCards(a, count, func(Card, description) error { return nil }); err != nil {
		return b, err
	}
	err = backupRecords(a, count, func(j *Job, _ []Sealed) error {
		return eachNewFile(j, count, func(f File) error {
			_, err := backupFile(a, f, beside)
			return b.forgiving(f, err)
		})
	})
	if err != nil {
		return b, err
	}
	return b, firstDone(func() error { return count.compare(b) }, a.rest)
}

// Restore puts a backup into an empty store, all of it or nothing, checking all
// that CheckBackup checks. The shop then is the one that was backed up, with its
// key and its people; everybody signs in again.
func Restore(ctx context.Context, store Store, r io.ReaderAt, size int64, beside FilesBeside) (Backup, error) {
	a, b, err := openBackup(r, size)
	if err != nil {
		return b, err
	}
	err = store.Update(ctx, func(tx Tx) error {
		if names, err := tx.Settings(); err != nil || len(names) > 0 {
			if err == nil {
				err = Fault(Conflict, "There is a shop here already: restore into an empty folder or database.")
			}
			return err
		}
		count := &counted{}
		settings, err := backupSettings(a, count)
		if err != nil {
			return err
		}
		for name, value := range settings {
			if err := tx.PutSetting(name, value); err != nil {
				return err
			}
		}
		home := ID(settings[settingID])
		err = backupCards(a, count, func(c Card, d description) error { return tx.PutCard(c, d.terms()) })
		if err != nil {
			return err
		}
		err = backupRecords(a, count, func(j *Job, sealed []Sealed) error {
			err := eachNewFile(j, count, func(f File) error {
				content, err := backupFile(a, f, beside)
				if err == nil {
					_, err = store.PutFile(ctx, content)
				}
				return b.forgiving(f, err)
			})
			if err != nil {
				return err
			}
			return firstDone(
				func() error { return tx.AddJob(j.ID) },
				func() error { return tx.Append(j.ID, Head{}, sealed) },
				func() error { return tx.PutIndex(j.ID, j.Index(home)) },
			)
		})
		if err != nil {
			return err
		}
		return firstDone(func() error { return count.compare(b) }, a.rest)
	})
	return b, err
}

func openBackup(r io.ReaderAt, size int64) (*archive, Backup, error) {
	var b Backup
	a, err := openArchive(r, size)
	if err != nil {
		return nil, b, err
	}
	text, err := a.content("backup.json", 1<<20)
	if err != nil {
		return nil, b, Fault(Damaged, "This is not a backup, or only a part of one.").Because(err)
	}
	if err := json.Unmarshal(text, &b); err != nil {
		return nil, b, Fault(Damaged, "backup.json cannot be read.").Because(err)
	}
	if b.Format != BackupFormat {
		return nil, b, Fault(Invalid, "This backup has form %d; this program knows form %d.", b.Format, BackupFormat)
	}
	return a, b, nil
}

// counted is what was found in a backup.
type counted struct {
	Backup
	seen map[string]bool
}

func (c *counted) compare(b Backup) error {
	if c.Jobs != b.Jobs || c.Entries != b.Entries || c.Cards != b.Cards || c.Names != b.Names || c.Files != b.Files {
		return Fault(Damaged, "The backup should hold %d jobs, %d entries, %d cards and %d files; it holds %d, %d, %d and %d.",
			b.Jobs, b.Entries, b.Cards, b.Files, c.Jobs, c.Entries, c.Cards, c.Files)
	}
	return nil
}

func backupSettings(a *archive, count *counted) (map[string][]byte, error) {
	text, err := a.content("settings.json", maxMember)
	if err != nil {
		return nil, err
	}
	var settings map[string][]byte
	if err := json.Unmarshal(text, &settings); err != nil || !ID(settings[settingID]).Valid() {
		return nil, Fault(Damaged, "settings.json cannot be read.").Because(err)
	}
	if _, err := keyFromSeed(settings[settingKey]); err != nil {
		return nil, err
	}
	count.Names = len(settings)
	return settings, nil
}

func backupCards(a *archive, count *counted, each func(Card, description) error) error {
	return a.lines("cards.jsonl", func(line []byte) error {
		c, err := readCardLine(line)
		if err != nil {
			return err
		}
		d, err := describeCard(c)
		if err != nil {
			return err
		}
		count.Cards++
		return each(c, d)
	})
}

// backupRecords calls each for every job with its whole, verified record. The
// lines of records.jsonl stand job after job in the order of jobs.jsonl.
func backupRecords(a *archive, count *counted, each func(*Job, []Sealed) error) error {
	heads, err := backupHeads(a)
	if err != nil {
		return err
	}
	var sealed []Sealed
	finish := func() error {
		h := heads[count.Jobs]
		if found := Verify(h.Job, sealed, Head{h.Seq, h.Hash}); len(found) > 0 {
			return Fault(Damaged, "The record of job %s is not whole: %s.", h.Job, found[0])
		}
		count.Jobs++
		count.Entries += int64(len(sealed))
		err := each(Read(h.Job, sealed, Head{h.Seq, h.Hash}), sealed)
		sealed = nil
		return err
	}
	// A job with an empty record has no line: it is finished when its turn comes.
	finishEmpty := func() error {
		for count.Jobs < len(heads) && heads[count.Jobs].Seq == 0 {
			if err := finish(); err != nil {
				return err
			}
		}
		return nil
	}
	err = a.lines("records.jsonl", func(line []byte) error {
		if err := finishEmpty(); err != nil {
			return err
		}
		if count.Jobs == len(heads) {
			return Fault(Damaged, "records.jsonl goes on after the last job.")
		}
		one, err := reseal(line)
		if err != nil {
			return err
		}
		one.Job = heads[count.Jobs].Job
		sealed = append(sealed, one)
		if int64(len(sealed)) == heads[count.Jobs].Seq {
			return finish()
		}
		return nil
	})
	if err != nil {
		return err
	}
	if len(sealed) > 0 {
		return Fault(Damaged, "records.jsonl ends in the middle of a job.")
	}
	return finishEmpty()
}

// forgiving lets pass that a file is missing which was lost before the backup.
func (b *Backup) forgiving(f File, err error) error {
	if err != nil && oneOf(f.SHA256, b.Lost) {
		return nil
	}
	return err
}

// eachNewFile calls each once for every file that has not been seen.
func eachNewFile(j *Job, count *counted, each func(File) error) error {
	if count.seen == nil {
		count.seen = map[string]bool{}
	}
	for i := range j.entries {
		for _, f := range j.entries[i].Files() {
			if count.seen[f.SHA256] {
				continue
			}
			count.seen[f.SHA256] = true
			count.Files++
			if err := each(f); err != nil {
				return err
			}
		}
	}
	return nil
}

// backupFile takes a file out of the zip or from beside it.
func backupFile(a *archive, f File, beside FilesBeside) ([]byte, error) {
	if a.has(memberOf(f)) || beside == nil {
		return a.file(f)
	}
	content, err := beside(f.SHA256)
	if err != nil {
		return nil, Fault(Damaged, "The file %s… is neither in the backup nor beside it.", short(f.SHA256)).Because(err)
	}
	if hashOf(content) != f.SHA256 {
		return nil, Fault(Damaged, "The file %s… beside the backup is not what it was.", short(f.SHA256))
	}
	return bytes.Clone(content), nil
}
