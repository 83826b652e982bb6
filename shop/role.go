package shop

import "slices"

// Role is what a person may do.
type Role string

// The roles.
const (
	RoleOwner   Role = "owner"   // everything
	RoleBuilder Role = "builder" // the bench: readings, stock, overrides
	RoleAdviser Role = "adviser" // the telephone: enquiries, customers, advice, quotes
	RoleReader  Role = "reader"  // looks, writes nothing
)

// Roles lists them.
var Roles = []Role{RoleOwner, RoleBuilder, RoleAdviser, RoleReader}

func (r Role) known() bool { return slices.Contains(Roles, r) }

// Act is a thing that not everybody may do.
type Act string

// The acts.
const (
	ActRead     Act = "read"                   // look at everything but prices
	ActSell     Act = "sell"                   // open jobs, customers, vehicles, advice, quotes, deposits
	ActBuild    Act = "build"                  // fill the steps of the bench, photographs, notes
	ActStock    Act = "stock"                  // donors, lots, kits, castings, gauges
	ActOverride Act = "override"               // a stop that does not ask for the owner
	ActCertify  Act = "certify"                // sign a certificate with the shop's key
	ActPrices   Act = "see prices and margins" //
	ActSettings Act = "settings"               // people, prices, house, imports, backups
)

// may is the one table of who may do what.
var may = map[Role][]Act{
	RoleOwner:   {ActRead, ActSell, ActBuild, ActStock, ActOverride, ActCertify, ActPrices, ActSettings},
	RoleBuilder: {ActRead, ActBuild, ActStock, ActOverride, ActCertify},
	RoleAdviser: {ActRead, ActSell, ActPrices},
	RoleReader:  {ActRead},
}

// May says whether the role allows the act.
func (r Role) May(act Act) bool { return slices.Contains(may[r], act) }

// either is the first act where the role allows it, else the second.
func (r Role) either(act, or Act) Act {
	if r.May(act) {
		return act
	}
	return or
}

// recordAct is the act that writing at a step is.
func (r Role) recordAct(step StepKey) Act {
	switch step {
	case "enquiry", "handover", "return":
		return r.either(ActBuild, ActSell)
	case "deal":
		return ActSell
	}
	return ActBuild
}

// MayRecord says whether the role may write at the step.
func (r Role) MayRecord(step StepKey) bool { return r.May(r.recordAct(step)) }

// An Actor is the person on whose behalf a method is called.
type Actor struct {
	ID   ID
	Name string
	Role Role
}

// By is how the actor stands in records.
func (a Actor) By() By { return By{a.ID, a.Name} }

// Must returns Forbidden unless the actor may do the act.
func (a Actor) Must(act Act) error {
	if a.ID == "" {
		return Fault(SignIn, "Sign in first.")
	}
	if !a.Role.May(act) {
		return Fault(Forbidden, "%s is signed in as %s, who may not do this (%s).", a.Name, a.Role, act)
	}
	return nil
}

// mustBe returns Forbidden unless the actor is the person, or may act for all.
func (a Actor) mustBe(person ID) error {
	if a.ID == person && a.ID != "" {
		return nil
	}
	return a.Must(ActSettings)
}
