package shop

import (
	"archive/zip"
	"context"
	"fmt"
	"io"
	"time"
)

// exportManifest is manifest.json of an exported job.
type exportManifest struct {
	Format  int       `json:"format"` // RecordFormat
	Program string    `json:"program"`
	Job     ID        `json:"job"`
	Number  string    `json:"number"`
	Stamped string    `json:"stamped,omitempty"`
	Shop    Link      `json:"shop"` // that opened the job
	Head    headText  `json:"head"`
	At      time.Time `json:"exported_at"`
	By      Link      `json:"exported_by"` // the shop that exported it
	Key     PublicKey `json:"key"`         // of that shop
	Sig     string    `json:"signature"`   // base64url, Ed25519, over Seal
	Seal    string    `json:"seal"`
}

type headText struct {
	Seq  int64  `json:"entry"`
	Hash string `json:"hash"`
}

// sealText is what is signed for an export.
func sealText(number string, job ID, head Head, key string) string {
	return fmt.Sprintf("Axlewright export 1\nnumber %s\njob %s\nentry %d\nhash %s\nkey %s\n", number, job, head.Seq, head.Hash, key)
}

// Export writes a job as one zip file that explains itself: the record, its
// photographs and papers, the cards that it names, a page that any browser
// shows, and how all of it is read and checked without this program. A damaged
// record is exported as it is; the page says so.
func (s *Shop) Export(ctx context.Context, by Actor, job ID, to io.Writer) error {
	if err := by.Must(ActRead); err != nil {
		return err
	}
	var j *Job
	var cards []Card
	var house House
	err := s.store.View(ctx, func(tx Tx) (err error) {
		if j, err = readJob(tx, job); err != nil {
			return err
		}
		if house, err = getSheet[House](tx, HouseID); err != nil {
			return err
		}
		cards, err = namedCards(tx, j)
		return err
	})
	if err != nil {
		return err
	}
	w := &archiveWriter{zip.NewWriter(to), s.now()}
	if err := w.add("README.txt", []byte(exportReadme(j)), true); err != nil {
		return err
	}
	m := exportManifest{Format: RecordFormat, Program: "Axlewright", Job: j.ID, Number: j.NumberText(), Stamped: j.Stamped(), Shop: j.Origin,
		Head: headText(j.Head), At: instant(s.now()), By: Link{KindHouse, s.id, house.Name}, Key: s.key.public}
	m.Seal = sealText(j.NumberText(), j.ID, j.Head, s.key.public.Fingerprint())
	m.Sig = s.key.sign(m.Seal)
	if err := w.addJSON("manifest.json", m); err != nil {
		return err
	}
	record, err := w.create("record.jsonl", true)
	if err != nil {
		return err
	}
	for _, e := range j.sealed {
		if _, err := fmt.Fprintf(record, "%s\n", e.Body); err != nil {
			return writing(err)
		}
	}
	list, err := w.create("cards.jsonl", true)
	if err != nil {
		return err
	}
	for _, c := range cards {
		line, err := lineOf(c)
		if err != nil {
			return err
		}
		if _, err := list.Write(line); err != nil {
			return writing(err)
		}
	}
	gone, err := s.exportFiles(ctx, w, j)
	if err != nil {
		return err
	}
	if err := w.add("job.html", jobPage(j, house.Name, gone), true); err != nil {
		return err
	}
	return writing(w.zip.Close())
}

// exportFiles adds every file once and says which of them are lost.
func (s *Shop) exportFiles(ctx context.Context, w *archiveWriter, j *Job) (map[string]bool, error) {
	gone, done := map[string]bool{}, map[string]bool{}
	for i := range j.entries {
		for _, f := range j.entries[i].Files() {
			if done[f.SHA256] {
				continue
			}
			done[f.SHA256] = true
			content, err := s.store.File(ctx, f.SHA256)
			if lost(err) {
				gone[f.SHA256] = true
				continue
			}
			if err != nil {
				return nil, err
			}
			if err := w.add(memberOf(f), content, f.Media != "image/jpeg"); err != nil {
				return nil, err
			}
		}
	}
	return gone, nil
}

// namedCards returns the cards that a record names, and the kits and castings
// that those name, so that they can be read elsewhere. People stay at home.
func namedCards(tx Tx, j *Job) ([]Card, error) {
	var cards []Card
	seen := map[Link]bool{}
	var add func(kind CardKind, id ID) error
	add = func(kind CardKind, id ID) error {
		if at := (Link{Kind: kind, ID: id}); id == "" || seen[at] || !travels(kind) {
			return nil
		} else {
			seen[at] = true
		}
		c, err := tx.Card(kind, id)
		if err != nil {
			return ignore(err, NotFound)
		}
		cards = append(cards, c)
		if kind == KindLot {
			lot, err := readSheet[Lot](c)
			if err != nil {
				return err
			}
			return add(KindKit, lot.Kit)
		}
		return nil
	}
	for i := range j.entries {
		v := j.entries[i].Value
		if v.Link != nil {
			if err := add(v.Link.Kind, v.Link.ID); err != nil {
				return nil, err
			}
		}
		for _, l := range v.Fits {
			if err := add(l.Kind, l.ID); err != nil {
				return nil, err
			}
		}
	}
	return cards, nil
}

// travels says which cards go along with a job.
func travels(kind CardKind) bool {
	switch kind {
	case KindCustomer, KindVehicle, KindCasting, KindKit, KindDonor, KindLot, KindGauge:
		return true
	}
	return false
}

func exportReadme(j *Job) string {
	number := j.NumberText()
	if s := j.Stamped(); s != "" {
		number += ", stamped " + s
	}
	return "The record of job " + number + " of " + j.Origin.Label + `

job.html       the whole record as a page: open it in any browser
record.jsonl   the record itself, one entry a line
files/         photographs, papers and advice
cards.jsonl    donor, lots, casting, customer as they were known at export
manifest.json  number, end of the record, signature and public key of the shop

The record and its signature are what counts: job.html shows the record for easy
reading and is not signed.

This file can be imported into any Axlewright again. It can also be read and
checked without it, as follows.

` + recordForm
}
