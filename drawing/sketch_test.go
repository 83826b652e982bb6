package drawing

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"axlewright/setup"
)

// Every sketch is sound, and has words for one who cannot see it.
func TestSketches(t *testing.T) {
	keys := []string{}
	for key := range sketches {
		keys = append(keys, key)
	}
	for _, flank := range []string{"drive: ", "coast: "} {
		for _, a := range setup.Alongs {
			keys = append(keys, flank+string(a))
		}
		for _, h := range setup.Heights {
			keys = append(keys, flank+string(h))
		}
		for _, s := range setup.Shapes {
			keys = append(keys, flank+string(s))
		}
	}
	for _, d := range setup.Depths {
		keys = append(keys, "teeth: "+string(d))
	}
	names := map[string]string{}
	for _, key := range keys {
		d, ok := Sketch(key)
		if !ok {
			t.Errorf("%s is not drawn", key)
			continue
		}
		if err := sound(d); err != nil {
			t.Errorf("%s: %v", key, err)
		}
		if names[d.Name] != "" {
			t.Errorf("%s and %s have one name on a page", key, names[d.Name])
		}
		names[d.Name] = key
		if dir := os.Getenv("SKETCHES"); dir != "" {
			var b bytes.Buffer
			if err := WriteSVG(&b, d); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(filepath.Join(dir, d.Name+".svg"), b.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
	if _, ok := Sketch("drive: upside down"); ok {
		t.Error("a word that nobody says is drawn")
	}
}
