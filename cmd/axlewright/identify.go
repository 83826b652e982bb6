package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"axlewright/casting"
	"axlewright/quantity"
)

func newIdentify() *cobra.Command {
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "identify FILE",
		Short: "Tell which variant a casting is, what to look at next, and whether it may be welded",
		Example: `  axlewright identify examples/identify/number-ground-off.yaml
  axlewright identify examples/identify/number-ground-off.yaml --json`,
		Args: arguments(cobra.ExactArgs(1), "one file with what was seen of a casting"),
		RunE: func(cmd *cobra.Command, args []string) error {
			bench, catalogue, err := casting.LoadBench(args[0])
			if err != nil {
				return err
			}
			answer, err := casting.NewMatcher(&catalogue).Identify(bench)
			if err != nil {
				return err
			}
			if asJSON {
				return writeJSON(cmd.OutOrStdout(), answer)
			}
			return printIdentification(cmd.OutOrStdout(), answer)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print JSON, values in SI")
	return cmd
}

func printIdentification(out io.Writer, id casting.Identification) error {
	p := &page{out: out}
	p.line("%s  %s", id.Casting, verdictMark(id))
	p.line("%s", id.Sentence)
	p.line("%s", id.Why)
	for _, s := range id.Stops {
		p.stop(s)
	}
	p.list("Do now", "→", id.Do)
	p.head("It may be")
	for _, c := range id.Ranked {
		about := c.Kit
		if c.Metal != "" {
			about += ", " + string(c.Metal)
		}
		if c.Seen > 0 {
			about += fmt.Sprintf(", %.0f confirmed before", c.Seen)
		}
		p.line("  %-16s %7s   %s", c.Variant, quantity.Chance(c.Chance), strings.TrimPrefix(about, ", "))
	}
	p.line("  Chance that it was modified before: %s.", quantity.Chance(id.Modified.Chance))
	printEvidence(p, id)
	printQuestions(p, id)
	printMetal(p, id.Metal)
	p.line("")
	p.line("An identification is an opinion with its chance, not a proof; it rates nothing.")
	return p.err
}

func verdictMark(id casting.Identification) string {
	switch {
	case id.Verdict == casting.ModifiedBefore:
		return "✕ " + string(id.Verdict)
	case id.Enough:
		return "✓ " + string(id.Verdict)
	}
	return "△ " + string(id.Verdict)
}

func printEvidence(p *page, id casting.Identification) {
	p.head("What was seen, the heaviest first")
	for _, e := range id.Evidence {
		mark := "·"
		if e.Decibans >= 1 {
			mark = "+"
		} else if e.Decibans <= -1 {
			mark = "−"
		}
		p.line("  %s %s", mark, e.Sentence)
		if len(e.Disproves) > 0 {
			p.line("      speaks strongly against %s", strings.Join(e.Disproves, ", "))
		}
	}
	if len(id.Unseen) > 0 {
		p.line("  · cannot be seen: %s (says nothing either way)", strings.Join(id.Unseen, ", "))
	}
	if len(id.Missing) > 0 {
		p.line("  · not looked at: %s", strings.Join(id.Missing, ", "))
	}
	var sentences []string
	for _, c := range id.Contradictions {
		sentences = append(sentences, c.Sentence)
	}
	p.list("Does not go together", "△", sentences)
	p.list("Mind", "△", id.Warnings)
}

func printQuestions(p *page, id casting.Identification) {
	if len(id.Questions) == 0 {
		return
	}
	if id.Enough {
		p.head("Could still be looked at (not needed)")
	} else {
		p.head("Look at next, the best for its trouble first")
	}
	for i, q := range id.Questions {
		if i == 3 {
			break
		}
		worth := "worth it"
		if !q.Worth {
			worth = "not worth it for this alone"
		}
		p.line("  %d. %s  [%s, costs %.3g; %.2f bit; %s]", i+1, q.Ask, q.Tool, q.Cost, q.Bits, worth)
		if q.Caution != "" {
			p.line("     ! %s", q.Caution)
		}
		for _, o := range q.Outcomes {
			gone := ""
			if len(o.Disproves) > 0 {
				gone = "; rules out " + strings.Join(o.Disproves, ", ")
			}
			p.line("     %s (%s): %s %s%s", o.Says, quantity.Chance(o.Chance), o.Leads, quantity.Chance(o.After), gone)
		}
	}
}

func printMetal(p *page, m casting.MetalFinding) {
	p.head("Metal")
	p.line("  %s", m.Sentence)
	for _, f := range m.Families {
		if f.Chance >= 0.01 {
			p.line("  %-24s %7s", f.Family, quantity.Chance(f.Chance))
		}
	}
	for _, e := range m.Evidence {
		p.line("  · %s", e.Sentence)
	}
	if m.Disagrees != "" {
		p.line("  △ %s", m.Disagrees)
	}
	if m.Weldability != "" {
		p.line("  %s: %s", m.Weldability, m.Weld)
	}
	for _, s := range m.Strengths {
		p.line("  strength if %s: %s, nineteen in twenty %s (%s)", s.Family,
			quantity.FormatDigits(s.Middle, quantity.Pressure, 2), quantity.FormatRange(s.Low, s.High, quantity.Pressure), s.From)
	}
	if q := m.Next; q != nil {
		p.line("  Test next: %s  [costs %.3g; %.2f bit; %s]", q.Ask, q.Cost, q.Bits, q.Source)
		if q.Caution != "" {
			p.line("     ! %s", q.Caution)
		}
	}
}

// A page prints lines and keeps the first error.
type page struct {
	out io.Writer
	err error
}

func (p *page) line(format string, args ...any) {
	if p.err == nil {
		_, p.err = fmt.Fprintf(p.out, format+"\n", args...)
	}
}

func (p *page) head(title string) { p.line("\n%s", title) }

func (p *page) list(title, mark string, lines []string) {
	if len(lines) == 0 {
		return
	}
	p.head(title)
	for _, l := range lines {
		p.line("  %s %s", mark, l)
	}
}

func (p *page) stop(s casting.Stop) {
	p.line("\n✕ STOP  %s", s.What)
	p.line("        %s", s.Why)
	p.line("        May be overruled by: %s", s.Overrule)
}
