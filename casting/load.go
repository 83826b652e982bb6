package casting

import (
	"fmt"
	"os"
	"path/filepath"

	"github.com/goccy/go-yaml"

	"axlewright/axle"
)

// LoadCatalogue reads catalogue files, joins them in order and checks the whole.
//
// Errors: axle.Findings for everything wrong with the data, with file and line.
func LoadCatalogue(paths ...string) (Catalogue, error) {
	return shelf{}.catalogue(paths)
}

func (s shelf) catalogue(paths []string) (Catalogue, error) {
	var all Catalogue
	var found axle.Findings
	for _, path := range paths {
		var c Catalogue
		if f := s.read(path, &c); len(f) > 0 {
			found = append(found, f...)
			continue
		}
		found = append(found, all.join(c, path)...)
	}
	if len(found) == 0 {
		for i := range all.Variants {
			found = append(found, all.resolve(&all.Variants[i])...)
		}
	}
	if len(found) == 0 {
		found = all.Check()
	}
	if len(found) > 0 {
		return all, s.shown(paths[len(paths)-1], found)
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
			f := axle.FindingOf(fmt.Sprintf("variants[%s].shows.%s", v.Name, t.Feature), err)
			f.File = v.File
			found = append(found, f)
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
	s := shelf{}
	if found := s.read(path, &b); len(found) > 0 {
		return b, Catalogue{}, s.shown(path, found)
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
	c, err := s.catalogue(files)
	if err != nil {
		return b, c, err
	}
	if found := b.resolve(&c); len(found) > 0 {
		return b, c, s.shown(path, found)
	}
	return b, c, nil
}

// IsBench says whether a file tells of one casting, and not of variants. A file
// that cannot be read is none, so that it is read as a catalogue and refused.
func IsBench(path string) bool {
	var top map[string]any
	text, err := os.ReadFile(path)
	if err != nil || yaml.Unmarshal(text, &top) != nil {
		return false
	}
	_, casting := top["casting"]
	return casting
}
