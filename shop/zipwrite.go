package shop

import (
	"archive/zip"
	_ "embed"
	"encoding/json"
	"io"
	"time"
)

//go:embed RECORD.md
var recordForm string

// archiveWriter writes our zip files.
type archiveWriter struct {
	zip *zip.Writer
	at  time.Time
}

func (w *archiveWriter) create(name string, packed bool) (io.Writer, error) {
	method := zip.Store
	if packed {
		method = zip.Deflate
	}
	out, err := w.zip.CreateHeader(&zip.FileHeader{Name: name, Method: method, Modified: w.at.UTC()})
	return out, writing(err)
}

func (w *archiveWriter) add(name string, content []byte, packed bool) error {
	out, err := w.create(name, packed)
	if err != nil {
		return err
	}
	_, err = out.Write(content)
	return writing(err)
}

func (w *archiveWriter) addJSON(name string, v any) error {
	content, err := json.MarshalIndent(v, "", "  ")
	if err != nil {
		return Fault(Internal, "The zip file cannot be written.").Because(err)
	}
	return w.add(name, append(content, '\n'), true)
}

// writing names the failure of the writer that was given to us. The cause says
// more: a full disk, a broken connection.
func writing(err error) error {
	if err == nil {
		return nil
	}
	return Fault(Internal, "The zip file cannot be written.").Because(err)
}

// cardLine is a card as a line of JSON in our zip files.
type cardLine struct {
	Card
	Sheet json.RawMessage `json:"sheet"`
}

func (c cardLine) card() Card {
	c.Body = c.Sheet
	return c.Card
}

func lineOf(c Card) ([]byte, error) {
	line, err := json.Marshal(cardLine{c, c.Body})
	if err != nil {
		return nil, Fault(Damaged, "The card of %s %s cannot be read.", c.Kind, c.Label).Because(err)
	}
	return append(line, '\n'), nil
}
