package sqlstore_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"axlewright/shop"
	"axlewright/shop/shoptest"
)

// Somebody with the database in hand alters, takes out, moves and adds entries.
// All of it is found; what was computed anew, cut off or taken out whole, with
// an earlier backup beside it.
func TestWhatWasDoneToTheDatabaseIsFound(t *testing.T) {
	const entry = "job = 1"
	for name, c := range map[string]struct {
		do     []string
		want   string
		backup bool // only an earlier backup shows it
	}{
		"a word altered": {do: []string{`UPDATE entries SET body = replace(body, '0.15 mm', '0.14 mm') WHERE ` + entry + ` AND seq = 5`}, want: "entry 5: its words have been altered"},
		"an entry out":   {do: []string{`DELETE FROM entries WHERE ` + entry + ` AND seq = 5`}, want: "an entry is missing"},
		"two changed places": {do: []string{`UPDATE entries SET seq = 99 WHERE ` + entry + ` AND seq = 5`,
			`UPDATE entries SET seq = 5 WHERE ` + entry + ` AND seq = 6`, `UPDATE entries SET seq = 6 WHERE ` + entry + ` AND seq = 99`}, want: "moved"},
		"the last one out": {do: []string{`DELETE FROM entries WHERE ` + entry + ` AND seq = 6`}, want: "should end with entry 6"},
		"one added": {do: []string{`INSERT INTO entries (job, seq, hash, body, slot, corrects, ticket)
			SELECT job, 7, hash, replace(body, '"seq":6', '"seq":7'), 'lash/lash/3', corrects, 'new' FROM entries WHERE ` + entry + ` AND seq = 6`}, want: "entry 7: its words have been altered"},
		"the end cut off with care": {do: []string{`DELETE FROM entries WHERE ` + entry + ` AND seq = 6`,
			`UPDATE jobs SET head_seq = 5, head_hash = (SELECT hash FROM entries WHERE ` + entry + ` AND seq = 5) WHERE ordinal = 1`}, want: "it is not the entry that was signed or printed", backup: true},
		"the whole job out": {do: []string{`DELETE FROM entries WHERE ` + entry, `DELETE FROM jobs WHERE ordinal = 1`}, want: "job 0001: the number was given, and no record has it"},
	} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			s := openSQLite(t, dir)
			b := shoptest.Fellgate(t, s)
			j, other := b.Open(), b.Open()
			b.Write(j.ID, "lash", "lash", "1", shoptest.MM("0.15", 0.15))
			b.Write(j.ID, "lash", "lash", "2", shoptest.MM("0.16", 0.16))
			if j, err := b.Shop.Job(t.Context(), j.ID); err != nil || j.Head.Seq != 6 {
				t.Fatal(j.Head, err)
			}
			var backup bytes.Buffer
			if _, err := b.Shop.BackUp(t.Context(), shop.Program, &backup, false); err != nil {
				t.Fatal(err)
			}
			earlier, err := shop.BackupHeads(bytes.NewReader(backup.Bytes()), int64(backup.Len()))
			if err != nil {
				t.Fatal(err)
			}
			if c, err := b.Shop.VerifyAll(t.Context(), earlier); err != nil || len(c.Wrong)+len(c.Missing) > 0 || c.Records != 2 {
				t.Fatalf("before: %+v %v", c, err)
			}
			for _, statement := range c.do {
				alter(t, dir, statement)
			}
			says := func(earlier map[shop.ID]shop.Head) []string {
				c, err := b.Shop.VerifyAll(t.Context(), earlier)
				if err != nil {
					t.Fatal(err)
				}
				said := c.Missing
				for _, w := range c.Wrong {
					if w.Job.ID == other.ID {
						t.Errorf("the other record: %v", w.Found)
					}
					for _, f := range w.Found {
						said = append(said, f.String())
					}
				}
				return said
			}
			has := func(said []string) bool {
				return slices.ContainsFunc(said, func(s string) bool { return strings.Contains(s, c.want) })
			}
			alone, against := says(nil), says(earlier)
			if has(alone) == c.backup || !has(against) {
				t.Errorf("found %q alone and %q against the backup, want %q", alone, against, c.want)
			}
		})
	}
}
