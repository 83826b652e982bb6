package web

import (
	"bytes"
	"io"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"github.com/a-h/templ"

	"axlewright/drawing"
	"axlewright/kit"
	"axlewright/shop"
)

// A kitShow is one revision of a kit, drawn.
type kitShow struct {
	Kit      shop.Kit
	Revision shop.KitRevision
	Batch    string // etched on the plates
	Drawn    kit.Drawn
	Bill     kit.Bill
	Pieces   []pieceShow
	Missing  string // why there is no drawing
}

// A pieceShow is a plate with its picture.
type pieceShow struct {
	Plate   *kit.Plate
	Row     kit.BillRow
	Picture string
}

// kitShowOf draws a revision. What cannot be drawn is said on the page.
func kitShowOf(k shop.Kit, r shop.KitRevision, batch string) kitShow {
	s := kitShow{Kit: k, Revision: r, Batch: batch}
	d, err := r.Draw(batch)
	if err != nil {
		s.Missing = faultOf(err).Says
		return s
	}
	s.Drawn, s.Bill = d, d.Bill()
	for i := range s.Drawn.Plates {
		p := &s.Drawn.Plates[i]
		s.Pieces = append(s.Pieces, pieceShow{p, s.Bill.Rows[i], svgOf(drawing.PlatePicture(p))})
	}
	return s
}

// svgOf is a picture as it goes into a page; one that cannot be drawn is left out.
func svgOf(d drawing.Drawing) string {
	var out bytes.Buffer
	if err := drawing.WriteSVG(&out, d); err != nil {
		return ""
	}
	return out.String()
}

// cutForms are the forms of a plate's cut file, by how the file's name ends.
var cutForms = []struct {
	ending, title, media string
	write                func(io.Writer, drawing.CutFile) error
}{
	{".r12.dxf", "DXF R12", "image/vnd.dxf", func(w io.Writer, f drawing.CutFile) error { return drawing.WriteDXF(w, f, drawing.R12) }},
	{".dxf", "DXF R2000", "image/vnd.dxf", func(w io.Writer, f drawing.CutFile) error { return drawing.WriteDXF(w, f, drawing.R2000) }},
	{".svg", "SVG", "image/svg+xml", drawing.WriteCutSVG},
}

// path is where the revision, or a file of it, is.
func (s kitShow) path(file string) templ.SafeURL {
	return kitPath(s.Kit.ID, s.Revision.Name, file, s.Batch)
}

func kitPath(id shop.ID, revision, file, batch string) templ.SafeURL {
	to := "/kits/" + string(id) + "/" + url.PathEscape(revision)
	if file != "" {
		to += "/" + url.PathEscape(file)
	}
	if batch != "" {
		to += "?batch=" + url.QueryEscape(batch)
	}
	return templ.SafeURL(to)
}

// kitsPage lists the kits with their revisions, and takes new ones in.
func kitsPage(v *visit) error {
	kits, _, err := shop.List[shop.Kit](v.ctx(), v.shop, shop.CardQuery{Limit: 500})
	if err != nil {
		return err
	}
	castings, err := v.cards(shop.CardQuery{Kind: shop.KindCasting, Limit: 1000, Retired: true})
	if err != nil {
		return err
	}
	return v.show(kitsSheet(v.frame("Plate kits").at("stock"), kits, castings, v.who.Role.May(shop.ActStock)))
}

// castingNames are the names of castings by their cards.
func castingNames(cards []shop.Card, ids []shop.ID) string {
	var all []string
	for _, c := range cards {
		if slices.Contains(ids, c.ID) {
			all = append(all, c.Label)
		}
	}
	return strings.Join(all, ", ")
}

// bringKit takes a kit file, and its weld file, into the shop.
func bringKit(v *visit) error {
	drawn, err := v.upload("drawing")
	if err != nil {
		return err
	}
	weld, err := v.upload("weld")
	if err != nil {
		return err
	}
	if drawn == "" {
		return shop.Fault(shop.Invalid, "Choose a kit file first.")
	}
	k, err := v.shop.AddDrawing(v.ctx(), v.who, drawn, weld)
	if err != nil {
		return err
	}
	return v.see(string(kitPath(k.ID, k.Revisions[len(k.Revisions)-1].Name, "", "")))
}

// upload reads a small text file of the form, "" where none was chosen.
func (v *visit) upload(name string) (string, error) {
	file, _, err := v.r.FormFile(name)
	switch {
	case err == http.ErrMissingFile:
		return "", nil
	case err != nil:
		return "", shop.Fault(shop.Invalid, "The file did not arrive whole: send it again.").Because(err)
	}
	defer file.Close()
	text, err := io.ReadAll(io.LimitReader(file, maxForm))
	return string(text), err
}

// revision is the kit's revision that the address names.
func (v *visit) revision() (shop.Kit, shop.KitRevision, error) {
	k, err := shop.Get[shop.Kit](v.ctx(), v.shop, shop.ID(v.r.PathValue("kit")))
	if err != nil {
		return k, shop.KitRevision{}, err
	}
	r, ok := k.Revision(v.r.PathValue("revision"))
	if !ok {
		return k, r, shop.Fault(shop.NotFound, "Kit %s has no revision %s.", k.Name, v.r.PathValue("revision"))
	}
	return k, r, nil
}

// kitPage shows one revision of a kit.
func kitPage(v *visit) error {
	k, r, err := v.revision()
	if err != nil {
		return err
	}
	s := kitShowOf(k, r, v.r.URL.Query().Get("batch"))
	return v.show(kitRevisionSheet(v.frame(k.Name+"."+r.Name).at("stock"), s))
}

// kitFile hands out a cut file, the kit file or the weld file.
func kitFile(v *visit) error {
	k, r, err := v.revision()
	if err != nil {
		return err
	}
	name := v.r.PathValue("file")
	switch {
	case name == r.FileName(k.Name) && r.Drawing != "":
		return v.hand(name, "application/yaml", []byte(r.Drawing))
	case name == weldFileName(k, r) && r.Weld != "":
		return v.hand(name, "application/yaml", []byte(r.Weld))
	}
	d, err := r.Draw(v.r.URL.Query().Get("batch"))
	if err != nil {
		return err
	}
	if name == d.Name.String()+".pdf" {
		var out bytes.Buffer
		if err := drawing.WriteKitPDF(&out, &d); err != nil {
			return err
		}
		return v.showPDF(name, out.Bytes())
	}
	for i := range d.Plates {
		f := drawing.PlateFile(&d.Plates[i])
		for _, form := range cutForms {
			if name != f.Name+form.ending {
				continue
			}
			var out bytes.Buffer
			if err := form.write(&out, f); err != nil {
				return shop.Fault(shop.Invalid, "This plate cannot be written: %v", err)
			}
			return v.hand(name, form.media, out.Bytes())
		}
	}
	return shop.Fault(shop.NotFound, "This kit has no such file.")
}

func weldFileName(k shop.Kit, r shop.KitRevision) string { return k.Name + "." + r.Name + ".weld.yaml" }

// hand answers with a file to be kept.
func (v *visit) hand(name, media string, content []byte) error {
	h := v.w.Header()
	h.Set("Content-Type", media)
	h.Set("Content-Disposition", `attachment; filename="`+name+`"`)
	_, err := v.w.Write(content)
	return err
}

// showPDF answers with a paper that the browser shows and prints.
func (v *visit) showPDF(name string, content []byte) error {
	h := v.w.Header()
	h.Set("Content-Type", "application/pdf")
	h.Set("Content-Disposition", `inline; filename="`+name+`"`)
	_, err := v.w.Write(content)
	return err
}

// A jobKitShow is the kit page of a job.
type jobKitShow struct {
	Job     *shop.Job
	Stop    *shop.StandingStop
	Role    shop.Role
	Choices []shop.KitChoice
	Shown   *kitShow // the one on the bench, else the first that fits
}

// jobKitPage shows which kit fits the job's casting, or that the one on the bench does not.
func jobKitPage(v *visit) error {
	j, err := v.job()
	if err != nil {
		return err
	}
	s := jobKitShow{Job: j, Role: v.who.Role}
	if s.Choices, err = v.shop.KitsFor(v.ctx(), j); err != nil {
		return err
	}
	for _, st := range j.Stops() {
		if st.Key == "kit" {
			s.Stop = &st
		}
	}
	want := v.r.URL.Query().Get("kit")
	for i, c := range s.Choices {
		if want == "" && i == 0 || want == c.Kit.Name+"."+c.Revision.Name {
			batch := ""
			if c.Bench {
				if lot, err := v.shop.Lot(v.ctx(), j.Value("plates", "kit").Link.ID); err == nil {
					batch = lot.Lot.Batch
				}
			}
			shown := kitShowOf(c.Kit, c.Revision, batch)
			s.Shown = &shown
		}
	}
	return v.show(jobKitSheet(v.frame("Plate kit").ofJob(j), s))
}

// weldLinks are the pages of kit and welds that belong to a step.
func weldLinks(step shop.StepKey) []pageLink {
	kit, plan, log := pageLink{"kit", "Plate kit"}, pageLink{"weld-plan", "Weld plan"}, pageLink{"weld-log", "Weld log, run by run"}
	switch step {
	case "plates", "drill":
		return []pageLink{kit, plan}
	case "jig", "cooled", "resin":
		return []pageLink{plan, log}
	case "weld":
		return []pageLink{log, plan, kit}
	}
	return nil
}

// A pageLink leads to a page of a job.
type pageLink struct{ Key, Title string }
