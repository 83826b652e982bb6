package web

import (
	"net/http"
	"strconv"

	"github.com/a-h/templ"

	"axlewright/shop"
)

// shownHere are the kinds of file that a browser may show in its window; any
// other is only handed over.
var shownHere = map[string]bool{"image/jpeg": true, "application/pdf": true}

// jobFile answers with a photograph, paper or stored advice of a job. Only files
// that the job's record names are found.
func jobFile(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	hash := v.r.PathValue("hash")
	for _, e := range j.Entries() {
		for _, f := range e.Files() {
			if f.SHA256 != hash {
				continue
			}
			if e.Kind == shop.EntryQuote {
				if err := v.who.Must(shop.ActPrices); err != nil {
					return err
				}
			}
			return v.sendFile(f)
		}
	}
	return shop.Fault(shop.NotFound, "This job has no such file.")
}

func (v *visit) sendFile(f shop.File) error {
	content, err := v.shop.File(v.ctx(), f)
	if err != nil {
		return err
	}
	h := v.w.Header()
	h.Set("Content-Type", f.Media)
	if !shownHere[f.Media] {
		h.Set("Content-Type", "application/octet-stream")
		h.Set("Content-Disposition", `attachment; filename="`+f.SHA256[:12]+`.json"`)
	}
	h.Set("Content-Length", strconv.Itoa(len(content)))
	h.Set("Cache-Control", "private, max-age=31536000, immutable") // its name is its content
	if v.r.Method != http.MethodHead {
		_, _ = v.w.Write(content)
	}
	return nil
}

func filePathText(job shop.ID, f *shop.File) string {
	if f == nil {
		return ""
	}
	return "/job/" + string(job) + "/file/" + f.SHA256
}

func filePath(job shop.ID, f *shop.File) templ.SafeURL { return templ.SafeURL(filePathText(job, f)) }

func photoAlt(e *shop.Entry) string {
	if e.Value.Text != "" {
		return "Photograph: " + e.Value.Text
	}
	return "Photograph without words, by " + e.Who.Name
}
