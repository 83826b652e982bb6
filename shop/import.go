package shop

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
	"strings"
	"unicode"
)

// An Imported says what an import did.
type Imported struct {
	Job    *Job
	Added  int  // entries; 0 where all of it was here already
	Signed bool // the seal of the exporting shop fits its key
}

// Import reads a job that Export wrote, here or in another shop. The record is
// verified first, and nothing is written unless it is whole. Importing again
// changes nothing; a longer copy of a record that is here continues it; two
// copies that have gone separate ways are a Conflict.
func (s *Shop) Import(ctx context.Context, by Actor, r io.ReaderAt, size int64) (Imported, error) {
	var result Imported
	if err := by.Must(ActSettings); err != nil {
		return result, err
	}
	e, err := openExport(r, size)
	if err != nil {
		return result, err
	}
	result.Signed = e.signed
	if err := s.importFiles(ctx, e.archive, e.job); err != nil {
		return result, err
	}
	err = s.store.Update(ctx, func(tx Tx) error {
		result.Added = 0
		for _, c := range e.cards {
			if _, err := tx.Card(c.Kind, c.ID); CodeOf(err) != NotFound {
				if err != nil {
					return err
				}
				continue // the card that is here is kept
			}
			if err := putForeignCard(tx, c); err != nil {
				return err
			}
		}
		result.Added, err = mergeRecord(tx, e.job.ID, e.job.sealed)
		if err != nil {
			return err
		}
		if result.Job, err = readJob(tx, e.job.ID); err != nil || result.Added == 0 {
			return err
		}
		return tx.PutIndex(e.job.ID, result.Job.Index(s.id))
	})
	return result, err
}

// An Exported is what an exported job says of itself.
type Exported struct {
	Job    *Job
	By     Link      // the shop that exported it
	Key    PublicKey // of that shop, as the file says
	Signed bool      // the seal fits that key
}

// CheckExport reads an exported job from end to end: the record's chain against
// its seal, every card, photograph and paper. It needs no shop.
func CheckExport(r io.ReaderAt, size int64) (Exported, error) {
	e, err := openExport(r, size)
	if err != nil {
		return Exported{}, err
	}
	for i := range e.job.entries {
		for _, f := range e.job.entries[i].Files() {
			if _, err := e.archive.file(f); err != nil {
				return Exported{}, err
			}
		}
	}
	return Exported{e.job, e.manifest.By, e.manifest.Key, e.signed}, e.archive.rest()
}

// export is an exported job with its record verified.
type export struct {
	archive  *archive
	manifest exportManifest
	job      *Job
	cards    []Card
	signed   bool
}

func openExport(r io.ReaderAt, size int64) (*export, error) {
	a, err := openArchive(r, size)
	if err != nil {
		return nil, err
	}
	text, err := a.content("manifest.json", 1<<20)
	if err != nil {
		return nil, err
	}
	e := &export{archive: a}
	m := &e.manifest
	if err := json.Unmarshal(text, m); err != nil || m.Format != RecordFormat || !m.Job.Valid() {
		return nil, Fault(Damaged, "manifest.json is not that of a job in form %d.", RecordFormat).Because(err)
	}
	head := Head(m.Head)
	e.signed = m.Seal == sealText(m.Number, m.Job, head, m.Key.Fingerprint()) && m.Key.signed(m.Seal, m.Sig)
	sealed, err := importRecord(a, m.Job, head)
	if err != nil {
		return nil, err
	}
	e.job = Read(m.Job, sealed, head)
	e.cards, err = importCards(a)
	return e, err
}

// importRecord reads record.jsonl and demands that it is whole and in its form.
func importRecord(a *archive, job ID, head Head) ([]Sealed, error) {
	var sealed []Sealed
	err := a.lines("record.jsonl", func(line []byte) error {
		if len(line) > maxEntry || len(sealed) >= 100_000 {
			return Fault(TooLarge, "The record is larger than a record can rightly be.")
		}
		one, err := reseal(line)
		sealed = append(sealed, one)
		return err
	})
	if err != nil {
		return nil, err
	}
	if len(sealed) == 0 {
		return nil, Fault(Damaged, "The record is empty.")
	}
	if found := Verify(job, sealed, head); len(found) > 0 {
		return nil, Fault(Damaged, "The record is not whole: %s.", found[0])
	}
	if j := Read(job, sealed, head); j.Number < 1 || j.Origin.ID == "" {
		return nil, Fault(Damaged, "The record does not begin as one does.")
	}
	return sealed, nil
}

// reseal makes of a line what the store keeps, and demands that its places are
// such as this program writes.
func reseal(line []byte) (Sealed, error) {
	d := json.NewDecoder(bytes.NewReader(line))
	d.DisallowUnknownFields()
	var e Entry
	if err := d.Decode(&e); err != nil {
		return Sealed{}, Fault(Damaged, "An entry of the record cannot be read.").Because(err)
	}
	for _, part := range []string{string(e.Step), e.Item, e.Place, e.Ticket} {
		if len(part) > 200 || strings.Contains(part, "/") || strings.IndexFunc(part, func(r rune) bool { return !unicode.IsPrint(r) }) >= 0 {
			return Sealed{}, Fault(Damaged, "Entry %d of the record has a place that cannot be.", e.Seq)
		}
	}
	for _, f := range e.Files() {
		if len(f.SHA256) != 64 || strings.Trim(f.SHA256, "0123456789abcdef") != "" {
			return Sealed{}, Fault(Damaged, "Entry %d of the record names a file that cannot be.", e.Seq)
		}
	}
	return e.sealed(line), nil
}

// importFiles keeps every file that the record names, unless it is here.
func (s *Shop) importFiles(ctx context.Context, a *archive, j *Job) error {
	for i := range j.entries {
		for _, f := range j.entries[i].Files() {
			if _, err := s.store.File(ctx, f.SHA256); err == nil {
				continue
			}
			content, err := a.file(f)
			if err != nil {
				return err
			}
			if _, err := s.store.PutFile(ctx, content); err != nil {
				return err
			}
		}
	}
	return nil
}

// mergeRecord adds what the record here lacks.
func mergeRecord(tx Tx, job ID, sealed []Sealed) (added int, err error) {
	here, err := tx.Entries(job)
	if CodeOf(err) == NotFound {
		err = tx.AddJob(job)
	}
	if err != nil {
		return 0, err
	}
	for i := range min(len(here), len(sealed)) {
		if here[i].Hash != sealed[i].Hash {
			return 0, Fault(Conflict, "The record here and the one in the file have gone separate ways after entry %d.", i)
		}
	}
	if len(sealed) <= len(here) {
		return 0, nil
	}
	head, err := tx.Head(job)
	if err != nil {
		return 0, err
	}
	if head.Seq != int64(len(here)) {
		return 0, Fault(Damaged, "The record here is damaged: restore it from a backup.")
	}
	rest := sealed[len(here):]
	return len(rest), tx.Append(job, head, rest)
}

// importCards reads cards.jsonl.
func importCards(a *archive) ([]Card, error) {
	var cards []Card
	err := a.lines("cards.jsonl", func(line []byte) error {
		if len(cards) >= 100_000 {
			return Fault(TooLarge, "The file holds more cards than it can rightly hold.")
		}
		c, err := readCardLine(line)
		if err != nil {
			return err
		}
		if !travels(c.Kind) {
			return Fault(Damaged, "The file holds a card of a kind that does not travel (%s).", printable(string(c.Kind), 20))
		}
		cards = append(cards, c)
		return nil
	})
	return cards, err
}

func readCardLine(line []byte) (Card, error) {
	var l cardLine
	if err := json.Unmarshal(line, &l); err != nil || !l.ID.Valid() || len(l.Sheet) > maxCard {
		return Card{}, Fault(Damaged, "A card in the file cannot be read.").Because(err)
	}
	return l.card(), nil
}

// putForeignCard keeps a card from outside as its first revision here. It is
// checked as one that is typed, and named anew from its sheet.
func putForeignCard(tx Tx, c Card) error {
	d, err := describeCard(c)
	if err != nil {
		return err
	}
	c.Label, c.Sort, c.Group, c.State = d.label, FoldLabel(d.label), d.group, d.state
	c.Revision = 1
	return tx.PutCard(c, d.terms())
}

// describeCard reads a card's sheet whatever its kind.
func describeCard(c Card) (description, error) {
	switch c.Kind {
	case KindCustomer:
		return described[Customer](c)
	case KindVehicle:
		return described[Vehicle](c)
	case KindCasting:
		return described[Casting](c)
	case KindKit:
		return described[Kit](c)
	case KindDonor:
		return described[Donor](c)
	case KindLot:
		return described[Lot](c)
	case KindPerson:
		return described[Person](c)
	case KindGauge:
		return described[Gauge](c)
	case KindSteel:
		return described[Steel](c)
	case KindNest:
		return described[Nest](c)
	case KindPrices:
		return described[Prices](c)
	case KindHouse:
		return described[House](c)
	}
	return description{}, Fault(Damaged, "The file holds a card of a kind that is not known (%s).", printable(string(c.Kind), 20))
}

func described[T any, P Sheet[T]](c Card) (description, error) {
	sheet, err := readSheet[T, P](c)
	if err != nil {
		return description{}, err
	}
	if err := P(&sheet).Check(); err != nil {
		return description{}, Fault(Damaged, "The card of %s %s in the file is not as it should be.", c.Kind, printable(c.Label, 60)).Because(err)
	}
	return P(&sheet).describe(), nil
}
