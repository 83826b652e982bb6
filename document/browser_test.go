package document

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"axlewright/drawing/sample"
)

// ruler is put into a copy of a page to tell where a browser laid things: the
// foot of the page, the foot of the footer, the height left for notes, and the
// least size of letters, in mm.
const ruler = `<script>
const mm = x => (x / 96 * 25.4).toFixed(2), box = q => document.querySelector(q).getBoundingClientRect();
let least = 99;
for (const e of document.querySelectorAll('.page *')) if (e.textContent.trim() && !e.closest('svg') && e.tagName != 'CAPTION')
  least = Math.min(least, parseFloat(getComputedStyle(e).fontSize));
const wide = [...document.querySelectorAll('.page *')].filter(e => !e.closest('caption') && e.getBoundingClientRect().right > box('.page').right).length;
document.title = ['laid', mm(box('.page').bottom), mm(box('footer').bottom), mm(box('.notes').height), mm(least), wide].join(' ');
</script>`

var laid = regexp.MustCompile(`laid ([\d.]+) ([\d.]+) ([\d.]+) ([\d.]+) (\d+)`)

// A browser must lay the page out as it was measured: nothing over the edge, room
// for notes, and no letters under 7.5 points. The browser is an independent
// witness of the measuring; the printed PDF is looked at by the checks of the
// whole program.
func TestBrowserLaysThePageOutAsMeasured(t *testing.T) {
	browser, err := exec.LookPath("chromium")
	if err != nil {
		t.Skip("no chromium on this machine")
	}
	if testing.Short() {
		t.Skip("starts a browser")
	}
	long := sample.Full()
	long.Enquiry = strings.Repeat("E-2026-104417/", 4)
	for name, content := range map[string][]byte{
		"plain": page(t, sample.Advice()), "full": page(t, sample.Full()), "long number": page(t, long), "wild": page(t, sample.Wild()),
	} {
		dir := t.TempDir()
		file := filepath.Join(dir, "page.html")
		content = bytes.Replace(content, []byte("</body>"), []byte(ruler+"</body>"), 1)
		if err := os.WriteFile(file, content, 0o600); err != nil {
			t.Fatal(err)
		}
		out, err := exec.Command(browser, "--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
			"--user-data-dir="+filepath.Join(dir, "profile"), "--dump-dom", "file://"+file).Output()
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		var foot, footer, notes, least float64
		var wide int
		found := laid.Find(out)
		if _, err := fmt.Sscanf(string(found), "laid %f %f %f %f %d", &foot, &footer, &notes, &least, &wide); err != nil {
			t.Fatalf("%s: the browser measured nothing: %v", name, err)
		}
		t.Logf("%s: page to %.1f mm, footer to %.1f, notes %.1f, letters %.2f mm", name, foot, footer, notes, least)
		if footer > foot-5 || notes < 6 || least < 7.5*mm-0.01 || wide > 0 {
			t.Errorf("%s: page to %.1f mm, footer to %.1f, notes %.1f, letters %.2f mm, %d over the edge", name, foot, footer, notes, least, wide)
		}
	}
}
