package shop

import (
	"crypto/rand"
	"strings"
)

// An ID names a job, card, person or ticket. It is random, so that records of
// two shops never share one, and holds only small letters and digits.
type ID string

// NewID returns an ID that nobody has used.
func NewID() ID { return ID(strings.ToLower(rand.Text())) }

// Valid says whether the ID has a form that can be stored and put into a file
// name: 1 to 64 small letters, digits and hyphens.
func (id ID) Valid() bool {
	if len(id) == 0 || len(id) > 64 {
		return false
	}
	for _, c := range id {
		if (c < 'a' || c > 'z') && (c < '0' || c > '9') && c != '-' {
			return false
		}
	}
	return true
}
