package setup

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"axlewright/axle"
	"axlewright/quantity"
)

// A Shim is one thickness on the shelf.
type Shim struct {
	Name      string  // as the shelf is labelled; may be empty
	Thickness float64 // m
	Count     int     // how many there are
}

// PackChoice asks for the nearest pack from the shims in stock.
type PackChoice struct {
	Spec   Spec
	Wanted float64 // m
	Stock  []Shim
	Most   int // pieces in the pack; zero is four
	// What is left over moves the pinion; left out, it is not said which way.
	ThickerPushes Push
}

// A PackResult is the nearest pack.
type PackResult struct {
	Answer
	Pack  []Shim  // Count of each to take, thickest first
	Thick float64 // m, of the pack
	Left  float64 // m, wanted less the pack; negative where the pack is thicker
}

// Shims are counted in tenths of a micrometre, in which 0.01 mm and 1 thou are
// both whole.
const shimUnit = 1e-7

const (
	mostPieces = 8
	mostKinds  = 100
)

// NearestPack returns the pack of shims nearest to a thickness: of equally near
// ones that of the fewest pieces, and of those the thinner one. The search is
// exact.
func NearestPack(in PackChoice) (PackResult, error) {
	var s sheet
	s.spec(in.Spec)
	s.number("Wanted", in.Wanted, quantity.Length, in.Wanted >= 0 && in.Wanted <= thickestShim, "a shim up to 10 mm such as 1.47 mm")
	most := in.Most
	if most == 0 {
		most = 4
	}
	if most < 1 || most > mostPieces {
		s.bad("Most", "%d, expected 1 to %d pieces", in.Most, mostPieces)
	}
	if len(in.Stock) > mostKinds {
		s.bad("Stock", "%d thicknesses, expected %d at most", len(in.Stock), mostKinds)
	}
	if in.ThickerPushes != "" {
		choose(&s, "ThickerPushes", pushQuestion, in.ThickerPushes, TowardsWheel, AwayFromWheel)
	}
	for i, shim := range in.Stock {
		field := fmt.Sprintf("Stock[%d]", i)
		s.number(field+".Thickness", shim.Thickness, quantity.Length, shim.Thickness >= 0.005*mm && shim.Thickness <= thickestShim, "a shim of 0.005 to 10 mm such as 0.10 mm")
		if shim.Count < 0 {
			s.bad(field+".Count", "%d, expected how many there are", shim.Count)
		}
	}
	if err := s.err(); err != nil {
		return PackResult{}, err
	}
	var r PackResult
	pieces := nearest(in.Wanted, in.Stock, most)
	for i, n := range pieces {
		if n > 0 {
			shim := in.Stock[i]
			shim.Count = n
			r.Pack = append(r.Pack, shim)
			r.Thick += float64(n) * shim.Thickness
		}
	}
	slices.SortStableFunc(r.Pack, func(a, b Shim) int { return cmp.Compare(b.Thickness, a.Thickness) })
	r.Left = in.Wanted - r.Thick
	r.tell(in)
	return r, nil
}

// nearest returns how many of each shim to take. Reach[k][s] is the fewest
// pieces of the first k thicknesses that make s. Nothing beyond wanted and the
// thickest shim need be looked at: one piece less would be nearer.
func nearest(wanted float64, stock []Shim, most int) []int {
	target := int(math.Round(wanted / shimUnit))
	sizes := make([]int, len(stock))
	end := target
	for i, shim := range stock {
		sizes[i] = int(math.Round(shim.Thickness / shimUnit))
		if shim.Count > 0 {
			end = max(end, target+sizes[i])
		}
	}
	const never = mostPieces + 1
	reach := make([][]int8, len(stock)+1)
	reach[0] = make([]int8, end+1)
	for s := range reach[0] {
		reach[0][s] = never
	}
	reach[0][0] = 0
	for k, shim := range stock {
		before, after := reach[k], slices.Clone(reach[k])
		for n := 1; n <= min(shim.Count, most); n++ {
			for s := n * sizes[k]; s <= end; s++ {
				if got := before[s-n*sizes[k]] + int8(n); got <= int8(most) && got < after[s] {
					after[s] = got
				}
			}
		}
		reach[k+1] = after
	}
	best := 0
	for s, pieces := range reach[len(stock)] {
		if pieces > int8(most) {
			continue
		}
		near, nearest := abs(s-target), abs(best-target)
		if near < nearest || near == nearest && pieces < reach[len(stock)][best] {
			best = s
		}
	}
	take := make([]int, len(stock))
	for k := len(stock) - 1; k >= 0; k-- {
		for n := 0; n <= min(stock[k].Count, most); n++ {
			if s := best - n*sizes[k]; s >= 0 && reach[k][s]+int8(n) == reach[k+1][best] {
				take[k], best = n, s
				break
			}
		}
	}
	return take
}

func (r *PackResult) tell(in PackChoice) {
	r.line("", "S", "shim wanted", in.Wanted, quantity.Length, axle.Computed, "")
	words := make([]string, len(r.Pack))
	for i, shim := range r.Pack {
		words[i] = fmt.Sprintf("%d × %s", shim.Count, length(shim.Thickness))
		if shim.Name != "" {
			words[i] += " (" + shim.Name + ")"
		}
		r.line("−", fmt.Sprintf("%d × s", shim.Count), "from stock, each "+length(shim.Thickness), float64(shim.Count)*shim.Thickness, quantity.Length, axle.Measured, shim.Name)
	}
	r.computed("=", "rest", "what remains", r.Left, quantity.Length, "")
	l := in.Spec.Limit(ShimLeft)
	r.only(string(ShimLeft), math.Abs(r.Left), l)
	if len(r.Pack) == 0 {
		if in.Wanted <= l.High {
			r.done("No shim is needed.")
			r.say("No shim.")
			return
		}
		r.settle(Look, "There is no shim in stock for %s.", length(in.Wanted))
		return
	}
	r.say("Take %s: together %s.", andList(words), length(r.Thick))
	if math.Abs(r.Left) < shimUnit {
		r.done("The pack is exact.")
		return
	}
	word := "too thin"
	if r.Left < 0 {
		word = "too thick"
	}
	rest := fmt.Sprintf("The pack is %s %s", length(math.Abs(r.Left)), word)
	if in.ThickerPushes != "" {
		rest += fmt.Sprintf(", which leaves the pinion %s too far %s", length(math.Abs(r.Left)), inOut(-r.Left*in.ThickerPushes.sign()))
	}
	if math.Abs(r.Left) <= l.High {
		r.done("%s; that is within %s (%s).", rest, length(l.High), l.From())
		return
	}
	r.settle(Look, "%s; nothing nearer is in stock.", rest)
	r.say("Get or grind a shim of %s, or set with this pack and let the pattern decide.", length(in.Wanted))
}

func abs(n int) int { return max(n, -n) }
