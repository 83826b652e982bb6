package shop

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"strings"
	"time"
)

// NoHash stands for the entry before the first one.
var NoHash = strings.Repeat("0", 64)

// Seal gives an entry its number and the hash of the one before it, and
// returns it with its own hash together with the form in which it is stored.
// The entry's time is cut to microseconds, UTC.
func Seal(e Entry, after Head) (Entry, Sealed, error) {
	e.Format = RecordFormat
	e.Seq = after.Seq + 1
	e.Prev = after.Hash
	if after.Seq == 0 {
		e.Prev = NoHash
	}
	e.At = instant(e.At)
	if !e.Taken.IsZero() {
		e.Taken = instant(e.Taken)
	}
	plain, err := json.Marshal(e)
	if err != nil {
		return e, Sealed{}, Fault(Internal, "The entry cannot be written.").Because(err)
	}
	body, err := Canonical(plain)
	if err != nil {
		return e, Sealed{}, Fault(Internal, "The entry cannot be written.").Because(err)
	}
	s := e.sealed(body)
	e.Hash = s.Hash
	return e, s, nil
}

// sealed is what the store keeps of an entry with that body.
func (e *Entry) sealed(body []byte) Sealed {
	return Sealed{Job: e.Job, Seq: e.Seq, Hash: hashOf(body), Body: body, Slot: e.Slot().String(), Corrects: e.Corrects, Ticket: e.Ticket}
}

// Unseal reads a stored entry. It does not check the chain: Verify does.
func Unseal(s Sealed) (Entry, error) {
	var e Entry
	if err := json.Unmarshal(s.Body, &e); err != nil {
		return e, Fault(Damaged, "Entry %d of the record cannot be read.", s.Seq).Because(err)
	}
	e.Hash = s.Hash
	return e, nil
}

func hashOf(content []byte) string {
	sum := sha256.Sum256(content)
	return hex.EncodeToString(sum[:])
}

// instant is a time as records keep it.
func instant(t time.Time) time.Time { return t.UTC().Truncate(time.Microsecond) }
