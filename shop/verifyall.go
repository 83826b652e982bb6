package shop

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"slices"
)

// A Checked is what VerifyAll found.
type Checked struct {
	Records int
	Entries int64
	Wrong   []Wrong  // records that are not whole
	Missing []string // records that are not there at all, each in one sentence
}

// A Wrong is a record that is not whole.
type Wrong struct {
	Job   *Job
	Found []Finding
}

// VerifyAll verifies every record of the shop, and whether all are there: the
// running numbers that were given have no gap, and no number stands twice. With
// the heads of an earlier backup (nil for none) each record must also hold all
// that it held then: that finds what was computed anew, cut off or taken out by
// somebody who knew how.
func (s *Shop) VerifyAll(ctx context.Context, earlier map[ID]Head) (Checked, error) {
	var c Checked
	var given int64 // read first: what is opened meanwhile is not missed
	var jobs []ID
	err := s.store.View(ctx, func(tx Tx) (err error) {
		if given, err = lastNumber(tx, numbersOfJobs); err != nil {
			return err
		}
		jobs = nil
		return eachJob(tx, func(id ID) error { jobs = append(jobs, id); return nil })
	})
	if err != nil {
		return c, err
	}
	numbers, there := map[int64]*Job{}, map[ID]bool{}
	for _, id := range jobs {
		there[id] = true
		var witnesses []Head
		if h, ok := earlier[id]; ok && h.Seq > 0 {
			witnesses = append(witnesses, h)
		}
		j, found, err := s.verifyJob(ctx, id, witnesses)
		if err != nil {
			return c, err
		}
		c.Records++
		c.Entries += int64(len(j.sealed))
		if j.Origin.ID == s.id {
			if twin := numbers[j.Number]; twin != nil {
				found = append(found, Finding{0, fmt.Sprintf("another record (%s) has the same number", twin.ID)})
			}
			numbers[j.Number] = j
		}
		if len(found) > 0 {
			c.Wrong = append(c.Wrong, Wrong{j, found})
		}
	}
	for n := int64(1); n <= given; n++ {
		if numbers[n] == nil {
			c.Missing = append(c.Missing, "job "+numberText(n)+": the number was given, and no record has it")
		}
	}
	for _, id := range slices.Sorted(maps.Keys(earlier)) {
		if !there[id] {
			c.Missing = append(c.Missing, fmt.Sprintf("job %s: the backup has %d entries of it, and there is no record", id, earlier[id].Seq))
		}
	}
	return c, nil
}

// BackupHeads returns the end of each record as a backup has it. It reads no
// more of the backup than that: CheckBackup does.
func BackupHeads(r io.ReaderAt, size int64) (map[ID]Head, error) {
	a, _, err := openBackup(r, size)
	if err != nil {
		return nil, err
	}
	heads, err := backupHeads(a)
	if err != nil {
		return nil, err
	}
	all := make(map[ID]Head, len(heads))
	for _, h := range heads {
		all[h.Job] = Head{h.Seq, h.Hash}
	}
	return all, nil
}

func backupHeads(a *archive) ([]jobHead, error) {
	var heads []jobHead
	err := a.lines("jobs.jsonl", func(line []byte) error {
		var h jobHead
		if err := json.Unmarshal(line, &h); err != nil || !h.Job.Valid() {
			return Fault(Damaged, "jobs.jsonl cannot be read.").Because(err)
		}
		heads = append(heads, h)
		return nil
	})
	return heads, err
}

// VerifyJob tells everything that is wrong with a job's record and files:
// Verify with the job's own certificates as witnesses, each certificate's
// signature, and every file that an entry names. Witnesses are heads of the
// record known from elsewhere, such as those of a backup.
func (s *Shop) VerifyJob(ctx context.Context, id ID, witnesses ...Head) ([]Finding, error) {
	_, found, err := s.verifyJob(ctx, id, witnesses)
	return found, err
}

func (s *Shop) verifyJob(ctx context.Context, id ID, witnesses []Head) (j *Job, found []Finding, err error) {
	err = s.store.View(ctx, func(tx Tx) error {
		if j, err = readJob(tx, id); err != nil {
			return err
		}
		for _, c := range j.Certificates() {
			witnesses = append(witnesses, c.Witness())
		}
		found = Verify(id, j.sealed, j.Head, witnesses...)
		return nil
	})
	if err != nil {
		return nil, nil, err
	}
	for _, e := range j.entries {
		if e.Kind == EntryCertificate && e.Value.Text != "" && j.Origin.ID == s.id {
			if _, err := VerifyCertificate(e.Value.Text, s.key.public); err != nil {
				found = append(found, Finding{e.Seq, "the certificate is not signed by this shop"})
			}
		}
		for _, f := range e.Files() {
			if _, err := s.store.File(ctx, f.SHA256); err != nil {
				if !lost(err) {
					return nil, nil, err
				}
				found = append(found, Finding{e.Seq, "its file " + short(f.SHA256) + "… (" + f.Name + ") is lost or altered"})
			}
		}
	}
	return j, found, nil
}
