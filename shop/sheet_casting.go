package shop

import (
	"fmt"
	"slices"

	"axlewright/setup"
)

// A Casting is a variant of nose casting as the shop knows it.
type Casting struct {
	Meta      `json:"-"`
	Name      string     `json:"name"` // "T24"
	Maker     string     `json:"maker,omitempty"`
	Catalogue string     `json:"catalogue,omitempty"` // its name in the catalogue of the sums
	AxleKind  setup.Kind `json:"axle_kind,omitempty"` // picks among the ranges of the trade for setting-up
	Metal     string     `json:"metal,omitempty"`     // what a test of the variant found
	MetalHow  string     `json:"metal_how,omitempty"` // the test: "laboratory, 3.5 % C, page 2 of folder"
	Marks     string     `json:"marks,omitempty"`     // what to look for
	Stations  []Station  `json:"stations,omitempty"`
	Specs     []Spec     `json:"specs,omitempty"` // limits of this variant, before the house's own
	Note      string     `json:"note,omitempty"`
	From      ID         `json:"from,omitempty"` // the job whose casting it was first seen on: what it shows is read from that record
}

// A Station is a numbered place on a casting where its variation is measured.
type Station struct {
	Number string `json:"number"`
	Where  string `json:"where"`
}

// A Spec is a limit of the shop's own for one field of one step, or for one thing
// of setting-up, with the page that it stands on.
type Spec struct {
	Step  StepKey    `json:"step,omitempty"`
	Field string     `json:"field,omitempty"`
	Item  setup.Item `json:"item,omitempty"` // in place of a field: a range of setting-up that no single box is held against
	Limit Limit      `json:"limit"`
}

// A Kit is a set of plates for some castings. A revision, once made, is never
// changed or used again for something else.
type Kit struct {
	Meta      `json:"-"`
	Name      string        `json:"name"` // "KIT-T24-A"
	Note      string        `json:"note,omitempty"`
	Revisions []KitRevision `json:"revisions"`
}

// A KitRevision is one state of a kit's drawing.
type KitRevision struct {
	Name    string   `json:"name"` // "3"
	Day     string   `json:"day,omitempty"`
	Fits    []ID     `json:"fits"`              // castings
	Changed string   `json:"changed,omitempty"` // what moved
	Why     string   `json:"why,omitempty"`
	Pieces  []string `json:"pieces,omitempty"` // marked numbers: "1L", "1R", "2"
	Closed  bool     `json:"closed,omitempty"` // no more to be cut

	Drawing string `json:"drawing,omitempty"` // its kit file, as text (package kit)
	Weld    string `json:"weld,omitempty"`    // how its plates are welded, as text (package weldplan); may be bettered
}

// A Gauge is an instrument of the shop.
type Gauge struct {
	Meta    `json:"-"`
	Name    string `json:"name"`              // "dial gauge 3"
	Checked string `json:"checked,omitempty"` // day of the last check
	Against string `json:"against,omitempty"` // what it was checked against
	Note    string `json:"note,omitempty"`
}

// House is the shop itself: there is one card, with the ID HouseID.
type House struct {
	Meta    `json:"-"`
	Name    string `json:"name"`
	Address string `json:"address,omitempty"`
	Phone   string `json:"phone,omitempty"`
	Mail    string `json:"mail,omitempty"`
	Country string `json:"country,omitempty"`
	Specs   []Spec `json:"specs,omitempty"` // limits for every variant that has none of its own

	Terms       string `json:"terms,omitempty"`        // of the quote and warranty, as printed
	KeepNightly int    `json:"keep_nightly,omitempty"` // backups kept; 0 is 14
}

// The IDs of the cards of which there is one.
const (
	HouseID  ID = "house"
	PricesID ID = "prices"
)

// Kind is KindCasting.
func (*Casting) Kind() CardKind { return KindCasting }

// Kind is KindKit.
func (*Kit) Kind() CardKind { return KindKit }

// Kind is KindGauge.
func (*Gauge) Kind() CardKind { return KindGauge }

// Kind is KindHouse.
func (*House) Kind() CardKind { return KindHouse }

// Check demands a name, and specs that name fields there are.
func (c *Casting) Check() error {
	seen := map[string]bool{}
	for i, s := range c.Stations {
		if s.Number == "" || seen[s.Number] {
			return Fault(Invalid, "Each station has a number of its own.").At(fmt.Sprintf("stations/%d", i+1))
		}
		seen[s.Number] = true
	}
	return firstFault(required("name", c.Name), lengthOf("name", c.Name, 60), lengthOf("maker", c.Maker, 100),
		lengthOf("catalogue", c.Catalogue, 100), checkKind(c.AxleKind), lengthOf("metal", c.Metal, 100), lengthOf("metal_how", c.MetalHow, 1000),
		lengthOf("marks", c.Marks, longText), lengthOf("note", c.Note, longText), checkSpecs(c.Specs))
}

// Check demands a name, and for each revision a name of its own and castings.
func (k *Kit) Check() error {
	seen := map[string]bool{}
	for i, r := range k.Revisions {
		at := fmt.Sprintf("revisions/%d", i+1)
		switch {
		case r.Name == "" || len(r.Name) > 20 || seen[r.Name]:
			return Fault(Invalid, "Each revision has a short name of its own.").At(at)
		case len(r.Fits) == 0:
			return Fault(Invalid, "Say which castings revision %s was drawn for.", r.Name).At(at)
		}
		if err := firstFault(dayOrEmpty(at, r.Day), lengthOf(at, r.Changed, longText), lengthOf(at, r.Why, longText), r.checkDrawing(k.Name)); err != nil {
			return err
		}
		seen[r.Name] = true
	}
	return firstFault(required("name", k.Name), lengthOf("name", k.Name, 60), lengthOf("note", k.Note, longText))
}

// Check demands a name.
func (g *Gauge) Check() error {
	return firstFault(required("name", g.Name), lengthOf("name", g.Name, 100), dayOrEmpty("checked", g.Checked),
		lengthOf("against", g.Against, 200), lengthOf("note", g.Note, longText))
}

// Check demands a name, and specs that name fields there are.
func (h *House) Check() error {
	if h.KeepNightly < 0 || h.KeepNightly > 1000 {
		return Fault(Invalid, "Keep 1 to 1000 backups; 0 keeps 14.").At("keep_nightly")
	}
	return firstFault(required("name", h.Name), lengthOf("name", h.Name, 100), lengthOf("address", h.Address, 500),
		lengthOf("phone", h.Phone, 100), lengthOf("mail", h.Mail, 200), lengthOf("country", h.Country, 100),
		lengthOf("terms", h.Terms, longText), checkSpecs(h.Specs))
}

// Revision returns the revision of that name.
func (k *Kit) Revision(name string) (KitRevision, bool) {
	for _, r := range k.Revisions {
		if r.Name == name {
			return r, true
		}
	}
	return KitRevision{}, false
}

func (c *Casting) describe() description {
	return description{label: c.Name, words: []string{c.Maker, c.Metal, c.Marks}}
}

func (k *Kit) describe() description { return description{label: k.Name} }

func (g *Gauge) describe() description { return description{label: g.Name} }

func (h *House) describe() description { return description{label: h.Name} }

func checkKind(k setup.Kind) error {
	if k != "" && !slices.Contains(setup.Kinds(), k) {
		return Fault(Invalid, "%q is no kind of axle; expected one such as %q.", k, setup.LightAdjusted).At("axle_kind")
	}
	return nil
}

func checkSpecs(specs []Spec) error {
	for i, s := range specs {
		at := fmt.Sprintf("specs/%d", i+1)
		f, ok := FieldOf(s.Step, s.Field)
		switch {
		case s.Item != "" && (s.Step != "" || s.Field != "" || !slices.Contains(setup.Items(), s.Item)):
			return Fault(Invalid, "There is no range of setting-up called %q.", s.Item).At(at)
		case s.Item == "" && (!ok || f.Kind != FieldFigure):
			return Fault(Invalid, "There is no reading %s/%s to set a limit for.", s.Step, s.Field).At(at)
		case len(s.bands()) > 0 && (s.Limit.Low != nil && *s.Limit.Low < 0 || s.Limit.High != nil && *s.Limit.High <= 0):
			return Fault(Invalid, "A limit of setting-up lies above zero.").At(at)
		case s.Limit.Low == nil && s.Limit.High == nil:
			return Fault(Invalid, "A limit needs a lower or an upper end.").At(at)
		case s.Limit.Low != nil && s.Limit.High != nil && !(*s.Limit.Low <= *s.Limit.High):
			return Fault(Invalid, "The lower end of a limit is not above its upper end.").At(at)
		case s.Limit.Source == "":
			return Fault(Invalid, "Say where the limit stands: the manual and its page, or who decided it.").At(at)
		}
	}
	return nil
}
