package shop

import (
	"bytes"
	"fmt"
)

// A Finding is one thing wrong with a record.
type Finding struct {
	Seq  int64  // the entry; 0 is the record as a whole
	Says string // one sentence
}

func (f Finding) String() string {
	if f.Seq == 0 {
		return f.Says
	}
	return fmt.Sprintf("entry %d: %s", f.Seq, f.Says)
}

// Verify tells everything that is wrong with a record: entries altered,
// missing, moved, added out of line, or cut off at the end. Head is the
// newest entry as it was kept apart from the entries; witnesses are hashes
// known from elsewhere, such as a printed certificate's. An empty result means
// that the record is whole.
//
// The chain shows that nobody altered the record without computing it anew.
// Only a witness outside the shop, such as the certificate that the customer
// holds, shows that nobody did that.
func Verify(job ID, entries []Sealed, head Head, witnesses ...Head) []Finding {
	var found []Finding
	say := func(seq int64, text string, args ...any) {
		found = append(found, Finding{seq, fmt.Sprintf(text, args...)})
	}
	prev, standing := NoHash, map[string]int64{}
	tickets := map[string]int64{}
	for i, s := range entries {
		want := int64(i + 1)
		if s.Seq != want {
			say(s.Seq, "number %d was expected here: an entry is missing, doubled or moved", want)
		}
		if got := hashOf(s.Body); got != s.Hash {
			say(s.Seq, "its words have been altered: their hash is %s…, not %s…", short(got), short(s.Hash))
		}
		e, err := Unseal(s)
		if err != nil {
			say(s.Seq, "it cannot be read")
			prev = s.Hash
			continue
		}
		if again, err := Canonical(s.Body); err != nil || !bytes.Equal(again, s.Body) {
			say(s.Seq, "it is not in the canonical form")
		}
		if e.Prev != prev {
			say(s.Seq, "it does not follow the entry before it")
		}
		if e.Job != job || s.Job != job {
			say(s.Seq, "it belongs to another job")
		}
		if e.Seq != s.Seq {
			say(s.Seq, "its words say that it is entry %d: it was moved", e.Seq)
		}
		if e.Slot().String() != s.Slot || e.Corrects != s.Corrects || e.Ticket != s.Ticket {
			say(s.Seq, "the store's index does not agree with its words")
		}
		if e.Format != RecordFormat {
			say(s.Seq, "its form %d is not known to this program", e.Format)
		}
		if slot := e.Slot().String(); standing[slot] != e.Corrects {
			say(s.Seq, "it says that it follows entry %d of its place, where entry %d stood", e.Corrects, standing[slot])
		}
		if e.Ticket != "" && tickets[e.Ticket] != 0 {
			say(s.Seq, "it was sent under the same ticket as entry %d", tickets[e.Ticket])
		}
		standing[e.Slot().String()] = s.Seq
		tickets[e.Ticket] = s.Seq
		prev = s.Hash
	}
	if n := int64(len(entries)); head.Seq != n || n > 0 && head.Hash != prev {
		say(0, "the record should end with entry %d (%s…), but ends with entry %d (%s…)", head.Seq, short(head.Hash), n, short(prev))
	}
	for _, w := range witnesses {
		if w.Seq < 1 || w.Seq > int64(len(entries)) || entries[w.Seq-1].Hash != w.Hash {
			say(w.Seq, "it is not the entry that was signed or printed with the hash %s…", short(w.Hash))
		}
	}
	return found
}

func short(hash string) string {
	if len(hash) > 12 {
		return hash[:12]
	}
	return hash
}
