package main

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"axlewright/handbook"
)

func newWork() *cobra.Command {
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "work [FORMULA [INPUT=VALUE …]]",
		Short: "List the formulas, show one, or compute it with its working and source",
		Example: `  axlewright work
  axlewright work bolt.stress-area
  axlewright work bolt.stress-area d=12mm pitch=1.75mm
  axlewright work bolt.stress-area d=7/16in pitch=0.05in --json`,
		RunE: func(cmd *cobra.Command, args []string) error {
			out := cmd.OutOrStdout()
			if len(args) == 0 {
				return listFormulas(out, asJSON)
			}
			formula, err := handbook.Find(args[0])
			if err != nil {
				return err
			}
			if len(args) == 1 && len(formula.Inputs) > 0 {
				return describe(out, formula, asJSON)
			}
			inputs := map[string]string{}
			for _, arg := range args[1:] {
				key, value, found := strings.Cut(arg, "=")
				if !found {
					return usageError{fmt.Errorf("%q is not INPUT=VALUE, such as d=12mm", arg)}
				}
				if _, twice := inputs[key]; twice {
					return usageError{fmt.Errorf("%s stands twice", key)}
				}
				inputs[key] = value
			}
			working, err := formula.Compute(inputs)
			if err != nil {
				return err
			}
			if asJSON {
				return writeJSON(out, working)
			}
			return printWorking(out, working)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print JSON, values in SI")
	return cmd
}

func listFormulas(out io.Writer, asJSON bool) error {
	type entry struct {
		Name    string `json:"name"`
		Summary string `json:"summary"`
		Source  string `json:"source"`
	}
	var list []entry
	for _, f := range handbook.All() {
		list = append(list, entry{f.Name, f.Summary, f.Source})
	}
	if asJSON {
		return writeJSON(out, list)
	}
	for _, e := range list {
		fmt.Fprintf(out, "%s\n    %s\n    Source: %s\n", e.Name, e.Summary, e.Source)
	}
	_, err := fmt.Fprintf(out, "\n%d formulas. \"axlewright work NAME\" shows what one takes.\n", len(list))
	return err
}

func describe(out io.Writer, f handbook.Formula, asJSON bool) error {
	if asJSON {
		return writeJSON(out, struct {
			Name    string            `json:"name"`
			Summary string            `json:"summary"`
			Formula []string          `json:"formula"`
			Inputs  []handbook.Symbol `json:"inputs"`
			Results []handbook.Symbol `json:"results"`
			Valid   string            `json:"valid"`
			Source  string            `json:"source"`
		}{f.Name, f.Summary, f.Lines, f.Inputs, f.Results, f.Valid, f.Source})
	}
	fmt.Fprintf(out, "%s\n%s\n\n", f.Name, f.Summary)
	for _, line := range f.Lines {
		fmt.Fprintf(out, "    %s\n", line)
	}
	fmt.Fprintf(out, "\nTakes:\n")
	for _, s := range f.Inputs {
		fmt.Fprintf(out, "    %s\n", symbolLine(s))
	}
	fmt.Fprintf(out, "Gives:\n")
	for _, s := range f.Results {
		fmt.Fprintf(out, "    %s\n", symbolLine(s))
	}
	_, err := fmt.Fprintf(out, "\n%s\nSource: %s\n", f.Valid, f.Source)
	return err
}

func symbolLine(s handbook.Symbol) string {
	line := fmt.Sprintf("%-22s %s", s.Key, s.Meaning)
	if s.Sign != "" && s.Sign != s.Key {
		line += " (" + s.Sign + ")"
	}
	if s.Unit != "-" && s.Unit != "" && s.Unit != "name" {
		line += ", " + s.Unit
	}
	if s.Written != "" {
		line += ", " + s.Written
	}
	if s.Optional {
		line += ", may be left out"
	}
	return line
}

func printWorking(out io.Writer, w handbook.Working) error {
	fmt.Fprintf(out, "%s\n%s\n\n", w.Name, w.Summary)
	for _, line := range w.Formula {
		fmt.Fprintf(out, "    %s\n", line)
	}
	fmt.Fprintln(out)
	for _, v := range w.Inputs {
		fmt.Fprintf(out, "    %s = %s   %s\n", v.Symbol, v.Text, v.Meaning)
	}
	fmt.Fprintln(out)
	for _, v := range w.Results {
		fmt.Fprintf(out, "    %s = %s   %s\n", v.Symbol, v.Text, v.Meaning)
	}
	_, err := fmt.Fprintf(out, "\n%s\nSource: %s\n", w.Valid, w.Source)
	return err
}

func writeJSON(out io.Writer, v any) error {
	encoder := json.NewEncoder(out)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	return encoder.Encode(v)
}
