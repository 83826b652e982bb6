package shop

import (
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// A Certificate says that the shop's record of a unit ended, on its day, with
// the entry of that hash. It claims no strength and no road approval.
type Certificate struct {
	Number    string // as stamped
	Job       ID
	Seq       int64  // the last entry that it covers
	Hash      string // of that entry
	Key       string // fingerprint of the shop's public key
	Signature string // base64url, over the lines above it in Text
}

const certificateTitle = "Axlewright certificate 1"

// message is what is signed: six lines.
func (c Certificate) message() string {
	return fmt.Sprintf("%s\nnumber %s\njob %s\nentry %d\nhash %s\nkey %s\n", certificateTitle, c.Number, c.Job, c.Seq, c.Hash, c.Key)
}

// Text is the content of the certificate's square code, see RECORD.md.
func (c Certificate) Text() string { return c.message() + "signature " + c.Signature }

// ReadCertificate reads the text of a square code. It verifies nothing.
func ReadCertificate(text string) (Certificate, error) {
	bad := Fault(Invalid, "This is not the text of a certificate.").At("text")
	lines := strings.Split(strings.TrimSpace(strings.ReplaceAll(text, "\r\n", "\n")), "\n")
	if len(lines) != 7 || lines[0] != certificateTitle {
		return Certificate{}, bad
	}
	var c Certificate
	var entry string
	into := []*string{&c.Number, (*string)(&c.Job), &entry, &c.Hash, &c.Key, &c.Signature}
	for i, name := range []string{"number", "job", "entry", "hash", "key", "signature"} {
		value, ok := strings.CutPrefix(lines[i+1], name+" ")
		if !ok {
			return Certificate{}, bad
		}
		*into[i] = value
	}
	seq, err := strconv.ParseInt(entry, 10, 64)
	if err != nil || seq < 1 || strconv.FormatInt(seq, 10) != entry || !c.Job.Valid() {
		return Certificate{}, bad
	}
	c.Seq = seq
	return c, nil
}

// VerifyCertificate says whether the holder of the key signed the certificate.
// It needs nothing but the printed key.
func VerifyCertificate(text string, key PublicKey) (Certificate, error) {
	c, err := ReadCertificate(text)
	if err != nil {
		return c, err
	}
	if _, err := key.bytes(); err != nil {
		return c, err
	}
	if c.Key != key.Fingerprint() || !key.signed(c.message(), c.Signature) {
		return c, Fault(Damaged, "The signature is not of this key: the certificate was altered, or another shop gave it.").At("signature")
	}
	return c, nil
}

// Witness is the certificate as Verify takes it.
func (c Certificate) Witness() Head { return Head{c.Seq, c.Hash} }

// Certify signs the record as it stands, with the shop's key, and writes the
// certificate into it. A number must be stamped, no stop may stand that keeps the
// unit back (OutStops) and no reading be in question; where something is not in
// the record, why says for what reason it is signed.
func (s *Shop) Certify(ctx context.Context, by Actor, job ID, why string) (Certificate, error) {
	var c Certificate
	if err := firstFault(by.Must(ActCertify), lengthOf("why", why, 1000)); err != nil {
		return c, err
	}
	_, err := s.change(ctx, by, job, func(_ Tx, j *Job) ([]Entry, error) {
		number := j.Standing(slotStamped)
		if number == nil {
			return nil, Fault(Invalid, "Stamp a number first: the certificate is found by it.").At(slotStamped.String())
		}
		if j.Origin.ID != s.id {
			return nil, Fault(Forbidden, "This unit was built by another shop, which certifies it.")
		}
		if err := j.mayBeCertified(Slot{"handover", string(EntryCertificate), ""}, why); err != nil {
			return nil, err
		}
		c = Certificate{Number: strings.TrimSpace(number.Value.Text), Job: j.ID, Seq: j.Head.Seq, Hash: j.Head.Hash, Key: s.key.public.Fingerprint()}
		c.Signature = s.key.sign(c.message())
		return []Entry{{Kind: EntryCertificate, Step: "handover", Item: string(EntryCertificate), Why: why,
			Place: j.nextPlace("handover", string(EntryCertificate)), Value: Value{Text: c.Text()}}}, nil
	})
	return c, err
}

// Certificates returns the certificates of the job, oldest first.
func (j *Job) Certificates() []Certificate {
	var all []Certificate
	for _, e := range j.Kept(EntryCertificate) {
		if c, err := ReadCertificate(e.Value.Text); err == nil {
			all = append(all, c)
		}
	}
	return all
}

// Certified says whether one of the job's certificates covers what first stood in
// a place. What was filled after them, such as a return, it does not.
func (j *Job) Certified(s Slot) bool {
	at := j.places[s]
	return len(at) > 0 && slices.ContainsFunc(j.Certificates(), func(c Certificate) bool { return j.entries[at[0]].Seq <= c.Seq })
}

// A Check is what there is to say of a certificate that somebody holds.
type Check struct {
	Certificate Certificate
	Signed      bool      // by this shop's key
	Job         *Job      // nil where this shop has no such record
	Findings    []Finding // what is wrong with the record, the certificate's hash among its witnesses
	Since       int       // entries written after the certificate
}

// CheckCertificate verifies the text of a certificate against this shop's key
// and record.
func (s *Shop) CheckCertificate(ctx context.Context, text string) (Check, error) {
	c, err := ReadCertificate(text)
	if err != nil {
		return Check{}, err
	}
	check := Check{Certificate: c}
	_, err = VerifyCertificate(text, s.key.public)
	check.Signed = err == nil
	err = s.store.View(ctx, func(tx Tx) error {
		j, err := readJob(tx, c.Job)
		if err != nil {
			return ignore(err, NotFound)
		}
		check.Job, check.Findings = j, Verify(c.Job, j.sealed, j.Head, c.Witness())
		check.Since = len(j.sealed) - int(c.Seq)
		return nil
	})
	return check, err
}
