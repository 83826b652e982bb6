package web

import (
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"slices"

	"axlewright/axle"
	"axlewright/examples"
	"axlewright/shop"
)

// catalogueFolder is where the files of the sums are in the shop's folder.
const catalogueFolder = "catalogue"

// catalogue lists the files that the sums take castings, gears and upgrades
// from: those of the folder catalogue, else the YAML files of the shop's folder
// that are no enquiries.
func (s *Server) catalogue() []string {
	if s.o.Folder == "" {
		return nil
	}
	if files := yamlIn(filepath.Join(s.o.Folder, catalogueFolder)); len(files) > 0 {
		return files
	}
	return slices.DeleteFunc(yamlIn(s.o.Folder), axle.IsEnquiry)
}

// yamlIn lists the YAML files of a folder, none where it is not there.
func yamlIn(dir string) []string {
	names, _ := fs.Glob(os.DirFS(dir), "*.yaml") // the pattern is well formed
	var files []string
	for _, n := range names {
		files = append(files, filepath.Join(dir, n))
	}
	return files
}

// exampleCatalogue are the invented examples that a shop may begin with.
var exampleCatalogue = []string{"tarnhow.yaml", "upgrades.yaml", "duties.yaml"}

// beginCatalogue copies the examples into the shop's folder.
func beginCatalogue(v *visit) error {
	if err := v.who.Must(shop.ActSettings); err != nil {
		return err
	}
	if v.o.Folder == "" || len(v.catalogue()) > 0 {
		return shop.Fault(shop.Conflict, "The shop has a catalogue already: nothing was written.")
	}
	dir := filepath.Join(v.o.Folder, catalogueFolder)
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return shop.Fault(shop.Internal, "The catalogue’s folder cannot be made.").Because(err)
	}
	for _, name := range exampleCatalogue {
		text, err := fs.ReadFile(examples.Files, name)
		if err == nil {
			err = os.WriteFile(filepath.Join(dir, name), text, 0o644)
		}
		if err != nil {
			return shop.Fault(shop.Internal, "The examples cannot be written.").Because(err)
		}
	}
	back := "/"
	if ref, err := url.Parse(v.r.Referer()); err == nil && ref.Host == v.r.Host {
		back = local(ref.Path)
	}
	return v.see(back)
}
