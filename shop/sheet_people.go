package shop

// A Customer is who a unit is for.
type Customer struct {
	Meta    `json:"-"`
	Name    string `json:"name"`
	Phone   string `json:"phone,omitempty"`
	Mail    string `json:"mail,omitempty"`
	Address string `json:"address,omitempty"`
	Country string `json:"country,omitempty"` // so that the right "ask about inspection" text is shown
	Note    string `json:"note,omitempty"`
}

// A Vehicle is what a unit goes into.
type Vehicle struct {
	Meta         `json:"-"`
	Customer     ID     `json:"customer,omitempty"`
	Title        string `json:"title"` // "hill-farm pick-up"
	Year         string `json:"year,omitempty"`
	Registration string `json:"registration,omitempty"`
	Use          string `json:"use,omitempty"`     // road share, farm, forest, competition
	Enquiry      string `json:"enquiry,omitempty"` // the enquiry as YAML, for the sums
	Note         string `json:"note,omitempty"`
}

// A Person works in the shop. PIN or password are kept apart, hashed.
type Person struct {
	Meta `json:"-"`
	Name string `json:"name"`
	Role Role   `json:"role"`
}

// Kind is KindCustomer.
func (*Customer) Kind() CardKind { return KindCustomer }

// Kind is KindVehicle.
func (*Vehicle) Kind() CardKind { return KindVehicle }

// Kind is KindPerson.
func (*Person) Kind() CardKind { return KindPerson }

// Check demands a name.
func (c *Customer) Check() error {
	return firstFault(required("name", c.Name), lengthOf("name", c.Name, 200), lengthOf("phone", c.Phone, 100),
		lengthOf("mail", c.Mail, 200), lengthOf("address", c.Address, 1000), lengthOf("note", c.Note, longText),
		lengthOf("country", c.Country, 100))
}

// Check demands a title.
func (v *Vehicle) Check() error {
	return firstFault(required("title", v.Title), lengthOf("title", v.Title, 200), lengthOf("year", v.Year, 20),
		lengthOf("registration", v.Registration, 40), lengthOf("use", v.Use, 1000),
		lengthOf("enquiry", v.Enquiry, 200_000), lengthOf("note", v.Note, longText))
}

// Check demands a name and a role.
func (p *Person) Check() error {
	if !p.Role.known() {
		return Fault(Invalid, "A person is owner, builder, adviser or reader.").At("role")
	}
	return firstFault(required("name", p.Name), lengthOf("name", p.Name, 100))
}

func (c *Customer) describe() description {
	return description{label: c.Name, words: []string{c.Phone, c.Mail, c.Address}}
}

func (v *Vehicle) describe() description {
	return description{label: v.Title, group: string(v.Customer), words: []string{v.Year, v.Registration, v.Use}}
}

func (p *Person) describe() description { return description{label: p.Name, group: string(p.Role)} }
