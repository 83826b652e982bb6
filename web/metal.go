package web

import (
	"axlewright/casting"
	"axlewright/quantity"
	"axlewright/shop"
)

// A metalShow is what the tests of the metal say together, and the shape beside them.
type metalShow struct {
	Job     *shop.Job
	May     bool
	Found   casting.MetalFinding
	Decided string
	Last    int64
	Word    string // the step's word for what leads
}

// metalLead works out what the casting is made of.
func metalLead(v *visit, j *shop.Job) (lead, error) {
	s := metalShow{Job: j, May: v.who.Role.MayRecord("metal"), Decided: j.Value("metal", "metal").Word(), Last: lastSeq(j, shop.Slot{Step: "metal", Item: "metal"})}
	known, err := v.know(j)
	switch {
	case shop.CodeOf(err) == shop.NotFound: // by the tests alone
		s.Found, err = casting.AssessMetal(j.MetalEvidence())
	case err == nil:
		sighting := j.Sighting()
		bench, _ := sighting.Bench(&known.Catalogue)
		var id casting.Identification
		id, err = known.Identify(bench)
		s.Found = id.Metal
	}
	if err != nil {
		return lead{}, err
	}
	s.Word = shop.DecisionFor(s.Found.Families[0].Family)
	return lead{Show: metalPart(s)}, nil
}

// worthTelling leaves out the families that hardly can be.
func (s metalShow) worthTelling() []casting.FamilyChance {
	var all []casting.FamilyChance
	for _, f := range s.Found.Families {
		if f.Chance >= 0.01 {
			all = append(all, f)
		}
	}
	return all
}

// settled says whether the tests name one metal well enough to offer it as decided.
func (s metalShow) settled() bool {
	return s.Found.Next == nil && len(s.Found.ByTests) > 0 && s.Decided != s.Word
}

func strengthText(f casting.FamilyStrength) string {
	return quantity.FormatDigits(f.Middle, quantity.Pressure, 2) + ", nineteen in twenty " + quantity.FormatRange(f.Low, f.High, quantity.Pressure)
}
