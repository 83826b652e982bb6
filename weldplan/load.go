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

// ParseJob reads the text of a job and checks it; file is its name for findings.
// Logs that it names are not read: who keeps the text keeps the logs.
//
// Errors: axle.Findings with line and column.
func ParseJob(file, text string) (Job, error) {
	var j Job
	s, err := axle.DecodeSheet(file, text, &j)
	if err != nil {
		return j, err
	}
	if found := j.check(s); len(found) > 0 {
		return j, found
	}
	return j, nil
}
