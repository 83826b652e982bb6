package main

import (
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"axlewright/document"
	"axlewright/document/paper"
	"axlewright/drawing"
	"axlewright/weldplan"
)

func newWeld() *cobra.Command {
	return group(&cobra.Command{
		Use:   "weld",
		Short: "Plan the welding of a plate kit, and learn from what was used",
	}, newWeldPlan())
}

func newWeldPlan() *cobra.Command {
	var asJSON bool
	var pdf string
	var options weldplan.Options
	cmd := &cobra.Command{
		Use:   "plan FILE",
		Short: "Stops, process, heat, amps, order, vents and check lists for one casting",
		Long: `Plan the welding of the plates on one casting, from a file that describes both.

Stops stand at the top: no arc is struck while one stands. Of most stops the rest
is planned nevertheless, and the exit status is 0. Where nothing can be planned
until a stop is cleared (grey iron, unknown metal, a practice that is refused) only
the stops, the cautions and the check lists are printed, and the exit status is 1.
Up to ten runs every order is weighed; above ten the order is the best one found,
and the plan says so.`,
		Example: `  axlewright weld plan t24-cheeks.yaml
  axlewright weld plan t24-cheeks.yaml --pdf weld-plan.pdf
  axlewright weld plan t24-cheeks.yaml --json --seed 7`,
		Args: arguments(cobra.ExactArgs(1), "one file with the job"),
		RunE: func(cmd *cobra.Command, args []string) error {
			job, entries, err := weldplan.LoadJob(args[0])
			if err != nil {
				return err
			}
			line := newProgress(cmd.ErrOrStderr(), "looking for an order")
			options.Progress = line.update
			plan, err := weldplan.Make(&job, entries, options)
			line.done()
			if err != nil {
				return fmt.Errorf("%s: %w", args[0], err)
			}
			if asJSON {
				err = writeJSON(cmd.OutOrStdout(), plan)
			} else {
				err = plan.Write(cmd.OutOrStdout())
			}
			if err != nil {
				return err
			}
			if pdf != "" {
				if err := writeWeldPDF(pdf, &job, &plan); err != nil {
					return err
				}
				if !asJSON {
					fmt.Fprintf(cmd.OutOrStdout(), "\nwrote %s\n", pdf)
				}
			}
			if plan.Go {
				return nil
			}
			if why := plan.Refused(); why != "" {
				return fmt.Errorf("%s: no plan: %s", args[0], why)
			}
			fmt.Fprintln(cmd.ErrOrStderr(), "axlewright: there are stops; see the top of the plan")
			return nil
		},
	}
	cmd.Flags().StringVar(&pdf, "pdf", "", "write the plan as an A4 sheet for the bench into this file")
	cmd.Flags().BoolVar(&asJSON, "json", false, "print the whole plan as JSON, values in SI")
	cmd.Flags().Uint64Var(&options.Seed, "seed", 1, "seed of the search for an order; the same seed gives the same plan")
	return cmd
}

// writeWeldPDF writes the plan's sheet.
func writeWeldPDF(path string, job *weldplan.Job, plan *weldplan.Plan) error {
	var order drawing.Drawing
	if plan.Sequence != nil {
		order = drawing.WeldOrder(job, plan.Sequence, document.WeldOrderWidth)
	}
	sheet := document.WeldPlan(plan, order, paper.Head{Number: plan.Job, Subject: plan.Variant}, nil, nil)
	return writeFile(path, func(f *os.File) error { return sheet.WritePDF(f) })
}
