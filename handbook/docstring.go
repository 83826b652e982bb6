package handbook

import (
	"fmt"
	"go/ast"
	"go/doc/comment"
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"strconv"
	"strings"
)

// A docstring is what the source text says of one formula.
type docstring struct {
	summary string
	lines   []string          // the formula, line by line
	symbols map[string]symbol // by parameter name or result symbol
	valid   string
	source  string
	params  []string // parameter names in order
}

// A symbol is a quantity a formula takes or gives.
type symbol struct {
	sign     string // the letter the source uses, may be empty
	meaning  string
	unit     string // coherent SI
	optional bool
}

// A library is every docstring and every documented field below calc.
type library struct {
	formulas map[string]docstring // "bolt.StressArea"
	fields   map[string]symbol    // "bolt.JointParams.Preload"
	words    map[string][]string  // the words that stand for a type, by "gear.Flank"
}

// readLibrary parses the Go files of source. Test files are passed over.
func readLibrary(source fs.FS) (library, error) {
	lib := library{formulas: map[string]docstring{}, fields: map[string]symbol{}, words: map[string][]string{}}
	names, err := fs.Glob(source, "*/*.go")
	if err != nil {
		return lib, err
	}
	fset := token.NewFileSet()
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		text, err := fs.ReadFile(source, name)
		if err != nil {
			return lib, err
		}
		file, err := parser.ParseFile(fset, name, text, parser.ParseComments|parser.SkipObjectResolution)
		if err != nil {
			return lib, fmt.Errorf("handbook: %w", err)
		}
		lib.add(path.Dir(name), file)
	}
	return lib, nil
}

func (lib library) add(pkg string, file *ast.File) {
	for _, decl := range file.Decls {
		switch decl := decl.(type) {
		case *ast.FuncDecl:
			if decl.Recv == nil && decl.Name.IsExported() {
				d := readDocstring(decl.Doc.Text())
				for _, field := range decl.Type.Params.List {
					for _, name := range field.Names {
						d.params = append(d.params, name.Name)
					}
				}
				lib.formulas[pkg+"."+decl.Name.Name] = d
			}
		case *ast.GenDecl:
			for _, spec := range decl.Specs {
				switch spec := spec.(type) {
				case *ast.TypeSpec:
					lib.addFields(pkg+"."+spec.Name.Name, spec.Type)
				case *ast.ValueSpec:
					lib.addWords(pkg, spec)
				}
			}
		}
	}
}

func (lib library) addFields(typeName string, expr ast.Expr) {
	structure, ok := expr.(*ast.StructType)
	if !ok {
		return
	}
	for _, field := range structure.Fields.List {
		text := field.Comment.Text()
		if text == "" {
			text = field.Doc.Text()
		}
		for _, name := range field.Names {
			lib.fields[typeName+"."+name.Name] = readField(text)
		}
	}
}

// addWords keeps the constants of a type, which are the words an input of it takes.
func (lib library) addWords(pkg string, spec *ast.ValueSpec) {
	typ, ok := spec.Type.(*ast.Ident)
	if !ok {
		return
	}
	for _, value := range spec.Values {
		if literal, ok := value.(*ast.BasicLit); ok && literal.Kind == token.STRING {
			if word, err := strconv.Unquote(literal.Value); err == nil && word != "" {
				lib.words[pkg+"."+typ.Name] = append(lib.words[pkg+"."+typ.Name], word)
			}
		}
	}
}

// readDocstring splits the comment of a formula into its parts, as
// CONTRIBUTING.md lays them down.
func readDocstring(text string) docstring {
	d := docstring{symbols: map[string]symbol{}}
	var parser comment.Parser
	var printer comment.Printer
	codeBlocks := 0
	for i, block := range parser.Parse(text).Content {
		switch block := block.(type) {
		case *comment.Code:
			lines := strings.Split(strings.TrimRight(block.Text, "\n"), "\n")
			for _, group := range splitOnBlank(lines) {
				codeBlocks++
				if codeBlocks == 1 {
					d.lines = group
				} else {
					d.addSymbols(group)
				}
			}
		case *comment.Paragraph:
			sentence := strings.Join(strings.Fields(string(printer.Text(&comment.Doc{Content: []comment.Block{block}}))), " ")
			if i == 0 {
				d.summary = sentence
			}
			d.addStatements(sentence)
		}
	}
	return d
}

// addStatements finds "Valid …" and "Source: …" in a paragraph that may
// hold several statements.
func (d *docstring) addStatements(paragraph string) {
	const valid, errs, source = "Valid ", "Errors: ", "Source: "
	if i := strings.Index(paragraph, source); i >= 0 {
		d.source = strings.TrimSpace(paragraph[i+len(source):])
		paragraph = paragraph[:i]
	}
	if i := strings.Index(paragraph, errs); i >= 0 {
		paragraph = paragraph[:i]
	}
	if i := strings.Index(paragraph, valid); i >= 0 {
		d.valid = strings.TrimSpace(paragraph[i:])
	}
}

func (d *docstring) addSymbols(lines []string) {
	last := ""
	for _, line := range lines {
		name, rest, found := strings.Cut(strings.TrimSpace(line), "  ")
		if !found || strings.HasPrefix(line, "    ") && last != "" { // a line that goes on
			if s, ok := d.symbols[last]; ok {
				d.symbols[last] = readSymbol(joinSymbol(s) + " " + strings.TrimSpace(line))
			}
			continue
		}
		last = name
		d.symbols[name] = readSymbol(strings.TrimSpace(rest))
	}
}

func joinSymbol(s symbol) string {
	if s.unit == "" {
		return s.meaning
	}
	return s.meaning + ", " + s.unit
}

// readSymbol reads "meaning, unit".
func readSymbol(text string) symbol {
	text, optional := cutOptional(text)
	i := strings.LastIndex(text, ", ")
	if i < 0 {
		return symbol{meaning: text, optional: optional}
	}
	return symbol{meaning: strings.TrimSpace(text[:i]), unit: strings.TrimSpace(text[i+2:]), optional: optional}
}

// readField reads the trailing comment of a struct field: "unit, meaning",
// "unit, sign: meaning", either ending in "; optional".
func readField(text string) symbol {
	text, optional := cutOptional(strings.Join(strings.Fields(text), " "))
	unit, rest, found := strings.Cut(text, ", ")
	if !found {
		return symbol{meaning: text, optional: optional}
	}
	s := symbol{meaning: rest, unit: unit, optional: optional}
	if sign, meaning, found := strings.Cut(rest, ": "); found && !strings.Contains(sign, " ") {
		s.sign, s.meaning = sign, meaning
	}
	return s
}

func cutOptional(text string) (string, bool) {
	return strings.CutSuffix(strings.TrimSpace(text), "; optional")
}

func splitOnBlank(lines []string) [][]string {
	var groups [][]string
	var group []string
	for _, line := range append(lines, "") {
		if strings.TrimSpace(line) != "" {
			group = append(group, line)
			continue
		}
		if len(group) > 0 {
			groups = append(groups, group)
		}
		group = nil
	}
	return groups
}
