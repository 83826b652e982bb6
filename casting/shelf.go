package casting

import (
	"cmp"
	"slices"

	"axlewright/axle"
)

// A shelf keeps the files that were read, to show places in them.
type shelf map[string]*axle.Sheet

// read reads one YAML file strictly into v.
func (s shelf) read(path string, v any) axle.Findings {
	sheet, err := axle.ReadSheet(path, v)
	s[path] = sheet
	return found(err)
}

// found is what an error of axle tells.
func found(err error) axle.Findings {
	if err == nil {
		return nil
	}
	return err.(axle.Findings)
}

// shown adds to findings the file, where they have none, and the line they are
// about with a caret; they come out as they stand in their files.
func (s shelf) shown(path string, found axle.Findings) axle.Findings {
	for i, f := range found {
		file := cmp.Or(f.File, path)
		if sheet := s[file]; sheet != nil && f.Line > 0 && f.Excerpt == "" {
			f = sheet.FindingAt(f.Line, f.Column, f.Field, f.Problem)
		}
		f.File = file
		found[i] = f
	}
	slices.SortStableFunc(found, func(a, b axle.Finding) int {
		return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	return found
}
