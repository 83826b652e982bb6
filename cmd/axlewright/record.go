package main

import (
	"context"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"axlewright/shop"
)

func newRecord() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "record",
		Short: "Look after the records of a shop",
		Args:  arguments(cobra.NoArgs, "a command such as \"verify\""),
		RunE:  func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	cmd.AddCommand(newRecordVerify())
	return cmd
}

func newRecordVerify() *cobra.Command {
	var database string
	cmd := &cobra.Command{
		Use:   "verify DIR [NUMBER …]",
		Short: "Find any entry that was altered, lost or moved, in all records or in those of some numbers",
		Long: `Check that each entry of each record follows the one before it, that nothing is
cut off at the end, that certificates are signed with the shop's key and that
every photograph and paper is what it was.`,
		Args: arguments(cobra.MinimumNArgs(1), "the shop's folder"),
		RunE: func(cmd *cobra.Command, args []string) error {
			store, sh, err := openShop(cmd, args[0], database)
			if err != nil {
				return err
			}
			defer store.Close()
			return verifyRecords(cmd.Context(), cmd.OutOrStdout(), sh, args[1:])
		},
	}
	databaseFlag(cmd, &database)
	return cmd
}

func verifyRecords(ctx context.Context, out io.Writer, sh *shop.Shop, numbers []string) error {
	jobs, err := jobsOf(ctx, sh, numbers)
	if err != nil {
		return err
	}
	entries, bad := int64(0), 0
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
		if len(found) == 0 {
			continue
		}
		bad++
		fmt.Fprintf(out, "✕ job %s %s\n", j.NumberText(), j.Stamped())
		for _, f := range found {
			fmt.Fprintf(out, "    %s\n", f)
		}
	}
	if bad > 0 {
		return fmt.Errorf("%d of %d records are not whole", bad, len(jobs))
	}
	_, err = fmt.Fprintf(out, "✓ records: %d, entries: %d; all whole.\n", len(jobs), entries)
	return err
}

// jobsOf finds the jobs of some numbers, all where none is given.
func jobsOf(ctx context.Context, sh *shop.Shop, numbers []string) ([]shop.ID, error) {
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
	if len(numbers) > 0 {
		return all, nil
	}
	err := sh.Store().View(ctx, func(tx shop.Tx) error {
		all = nil
		after := shop.ID("")
		for {
			some, err := tx.Jobs(after, 1000)
			if err != nil || len(some) == 0 {
				return err
			}
			all, after = append(all, some...), some[len(some)-1]
		}
	})
	return all, err
}
