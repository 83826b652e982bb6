package axle

import (
	"embed"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"strings"
)

// What the fields mean stands beside them in these files, and nowhere else: the
// schema shows it from there.
//
//go:embed bearing.go casting.go catalogue.go compliance.go enquiry.go fastener.go gears.go tyre.go upgrade.go vehicle.go
var typeFiles embed.FS

// readComments returns the comment of each type ("Casting.") and field
// ("Casting.HeadWall").
func readComments() (map[string]string, error) {
	comments := map[string]string{}
	entries, err := typeFiles.ReadDir(".")
	if err != nil {
		return nil, err
	}
	for _, entry := range entries {
		text, err := typeFiles.ReadFile(entry.Name())
		if err != nil {
			return nil, err
		}
		file, err := parser.ParseFile(token.NewFileSet(), entry.Name(), text, parser.ParseComments|parser.SkipObjectResolution)
		if err != nil {
			return nil, fmt.Errorf("axle: %w", err)
		}
		for _, decl := range file.Decls {
			if decl, ok := decl.(*ast.GenDecl); ok && decl.Tok == token.TYPE {
				for _, spec := range decl.Specs {
					addComments(comments, decl, spec.(*ast.TypeSpec))
				}
			}
		}
	}
	return comments, nil
}

func addComments(comments map[string]string, decl *ast.GenDecl, spec *ast.TypeSpec) {
	comments[spec.Name.Name+"."] = oneLine(decl.Doc)
	fields, ok := spec.Type.(*ast.StructType)
	if !ok {
		return
	}
	for _, f := range fields.Fields.List {
		for _, name := range f.Names {
			comments[spec.Name.Name+"."+name.Name] = oneLine(f.Comment)
		}
	}
}

func oneLine(group *ast.CommentGroup) string { return strings.Join(strings.Fields(group.Text()), " ") }
