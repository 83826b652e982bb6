package kit

import (
	"fmt"
	"regexp"
	"strconv"
)

// A Name is the name of one revision of a kit: KIT-T24-A.2 is revision 2 of
// kit A for casting T24.
type Name struct {
	Casting  string
	Letter   string
	Revision int
}

var nameForm = regexp.MustCompile(`^KIT-([A-Z0-9]{1,12})-([A-Z])\.([1-9][0-9]{0,3})$`)

// ParseName reads the name of a revision.
//
// Errors: what a name looks like.
func ParseName(text string) (Name, error) {
	m := nameForm.FindStringSubmatch(text)
	if m == nil {
		return Name{}, fmt.Errorf("%q is not the name of a kit revision; expected one such as KIT-T24-A.2", text)
	}
	revision, err := strconv.Atoi(m[3])
	return Name{m[1], m[2], revision}, err
}

// Family is the name without its revision: KIT-T24-A.
func (n Name) Family() string { return "KIT-" + n.Casting + "-" + n.Letter }

// MarshalText writes the name.
func (n Name) MarshalText() ([]byte, error) { return []byte(n.String()), nil }

// UnmarshalText reads it back.
func (n *Name) UnmarshalText(text []byte) (err error) {
	*n, err = ParseName(string(text))
	return err
}

func (n Name) String() string { return n.Family() + "." + strconv.Itoa(n.Revision) }
