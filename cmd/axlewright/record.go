package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"axlewright/shop"
	"axlewright/sqlstore"
)

func newRecord() *cobra.Command {
	return group(&cobra.Command{
		Use:   "record",
		Short: "Verify, export and import the records of a shop",
	}, newRecordVerify(), newRecordExport(), newRecordImport())
}

func newRecordVerify() *cobra.Command {
	var database, against string
	cmd := &cobra.Command{
		Use:   "verify DIR [NUMBER …] | FILE.zip",
		Short: "Find any entry that was altered, lost or moved, in all records or in those of some numbers",
		Long: `Check that each entry of each record follows the one before it, that nothing is
cut off at the end, that no running number is without its record, that
certificates are signed with the shop's key and that every photograph and paper
is what it was. The bench may be open meanwhile.

Somebody who knew how could compute a whole record anew. What the customer's
certificate says would then no longer fit, nor what an earlier backup says:
--against compares with one.

With a zip file in place of the folder, check one exported job.`,
		Example: `  axlewright record verify shop
  axlewright record verify shop T24-0117
  axlewright record verify shop --against shop/backups/shop-20260303-020000.zip
  axlewright record verify job-0001.zip`,
		Args: arguments(cobra.MinimumNArgs(1), "the shop's folder, or an exported job"),
		RunE: func(cmd *cobra.Command, args []string) error {
			out := cmd.OutOrStdout()
			if strings.HasSuffix(args[0], ".zip") {
				return verifyExport(out, args[0])
			}
			if against != "" && len(args) > 1 {
				return usageError{fmt.Errorf("--against looks at all records: leave the numbers out")}
			}
			store, sh, err := readShop(cmd, args[0], database)
			if err != nil {
				return err
			}
			defer store.Close()
			if len(args) > 1 {
				return verifyNumbers(cmd.Context(), out, sh, args[1:])
			}
			return verifyAll(cmd.Context(), out, sh, against)
		},
	}
	cmd.Flags().StringVar(&against, "against", "", "a backup: each record must hold all that it held then")
	databaseFlag(cmd, &database)
	return cmd
}

func newRecordExport() *cobra.Command {
	var database string
	cmd := &cobra.Command{
		Use:   "export DIR NUMBER FILE.zip",
		Short: "Write one job into a file that anybody can read and check without the program",
		Args:  arguments(cobra.ExactArgs(3), "the shop's folder, a number and a file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			store, sh, err := readShop(cmd, args[0], database)
			if err != nil {
				return err
			}
			defer store.Close()
			jobs, err := jobsOf(cmd.Context(), sh, args[1])
			if err != nil {
				return err
			}
			if len(jobs) > 1 {
				return fmt.Errorf("%d units have the number %q; give the whole number", len(jobs), args[1])
			}
			if _, err := os.Stat(args[2]); err == nil {
				return fmt.Errorf("%s is there already; name a new file", args[2])
			}
			err = writeFile(args[2], func(f *os.File) error { return sh.Export(cmd.Context(), shop.Program, jobs[0], f) })
			if err != nil {
				return err
			}
			return verifyExport(cmd.OutOrStdout(), args[2])
		},
	}
	databaseFlag(cmd, &database)
	return cmd
}

func newRecordImport() *cobra.Command {
	var database string
	cmd := &cobra.Command{
		Use:   "import DIR FILE.zip",
		Short: "Take in a job that this shop or another exported",
		Long: `Take in a job that was exported. The record is verified first, and nothing is
written unless it is whole. A longer copy of a record that is here continues it.
Close the bench first, or take it in on its page "Shop".`,
		Args: arguments(cobra.ExactArgs(2), "the shop's folder and an exported job"),
		RunE: func(cmd *cobra.Command, args []string) error {
			f, size, err := openSized(args[1])
			if err != nil {
				return err
			}
			defer f.Close()
			store, sh, err := openShop(cmd, args[0], database)
			if err != nil {
				return err
			}
			defer store.Close()
			got, err := sh.Import(cmd.Context(), shop.Program, f, size)
			if err != nil {
				return sqlstore.InFile(args[1], err)
			}
			fmt.Fprintf(cmd.OutOrStdout(), "%s: %d entries added.\n%s\n", jobName(got.Job), got.Added, sealed(got.Signed))
			return nil
		},
	}
	databaseFlag(cmd, &database)
	return cmd
}

func openSized(path string) (*os.File, int64, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, 0, err
	}
	info, err := f.Stat()
	if err != nil {
		f.Close()
		return nil, 0, err
	}
	return f, info.Size(), nil
}

func verifyExport(out io.Writer, path string) error {
	f, size, err := openSized(path)
	if err != nil {
		return err
	}
	defer f.Close()
	e, err := shop.CheckExport(f, size)
	if err != nil {
		return sqlstore.InFile(path, err)
	}
	fmt.Fprintf(out, "✓ %s of %s: %d entries, whole; exported by %s.\n%s\n  key %s\n", jobName(e.Job), e.Job.Origin.Label, e.Job.Head.Seq, e.By.Label, sealed(e.Signed), e.Key)
	return nil
}

func sealed(signed bool) string {
	if signed {
		return "✓ The seal fits the key in the file: compare that with the key that the shop prints on its certificates."
	}
	return "△ The seal does not fit the key in the file: ask the shop that exported it."
}

func jobName(j *shop.Job) string {
	return strings.TrimSpace("job " + j.NumberText() + " " + j.Stamped())
}

func verifyAll(ctx context.Context, out io.Writer, sh *shop.Shop, against string) error {
	var earlier map[shop.ID]shop.Head
	if against != "" {
		f, size, err := openSized(against)
		if err != nil {
			return err
		}
		defer f.Close()
		if earlier, err = shop.BackupHeads(f, size); err != nil {
			return sqlstore.InFile(against, err)
		}
	}
	c, err := sh.VerifyAll(ctx, earlier)
	if err != nil {
		return err
	}
	for _, w := range c.Wrong {
		tellWrong(out, w.Job, w.Found)
	}
	for _, m := range c.Missing {
		fmt.Fprintf(out, "✕ %s\n", m)
	}
	return verdict(out, c.Records, c.Entries, len(c.Wrong), len(c.Missing))
}

func verifyNumbers(ctx context.Context, out io.Writer, sh *shop.Shop, numbers []string) error {
	jobs, err := jobsOf(ctx, sh, numbers...)
	if err != nil {
		return err
	}
	entries, wrong := int64(0), 0
	for _, id := range jobs {
		j, err := sh.Job(ctx, id)
		if err != nil {
			return err
		}
		found, err := sh.VerifyJob(ctx, id)
		if err != nil {
			return err
		}
		entries += j.Head.Seq
		if len(found) > 0 {
			wrong++
			tellWrong(out, j, found)
		}
	}
	return verdict(out, len(jobs), entries, wrong, 0)
}

func tellWrong(out io.Writer, j *shop.Job, found []shop.Finding) {
	fmt.Fprintf(out, "✕ %s\n", jobName(j))
	for _, f := range found {
		fmt.Fprintf(out, "    %s\n", f)
	}
}

func verdict(out io.Writer, records int, entries int64, wrong, missing int) error {
	switch {
	case wrong > 0 && missing > 0:
		return fmt.Errorf("%d of %d records are not whole, and %d are missing", wrong, records, missing)
	case wrong > 0:
		return fmt.Errorf("%d of %d records are not whole", wrong, records)
	case missing > 0:
		return fmt.Errorf("%d records are missing", missing)
	}
	_, err := fmt.Fprintf(out, "✓ records: %d, entries: %d; all whole.\n", records, entries)
	return err
}

// jobsOf finds the jobs of some numbers.
func jobsOf(ctx context.Context, sh *shop.Shop, numbers ...string) ([]shop.ID, error) {
	var all []shop.ID
	for _, n := range numbers {
		lines, err := sh.Search(ctx, n, 500)
		if err != nil {
			return nil, err
		}
		if len(lines) == 0 {
			return nil, fmt.Errorf("no unit has the number %q", n)
		}
		for _, l := range lines {
			all = append(all, l.Job)
		}
	}
	return all, nil
}
