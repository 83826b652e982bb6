package casting

import (
	"io"
	"math"
	"strconv"

	"github.com/goccy/go-yaml"

	"axlewright/axle"
)

// Write writes the catalogue as one YAML file that LoadCatalogue reads back.
func (c *Catalogue) Write(w io.Writer) error {
	text, err := yaml.MarshalWithOptions(c, yaml.Indent(2), yaml.IndentSequence(true))
	if err != nil {
		return err
	}
	_, err = w.Write(text)
	return err
}

// WriteVariant writes one variant as a catalogue file of its own, to be named
// beside the others.
func WriteVariant(w io.Writer, v Variant) error {
	c := Catalogue{Variants: []Variant{v}}
	return c.Write(w)
}

// MarshalYAML writes a feature with its figures as they are read.
func (f Feature) MarshalYAML() (any, error) {
	out := yaml.MapSlice{{Key: "name", Value: f.Name}, {Key: "sort", Value: string(f.Sort)}, {Key: "ask", Value: f.Ask}}
	add := func(given bool, key string, value any) {
		if given {
			out = append(out, yaml.MapItem{Key: key, Value: value})
		}
	}
	add(len(f.Answers) > 0, "answers", f.Answers)
	add(f.Span.Given(), "span", figure(f.Span))
	add(f.Instrument.Given(), "instrument", figure(f.Instrument))
	add(f.With != "", "with", f.With)
	add(f.Reliability != 0, "reliability", f.Reliability)
	add(len(f.Swap) > 0, "swap", f.Swap)
	add(f.Repair != nil, "repair", f.Repair)
	add(f.Kit, "kit", f.Kit)
	add(f.Sketch != "", "sketch", f.Sketch)
	add(f.Caution != "", "caution", f.Caution)
	return out, nil
}

// figure is a figure as typed, or in millimetres where it was never typed.
func figure(n axle.Length) string {
	if n.Text != "" {
		return n.Text
	}
	if n.Shape == axle.Uniform {
		return millimetres(n.Low) + ".." + millimetres(n.High)
	}
	return millimetres(n.Value)
}

// MarshalYAML writes traits in their order.
func (t Traits) MarshalYAML() (any, error) {
	out := make(yaml.MapSlice, 0, len(t))
	for i := range t {
		out = append(out, yaml.MapItem{Key: t[i].Feature, Value: t[i].yaml()})
	}
	return out, nil
}

func (t *Trait) yaml() any {
	if len(t.Counts) > 0 {
		counts := make(yaml.MapSlice, 0, len(t.Counts))
		for _, n := range t.Counts {
			counts = append(counts, yaml.MapItem{Key: n.Answer, Value: n.Castings})
		}
		return counts
	}
	s := t.Size
	value := s.Text
	if value == "" {
		castings := math.Sqrt(math.Max(s.SD*s.SD-s.Instrument*s.Instrument, 0))
		value = millimetres(s.Mean)
		if castings > 0 {
			value += " ± " + millimetres(2*castings)
		} else {
			value += ", exact"
		}
		value += ", " + string(s.Origin)
	}
	out := yaml.MapSlice{{Key: "value", Value: value}, {Key: "castings", Value: s.Castings}}
	if s.SpreadFrom != s.Castings {
		out = append(out, yaml.MapItem{Key: "spread_from", Value: s.SpreadFrom})
	}
	return out
}

// millimetres writes a length to the nanometre, without noise of arithmetic.
func millimetres(x float64) string {
	return strconv.FormatFloat(math.Round(x*1e9)/1e6, 'f', -1, 64) + " mm"
}
