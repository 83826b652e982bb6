package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"axlewright/drawing"
	"axlewright/kit"
	"axlewright/quantity"
)

func newKit() *cobra.Command {
	return group(&cobra.Command{
		Use:   "kit",
		Short: "Draw a plate kit for cutting, or nest kits on sheets",
	}, newKitDraw(), newKitNest())
}

func newKitDraw() *cobra.Command {
	var dir, batch, issue string
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "draw KIT",
		Short: "Check a kit revision, write its cut files and A4 sheets, print its bill",
		Long: `Check a kit revision and print its bill and its drill-and-tap table. With --out,
write for every plate two cut files (DXF R12 and R2000), an SVG in true size, and
a PDF with a dimensioned A4 sheet for each behind the bill.

A revision that was issued stands in the ledger beside the kit files and may not
change any more. --issue DATE enters it, once the first plates fit a casting.`,
		Example: `  axlewright kit draw examples/kits/KIT-T24-A.1.yaml --out plates --batch B0417
  axlewright kit draw examples/kits/KIT-T24-A.2.yaml --json`,
		Args: arguments(cobra.ExactArgs(1), "one kit file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			k, err := kit.Load(args[0])
			if err != nil {
				return err
			}
			d, err := k.Draw(kit.Options{Batch: batch})
			if err != nil {
				return err
			}
			state, err := issued(args[0], &k, issue)
			if err != nil {
				return err
			}
			out := cmd.OutOrStdout()
			if asJSON {
				err = writeJSON(out, struct {
					kit.Drawn
					Bill   kit.Bill `json:"bill"`
					Issued string   `json:"issued"`
				}{d, d.Bill(), state})
			} else {
				err = printKit(out, &d, state, batch)
			}
			if err != nil || dir == "" {
				return err
			}
			return writeKit(dir, &d, func(name string) {
				if !asJSON {
					fmt.Fprintf(out, "wrote %s\n", name)
				}
			})
		},
	}
	cmd.Flags().StringVar(&dir, "out", "", "write cut files and sheets into this folder")
	cmd.Flags().StringVar(&batch, "batch", "", "batch of the steel, etched on every plate")
	cmd.Flags().StringVar(&issue, "issue", "", "enter the revision in the ledger on this date, such as 2026-03-02")
	cmd.Flags().BoolVar(&asJSON, "json", false, "print JSON, values in SI")
	return cmd
}

// issued looks a revision up in its ledger, and enters it when told to.
func issued(path string, k *kit.Kit, on string) (state string, err error) {
	ledger, err := kit.LoadLedger(path)
	if err != nil {
		return "", err
	}
	if on != "" {
		_, line, err := ledger.Issue(k, on)
		if err != nil {
			return "", err
		}
		return "issued on " + on, kit.AppendTo(filepath.Join(filepath.Dir(path), kit.LedgerFile), line)
	}
	done, err := ledger.Issued(k)
	if err != nil || !done {
		return "draft: not in the ledger yet", err
	}
	return "issued and unchanged", nil
}

func printKit(out io.Writer, d *kit.Drawn, state, batch string) error {
	p := &page{out: out}
	b := d.Bill()
	p.line("%s for casting %s: %s", d.Name, d.Casting, d.Title)
	p.line("drawn %s, seal %s, %s", d.Date.Format("2006-01-02"), d.Seal, state)
	if batch == "" {
		p.line("△ No batch was given; the plates will not say what steel they were cut from.")
	}
	p.head("Bill of one kit")
	for _, r := range b.Rows {
		p.line("  %-4s %-20s %d × %s %s, %s × %s", r.Key, r.Name, r.Count, r.Steel, quantity.Format(r.Thickness, quantity.Length),
			quantity.Format(r.Long, quantity.Length), quantity.Format(r.Wide, quantity.Length))
		p.line("       %s each, %s of cut, %d pierces, %s of edge to weld", quantity.Format(r.Mass, quantity.Mass),
			quantity.Format(r.Cut, quantity.Length), r.Pierces, quantity.Format(r.Weld, quantity.Length))
	}
	p.line("  one kit: %d pieces, %s, %s of cut", b.Count, quantity.Format(b.Mass, quantity.Mass), quantity.Format(b.Cut, quantity.Length))
	if len(d.Drilling) > 0 {
		p.head("Drill and tap")
	}
	for _, r := range d.Drilling {
		p.line("  %s: %s, %s class %s in %s: drill %s", map[kit.Verdict]string{kit.Fine: "✓ fine", kit.Look: "△ look", kit.Stop: "✕ STOP"}[r.Verdict],
			r.Name, r.Screw(), r.Class, r.Metal, quantity.Format(r.Drill, quantity.Length))
		for _, s := range r.Sentences {
			p.line("      %s", s)
		}
	}
	p.head("Why this revision")
	p.line("  %s", d.Reason.Why.Text)
	for _, m := range d.Reason.Moved {
		p.line("  moved: %s", m)
	}
	p.line("\n! Fit the first plates to a real casting of this variant before a batch is cut. Plates just cut are hot and sharp.")
	return p.err
}

// writeKit writes every file of a kit.
func writeKit(dir string, d *kit.Drawn, wrote func(string)) error {
	write, err := writer(dir, wrote)
	if err != nil {
		return err
	}
	for i := range d.Plates {
		if err := writeCut(drawing.PlateFile(&d.Plates[i]), write); err != nil {
			return err
		}
	}
	return write(d.Name.String()+".pdf", func(w io.Writer) error { return drawing.WriteKitPDF(w, d) })
}

// writer makes a folder and what writes files into it and tells of each.
func writer(dir string, wrote func(string)) (func(name string, put func(io.Writer) error) error, error) {
	return func(name string, put func(io.Writer) error) error {
		path := filepath.Join(dir, name)
		if err := writeFile(path, func(f *os.File) error { return put(f) }); err != nil {
			return err
		}
		wrote(path)
		return nil
	}, os.MkdirAll(dir, 0o755)
}

// writeCut writes a cut file in every form.
func writeCut(f drawing.CutFile, write func(string, func(io.Writer) error) error) error {
	for _, form := range []struct {
		ending string
		put    func(io.Writer) error
	}{
		{".r12.dxf", func(w io.Writer) error { return drawing.WriteDXF(w, f, drawing.R12) }},
		{".dxf", func(w io.Writer) error { return drawing.WriteDXF(w, f, drawing.R2000) }},
		{".svg", func(w io.Writer) error { return drawing.WriteCutSVG(w, f) }},
	} {
		if err := write(f.Name+form.ending, form.put); err != nil {
			return err
		}
	}
	return nil
}

// mostTries keeps a slip of the finger from running for days.
const mostTries = 100000

func newKitNest() *cobra.Command {
	var dir, cut string
	var asJSON bool
	var tries int
	var seed uint64
	cmd := &cobra.Command{
		Use:   "nest FILE",
		Short: "Lay kits out on sheets and remnants, with yield and price",
		Long: `Lay kits out on the sheets that the file names and on those of its stock book
("stock: stock.yaml"), remnants first. The same seed gives the same nest.

--cut DATE says that it was cut on that day: the stock book then gets lines for the
sheets that were taken and for the remnants that go back. It only grows.`,
		Example: `  axlewright kit nest examples/kits/nest-20.yaml
  axlewright kit nest examples/kits/nest-20.yaml --out sheets --tries 200
  axlewright kit nest nest-stock.yaml --cut 2026-03-09`,
		Args: arguments(cobra.ExactArgs(1), "one file that says what to cut from what"),
		RunE: func(cmd *cobra.Command, args []string) error {
			ctx, stop := signal.NotifyContext(cmd.Context(), os.Interrupt)
			defer stop()
			job, err := kit.LoadJob(args[0])
			if err != nil {
				return err
			}
			if cmd.Flags().Changed("tries") {
				if tries < 1 || tries > mostTries {
					return usageError{fmt.Errorf("--tries: %d; take 1 to %d", tries, mostTries)}
				}
				job.Rules.Tries = tries
			}
			if seed > 0 {
				job.Rules.Seed = seed
			}
			cuttings, err := runJob(ctx, &job, cmd.ErrOrStderr())
			if err != nil {
				return err
			}
			out := cmd.OutOrStdout()
			if asJSON {
				err = writeJSON(out, cuttings)
			} else {
				err = printCuttings(out, cuttings)
			}
			if err == nil && cut != "" {
				err = takeFromStock(&job, cuttings, cut, args[0], func(said string) {
					if !asJSON {
						fmt.Fprintln(out, said)
					}
				})
			}
			if err != nil || dir == "" {
				return err
			}
			return writeNest(dir, cuttings, func(name string) {
				if !asJSON {
					fmt.Fprintf(out, "wrote %s\n", name)
				}
			})
		},
	}
	cmd.Flags().StringVar(&dir, "out", "", "write cut files and pictures of the sheets into this folder")
	cmd.Flags().StringVar(&cut, "cut", "", "it was cut on this day: take its sheets from the stock book and put remnants back")
	cmd.Flags().IntVar(&tries, "tries", 0, "orders to try, instead of what the file says")
	cmd.Flags().Uint64Var(&seed, "seed", 0, "seed of the orders; the same seed gives the same nest")
	cmd.Flags().BoolVar(&asJSON, "json", false, "print JSON, values in SI")
	return cmd
}

func runJob(ctx context.Context, job *kit.Job, progress io.Writer) ([]kit.Cutting, error) {
	line := newProgress(progress, "placing")
	defer line.done()
	return job.Run(ctx, line.update)
}

// takeFromStock writes into the stock book what a nest took and put back.
func takeFromStock(job *kit.Job, cuttings []kit.Cutting, on, file string, say func(string)) error {
	book, path := job.Book()
	if path == "" {
		return fmt.Errorf("%s names no stock book to take from; write \"stock: stock.yaml\" into it", file)
	}
	lines, err := book.Cut(cuttings, on, strings.TrimSuffix(filepath.Base(file), filepath.Ext(file)))
	if err != nil {
		return err
	}
	if err := lines.Append(path); err != nil {
		return err
	}
	for _, l := range lines {
		if l.Came != nil {
			say(fmt.Sprintf("%s: %s put back, %s × %s", path, l.Came.Name.Text, l.Came.Long.Text, l.Came.Wide.Text))
		} else {
			say(fmt.Sprintf("%s: %d of %s taken", path, l.Count, l.Took))
		}
	}
	return nil
}

func printCuttings(out io.Writer, cuttings []kit.Cutting) error {
	p := &page{out: out}
	total := 0.0
	for i := range cuttings {
		c := &cuttings[i]
		y, rows := c.Plan.Yield(), c.Rows.Yield()
		p.head(fmt.Sprintf("%s, %s", c.Steel, quantity.Format(c.Thickness, quantity.Length)))
		for s := range c.Plan.Sheets {
			sheet := &c.Plan.Sheets[s]
			one := c.Plan.YieldOf(s)
			p.line("  %s: %d pieces, %s of it plates", c.Plan.Name(s), len(sheet.Places), quantity.Percent(one.OfSheet()))
			for _, o := range sheet.Offcuts {
				p.line("      offcut %s × %s goes back into stock", quantity.Format(o.Width(), quantity.Length), quantity.Format(o.Height(), quantity.Length))
			}
		}
		for part, n := range c.Plan.Left {
			if n > 0 {
				p.line("  ✕ no room for %d of %s", n, c.Plates[part].File())
			}
		}
		p.line("  Offcuts not counted, %s became plates; in simple rows %s.", quantity.Percent(y.OfUsed()), quantity.Percent(rows.OfUsed()))
		p.line("  No nest can do better than %s, for every plate takes half a gap all round.", quantity.Percent(y.Metal/c.Least))
		k := c.Cost
		p.line("  Price %.2f: sheet %.2f, cut %.2f, pierces %.2f, marks %.2f, setting %.2f, less scrap %.2f", k.Total, k.Sheets, k.Cut, k.Pierces, k.Marks, k.Setting, k.Scrap)
		total += k.Total
	}
	p.line("\nAltogether %.2f, in the shop's own currency.", total)
	p.line("Every sheet was checked with the exact outlines: gaps and edges are kept and nothing overlaps.")
	return p.err
}

func writeNest(dir string, cuttings []kit.Cutting, wrote func(string)) error {
	write, err := writer(dir, wrote)
	if err != nil {
		return err
	}
	for i := range cuttings {
		c := &cuttings[i]
		for s := range c.Plan.Sheets {
			f := drawing.NestFile(c, s)
			if err := writeCut(f, write); err != nil {
				return err
			}
			if err := write(f.Name+".picture.svg", func(w io.Writer) error { return drawing.WriteSVG(w, drawing.NestPicture(c, s)) }); err != nil {
				return err
			}
		}
	}
	return nil
}
