package casting

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/goccy/go-yaml"

	"axlewright/axle"
)

// A shelf keeps the lines of the files that were read, to show places in them.
type shelf map[string][]string

// read reads one YAML file strictly into v.
func (s shelf) read(path string, v any) axle.Findings {
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
	return s.decode(path, text, v)
}

// decode reads YAML text strictly into v: unknown and repeated keys, wrong
// types and units are refused with their place.
func (s shelf) decode(path string, text []byte, v any) (found axle.Findings) {
	defer func() { // the YAML library breaks on some texts with tags and nothing behind them
		if broken := recover(); broken != nil {
			found = axle.Findings{{File: path, Problem: "cannot be read as YAML; is a tag (a word after !) or a dash left without anything behind it?"}}
		}
	}()
	switch {
	case len(text) > axle.MaxFile:
		return axle.Findings{{File: path, Problem: fmt.Sprintf("is larger than %d MB; is it the right file?", axle.MaxFile>>20)}}
	case len(bytes.TrimSpace(text)) == 0:
		return axle.Findings{{File: path, Problem: "is empty; expected a YAML file"}}
	case bytes.IndexByte(text, 0) >= 0 || !utf8.Valid(text):
		return axle.Findings{{File: path, Problem: "is not text in UTF-8; expected a YAML file"}}
	}
	s[path] = strings.Split(string(text), "\n")
	if err := yaml.UnmarshalWithOptions(text, v, yaml.Strict()); err != nil {
		return axle.Findings{positioned(path, err, "")}
	}
	return nil
}

// positioned is a finding at the place of a YAML error.
func positioned(path string, err error, field string) axle.Finding {
	f := axle.Finding{File: path, Field: field, Problem: err.Error()}
	var y yaml.Error
	if errors.As(err, &y) && y.GetToken() != nil {
		f.Problem, f.Line, f.Column = y.GetMessage(), y.GetToken().Position.Line, y.GetToken().Position.Column
	}
	return f
}

// shown adds to findings the file, where they have none, and the line they are
// about with a caret; they come out as they stand in their files.
func (s shelf) shown(path string, found axle.Findings) axle.Findings {
	for i := range found {
		f := &found[i]
		if f.File == "" {
			f.File = path
		}
		lines := s[f.File]
		if f.Line < 1 || f.Line > len(lines) {
			continue
		}
		line := strings.TrimRight(strings.ReplaceAll(lines[f.Line-1], "\t", " "), "\r")
		if f.Column == 0 {
			f.Column = len(line) - len(strings.TrimLeft(line, " ")) + 1
		}
		f.Excerpt = caret(line, f.Line, f.Column)
	}
	slices.SortStableFunc(found, func(a, b axle.Finding) int {
		return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	return found
}

// caret shows a line with a caret under a column; of a long line only the part
// around it.
func caret(line string, number, column int) string {
	const before, width = 60, 100 // characters
	runes := []rune(line)
	at := min(max(column-1, 0), len(runes))
	from := 0
	if len(runes) > width {
		from = max(0, at-before)
	}
	to := min(len(runes), from+width)
	head := fmt.Sprintf("%5d | ", number)
	return head + string(runes[from:to]) + "\n" + strings.Repeat(" ", len(head)-2) + "| " + strings.Repeat(" ", at-from) + "^"
}
