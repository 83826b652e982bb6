package web

import (
	"bytes"
	"context"
	"errors"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"axlewright/drawing"
	"axlewright/kit"
	"axlewright/shop"
)

// A sheetsShow is the page of sheets, remnants and nests.
type sheetsShow struct {
	Steels []shop.Steel
	Nests  []shop.Nest
	Kits   []shop.Kit
	Rates  kit.Rates // of the newest nest
	May    bool
	Money  bool
}

// nestTries is how many orders a nest tries where nobody says otherwise.
const nestTries = 48

// sheetsPage lists what there is to cut from, and asks what to cut.
func sheetsPage(v *visit) error {
	s := sheetsShow{May: v.who.Role.May(shop.ActStock), Money: v.who.Role.May(shop.ActPrices)}
	var err error
	if s.Steels, _, err = shop.List[shop.Steel](v.ctx(), v.shop, shop.CardQuery{Limit: 1000}); err != nil {
		return err
	}
	slices.SortStableFunc(s.Steels, func(a, b shop.Steel) int { return strings.Compare(steelGroup(&a), steelGroup(&b)) })
	if s.Nests, _, err = shop.List[shop.Nest](v.ctx(), v.shop, shop.CardQuery{Limit: 1000}); err != nil {
		return err
	}
	slices.Reverse(s.Nests)
	if len(s.Nests) > 0 {
		s.Rates = s.Nests[0].Rates
	}
	if s.Kits, _, err = shop.List[shop.Kit](v.ctx(), v.shop, shop.CardQuery{Limit: 500}); err != nil {
		return err
	}
	return v.show(sheetsSheet(v.frame("Sheets and nests").at("stock"), s))
}

// steelGroup is what sheets are listed under.
func steelGroup(s *shop.Steel) string { return s.Grade + ", " + lengthText(s.Thickness) }

// planNest lays kits out; the nest's page shows how far it is.
func planNest(v *visit) error {
	form, err := v.form()
	if err != nil {
		return err
	}
	if err := v.who.Must(shop.ActStock); err != nil {
		return err
	}
	var wanted []shop.NestWanted
	for i, name := range form["kit"] {
		id, revision, ok := strings.Cut(name, "/")
		if !ok {
			continue
		}
		sets, err := strconv.Atoi(strings.TrimSpace(at(form["sets"], i)))
		if err != nil {
			return shop.Fault(shop.Invalid, "Say how many sets: a whole number.")
		}
		wanted = append(wanted, shop.NestWanted{Kit: shop.Link{Kind: shop.KindKit, ID: shop.ID(id)}, Revision: revision, Sets: sets, Batch: strings.TrimSpace(at(form["batch"], i))})
	}
	if len(wanted) == 0 {
		return shop.Fault(shop.Invalid, "Choose a kit, and how many sets of it.")
	}
	rates, err := ratesOf(form)
	if err != nil {
		return err
	}
	id, who := shop.NewID(), v.who
	v.sums.start(id, func(ctx context.Context, progress func(int, int)) error {
		_, err := v.shop.PlanNest(ctx, who, id, wanted, rates, nestTries, progress)
		return err
	}, func(err error) string {
		if codeOf(err) == shop.Internal && !errors.Is(err, context.Canceled) {
			v.log.Error("nest failed", "error", err)
		}
		return faultOf(err).Says
	})
	return v.see("/stock/nest/" + string(id))
}

// at is the i-th of a form's values, "" where there is none.
func at(values []string, i int) string {
	if i < len(values) {
		return values[i]
	}
	return ""
}

func ratesOf(form url.Values) (kit.Rates, error) {
	var r kit.Rates
	for name, into := range map[string]*float64{"cut": &r.Cut, "pierce": &r.Pierce, "mark": &r.Mark, "sheet": &r.Sheet, "scrap": &r.Scrap} {
		text := strings.TrimSpace(form.Get("rate_" + name))
		if text == "" {
			continue
		}
		m, err := numberOf(text)
		if err != nil || m < 0 || m > 1e6 {
			return r, shop.Fault(shop.Invalid, "“%s” is not a price. Write it as 0.9 or 15.", text)
		}
		*into = m
	}
	return r, nil
}

// A nestShow is a nest with its sheets drawn.
type nestShow struct {
	ID      shop.ID
	Nest    *shop.Nest // nil while it is laid out
	Running *running
	Sheets  []nestSheetShow
	May     bool
	Money   bool
}

// A nestSheetShow is one sheet of a nest.
type nestSheetShow struct {
	Steel, Name string
	Picture     string
	File        string // name of its cut file, without ending
	Card        shop.ID
}

// nestPage shows a nest, or how far it is.
func nestPage(v *visit) error {
	s := nestShow{ID: shop.ID(v.r.PathValue("id")), May: v.who.Role.May(shop.ActStock), Money: v.who.Role.May(shop.ActPrices)}
	s.Running = v.sums.of(s.ID)
	title := "Nest"
	n, err := shop.Get[shop.Nest](v.ctx(), v.shop, s.ID)
	switch {
	case err == nil:
		s.Nest, title = &n, "Nest "+n.Name
		drawn, err := v.shop.Drawn(v.ctx(), &n)
		if err != nil {
			return err
		}
		for i := range drawn {
			c := &drawn[i]
			for k := range c.Plan.Sheets {
				s.Sheets = append(s.Sheets, nestSheetShow{Steel: c.Steel, Name: c.Plan.Name(k), Picture: svgOf(drawing.NestPicture(c, k)),
					File: drawing.NestFile(c, k).Name, Card: n.Cuttings[i].Stock[c.Plan.Sheets[k].Stock]})
			}
		}
	case shop.CodeOf(err) != shop.NotFound:
		return err
	case s.Running == nil:
		return shop.Fault(shop.NotFound, "There is no such nest, or it could not be laid out: the reason was told when it failed. Lay it out again.")
	}
	f := v.frame(title).at("stock")
	f.Live = s.Nest == nil
	return v.show(nestSheet(f, s))
}

// cutNest says that the nest was cut.
func cutNest(v *visit) error {
	n, err := v.shop.CutNest(v.ctx(), v.who, shop.ID(v.r.PathValue("id")))
	if err != nil {
		return err
	}
	return v.see("/stock/nest/" + string(n.ID))
}

// nestFile hands out the cut file of one sheet.
func nestFile(v *visit) error {
	n, err := shop.Get[shop.Nest](v.ctx(), v.shop, shop.ID(v.r.PathValue("id")))
	if err != nil {
		return err
	}
	drawn, err := v.shop.Drawn(v.ctx(), &n)
	if err != nil {
		return err
	}
	name := v.r.PathValue("file")
	for i := range drawn {
		for k := range drawn[i].Plan.Sheets {
			f := drawing.NestFile(&drawn[i], k)
			for _, form := range cutForms {
				if name != f.Name+form.ending {
					continue
				}
				var out bytes.Buffer
				if err := form.write(&out, f); err != nil {
					return shop.Fault(shop.Invalid, "This sheet cannot be written: %v", err)
				}
				return v.hand(name, form.media, out.Bytes())
			}
		}
	}
	return shop.Fault(shop.NotFound, "This nest has no such file.")
}
