package shop

import "axlewright/quantity"

// A Value is what an entry says. Which fields are set depends on the kind of
// the field that it fills (see FieldKind); the zero Value says nothing.
type Value struct {
	// Figure: the text as typed, its value in coherent SI, and what it measures.
	Typed string             `json:"typed,omitempty"`
	SI    *float64           `json:"si,omitempty"`
	Dim   quantity.Dimension `json:"dimension,omitempty"`
	// Confirmed says that the figure was queried and stands as it was typed.
	Confirmed bool `json:"confirmed,omitempty"`

	Words []string `json:"words,omitempty"` // Choice (one) and Choices
	Text  string   `json:"text,omitempty"`  // Text; a caption; a reason
	Day   string   `json:"day,omitempty"`   // Day, "2026-11-25"
	Link  *Link    `json:"link,omitempty"`  // Link and Part
	Sum   *Money   `json:"sum,omitempty"`   // Sum

	// Part: so much of the lot that Link names.
	Quantity *float64 `json:"quantity,omitempty"`
	Reserved bool     `json:"reserved,omitempty"` // set aside, not yet used

	Fits []Link `json:"fits,omitempty"` // of a kit: the castings that its revision was drawn for

	File  *File `json:"file,omitempty"`  // a photograph, a finished paper, stored advice
	Thumb *File `json:"thumb,omitempty"` // a small one of a photograph

	Because []int64 `json:"because,omitempty"` // of an override: Seq of the entries that are the cause of the stop

	Withdrawn bool `json:"withdrawn,omitempty"` // what stood here no longer does
}

// A Link names a card. The label is what the card said when the link was made,
// so that a record can be read without the card.
type Link struct {
	Kind  CardKind `json:"kind"`
	ID    ID       `json:"id"`
	Label string   `json:"label"`
}

// A File is kept by its content: its name in the store is its SHA-256.
type File struct {
	SHA256 string `json:"sha256"`
	Bytes  int64  `json:"bytes"`
	Media  string `json:"media"`          // "image/jpeg", "application/json"
	Name   string `json:"name,omitempty"` // for people: "advice.json"

	Width  int `json:"width,omitempty"` // of a picture, pixels
	Height int `json:"height,omitempty"`
}

// Figure returns the value of a number that quantity has parsed.
func Figure(typed string, si float64, dim quantity.Dimension) Value {
	return Value{Typed: typed, SI: &si, Dim: dim}
}

// Words returns the value of a choice.
func Words(words ...string) Value { return Value{Words: words} }

// Text returns the value of free words.
func Text(text string) Value { return Value{Text: text} }

// Day returns the value of a date, "2026-11-25".
func Day(day string) Value { return Value{Day: day} }

// Sum returns the value of a sum of money.
func Sum(m Money) Value { return Value{Sum: &m} }

// LinkTo returns the value that names a card. The label may be left empty:
// Shop.Record fills it in from the card.
func LinkTo(kind CardKind, id ID) Value { return Value{Link: &Link{Kind: kind, ID: id}} }

// Used returns the value of so much taken from a lot, in the lot's own unit.
func Used(lot ID, quantity float64) Value {
	return Value{Link: &Link{Kind: KindLot, ID: lot}, Quantity: &quantity}
}

// SetAside returns the value of so much of a lot kept for the job.
func SetAside(lot ID, quantity float64) Value {
	v := Used(lot, quantity)
	v.Reserved = true
	return v
}

// Withdrawn returns the value that takes back what stands in a place.
func Withdrawn() Value { return Value{Withdrawn: true} }

// Word returns the first chosen word, "" where there is none.
func (v Value) Word() string {
	if len(v.Words) == 0 {
		return ""
	}
	return v.Words[0]
}
