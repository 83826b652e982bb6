package shop

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"unicode/utf16"
	"unicode/utf8"
)

// Canonical returns the one spelling of a JSON text by RFC 8785 (JSON
// Canonicalization Scheme): no spaces, members sorted by the UTF-16 units of
// their names, shortest numbers, fewest escapes. Texts that mean the same have
// the same canonical bytes, so that they can be hashed.
func Canonical(text []byte) ([]byte, error) {
	if !utf8.Valid(text) {
		return nil, errors.New("not UTF-8")
	}
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	var out bytes.Buffer
	if err := canonicalValue(&out, d, 0); err != nil {
		return nil, err
	}
	if _, err := d.Token(); err != io.EOF {
		return nil, errors.New("something stands after the JSON value")
	}
	return out.Bytes(), nil
}

// deepest is the nesting at which a text is taken for an attack.
const deepest = 100

func canonicalValue(out *bytes.Buffer, d *json.Decoder, depth int) error {
	if depth > deepest {
		return errors.New("nested too deeply")
	}
	token, err := d.Token()
	if err != nil {
		return err
	}
	switch t := token.(type) {
	case json.Delim:
		if t == '[' {
			return canonicalArray(out, d, depth)
		}
		return canonicalObject(out, d, depth)
	case json.Number:
		x, err := strconv.ParseFloat(t.String(), 64)
		if err != nil {
			return fmt.Errorf("the number %s is out of reach", t)
		}
		out.WriteString(canonicalNumber(x))
	case string:
		canonicalString(out, t)
	case bool:
		out.WriteString(strconv.FormatBool(t))
	case nil:
		out.WriteString("null")
	}
	return nil
}

func canonicalArray(out *bytes.Buffer, d *json.Decoder, depth int) error {
	out.WriteByte('[')
	for first := true; d.More(); first = false {
		if !first {
			out.WriteByte(',')
		}
		if err := canonicalValue(out, d, depth+1); err != nil {
			return err
		}
	}
	out.WriteByte(']')
	_, err := d.Token()
	return err
}

func canonicalObject(out *bytes.Buffer, d *json.Decoder, depth int) error {
	type member struct {
		name  string
		units []uint16
		value []byte
	}
	var members []member
	for d.More() {
		token, err := d.Token()
		if err != nil {
			return err
		}
		name, ok := token.(string)
		if !ok {
			return errors.New("a member without a name")
		}
		var value bytes.Buffer
		if err := canonicalValue(&value, d, depth+1); err != nil {
			return err
		}
		members = append(members, member{name, utf16.Encode([]rune(name)), value.Bytes()})
	}
	if _, err := d.Token(); err != nil {
		return err
	}
	slices.SortFunc(members, func(a, b member) int { return slices.Compare(a.units, b.units) })
	out.WriteByte('{')
	for i, m := range members {
		if i > 0 {
			if members[i-1].name == m.name {
				return fmt.Errorf("two members are named %q", m.name)
			}
			out.WriteByte(',')
		}
		canonicalString(out, m.name)
		out.WriteByte(':')
		out.Write(m.value)
	}
	out.WriteByte('}')
	return nil
}

// canonicalNumber writes x as ECMAScript does: plain from 1e-6 to below 1e21,
// with an exponent outside.
func canonicalNumber(x float64) string {
	if x == 0 {
		return "0" // also minus zero
	}
	if a := math.Abs(x); a >= 1e-6 && a < 1e21 {
		return strconv.FormatFloat(x, 'f', -1, 64)
	}
	s := strconv.FormatFloat(x, 'e', -1, 64)
	if n := len(s); s[n-2] == '0' && (s[n-3] == '-' || s[n-3] == '+') { // Go writes two digits at least
		s = s[:n-2] + s[n-1:]
	}
	return s
}

// canonicalString escapes what JSON demands and nothing else.
func canonicalString(out *bytes.Buffer, s string) {
	out.WriteByte('"')
	for _, r := range s {
		switch r {
		case '"', '\\':
			out.WriteByte('\\')
			out.WriteRune(r)
		case '\b':
			out.WriteString(`\b`)
		case '\f':
			out.WriteString(`\f`)
		case '\n':
			out.WriteString(`\n`)
		case '\r':
			out.WriteString(`\r`)
		case '\t':
			out.WriteString(`\t`)
		default:
			if r < 0x20 {
				fmt.Fprintf(out, `\u%04x`, r)
			} else {
				out.WriteRune(r)
			}
		}
	}
	out.WriteByte('"')
}
