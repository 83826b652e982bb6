package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"net"
	"os"
	"os/signal"
	"path/filepath"
	"strings"
	"syscall"
	"time"

	"github.com/spf13/cobra"

	"axlewright/assess"
	"axlewright/axle"
	"axlewright/demo"
	"axlewright/document"
	"axlewright/drawing"
	"axlewright/examples"
	"axlewright/shop"
	"axlewright/sqlstore"
	"axlewright/web"
)

// demoEnquiry is the enquiry that the demo answers.
const demoEnquiry = "enquiries/14-front-coast.yaml"

func newDemo() *cobra.Command {
	var once bool
	s := serving{listen: benchAddress}
	cmd := &cobra.Command{
		Use:   "demo [DIR]",
		Short: "Make an invented shop in a folder, answer an enquiry, open the bench",
		Long: `Make an invented shop in DIR (axlewright-demo where left out): a catalogue, a
dozen enquiries, castings, kits and weld jobs to try the other commands on, and
Fellgate Axle Works with a dozen jobs in every state. Answer one enquiry, write
its sheet and pictures and what the other commands say, then open the bench in
the browser until Ctrl-C. --once stops after writing.`,
		Example: `  axlewright demo
  axlewright demo somewhere --once
  axlewright demo --listen 127.0.0.1:8421`,
		Args: arguments(cobra.MaximumNArgs(1), "at most one folder"),
		RunE: func(cmd *cobra.Command, args []string) error {
			s.dir, s.out = "axlewright-demo", cmd.ErrOrStderr()
			if len(args) == 1 {
				s.dir = args[0]
			}
			ctx, stop := signal.NotifyContext(cmd.Context(), os.Interrupt, syscall.SIGTERM)
			defer stop()
			if once {
				return makeDemo(ctx, cmd, s.dir)
			}
			listener, err := net.Listen("tcp", s.listen) // before the work: the port may be taken
			if err != nil {
				return cannotListen(s.listen, err)
			}
			if err := makeDemo(ctx, cmd, s.dir); err != nil {
				return errors.Join(err, listener.Close())
			}
			fmt.Fprintln(cmd.OutOrStdout())
			return s.on(ctx, listener)
		},
	}
	cmd.Flags().BoolVar(&once, "once", false, "stop after writing; open no bench")
	cmd.Flags().StringVar(&s.listen, "listen", s.listen, "address and port of the bench")
	return cmd
}

// makeDemo writes all of the demo into a folder.
func makeDemo(ctx context.Context, cmd *cobra.Command, dir string) error {
	if err := copyExamples(dir); err != nil {
		return err
	}
	out := cmd.OutOrStdout()
	fmt.Fprintf(out, "An invented shop is in %s: catalogue, enquiries, reference axle.\n\n", dir)
	file := filepath.Join(dir, filepath.FromSlash(demoEnquiry))
	advice, err := advise(ctx, file, assess.Options{}, cmd.ErrOrStderr())
	if err != nil {
		return err
	}
	if err := document.AdviceText(out, &advice); err != nil {
		return err
	}
	if err := writePictures(dir, &advice, func(name string) { fmt.Fprintf(out, "wrote %s\n", filepath.Join(dir, name)) }); err != nil {
		return err
	}
	for _, c := range demoCommands {
		if err := c.run(ctx, cmd, dir); err != nil {
			return err
		}
	}
	if err := fillDemo(ctx, dir, file, &advice); err != nil {
		return err
	}
	fmt.Fprintf(out, "\nThe sheet for the customer is %s: open and print it.\n", filepath.Join(dir, "advice.pdf"))
	fmt.Fprintf(out, "Fellgate Axle Works, with a dozen jobs in every state, is in the same folder.\n")
	return nil
}

// A demoCommand is one of the other commands, run as a person would run it.
type demoCommand struct {
	make func() *cobra.Command
	line string // its words; DIR is the demo's folder
	into string // what it prints is kept there
}

var demoCommands = []demoCommand{
	{newIdentify, "identify DIR/identify/number-ground-off.yaml", "identify.txt"},
	{newStations, "stations DIR/stations/t24.yaml", "stations.txt"},
	{newKit, "kit draw DIR/kits/KIT-T24-A.2.yaml --out DIR/plates --batch B0417", "plates.txt"},
	{newKit, "kit nest DIR/kits/nest-20.yaml --out DIR/sheets", "sheets.txt"},
	{newWeld, "weld plan DIR/weld/t24-cheeks.yaml", "weld-plan.txt"},
}

func (c demoCommand) run(ctx context.Context, parent *cobra.Command, dir string) error {
	var args []string
	for _, word := range strings.Fields(c.line) {
		if below, ok := strings.CutPrefix(word, "DIR/"); ok {
			word = filepath.Join(dir, filepath.FromSlash(below))
		}
		args = append(args, word)
	}
	into := filepath.Join(dir, c.into)
	err := writeFile(into, func(f *os.File) error {
		cmd := c.make()
		cmd.SetArgs(args[1:])
		cmd.SetOut(f)
		cmd.SetErr(parent.ErrOrStderr())
		cmd.SilenceErrors, cmd.SilenceUsage = true, true
		return cmd.ExecuteContext(ctx)
	})
	if err != nil {
		return fmt.Errorf("axlewright %s: %w", strings.Join(args, " "), err)
	}
	fmt.Fprintf(parent.OutOrStdout(), "wrote %s: what \"axlewright %s\" says\n", into, strings.Join(args, " "))
	return nil
}

// fillDemo fills the invented shop, unless it has been filled before, and keeps
// the advice with the enquiry that it answers.
func fillDemo(ctx context.Context, dir, enquiry string, advice *assess.Advice) error {
	store, err := sqlstore.Open(ctx, sqlstore.Options{Dir: dir})
	if err != nil {
		return err
	}
	defer store.Close()
	asked, err := os.ReadFile(enquiry)
	if err != nil {
		return err
	}
	filled, err := demo.Fill(ctx, store, time.Now(), string(asked))
	if shop.CodeOf(err) == shop.Conflict {
		return nil
	}
	if err != nil {
		return err
	}
	e, c, err := axle.LoadEnquiry(enquiry)
	if err != nil {
		return err
	}
	sh, err := shop.Open(ctx, store, shop.Options{})
	if err != nil {
		return err
	}
	return web.KeepAdvice(ctx, sh, filled.By, filled.Advise, web.Answer{Advice: advice, Enquiry: &e, Catalogue: &c, Asked: string(asked)}, "")
}

// writePictures writes the sheet of an advice and its pictures.
func writePictures(dir string, a *assess.Advice, wrote func(name string)) error {
	if err := writePaper(filepath.Join(dir, "advice.pdf"), document.Recommendation(a)); err != nil {
		return err
	}
	wrote("advice.pdf")
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
