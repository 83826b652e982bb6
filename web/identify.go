package web

import (
	"bytes"
	"cmp"
	"fmt"
	"math"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"
	"time"

	"axlewright/casting"
	"axlewright/drawing"
	"axlewright/quantity"
	"axlewright/shop"
)

// An identifyShow is what is known of the casting in hand.
type identifyShow struct {
	Job      *shop.Job
	May      bool
	ID       casting.Identification
	Ask      *question
	Features []featureShow
	Unread   []shop.Unread
	Variants int // how many the shop knows
	Taught   int // confirmed castings of the shop's own jobs
	Called   *shop.Entry
	Sure     string
	Else     string // what was seen goes better with another variant
}

// A featureShow is a feature and what stands in the record about it.
type featureShow struct {
	Name, Says string
	Here       bool // it is being asked
}

// A question is a feature as it is asked: drawn, with its answers.
type question struct {
	Feature  *casting.Feature
	Next     *casting.Question // what it is worth; nil where it is answered or worth nothing
	Picture  string
	Scale    string // of a size: what the likeliest variants measure
	Answers  []answerShow
	Stands   *shop.Entry
	Last     int64
	Item     casting.Item
	Units    []unit
	Typed    string
	Unit     string
	Why      bool // a reason is wanted: a certificate was given
	Chosen   bool // somebody asked for it; else it is the best
	NowRight float64
}

// An answerShow is an answer as a button.
type answerShow struct {
	Text, Picture, Means string
	Stands               bool
}

// identifyLead works out what the casting in hand is.
func identifyLead(v *visit, j *shop.Job) (lead, error) {
	s, err := v.identify(j)
	if shop.CodeOf(err) == shop.NotFound {
		return lead{Show: noVariants()}, nil
	}
	return lead{identifyPart(s), shop.SeenItem}, err
}

// identify works everything out that the page of the step shows.
func (v *visit) identify(j *shop.Job) (identifyShow, error) {
	s := identifyShow{Job: j, May: v.who.Role.MayRecord("identify"), Called: j.Standing(shop.Slot{Step: "identify", Item: "casting"}), Sure: j.Value("identify", "sure").Word()}
	known, err := v.know(j)
	if err != nil {
		return s, err
	}
	sighting := j.Sighting()
	bench, unread := sighting.Bench(&known.Catalogue)
	if s.ID, err = known.Identify(bench); err != nil {
		return s, err
	}
	if s.Called != nil && s.Sure != shop.SureNew {
		called, best := known.NameOf(s.Called.Value.Link.ID), s.ID.Ranked[0]
		if best.Variant != called && best.Chance >= doubtfulFrom {
			s.Else = fmt.Sprintf("It is called %s, but what was seen goes better with %s (%s).", called, best.Variant, quantity.Chance(best.Chance))
		}
	}
	s.Unread, s.Variants, s.Taught = unread, len(known.Catalogue.Variants), known.Confirmed
	asked := v.r.URL.Query().Get("feature")
	name := asked
	if _, ok := known.Catalogue.Feature(asked); !ok && len(s.ID.Questions) > 0 {
		name = s.ID.Questions[0].Feature
		if s.ID.Again != "" {
			name = s.ID.Again
		}
	}
	if f, ok := known.Catalogue.Feature(name); ok {
		s.Ask = v.question(j, known, &s.ID, f, bench)
		s.Ask.Chosen = asked == name
	}
	for i := range known.Catalogue.Features {
		f := &known.Catalogue.Features[i]
		show := featureShow{Name: f.Name, Here: f.Name == name}
		if e := j.Standing(seenSlot(f.Name)); e != nil {
			show.Says = e.Value.Text
		}
		s.Features = append(s.Features, show)
	}
	return s, nil
}

// doubtfulFrom is the chance of another variant from which a casting that was
// called something is doubted.
const doubtfulFrom = 0.5

func seenSlot(feature string) shop.Slot {
	return shop.Slot{Step: "identify", Item: shop.SeenItem, Place: feature}
}

// question makes a feature ready to be asked.
func (v *visit) question(j *shop.Job, known *knowledge, id *casting.Identification, f *casting.Feature, bench casting.Bench) *question {
	slot := seenSlot(f.Name)
	q := &question{Feature: f, Stands: j.Standing(slot), Last: lastSeq(j, slot), NowRight: id.Ranked[0].Chance}
	q.Why = q.Last != 0 && len(j.Kept(shop.EntryCertificate)) > 0
	if at := slices.IndexFunc(id.Questions, func(n casting.Question) bool { return n.Feature == f.Name }); at >= 0 {
		q.Next = &id.Questions[at]
	}
	if at := slices.IndexFunc(bench.Evidence, func(i casting.Item) bool { return i.Feature == f.Name }); at >= 0 {
		q.Item = bench.Evidence[at]
	}
	q.Picture = svgText(drawing.Feature("asked", f, ""))
	if f.Measured() {
		q.Units = unitsOf(quantity.Length, "mm")
		if q.Item.Text != "" && !q.Item.Unseen {
			q.Typed, q.Unit = splitTyped(q.Item.Text, q.Units)
		}
		reading := math.NaN()
		if q.Item.Value > 0 {
			reading = q.Item.Value
		}
		if sizes := known.Sizes(id, f.Name); len(sizes) > 0 {
			q.Scale = svgText(drawing.SizeScale("scale", f.Name, sizes, reading))
		}
		return q
	}
	for i, a := range f.Answers {
		show := answerShow{Text: a, Picture: svgText(drawing.Feature("answer"+strconv.Itoa(i), f, a)), Stands: q.Item.Answer == a}
		if q.Next != nil {
			show.Means = meaning(q.Next, a)
		}
		q.Answers = append(q.Answers, show)
	}
	return q
}

// meaning says what an answer would mean.
func meaning(q *casting.Question, answer string) string {
	for _, o := range q.Outcomes {
		if o.Says == answer {
			return means(o)
		}
	}
	return "hardly to be expected"
}

// means says what an outcome would leave.
func means(o casting.Outcome) string {
	says := o.Leads + " " + quantity.Chance(o.After)
	if len(o.Disproves) > 0 {
		says += "; rules out " + strings.Join(o.Disproves, ", ")
	}
	return says
}

func svgText(d drawing.Drawing) string {
	var out bytes.Buffer
	if err := drawing.WriteSVG(&out, d); err != nil {
		return ""
	}
	return out.String()
}

// answer writes what somebody saw or measured, or takes it back.
func answer(v *visit) error {
	form, j, err := v.formOfJob()
	if err != nil {
		return err
	}
	catalogue, _, err := v.files()
	if err != nil {
		return err
	}
	feature, ok := catalogue.Feature(form.Get("feature"))
	if !ok {
		return shop.Fault(shop.NotFound, "There is no such feature.")
	}
	set := shop.Set{Slot: seenSlot(feature.Name), Why: form.Get("why"), Ticket: form.Get("ticket")}
	if set.Corrects, err = strconv.ParseInt(form.Get("corrects"), 10, 64); err != nil {
		return shop.Fault(shop.Invalid, "The form does not say what it follows: load the page again.")
	}
	if form.Get("withdraw") != "" {
		set.Value = shop.Withdrawn()
	} else {
		line, err := lineOf(&catalogue, feature, form, j.Standing(set.Slot))
		if err != nil {
			return err
		}
		set.Value = shop.Text(line)
		if feature.Measured() {
			set.Instrument = feature.Tool()
		}
	}
	if taken, err := time.Parse(time.RFC3339, form.Get("taken")); err == nil && v.o.Now().Sub(taken) > time.Minute {
		set.Taken = taken // it waited on the tablet
	}
	if _, err := v.shop.Record(v.ctx(), v.who, j.ID, set); err != nil {
		return err
	}
	if v.bare() {
		v.w.WriteHeader(http.StatusNoContent)
		return nil
	}
	return v.see("/job/" + string(j.ID) + "/identify#identify")
}

// lineOf is an answer as the record keeps it, refused where it is none.
func lineOf(c *casting.Catalogue, f *casting.Feature, form url.Values, stands *shop.Entry) (string, error) {
	text := form.Get("answer")
	if text == "" && f.Measured() {
		text = withUnit(strings.TrimSpace(form.Get("value")), form.Get("unit"))
	}
	if text == "" {
		return "", shop.Fault(shop.Invalid, "Type what you measured, or say that you cannot reach it.").At(f.Name)
	}
	times := 1
	if stands != nil { // the same once more counts as one look more only where somebody says so
		if was, err := c.Item(f.Name, stands.Value.Text); err == nil && was.Text == text && !was.Unseen {
			times = max(was.Looked, 1)
			if form.Get("again") != "" {
				times++
			}
		}
	}
	line := casting.Said(text, times, form.Get("heard") != "")
	if _, err := c.Item(f.Name, line); err != nil {
		return "", shop.Fault(shop.Invalid, "%s: %s", f.Name, err.Error()).At(f.Name)
	}
	return line, nil
}

// callCasting writes which variant the casting is.
func callCasting(v *visit) error {
	form, j, err := v.formOfJob()
	if err != nil {
		return err
	}
	known, err := v.know(j)
	if err != nil {
		return err
	}
	call := shop.Call{Variant: strings.TrimSpace(form.Get("variant")), New: form.Get("new") != "", Sure: form.Get("sure")}
	if _, err := v.shop.CallCasting(v.ctx(), v.who, j.ID, known.Variants, call); err != nil {
		return err
	}
	return v.see("/job/" + string(j.ID) + "/identify#identify")
}

// verdictOf is the sign, the pattern and the word of an identification.
func verdictOf(id casting.Identification) (class, symbol, word string) {
	switch {
	case id.Verdict == casting.ModifiedBefore:
		return "stop", "✕", string(id.Verdict)
	case id.Enough:
		return "fine", "✓", string(id.Verdict)
	}
	return "look", "△", string(id.Verdict)
}

// forOrAgainst is the sign of a piece of evidence.
func forOrAgainst(db float64) string {
	switch {
	case db >= 1:
		return "+"
	case db <= -1:
		return "−"
	}
	return "·"
}

// do is what to do now, without the question that the page asks anyway.
func (s identifyShow) do() []string {
	return slices.DeleteFunc(slices.Clone(s.ID.Do), func(d string) bool {
		return s.Ask != nil && strings.HasPrefix(d, s.Ask.Feature.Ask)
	})
}

// stops are those of the shape; the metal's stand with the metal.
func (s identifyShow) stops() []casting.Stop {
	return s.ID.Stops[:len(s.ID.Stops)-len(s.ID.Metal.Stops)]
}

// callable are the candidates that a casting may be called.
func (s identifyShow) callable() []casting.Candidate {
	var all []casting.Candidate
	for _, c := range s.ID.Ranked {
		if c.Variant != casting.NoneOfTheseName {
			all = append(all, c)
		}
	}
	return all
}

// worth says why the question is asked.
func (q *question) worth() string {
	if q.Next == nil {
		return ""
	}
	after := min(q.NowRight+q.Next.Gain, 1)
	says := "With: " + q.Next.Tool
	if q.Next.Gain >= 0.005 {
		says += fmt.Sprintf(". The likeliest is right with %s now; after this one may expect %s", quantity.Chance(q.NowRight), quantity.Chance(after))
	}
	if !q.Next.Worth {
		says += "; not worth its trouble for this alone"
	}
	return says + "."
}

// joined are names in a row.
func joined(names []string) string { return strings.Join(names, ", ") }

// orWord is the first that is not empty.
func orWord(word, other string) string { return cmp.Or(word, other) }

// barWidth is how far a bar of chance reaches, of a hundred.
func barWidth(chance float64) string { return strconv.FormatFloat(99*chance, 'f', 1, 64) }

func butFor(differs []string) string {
	if len(differs) == 0 {
		return ""
	}
	return ", but for " + joined(differs)
}

func confirmedBefore(seen float64) string {
	if seen == 0 {
		return ""
	}
	return fmt.Sprintf(", %.0f confirmed", seen)
}

// doubtOfCasting says in a sentence that a casting is not settled; nothing where it is.
func doubtOfCasting(j *shop.Job) string {
	link, sure := j.Casting(), j.Value("identify", "sure").Word()
	switch {
	case link == nil:
		return "Nobody has written down yet which variant the casting is."
	case j.Value("identify", "modified").Word() == shop.ModifiedYes:
		return "The casting, " + link.Label + ", was modified before: its figures may be other than the variant’s."
	case sure != shop.SureYes:
		return "The casting is called " + link.Label + ", " + orWord(sure, "how sure is not said") + "."
	}
	return ""
}
