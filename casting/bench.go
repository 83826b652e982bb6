package casting

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"axlewright/axle"
	"axlewright/quantity"
)

// A Bench is one casting and what was found out about it.
type Bench struct {
	Casting   string        `yaml:"casting"` // its tag
	Note      string        `yaml:"note,omitempty"`
	Catalogue []string      `yaml:"catalogue"` // files, beside the bench's own
	Evidence  Evidence      `yaml:"evidence,omitempty"`
	Metal     MetalEvidence `yaml:"metal,omitempty"`
}

// Evidence is what was seen and measured, in the order it was written down.
type Evidence []Item

// An Item is one thing seen or measured.
type Item struct {
	Feature string
	Answer  string  // of a seen feature
	Value   float64 // m, of a measured one
	Spread  float64 // m, one standard deviation of the reading; zero takes the feature's instrument
	Unseen  bool    // looked for and not to be seen or reached: says nothing either way
	Looked  int     // how many times, independently; zero is once
	Told    bool    // heard from somebody, not seen at the bench
	Origin  axle.Origin
	Text    string // as written
	Line    int

	raw rawNode
}

// CannotSee is the answer of one who looked and could neither see nor reach it.
const CannotSee = "can't see it"

// unseen are the ways to write that a thing could not be looked at.
var unseen = []string{"cannot see", CannotSee, "cannot see it", "can't see", "cannot reach", "can't reach it"}

// isUnseen says whether a text stands for "could not be looked at".
func isUnseen(text string) bool {
	return slices.Contains(unseen, strings.ToLower(strings.TrimSpace(text)))
}

// UnmarshalYAML reads features and what was found:
//
//	ribs: four curved
//	head bore: 72.00 mm ± 0.01 mm, measured
//	date: can't see it
//	ribs: {is: four curved, looked: 2}
//	studs: {is: "10", told: true}
func (e *Evidence) UnmarshalYAML(node ast.Node) error {
	list, err := pairs(node, "features and what was seen, such as ribs: four curved")
	if err != nil {
		return err
	}
	for _, p := range list {
		item := Item{Feature: p.key, Line: p.line, raw: p.value}
		if _, plain := word(p.value); !plain {
			if item, err = wordy(p); err != nil {
				return err
			}
		}
		*e = append(*e, item)
	}
	return nil
}

// wordy reads {is: …, looked: …, told: …}.
func wordy(p pair) (Item, error) {
	item := Item{Feature: p.key, Line: p.line}
	list, err := pairs(p.value, "what was seen or measured, or {is: …, looked: 2}")
	if err != nil {
		return item, err
	}
	for _, q := range list {
		text, _ := word(q.value)
		switch q.key {
		case "is":
			item.raw = q.value
		case "looked":
			n, err := strconv.Atoi(text)
			if err != nil || n < 1 || n > 9 {
				return item, at(q.value, "expected how many times it was looked at, 1 to 9")
			}
			item.Looked = n
		case "told":
			if text != "true" && text != "false" {
				return item, at(q.value, "expected true or false")
			}
			item.Told = text == "true"
		default:
			return item, at(q.value, fmt.Sprintf("unknown key %q; expected is, looked, told", q.key))
		}
	}
	if item.raw == nil {
		return item, at(p.value, "needs what was seen, such as {is: four curved, looked: 2}")
	}
	return item, nil
}

// resolve understands the evidence against the features of a catalogue.
func (b *Bench) resolve(c *Catalogue) axle.Findings {
	var found axle.Findings
	for i := range b.Evidence {
		item := &b.Evidence[i]
		if problem := item.resolve(c); problem != "" {
			found = append(found, axle.Finding{Line: item.Line, Field: "evidence." + item.Feature, Problem: problem})
		}
	}
	return append(found, b.Metal.resolve()...)
}

// resolve says in a sentence what is wrong, or nothing.
func (i *Item) resolve(c *Catalogue) string {
	k := c.feature(i.Feature)
	if k < 0 {
		names := make([]string, len(c.Features))
		for j := range c.Features {
			names[j] = c.Features[j].Name
		}
		return "is no feature of the catalogue; it has " + strings.Join(names, ", ")
	}
	f := &c.Features[k]
	if i.raw != nil {
		text, plain := word(i.raw)
		if !plain {
			return "expected one answer or one reading"
		}
		i.raw = nil
		if err := i.read(f, text); err != nil {
			return err.Error()
		}
	}
	return i.problem(f)
}

// read takes in what was written of the feature.
func (i *Item) read(f *Feature, text string) error {
	i.Text = text
	switch {
	case isUnseen(text):
		i.Unseen = true
	case f.Measured():
		return i.readSize(text)
	default:
		i.Answer = text
	}
	return nil
}

// readSize reads "72.00 mm ± 0.01 mm, measured". What stands on a bench sheet
// without an origin was measured.
func (i *Item) readSize(text string) error {
	body, origin := text, axle.Measured
	if at := strings.LastIndex(text, ","); at >= 0 {
		switch o := axle.Origin(strings.TrimSpace(text[at+1:])); o {
		case axle.Measured, axle.Maker, axle.Trade, axle.Computed, axle.Assumed:
			body, origin = text[:at], o
		}
	}
	q, err := quantity.Parse(body, quantity.Length)
	if err != nil {
		return err
	}
	i.Value, i.Origin = q.SI, origin
	if q.Spread == quantity.Range { // anything between
		i.Spread = q.HalfWidth / sqrt3
	} else {
		i.Spread = q.HalfWidth / 2
	}
	return nil
}

// problem says in a sentence what is wrong with the item, or nothing.
func (i *Item) problem(f *Feature) string {
	switch {
	case i.Unseen:
	case f.Measured():
		if !(i.Value >= f.Span.Low && i.Value <= f.Span.High) {
			return fmt.Sprintf("%s is outside %s, more than any casting of the trade reads; a slip or another unit?",
				quantity.Format(i.Value, quantity.Length), quantity.FormatRange(f.Span.Low, f.Span.High, quantity.Length))
		}
		if !(i.Spread >= 0) {
			return "the doubt of a reading must not be below nothing"
		}
	case !slices.Contains(f.Answers, i.Answer):
		return fmt.Sprintf("%q is not an answer; expected %s, or can't see it", i.Answer, strings.Join(f.Answers, ", "))
	}
	return ""
}

// trust is how far the item is believed: its feature's reliability, half of
// that for hearsay, more for what was looked at again, where that helps.
func (i *Item) trust(f *Feature) float64 {
	r := f.Trust()
	if n := i.Looked; n > 1 && sorts[f.Sort].again {
		missed := 1.0
		for range n {
			missed *= 1 - r
		}
		r = 1 - missed
	}
	if i.Told || i.Origin != axle.Measured && i.Origin != "" {
		r /= 2
	}
	return r
}

// said is the item in words, "four curved" or "72.00 ± 0.02 mm (2.8346 ± 0.0008 in), measured".
func (i *Item) said(f *Feature) string {
	switch {
	case i.Unseen:
		return "cannot be seen"
	case f.Measured():
		spread, origin := i.Spread, i.Origin
		if spread == 0 {
			spread = f.spread()
		}
		if origin == "" {
			origin = axle.Measured
		}
		return quantity.FormatSpread(i.Value, 2*spread, quantity.Length) + ", " + string(origin)
	}
	return i.Answer
}

const sqrt3 = 1.7320508075688772
