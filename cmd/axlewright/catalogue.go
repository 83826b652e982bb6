package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"axlewright/axle"
)

func newCatalogue() *cobra.Command {
	return group(&cobra.Command{
		Use:   "catalogue",
		Short: "Check catalogue and enquiry files, or print their schema for an editor",
	}, newCatalogueCheck(), newCatalogueSchema())
}

func newCatalogueCheck() *cobra.Command {
	return &cobra.Command{
		Use:   "check FILE…",
		Short: "Say that files are in order, or everything that is wrong with them",
		Long: `Catalogue files named together are checked as one catalogue. An enquiry is
checked with the catalogue files that it names itself.`,
		Example: `  axlewright catalogue check tarnhow.yaml upgrades.yaml duties.yaml
  axlewright catalogue check enquiries/01-hill-farm.yaml`,
		Args: arguments(cobra.MinimumNArgs(1), "one file or more"),
		RunE: func(cmd *cobra.Command, args []string) error {
			return checkFiles(cmd.OutOrStdout(), args)
		},
	}
}

// checkFiles checks the files of one catalogue together, and each enquiry.
func checkFiles(out io.Writer, paths []string) error {
	var catalogue, enquiries []string
	for _, path := range paths {
		if axle.IsEnquiry(path) {
			enquiries = append(enquiries, path)
		} else {
			catalogue = append(catalogue, path)
		}
	}
	var refused []error
	if len(catalogue) > 0 {
		c, err := axle.LoadCatalogue(catalogue...)
		if err == nil {
			err = describeCatalogue(out, strings.Join(catalogue, ", "), &c)
		}
		refused = append(refused, err)
	}
	for _, path := range enquiries {
		e, c, err := axle.LoadEnquiry(path)
		if err == nil {
			err = describeEnquiry(out, path, &e, &c)
		}
		refused = append(refused, err)
	}
	return told(errors.Join(refused...))
}

// told puts a heading over findings, so that the first stands in a line of its own.
func told(err error) error {
	if err == nil {
		return nil
	}
	return fmt.Errorf("not in order:\n%w", err)
}

func describeCatalogue(out io.Writer, name string, c *axle.Catalogue) error {
	fmt.Fprintf(out, "%s: all is well.\n", name)
	for _, part := range []struct {
		count int
		one   string
		many  string
	}{
		{len(c.Castings), "casting", "castings"}, {len(c.GearSets), "gear set", "gear sets"}, {len(c.Bearings), "bearing", "bearings"},
		{len(c.DiffCentres), "diff centre", "diff centres"}, {len(c.HalfShafts), "pair of half-shafts", "pairs of half-shafts"},
		{len(c.Upgrades), "upgrade", "upgrades"}, {len(c.Duties), "duty", "duties"}, {len(c.Measurements), "measurement", "measurements"},
	} {
		if part.count > 0 {
			fmt.Fprintf(out, "    %4d %s\n", part.count, plural(part.count, part.one, part.many))
		}
	}
	figures, byDefault := 0, 0
	axle.EachFigure(c, "", func(_ string, n *axle.Number) {
		if n.Given() {
			figures++
		}
		if n.ByDefault {
			byDefault++
		}
	})
	fmt.Fprintf(out, "    %4d figures, %d of them with the default doubt of their kind\n", figures, byDefault)
	for i := range c.Castings {
		k := &c.Castings[i]
		builds, err := c.Builds(k.Name, k.GearSets[0], nil)
		if err != nil {
			return err
		}
		fmt.Fprintf(out, "    %s can be built in %d %s\n", k.Name, len(builds), plural(len(builds), "way", "ways"))
	}
	return nil
}

func describeEnquiry(out io.Writer, path string, e *axle.Enquiry, c *axle.Catalogue) error {
	builds, err := c.BuildsFor(e)
	if err != nil {
		return err
	}
	duty, err := c.Duty(e.Duty)
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(out, "%s: all is well.\n    enquiry %s of %s: casting %s with %s, %s axle pulling on the %s side, duty %s in %d blocks\n    %d %s to choose from\n",
		path, e.Number, e.Customer, e.Casting, e.Gears, e.Mounting.Position, e.Mounting.Forward, duty.Name, len(duty.Blocks),
		len(builds), plural(len(builds), "build", "builds"))
	return err
}

func plural(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

func newCatalogueSchema() *cobra.Command {
	var enquiry bool
	cmd := &cobra.Command{
		Use:   "schema",
		Short: "Print the JSON Schema of catalogue files, or of enquiries, for an editor",
		Example: `  axlewright catalogue schema > catalogue.schema.json
  axlewright catalogue schema --enquiry > enquiry.schema.json`,
		Args: arguments(cobra.NoArgs, "no file; it prints"),
		RunE: func(cmd *cobra.Command, _ []string) error {
			schema := axle.CatalogueSchema
			if enquiry {
				schema = axle.EnquirySchema
			}
			text, err := schema()
			if err != nil {
				return err
			}
			_, err = fmt.Fprintf(cmd.OutOrStdout(), "%s\n", text)
			return err
		},
	}
	cmd.Flags().BoolVar(&enquiry, "enquiry", false, "the schema of an enquiry")
	return cmd
}
