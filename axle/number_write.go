package axle

import (
	"encoding/json"
	"strconv"
	"strings"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/parser"

	"axlewright/quantity"
)

// MarshalYAML writes a figure as it was typed. One that was changed since, or
// never typed, is written from its numbers, so that reading gives the same
// figure again. A default doubt is not written: it is the catalogue's.
func (q Of[D]) MarshalYAML() ([]byte, error) {
	if !q.Given() {
		return []byte("null"), nil
	}
	if text, ok := q.asTyped(); ok {
		return text, nil
	}
	return q.composed()
}

// IsZero says that the figure was not stated; an optional one is left out.
func (q Of[D]) IsZero() bool { return !q.Given() }

// asTyped is what was typed, if it still gives this figure.
func (q Of[D]) asTyped() ([]byte, bool) {
	text := []byte(q.typed)
	if q.typed == "" {
		if q.Text == "" || q.Note != "" {
			return nil, false
		}
		var err error
		if text, err = scalarYAML(q.Text); err != nil {
			return nil, false
		}
	}
	var again Of[D]
	if err := yaml.Unmarshal(text, &again); err != nil {
		return nil, false
	}
	return text, q.same(again.Number)
}

// same says whether n, just read, is this figure.
func (n Number) same(again Number) bool {
	if n.Value != again.Value || n.Origin != again.Origin || n.Certain != again.Certain || n.Note != again.Note {
		return false
	}
	if n.ByDefault {
		return again.Shape == Exact
	}
	if n.Shape != again.Shape || n.Low != again.Low || n.High != again.High || len(n.Choices) != len(again.Choices) {
		return false
	}
	for i := range n.Choices {
		if n.Choices[i] != again.Choices[i] {
			return false
		}
	}
	return true
}

// composed writes the figure from its numbers.
func (q Of[D]) composed() ([]byte, error) {
	var marker D
	exact := func(x float64) string { return quantity.Exact(x, marker.dimension()) }
	n := q.Number
	doubtful := n.Shape != Exact && !n.ByDefault
	if !doubtful && n.Note == "" {
		text := exact(n.Value)
		if n.Certain {
			text += ", exact"
		}
		return scalarYAML(text + ", " + string(n.Origin))
	}
	var keys []string
	add := func(key, value string) { keys = append(keys, key+": "+value) }
	switch {
	case doubtful && n.Shape == Discrete:
		var values, weights []string
		for _, c := range n.Choices {
			values = append(values, exact(c.Value))
			weights = append(weights, strconv.FormatFloat(c.Share, 'g', -1, 64))
		}
		add("one_of", "["+strings.Join(values, ", ")+"]")
		add("weights", "["+strings.Join(weights, ", ")+"]")
	case n.Certain:
		add("value", strconv.Quote(exact(n.Value)+", exact"))
	default:
		add("value", exact(n.Value))
	}
	if doubtful && n.Shape != Discrete {
		add("low", exact(n.Low))
		add("high", exact(n.High))
		add("shape", string(n.Shape))
	}
	add("origin", string(n.Origin))
	if n.Note != "" {
		note, err := json.Marshal(n.Note) // a JSON text is a quoted YAML text
		if err != nil {
			return nil, err
		}
		add("note", string(note))
	}
	return []byte("{" + strings.Join(keys, ", ") + "}"), nil
}

// scalarYAML writes a text without quotes where it can be read back without.
func scalarYAML(text string) ([]byte, error) {
	if file, err := parser.ParseBytes([]byte(text), 0); err == nil && len(file.Docs) == 1 {
		switch body := file.Docs[0].Body.(type) {
		case *ast.StringNode, *ast.IntegerNode, *ast.FloatNode:
			if read, err := scalarText(body); err == nil && read == text && body.GetToken().Value == text {
				return []byte(text), nil
			}
		}
	}
	return yaml.Marshal(text)
}
