package web_test

import (
	"net/http"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"axlewright/casting"
	"axlewright/quantity"
	"axlewright/shop"
	"axlewright/shop/shoptest"
	"axlewright/web"
)

// saw answers a question of the identification page as a thumb does.
func (b *bench) saw(job shop.ID, feature, says string, more ...string) answer {
	b.t.Helper()
	path := "/job/" + string(job) + "/identify?feature=" + strings.ReplaceAll(feature, " ", "+")
	last := ""
	for _, n := range find(b.page(path), func(n *html.Node) bool { return attr(n, "name") == "feature" && attr(n, "value") == feature }) {
		for _, x := range find(n.Parent, func(n *html.Node) bool { return attr(n, "name") == "corrects" }) {
			last = attr(x, "value")
		}
	}
	if last == "" {
		b.t.Fatalf("%s is not asked", feature)
	}
	return b.post("/job/"+string(job)+"/seen", append([]string{"feature", feature, "answer", says, "corrects", last}, more...)...)
}

// tell answers many questions, each of which must be taken.
func (b *bench) tell(job shop.ID, pairs ...string) {
	b.t.Helper()
	for i := 0; i+1 < len(pairs); i += 2 {
		if a := b.saw(job, pairs[i], pairs[i+1]); a.status != http.StatusSeeOther {
			b.t.Fatalf("%s: %s: %d %s", pairs[i], pairs[i+1], a.status, text(parse(b.t, a.body)))
		}
	}
}

func (b *bench) identifyPage(job shop.ID) string {
	return text(b.page("/job/" + string(job) + "/identify"))
}

func wants(t *testing.T, page string, parts ...string) {
	t.Helper()
	for _, p := range parts {
		if !strings.Contains(page, p) {
			t.Errorf("the page does not say %q:\n%s", p, page)
		}
	}
}

// The odd castings of the trade, through the page (common practice, no source).

func TestSameNumberTwoRibsOnTheBench(t *testing.T) {
	b := openBench(t)
	j := b.Open(shop.WorkPlates)
	b.tell(j.ID, "raised number", "20", "date", casting.CannotSee)
	wants(t, b.identifyPage(j.ID), "T20", "T20K", "Look at this next", "How many ribs", "1.50 mm", "cannot be seen: date")
	b.Write(j.ID, "identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T24.ID))
	b.tell(j.ID, "ribs", "four curved", "foundry mark", "wheel")
	wants(t, b.identifyPage(j.ID), "It is called T24, but what was seen goes better with T20K")
	wants(t, b.identifyPage(j.ID), "T20K, sure enough", "Take kit KIT-T20K-A.2", "T20 has 1.50 mm (59 thou) less in boss height")
}

func TestNumberGroundOffOnTheBench(t *testing.T) {
	b := openBench(t)
	j := b.Open(shop.WorkPlates)
	b.tell(j.ID, "raised number", "ground off", "foundry mark", casting.CannotSee, "date", casting.CannotSee, "ribs", casting.CannotSee, "paint", "blue",
		"old work", "none", "studs", "10", "head bore", "72.00 mm", "cap bolt", "1/2 UNC", "adjuster pitch", "1.5 mm")
	wants(t, b.identifyPage(j.ID), "Likely T20K", "Width of the machined seat", "speaks strongly against T24")
	b.tell(j.ID, "cap seat", "60.0 mm")
	wants(t, b.identifyPage(j.ID), "T20K, sure enough", "stop here")
}

func TestModifiedBeforeOnTheBench(t *testing.T) {
	b := openBench(t)
	j := b.Open(shop.WorkPlates)
	b.tell(j.ID, "raised number", "24", "ribs", "four straight", "studs", "10", "peg boss", "welded on", "old work", "weld and sleeve")
	wants(t, b.identifyPage(j.ID), "✕ modified before", "No standard kit and no welding on this casting yet", "Dye penetrant", "bore gauge: head bore")
}

func TestMirrorCastingOnTheBench(t *testing.T) {
	b := openBench(t)
	j := b.Open(shop.WorkPlates)
	b.tell(j.ID, "raised number", "20", "ribs", "three straight", "oil trough", "right", "old work", "none", "head bore", "72.01 mm")
	wants(t, b.identifyPage(j.ID), "the other way round", "mirror image")
}

func TestMetalDisagreesWithShapeOnTheBench(t *testing.T) {
	b := openBench(t)
	j := b.Open(shop.WorkPlates)
	b.tell(j.ID, "raised number", "24", "ribs", "four straight", "web", "window", "head bore", "80.01 mm ± 0.01 mm", "cap seat", "64.1 mm", "cap bolt", "M14 x 1.5", "old work", "none")
	b.Write(j.ID, "metal", "swarf", "", shop.Words("powder"))
	b.Write(j.ID, "metal", "ring", "", shop.Words("thuds"))
	wants(t, b.identifyPage(j.ID), "the tests alone give grey iron")
	b.Write(j.ID, "metal", "hardness", "", shop.Figure("195 HB", 195, quantity.HardnessBrinell))
	for item, share := range map[string]float64{"carbon": 0.034, "silicon": 0.021, "magnesium": 0.00002} {
		b.Write(j.ID, "metal", item, "", shop.Figure(quantity.Exact(share, quantity.Share), share, quantity.Share))
	}
	wants(t, b.identifyPage(j.ID), "Replacements were cast in other metals")
	wants(t, text(b.page("/job/"+string(j.ID)+"/metal")), "grey iron", "Replacements were cast in other metals", "do not weld plates to it", "Tensile strength")
}

// Every answer is an entry with who and when; it is corrected and taken back
// as any other, and what is no answer is refused with a sentence.
func TestAnswersAreEntries(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	b.tell(j.ID, "ribs", "four curved")
	b.tell(j.ID, "ribs", "three straight")
	b.saw(j.ID, "ribs", "three straight", "again", "1", "heard", "1")
	got, err := b.shop.Job(t.Context(), j.ID)
	if err != nil {
		t.Fatal(err)
	}
	slot := shop.Slot{Step: "identify", Item: shop.SeenItem, Place: "ribs"}
	all := got.History(slot)
	if len(all) != 3 || all[1].Corrects != all[0].Seq || all[2].Value.Text != "three straight, looked 2 times, heard" || all[2].Who.ID == "" {
		t.Fatalf("the record has %+v", all)
	}
	wants(t, b.identifyPage(j.ID), "heard, not seen: counts half")
	if a := b.post("/job/"+string(j.ID)+"/seen", "feature", "ribs", "answer", "four curved", "corrects", itoa(all[0].Seq)); a.status != http.StatusConflict {
		t.Errorf("on top of an entry that no longer stands: %d", a.status)
	}
	b.saw(j.ID, "ribs", "", "withdraw", "1")
	if got, _ = b.shop.Job(t.Context(), j.ID); got.Standing(slot) != nil {
		t.Error("it still stands after it was taken back")
	}
	for says, part := range map[string]string{"six straight": "three curved", "": "Type what you measured"} {
		if a := b.saw(j.ID, "ribs", says); a.status != http.StatusUnprocessableEntity || !strings.Contains(text(parse(t, a.body)), part) {
			t.Errorf("%q: %d %s", says, a.status, text(parse(t, a.body)))
		}
	}
	if a := b.saw(j.ID, "head bore", "", "value", "7.2", "unit", "in"); a.status != http.StatusUnprocessableEntity {
		t.Errorf("a bore of 7.2 inches: %d", a.status)
	}
	b.Write(j.ID, "identify", shop.SeenItem, "tail fins", shop.Text("two"))
	wants(t, b.identifyPage(j.ID), "Not counted: tail fins: two", "no feature of the catalogue")
}

// The picture of an answer stands on its button, drawn from the answer's words.
func TestAnswersAreDrawn(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	doc := b.page("/job/" + string(j.ID) + "/identify?feature=ribs")
	buttons := find(doc, func(n *html.Node) bool { return n.Data == "button" && attr(n, "name") == "answer" })
	if len(buttons) != 6 { // five answers and can't see it
		t.Fatalf("%d answers", len(buttons))
	}
	for _, n := range buttons {
		says := attr(n, "value")
		drawn := find(n, func(n *html.Node) bool { return n.Data == "path" && attr(n, "stroke-width") == "0.9" })
		wantLines := map[string]int{"three straight": 3, "three curved": 3, "four straight": 4, "four curved": 4, "five straight": 5}[says]
		if len(drawn) != wantLines {
			t.Errorf("%s is drawn with %d ribs", says, len(drawn))
		}
		for _, p := range drawn {
			if strings.Contains(attr(p, "d"), "A") != strings.Contains(says, "curved") {
				t.Errorf("%s is drawn as %s", says, attr(p, "d"))
			}
		}
	}
	for _, n := range find(b.page("/job/"+string(j.ID)+"/identify?feature=studs"), func(n *html.Node) bool { return n.Data == "button" && attr(n, "value") == "10" }) {
		if got := len(find(n, func(n *html.Node) bool { return n.Data == "circle" && attr(n, "stroke-width") == "0.9" })); got != 10 {
			t.Errorf("10 studs are drawn as %d", got)
		}
	}
}

// A shop without files of variants keeps the boxes, to be filled by hand.
func TestWithoutVariants(t *testing.T) {
	b := openBench(t, func(o *web.Options) { o.Folder = t.TempDir() })
	j := b.Open(shop.WorkPlates)
	doc := b.page("/job/" + string(j.ID) + "/identify")
	boxOf(t, doc, "identify/seen/ribs")
	wants(t, text(doc), "files of variants in the folder identify")
	wants(t, text(b.page("/job/"+string(j.ID)+"/metal")), "No test was made")
}

// castingPages are the pages on which a casting is told, measured and placed,
// each with much to show.
func (b *bench) castingPages(j *shop.Job) []string {
	b.t.Helper()
	b.tell(j.ID, "raised number", "24", "ribs", "four straight", "date", casting.CannotSee, "head bore", "80.01 mm", "drain plug", "socket")
	b.Write(j.ID, "identify", shop.SeenItem, "tail fins", shop.Text("two"))
	b.Write(j.ID, "identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T24.ID))
	b.Write(j.ID, "metal", "swarf", "", shop.Words("powder"))
	b.Write(j.ID, "metal", "hardness", "", shop.Figure("195 HB", 195, quantity.HardnessBrinell))
	for place, mm := range map[string]float64{"1": 18.2, "3": 168.1, "5": 67.1, "7": 48.9} {
		b.Write(j.ID, "stations", shop.StationItem, place, shoptest.MM(itoa(int64(mm*1000))+" µm", mm))
	}
	at := "/job/" + string(j.ID)
	return []string{at + "/identify", at + "/identify?feature=head+bore", at + "/identify?feature=cap+bolt", at + "/identify?feature=peg+boss", at + "/metal", at + "/stations",
		"/cards/casting/" + string(b.T24.ID) + "/stations"}
}

// Both papers come as PDF; a casting whose variant is open has no trim sheet.
func TestCastingPapers(t *testing.T) {
	b := openBench(t)
	j := b.Open(shop.WorkPlates)
	at := "/job/" + string(j.ID)
	if a := b.get(at + "/stations/trim.pdf"); a.status != http.StatusNotFound {
		t.Errorf("a trim sheet of no variant: %d", a.status)
	}
	b.castingPages(j)
	for _, path := range []string{at + "/identify/card.pdf", at + "/stations/trim.pdf"} {
		if a := b.get(path); a.status != http.StatusOK || a.header.Get("Content-Type") != "application/pdf" || !strings.HasPrefix(a.body, "%PDF-") {
			t.Errorf("%s: %d %s", path, a.status, a.header.Get("Content-Type"))
		}
	}
}

// Advice says beside its form that the casting is not settled.
func TestAdviceKnowsOfTheDoubtAboutTheCasting(t *testing.T) {
	b := openBench(t)
	j := b.Open()
	at := "/job/" + string(j.ID) + "/advice"
	wants(t, text(b.page(at)), "Nobody has written down yet which variant")
	b.Write(j.ID, "identify", "casting", "", shop.LinkTo(shop.KindCasting, b.T24.ID))
	b.Write(j.ID, "identify", "sure", "", shop.Words("a guess"))
	wants(t, text(b.page(at)), "The casting is called T24, a guess")
	b.Write(j.ID, "identify", "sure", "", shop.Words(shop.SureYes))
	if got := text(b.page(at)); strings.Contains(got, "The casting is called") {
		t.Error("a settled casting is doubted")
	}
}

// A new variant is made on the page and told by the next casting of its kind.
func TestNewVariantOnTheBench(t *testing.T) {
	b := openBench(t)
	j := b.Open(shop.WorkPlates)
	odd := []string{"raised number", "20", "ribs", "four straight", "web", "window", "studs", "10", "old work", "none", "head bore", "73.02 mm", "cap seat", "58.1 mm"}
	b.tell(j.ID, odd...)
	wants(t, b.identifyPage(j.ID), "Something does not go together", "Look at this again", "Looked again, afresh: ")
	for i := 0; i < len(odd); i += 2 {
		if odd[i] == "ribs" || odd[i] == "web" || odd[i] == "head bore" {
			b.saw(j.ID, odd[i], odd[i+1], "again", "1")
		}
	}
	wants(t, b.identifyPage(j.ID), "△ none of these", "None of these: a new variant")
	if a := b.post("/job/"+string(j.ID)+"/call", "new", "1", "variant", "T22"); a.status != http.StatusSeeOther {
		t.Fatalf("made: %d %s", a.status, text(parse(t, a.body)))
	}
	next := b.Open(shop.WorkPlates)
	b.tell(next.ID, odd...)
	wants(t, b.identifyPage(next.ID), "T22, sure enough", "7 variants known", "1 confirmed casting of this shop")
	if a := b.post("/job/"+string(next.ID)+"/call", "variant", "T22", "sure", shop.SureYes); a.status != http.StatusSeeOther {
		t.Fatalf("called: %d %s", a.status, text(parse(t, a.body)))
	}
	wants(t, b.identifyPage(next.ID), "Called T22 , sure, by")
	// the card keeps the job that it came from when it is saved by its page
	got, err := b.shop.Job(t.Context(), j.ID)
	if err != nil {
		t.Fatal(err)
	}
	card := "/cards/casting/" + string(got.Casting().ID)
	if a := b.post(card, "revision", "1", "name", "T22", "maker", "Tarnhow"); a.status != http.StatusSeeOther {
		t.Fatalf("the card: %d %s", a.status, text(parse(t, a.body)))
	}
	if c, err := shop.Get[shop.Casting](t.Context(), b.shop, got.Casting().ID); err != nil || c.From != j.ID || c.Maker != "Tarnhow" {
		t.Errorf("the card is now %+v %v", c, err)
	}
	if a := b.post("/job/"+string(next.ID)+"/call", "variant", "T99", "sure", shop.SureYes); a.status != http.StatusUnprocessableEntity {
		t.Errorf("a variant that nobody knows: %d", a.status)
	}
}
