package axle

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Every file that is no catalogue is refused in a sentence, with its name.
func TestFilesThatAreNoCatalogues(t *testing.T) {
	folder := t.TempDir()
	for _, c := range []struct{ name, text, says string }{
		{"empty", "", "is empty"},
		{"blank", " \n\n", "is empty"},
		{"comments", "# nothing yet\n", "holds nothing but comments"},
		{"binary", "\x7fELF\x02\x00\x00", "is not text in UTF-8"},
		{"latin", "note: caf\xe9\n", "is not text in UTF-8"},
		{"scalar", "hello\n", "expected keys with values"},
		{"list", "- a\n- b\n", "expected keys with values"},
		{"open bracket", "castings: [\n", "is not YAML from here on"},
		{"open quote", "note: \"abc\n", "is not YAML from here on"},
		{"two colons", "note: a: b\n", "is not YAML from here on"},
		{"tab", "castings:\n\t- name: x\n", "is not YAML from here on"},
		{"two documents", "note: a\n---\nnote: b\n", "a second document begins here"},
		{"alias", "note: &a x\n", "anchors (&), aliases (*) and tags (!) are not used"},
		{"merge", "castings:\n  - <<: {name: x}\n", "unknown key"},
		{"tag", "note: !!binary aGVsbG8=\n", "tags (!) are not used"},
		{"nothing", "castings:\n", "there is no value here"},
		{"deep flow", "castings: " + strings.Repeat("[", 30) + strings.Repeat("]", 30), "nested deeper than any data file"},
		{"deep flow unclosed", "castings: " + strings.Repeat("[", 100_000), "nested deeper than any data file"},
		{"deep mapping", "castings: " + strings.Repeat("{a: ", 30) + "1" + strings.Repeat("}", 30), "nested deeper than any data file"},
		{"deep list", strings.Repeat("- ", 1000) + "x", "nested deeper than any data file"},
		{"deep block", staircase(300), "nested deeper than any data file"},
	} {
		path := write(t, folder, "broken.yaml", c.text)
		_, err := LoadCatalogue(path)
		found := findings(t, err)
		if len(found) == 0 || !strings.Contains(found.Error(), c.says) || found[0].File != path {
			t.Errorf("%s: found %v, want %q", c.name, found, c.says)
		}
		if _, _, err := LoadEnquiry(path); err == nil {
			t.Errorf("%s passes as an enquiry", c.name)
		}
	}
}

// staircase is a mapping as deep as it is long.
func staircase(steps int) string {
	var b strings.Builder
	for i := range steps {
		b.WriteString(strings.Repeat(" ", i) + "a:\n")
	}
	return b.String()
}

// A bomb of aliases cannot go off: aliases are not followed.
func TestAliasBomb(t *testing.T) {
	bomb := "a: &a [x, x, x, x, x, x, x, x, x]\n"
	for c := 'b'; c <= 'i'; c++ {
		p := string(c - 1)
		bomb += string(c) + ": &" + string(c) + " [*" + strings.Join(strings.Split(strings.Repeat(p, 9), ""), ", *") + "]\n"
	}
	r := newReading()
	var c Catalogue
	r.text("bomb.yaml", bomb, &c)
	if len(r.found) != 9 {
		t.Errorf("found %v, want nine unknown keys", r.found)
	}
	r = newReading()
	r.text("bomb.yaml", "note: *a\n", &c)
	if len(r.found) != 1 {
		t.Errorf("found %v", r.found)
	}
}

func TestAFolderIsNoFile(t *testing.T) {
	folder := t.TempDir()
	_, err := LoadCatalogue(folder)
	if err == nil || !strings.Contains(err.Error(), "is a folder; name a file in it") {
		t.Errorf("found %v", err)
	}
}

func TestAFileThatIsNotThere(t *testing.T) {
	_, err := LoadCatalogue(filepath.Join(t.TempDir(), "tarnhow.yml"))
	if err == nil || !strings.Contains(err.Error(), "tarnhow.yml: there is no such file") {
		t.Errorf("found %v", err)
	}
}

func TestAHugeFileIsNotRead(t *testing.T) {
	path := write(t, t.TempDir(), "huge.yaml", "# a long comment about a casting\n")
	if err := os.Truncate(path, 100<<20); err != nil { // grows it
		t.Fatal(err)
	}
	_, err := LoadCatalogue(path)
	if err == nil || !strings.Contains(err.Error(), "is larger than 8 MB") {
		t.Errorf("found %v", err)
	}
}

// A file cut off anywhere is refused, or is a shorter catalogue: it never
// panics, and what is found has a place.
func TestTruncatedFiles(t *testing.T) {
	text := exampleText(t, "tarnhow.yaml")
	refused := 0
	for end := 1; end < len(text); end += 311 {
		r := newReading()
		var c Catalogue
		r.text("cut.yaml", strings.ToValidUTF8(text[:end], ""), &c)
		if !r.broken {
			r.checkCatalogue(&c)
		}
		for _, f := range r.found {
			if f.Problem == "" || f.File != "cut.yaml" || !r.broken && f.Line == 0 {
				t.Fatalf("cut at %d: %+v", end, f)
			}
		}
		if len(r.found) > 0 {
			refused++
		}
	}
	if refused < 50 {
		t.Errorf("only %d cuts were noticed", refused)
	}
}

func TestOtherLineEndsAndAByteOrderMark(t *testing.T) {
	text := "\ufeff" + strings.ReplaceAll(exampleText(t, "tarnhow.yaml"), "\n", "\r\n")
	folder := t.TempDir()
	paths := []string{write(t, folder, "tarnhow.yaml", text)}
	for _, name := range exampleFiles[1:] {
		paths = append(paths, write(t, folder, name, exampleText(t, name)))
	}
	if _, err := LoadCatalogue(paths...); err != nil {
		t.Error(err)
	}
}
