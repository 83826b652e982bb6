package axle

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"unicode/utf8"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/lexer"
	"github.com/goccy/go-yaml/parser"
	"github.com/goccy/go-yaml/token"
)

// MaxFile is the largest data file that is read, in bytes: a catalogue of some
// thousand castings.
const MaxFile = 8 << 20

// Nesting beyond what any data file needs is refused before it is parsed: it
// would cost time that grows with its square.
const (
	deepestNest   = 20  // brackets within brackets
	deepestIndent = 120 // characters before the first word of a line
	unclosed      = 500 // brackets left open, told before the text is cut into words
)

// readText reads a data file. What keeps it from being read is a sentence.
func readText(path string) (text, problem string) {
	file, err := os.Open(path)
	switch {
	case errors.Is(err, os.ErrNotExist):
		return "", "there is no such file; check the name and the folder"
	case err != nil:
		return "", "cannot be opened: " + plainError(err)
	}
	defer file.Close()
	if info, err := file.Stat(); err == nil && info.IsDir() {
		return "", "is a folder; name a file in it"
	}
	raw, err := io.ReadAll(io.LimitReader(file, MaxFile+1))
	if err != nil {
		return "", "cannot be read: " + plainError(err)
	}
	return string(raw), badText(raw)
}

// plainError drops the name of the file, which is told beside it.
func plainError(err error) string {
	var wrapped *os.PathError
	if errors.As(err, &wrapped) {
		return wrapped.Err.Error()
	}
	return err.Error()
}

// badText says why a text cannot be a data file, or nothing.
func badText(raw []byte) string {
	switch {
	case len(raw) > MaxFile:
		return fmt.Sprintf("is larger than %d MB, more than any data file; is it the right file?", MaxFile>>20)
	case len(bytes.TrimSpace(raw)) == 0:
		return "is empty; \"axlewright demo\" writes examples to start from"
	case bytes.IndexByte(raw, 0) >= 0 || !utf8.Valid(raw):
		return "is not text in UTF-8; expected a YAML file"
	}
	open := 0
	for _, c := range raw {
		switch c {
		case '[', '{':
			open++
		case ']', '}':
			open = max(0, open-1)
		}
		if open > unclosed {
			return tooDeep
		}
	}
	return ""
}

const tooDeep = "is nested deeper than any data file; is it the right file?"

// parseText parses one YAML document.
func parseText(src *source, text string) (ast.Node, *Finding) {
	at := func(tk *token.Token, problem string) *Finding {
		p := place{source: src}
		if tk != nil && tk.Position != nil {
			p.line, p.column = tk.Position.Line, tk.Position.Column
		}
		f := p.finding("", problem)
		return &f
	}
	tokens := lexer.Tokenize(strings.TrimPrefix(text, "\ufeff"))
	if tk := tooNested(tokens); tk != nil {
		return nil, at(tk, tooDeep)
	}
	file, err := parser.Parse(tokens, 0, parser.AllowDuplicateMapKey())
	if err != nil {
		var positioned yaml.Error
		if errors.As(err, &positioned) {
			return nil, at(positioned.GetToken(), "is not YAML from here on: "+positioned.GetMessage()+"; look for a bracket or a quote left open, a missing space after a colon, a file cut short")
		}
		return nil, at(nil, "is not YAML: "+err.Error())
	}
	var body ast.Node
	for _, doc := range file.Docs {
		switch {
		case doc.Body == nil:
		case body != nil:
			return nil, at(startOf(doc.Body), "a second document begins here; expected one in a file")
		default:
			body = doc.Body
		}
	}
	if body == nil {
		return nil, at(nil, "holds nothing but comments; \"axlewright demo\" writes examples to start from")
	}
	return body, nil
}

// tooNested returns the token at which a text goes deeper than is allowed.
func tooNested(tokens token.Tokens) *token.Token {
	depth, line, entries := 0, 0, 0
	for _, tk := range tokens {
		if tk.Position.Line != line {
			line, entries = tk.Position.Line, 0
			if tk.Position.Column > deepestIndent && depth == 0 && tk.Type != token.CommentType {
				return tk
			}
		}
		switch tk.Type {
		case token.SequenceStartType, token.MappingStartType:
			depth++
		case token.SequenceEndType, token.MappingEndType:
			depth--
		case token.SequenceEntryType, token.MappingKeyType:
			entries++
		}
		if depth > deepestNest || entries > deepestNest {
			return tk
		}
	}
	return nil
}

// startOf is the first token of a node: of a mapping its first key, not the
// colon after it.
func startOf(node ast.Node) *token.Token {
	switch node := node.(type) {
	case *ast.MappingNode:
		if !node.IsFlowStyle && len(node.Values) > 0 {
			return startOf(node.Values[0].Key)
		}
	case *ast.MappingValueNode:
		return startOf(node.Key)
	}
	return node.GetToken()
}

// scalarText is the text of a value that is one word or line, as typed.
func scalarText(node ast.Node) (string, error) {
	switch node := node.(type) {
	case *ast.StringNode:
		return node.Value, nil
	case *ast.LiteralNode:
		return node.Value.Value, nil
	case *ast.IntegerNode, *ast.FloatNode, *ast.BoolNode, *ast.InfinityNode, *ast.NanNode:
		return node.GetToken().Value, nil
	case *ast.NullNode:
		return "", fault(node, "there is no value here; write one or leave the key out")
	case *ast.MappingNode, *ast.MappingValueNode:
		return "", fault(node, "expected one value, not keys with values of their own")
	case *ast.SequenceNode:
		return "", fault(node, "expected one value, not a list")
	}
	return "", fault(node, "anchors (&), aliases (*) and tags (!) are not used in these files; write the value out")
}

// keyText is the key of a pair as typed.
func keyText(pair *ast.MappingValueNode) string {
	if s, ok := pair.Key.(*ast.StringNode); ok {
		return s.Value
	}
	return pair.Key.GetToken().Value
}
