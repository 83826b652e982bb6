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
	{"loadpath", 2},
	{"assess", 3},
	{"drawing", 5},
	{"document", 5},
	{"cmd/axlewright", 7},
}

// sideways lists the only imports allowed within one floor.
var sideways = map[[2]string]bool{}

func floorOf(folder string) (int, bool) {
	for _, f := range floors {
		if folder == f.folder || strings.HasPrefix(folder, f.folder+"/") {
			return f.floor, true
		}
	}
	return 0, false
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
		from, known := floorOf(filepath.ToSlash(path))
		if !known {
			t.Errorf("%s stands on no floor: give it a sentence in ARCHITECTURE.md and a row here", path)
			return nil
		}
		for _, imported := range pkg.Imports {
			to, ours := strings.CutPrefix(imported, module)
			if !ours {
				continue
			}
			floor, known := floorOf(to)
			switch {
			case !known:
				t.Errorf("%s imports %s, which stands on no floor", path, to)
			case floor > from:
				t.Errorf("%s (floor %d) climbs to %s (floor %d)", path, from, to, floor)
			case floor == from && from > 0 && to != filepath.ToSlash(path) && !sideways[[2]string{filepath.ToSlash(path), to}]:
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
