package shop_test

import (
	"crypto/ed25519"
	"encoding/base64"
	"strings"
	"testing"

	"axlewright/quantity"
	"axlewright/shop"
	"axlewright/shop/shoptest"
)

func stamped(b *shoptest.Bench) *shop.Job {
	b.T.Helper()
	return b.Write(b.Open().ID, "stamp", "number", "", shop.Text("0117-T24"))
}

func TestACertificateIsVerifiedWithThePrintedKeyAlone(t *testing.T) {
	b := bench(t)
	j := stamped(b)
	c, err := b.Shop.Certify(b.Ctx, b.Builder, j.ID, "the rest was not ordered")
	if err != nil {
		t.Fatal(err)
	}
	text, key := c.Text(), b.Shop.PublicKey()
	if n := len(text); n > 300 {
		t.Errorf("%d letters are much for a square code", n)
	}
	got, err := shop.VerifyCertificate(text, key)
	if err != nil || got != c || got.Number != "0117-T24" || got.Seq != j.Head.Seq || got.Hash != j.Head.Hash {
		t.Errorf("verified %+v %v", got, err)
	}
	// A scanner may change line ends and add one.
	if _, err := shop.VerifyCertificate(strings.ReplaceAll(text, "\n", "\r\n")+"\r\n", key); err != nil {
		t.Errorf("with other line ends: %v", err)
	}

	// As RECORD.md says, with nothing of this package: Ed25519 over six lines.
	at := strings.LastIndex(text, "signature ")
	public, err1 := base64.RawURLEncoding.DecodeString(string(key))
	sig, err2 := base64.RawURLEncoding.DecodeString(text[at+len("signature "):])
	if err1 != nil || err2 != nil || len(public) != 32 || len(sig) != 64 || !ed25519.Verify(public, []byte(text[:at]), sig) {
		t.Error("it cannot be verified as RECORD.md says")
	}

	other := bench(t)
	for name, c := range map[string]struct {
		text string
		key  shop.PublicKey
		want shop.Code
	}{
		"another number":    {strings.Replace(text, "0117-T24", "0118-T24", 1), key, shop.Damaged},
		"another hash":      {strings.Replace(text, c.Hash[:8], "00000000", 1), key, shop.Damaged},
		"another entry":     {strings.Replace(text, "entry ", "entry 1", 1), key, shop.Damaged},
		"another shop":      {text, other.Shop.PublicKey(), shop.Damaged},
		"no key":            {text, "nonsense", shop.Invalid},
		"a line missing":    {strings.Replace(text, "key ", "keys ", 1), key, shop.Invalid},
		"a line too many":   {text + "\nmore", key, shop.Invalid},
		"a strange number":  {strings.Replace(text, "entry ", "entry 0", 1), key, shop.Invalid},
		"nothing":           {"", key, shop.Invalid},
		"another signature": {text[:len(text)-4] + "AAAA", key, shop.Damaged},
	} {
		if _, err := shop.VerifyCertificate(c.text, c.key); shop.CodeOf(err) != c.want {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
}

func TestCheckingACertificateAgainstTheRecord(t *testing.T) {
	b := bench(t)
	j := stamped(b)
	c, err := b.Shop.Certify(b.Ctx, b.Builder, j.ID, "the rest was not ordered")
	if err != nil {
		t.Fatal(err)
	}
	b.Write(j.ID, "return", "complaint", "", shop.Text("whines on overrun"))
	check, err := b.Shop.CheckCertificate(b.Ctx, c.Text())
	if err != nil || !check.Signed || check.Job == nil || len(check.Findings) > 0 || check.Since != 2 {
		t.Errorf("check %+v %v", check, err)
	}
	// One that names another hash is not of this record.
	forged := strings.Replace(c.Text(), c.Hash[:8], "00000000", 1)
	check, err = b.Shop.CheckCertificate(b.Ctx, forged)
	if err != nil || check.Signed || len(check.Findings) != 1 {
		t.Errorf("forged: %+v %v", check, err)
	}
	// Another shop's is not known here.
	check, err = bench(t).Shop.CheckCertificate(b.Ctx, c.Text())
	if err != nil || check.Signed || check.Job != nil {
		t.Errorf("elsewhere: %+v %v", check, err)
	}
}

func TestWhatIsNotCertified(t *testing.T) {
	b := bench(t)
	j := b.Open(shop.WorkPeg)
	certify := func(by shop.Actor) error {
		_, err := b.Shop.Certify(b.Ctx, by, j.ID, "the rest was not ordered")
		return err
	}
	wantCode(t, certify(b.Owner), shop.Invalid) // no number
	b.Write(j.ID, "stamp", "number", "", shop.Text("0117"))
	wantCode(t, certify(b.Adviser), shop.Forbidden)
	b.Write(j.ID, "peg", "touches", "", shop.Words(shop.PegTouches))
	wantCode(t, certify(b.Owner), shop.Stopped)
	b.Write(j.ID, "peg", "touches", "", shop.Words(shop.PegClear))
	if err := certify(b.Owner); err != nil {
		t.Error(err)
	}
	// From now on a change needs a reason.
	j, err := b.Shop.Job(b.Ctx, j.ID)
	if err != nil {
		t.Fatal(err)
	}
	set := b.Set("peg", "touches", "", shop.Words(shop.PegTouches))
	set.Corrects = j.Last(set.Slot).Seq
	_, err = b.Shop.Record(b.Ctx, b.Owner, j.ID, set)
	wantCode(t, err, shop.Invalid)
	set.Why = "felt it at the second look"
	if _, err = b.Shop.Record(b.Ctx, b.Owner, j.ID, set); err != nil {
		t.Error(err)
	}
}

// A reason is asked for where a certificate covers what is changed, and not for
// what was written after it: the return of the unit, say.
func TestReasonsAfterACertificate(t *testing.T) {
	b := bench(t)
	j := stamped(b)
	if _, err := b.Shop.Certify(b.Ctx, b.Builder, j.ID, "the rest was not ordered"); err != nil {
		t.Fatal(err)
	}
	correct := func(step shop.StepKey, item, text string) error {
		t.Helper()
		now, err := b.Shop.Job(b.Ctx, j.ID)
		if err != nil {
			t.Fatal(err)
		}
		set := b.Set(step, item, "", shop.Text(text))
		if last := now.Last(set.Slot); last != nil {
			set.Corrects = last.Seq
		}
		_, err = b.Shop.Record(b.Ctx, b.Builder, j.ID, set)
		return err
	}
	if err := correct("stamp", "number", "0118-T24"); shop.CodeOf(err) != shop.Invalid {
		t.Errorf("a certified number was changed without a reason: %v", err)
	}
	for _, text := range []string{"it whines", "it whines at 50"} {
		if err := correct("return", "complaint", text); err != nil {
			t.Errorf("%q: %v", text, err)
		}
	}
}

// A stop keeps back only what it is about, and only until somebody answers for it.
func TestWhatDoesNotGoOut(t *testing.T) {
	b := bench(t)
	out := func(j *shop.Job, to shop.State) error {
		last := int64(0)
		if e := j.Last(shop.StateSlot()); e != nil {
			last = e.Seq
		}
		_, err := b.Shop.SetState(b.Ctx, b.Owner, j.ID, to, last, "the rest was not ordered")
		return err
	}
	if err := out(b.Open(), shop.StateOut); err != nil {
		t.Errorf("nothing is welded in a rebuild as standard: %v", err)
	}
	welded := b.Open(shop.WorkPlates)
	b.Write(welded.ID, "metal", "metal", "", shop.Words(shop.MetalDuctile))
	b.Write(welded.ID, "weld", "runs", "1", shop.Figure("3", 3, quantity.Number))
	welded = b.Write(welded.ID, "plates", "vents", "", shop.Words(shop.VentMissing)) // found out too late
	err := out(welded, shop.StateOut)
	wantCode(t, err, shop.Stopped)
	if says := err.Error(); !strings.Contains(says, "does not go out") || !strings.Contains(says, "a closed cavity has no vent") || !strings.Contains(says, "the owner override") {
		t.Error(says)
	}
	if err := out(welded, shop.StateReady); err != nil {
		t.Error(err)
	}
	welded, err = b.Shop.Override(b.Ctx, b.Owner, welded.ID, "vent", "opened and drained before the arc, photograph 3")
	if err != nil {
		t.Fatal(err)
	}
	if err := out(welded, shop.StateOut); err != nil {
		t.Error(err)
	}
}

func TestOrderedIsNotDone(t *testing.T) {
	b := bench(t)
	j := b.Open(shop.WorkPeg, shop.WorkPlates)
	j = b.Write(j.ID, "peg", "gap", "tight spot", shoptest.MM("0.2", 0.2))
	if !j.Done(shop.WorkPeg) || j.Done(shop.WorkPlates) || j.Done(shop.WorkBearing) {
		t.Error("what the record shows is not told from what was ordered")
	}
}

func TestPlacesAreReadRoundTheWheel(t *testing.T) {
	b := bench(t)
	j := b.Open()
	for _, place := range []string{"3", "1", "8", "2"} {
		j = b.Write(j.ID, "lash", "lash", place, shoptest.MM("0.15", 0.15))
	}
	order := ""
	for _, e := range j.InPlaces("lash", "lash") {
		order += e.Place
	}
	if order != "1238" {
		t.Errorf("order %s", order)
	}
}

// What the bench asked back and nobody answered is not signed as measured.
func TestAReadingInQuestionIsNotCertified(t *testing.T) {
	b := bench(t)
	j := stamped(b)
	b.Write(j.ID, "identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T24.ID))
	j = b.Write(j.ID, "lash", "lash", "3", shoptest.MM("1.5", 1.5))
	_, err := b.Shop.Certify(b.Ctx, b.Owner, j.ID, "the rest was not ordered")
	e := wantCode(t, err, shop.Invalid)
	for _, want := range []string{"Lash, Lash at the heel 3", "1.5 mm", "in question"} {
		if !strings.Contains(e.Says, want) {
			t.Errorf("%q does not say %q", e.Says, want)
		}
	}
	set := b.Set("lash", "lash", "3", shoptest.MM("1.5", 1.5))
	set.Value.Confirmed, set.Corrects = true, j.Last(set.Slot).Seq
	if _, err := b.Shop.Record(b.Ctx, b.Owner, j.ID, set); err != nil {
		t.Fatal(err)
	}
	if _, err := b.Shop.Certify(b.Ctx, b.Owner, j.ID, "the rest was not ordered"); err != nil {
		t.Errorf("answered: %v", err)
	}
}

// An unfinished build is signed and handed over only with a reason, under a name.
func TestGapsWantAReason(t *testing.T) {
	b := bench(t)
	j := stamped(b)
	_, err := b.Shop.Certify(b.Ctx, b.Owner, j.ID, " ")
	if e := wantCode(t, err, shop.Invalid); !strings.Contains(e.Says, "contact pattern") || !strings.Contains(e.Says, "Not in the record") {
		t.Error(e.Says)
	}
	_, err = b.Shop.SetState(b.Ctx, b.Owner, j.ID, shop.StateOut, 0, "")
	if e := wantCode(t, err, shop.Invalid); !strings.Contains(e.Says, "contact pattern") {
		t.Error(e.Says)
	}
	if _, err := b.Shop.Certify(b.Ctx, b.Owner, j.ID, "set up by the customer"); err != nil {
		t.Fatal(err)
	}
	j, err = b.Shop.SetState(b.Ctx, b.Owner, j.ID, shop.StateOut, 0, "set up by the customer")
	if err != nil {
		t.Fatal(err)
	}
	if given := j.Kept(shop.EntryCertificate); len(given) != 1 || given[0].Why != "set up by the customer" || given[0].Who.Name != b.Owner.Name {
		t.Errorf("the record has %+v", given)
	}
	// Ordered plates with the metal not known: said before anything was welded.
	plates := b.Open(shop.WorkPlates)
	_, err = b.Shop.SetState(b.Ctx, b.Owner, plates.ID, shop.StateOut, 0, "")
	if e := wantCode(t, err, shop.Invalid); !strings.Contains(e.Says, "grey iron or not known") {
		t.Error(e.Says)
	}
}
