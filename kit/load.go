package kit

import (
	"fmt"
	"path/filepath"
	"strings"

	"axlewright/axle"
)

// Load reads a kit file. The file bears the name of the kit.
//
// Errors: axle.Findings with line, column and a caret.
func Load(path string) (Kit, error) {
	var k Kit
	sheet, err := axle.ReadSheet(path, &k)
	if k.sheet = sheet; err != nil {
		return k, err
	}
	if err := k.named(); err != nil {
		return k, err
	}
	if name := strings.TrimSuffix(strings.TrimSuffix(filepath.Base(path), ".yaml"), ".yml"); name != k.Kit.Text {
		return k, axle.Findings{k.finding(k.Kit, "kit",
			fmt.Sprintf("the file is called %q; a kit file bears the name of its revision: %s.yaml", filepath.Base(path), k.Kit.Text))}
	}
	return k, nil
}

// Parse reads the text of a kit file; file is its name for findings.
//
// Errors: axle.Findings with line, column and a caret.
func Parse(file string, text []byte) (Kit, error) {
	var k Kit
	sheet, err := axle.DecodeSheet(file, string(text), &k)
	if k.sheet = sheet; err != nil {
		return k, err
	}
	return k, k.named()
}

// named says whether the name of the kit is one.
func (k *Kit) named() error {
	if _, err := ParseName(k.Kit.Text); err != nil {
		return axle.Findings{k.finding(k.Kit, "kit", err.Error())}
	}
	return nil
}

// finding is a finding at the place of something typed.
func (k *Kit) finding(t Typed, field, problem string) axle.Finding {
	return k.sheet.FindingAt(t.Line, t.Column, field, problem)
}
