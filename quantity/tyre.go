package quantity

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// Tyre is what a tyre size says about the wheel, and what had to be assumed.
// A tyre on the vehicle, measured, is always better than its name.
type Tyre struct {
	Text            string   // as typed
	OutsideDiameter float64  // m, new and unloaded
	LoadedRadius    float64  // m, axle to ground under load
	Width           float64  // m, as the size names it
	RimDiameter     float64  // m
	Notes           []string // one sentence for each assumption; never empty
}

// LoadedShare is the loaded radius over half the outside diameter. Trade
// practice, no source; it moves with load and pressure.
const LoadedShare = 0.965

// Height of the section over the named width where the size does not say it.
const (
	// Sizes in inches, crossply and the radials named after them. The heights of
	// 6.00-16 to 9.00-16 in the table of UN Regulation 54 lie between 1.00 and
	// 1.08 of the named width (from memory), so that the outside diameter comes
	// within 3 %.
	inchAspect = 1.04
	// Millimetre sizes without a second number: 185R14 is 650 mm and 205R16 is
	// 736 mm outside in the same table (from memory).
	bareAspect = 0.80
)

// A size may be followed by a class and by load and speed symbols.
const (
	ply      = ` ?(?:ZR|R|D|B|-| ) ?`
	rim      = `(\d{2}(?:\.5)?)`
	trailing = `(?: ?(?:LT|C|XL|ST))?(?: \d{2,3}(?:/\d{2,3})? ?[A-Z]\d?)?(?: ?\d{1,2}PR)?$`
)

var (
	metricTyre = regexp.MustCompile(`^(?:LT|ST|P|T)? ?(\d{3}) ?/ ?(\d{2,3})` + ply + rim + trailing)                 // 235/85R16
	bareTyre   = regexp.MustCompile(`^(\d{3})` + ply + rim + trailing)                                               // 205R16, 750-16
	floatTyre  = regexp.MustCompile(`^(\d{2}(?:\.\d{1,2})?) ?[X×·] ?(\d{1,2}(?:\.\d{1,2})?)` + ply + rim + trailing) // 33x12.50R15
	inchTyre   = regexp.MustCompile(`^(\d{1,2}\.\d{2})(?:` + ply + `| ?X ?)` + rim + trailing)                       // 7.50R16
)

// ParseTyre reads a tyre size as it stands on the sidewall: "235/85R16",
// "33x12.50R15", "7.50R16", "205R16". Every assumption is in Notes.
func ParseTyre(text string) (Tyre, error) {
	text = strings.TrimSpace(text)
	if text == "" || len(text) > mostText {
		return Tyre{}, refuseTyre(text, Empty, "nothing that can be read")
	}
	s := strings.ToUpper(strings.ReplaceAll(plainSpelling(text), ",", "."))
	t := Tyre{Text: text}
	var height float64 // of the section, m
	if m := metricTyre.FindStringSubmatch(s); m != nil {
		t.size(m[1], 1e-3, m[3])
		height = t.Width * decimal(m[2]) / 100
		if a := decimal(m[2]); a < 20 || a > 105 {
			return Tyre{}, refuseTyre(text, OutOfRange, "no tyre has a section "+m[2]+" % as high as wide")
		}
	} else if m := floatTyre.FindStringSubmatch(s); m != nil {
		t.size(m[2], 0.0254, m[3])
		height = (decimal(m[1])*0.0254 - t.RimDiameter) / 2
		t.note("The outside diameter is the one in the size, %s in; tyres commonly measure a little less.", m[1])
	} else if m := inchTyre.FindStringSubmatch(s); m != nil {
		t.size(m[1], 0.0254, m[2])
		height = t.assume(inchAspect)
	} else if m := bareTyre.FindStringSubmatch(s); m != nil {
		if m[1] >= "500" { // hundredths of an inch: 750-16 is 7.50-16
			t.size(m[1], 0.000254, m[2])
			height = t.assume(inchAspect)
		} else {
			t.size(m[1], 1e-3, m[2])
			height = t.assume(bareAspect)
		}
	} else {
		return Tyre{}, refuseTyre(text, NotATyre, "this is not read as a tyre size")
	}
	if t.Width < 0.1 || t.Width > 0.5 || t.RimDiameter < 0.25 || t.RimDiameter > 0.65 || height < 0.04 || height > 0.45 {
		return Tyre{}, refuseTyre(text, OutOfRange, "no such tyre can be fitted to a driven axle")
	}
	t.OutsideDiameter = t.RimDiameter + 2*height
	t.LoadedRadius = LoadedShare * t.OutsideDiameter / 2
	t.note("The loaded radius is taken as %g of half the outside diameter (trade practice); measure axle to ground if it matters.", LoadedShare)
	return t, nil
}

// size sets the width, in units of so many metres, and the rim, in inches.
func (t *Tyre) size(width string, unit float64, rim string) {
	t.Width = decimal(width) * unit
	t.RimDiameter = decimal(rim) * 0.0254
}

// assume takes the height of the section as a share of the width, and says so.
func (t *Tyre) assume(aspect float64) float64 {
	t.note("The size does not say how high the section is: taken as %.0f %% of the named width, the outside diameter may be 3 %% off; measure it if you can.", aspect*100)
	return aspect * t.Width
}

func (t *Tyre) note(format string, args ...any) {
	t.Notes = append(t.Notes, fmt.Sprintf(format, args...))
}

// decimal reads digits that a pattern has already found to be a number.
func decimal(s string) float64 {
	f, _ := strconv.ParseFloat(s, 64)
	return f
}

func refuseTyre(text string, reason Reason, says string) *ParseError {
	return refuse(text, "", reason, "%s, expected a tyre size such as 235/85R16, 33x12.50R15 or 7.50R16", says)
}
