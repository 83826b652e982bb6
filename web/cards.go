package web

import (
	"encoding/json"
	"errors"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"axlewright/quantity"
	"axlewright/setup"
	"axlewright/shop"
)

// A cardKind says how a kind of card is shown and filled. The names of fields
// are those of the card's own JSON.
type cardKind struct {
	Kind   shop.CardKind
	Many   string // "customers"
	Fields []cardField
	load   func(*visit, shop.ID) (sheetText, error)
	save   func(*visit, sheetText) (shop.ID, error)
}

// A cardField is one line of a card.
type cardField struct {
	Name, Title, Hint string
	As                string // "", "long", "money", "number", "length", "choice", "card", "cards", "lines"
	Options           []string
	Card              shop.CardKind
	Wanted            bool
}

// A sheetText is a card between form and shop.
type sheetText struct {
	meta   shop.Meta
	fields map[string]any
}

// kindOf makes loading and saving of one type of card.
func kindOf[T any, P shop.Sheet[T]](many string, meta func(P) *shop.Meta, fields ...cardField) cardKind {
	return cardKind{Kind: P(new(T)).Kind(), Many: many, Fields: fields,
		load: func(v *visit, id shop.ID) (sheetText, error) {
			sheet, err := shop.Get[T, P](v.ctx(), v.shop, id)
			if err != nil {
				return sheetText{}, err
			}
			t := sheetText{meta: *meta(&sheet)}
			text, err := json.Marshal(sheet)
			if err == nil {
				err = json.Unmarshal(text, &t.fields)
			}
			return t, err
		},
		save: func(v *visit, t sheetText) (shop.ID, error) {
			var sheet T
			text, err := json.Marshal(t.fields)
			if err == nil {
				err = json.Unmarshal(text, &sheet)
			}
			if err != nil {
				return "", shop.Fault(shop.Invalid, "The card cannot be read: look at its numbers.").Because(err)
			}
			*meta(&sheet) = t.meta
			saved, err := shop.Save[T, P](v.ctx(), v.shop, v.who, sheet)
			return meta(&saved).ID, err
		},
	}
}

func words[T ~string](all []T) []string {
	var out []string
	for _, w := range all {
		out = append(out, string(w))
	}
	return out
}

// cardKindsShown are the cards that have a page here. People, prices and the
// house are under settings.
var cardKindsShown = []cardKind{
	kindOf("customers", func(c *shop.Customer) *shop.Meta { return &c.Meta },
		cardField{Name: "name", Title: "Name", Wanted: true}, cardField{Name: "phone", Title: "Telephone"}, cardField{Name: "mail", Title: "Mail"},
		cardField{Name: "address", Title: "Address", As: "long"}, cardField{Name: "country", Title: "Country"}, cardField{Name: "note", Title: "Note", As: "long"}),
	kindOf("vehicles", func(c *shop.Vehicle) *shop.Meta { return &c.Meta },
		cardField{Name: "title", Title: "What it is", Wanted: true, Hint: "hill-farm pick-up"}, cardField{Name: "customer", Title: "Customer", As: "card", Card: shop.KindCustomer},
		cardField{Name: "year", Title: "Year"}, cardField{Name: "registration", Title: "Registration"}, cardField{Name: "use", Title: "Use", As: "long"},
		cardField{Name: "note", Title: "Note", As: "long"}),
	kindOf("castings", func(c *shop.Casting) *shop.Meta { return &c.Meta },
		cardField{Name: "name", Title: "Variant", Wanted: true}, cardField{Name: "maker", Title: "Maker"}, cardField{Name: "catalogue", Title: "Its name in the catalogue of the sums"},
		cardField{Name: "axle_kind", Title: "Kind of axle", Hint: "picks among the trade’s ranges for setting-up", As: "choice", Options: words(setup.Kinds())},
		cardField{Name: "metal", Title: "Metal of the variant"}, cardField{Name: "metal_how", Title: "How that was found", As: "long"}, cardField{Name: "marks", Title: "What to look for", As: "long"},
		cardField{Name: "note", Title: "Note", As: "long"}),
	kindOf("plate kits", func(c *shop.Kit) *shop.Meta { return &c.Meta },
		cardField{Name: "name", Title: "Kit", Wanted: true}, cardField{Name: "note", Title: "Note", As: "long"}),
	kindOf("donors", func(c *shop.Donor) *shop.Meta { return &c.Meta },
		cardField{Name: "number", Title: "Number on its metal tag", Wanted: true}, cardField{Name: "casting", Title: "Variant", As: "card", Card: shop.KindCasting},
		cardField{Name: "class", Title: "Class", As: "choice", Options: shop.DonorClasses, Wanted: true},
		cardField{Name: "state", Title: "State", As: "choice", Options: words(shop.DonorStates), Wanted: true},
		cardField{Name: "source", Title: "From whom"}, cardField{Name: "came", Title: "Came on", As: "day"}, cardField{Name: "price", Title: "Price paid", As: "money"},
		cardField{Name: "teeth", Title: "Teeth, wheel / pinion"}, cardField{Name: "caps", Title: "Caps", Hint: "both, marked 7"}, cardField{Name: "core", Title: "Came back as a customer’s core", As: "yes"},
		cardField{Name: "place", Title: "Shelf"}, cardField{Name: "note", Title: "Note", As: "long"}),
	kindOf("lots", func(c *shop.Lot) *shop.Meta { return &c.Meta },
		cardField{Name: "lot_kind", Title: "Lot of", As: "choice", Options: words(shop.LotKinds), Wanted: true}, cardField{Name: "title", Title: "What it is", Wanted: true, Hint: "cap bolts M12 × 80 10.9"},
		cardField{Name: "batch", Title: "Batch, heat or maker’s lot"}, cardField{Name: "supplier", Title: "Supplier"}, cardField{Name: "came", Title: "Came on", As: "day"},
		cardField{Name: "expires", Title: "Last day of use", As: "day"}, cardField{Name: "quantity", Title: "How much came", As: "number", Wanted: true}, cardField{Name: "unit", Title: "Counted in", Hint: "pieces, kg, m", Wanted: true},
		cardField{Name: "cost", Title: "Cost of one", As: "money"}, cardField{Name: "reorder", Title: "Order again at", As: "number"}, cardField{Name: "thickness", Title: "Thickness, of shims", As: "length", Hint: "1.25 mm"},
		cardField{Name: "size", Title: "Size, of bearings", Hint: "bore × outside × width"}, cardField{Name: "kit", Title: "Kit, of plate kits", As: "card", Card: shop.KindKit}, cardField{Name: "kit_revision", Title: "Its revision"},
		cardField{Name: "papers", Title: "Its certificate"}, cardField{Name: "place", Title: "Shelf"}, cardField{Name: "note", Title: "Note", As: "long"}),
	kindOf("sheets", func(c *shop.Steel) *shop.Meta { return &c.Meta },
		cardField{Name: "name", Title: "Name", Wanted: true, Hint: "3 mm, heat 4417"}, cardField{Name: "grade", Title: "Steel", Wanted: true, Hint: "S700MC, S355"},
		cardField{Name: "thickness", Title: "Thickness", As: "length", Wanted: true, Hint: "3 mm"}, cardField{Name: "long", Title: "Long, the way it was rolled", As: "length", Wanted: true, Hint: "2500 mm"},
		cardField{Name: "wide", Title: "Wide", As: "length", Wanted: true, Hint: "1250 mm"}, cardField{Name: "count", Title: "How many", As: "number", Wanted: true},
		cardField{Name: "remnant", Title: "A remnant: used before whole sheets", As: "yes"}, cardField{Name: "price", Title: "Price of one", As: "money"},
		cardField{Name: "batch", Title: "Heat or mill lot"}, cardField{Name: "came", Title: "Came on", As: "day"}, cardField{Name: "place", Title: "Rack"}, cardField{Name: "note", Title: "Note", As: "long"}),
	kindOf("gauges", func(c *shop.Gauge) *shop.Meta { return &c.Meta },
		cardField{Name: "name", Title: "Instrument", Wanted: true, Hint: "dial gauge 3"}, cardField{Name: "checked", Title: "Checked on", As: "day"}, cardField{Name: "against", Title: "Against"}, cardField{Name: "note", Title: "Note", As: "long"}),
}

func (v *visit) cardKind() (cardKind, error) {
	for _, k := range cardKindsShown {
		if string(k.Kind) == v.r.PathValue("kind") {
			return k, nil
		}
	}
	return cardKind{}, shop.Fault(shop.NotFound, "There are no such cards.")
}

// cardsPage lists the cards of a kind.
func cardsPage(v *visit) error {
	k, err := v.cardKind()
	if err != nil {
		return err
	}
	text := strings.TrimSpace(v.r.URL.Query().Get("q"))
	cards, err := v.cards(shop.CardQuery{Kind: k.Kind, Terms: shop.FoldWords(text), Limit: 200})
	if err != nil {
		return err
	}
	return v.show(cardsSheet(v.frame(titleCase(k.Many)).at("stock"), k, cards, text))
}

// cardPage shows a card, or an empty one.
func cardPage(v *visit) error {
	k, err := v.cardKind()
	if err != nil {
		return err
	}
	show := cardShow{Kind: k, Text: sheetText{meta: shop.Meta{ID: shop.NewID()}, fields: map[string]any{}}, New: true}
	if id := v.r.PathValue("id"); id != "new" {
		show.New = false
		if show.Text, err = k.load(v, shop.ID(id)); err != nil {
			return err
		}
		if show.Used, show.More, err = v.shop.UsedIn(v.ctx(), k.Kind, shop.ID(id), 100); err != nil {
			return err
		}
	} else {
		for name, value := range v.r.URL.Query() {
			show.Text.fields[name] = value[0]
		}
	}
	return v.showCard(show)
}

func (v *visit) showCard(show cardShow) error { return v.showCardAs(http.StatusOK, show) }

func (v *visit) showCardAs(status int, show cardShow) error {
	show.Offers = map[shop.CardKind][]shop.Card{}
	for _, f := range show.Kind.Fields {
		if f.Card == "" {
			continue
		}
		cards, err := v.cards(shop.CardQuery{Kind: f.Card, Limit: 500})
		if err != nil {
			return err
		}
		show.Offers[f.Card] = cards
	}
	if show.Kind.Kind == shop.KindKit {
		cards, err := v.cards(shop.CardQuery{Kind: shop.KindCasting, Limit: 500})
		if err != nil {
			return err
		}
		show.Offers[shop.KindCasting] = cards
	}
	show.Gauged = show.Kind.Kind == shop.KindCasting && !show.New && v.gauged(show.Text.meta.ID)
	show.May = v.who.Role.May(shop.ActStock)
	if show.Kind.Kind == shop.KindCustomer || show.Kind.Kind == shop.KindVehicle {
		show.May = v.who.Role.May(shop.ActSell)
	}
	show.Money = v.who.Role.May(shop.ActPrices)
	title := "A new " + string(show.Kind.Kind)
	if !show.New {
		title = show.value(show.Kind.Fields[0])
		if show.Kind.Kind == shop.KindLot {
			title = show.value(show.Kind.Fields[1])
		}
	}
	return v.showAs(status, cardSheet(v.frame(title).at("stock"), show))
}

// saveCard keeps a card.
func saveCard(v *visit) error {
	form, err := v.form()
	if err != nil {
		return err
	}
	k, err := v.cardKind()
	if err != nil {
		return err
	}
	id := shop.ID(v.r.PathValue("id"))
	t, err := k.load(v, id)
	if shop.CodeOf(err) == shop.NotFound {
		t, err = sheetText{fields: map[string]any{}}, nil
	}
	if err != nil {
		return err
	}
	t.meta.ID = id
	t.meta.Revision, _ = strconv.ParseInt(form.Get("revision"), 10, 64)
	t.meta.Retired = form.Get("retired") != ""
	wrong := map[string]string{}
	for _, f := range k.Fields {
		if _, sent := form[f.Name]; !sent && f.As != "yes" {
			continue
		}
		if f.As == "money" && !v.who.Role.May(shop.ActPrices) {
			continue
		}
		if err := f.read(form, t.fields); err != nil {
			wrong[f.Name] = faultOf(err).Says
		}
	}
	if k.Kind == shop.KindKit {
		addRevision(form, t.fields)
	}
	if k.Kind == shop.KindCasting {
		if err := addStation(form, t.fields); err != nil {
			return err
		}
	}
	if len(wrong) == 0 {
		saved, err := k.save(v, t)
		if err == nil {
			return v.see(string(cardPath(k.Kind, saved)))
		}
		var e *shop.Error
		if !errors.As(err, &e) || e.Code != shop.Invalid && e.Code != shop.TooLarge {
			return err
		}
		wrong[e.Field] = e.Says
	}
	return v.showCardAs(http.StatusUnprocessableEntity, cardShow{Kind: k, Text: t, New: t.meta.Revision == 0, Sent: form, Wrong: wrong})
}

// read puts what the form says about a field into the card.
func (f cardField) read(form url.Values, into map[string]any) error {
	text := strings.TrimSpace(form.Get(f.Name))
	if text == "" && f.As != "yes" {
		delete(into, f.Name)
		return nil
	}
	switch f.As {
	case "money":
		m, err := moneyOf(text)
		if err != nil {
			return err
		}
		into[f.Name] = int64(m)
	case "number":
		n, err := numberOf(text)
		if err != nil {
			return err
		}
		into[f.Name] = n
	case "length":
		q, err := quantity.Parse(withUnit(text, "mm"), quantity.Length)
		if err != nil {
			return err
		}
		into[f.Name] = q.SI
	case "yes":
		into[f.Name] = text != ""
	default:
		into[f.Name] = text
	}
	return nil
}

// addRevision adds a revision to a kit; those there are stay as they are.
func addRevision(form url.Values, into map[string]any) {
	name := strings.TrimSpace(form.Get("rev_name"))
	revisions, _ := into["revisions"].([]any)
	if revisions == nil {
		revisions = []any{}
	}
	if name != "" {
		pieces := strings.FieldsFunc(form.Get("rev_pieces"), func(r rune) bool { return r == ',' || r == ' ' || r == '\n' || r == '\r' })
		revisions = append(slices.Clone(revisions), map[string]any{"name": name, "day": form.Get("rev_day"), "fits": form["rev_fits"],
			"changed": form.Get("rev_changed"), "why": form.Get("rev_why"), "pieces": pieces})
	}
	into["revisions"] = revisions
}

// addStation adds a numbered station to a casting.
func addStation(form url.Values, into map[string]any) error {
	number := strings.TrimSpace(form.Get("station"))
	if number == "" {
		return nil
	}
	stations, _ := into["stations"].([]any)
	into["stations"] = append(slices.Clone(stations), map[string]any{"number": number, "where": form.Get("station_where")})
	return nil
}
