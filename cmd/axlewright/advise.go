package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"sync"
	"time"

	"github.com/spf13/cobra"

	"axlewright/assess"
	"axlewright/axle"
	"axlewright/document"
)

func newAdvise() *cobra.Command {
	var sheet, screen string
	var asJSON bool
	var options assess.Options
	cmd := &cobra.Command{
		Use:   "advise FILE",
		Short: "Rank the builds for an enquiry and say which carries it, and how sure that is",
		Example: `  axlewright advise enquiry.yaml
  axlewright advise enquiry.yaml --pdf sheet.pdf
  axlewright advise enquiry.yaml --html sheet.html
  axlewright advise enquiry.yaml --json --draws 5000 --seed 7`,
		Args: arguments(cobra.ExactArgs(1), "one enquiry file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			ctx, stop := signal.NotifyContext(cmd.Context(), os.Interrupt)
			defer stop()
			advice, err := advise(ctx, args[0], options, cmd.ErrOrStderr())
			if err != nil {
				return err
			}
			if sheet != "" {
				if err := writePaper(sheet, document.Recommendation(&advice)); err != nil {
					return err
				}
			}
			if screen != "" {
				if err := writePage(screen, &advice); err != nil {
					return err
				}
			}
			if asJSON {
				return writeJSON(cmd.OutOrStdout(), advice)
			}
			return document.AdviceText(cmd.OutOrStdout(), &advice)
		},
	}
	cmd.Flags().StringVar(&screen, "html", "", "also write it for the screen: the same A4 page, and behind it peg curve, bearing loads and doubts")
	cmd.Flags().StringVar(&sheet, "pdf", "", "also write the recommendation, one A4 page, to this file")
	cmd.Flags().BoolVar(&asJSON, "json", false, "print the whole result as JSON, values in SI")
	drawsFlag(cmd, &options)
	cmd.Flags().Uint64Var(&options.Seed, "seed", 1, "seed of the draws; the same seed gives the same answer")
	return cmd
}

// drawsFlag is the number of draws. Zero, which means the usual number to
// assess, is too few at the keyboard.
func drawsFlag(cmd *cobra.Command, o *assess.Options) {
	cmd.Flags().IntVar(&o.Draws, "draws", assess.DefaultDraws, "how many draws of the doubtful figures")
	cmd.PreRunE = func(*cobra.Command, []string) error {
		if o.Draws == 0 {
			return usageError{errors.New("--draws: 0 draws say nothing; leave it out for the usual number")}
		}
		return nil
	}
}

// advise reads an enquiry and answers it, with a line of progress on a
// terminal where it takes longer than a second.
func advise(ctx context.Context, file string, o assess.Options, progress io.Writer) (assess.Advice, error) {
	enquiry, catalogue, err := axle.LoadEnquiry(file)
	if err != nil {
		return assess.Advice{}, err
	}
	for _, ask := range axle.Unusual(&enquiry) {
		fmt.Fprintf(progress, "△ look again: %s\n", ask)
	}
	line := newProgress(progress, "drawing")
	o.Progress = line.update
	defer line.done()
	return assess.Advise(ctx, &enquiry, &catalogue, o)
}

// A progressLine tells how far a long job is, on a terminal only.
type progressLine struct {
	out   io.Writer
	what  string
	start time.Time
	mu    sync.Mutex
	last  time.Time
	shown bool
}

func newProgress(out io.Writer, what string) *progressLine {
	if file, ok := out.(*os.File); !ok || !isTerminal(file) {
		out = nil
	}
	return &progressLine{out: out, what: what, start: time.Now()}
}

func isTerminal(file *os.File) bool {
	info, err := file.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// update is safe for many goroutines.
func (p *progressLine) update(done, total int) {
	if p.out == nil {
		return
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	now := time.Now()
	if now.Sub(p.start) < time.Second || now.Sub(p.last) < 200*time.Millisecond {
		return
	}
	p.last, p.shown = now, true
	fmt.Fprintf(p.out, "\r%s %d of %d ", p.what, done, total)
}

// done wipes the line.
func (p *progressLine) done() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.shown {
		fmt.Fprintf(p.out, "\r%40s\r", "")
	}
}
