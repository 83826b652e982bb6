package document

import (
	"bytes"
	"context"
	"io"

	"axlewright/assess"
	"axlewright/drawing"
	"axlewright/quantity"
)

// page is all that the advice shows on a screen, as text and pictures.
type page struct {
	Title    string
	Sheets   []string // as printed
	Peg      string   // empty where no curve was worked out
	PegWords []string
	Loads    []assess.BearingShare
	Doubt    string
	Text     string
}

// pageStyle makes each sheet one page of A4 on a printer, and hides what stands
// behind it.
const pageStyle = `<style>
@page { size: A4; margin: 0 }
body { margin: 0; background: #f4f1ea; color: #111; font: 1rem/1.45 'DejaVu Sans Condensed',Arial,sans-serif; font-variant-numeric: tabular-nums }
.sheet { width: 210mm; height: 296.9mm; margin: 6mm auto; background: #fff; overflow: hidden; break-after: page }
.sheet svg { display: block }
.behind { max-width: 190mm; margin: 6mm auto; padding: 8mm 10mm; background: #fff }
figure { margin: 4mm 0 }
figure svg { max-width: 100%; height: auto }
table { border-collapse: collapse; width: 100% }
th, td { text-align: left; padding: 2px 8px; border-bottom: 1px solid #555 }
pre { overflow-x: auto }
@media print { body { background: #fff } .sheet { margin: 0 } .sheet:last-child { break-after: auto } .behind { display: none } }
</style>`

// AdvicePage writes advice as a page for the screen, all in the one file: the
// printed sheet, and behind it the peg's load and the wheel's movement with and
// without it, the shares of the bearings, and what the doubt hangs on. On a
// printer it is the sheet alone.
func AdvicePage(w io.Writer, a *assess.Advice) error {
	sheet := Recommendation(a)
	p := page{Title: sheet.Title + " " + sheet.Number, PegWords: []string{a.Peg.Text}, Loads: a.Loads}
	var err error
	picture := func(d drawing.Drawing) string {
		var out bytes.Buffer
		if e := drawing.WriteSVG(&out, d); e != nil && err == nil {
			err = e
		}
		return out.String()
	}
	for _, s := range sheet.Pages() {
		p.Sheets = append(p.Sheets, picture(s))
	}
	if len(a.Peg.Curve) > 1 {
		p.Peg = picture(drawing.PegCurve(a))
	}
	if a.Peg.Gap != nil {
		p.PegWords = append(p.PegWords, a.Peg.Gap.Text...)
	}
	p.Doubt = picture(drawing.DoubtBars(a))
	var words bytes.Buffer
	if e := AdviceText(&words, a); e != nil {
		return e
	}
	p.Text = words.String()
	if err != nil {
		return err
	}
	return advicePage(p).Render(context.Background(), w)
}

func force(newtons float64) string { return quantity.FormatDigits(newtons, quantity.Force, 3) }
