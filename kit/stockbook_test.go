package kit

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// copyKits copies the example kits into a folder of their own.
func copyKits(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS("../examples/kits")); err != nil {
		t.Fatal(err)
	}
	return dir
}

func TestANestTakesFromTheStockBookAndPutsBack(t *testing.T) {
	dir := copyKits(t)
	path := filepath.Join(dir, "nest-stock.yaml")
	areaOf := func(b StockBook) (area float64) {
		for _, s := range b.InStock() {
			n, err := s.stock()
			if err != nil {
				t.Fatal(err)
			}
			area += float64(s.Count) * n.Outline.Area()
		}
		return area
	}
	for round := range 2 {
		j, err := LoadJob(path)
		if err != nil {
			t.Fatal(err)
		}
		j.Rules.Tries = 1
		cuttings, err := j.Run(context.Background(), nil)
		if err != nil {
			t.Fatal(err)
		}
		book, file := j.Book()
		before := areaOf(book)
		lines, err := book.Cut(cuttings, "2026-11-25", "nest-stock")
		if err != nil {
			t.Fatal(err)
		}
		used := 0.0
		for i := range cuttings {
			y := cuttings[i].Plan.Yield()
			used += y.Sheet - y.Offcuts
		}
		if err := lines.Append(file); err != nil {
			t.Fatal(err)
		}
		now, err := LoadStock(file)
		if err != nil {
			t.Fatal(err)
		}
		// What left the stock is what became plates or scrap, but for remnants written
		// down to a tenth of a millimetre.
		near(t, "area taken, m²", before-areaOf(now), used, 1e-3)
		if len(now) != len(book)+len(lines) {
			t.Errorf("round %d: %d lines of %d and %d", round, len(now), len(book), len(lines))
		}
		if _, err := book.Cut(cuttings, "yesterday", "x"); err == nil {
			t.Error("cut on no day")
		}
		cuttings[0].Plan.Left[0] = 1
		if _, err := book.Cut(cuttings, "2026-11-25", "x"); err == nil || !strings.Contains(err.Error(), "no room") {
			t.Errorf("cut although a piece has no room: %v", err)
		}
	}
}

func TestStockBooksThatCannotBe(t *testing.T) {
	came := `{on: "2026-03-02", came: {name: a, steel: S355, thickness: 8 mm, count: 2}}`
	for want, text := range map[string]string{
		"is no day":              `- {on: "2 March", came: {name: a, steel: S355, thickness: 8 mm}}`,
		"so many were not there": "- " + came + "\n" + `- {on: "2026-03-03", took: a, count: 3}`,
		"was something else":     "- " + came + "\n" + `- {on: "2026-03-03", came: {name: a, steel: S355, thickness: 6 mm}}`,
		"either what came or":    `- {on: "2026-03-02"}`,
	} {
		path := filepath.Join(t.TempDir(), "stock.yaml")
		if err := os.WriteFile(path, []byte(text+"\n"), 0o600); err != nil {
			t.Fatal(err)
		}
		if _, err := LoadStock(path); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", want, err)
		}
	}
	dir := copyKits(t)
	path := filepath.Join(dir, "nest-stock.yaml")
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	twice := string(text) + "sheets: [{name: R-001, steel: S700MC, thickness: 3 mm}]\n"
	if err := os.WriteFile(path, []byte(twice), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := LoadJob(path); err == nil || !strings.Contains(err.Error(), "in this file and in the stock") {
		t.Errorf("a name in both: %v", err)
	}
}
