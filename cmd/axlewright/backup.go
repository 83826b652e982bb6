package main

import (
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"axlewright/shop"
	"axlewright/sqlstore"
)

func newBackup() *cobra.Command {
	var database string
	cmd := &cobra.Command{
		Use:   "backup DIR FILE",
		Short: "Write a whole shop into one file, and read it back to check it",
		Long: `Write the shop of the folder DIR into FILE (a zip file that can be read without
the program) and read it back from end to end. The bench may be open meanwhile; it
makes its own backups each night, into DIR/backups.

Whoever has the file has the shop, its signing key too: keep it like a key.`,
		Args: arguments(cobra.ExactArgs(2), "the shop's folder and a file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if _, err := os.Stat(args[1]); err == nil {
				return fmt.Errorf("%s is there already; name a new file", args[1])
			}
			store, sh, err := readShop(cmd, args[0], database)
			if err != nil {
				return err
			}
			defer store.Close()
			b, err := store.BackUpFile(cmd.Context(), sh, args[1])
			if err != nil {
				return err
			}
			fmt.Fprintf(cmd.OutOrStdout(), "%s: %d jobs, %d entries, %d cards, %d files; read back and whole.\n", args[1], b.Jobs, b.Entries, b.Cards, b.Files)
			return nil
		},
	}
	databaseFlag(cmd, &database)
	return cmd
}

func newRestore() *cobra.Command {
	var database string
	var check bool
	cmd := &cobra.Command{
		Use:   "restore FILE DIR",
		Short: "Put a backup into an empty folder, all of it or nothing",
		Args: func(cmd *cobra.Command, args []string) error {
			if check {
				return arguments(cobra.ExactArgs(1), "a backup file, with --check")(cmd, args)
			}
			return arguments(cobra.ExactArgs(2), "a backup file and an empty folder")(cmd, args)
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			var b shop.Backup
			var err error
			if check {
				b, err = sqlstore.CheckFile(args[0])
			} else {
				b, err = restoreInto(cmd, args[0], args[1], database)
			}
			if err != nil {
				return err
			}
			fmt.Fprintf(cmd.OutOrStdout(), "%s of %s: %d jobs, %d entries, %d cards, %d files; whole.\n",
				b.Name, b.At.Local().Format("2 January 2006 15:04"), b.Jobs, b.Entries, b.Cards, b.Files)
			return nil
		},
	}
	cmd.Flags().BoolVar(&check, "check", false, "only read the backup from end to end")
	databaseFlag(cmd, &database)
	return cmd
}

func restoreInto(cmd *cobra.Command, file, dir, database string) (shop.Backup, error) {
	if there, err := os.ReadDir(dir); err == nil && len(there) > 0 {
		return shop.Backup{}, fmt.Errorf("%s is not empty; name a new folder", dir)
	}
	if b, err := sqlstore.CheckFile(file); err != nil { // before anything is made
		return b, err
	}
	store, err := openStore(cmd, dir, database, false)
	if err != nil {
		return shop.Backup{}, err
	}
	defer store.Close()
	return store.RestoreFile(cmd.Context(), file)
}

func databaseFlag(cmd *cobra.Command, database *string) {
	cmd.Flags().StringVar(database, "database", "", "PostgreSQL connection string in place of the file in DIR (or AXLEWRIGHT_DATABASE)")
}

// openStore opens the store of a folder: alone, to write in it, or beside a bench
// that has it open, to read it.
func openStore(cmd *cobra.Command, dir, database string, reading bool) (*sqlstore.Store, error) {
	if database == "" {
		database = os.Getenv("AXLEWRIGHT_DATABASE")
	}
	return sqlstore.Open(cmd.Context(), sqlstore.Options{Dir: dir, Postgres: database, Reading: reading})
}

// openShop opens a shop that is there, to write in it.
func openShop(cmd *cobra.Command, dir, database string) (*sqlstore.Store, *shop.Shop, error) {
	store, _, err := readShop(cmd, dir, database)
	if err != nil {
		return nil, nil, err
	}
	if err := store.Close(); err != nil {
		return nil, nil, err
	}
	return shopOf(cmd, dir, database, false)
}

// readShop opens a shop that is there, to read it.
func readShop(cmd *cobra.Command, dir, database string) (*sqlstore.Store, *shop.Shop, error) {
	store, sh, err := shopOf(cmd, dir, database, true)
	if shop.CodeOf(err) == shop.NotFound {
		err = fmt.Errorf("there is no shop in %s; \"axlewright serve %s\" begins one", dir, dir)
	}
	return store, sh, err
}

func shopOf(cmd *cobra.Command, dir, database string, reading bool) (*sqlstore.Store, *shop.Shop, error) {
	store, err := openStore(cmd, dir, database, reading)
	if err != nil {
		return nil, nil, err
	}
	sh, err := shop.Open(cmd.Context(), store, shop.Options{})
	if err != nil {
		store.Close()
		return nil, nil, err
	}
	return store, sh, nil
}
