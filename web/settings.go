package web

import (
	"net/url"
	"slices"
	"strconv"
	"strings"

	"axlewright/quantity"
	"axlewright/shop"
)

// settingsPage shows the shop itself.
func settingsPage(v *visit) error {
	house, err := shop.Get[shop.House](v.ctx(), v.shop, shop.HouseID)
	if err != nil {
		return err
	}
	f := v.frame("The shop").at("settings")
	f.Live = true
	return v.show(settingsSheet(f, house, v.who, string(v.shop.PublicKey()), v.shop.Store().About(), v.o.Authority != nil, v.safe()))
}

// saveHouse keeps the shop's name, address and terms.
func saveHouse(v *visit) error {
	form, err := v.form()
	if err != nil {
		return err
	}
	house, err := v.house(form)
	if err != nil {
		return err
	}
	house.Name, house.Address, house.Phone = form.Get("name"), form.Get("address"), form.Get("phone")
	house.Mail, house.Country, house.Terms = form.Get("mail"), form.Get("country"), strings.ReplaceAll(form.Get("terms"), "\r\n", "\n")
	if _, err := shop.Save(v.ctx(), v.shop, v.who, house); err != nil {
		return err
	}
	return v.see("/settings")
}

// house reads the shop's card as the form saw it.
func (v *visit) house(form url.Values) (shop.House, error) {
	house, err := shop.Get[shop.House](v.ctx(), v.shop, shop.HouseID)
	if err == nil {
		house.Revision, err = revisionOf(form)
	}
	return house, err
}

// A personShow is a person and whether they can sign in.
type personShow struct {
	shop.Person
	HasPIN bool
}

// peoplePage shows who works here and who is signed in.
func peoplePage(v *visit) error {
	people, _, err := shop.List[shop.Person](v.ctx(), v.shop, shop.CardQuery{Retired: true})
	if err != nil {
		return err
	}
	var all []personShow
	for _, p := range people {
		has, err := v.shop.HasSecret(v.ctx(), p.ID)
		if err != nil {
			return err
		}
		all = append(all, personShow{p, has})
	}
	var sessions []shop.Session
	if v.who.Role.May(shop.ActSettings) {
		if sessions, err = v.shop.Sessions(v.ctx(), v.who); err != nil {
			return err
		}
	}
	return v.show(peopleSheet(v.frame("People").at("settings"), all, sessions, v.who))
}

// savePerson makes a person, or changes name, role or whether they work here.
func savePerson(v *visit) error {
	form, err := v.form()
	if err != nil {
		return err
	}
	p := shop.Person{Meta: shop.Meta{ID: shop.ID(form.Get("id"))}}
	p.Revision, _ = strconv.ParseInt(form.Get("revision"), 10, 64)
	p.Retired = form.Get("retired") != ""
	p.Name, p.Role = strings.TrimSpace(form.Get("name")), shop.Role(form.Get("role"))
	if _, err := shop.Save(v.ctx(), v.shop, v.who, p); err != nil {
		return err
	}
	return v.see("/settings/people")
}

// setSecret gives a person a new PIN. Whoever changes the own one stays signed in.
func setSecret(v *visit) error {
	form, err := v.form()
	if err != nil {
		return err
	}
	person := shop.ID(form.Get("id"))
	if form.Get("secret") != form.Get("again") {
		return shop.Fault(shop.Invalid, "The two PINs differ.")
	}
	protected, err := v.shop.Protected(v.ctx())
	if err != nil {
		return err
	}
	// The first PIN closes the door: it must be the owner's, or nobody gets in.
	if !protected && person != v.who.ID {
		return shop.Fault(shop.Invalid, "Give yourself a PIN first: as soon as anybody has one, everybody signs in.")
	}
	if err := v.shop.SetSecret(v.ctx(), v.who, person, form.Get("secret")); err != nil {
		return err
	}
	if person == v.who.ID {
		token, _, err := v.shop.SignIn(v.ctx(), person, form.Get("secret"), v.from(), v.r.UserAgent())
		if err != nil {
			return err
		}
		v.keepToken(token)
	}
	return v.see("/settings/people")
}

// signOutAll ends all sessions of a person, such as those of a lost tablet.
func signOutAll(v *visit) error {
	form, err := v.form()
	if err != nil {
		return err
	}
	if err := v.shop.SignOutAll(v.ctx(), v.who, shop.ID(form.Get("id"))); err != nil {
		return err
	}
	return v.see("/settings/people")
}

// A specShow is a limit of the shop's own.
type specShow struct {
	Of    string // the variant, or "every variant"
	Card  shop.ID
	Rev   int64
	Index int
	For   string // the reading
	Dim   quantity.Dimension
	Limit shop.Limit
}

// limitsPage shows the shop's own limits, each with the page it stands on.
func limitsPage(v *visit) error {
	house, err := shop.Get[shop.House](v.ctx(), v.shop, shop.HouseID)
	if err != nil {
		return err
	}
	castings, _, err := shop.List[shop.Casting](v.ctx(), v.shop, shop.CardQuery{Limit: 1000})
	if err != nil {
		return err
	}
	all := specsOf("every variant", shop.HouseID, house.Revision, house.Specs)
	for _, c := range castings {
		all = append(all, specsOf(c.Name, c.ID, c.Revision, c.Specs)...)
	}
	return v.show(limitsSheet(v.frame("Own limits").at("settings"), all, castings, v.who.Role.May(shop.ActSettings)))
}

func specsOf(of string, card shop.ID, rev int64, specs []shop.Spec) []specShow {
	var all []specShow
	for i, s := range specs {
		show := specShow{Of: of, Card: card, Rev: rev, Index: i, Limit: s.Limit}
		f, _ := shop.FieldOf(s.Step, s.Field)
		show.For, show.Dim = limitableTitle(shop.Limitable{Step: s.Step, Field: f, Item: s.Item}), f.Dim
		if s.Item != "" {
			show.Dim = s.Item.Dim()
		}
		all = append(all, show)
	}
	return all
}

// saveLimit adds a limit to the shop or to a variant, or takes one away.
func saveLimit(v *visit) error {
	form, err := v.form()
	if err != nil {
		return err
	}
	if form.Get("card") == string(shop.HouseID) {
		err = saveSpecs(v, form, func(h *shop.House) (*shop.Meta, *[]shop.Spec) { return &h.Meta, &h.Specs })
	} else {
		err = saveSpecs(v, form, func(c *shop.Casting) (*shop.Meta, *[]shop.Spec) { return &c.Meta, &c.Specs })
	}
	if err != nil {
		return err
	}
	return v.see("/settings/limits")
}

// saveSpecs changes the limits of the card that the form names. A form that takes
// one away counts lines, so it must have seen the card as it stands.
func saveSpecs[T any, P shop.Sheet[T]](v *visit, form url.Values, of func(P) (*shop.Meta, *[]shop.Spec)) error {
	sheet, err := shop.Get[T, P](v.ctx(), v.shop, shop.ID(form.Get("card")))
	if err != nil {
		return err
	}
	meta, specs := of(&sheet)
	if form.Get("drop") == "" {
		spec, err := specOf(form)
		if err != nil {
			return err
		}
		*specs = append(*specs, spec)
	} else {
		i, err := strconv.Atoi(form.Get("drop"))
		if err != nil || i < 0 || i >= len(*specs) {
			return shop.Fault(shop.NotFound, "There is no such limit.")
		}
		if meta.Revision, err = revisionOf(form); err != nil {
			return err
		}
		*specs = slices.Delete(*specs, i, i+1)
	}
	_, err = shop.Save[T, P](v.ctx(), v.shop, v.who, sheet)
	return err
}

// revisionOf is the revision of the card that the form was filled from.
func revisionOf(form url.Values) (int64, error) {
	n, err := strconv.ParseInt(form.Get("revision"), 10, 64)
	if err != nil {
		return 0, shop.Fault(shop.Invalid, "The form is not whole: load the page again.")
	}
	return n, nil
}

// specOf reads a limit; where it is from must be said.
func specOf(form url.Values) (shop.Spec, error) {
	all := shop.Limitables()
	i := slices.IndexFunc(all, func(l shop.Limitable) bool { return limitableKey(l) == form.Get("field") })
	if i < 0 {
		return shop.Spec{}, shop.Fault(shop.Invalid, "Choose the reading that the limit is for.")
	}
	x := all[i]
	dim, unit := x.Field.Dim, x.Field.Unit
	if x.Item != "" {
		dim, unit = x.Item.Dim(), map[quantity.Dimension]string{quantity.Length: "mm", quantity.Torque: "N·m", quantity.Angle: "deg"}[x.Item.Dim()]
	}
	s := shop.Spec{Step: x.Step, Field: x.Field.Key, Item: x.Item, Limit: shop.Limit{Origin: shop.Origin(form.Get("origin")), Source: strings.TrimSpace(form.Get("source")), Hard: form.Get("hard") != ""}}
	if s.Limit.Origin != shop.Maker && s.Limit.Origin != shop.Measured {
		return s, shop.Fault(shop.Invalid, "Say whether the limit is the maker’s or the shop’s own.")
	}
	for name, end := range map[string]**float64{"low": &s.Limit.Low, "high": &s.Limit.High} {
		text := strings.TrimSpace(form.Get(name))
		if text == "" {
			continue
		}
		q, err := quantity.Parse(withUnit(text, unit), dim)
		if err != nil {
			return s, err
		}
		*end = &q.SI
	}
	s.Limit.Typed = strings.TrimSpace(form.Get("low") + " to " + form.Get("high"))
	return s, nil
}

// limitableKey names what a limit is for within a form.
func limitableKey(l shop.Limitable) string {
	if l.Item != "" {
		return string(l.Item)
	}
	return string(l.Step) + "/" + l.Field.Key
}

// limitableTitle is what a limit is for, to be read.
func limitableTitle(l shop.Limitable) string {
	if l.Item != "" {
		return "Setting-up: " + string(l.Item)
	}
	return titleOf(l.Step) + ": " + l.Field.Title
}
