package sqlstore_test

import (
	"bufio"
	"context"
	"database/sql"
	"fmt"
	"os"
	"os/exec"
	"testing"

	"axlewright/shop"
	"axlewright/shop/shoptest"
	"axlewright/sqlstore"
)

// TestMain lets the test program also be the other program that a test needs:
// one that opens a shop, writes to it, and can be killed.
func TestMain(m *testing.M) {
	if role := os.Getenv("AXLEWRIGHT_TEST_CHILD"); role != "" {
		if err := play(role, os.Args[1:]); err != nil {
			fmt.Println(err)
			os.Exit(1)
		}
		return
	}
	code := m.Run()
	if large.dir != "" {
		os.RemoveAll(large.dir)
	}
	os.Exit(code)
}

// child is another program: role, folder, connection string, job.
func child(t testing.TB, role string, args ...string) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	c := exec.CommandContext(t.Context(), self, args...)
	c.Env = append(os.Environ(), "AXLEWRIGHT_TEST_CHILD="+role)
	return c
}

func play(role string, args []string) error {
	ctx := context.Background()
	s, err := sqlstore.Open(ctx, sqlstore.Options{Dir: args[0], Postgres: args[1], Shared: role == "write"})
	if err != nil {
		return err
	}
	defer s.Close()
	if role == "open" {
		return nil
	}
	sh, err := shop.Open(ctx, s, shop.Options{})
	if err != nil {
		return err
	}
	job := shop.ID(args[2])
	if role == "write" {
		_, err = sh.Record(ctx, shop.Program, job, reading("written elsewhere"))
		return err
	}
	// "save": a reading after each other, each told once it is acknowledged.
	out := bufio.NewWriterSize(os.Stdout, 64)
	for i := 0; ; i++ {
		ticket := fmt.Sprintf("%d-%d", os.Getpid(), i)
		if _, err := sh.Record(ctx, shop.Program, job, reading(ticket)); err != nil {
			return err
		}
		if i%5 == 0 {
			if _, err := sh.AddPhoto(ctx, shop.Program, job, "lash", ticket, []byte(args[3])); shop.CodeOf(err) != shop.Invalid {
				return fmt.Errorf("a photograph that is none: %v", err)
			}
		}
		fmt.Fprintln(out, ticket)
		out.Flush()
	}
}

// reading is a reading in a place of its own.
func reading(ticket string) shop.Set {
	return shop.Set{Slot: shop.Slot{Step: "stations", Item: "gap", Place: ticket}, Value: shoptest.MM("0.5", 0.5), Ticket: ticket}
}

// terminate runs a statement in PostgreSQL that must do something.
func terminate(t *testing.T, url, statement string) {
	t.Helper()
	db, err := sql.Open("pgx", url)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	var n int
	if err := db.QueryRow(statement).Scan(&n); err != nil || n == 0 {
		t.Fatalf("%d connections ended, %v", n, err)
	}
}
