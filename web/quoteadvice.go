package web

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"axlewright/axle"
	"axlewright/quantity"
	"axlewright/shop"
)

// besideAdvice sets a quote beside the newest advice of its job: what the two
// build where that differs, and whose price is which. Nothing where there is no
// build that was recommended.
func (v *visit) besideAdvice(j *shop.Job, q shop.Quote) ([]string, error) {
	all := j.Kept(shop.EntryAdvice)
	if len(all) == 0 || all[len(all)-1].Value.File == nil {
		return nil, nil
	}
	content, err := v.shop.File(v.ctx(), *all[len(all)-1].Value.File)
	if err != nil {
		return nil, err
	}
	var p printedAdvice
	if json.Unmarshal(content, &p) != nil || p.Advice == nil { // its own page says that it is damaged
		return nil, nil
	}
	a := p.Advice
	if a.Recommended < 0 || a.Recommended >= len(a.Builds) {
		return nil, nil
	}
	best := a.Builds[a.Recommended]
	var lines []string
	c, err := axle.LoadCatalogue(v.catalogue()...)
	if err != nil || !slices.Equal(worksAdvised(c, best.Upgrades), inOrder(q.Works)) {
		has := strings.Join(words(q.Works), ", ")
		if has == "" {
			has = "a rebuild as standard"
		}
		lines = append(lines, "The newest advice recommends "+best.Label()+"; this quote has "+has+".")
	}
	advised := quantity.Format(best.Price, quantity.Money)
	if shop.MoneyOf(best.Price) != q.Price {
		lines = append(lines, fmt.Sprintf("The recommendation’s price, %s, is the catalogue’s; this quote’s, %s, is from the shop’s own minutes and prices.", advised, q.Price))
	}
	return lines, nil
}

// worksAdvised are the works that upgrades come to, in the order of shop.Works. What
// the shop quotes as an extra, such as half-shafts, is none of them.
func worksAdvised(c axle.Catalogue, upgrades []string) []shop.Work {
	var works []shop.Work
	for _, u := range c.Upgrades {
		if !slices.Contains(upgrades, u.Name) {
			continue
		}
		if u.Peg != nil {
			works = append(works, shop.WorkPeg)
			if u.Welds {
				works = append(works, shop.WorkPlates)
			}
		}
		if u.CapBolts != nil || u.Overlay != nil || u.RingDowel != nil || u.Lock != nil || u.WheelBolts != nil {
			works = append(works, shop.WorkFixings)
		}
		if u.HeadBearing != "" {
			works = append(works, shop.WorkBearing)
		}
	}
	return inOrder(works)
}

// inOrder are works once each, in the order of shop.Works.
func inOrder(works []shop.Work) []shop.Work {
	var all []shop.Work
	for _, w := range shop.Works {
		if slices.Contains(works, w) {
			all = append(all, w)
		}
	}
	return all
}
