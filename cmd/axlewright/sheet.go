package main

import (
	"fmt"
	"os"
	"path/filepath"

	"axlewright/assess"
	"axlewright/document"
)

// writeSheet writes the A4 page of an advice.
func writeSheet(path string, a *assess.Advice) error {
	return writeFile(path, func(f *os.File) error { return document.AdviceSheet(f, a) })
}

// writeFile writes a file whole or not at all: beside it first, then in its place.
func writeFile(path string, write func(*os.File) error) error {
	f, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+"-*")
	if err != nil {
		return fmt.Errorf("%s cannot be written: %w", path, err)
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
		return fmt.Errorf("%s cannot be written: %w", path, err)
	}
	if err := f.Close(); err != nil {
		return err
	}
	return os.Rename(f.Name(), path)
}
