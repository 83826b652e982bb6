package shop

import "strconv"

// DonorState is where a donor stands.
type DonorState string

// The states of a donor.
const (
	DonorDirty    DonorState = "dirty"
	DonorClean    DonorState = "clean"
	DonorWelded   DonorState = "welded"
	DonorMachined DonorState = "machined"
	DonorBuilt    DonorState = "built"
	DonorSold     DonorState = "sold"
	DonorParts    DonorState = "for parts"
	DonorScrap    DonorState = "scrapped"
)

// DonorStates lists them.
var DonorStates = []DonorState{DonorDirty, DonorClean, DonorWelded, DonorMachined, DonorBuilt, DonorSold, DonorParts, DonorScrap}

// DonorClasses lists the classes of donors, the best first.
var DonorClasses = []string{"A", "B", "C", "scrap"}

// A Donor is one casting that came in, with its caps and whatever else came
// with it. Which job it is kept for follows from the jobs that name it.
type Donor struct {
	Meta    `json:"-"`
	Number  string     `json:"number"`            // on its metal tag
	Casting ID         `json:"casting,omitempty"` // the variant, once identified
	Class   string     `json:"class"`             // A, B, C, scrap
	State   DonorState `json:"state"`
	Source  string     `json:"source,omitempty"`
	Came    string     `json:"came,omitempty"` // day
	Price   Money      `json:"price,omitempty"`
	Teeth   string     `json:"teeth,omitempty"` // "46/13"
	Core    bool       `json:"core,omitempty"`  // came back as a customer's core
	Caps    string     `json:"caps,omitempty"`  // "both, marked 7"; caps never leave their casting
	Place   string     `json:"place,omitempty"` // shelf
	Note    string     `json:"note,omitempty"`
}

// LotKind is what a lot is of.
type LotKind string

// The kinds of lot.
const (
	LotBolts    LotKind = "bolts"
	LotFiller   LotKind = "filler"
	LotResin    LotKind = "resin"
	LotBearings LotKind = "bearings"
	LotShims    LotKind = "shims"
	LotKits     LotKind = "plate kits" // cut in one batch
	LotPads     LotKind = "pads"
	LotSeals    LotKind = "seals"
	LotGears    LotKind = "gear sets"
	LotOther    LotKind = "other"
)

// LotKinds lists them.
var LotKinds = []LotKind{LotBolts, LotFiller, LotResin, LotBearings, LotShims, LotKits, LotPads, LotSeals, LotGears, LotOther}

// A Lot is a quantity of one thing that came together and can be traced
// together. What is left of it follows from the jobs that used it.
type Lot struct {
	Meta      `json:"-"`
	LotKind   LotKind  `json:"lot_kind"`
	Title     string   `json:"title"`           // "cap bolts M12 × 80 10.9"
	Batch     string   `json:"batch,omitempty"` // maker's lot, heat or laser batch
	Supplier  string   `json:"supplier,omitempty"`
	Came      string   `json:"came,omitempty"`    // day
	Expires   string   `json:"expires,omitempty"` // day; the last on which it may be used
	Quantity  float64  `json:"quantity"`          // that came; corrected after counting
	Unit      string   `json:"unit"`              // "pieces", "kg", "m"
	Cost      Money    `json:"cost,omitempty"`    // of one unit
	Reorder   float64  `json:"reorder,omitempty"` // order again when no more than this is free
	Papers    string   `json:"papers,omitempty"`  // its certificate
	Place     string   `json:"place,omitempty"`   // shelf
	Note      string   `json:"note,omitempty"`
	Thickness *float64 `json:"thickness,omitempty"` // m, of shims
	Size      string   `json:"size,omitempty"`      // bearings: bore × outside × width
	Kit       ID       `json:"kit,omitempty"`       // plate kits: which
	Revision  string   `json:"kit_revision,omitempty"`
}

// Kind is KindDonor.
func (*Donor) Kind() CardKind { return KindDonor }

// Kind is KindLot.
func (*Lot) Kind() CardKind { return KindLot }

// Check demands a number, a class and a state.
func (d *Donor) Check() error {
	if !oneOf(d.State, DonorStates) {
		return Fault(Invalid, "A donor is dirty, clean, welded, machined, built, sold, for parts or scrapped.").At("state")
	}
	if !oneOf(d.Class, DonorClasses) {
		return Fault(Invalid, "The class of a donor is A, B, C or scrap.").At("class")
	}
	if d.Price < 0 {
		return Fault(Invalid, "A price is not negative.").At("price")
	}
	return firstFault(required("number", d.Number), lengthOf("number", d.Number, 40), dayOrEmpty("came", d.Came),
		lengthOf("source", d.Source, 200), lengthOf("teeth", d.Teeth, 20), lengthOf("caps", d.Caps, 200),
		lengthOf("place", d.Place, 100), lengthOf("note", d.Note, longText))
}

// Check demands what tracing needs: kind, title, unit, quantity; a thickness
// for shims; kit and revision for plate kits.
func (l *Lot) Check() error {
	switch {
	case !oneOf(l.LotKind, LotKinds):
		return Fault(Invalid, "Say what the lot is of: bolts, filler, resin, bearings, shims, plate kits, pads, seals, gear sets or other.").At("lot_kind")
	case !(l.Quantity >= 0) || l.Quantity > 1e9:
		return Fault(Invalid, "Say how much came as a number from zero up, such as 40.").At("quantity")
	case !(l.Reorder >= 0):
		return Fault(Invalid, "Say at how many to order again as a number from zero up, or leave it empty.").At("reorder")
	case l.Cost < 0:
		return Fault(Invalid, "A cost is not negative.").At("cost")
	case l.LotKind == LotShims && (l.Thickness == nil || !(*l.Thickness > 0) || *l.Thickness > 0.05):
		return Fault(Invalid, "A lot of shims needs their thickness, such as 1.25 mm.").At("thickness")
	case l.LotKind == LotKits && (l.Kit == "" || l.Revision == ""):
		return Fault(Invalid, "Say which kit, and which revision of it, this batch was cut to: the stop against a wrong kit goes by it.").At("kit")
	}
	return firstFault(required("title", l.Title), required("unit", l.Unit), lengthOf("title", l.Title, 200),
		lengthOf("unit", l.Unit, 20), lengthOf("batch", l.Batch, 100), lengthOf("supplier", l.Supplier, 200),
		dayOrEmpty("came", l.Came), dayOrEmpty("expires", l.Expires), lengthOf("papers", l.Papers, 1000),
		lengthOf("place", l.Place, 100), lengthOf("note", l.Note, longText), lengthOf("size", l.Size, 60),
		lengthOf("kit_revision", l.Revision, 20))
}

func (d *Donor) describe() description {
	return description{label: d.Number, group: string(d.Casting), state: string(d.State),
		words: []string{d.Source, d.Teeth, d.Place, d.Class}}
}

func (l *Lot) describe() description {
	label := l.Title
	if l.Batch != "" {
		label += ", lot " + l.Batch
	}
	words := []string{l.Supplier, l.Size, l.Place, l.Papers}
	if l.Thickness != nil {
		words = append(words, strconv.FormatFloat(*l.Thickness*1000, 'f', 3, 64))
	}
	return description{label: label, group: string(l.LotKind), words: words}
}
