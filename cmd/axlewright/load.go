package main

import (
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"axlewright/assess"
	"axlewright/axle"
	"axlewright/document"
	"axlewright/quantity"
)

// sweepPoints is how many torques a sweep shows.
const sweepPoints = 12

// widestGap is more than any peg is set to, m.
const widestGap = 3e-3

func newLoad() *cobra.Command {
	var torqueText, flankText, gapText string
	var asJSON, sweep bool
	cmd := &cobra.Command{
		Use:   "load FILE --torque TORQUE",
		Short: "Solve the load path of the unit as it stands, from tooth to casting, at one torque",
		Long: `Solve the load path of the unit that an enquiry describes, with the upgrades it
says are fitted, every figure at its stated value. Torque is at the axle, both
wheels together. Movements count from the assembled, preloaded, torque-free axle.`,
		Example: `  axlewright load enquiry.yaml --torque 2500Nm
  axlewright load enquiry.yaml --torque 2500Nm --flank coast --gap 0.25mm
  axlewright load enquiry.yaml --torque 6000Nm --sweep --json`,
		Args: arguments(cobra.ExactArgs(1), "one enquiry file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if torqueText == "" {
				return usageError{fmt.Errorf("--torque is missing: the torque at the axle, such as --torque 2500Nm")}
			}
			torque, err := oneValue("--torque", torqueText, quantity.Torque)
			if err != nil {
				return err
			}
			if torque.SI <= 0 {
				return usageError{fmt.Errorf("--torque: %s is not above zero; the direction of drive is --flank", torqueText)}
			}
			enquiry, catalogue, err := axle.LoadEnquiry(args[0])
			if err != nil {
				return err
			}
			flank := enquiry.Mounting.Forward
			if flankText != "" {
				flank = axle.Flank(flankText)
				if flank != axle.DriveFlank && flank != axle.CoastFlank {
					return usageError{fmt.Errorf("--flank: %q is not a flank; write drive (convex side of the crown wheel's teeth) or coast", flankText)}
				}
			}
			builds, err := catalogue.BuildsFor(&enquiry)
			if err != nil {
				return err
			}
			build := builds[0]
			if gapText != "" {
				if err := setGap(&build, gapText); err != nil {
					return err
				}
			}
			cases, err := solveCases(&enquiry, &catalogue, build, flank, torque.SI, sweep)
			if err != nil {
				return err
			}
			return printLoad(cmd.OutOrStdout(), cases, sweep, asJSON)
		},
	}
	cmd.Flags().StringVar(&torqueText, "torque", "", "torque at the axle, both wheels together, such as 2500Nm")
	cmd.Flags().StringVar(&flankText, "flank", "", "drive or coast; the one that pulls forward where left out")
	cmd.Flags().StringVar(&gapText, "gap", "", "gap of the peg in place of the catalogue's, such as 0.25mm")
	cmd.Flags().BoolVar(&asJSON, "json", false, "print JSON, values in SI")
	cmd.Flags().BoolVar(&sweep, "sweep", false, fmt.Sprintf("solve at %d torques up to the one given", sweepPoints))
	return cmd
}

// oneValue reads a flag that takes a value without a doubt.
func oneValue(flag, text string, dim quantity.Dimension) (quantity.Quantity, error) {
	q, err := quantity.Parse(text, dim)
	switch {
	case err != nil:
		return q, usageError{fmt.Errorf("%s: %w", flag, err)}
	case q.Spread != quantity.NoSpread:
		return q, usageError{fmt.Errorf("%s: %q has a doubt; one state is solved at one value, such as %s", flag, text, dim.Example())}
	}
	return q, nil
}

func setGap(build *axle.Assembly, text string) error {
	if build.Peg == nil {
		return fmt.Errorf("--gap: this unit has no peg; name one under \"fitted\" in the enquiry")
	}
	gap, err := oneValue("--gap", text, quantity.Length)
	if err != nil {
		return err
	}
	if gap.SI < 0 || gap.SI > widestGap {
		return usageError{fmt.Errorf("--gap: %s is no gap of a peg; write one from 0 mm to %s", text, quantity.Format(widestGap, quantity.Length))}
	}
	peg := *build.Peg
	peg.Gap.Value, peg.Gap.Text = gap.SI, text
	build.Peg = &peg
	return nil
}

func solveCases(e *axle.Enquiry, c *axle.Catalogue, build axle.Assembly, flank axle.Flank, torque float64, sweep bool) ([]assess.LoadCase, error) {
	torques := []float64{torque}
	if sweep {
		torques = torques[:0]
		for i := 1; i <= sweepPoints; i++ {
			torques = append(torques, torque*float64(i)/sweepPoints)
		}
	}
	var cases []assess.LoadCase
	for _, t := range torques {
		one, err := assess.SolveLoad(e, c, build, flank, t)
		if err != nil {
			return nil, err
		}
		cases = append(cases, one)
	}
	return cases, nil
}

func printLoad(out io.Writer, cases []assess.LoadCase, sweep, asJSON bool) error {
	switch {
	case asJSON && sweep:
		return writeJSON(out, cases)
	case asJSON:
		return writeJSON(out, cases[0])
	case sweep:
		return document.LoadSweepText(out, cases)
	}
	return document.LoadText(out, &cases[0])
}
