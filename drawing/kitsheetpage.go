package drawing

import (
	"io"

	"axlewright/kit"
)

// KitSheets are all A4 sheets of a kit: the bill, then one for each plate.
func KitSheets(d *kit.Drawn) []Drawing {
	list := []Drawing{KitBill(d)}
	for i := range d.Plates {
		list = append(list, KitSheet(d, i))
	}
	return list
}

// WriteKitPDF writes all A4 sheets of a kit as one PDF, in black and white.
//
// Errors: what WritePDF refuses; the writer's error.
func WriteKitPDF(w io.Writer, d *kit.Drawn) error {
	return WritePDF(w, PDF{Title: d.Name.String() + ": " + d.Title, At: d.Date}, KitSheets(d)...)
}
