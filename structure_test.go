package axlewright

import (
	"go/build"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"
)

// floors is the picture of ARCHITECTURE.md as a table. A package may import
// only packages of a lower floor; change the picture first, then this table.
var floors = []struct {
	folder string
	floor  int
}{
	{"internal/published", 0},
	{"calc/check", 0},
	{"calc", 0},
	{"quantity", 0},
	{"axle", 1},
	{"handbook", 1},
	{"examples", 1},
	{"loadpath", 2},
	{"assess", 3},
	{"casting", 3},
	{"kit", 3},
	{"setup", 3},
	{"weldplan", 3},
	{"shop", 4},
	{"sqlstore", 5},
	{"drawing", 4},
	{"document", 5},
	{"demo", 5},
	{"web", 6},
	{"cmd/axlewright", 7},
}

// floorOf returns the row of the table that a folder belongs to, and its floor.
// Packages of one row may import each other.
func floorOf(folder string) (row string, floor int, known bool) {
	for _, f := range floors {
		if folder == f.folder || strings.HasPrefix(folder, f.folder+"/") {
			return f.folder, f.floor, true
		}
	}
	return "", 0, false
}

func TestImportsNeverClimb(t *testing.T) {
	const module = "axlewright/"
	packages := 0
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if !d.IsDir() || path == "." {
			return nil
		}
		if strings.HasPrefix(d.Name(), ".") || d.Name() == "testdata" {
			return filepath.SkipDir
		}
		pkg, err := build.ImportDir(path, 0)
		if _, empty := err.(*build.NoGoError); empty {
			return nil
		}
		if err != nil {
			return err
		}
		if len(pkg.GoFiles) == 0 { // only tests, such as worked problems
			return nil
		}
		packages++
		row, from, known := floorOf(filepath.ToSlash(path))
		if !known {
			t.Errorf("%s stands on no floor: give it a sentence in ARCHITECTURE.md and a row here", path)
			return nil
		}
		for _, imported := range pkg.Imports {
			to, ours := strings.CutPrefix(imported, module)
			if !ours {
				continue
			}
			toRow, floor, known := floorOf(to)
			switch {
			case !known:
				t.Errorf("%s imports %s, which stands on no floor", path, to)
			case floor > from:
				t.Errorf("%s (floor %d) climbs to %s (floor %d)", path, from, to, floor)
			case floor == from && from > 0 && row != toRow:
				t.Errorf("%s and %s share floor %d and may not import each other", path, to, floor)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if packages < 5 {
		t.Fatalf("found only %d packages: run this test from the module's root", packages)
	}
}
