package shop_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"axlewright/shop"
)

// Numbers as RFC 8785, appendix B, and the test data of its authors print them.
func TestCanonicalNumbersAsPrintedInRFC8785(t *testing.T) {
	for bits, want := range map[uint64]string{
		0x0000000000000000: "0",
		0x8000000000000000: "0",
		0x0000000000000001: "5e-324",
		0x8000000000000001: "-5e-324",
		0x7fefffffffffffff: "1.7976931348623157e+308",
		0xffefffffffffffff: "-1.7976931348623157e+308",
		0x4340000000000000: "9007199254740992",
		0xc340000000000000: "-9007199254740992",
		0x4340000000000001: "9007199254740994",
		0x4340000000000002: "9007199254740996",
		0x444b1ae4d6e2ef50: "1e+21",
		0x3eb0c6f7a0b5ed8d: "0.000001",
		0x3eb0c6f7a0b5ed8c: "9.999999999999997e-7",
		0x44b52d02c7e14af5: "9.999999999999997e+22",
		0x44b52d02c7e14af6: "1e+23",
		0x44b52d02c7e14af7: "1.0000000000000001e+23",
		0x41b3de4355555553: "333333333.3333332",
		0x41b3de4355555554: "333333333.33333325",
		0xbecbf647612f3696: "-0.0000033333333333333333",
	} {
		x := math.Float64frombits(bits)
		text := []byte(formatLong(x))
		got, err := shop.Canonical(text)
		if err != nil || string(got) != want {
			t.Errorf("%016x: got %s %v, want %s", bits, got, err, want)
		}
	}
}

// The members and their order are those of the authors' file weird.json, the
// escapes those of section 3.2.2.2 of RFC 8785.
func TestCanonicalOrderAndEscapes(t *testing.T) {
	for in, want := range map[string]string{
		`{"€":"Euro Sign", "\r":"Carriage Return", "\ufb33":"Hebrew", "1":"One", "😀":"Emoji", "\u0080":"Control", "ö":"Latin"}`:                                               `{"\r":"Carriage Return","1":"One","` + "\u0080" + `":"Control","ö":"Latin","€":"Euro Sign","😀":"Emoji","` + "\ufb33" + `":"Hebrew"}`,
		`{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/","literals":[null,true,false]}`: `{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
		` [ ] `:                       `[]`,
		`{"b":{"z":1,"a":[]},"a":{}}`: `{"a":{},"b":{"a":[],"z":1}}`,
	} {
		got, err := shop.Canonical([]byte(in))
		if err != nil || string(got) != want {
			t.Errorf("got  %s %v\nwant %s", got, err, want)
		}
	}
	for _, bad := range []string{``, `{`, `{"a":1,"a":2}`, `1 2`, `{"a":1e999}`, "\"\xff\"", `[1,]`, `{"a" 1}`, `nul`} {
		if got, err := shop.Canonical([]byte(bad)); err == nil {
			t.Errorf("%q was taken as %s", bad, got)
		}
	}
}

func TestCanonicalIsItsOwnCanonicalForm(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64().Filter(func(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }).Draw(t, "x")
		first, err := shop.Canonical([]byte(`{"y":"` + rapid.StringMatching(`[a-zäß €\t]{0,9}`).Draw(t, "s") + `","x":` + formatLong(x) + `}`))
		if err != nil {
			return // a raw tab is no JSON
		}
		second, err := shop.Canonical(first)
		if err != nil || string(second) != string(first) {
			t.Fatalf("%s became %s (%v)", first, second, err)
		}
	})
}
