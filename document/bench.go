package document

import (
	"bytes"
	"context"
	"io"

	"axlewright/drawing"
)

// benchStyle is the few rules that the bench sheet has of its own.
const benchStyle = `
:root { --text: 10pt; --plate: 15pt }
.bench ol { padding-left: 6mm } .bench li { margin-bottom: 1mm }
.bench figure svg { display: block; width: 140mm; height: auto; margin: 1mm auto }
.bench tr.box > * { height: 10mm; border: .2mm solid #111; vertical-align: middle }
.bench thead th { border: .2mm solid #111 }
`

// BenchSheet writes the procedure of a bench reading as one page of A4 in HTML,
// with boxes for the readings, to be filled in by pencil.
func BenchSheet(w io.Writer) error {
	var picture bytes.Buffer
	if err := drawing.WriteSVG(&picture, drawing.BenchSet()); err != nil {
		return err
	}
	return benchSheet(picture.String(), "<style>"+sheetStyle+benchStyle+"</style>").Render(context.Background(), w)
}
