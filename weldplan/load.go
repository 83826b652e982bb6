package weldplan

import (
	"path/filepath"

	"axlewright/axle"
)

// LoadJob reads a job and the weld logs it names, which are looked for beside it,
// and checks them.
//
// Errors: axle.Findings for everything wrong with the data, with file, line and
// column.
func LoadJob(path string) (Job, []Entry, error) {
	var j Job
	s, err := axle.ReadSheet(path, &j)
	if err != nil {
		return j, nil, err
	}
	if found := j.check(s); len(found) > 0 {
		return j, nil, found
	}
	var entries []Entry
	for _, name := range j.Logs {
		if !filepath.IsAbs(name) {
			name = filepath.Join(filepath.Dir(path), name)
		}
		more, err := LoadLog(name)
		if err != nil {
			return j, nil, err
		}
		entries = append(entries, more...)
	}
	return j, entries, nil
}
