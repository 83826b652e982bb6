package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"axlewright/assess"
	"axlewright/document"
	"axlewright/drawing"
	"axlewright/examples"
)

// demoEnquiry is the enquiry that the demo answers.
const demoEnquiry = "enquiries/14-front-coast.yaml"

func newDemo() *cobra.Command {
	return &cobra.Command{
		Use:   "demo [DIR]",
		Short: "Make an invented shop in a folder, answer an enquiry, write the sheet",
		Long: `Make an invented shop in DIR (axlewright-demo where left out): a catalogue, a
dozen enquiries and the reference axle to try the other commands on. Answer one
enquiry and write its sheet and pictures beside it.`,
		Args: arguments(cobra.MaximumNArgs(1), "at most one folder"),
		RunE: func(cmd *cobra.Command, args []string) error {
			dir := "axlewright-demo"
			if len(args) == 1 {
				dir = args[0]
			}
			if err := copyExamples(dir); err != nil {
				return err
			}
			out := cmd.OutOrStdout()
			fmt.Fprintf(out, "An invented shop is in %s: catalogue, enquiries, reference axle.\n\n", dir)
			advice, err := advise(cmd.Context(), filepath.Join(dir, filepath.FromSlash(demoEnquiry)), assess.Options{}, cmd.ErrOrStderr())
			if err != nil {
				return err
			}
			if err := document.AdviceText(out, &advice); err != nil {
				return err
			}
			return writePictures(dir, &advice, func(name string) { fmt.Fprintf(out, "wrote %s\n", filepath.Join(dir, name)) })
		},
	}
}

// writePictures writes the sheet of an advice and its pictures.
func writePictures(dir string, a *assess.Advice, wrote func(name string)) error {
	if err := writeSheet(filepath.Join(dir, "advice.html"), a); err != nil {
		return err
	}
	wrote("advice.html")
	for _, picture := range []struct {
		name string
		draw func(*assess.Advice) drawing.Drawing
	}{
		{"ladder.svg", drawing.Ladder}, {"peg.svg", drawing.PegCurve}, {"doubt.svg", drawing.DoubtBars},
	} {
		d := picture.draw(a)
		if err := writeFile(filepath.Join(dir, picture.name), func(f *os.File) error { return drawing.WriteSVG(f, d) }); err != nil {
			return err
		}
		wrote(picture.name)
	}
	return nil
}

// copyExamples writes the embedded examples below dir. A file that is there and
// differs is somebody's work: it is kept, and the demo stops.
func copyExamples(dir string) error {
	return fs.WalkDir(examples.Files, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		target := filepath.Join(dir, filepath.FromSlash(name))
		if entry.IsDir() {
			return os.MkdirAll(target, 0o755)
		}
		text, err := fs.ReadFile(examples.Files, name)
		if err != nil {
			return err
		}
		there, err := os.ReadFile(target)
		switch {
		case errors.Is(err, fs.ErrNotExist):
			return os.WriteFile(target, text, 0o644)
		case err != nil:
			return err
		case string(there) != string(text):
			return fmt.Errorf("%s is there already and differs from the example; choose another folder", target)
		}
		return nil
	})
}
