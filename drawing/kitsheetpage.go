package drawing

import (
	"bytes"
	"fmt"
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

// WritePages writes A4 pictures as one page of HTML that prints one to a sheet.
//
// Errors: what WriteSVG refuses; the writer's error.
func WritePages(w io.Writer, title string, pages []Drawing) error {
	var b bytes.Buffer
	fmt.Fprintf(&b, `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<title>%s</title>
<style>
@page { size: A4; margin: 0 }
body { margin: 0; background: #fff }
section { break-after: page; break-inside: avoid }
section:last-child { break-after: auto }
svg { display: block; width: 210mm; height: 296.9mm; margin: 0 auto }
</style>
</head>
<body>
`, escape(title))
	for _, d := range pages {
		b.WriteString("<section>\n")
		if err := WriteSVG(&b, d); err != nil {
			return err
		}
		b.WriteString("</section>\n")
	}
	b.WriteString("</body>\n</html>\n")
	_, err := w.Write(b.Bytes())
	return err
}
