package drawing

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Figures must be tabular, or columns of them would not stand.
func TestFiguresAreOfOneWidth(t *testing.T) {
	for _, bold := range []bool{false, true} {
		for _, d := range "123456789" {
			if TextWidth(string(d), 1, bold) != TextWidth("0", 1, bold) {
				t.Errorf("%c is not as wide as 0", d)
			}
		}
	}
	if TextWidth("漢", 1, false) < 1 {
		t.Error("a letter that is not in the table must be taken as wide")
	}
}

func TestWrapKeepsWordsAndWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.OneOf(rapid.String(), rapid.StringMatching(`([a-z]{1,30}[ -]){0,12}`)).Draw(t, "words")
		width := rapid.Float64Range(5, 80).Draw(t, "width")
		most := rapid.IntRange(1, 5).Draw(t, "most")
		lines, whole := Wrap(words, width, 2.65, false, most)
		if len(lines) > most {
			t.Fatalf("%d lines, not %d", len(lines), most)
		}
		for _, l := range lines {
			if TextWidth(l, 2.65, false) > width {
				t.Fatalf("%q is wider than %v", l, width)
			}
		}
		bare := func(s string) string { return strings.ReplaceAll(Clean(s), " ", "") }
		got := bare(strings.Join(lines, ""))
		if whole && got != bare(words) {
			t.Fatalf("%q became %q", words, lines)
		}
		if !whole && !(strings.HasSuffix(got, "…") && strings.HasPrefix(bare(words), strings.TrimSuffix(got, "…"))) {
			t.Fatalf("%q was shortened to %q", words, lines)
		}
	})
}

func TestUnitsStayWithTheirFigures(t *testing.T) {
	for _, width := range []float64{16, 18, 20, 22, 26, 30} {
		lines, whole := Wrap("goes at 8,300 N·m (6,120 lbf·ft), in 93 % of them", width, 2.65, false, 20)
		for _, line := range lines {
			if Unit(line) || !whole {
				t.Errorf("at %v mm: %q", width, lines)
			}
		}
	}
}

// Where there is no room at all, each letter is a line; it must still end.
func TestWrapWithoutRoomEnds(t *testing.T) {
	for _, width := range []float64{0, -5} {
		if lines, whole := Wrap("ab", width, 3, false, 5); whole != true || len(lines) != 2 {
			t.Errorf("%v mm: %q", width, lines)
		}
		if line, _ := Shorten("abc", width, 3, false); len([]rune(line)) > 1 {
			t.Errorf("%v mm: %q", width, line)
		}
	}
}

func TestCleanMakesOnePlainLine(t *testing.T) {
	for in, want := range map[string]string{
		"a\tb\n c": "a b c", "\u202eabc\x00": "abc", "bad \xff byte": "bad byte", "Ø 12 µm": "Ø 12 µm", "": "",
	} {
		if got := Clean(in); got != want {
			t.Errorf("Clean(%q) = %q, want %q", in, got, want)
		}
	}
}

func TestTextBoxFollowsAnchorAndTurn(t *testing.T) {
	text := Text{At: Point{50, 50}, Words: "mmmm", Size: 4, Anchor: Start}
	w := TextWidth("mmmm", 4, false)
	for _, c := range []struct {
		anchor      Anchor
		turn        float64
		left, right float64
	}{
		{Start, 0, 50, 50 + w}, {Middle, 0, 50 - w/2, 50 + w/2}, {End, 0, 50 - w, 50},
		{Start, 90, 50 - 4*ascent, 50 + 4*descent}, // reads upward: its head is to the left
		{Start, 180, 50 - w, 50},
	} {
		text.Anchor, text.Turn = c.anchor, c.turn
		if b := text.Box(); !near(b.Left, c.left) || !near(b.Right, c.right) {
			t.Errorf("%s turned %v: %v, want %v to %v", c.anchor, c.turn, b, c.left, c.right)
		}
	}
}

func near(a, b float64) bool { return a-b < 1e-6 && b-a < 1e-6 }
