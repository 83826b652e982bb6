package casting

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"unicode/utf8"

	"github.com/goccy/go-yaml"

	"axlewright/axle"
)

// LoadCatalogue reads catalogue files, joins them in order and checks the whole.
//
// Errors: axle.Findings for everything wrong with the data, with file and line.
func LoadCatalogue(paths ...string) (Catalogue, error) {
	var all Catalogue
	var found axle.Findings
	for _, path := range paths {
		var c Catalogue
		if err := decodeFile(path, &c); err != nil {
			var f axle.Findings
			if !errors.As(err, &f) {
				return all, err
			}
			found = append(found, f...)
			continue
		}
		found = append(found, all.join(c, path)...)
	}
	if len(found) > 0 {
		return all, found
	}
	for i := range all.Variants {
		found = append(found, all.resolve(&all.Variants[i])...)
	}
	if len(found) == 0 {
		found = all.Check()
	}
	if len(found) > 0 {
		return all, inFile(paths[len(paths)-1], found)
	}
	return all, nil
}

// join adds the contents of another file.
func (c *Catalogue) join(more Catalogue, path string) axle.Findings {
	var found axle.Findings
	if more.Decide != (Decide{}) {
		if c.Decide != (Decide{}) {
			found = append(found, axle.Finding{File: path, Field: "decide", Problem: "stands in two files; leave it in one"})
		}
		c.Decide = more.Decide
	}
	c.History.NewFound += more.History.NewFound
	c.History.ModifiedFound += more.History.ModifiedFound
	for i := range more.Features {
		more.Features[i].File = path
	}
	for i := range more.Variants {
		more.Variants[i].File = path
	}
	c.Tools = append(c.Tools, more.Tools...)
	c.Features = append(c.Features, more.Features...)
	c.Variants = append(c.Variants, more.Variants...)
	return found
}

// resolve understands the traits of a variant. A trait of an unknown feature
// is left for Check to find.
func (c *Catalogue) resolve(v *Variant) axle.Findings {
	var found axle.Findings
	for i := range v.Shows {
		t := &v.Shows[i]
		k := c.feature(t.Feature)
		if k < 0 {
			continue
		}
		if err := t.resolve(&c.Features[k]); err != nil {
			found = append(found, positioned(v.File, err, fmt.Sprintf("variants[%s].shows.%s", v.Name, t.Feature)))
		}
	}
	return found
}

// LoadBench reads what was seen of one casting and the catalogue files it
// names, which are looked for beside it, and checks both.
//
// Errors: axle.Findings for everything wrong with the data, with file and line.
func LoadBench(path string) (Bench, Catalogue, error) {
	var b Bench
	if err := decodeFile(path, &b); err != nil {
		return b, Catalogue{}, err
	}
	if len(b.Catalogue) == 0 {
		return b, Catalogue{}, axle.Findings{{File: path, Field: "catalogue", Problem: "no catalogue is named; add a line such as: catalogue: [tarnhow-variants.yaml]"}}
	}
	var files []string
	for _, name := range b.Catalogue {
		if !filepath.IsAbs(name) {
			name = filepath.Join(filepath.Dir(path), name)
		}
		files = append(files, name)
	}
	c, err := LoadCatalogue(files...)
	if err != nil {
		return b, c, err
	}
	if found := b.resolve(&c); len(found) > 0 {
		return b, c, inFile(path, found)
	}
	return b, c, nil
}

// inFile adds the file's name to findings that have none.
func inFile(path string, found axle.Findings) axle.Findings {
	for i := range found {
		if found[i].File == "" {
			found[i].File = path
		}
	}
	return found
}

// decodeFile reads one YAML file strictly into v.
func decodeFile(path string, v any) error {
	file, err := os.Open(path)
	if errors.Is(err, os.ErrNotExist) {
		return axle.Findings{{File: path, Problem: "there is no such file; check the name and the folder"}}
	}
	if err != nil {
		return axle.Findings{{File: path, Problem: "cannot be opened: " + err.Error()}}
	}
	defer file.Close()
	text, err := io.ReadAll(io.LimitReader(file, axle.MaxFile+1))
	if err != nil {
		return axle.Findings{{File: path, Problem: "cannot be read: " + err.Error()}}
	}
	return decode(path, text, v)
}

// decode reads YAML text strictly into v: unknown and repeated keys, wrong
// types and units are refused with line, column and a caret.
func decode(path string, text []byte, v any) error {
	switch {
	case len(text) > axle.MaxFile:
		return axle.Findings{{File: path, Problem: fmt.Sprintf("is larger than %d MB; is it the right file?", axle.MaxFile>>20)}}
	case len(bytes.TrimSpace(text)) == 0:
		return axle.Findings{{File: path, Problem: "is empty; expected a YAML file"}}
	case bytes.IndexByte(text, 0) >= 0 || !utf8.Valid(text):
		return axle.Findings{{File: path, Problem: "is not text in UTF-8; expected a YAML file"}}
	}
	if err := yaml.UnmarshalWithOptions(text, v, yaml.Strict()); err != nil {
		return axle.Findings{positioned(path, err, "")}
	}
	return nil
}

// positioned is a finding with the line and the caret of a YAML error.
func positioned(path string, err error, field string) axle.Finding {
	f := axle.Finding{File: path, Field: field, Problem: yaml.FormatError(err, false, true)}
	var y yaml.Error
	if errors.As(err, &y) && y.GetToken() != nil {
		f.Line = y.GetToken().Position.Line
	}
	return f
}
