package shop

import (
	"bytes"
	"fmt"
	"html"
	"strings"
	"time"

	"axlewright/quantity"
)

// jobPage is job.html of an export: everything that the record says, to be
// read in any browser, with nothing to load but the photographs beside it.
func jobPage(j *Job, by string, lost map[string]bool) []byte {
	p := &page{lost: lost}
	number := j.NumberText()
	if s := j.Stamped(); s != "" {
		number = s + " (job " + j.NumberText() + ")"
	}
	p.raw(`<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>`)
	p.text(number)
	p.raw(`</title><style>
body{font:16px/1.4 sans-serif;max-width:60rem;margin:1rem auto;padding:0 1rem;color:#000;background:#fff}
table{border-collapse:collapse;width:100%}td,th{border:1px solid #999;padding:.3rem .5rem;text-align:left;vertical-align:top}.says{overflow-wrap:anywhere;white-space:pre-line}
h2{margin-top:2rem;border-bottom:2px solid #000}img{max-width:18rem;max-height:18rem}.was{color:#555}.bad{border:3px solid #000;padding:.5rem}
small{color:#444}h1,p,td{unicode-bidi:plaintext}
</style></head><body>
<h1>`)
	p.text(number)
	p.raw("</h1>\n<p>")
	p.text(strings.Join(nonEmpty(j.Title(), string(j.State()), "opened by "+j.Origin.Label+" on "+j.Opened.Format(time.DateOnly), "exported by "+by), " · "))
	p.raw("</p>\n")
	if len(j.Damage) > 0 {
		p.raw(`<div class="bad"><strong>✕ This record is damaged.</strong><ul>`)
		for _, f := range j.Damage {
			p.raw("<li>")
			p.text(f.String())
			p.raw("</li>")
		}
		p.raw("</ul></div>\n")
	}
	for _, v := range j.Steps() {
		p.step(j, v)
	}
	p.record(j)
	p.raw("</body></html>\n")
	return p.b.Bytes()
}

type page struct {
	b    bytes.Buffer
	lost map[string]bool
}

func (p *page) raw(s string)  { p.b.WriteString(s) }
func (p *page) text(s string) { p.b.WriteString(html.EscapeString(s)) }

// step shows what stands at a step.
func (p *page) step(j *Job, v StepView) {
	all := j.All(v.Step.Key, "")
	if len(all) == 0 {
		return
	}
	p.raw("<h2>")
	p.text(v.Step.Title)
	p.raw("</h2>\n<table><thead><tr><th>what</th><th>value</th><th>range</th><th>who, when (UTC)</th></tr></thead><tbody>\n")
	for _, e := range all {
		title := e.Item
		if f, ok := FieldOf(e.Step, e.Item); ok {
			title = f.Title
		}
		if e.Place != "" && e.Kind == EntrySet {
			title += ", " + e.Place
		}
		p.raw("<tr><td>")
		p.text(title)
		p.raw(`</td><td class="says">`)
		p.value(e)
		p.raw("</td><td>")
		if e.Limit != nil {
			p.text(limitText(*e.Limit, e.Value.Dim))
		}
		p.raw("</td><td>")
		p.text(strings.Join(nonEmpty(e.Who.Name, e.At.Format("2006-01-02 15:04"), e.Instrument), ", "))
		p.raw("</td></tr>\n")
	}
	p.raw("</tbody></table>\n")
}

// value shows what an entry says, its verdict in sign and word.
func (p *page) value(e *Entry) {
	if e.Verdict != "" && e.Verdict != NotYet {
		p.text(e.Verdict.Sign() + " " + string(e.Verdict) + ": ")
	}
	p.text(valueText(e.Value))
	for i, f := range e.Files() {
		switch {
		case p.lost[f.SHA256]:
			p.text(" [lost: " + f.Name + "]")
		case i == 0 && f.Media == "image/jpeg":
			p.raw(`<br><a href="`)
			p.text(memberOf(f))
			p.raw(`"><img alt="photograph" src="`)
			p.text(memberOf(f))
			p.raw(`"></a>`)
		case i == 0:
			p.raw(` <a href="`)
			p.text(memberOf(f))
			p.raw(`">`)
			p.text(f.Name)
			p.raw("</a>")
		}
	}
}

// record lists every entry in order, with what it follows.
func (p *page) record(j *Job) {
	p.raw("<h2>The whole record, in order</h2>\n<table><thead><tr><th>entry</th><th>when (UTC)</th><th>who</th><th>where</th><th>what</th><th>hash</th></tr></thead><tbody>\n")
	for i := range j.entries {
		e := &j.entries[i]
		p.raw("<tr><td>")
		p.text(fmt.Sprint(e.Seq))
		p.raw("</td><td>")
		p.text(e.At.Format("2006-01-02 15:04:05"))
		if !e.Taken.IsZero() {
			p.text(" (typed " + e.Taken.Format("2006-01-02 15:04:05") + ")")
		}
		p.raw("</td><td>")
		p.text(e.Who.Name)
		p.raw("</td><td>")
		p.text(e.Slot().String())
		p.raw(`</td><td class="says">`)
		p.text(valueText(e.Value))
		if e.Corrects != 0 {
			p.raw(` <span class="was">`)
			p.text(fmt.Sprintf("(follows entry %d", e.Corrects))
			if e.Why != "" {
				p.text(": " + e.Why)
			}
			p.raw(")</span>")
		} else if e.Why != "" {
			p.text(" (" + e.Why + ")")
		}
		p.raw("</td><td><small>")
		p.text(short(e.Hash))
		p.raw("…</small></td></tr>\n")
	}
	p.raw("</tbody></table>\n")
}

// valueText is a value in words.
func valueText(v Value) string {
	if v.Withdrawn {
		return "withdrawn"
	}
	var parts []string
	if v.SI != nil {
		text := v.Typed
		if v.Dim != "" {
			shown := quantity.Format(*v.SI, v.Dim)
			if strings.HasPrefix(shown, text) { // typed in one of the two units: "0.16 mm"
				text = shown
			} else {
				text += " = " + shown
			}
		}
		parts = append(parts, text)
	}
	parts = append(parts, v.Words...)
	if v.Link != nil {
		parts = append(parts, v.Link.Label)
	}
	if v.Quantity != nil {
		parts = append(parts, amount(*v.Quantity))
	}
	if v.Reserved {
		parts = append(parts, "set aside")
	}
	if v.Sum != nil {
		parts = append(parts, v.Sum.String())
	}
	return strings.Join(nonEmpty(append(parts, v.Day, v.Text)...), "; ")
}

func limitText(l Limit, dim quantity.Dimension) string {
	text := ""
	switch {
	case l.Low != nil && l.High != nil:
		text = quantity.FormatRange(*l.Low, *l.High, dim)
	case l.Low != nil:
		text = quantity.Format(*l.Low, dim) + " or more"
	case l.High != nil:
		text = quantity.Format(*l.High, dim) + " or less"
	}
	return strings.Join(nonEmpty(text, l.Kind, string(l.Origin), l.Source), "; ")
}

func nonEmpty(texts ...string) []string {
	var all []string
	for _, t := range texts {
		if t != "" {
			all = append(all, t)
		}
	}
	return all
}
