// Axlewright tells a workshop which build of a drive-axle nose casting carries
// what a vehicle can put through it, and how sure it is.
package main

import (
	"errors"
	"fmt"
	"os"
	"strings"

	"github.com/spf13/cobra"
)

// Exit codes.
const (
	exitRefused = 1 // the input was refused
	exitUsage   = 2 // the command was not understood
)

// A usageError is a command that was not understood.
type usageError struct{ error }

func main() {
	if err := newRoot().Execute(); err != nil {
		fmt.Fprintln(os.Stderr, "axlewright:", err)
		var usage usageError
		if errors.As(err, &usage) {
			if !strings.Contains(err.Error(), "--help") {
				fmt.Fprintln(os.Stderr, "\"axlewright help\" lists the commands.")
			}
			os.Exit(exitUsage)
		}
		os.Exit(exitRefused)
	}
}

func newRoot() *cobra.Command {
	root := &cobra.Command{
		Use:           "axlewright",
		Short:         "Which build of a nose casting carries this vehicle, and how sure are you?",
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          cobra.ArbitraryArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) > 0 {
				return usageError{fmt.Errorf("there is no command %q", args[0])}
			}
			return cmd.Help()
		},
	}
	root.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error {
		text, _, _ := strings.Cut(err.Error(), ": strconv.")
		return usageError{fmt.Errorf("%s; \"%s --help\" shows how it is written", text, cmd.CommandPath())}
	})
	root.CompletionOptions.HiddenDefaultCmd = true
	root.AddCommand(newAdvise(), newLoad(), newCalibrate(), newWork(), newCatalogue(), newDemo(), newIdentify(), newStations(), newKit(), newWeld(), newServe(), newBackup(), newRestore(), newRecord())
	return root
}

// group makes a command that only holds others: alone it shows them, and a word
// that is none of them is refused.
func group(cmd *cobra.Command, inner ...*cobra.Command) *cobra.Command {
	names := make([]string, len(inner))
	for i, c := range inner {
		names[i] = c.Name()
	}
	cmd.Args = cobra.ArbitraryArgs
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if len(args) > 0 {
			return usageError{fmt.Errorf("%s has no command %q; expected %s", cmd.Name(), args[0], strings.Join(names, " or "))}
		}
		return cmd.Help()
	}
	cmd.AddCommand(inner...)
	return cmd
}

// arguments turns cobra's complaint about the number of arguments into a
// usage error that says what was expected.
func arguments(rule cobra.PositionalArgs, expected string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if err := rule(cmd, args); err != nil {
			return usageError{fmt.Errorf("%s expects %s; \"%s --help\" shows how it is written", strings.TrimPrefix(cmd.CommandPath(), "axlewright "), expected, cmd.CommandPath())}
		}
		return nil
	}
}
