package casting

import (
	"fmt"
	"strings"

	"axlewright/quantity"
)

// likelyFrom is the chance from which a variant is called likely.
const likelyFrom = 0.7

// judge turns chances into a verdict, and says what to do and when to stop.
func (w *bench) judge(id *Identification, leader int) {
	name, chance := w.nameOf(leader), w.id[leader]
	percent := quantity.Chance(chance)
	heavy := heavyContradiction(id)
	switch {
	case id.Modified.Chance >= modifiedFrom:
		id.Verdict = ModifiedBefore
		id.Sentence = fmt.Sprintf("Modified before (%s). As a shape it is nearest to %s (%s), but what was changed cannot be told from the outside.",
			quantity.Chance(id.Modified.Chance), name, percent)
		id.Do = id.Modified.Demands
		id.Why = "A repair may have changed any bore or face: no chance of a variant is good enough to cut a kit by."
		why := "What was measured goes better with a casting that was altered than with any as it was cast."
		if len(id.Modified.Signs) > 0 {
			why = "It was repaired or altered before: " + strings.Join(id.Modified.Signs, "; ") + "."
		}
		id.Stops = append(id.Stops, Stop{
			What:     "No standard kit and no welding on this casting yet.",
			Why:      why,
			Overrule: "The person who answers for the build, in writing, with the penetrant and bore readings on the record.",
		})
		return
	case leader == w.variants():
		id.Verdict = NoneOfThese
		id.Sentence = "None of the known variants" + w.nearest(id.New) + " (" + percent + ")."
		id.Do = []string{
			"Look twice at what differs; then make it a new variant from what was seen.",
			"Fit a plate by hand before any kit is cut for it, and send drillings to a laboratory.",
		}
		id.Why = "The evidence goes with no variant of the catalogue."
		return
	case chance >= w.cat.Decide.sure() && heavy == nil:
		id.Verdict, id.Enough = SureEnough, true
		id.Sentence = fmt.Sprintf("%s, sure enough (%s).", name, percent)
		id.Why = fmt.Sprintf("%s is above the %s that the shop asks for: stop here.", percent, quantity.Chance(w.cat.Decide.sure()))
		if kit := w.cat.Variants[leader].Kit; kit != "" {
			id.Do = []string{"Take kit " + kit + "; offer the bare plates before anything is tacked."}
		}
		return
	case chance >= likelyFrom:
		id.Verdict = Likely
		id.Sentence = fmt.Sprintf("Likely %s (%s).", name, percent)
	default:
		id.Verdict = Open
		id.Sentence = fmt.Sprintf("Open: %s leads with %s.", name, percent)
	}
	w.goOn(id, heavy)
}

// goOn says what to look at next, or that nothing is left to look at.
func (w *bench) goOn(id *Identification, heavy *Contradiction) {
	if heavy != nil {
		id.Again = heavy.Feature
		id.Why = "Something does not go together: " + heavy.Sentence
		id.Do = []string{"Look again at what does not go together before anything else."}
		return
	}
	if len(id.Questions) == 0 || !id.Questions[0].Worth {
		id.Why = "Nothing that is left to look at would change the answer enough to be worth its trouble."
		id.Do = append(id.Do, "Offer the bare plates of the leading kits; if none sits, treat it as a new variant.")
		return
	}
	q := id.Questions[0]
	id.Do = append(id.Do, fmt.Sprintf("%s (%s)", q.Ask, q.Tool))
	id.Why = fmt.Sprintf("Not yet the %s that the shop asks for; %s would tell most for its trouble.", quantity.Chance(w.cat.Decide.sure()), q.Feature)
}

// heavyContradiction is one that speaks strongly against the leader.
func heavyContradiction(id *Identification) *Contradiction {
	for i, c := range id.Contradictions {
		for _, e := range id.Evidence {
			if e.Feature == c.Feature && e.Decibans <= -strongly {
				return &id.Contradictions[i]
			}
		}
	}
	return nil
}

func (w *bench) nearest(n NewVariantSigns) string {
	if n.Like == "" {
		return "; like nothing known"
	}
	if len(n.Differs) == 0 {
		return "; nearest to " + n.Like
	}
	return "; nearest to " + n.Like + ", but for " + strings.Join(n.Differs, ", ")
}
