package document_test

import (
	"bytes"
	"regexp"
	"slices"
	"strings"
	"testing"

	"axlewright/assess"
	"axlewright/document"
	"axlewright/drawing/sample"
)

// The page for the screen is the printed sheet with what stands behind it, and
// asks for nothing outside the one file.
func TestAdvicePage(t *testing.T) {
	a := sample.Advice()
	a.Customer = `<b>"Brack" & Sons</b>`
	a.Loads = []assess.BearingShare{{Bearing: "head", DriveRadial: 21e3, DriveAxial: 14e3, CoastRadial: 8e3, CoastAxial: 31e3}}
	var out bytes.Buffer
	if err := document.AdvicePage(&out, a); err != nil {
		t.Fatal(err)
	}
	page := out.String()
	for _, want := range []string{"Recommended: build 3", "load on the peg", "without the peg", "<th scope=\"row\">head</th><td>21.0 kN (4,720 lbf)</td>", "What the doubt hangs on", "WHAT THE VEHICLE CAN PUT THROUGH THIS AXLE", "&#34;Brack&#34; &amp; Sons"} {
		if !strings.Contains(page, want) {
			t.Errorf("nothing says %q", want)
		}
	}
	if strings.Contains(page, "<b>") || regexp.MustCompile(`(src|href)=|url\(|<script`).MatchString(page) {
		t.Error("the page holds what was typed as it was typed, or asks for another file")
	}
	if sheets := strings.Count(page, `class="sheet"`); sheets != len(document.Recommendation(a).Pages()) {
		t.Errorf("%d sheets", sheets)
	}
	var ids []string
	for _, m := range regexp.MustCompile(` id="([^"]+)"`).FindAllStringSubmatch(page, -1) {
		ids = append(ids, m[1])
	}
	if len(ids) < 6 || len(slices.Compact(slices.Sorted(slices.Values(ids)))) != len(ids) {
		t.Errorf("names of pictures stand twice: %v", ids)
	}
}

// Where no peg was looked at there is no curve and no word of one.
func TestAdvicePageWithoutPeg(t *testing.T) {
	a := sample.Advice()
	a.Peg.Curve, a.Peg.Gap = nil, nil
	var out bytes.Buffer
	if err := document.AdvicePage(&out, a); err != nil || strings.Contains(out.String(), "load on the peg") {
		t.Errorf("%v, or the page draws the load of a peg that is none", err)
	}
}
