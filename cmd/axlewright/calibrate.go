package main

import (
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"axlewright/assess"
	"axlewright/axle"
	"axlewright/document"
	"axlewright/drawing"
)

func newCalibrate() *cobra.Command {
	var asJSON bool
	var pictures, sheet string
	var options assess.Options
	cmd := &cobra.Command{
		Use:   "calibrate FILE",
		Short: "Fit the casting's stiffness to bench readings, and rank the builds anew",
		Long: `Fit the stiffness of one casting to dial readings on the back face of its crown
wheel, and show the ranking of its builds before and after. A reading that
contradicts the model is told. "axlewright calibrate --sheet OUT.pdf" writes the
bench procedure as a page to print, PDF.`,
		Example: `  axlewright calibrate --sheet procedure.pdf
  axlewright calibrate readings.yaml
  axlewright calibrate readings.yaml --pictures .`,
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) == 1 || len(args) == 0 && sheet != "" {
				return nil
			}
			return usageError{fmt.Errorf("%s expects one file of bench readings, or --sheet OUT.pdf", cmd.CommandPath())}
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			if sheet != "" {
				if err := writePaper(sheet, document.BenchReading()); err != nil {
					return err
				}
			}
			if len(args) == 0 {
				return nil
			}
			bench, enquiry, catalogue, err := axle.LoadBench(args[0])
			if err != nil {
				return err
			}
			fit, err := assess.Calibrate(&enquiry, &catalogue, &bench)
			if err != nil {
				return err
			}
			line := newProgress(cmd.ErrOrStderr(), "drawing")
			options.Progress = line.update
			before, err := assess.Advise(cmd.Context(), &enquiry, &catalogue, options)
			if err != nil {
				return err
			}
			options.Calibration = &fit.Calibration
			after, err := assess.Advise(cmd.Context(), &enquiry, &catalogue, options)
			line.done()
			if err != nil {
				return err
			}
			if pictures != "" {
				if err := os.MkdirAll(pictures, 0o755); err != nil {
					return cannotWrite(pictures, err)
				}
			}
			for name, advice := range map[string]*assess.Advice{"ladder-before.svg": &before, "ladder-after.svg": &after} {
				if pictures == "" {
					break
				}
				if err := writeFile(filepath.Join(pictures, name), func(f *os.File) error {
					return drawing.WriteSVG(f, drawing.Ladder(advice))
				}); err != nil {
					return err
				}
			}
			if asJSON {
				return writeJSON(cmd.OutOrStdout(), struct {
					Fit    assess.Fit    `json:"fit"`
					Before assess.Advice `json:"before"`
					After  assess.Advice `json:"after"`
				}{fit, before, after})
			}
			return document.FitText(cmd.OutOrStdout(), &fit, &before, &after)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print JSON, values in SI")
	cmd.Flags().StringVar(&pictures, "pictures", "", "also write the ladder before and after to this folder")
	cmd.Flags().StringVar(&sheet, "sheet", "", "write the bench procedure as one A4 page to this file")
	drawsFlag(cmd, &options)
	cmd.Flags().Uint64Var(&options.Seed, "seed", 1, "seed of the draws")
	return cmd
}
