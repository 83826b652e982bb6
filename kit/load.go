package kit

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

	"axlewright/axle"
)

// largest is the size of the largest kit file that is read, in bytes.
const largest = 4 << 20

// A source is the text of a file, kept to show places in it.
type source struct {
	file  string
	lines []string
}

// Load reads a kit file. The file bears the name of the kit.
//
// Errors: axle.Findings with line, column and a caret.
func Load(path string) (Kit, error) {
	text, err := read(path)
	if err != nil {
		return Kit{}, err
	}
	k, err := Parse(path, text)
	if err != nil {
		return k, err
	}
	if name := strings.TrimSuffix(strings.TrimSuffix(filepath.Base(path), ".yaml"), ".yml"); name != k.Kit.Text {
		return k, axle.Findings{k.source.finding(k.Kit, "kit",
			fmt.Sprintf("the file is called %q; a kit file bears the name of its revision: %s.yaml", filepath.Base(path), k.Kit.Text))}
	}
	return k, nil
}

// Parse reads the text of a kit file; file is its name for findings.
//
// Errors: axle.Findings with line, column and a caret.
func Parse(file string, text []byte) (Kit, error) {
	var k Kit
	s, err := decode(file, text, &k)
	k.source = s
	if err != nil {
		return k, err
	}
	if _, err := ParseName(k.Kit.Text); err != nil {
		return k, axle.Findings{s.finding(k.Kit, "kit", err.Error())}
	}
	return k, nil
}

func read(path string) ([]byte, error) {
	file, err := os.Open(path)
	if errors.Is(err, os.ErrNotExist) {
		return nil, axle.Findings{{File: path, Problem: "there is no such file; check the name and the folder"}}
	}
	if err != nil {
		return nil, axle.Findings{{File: path, Problem: "cannot be opened: " + err.Error()}}
	}
	defer file.Close()
	text, err := io.ReadAll(io.LimitReader(file, largest+1))
	if err != nil {
		return nil, axle.Findings{{File: path, Problem: "cannot be read: " + err.Error()}}
	}
	return text, nil
}

// decode reads YAML text strictly into v: unknown and repeated keys and wrong
// types are refused.
func decode(file string, text []byte, v any) (source, error) {
	problem := ""
	switch {
	case len(text) > largest:
		problem = fmt.Sprintf("is larger than %d MB; is it the right file?", largest>>20)
	case len(bytes.TrimSpace(text)) == 0:
		problem = "is empty; expected a YAML file"
	case bytes.IndexByte(text, 0) >= 0 || !utf8.Valid(text):
		problem = "is not text in UTF-8; expected a YAML file"
	}
	if problem != "" {
		return source{file: file}, axle.Findings{{File: file, Problem: problem}}
	}
	s := source{file, strings.Split(string(text), "\n")}
	if err := unmarshal(text, v); err != nil {
		f := axle.Finding{File: file, Problem: err.Error()}
		var placed yaml.Error
		if errors.As(err, &placed) && placed.GetToken() != nil {
			at := placed.GetToken().Position
			f = s.finding(Typed{Line: at.Line, Column: at.Column}, "", placed.GetMessage())
		}
		return s, axle.Findings{f}
	}
	return s, nil
}

// unmarshal turns a panic of the YAML library, which some bare tags cause, into
// an error.
func unmarshal(text []byte, v any) (err error) {
	defer func() {
		if trouble := recover(); trouble != nil {
			err = fmt.Errorf("is not YAML that can be read (%v)", trouble)
		}
	}()
	return yaml.UnmarshalWithOptions(text, v, yaml.Strict())
}

// finding is a finding at the place of something typed, with its line and a caret.
func (s source) finding(t Typed, field, problem string) axle.Finding {
	f := axle.Finding{File: s.file, Line: t.Line, Column: t.Column, Field: field, Problem: problem}
	if t.Line < 1 || t.Line > len(s.lines) {
		return f
	}
	line := []rune(strings.TrimRight(strings.ReplaceAll(s.lines[t.Line-1], "\t", " "), "\r"))
	column := min(max(t.Column-1, 0), len(line))
	from := max(0, column-60)
	to := min(len(line), from+100)
	number := fmt.Sprintf("%5d | ", t.Line)
	f.Excerpt = number + string(line[from:to]) + "\n" + strings.Repeat(" ", len(number)-2) + "| " + strings.Repeat(" ", column-from) + "^"
	return f
}
