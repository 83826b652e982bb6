package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"axlewright/assess"
	"axlewright/document"
	"axlewright/document/paper"
)

// writePaper writes a paper as PDF.
func writePaper(path string, p paper.Paper) error {
	return replace(path, "%PDF-", "PDF", func(f *os.File) error { return p.WritePDF(f) })
}

// writePage writes advice for the screen.
func writePage(path string, a *assess.Advice) error {
	return replace(path, "<!doctype html>", "page of HTML", func(f *os.File) error { return document.AdvicePage(f, a) })
}

// replace writes a file in the place of an older one that begins like it, but of
// no other.
func replace(path, begins, kind string, write func(*os.File) error) error {
	if there, err := os.ReadFile(path); err == nil && len(there) > 0 && !bytes.HasPrefix(bytes.ToLower(there), []byte(strings.ToLower(begins))) {
		return fmt.Errorf("%s is there already and is no %s; name another file", path, kind)
	}
	return writeFile(path, write)
}

// writeFile writes a file whole or not at all: beside it first, then in its place.
func writeFile(path string, write func(*os.File) error) error {
	f, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+"-*")
	if err != nil {
		return cannotWrite(path, err)
	}
	defer os.Remove(f.Name()) // fails once it has been renamed, as it should
	if err := write(f); err != nil {
		f.Close()
		return err
	}
	if err := f.Chmod(0o644); err != nil {
		f.Close()
		return err
	}
	if err := f.Sync(); err != nil {
		f.Close()
		return cannotWrite(path, err)
	}
	if err := f.Close(); err != nil {
		return err
	}
	if err := os.Rename(f.Name(), path); err != nil {
		return cannotWrite(path, err)
	}
	return nil
}

// cannotWrite leaves out the name that the file had while it was written.
func cannotWrite(path string, err error) error {
	var wrapped *os.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &wrapped):
		err = wrapped.Err
	case errors.As(err, &link):
		err = link.Err
	}
	return fmt.Errorf("%s cannot be written: %w", path, err)
}
