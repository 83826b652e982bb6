package kit

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"axlewright/quantity"
)

// A value is what an expression comes to, with its power of length: 0 for a
// plain number, 1 for a length. A bare number may be taken for either.
type value struct {
	x     float64 // SI
	power int
	bare  bool // only numbers so far: as a length it is millimetres
}

// length reads the value as a length.
func (v value) length() (float64, error) {
	switch {
	case v.bare:
		return v.x * 1e-3, nil
	case v.power == 1:
		return v.x, nil
	}
	return 0, fmt.Errorf("it is %s, not a length", v.kind())
}

// plain reads the value as a number without unit.
func (v value) plain() (float64, error) {
	if v.power == 0 {
		return v.x, nil
	}
	return 0, fmt.Errorf("it is %s, not a plain number", v.kind())
}

func (v value) kind() string {
	switch v.power {
	case 0:
		return "a plain number"
	case 1:
		return "a length"
	case 2:
		return "an area"
	}
	return fmt.Sprintf("a length to the power %d", v.power)
}

// names are what an expression may refer to.
type names map[string]value

// deepest is how many brackets may lie in each other.
const deepest = 50

// evaluate works an expression out: + − * / and brackets, sizes and stations by
// name, lengths with a unit, and sqrt, sin, cos, tan, asin, acos, atan, min,
// max and abs. Angles are degrees.
func evaluate(text string, known names) (value, error) {
	p := parser{known: known}
	if err := p.split(text); err != nil {
		return value{}, err
	}
	v, err := p.sum(0)
	if err != nil {
		return value{}, err
	}
	if p.next < len(p.tokens) {
		return value{}, fmt.Errorf("%q was not expected", p.tokens[p.next])
	}
	if math.IsNaN(v.x) || math.IsInf(v.x, 0) {
		return value{}, fmt.Errorf("it has no finite value")
	}
	return v, nil
}

type parser struct {
	known  names
	tokens []string
	next   int
}

var (
	measureToken = regexp.MustCompile(`^(?:\d+(?:\.\d+)?|\.\d+)(?:/\d+)? *(?:mm|cm|m|in|thou|µm)(?:[^\pL\d_]|$)`)
	numberToken  = regexp.MustCompile(`^(?:\d+(?:\.\d+)?|\.\d+)`)
	nameToken    = regexp.MustCompile(`^\pL[\pL\d_]*(?:\.[xy])?`)
)

// split cuts the text into lengths with units, numbers, names and signs.
func (p *parser) split(text string) error {
	if len(text) > 500 {
		return fmt.Errorf("it is longer than 500 letters")
	}
	text = strings.NewReplacer("−", "-", "·", "*", "×", "*").Replace(text)
	for rest := strings.TrimSpace(text); rest != ""; rest = strings.TrimLeft(rest, " ") {
		token := ""
		switch {
		case measureToken.MatchString(rest):
			token = strings.TrimRight(measureToken.FindString(rest), " +-*/(),")
		case numberToken.MatchString(rest):
			token = numberToken.FindString(rest)
		case nameToken.MatchString(rest):
			token = nameToken.FindString(rest)
		case strings.ContainsRune("+-*/(),", rune(rest[0])):
			token = rest[:1]
		default:
			return fmt.Errorf("%q was not understood", rest)
		}
		p.tokens = append(p.tokens, token)
		rest = rest[len(token):]
	}
	if len(p.tokens) == 0 {
		return fmt.Errorf("nothing was written")
	}
	return nil
}

// take moves past one of some tokens, if it is next.
func (p *parser) take(any ...string) string {
	if p.next < len(p.tokens) {
		for _, t := range any {
			if p.tokens[p.next] == t {
				p.next++
				return t
			}
		}
	}
	return ""
}

func (p *parser) sum(depth int) (value, error) {
	v, err := p.product(depth)
	for err == nil {
		sign := p.take("+", "-")
		if sign == "" {
			break
		}
		var w value
		if w, err = p.product(depth); err == nil {
			v, err = add(v, w, sign == "-")
		}
	}
	return v, err
}

func (p *parser) product(depth int) (value, error) {
	v, err := p.factor(depth)
	for err == nil {
		sign := p.take("*", "/")
		if sign == "" {
			break
		}
		var w value
		if w, err = p.factor(depth); err != nil {
			break
		}
		if sign == "*" {
			v = value{v.x * w.x, v.power + w.power, v.bare && w.bare}
		} else if w.x == 0 {
			err = fmt.Errorf("it divides by nought")
		} else {
			v = value{v.x / w.x, v.power - w.power, v.bare && w.bare}
		}
	}
	return v, err
}

func (p *parser) factor(depth int) (value, error) {
	if depth > deepest {
		return value{}, fmt.Errorf("more than %d brackets lie in each other", deepest)
	}
	if p.take("-") != "" {
		v, err := p.factor(depth + 1)
		v.x = 0 - v.x
		return v, err
	}
	if p.take("(") != "" {
		v, err := p.sum(depth + 1)
		if err == nil && p.take(")") == "" {
			err = fmt.Errorf("a bracket is not closed")
		}
		return v, err
	}
	if p.next == len(p.tokens) {
		return value{}, fmt.Errorf("it ends too early")
	}
	token := p.tokens[p.next]
	p.next++
	first := token[0]
	switch {
	case first == '.' || first >= '0' && first <= '9':
		return literal(token)
	case strings.ContainsAny(token, "+*/(),"):
		return value{}, fmt.Errorf("%q was not expected", token)
	}
	if p.take("(") != "" {
		return p.call(token, depth)
	}
	if v, ok := p.known[token]; ok {
		return v, nil
	}
	return value{}, fmt.Errorf("%q is neither a size nor a station of this frame", token)
}

// literal reads a number, or a length with its unit.
func literal(token string) (value, error) {
	if x, err := strconv.ParseFloat(token, 64); err == nil {
		return value{x, 0, true}, nil
	}
	q, err := quantity.Parse(token, quantity.Length)
	return value{x: q.SI, power: 1}, err
}

// add adds or subtracts.
func add(v, w value, minus bool) (value, error) {
	v, w, err := alike(v, w)
	if minus {
		w.x = 0 - w.x
	}
	return value{v.x + w.x, v.power, v.bare && w.bare}, err
}

// alike brings two values to one kind: beside a length a bare number is
// millimetres.
func alike(v, w value) (value, value, error) {
	if v.bare != w.bare && (v.power == 1 || w.power == 1) {
		if v.bare {
			v = value{x: v.x * 1e-3, power: 1}
		} else {
			w = value{x: w.x * 1e-3, power: 1}
		}
	}
	if v.power != w.power {
		return v, w, fmt.Errorf("%s and %s cannot be added or compared", v.kind(), w.kind())
	}
	return v, w, nil
}
