package main

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"github.com/spf13/cobra"

	"axlewright/casting"
	"axlewright/quantity"
)

func newStations() *cobra.Command {
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "stations FILE",
		Short: "Tell how castings of a variant differ, what to trim, whether to redraw the kit, and which patterns would serve",
		Example: `  axlewright stations examples/stations/t24.yaml
  axlewright stations examples/stations/t24.yaml --json`,
		Args: arguments(cobra.ExactArgs(1), "one file with the stations of a variant"),
		RunE: func(cmd *cobra.Command, args []string) error {
			g, err := casting.LoadGauging(args[0])
			if err != nil {
				return err
			}
			report, err := g.Report()
			if err != nil {
				return err
			}
			if asJSON {
				return writeJSON(cmd.OutOrStdout(), report)
			}
			return printStations(cmd.OutOrStdout(), report)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print JSON, values in SI")
	return cmd
}

func printStations(out io.Writer, r casting.StationReport) error {
	p := &page{out: out}
	p.line("%s, kit %s. Readings are measured; ± is two standard deviations.", r.Variant, r.Kit)
	printHistory(p, r.History)
	for _, m := range r.Placed {
		printPlacement(p, m)
	}
	printFit(p, r)
	printPatterns(p, r.Patterns)
	return p.err
}

func printHistory(p *page, history []casting.StationHistory) {
	p.head("Stations so far")
	width := 0
	for _, h := range history {
		width = max(width, utf8.RuneCountInString(h.Name))
	}
	for _, h := range history {
		mark := "·"
		if h.Drifts || len(h.Outliers) > 0 {
			mark = "△"
		}
		p.line("  %s %2d %-*s  %s", mark, h.Station, width, h.Name, h.Sentence)
		if h.Chart != nil {
			c := h.Chart.Points[len(h.Chart.Points)-1]
			about := string(h.Chart.Kind)
			if h.Drifts {
				about += ", the drift taken out"
			}
			p.line("       limits %s (%s)", quantity.FormatRange(c.Low, c.High, quantity.Length), about)
		}
		for _, o := range h.Outliers {
			p.line("       %s: %s", o.Casting, o.Why)
		}
	}
}

func printPlacement(p *page, m casting.Placement) {
	mark := map[casting.Fit]string{casting.FitsAsCut: "✓", casting.FitsTrimmed: "△", casting.FitsNot: "✕"}[m.Fit]
	p.head(m.Casting + "  " + mark + " " + string(m.Fit))
	p.line("  %s", m.Sentence)
	for _, s := range m.Stations {
		p.line("  %2d %s: %s; %s; %s", s.Station, s.Name, quantity.Format(s.Value, quantity.Length), s.Do, s.Words)
	}
	for _, t := range m.Trims {
		p.line("  → %s", t.Words)
	}
	if len(m.Trims) > 0 {
		p.line("  ! Grinding: guard on, face shield, mask for iron dust. Deburr what was cut; chamfer before welding.")
	}
}

func printFit(p *page, r casting.StationReport) {
	p.head("How the kit will go on")
	p.line("  %s", r.Fit.Sentence)
	if r.Fit.Counted > 0 {
		p.line("  Of the %d measured everywhere: as cut %s, with trimming %s, not at all %s.", r.Fit.Counted,
			quantity.Percent(r.Fit.Past.AsCut), quantity.Percent(r.Fit.Past.Trimmed), quantity.Percent(r.Fit.Past.Not))
	}
	if r.Fit.Doubt != "" {
		p.line("  △ %s", r.Fit.Doubt)
	}
	for _, s := range r.Fit.Stations {
		p.line("  %2d as cut %s, trimmed %s, not %s: %s", s.Station,
			quantity.Chance(s.Chances.AsCut), quantity.Chance(s.Chances.Trimmed), quantity.Chance(s.Chances.Not), s.Words)
	}
	p.head("Draw it anew?")
	p.line("  %s", r.Redraw.Sentence)
	if len(r.Redraw.Stations) > 0 && !r.Redraw.Now {
		p.line("  What it would change:")
	}
	for _, s := range r.Redraw.Stations {
		p.line("  %s (saves %.1f min a casting)", s.Words, s.Saves)
	}
	if len(r.Redraw.Stations) > 0 {
		p.line("  Then on the next casting: as cut %s, with trimming %s, not at all %s.",
			quantity.Chance(r.Redraw.Whole.AsCut), quantity.Chance(r.Redraw.Whole.Trimmed), quantity.Chance(r.Redraw.Whole.Not))
		p.line("  A new revision gets a new number and its reason; try the first one cut on a real casting before the batch.")
	}
}

func printPatterns(p *page, plan casting.PatternPlan) {
	p.head("Fewest patterns")
	p.line("  %s", plan.Sentence)
	if len(plan.LeftOut) > 0 {
		p.line("  Left out, not measured everywhere: %s.", strings.Join(plan.LeftOut, ", "))
	}
	for _, s := range plan.Steps {
		proof := "proved the most"
		if !s.Proved {
			proof = fmt.Sprintf("no choice serves more than %d", s.Most)
		}
		p.line("  %d: serves %d (%s), %d more than one pattern less; %s", s.Patterns, s.Served, quantity.Percent(s.Share), s.Buys, proof)
	}
	for _, x := range plan.Patterns {
		p.line("  Pattern %s serves %d castings, mean trim %s:", x.Name, len(x.Serves), quantity.Format(x.MeanTrim, quantity.Length))
		for _, s := range x.Stations {
			p.line("    %2d %s: draw for %s (anything from %s)", s.Station, s.Name,
				quantity.Format(s.DrawnFor, quantity.Length), quantity.FormatRange(s.Low, s.High, quantity.Length))
		}
	}
}
