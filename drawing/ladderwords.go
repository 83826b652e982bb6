package drawing

import (
	"axlewright/quantity"
	"fmt"
	"math"
	"strings"
)

func (l *ladder) title() string {
	return fmt.Sprintf("Ladder of give-out torques for enquiry %s", Clean(l.advice.Enquiry))
}

// desc tells the ladder in words.
func (l *ladder) desc() string {
	var b strings.Builder
	fmt.Fprintf(&b, "Torque at the axle at which each link of each build gives out, against the demand of the vehicle: %s.", bandWords(l.advice.Demand.Peak))
	for i := range l.columns {
		c := &l.columns[i]
		fmt.Fprintf(&b, " Build %d", c.number)
		if tag := l.tag(c); tag != "" {
			fmt.Fprintf(&b, ", %s", tag)
		}
		fmt.Fprintf(&b, ": %s, price %s, chance %s, %s.", c.build.Label(), tickWords(math.Round(c.build.Price)),
			quantity.Chance(c.build.Carries.Value), StateOf(c.build.Carries.Value, l.advice.Wanted))
		if weak, there := rungAt(c.build, c.build.Weak); there {
			fmt.Fprintf(&b, " Weak link: %s, first in %s, %s.", weak.Name, quantity.Chance(weak.First), bandWords(weak.GiveOut))
		}
		if next, there := rungAt(c.build, c.build.RunnerUp); there && c.build.RunnerUp != c.build.Weak {
			fmt.Fprintf(&b, " Then %s, first in %s.", next.Name, quantity.Chance(next.First))
		}
		if l.distance() {
			fmt.Fprintf(&b, " Chance to last %s: %s.", distanceWords(l.advice.Distance), quantity.Chance(c.build.Lasts.Value))
		}
		if wears, there := wearsFirst(c.build); there {
			fmt.Fprintf(&b, " First to wear: %s.", wears.Name)
		}
	}
	return b.String()
}
