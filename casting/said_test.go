package casting

import (
	"strings"
	"testing"
)

// What a line of a record says is read back as it was said, for every answer
// of the invented catalogue and for sizes.
func TestSaidIsReadBack(t *testing.T) {
	c, err := LoadCatalogue(examples + "tarnhow-variants.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for i := range c.Features {
		f := &c.Features[i]
		answers := append([]string{CannotSee}, f.Answers...)
		if f.Measured() {
			at := millimetres((f.Span.Low + f.Span.High) / 2)
			answers = append(answers, at, at+" ± 0.02 mm, maker")
		}
		for _, a := range answers {
			for looked := range 4 {
				for _, told := range []bool{false, true} {
					item, err := c.Item(f.Name, Said(a, looked, told))
					if err != nil {
						t.Errorf("%s: %q: %v", f.Name, Said(a, looked, told), err)
						continue
					}
					again := 0
					if looked > 1 {
						again = looked
					}
					if item.Text != a || item.Told != told || item.Looked != again || item.Unseen != (a == CannotSee) || !f.Measured() && !item.Unseen && item.Answer != a {
						t.Errorf("%s: %q, %d looks, heard %v came back as %+v", f.Name, a, looked, told, item)
					}
				}
			}
		}
	}
}

func FuzzItem(f *testing.F) {
	c, err := LoadCatalogue(examples + "tarnhow-variants.yaml")
	if err != nil {
		f.Fatal(err)
	}
	for _, line := range []string{"four curved", "four curved, looked 2 times, heard", "72 mm", ", looked 9 times", ", heard", "1e999 mm", "can't see it, looked -1 times", "\x00"} {
		f.Add("ribs", line)
		f.Add("head bore", line)
	}
	f.Fuzz(func(t *testing.T, feature, line string) {
		item, err := c.Item(feature, line)
		if err != nil {
			if strings.TrimSpace(err.Error()) == "" {
				t.Error("refused without a word")
			}
			return
		}
		if _, err := NewMatcher(&c).Identify(Bench{Evidence: Evidence{item}}); err != nil {
			t.Errorf("%q of %s was taken as %+v and then refused: %v", line, feature, item, err)
		}
	})
}
