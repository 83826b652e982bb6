package axle

import (
	"path/filepath"
	"slices"

	"github.com/goccy/go-yaml/ast"
)

// LoadEnquiry reads an enquiry and the catalogue files it names, which are
// looked for beside it, and checks both. A duty that was logged, or that states
// torques, is worked out for the enquiry's vehicle.
//
// Errors: Findings for everything wrong with the data, each with file and line.
func LoadEnquiry(path string) (Enquiry, Catalogue, error) {
	own, shared := newReading(), newReading() // the enquiry's places and the catalogue's
	var e Enquiry
	own.file(path, &e)
	if own.broken || len(e.Catalogue) == 0 {
		return e, Catalogue{}, own.found.errorOrNil()
	}
	var files []string
	for _, name := range e.Catalogue {
		files = append(files, beside(path, name))
	}
	c := shared.catalogue(files)
	if !shared.broken {
		own.checkEnquiry(&e, &c)
	}
	settleDoubts(&e, c.DefaultDoubts)
	settleDoubts(&c, c.DefaultDoubts)
	if len(own.found)+len(shared.found) == 0 {
		shared.settleDuty(&e, &c)
	}
	return e, c, append(own.found, shared.found...).errorOrNil()
}

// LoadCatalogue reads catalogue files, joins them in order and checks the whole.
// Where two files state one amount, such as labour, the later goes.
//
// Errors: Findings for everything wrong with the data, each with file and line.
func LoadCatalogue(paths ...string) (Catalogue, error) {
	r := newReading()
	c := r.catalogue(paths)
	settleDoubts(&c, c.DefaultDoubts)
	return c, r.found.errorOrNil()
}

// catalogue reads and checks catalogue files.
func (r *reading) catalogue(paths []string) Catalogue {
	var c Catalogue
	for i, path := range paths {
		if slices.ContainsFunc(paths[:i], func(p string) bool { return filepath.Clean(p) == filepath.Clean(path) }) {
			r.broken = true
			r.found = append(r.found, Finding{File: path, Problem: "is named twice; name each file once"})
			continue
		}
		before := len(c.Duties)
		r.file(path, &c)
		for i := before; i < len(c.Duties); i++ {
			if d := &c.Duties[i]; d.Record != "" {
				d.Record = beside(path, d.Record)
			}
		}
	}
	if !r.broken {
		r.checkCatalogue(&c)
	}
	return c
}

// beside is a file that another one names: in the same folder, unless the name
// says otherwise.
func beside(path, name string) string {
	if filepath.IsAbs(name) {
		return name
	}
	return filepath.Join(filepath.Dir(path), name)
}

// IsEnquiry says whether a file looks like an enquiry rather than a catalogue:
// it tells of a vehicle, a mounting or gears. A file that cannot be read is none.
func IsEnquiry(path string) bool {
	text, problem := readText(path)
	if problem != "" {
		return false
	}
	node, finding := parseText(&source{}, text)
	if finding != nil {
		return false
	}
	pairs, _ := pairsOf(node)
	return slices.ContainsFunc(pairs, func(pair *ast.MappingValueNode) bool {
		return slices.Contains([]string{"vehicle", "mounting", "gears"}, keyText(pair))
	})
}
