package weldplan

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"unicode/utf8"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/parser"

	"axlewright/axle"
)

// LoadJob reads a job and the weld logs it names, which are looked for beside it,
// and checks them.
//
// Errors: axle.Findings for everything wrong with the data, with file, line and
// column.
func LoadJob(path string) (Job, []Entry, error) {
	var j Job
	s, err := readSheet(path, &j)
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

// readSheet reads one YAML file strictly into v.
func readSheet(path string, v any) (*sheet, error) {
	file, err := os.Open(path)
	if err != nil {
		return nil, axle.Findings{{File: path, Problem: plainOpenError(err)}}
	}
	defer file.Close()
	raw, err := io.ReadAll(io.LimitReader(file, axle.MaxFile+1))
	if err != nil {
		return nil, axle.Findings{{File: path, Problem: "cannot be read: " + err.Error()}}
	}
	return parseSheet(path, raw, v)
}

func plainOpenError(err error) string {
	if errors.Is(err, os.ErrNotExist) {
		return "there is no such file; check the name and the folder"
	}
	var wrapped *os.PathError
	if errors.As(err, &wrapped) {
		err = wrapped.Err
	}
	return "cannot be opened: " + err.Error()
}

// parseSheet reads YAML text strictly into v: unknown and repeated keys, wrong
// kinds of values and wrong units are refused.
func parseSheet(path string, raw []byte, v any) (*sheet, error) {
	refuse := func(problem string) (*sheet, error) {
		return nil, axle.Findings{{File: path, Problem: problem}}
	}
	switch {
	case len(raw) > axle.MaxFile:
		return refuse(fmt.Sprintf("is larger than %d MB; is it the right file?", axle.MaxFile>>20))
	case len(bytes.TrimSpace(raw)) == 0:
		return refuse("is empty; expected a YAML file")
	case bytes.IndexByte(raw, 0) >= 0 || !utf8.Valid(raw):
		return refuse("is not text in UTF-8; expected a YAML file")
	case tooDeep(raw):
		return refuse("is nested deeper than any weld plan; is it the right file?")
	}
	text := strings.TrimPrefix(string(raw), "\ufeff")
	file, err := parser.ParseBytes([]byte(text), 0)
	if err != nil {
		return nil, axle.Findings{yamlFinding(&sheet{file: path, lines: strings.Split(text, "\n")}, err)}
	}
	var root ast.Node
	for _, doc := range file.Docs {
		switch {
		case doc.Body == nil:
		case root != nil:
			return refuse("holds a second document; expected one in a file")
		default:
			root = doc.Body
		}
	}
	if root == nil {
		return refuse("holds nothing but comments")
	}
	s := newSheet(path, text, root)
	if s.odd != nil {
		p := s.odd.GetToken().Position
		return nil, axle.Findings{s.at(p.Line, p.Column, "", "anchors (&), aliases (*), tags (!) and odd keys are not used in these files; write the value out")}
	}
	if err := decode(text, v); err != nil {
		return nil, axle.Findings{yamlFinding(s, err)}
	}
	return s, nil
}

// decode fills in v. The YAML reader has been seen to panic on odd files; that is
// no reason for this program to end.
func decode(text string, v any) (err error) {
	defer func() {
		if recover() != nil {
			err = errors.New("the YAML reader cannot make sense of it")
		}
	}()
	return yaml.UnmarshalWithOptions([]byte(text), v, yaml.Strict())
}

// tooDeep spots brackets within brackets and steps within steps that would take
// the parser a time that grows with their cube.
func tooDeep(raw []byte) bool {
	const (
		mostOpen   = 100
		mostIndent = 120 // characters before the first word of a line
	)
	open, indent, leading := 0, 0, true
	for _, c := range raw {
		switch c {
		case '[', '{':
			open++
		case ']', '}':
			open = max(0, open-1)
		case '\n':
			indent, leading = 0, true
			continue
		}
		if leading = leading && (c == ' ' || c == '-' || c == '?'); leading {
			indent++
		}
		if open > mostOpen || indent > mostIndent {
			return true
		}
	}
	return false
}

// yamlFinding is an error of the YAML reader in our own form.
func yamlFinding(s *sheet, err error) axle.Finding {
	var y yaml.Error
	if !errors.As(err, &y) || y.GetToken() == nil || y.GetToken().Position == nil {
		return axle.Finding{File: s.file, Problem: "is not YAML of a weld plan: " + err.Error()}
	}
	problem := y.GetMessage()
	var unknown *yaml.UnknownFieldError
	var repeated *yaml.DuplicateKeyError
	var syntax *yaml.SyntaxError
	switch {
	case s.places == nil && errors.As(err, &syntax):
		problem = "is not YAML from here on: " + problem + "; look for a bracket or a quote left open, or a missing space after a colon"
	case errors.As(err, &unknown):
		problem = fmt.Sprintf("unknown key %q here", y.GetToken().Value)
	case errors.As(err, &repeated):
		problem = fmt.Sprintf("key %q stands twice", y.GetToken().Value)
	}
	p := y.GetToken().Position
	return s.at(p.Line, p.Column, "", problem)
}
