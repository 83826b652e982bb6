package axle

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"unicode/utf8"

	"github.com/goccy/go-yaml"
)

// MaxFile is the largest data file that is read, in bytes. A catalogue of a
// thousand castings is about 4 MB.
const MaxFile = 32 << 20

// LoadEnquiry reads an enquiry and the catalogue files it names, which are
// looked for beside it, and checks both.
//
// Errors: Findings for everything wrong with the data, each with file and line.
func LoadEnquiry(path string) (Enquiry, Catalogue, error) {
	var e Enquiry
	if err := decodeFile(path, &e); err != nil {
		return e, Catalogue{}, err
	}
	if len(e.Catalogue) == 0 {
		return e, Catalogue{}, Findings{{File: path, Field: "catalogue", Problem: "no catalogue is named; add a line such as: catalogue: [tarnhow.yaml]"}}
	}
	var files []string
	for _, name := range e.Catalogue {
		if !filepath.IsAbs(name) {
			name = filepath.Join(filepath.Dir(path), name)
		}
		files = append(files, name)
	}
	c, err := LoadCatalogue(files...)
	if err != nil {
		return e, c, err
	}
	applyDefaults(&e, c.DefaultDoubts)
	return e, c, within(path, e.check(&c)).errorOrNil()
}

// LoadCatalogue reads catalogue files, joins them in order and checks the whole.
//
// Errors: Findings for everything wrong with the data, each with file and line.
func LoadCatalogue(paths ...string) (Catalogue, error) {
	var all Catalogue
	var found Findings
	for _, path := range paths {
		var c Catalogue
		if err := decodeFile(path, &c); err != nil {
			var f Findings
			if !errors.As(err, &f) {
				return all, err
			}
			found = append(found, f...)
			continue
		}
		found = append(found, within(path, c.checkFigures())...)
		all.join(c)
	}
	if len(found) > 0 {
		return all, found
	}
	applyDefaults(&all, all.DefaultDoubts)
	return all, within(paths[len(paths)-1], all.checkNames()).errorOrNil()
}

// within adds the file's name to findings.
func within(path string, found Findings) Findings {
	for i := range found {
		found[i].File = path
	}
	return found
}

// decodeFile reads one YAML file strictly into v.
func decodeFile(path string, v any) error {
	file, err := os.Open(path)
	if err != nil {
		return Findings{{File: path, Problem: plainOpenError(err)}}
	}
	defer file.Close()
	text, err := io.ReadAll(io.LimitReader(file, MaxFile+1))
	if err != nil {
		return Findings{{File: path, Problem: "cannot be read: " + err.Error()}}
	}
	return decode(path, text, v)
}

func plainOpenError(err error) string {
	if errors.Is(err, os.ErrNotExist) {
		return "there is no such file; check the name and the folder"
	}
	return "cannot be opened: " + err.Error()
}

// decode reads YAML text strictly into v: unknown and repeated keys, wrong
// types and units are refused with line, column and a caret.
func decode(path string, text []byte, v any) error {
	switch {
	case len(text) > MaxFile:
		return Findings{{File: path, Problem: fmt.Sprintf("is larger than %d MB, more than any catalogue; is it the right file?", MaxFile>>20)}}
	case len(bytes.TrimSpace(text)) == 0:
		return Findings{{File: path, Problem: "is empty; \"axlewright demo\" writes examples to start from"}}
	case bytes.IndexByte(text, 0) >= 0 || !utf8.Valid(text):
		return Findings{{File: path, Problem: "is not text in UTF-8; expected a YAML file"}}
	}
	err := yaml.UnmarshalWithOptions(text, v, yaml.Strict())
	if err == nil {
		return nil
	}
	finding := Finding{File: path, Problem: yaml.FormatError(err, false, true)}
	var positioned yaml.Error
	if errors.As(err, &positioned) && positioned.GetToken() != nil {
		finding.Line = positioned.GetToken().Position.Line
	}
	return Findings{finding}
}

// join adds the contents of another file.
func (c *Catalogue) join(more Catalogue) {
	c.DefaultDoubts = append(c.DefaultDoubts, more.DefaultDoubts...)
	c.Castings = append(c.Castings, more.Castings...)
	c.GearSets = append(c.GearSets, more.GearSets...)
	c.Bearings = append(c.Bearings, more.Bearings...)
	c.DiffCentres = append(c.DiffCentres, more.DiffCentres...)
	c.HalfShafts = append(c.HalfShafts, more.HalfShafts...)
	c.Upgrades = append(c.Upgrades, more.Upgrades...)
	c.Duties = append(c.Duties, more.Duties...)
	c.Measurements = append(c.Measurements, more.Measurements...)
	for target, value := range map[*float64]float64{
		&c.Labour: more.Labour, &c.WantedChance: more.WantedChance,
		&c.Standard.Minutes: more.Standard.Minutes, &c.Standard.Parts: more.Standard.Parts,
	} {
		if value != 0 {
			*target = value
		}
	}
}

// applyDefaults gives every figure without a doubt of its own the catalogue's
// doubt for its kind, and marks it.
func applyDefaults(v any, defaults []DefaultDoubt) {
	percent := map[string]float64{}
	for _, d := range defaults {
		percent[d.Kind] = d.Percent
	}
	EachFigure(v, "", func(place string, n *Number) {
		if n.Given() && n.Shape == Exact && !n.Certain && n.Value != 0 {
			if share := percent[n.Kind] / 100; share > 0 {
				n.spreadShare(share)
				n.ByDefault = true
			}
		}
	})
}
