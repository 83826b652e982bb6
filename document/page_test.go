package document

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"
)

// A node is an element of a page, or with no name a piece of its text.
type node struct {
	name     string
	attr     map[string]string
	children []*node
	text     string
}

// readPage reads a page with a reader of XML that knows HTML's open elements.
func readPage(page []byte) (*node, error) {
	d := xml.NewDecoder(bytes.NewReader(page))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	root := &node{}
	open := []*node{root}
	for {
		token, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			return nil, err
		}
		here := open[len(open)-1]
		switch t := token.(type) {
		case xml.StartElement:
			n := &node{name: t.Name.Local, attr: map[string]string{}}
			for _, a := range t.Attr {
				n.attr[a.Name.Local] = a.Value
			}
			here.children = append(here.children, n)
			open = append(open, n)
		case xml.EndElement:
			if here.name != t.Name.Local {
				return nil, fmt.Errorf("<%s> is closed by </%s>", here.name, t.Name.Local)
			}
			open = open[:len(open)-1]
		case xml.CharData:
			here.children = append(here.children, &node{text: string(t)})
		}
	}
	if len(open) != 1 {
		return nil, fmt.Errorf("<%s> is not closed", open[len(open)-1].name)
	}
	return root, nil
}

// walk visits an element and all below it, in the order of the page.
func (n *node) walk(visit func(*node)) {
	visit(n)
	for _, c := range n.children {
		c.walk(visit)
	}
}

// all are the elements of some names, in the order of the page.
func (n *node) all(names ...string) []*node {
	var list []*node
	n.walk(func(m *node) {
		if slices.Contains(names, m.name) {
			list = append(list, m)
		}
	})
	return list
}

// words are all the text of an element, in one line.
func (n *node) words() string {
	var b strings.Builder
	n.walk(func(m *node) { b.WriteString(m.text + " ") })
	return strings.Join(strings.Fields(b.String()), " ")
}

var notPrinted = regexp.MustCompile(`\bNaN\b|[+-]Inf\b|%!|<nil>|\bundefined\b`)

// checkPage finds what any page must not have, and what it must.
func checkPage(page []byte) error {
	if !bytes.HasPrefix(page, []byte("<!doctype html>")) {
		return fmt.Errorf("begins with %q", page[:min(30, len(page))])
	}
	root, err := readPage(page)
	if err != nil {
		return err
	}
	if html := root.all("html"); len(html) != 1 || html[0].attr["lang"] != "en-GB" {
		return fmt.Errorf("the language is not told")
	}
	if titles := root.all("title"); len(titles) == 0 || titles[0].words() == "" {
		return fmt.Errorf("no title")
	}
	if h := root.all("h1", "h2", "h3", "h4"); len(h) == 0 || h[0].name != "h1" || len(root.all("h1")) != 1 || len(root.all("h3", "h4")) > 0 {
		return fmt.Errorf("headings out of order")
	}
	if len(root.all("main")) != 1 {
		return fmt.Errorf("no main part")
	}
	ids := map[string]bool{}
	root.walk(func(n *node) {
		for key, value := range n.attr {
			switch {
			case strings.HasPrefix(key, "on"), slices.Contains([]string{"src", "href", "action"}, key):
				err = fmt.Errorf("<%s %s=%q>", n.name, key, value)
			case strings.Contains(value, "://") && key != "xmlns" && key != "title":
				err = fmt.Errorf("<%s %s=%q> is outside the page", n.name, key, value)
			case key == "id" && ids[value]:
				err = fmt.Errorf("two elements have the id %s", value)
			case key == "id":
				ids[value] = true
			case key == "scope" && !slices.Contains([]string{"col", "row"}, value):
				err = fmt.Errorf("scope=%q", value)
			}
		}
		switch n.name {
		case "script", "link", "img", "iframe", "object", "form", "input":
			err = fmt.Errorf("<%s> has no place on paper", n.name)
		case "h1", "h2", "caption":
			if n.words() == "" {
				err = fmt.Errorf("an empty <%s>", n.name)
			}
		case "style":
			if rules := n.words(); strings.Contains(rules, "url(") || strings.Contains(rules, "@import") || !strings.Contains(rules, "@page { size: A4") {
				err = fmt.Errorf("the style fetches something, or tells no paper")
			}
		case "th":
			if n.attr["scope"] == "" {
				err = fmt.Errorf("header %q without a scope", n.words())
			}
		case "svg":
			if n.attr["role"] != "img" || len(n.all("title")) == 0 || len(n.all("desc")) != 1 {
				err = fmt.Errorf("a picture without its words")
			}
		}
	})
	if err != nil {
		return err
	}
	if bad := notPrinted.FindString(root.words()); bad != "" {
		return fmt.Errorf("%q is printed", bad)
	}
	return nil
}
