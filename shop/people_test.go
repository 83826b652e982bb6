package shop_test

import (
	"strings"
	"sync"
	"testing"
	"time"

	"axlewright/shop"
	"axlewright/shop/shoptest"
)

func TestANewShopHasOneOwnerWithoutPassword(t *testing.T) {
	b := bench(t)
	owner, err := b.Shop.Alone(b.Ctx)
	if err != nil || owner.Role != shop.RoleOwner || owner.ID != shop.FirstOwner {
		t.Fatalf("alone: %+v %v", owner, err)
	}
	if protected, err := b.Shop.Protected(b.Ctx); err != nil || protected {
		t.Errorf("protected: %v %v", protected, err)
	}
	// As soon as anybody has a PIN, nobody acts without signing in.
	if err := b.Shop.SetSecret(b.Ctx, b.Owner, b.Builder.ID, "190287"); err != nil {
		t.Fatal(err)
	}
	_, err = b.Shop.Alone(b.Ctx)
	wantCode(t, err, shop.SignIn)
}

func TestSecretsThatAreRefused(t *testing.T) {
	b := bench(t)
	for _, bad := range []string{"", "12345", "000000", "123456", "654321", "890123", "098765", "short", "\xff\xff\xff\xff\xff\xff\xff\xff", strings.Repeat("x", 201)} {
		err := b.Shop.SetSecret(b.Ctx, b.Owner, b.Builder.ID, bad)
		if e := wantCode(t, err, shop.Invalid); e.Field != "secret" {
			t.Errorf("%q: field %q", bad, e.Field)
		}
	}
	for _, good := range []string{"190287", "eight ch", "מפתח סודי 12"} {
		if err := b.Shop.SetSecret(b.Ctx, b.Owner, b.Builder.ID, good); err != nil {
			t.Errorf("%q: %v", good, err)
		}
	}
	wantCode(t, b.Shop.SetSecret(b.Ctx, b.Builder, b.Owner.ID, "190287"), shop.Forbidden)
	wantCode(t, b.Shop.SetSecret(b.Ctx, shop.Actor{}, "", "190287"), shop.SignIn)
	wantCode(t, b.Shop.SetSecret(b.Ctx, b.Owner, "nobody", "190287"), shop.NotFound)
	if err := b.Shop.SetSecret(b.Ctx, b.Reader, b.Reader.ID, "190287"); err != nil {
		t.Errorf("the own one: %v", err)
	}
}

func TestSigningIn(t *testing.T) {
	b := bench(t)
	set := func(secret string) {
		t.Helper()
		if err := b.Shop.SetSecret(b.Ctx, b.Owner, b.Builder.ID, secret); err != nil {
			t.Fatal(err)
		}
	}
	set("190287")
	token, who, err := b.Shop.SignIn(b.Ctx, b.Builder.ID, "190287", "10.0.0.2", "tablet\x00 3")
	if err != nil || who != b.Builder {
		t.Fatalf("signed in as %+v: %v", who, err)
	}
	again, err := b.Shop.Who(b.Ctx, token)
	if err != nil || again != b.Builder {
		t.Errorf("the session is %+v's: %v", again, err)
	}
	// The store does not know the token, nor the PIN.
	err = b.Store.View(b.Ctx, func(tx shop.Tx) error {
		sessions, err := tx.Sessions()
		if len(sessions) != 1 || strings.Contains(sessions[0].TokenHash, token) || sessions[0].Device != "tablet 3" {
			t.Errorf("sessions %+v", sessions)
		}
		secret, _ := tx.Setting("secret." + string(b.Builder.ID))
		if !strings.HasPrefix(string(secret), "$argon2id$v=19$m=19456,t=2,p=1$") || strings.Contains(string(secret), "190287") {
			t.Errorf("the secret is kept as %q", secret)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, bad := range []string{"", "x", token + "x", token[1:]} {
		_, err := b.Shop.Who(b.Ctx, bad)
		wantCode(t, err, shop.SignIn)
	}

	// It ends when it is not used for a week, is kept alive by use, and ends in
	// any case after a quarter of a year.
	for range 17 {
		b.Clock.Move(5 * 24 * time.Hour)
		if _, err := b.Shop.Who(b.Ctx, token); err != nil {
			t.Fatalf("in use: %v", err)
		}
	}
	b.Clock.Move(6 * 24 * time.Hour)
	_, err = b.Shop.Who(b.Ctx, token)
	wantCode(t, err, shop.SignIn)
	sign := func() string {
		t.Helper()
		token, _, err := b.Shop.SignIn(b.Ctx, b.Builder.ID, "190287", "10.0.0.2", "")
		if err != nil {
			t.Fatal(err)
		}
		return token
	}
	token = sign()
	b.Clock.Move(8 * 24 * time.Hour)
	_, err = b.Shop.Who(b.Ctx, token)
	wantCode(t, err, shop.SignIn)

	// Signing out, a new PIN, being put away: all end it.
	one, two := sign(), sign()
	if err := b.Shop.SignOut(b.Ctx, one); err != nil {
		t.Fatal(err)
	}
	_, err = b.Shop.Who(b.Ctx, one)
	wantCode(t, err, shop.SignIn)
	if _, err = b.Shop.Who(b.Ctx, two); err != nil {
		t.Errorf("the other session: %v", err)
	}
	set("190287")
	_, err = b.Shop.Who(b.Ctx, two)
	wantCode(t, err, shop.SignIn)
	three := sign()
	p, err := shop.Get[shop.Person](b.Ctx, b.Shop, b.Builder.ID)
	if err != nil {
		t.Fatal(err)
	}
	p.Retired = true
	if _, err := shop.Save(b.Ctx, b.Shop, b.Owner, p); err != nil {
		t.Fatal(err)
	}
	_, err = b.Shop.Who(b.Ctx, three)
	wantCode(t, err, shop.SignIn)
	_, _, err = b.Shop.SignIn(b.Ctx, b.Builder.ID, "190287", "10.0.0.2", "")
	wantCode(t, err, shop.SignIn)
}

func TestWrongTriesAreSlowedDown(t *testing.T) {
	b := bench(t)
	if err := b.Shop.SetSecret(b.Ctx, b.Owner, b.Builder.ID, "190287"); err != nil {
		t.Fatal(err)
	}
	try := func(secret, from string) error {
		_, _, err := b.Shop.SignIn(b.Ctx, b.Builder.ID, secret, from, "")
		return err
	}
	for range 4 {
		wantCode(t, try("wrong", "10.0.0.2"), shop.SignIn)
	}
	e := wantCode(t, try("190287", "10.0.0.3"), shop.TooMany) // even the right one, from anywhere
	if e.Wait <= 0 || e.Wait > 15*time.Minute {
		t.Errorf("to wait: %v", e.Wait)
	}
	waited := time.Duration(0)
	for range 12 {
		b.Clock.Move(e.Wait + time.Second)
		waited += e.Wait
		wantCode(t, try("wrong", "10.0.0.2"), shop.SignIn)
		e = wantCode(t, try("190287", "10.0.0.2"), shop.TooMany)
	}
	// At a quarter of an hour a try, a million PINs take 28 years.
	if e.Wait < 14*time.Minute {
		t.Errorf("after 16 wrong tries the wait is %v", e.Wait)
	}
	b.Clock.Move(e.Wait + time.Second)
	if err := try("190287", "10.0.0.2"); err != nil {
		t.Errorf("having waited: %v", err)
	}
	wantCode(t, try("wrong", "10.0.0.2"), shop.SignIn) // and it begins anew

	// Many at once do not slip through, and an address is slowed whatever the name.
	var mu sync.Mutex
	looked := 0
	var wg sync.WaitGroup
	for range 40 {
		wg.Go(func() {
			_, _, err := b.Shop.SignIn(b.Ctx, shop.NewID(), "190287", "10.0.0.9", "")
			if shop.CodeOf(err) == shop.SignIn {
				mu.Lock()
				looked++
				mu.Unlock()
			}
		})
	}
	wg.Wait()
	if looked > 14 {
		t.Errorf("%d of 40 tries from one address were looked at", looked)
	}
}

func TestWhoMayDoWhat(t *testing.T) {
	b := bench(t)
	j := b.Open()
	lash := func(by shop.Actor) error {
		_, err := b.TryWrite(by, j.ID, "lash", "lash", "1", shoptest.MM("0.15", 0.15))
		return err
	}
	deal := func(by shop.Actor) error {
		_, err := b.TryWrite(by, j.ID, "deal", "price", "", shop.Sum(120_000))
		return err
	}
	open := func(by shop.Actor) error { _, err := b.Shop.OpenJob(b.Ctx, by, ""); return err }
	donor := func(by shop.Actor) error {
		_, err := shop.Save(b.Ctx, b.Shop, by, shop.Donor{Number: "D-20", Class: "B", State: shop.DonorDirty})
		return err
	}
	prices := func(by shop.Actor) error { _, err := b.Shop.Prices(b.Ctx, by); return err }
	person := func(by shop.Actor) error {
		_, err := shop.Save(b.Ctx, b.Shop, by, shop.Person{Name: "Alder", Role: shop.RoleReader})
		return err
	}
	sessions := func(by shop.Actor) error { _, err := b.Shop.Sessions(b.Ctx, by); return err }
	for name, c := range map[string]struct {
		do  func(shop.Actor) error
		may []shop.Role
	}{
		"a reading": {lash, []shop.Role{shop.RoleOwner, shop.RoleBuilder}},
		"a price":   {deal, []shop.Role{shop.RoleOwner, shop.RoleAdviser}},
		"a new job": {open, []shop.Role{shop.RoleOwner, shop.RoleAdviser}},
		"a donor":   {donor, []shop.Role{shop.RoleOwner, shop.RoleBuilder}},
		"prices":    {prices, []shop.Role{shop.RoleOwner, shop.RoleAdviser}},
		"a person":  {person, []shop.Role{shop.RoleOwner}},
		"who is in": {sessions, []shop.Role{shop.RoleOwner}},
	} {
		for _, by := range []shop.Actor{b.Owner, b.Builder, b.Adviser, b.Reader} {
			want := shop.Forbidden
			for _, r := range c.may {
				if r == by.Role {
					want = ""
				}
			}
			if got := shop.CodeOf(c.do(by)); got != want {
				t.Errorf("%s by %s: %q, want %q", name, by.Role, got, want)
			}
		}
		if got := shop.CodeOf(c.do(shop.Actor{})); got != shop.SignIn {
			t.Errorf("%s by nobody: %q", name, got)
		}
	}
}

func TestAShopKeepsAnOwner(t *testing.T) {
	b := bench(t)
	p, err := shop.Get[shop.Person](b.Ctx, b.Shop, b.Owner.ID)
	if err != nil {
		t.Fatal(err)
	}
	p.Role = shop.RoleReader
	_, err = shop.Save(b.Ctx, b.Shop, b.Owner, p)
	wantCode(t, err, shop.Invalid)
	if _, err = shop.Save(b.Ctx, b.Shop, b.Owner, shop.Person{Name: "Hazel", Role: shop.RoleOwner}); err != nil {
		t.Fatal(err)
	}
	if _, err = shop.Save(b.Ctx, b.Shop, b.Owner, p); err != nil {
		t.Errorf("with another owner: %v", err)
	}
}
