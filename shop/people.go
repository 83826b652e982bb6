package shop

import (
	"context"
	"strings"
	"unicode/utf8"
)

// FirstOwner is the ID of the owner whom every new shop has.
const FirstOwner ID = "owner"

// secretKey is where a person's hashed PIN or password is kept.
func secretKey(person ID) string { return "secret." + string(person) }

// actor is the person as one who acts.
func (p Person) actor() Actor { return Actor{p.ID, p.Name, p.Role} }

// Alone returns the only owner of a shop in which nobody has a PIN or password
// yet: the bench on one computer, which nobody else can reach. It is SignIn as
// soon as anybody has one.
func (s *Shop) Alone(ctx context.Context) (Actor, error) {
	protected, err := s.Protected(ctx)
	if err != nil {
		return Actor{}, err
	}
	if protected {
		return Actor{}, Fault(SignIn, "Sign in first.")
	}
	people, _, err := List[Person](ctx, s, CardQuery{Group: string(RoleOwner)})
	if err != nil {
		return Actor{}, err
	}
	for _, p := range people {
		return p.actor(), nil
	}
	return Actor{}, Fault(NotFound, "This shop has no owner.")
}

// Protected says whether anybody has a PIN or password. A shop that is not
// protected must not be reached over a network.
func (s *Shop) Protected(ctx context.Context) (bool, error) {
	protected := false
	err := s.store.View(ctx, func(tx Tx) error {
		keys, err := tx.Settings()
		for _, k := range keys {
			protected = protected || strings.HasPrefix(k, secretKey(""))
		}
		return err
	})
	return protected, err
}

// SetSecret gives a person a new PIN or password and ends the person's
// sessions. Everybody may change the own one, the owner everybody's.
func (s *Shop) SetSecret(ctx context.Context, by Actor, person ID, secret string) error {
	if err := by.mustBe(person); err != nil {
		return err
	}
	if err := checkSecret(secret); err != nil {
		return err
	}
	hash, err := hashSecret(secret)
	if err != nil {
		return err
	}
	return s.store.Update(ctx, func(tx Tx) error {
		if _, err := getSheet[Person](tx, person); err != nil {
			return err
		}
		if err := tx.PutSetting(secretKey(person), []byte(hash)); err != nil {
			return err
		}
		return s.dropSessions(tx, person)
	})
}

// HasSecret says whether the person has a PIN or password.
func (s *Shop) HasSecret(ctx context.Context, person ID) (bool, error) {
	has := false
	err := s.store.View(ctx, func(tx Tx) error {
		hash, err := tx.Setting(secretKey(person))
		has = hash != nil
		return err
	})
	return has, err
}

// checkSecret demands a PIN of six digits, or a password of eight characters.
func checkSecret(secret string) error {
	digits := strings.IndexFunc(secret, func(r rune) bool { return r < '0' || r > '9' }) < 0
	n := utf8.RuneCountInString(secret)
	switch {
	case !utf8.ValidString(secret) || n > 200:
		return Fault(Invalid, "A password has at most 200 characters.").At("secret")
	case digits && n < 6:
		return Fault(Invalid, "A PIN has 6 digits at least.").At("secret")
	case !digits && n < 8:
		return Fault(Invalid, "A password has 8 characters at least.").At("secret")
	case digits && simplePIN(secret):
		return Fault(Invalid, "This PIN is the first that anybody would try.").At("secret")
	}
	return nil
}

// simplePIN finds 000000, 123456, 987654 and the like.
func simplePIN(pin string) bool {
	same, up, down := true, true, true
	for i := 1; i < len(pin); i++ {
		step := int(pin[i]) - int(pin[i-1])
		same, up, down = same && step == 0, up && (step == 1 || step == -9), down && (step == -1 || step == 9)
	}
	return same || up || down
}

// keepAnOwner refuses the change that would leave nobody who may change anything.
func keepAnOwner(tx Tx, next *Person) error {
	if next.Role == RoleOwner && !next.Retired {
		return nil
	}
	page, err := tx.FindCards(CardQuery{Kind: KindPerson, Group: string(RoleOwner)})
	if err != nil {
		return err
	}
	for _, c := range page.Cards {
		if c.ID != next.ID {
			return nil
		}
	}
	if _, err := tx.Card(KindPerson, next.ID); CodeOf(err) == NotFound {
		return nil // a new person takes nothing away
	}
	return Fault(Invalid, "A shop has one owner at least.").At("role")
}
