package kit

import (
	"fmt"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"time"

	"axlewright/axle"
	"axlewright/quantity"
)

// A StockBook lists what came into stock and what was cut from it: sheets and
// remnants. It only grows; what is there follows from its lines.
type StockBook []StockLine

// A StockLine is one of them: what came, or what was taken.
type StockLine struct {
	On    string   `yaml:"on"`             // day
	Came  *InStock `yaml:"came,omitempty"` // sheets of a kind, or a remnant
	Took  string   `yaml:"took,omitempty"` // name of what was taken
	Count int      `yaml:"count,omitempty"`
	For   string   `yaml:"for,omitempty"` // the nest
}

// LoadStock reads a stock book.
//
// Errors: axle.Findings.
func LoadStock(path string) (StockBook, error) {
	var b StockBook
	sheet, err := axle.ReadSheet(path, &b)
	if err != nil {
		return nil, err
	}
	if _, line, problem := b.fold(); problem != "" {
		return nil, axle.Findings{sheet.Finding(fmt.Sprintf("[%d]", line), problem)}
	}
	return b, nil
}

// InStock is what is there now, in the order in which it came.
func (b StockBook) InStock() []InStock {
	sheets, _, _ := b.fold()
	var all []InStock
	for _, s := range sheets {
		if s.Count > 0 {
			s.kept = true
			all = append(all, s)
		}
	}
	return all
}

// fold adds the lines up, and says which one cannot be.
func (b StockBook) fold() (sheets []InStock, line int, problem string) {
	at := map[string]int{}
	for i, l := range b {
		if _, err := time.Parse(time.DateOnly, l.On); err != nil {
			return nil, i, fmt.Sprintf("on: %q is no day; write it as 2026-03-02", l.On)
		}
		switch {
		case l.Came != nil && l.Took == "":
			s := *l.Came
			s.Count = max(s.Count, 1)
			if k, known := at[s.Name.Text]; known {
				if old := &sheets[k]; s.Remnant || old.Steel.Text != s.Steel.Text || old.Thickness.Text != s.Thickness.Text || old.Long.Text != s.Long.Text || old.Wide.Text != s.Wide.Text {
					return nil, i, fmt.Sprintf("%s came before, and was something else; give it another name", s.Name.Text)
				}
				sheets[k].Count += s.Count
				continue
			}
			at[s.Name.Text] = len(sheets)
			sheets = append(sheets, s)
		case l.Came == nil && l.Took != "":
			k, known := at[l.Took]
			n := max(l.Count, 1)
			if !known || sheets[k].Count < n {
				return nil, i, fmt.Sprintf("%d of %s were taken, and so many were not there", n, l.Took)
			}
			sheets[k].Count -= n
		default:
			return nil, i, "a line says either what came or what was taken"
		}
	}
	return sheets, 0, ""
}

var numberedRemnant = regexp.MustCompile(`^R-(\d+)$`)

// Cut returns the lines that a nest adds to the book when it was cut on a day: the
// sheets that it took, and the remnants that it put back, which get the next
// numbers. Sheets that do not stand in the book are left out.
//
// Errors: a day that is none; pieces that had no room.
func (b StockBook) Cut(cuttings []Cutting, on, what string) (StockBook, error) {
	if _, err := time.Parse(time.DateOnly, on); err != nil {
		return nil, fmt.Errorf("%q is no day; write the day of cutting such as 2026-03-09", on)
	}
	sheets, _, _ := b.fold()
	here := map[string]*InStock{}
	number := 0
	for i := range sheets {
		here[sheets[i].Name.Text] = &sheets[i]
		if m := numberedRemnant.FindStringSubmatch(sheets[i].Name.Text); m != nil {
			n, _ := strconv.Atoi(m[1])
			number = max(number, n)
		}
	}
	var took, came StockBook
	for i := range cuttings {
		c := &cuttings[i]
		for part, n := range c.Plan.Left {
			if n > 0 {
				return nil, fmt.Errorf("%d of %s have no room, so it cannot have been cut; get another sheet", n, c.Plates[part].File())
			}
		}
		for k := range c.Plan.Sheets {
			sheet := &c.Plan.Sheets[k]
			stock := &c.Plan.Stock[sheet.Stock]
			from := here[stock.Name]
			if from == nil {
				continue
			}
			took = append(took, StockLine{On: on, Took: stock.Name, Count: 1, For: what})
			for _, o := range sheet.Offcuts {
				number++
				size := func(x float64) Typed { return Typed{Text: quantity.Exact(math.Floor(x*1e4)/1e4, quantity.Length)} } // down to a tenth of a millimetre
				came = append(came, StockLine{On: on, For: what, Came: &InStock{Name: Typed{Text: fmt.Sprintf("R-%03d", number)}, Steel: from.Steel, Thickness: from.Thickness,
					Long: size(o.Width()), Wide: size(o.Height()), Remnant: true, Count: 1, Price: math.Round(100*from.Price*o.Width()*o.Height()/stock.Outline.Area()) / 100}})
			}
		}
	}
	lines := append(took, came...)
	if _, _, problem := append(append(StockBook{}, b...), lines...).fold(); problem != "" {
		return nil, fmt.Errorf("the nest and the stock do not agree: %s", problem)
	}
	return lines, nil
}

// Text are the lines as they stand in the file.
func (b StockBook) Text() string {
	var out strings.Builder
	for _, l := range b {
		if s := l.Came; s != nil {
			fmt.Fprintf(&out, "- {on: %q, came: {name: %q, steel: %s, thickness: %s, long: %s, wide: %s", l.On, s.Name.Text, s.Steel.Text, s.Thickness.Text, s.Long.Text, s.Wide.Text)
			if s.Remnant {
				out.WriteString(", remnant: true")
			}
			fmt.Fprintf(&out, ", count: %d, price: %s}", max(s.Count, 1), strconv.FormatFloat(s.Price, 'f', -1, 64))
		} else {
			fmt.Fprintf(&out, "- {on: %q, took: %q, count: %d", l.On, l.Took, max(l.Count, 1))
		}
		if l.For != "" {
			fmt.Fprintf(&out, ", for: %q", l.For)
		}
		out.WriteString("}\n")
	}
	return out.String()
}

// Append adds the lines to the end of a book's file.
func (b StockBook) Append(path string) error { return AppendTo(path, b.Text()) }

// AppendTo adds text to the end of a file and sees that it is on the disk.
func AppendTo(path, text string) error {
	f, err := os.OpenFile(path, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
	if err != nil {
		return fmt.Errorf("%s cannot be written: %w", path, err)
	}
	_, err = f.WriteString(text)
	if err == nil {
		err = f.Sync()
	}
	if e := f.Close(); err == nil {
		err = e
	}
	if err != nil {
		return fmt.Errorf("%s cannot be written: %w", path, err)
	}
	return nil
}
