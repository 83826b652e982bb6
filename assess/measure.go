package assess

import (
	"cmp"
	"math"
	"regexp"
	"slices"
	"strings"
)

// leastShare is the smallest share of the doubt that the draws can tell from none.
const leastShare = 0.01

// leastNarrowing is the least share of the band's width that makes a
// measurement worth naming.
const leastNarrowing = 0.02

// shares tells which figures cause the doubt of a build's give-out torque.
func (s *study) shares(least []float64) []Share {
	y := make([]float64, len(least))
	for i, t := range least {
		y[i] = math.Log(math.Max(math.Min(t, s.highest), 1))
	}
	x := make([]float64, s.draws.n)
	var list []Share
	for column, place := range s.places {
		for i := range x {
			_, z := s.draws.row(i)
			x[i] = z[column]
		}
		if share := shareOfDoubt(x, y); share >= leastShare {
			list = append(list, Share{Figure: inWords(place), Place: place, Share: share, Origin: s.figures[place].Origin})
		}
	}
	slices.SortStableFunc(list, func(a, b Share) int { return cmp.Compare(b.Share, a.Share) })
	return list
}

// measureNext ranks the catalogue's measurements by how much they would narrow
// the answer for their price.
func (s *study) measureNext(shares []Share, band Band) []Narrow {
	width := math.Min(band.High, s.highest) - math.Min(band.Low, s.highest)
	byPlace := map[string]Share{}
	for _, share := range shares {
		byPlace[share.Place] = share
	}
	var list []Narrow
	for _, m := range s.catalogue.Measurements {
		known, figures := 0.0, []string(nil)
		for _, place := range m.Figures {
			if share, matters := byPlace[place]; matters {
				// What stays of a figure's doubt is in its width: of its variance the square.
				known += share.Share * (1 - m.Leaves*m.Leaves)
				figures = append(figures, share.Figure)
			}
		}
		if known == 0 {
			continue
		}
		cost := m.Minutes/60*s.labour() + m.Parts
		after := width * math.Sqrt(math.Max(0, 1-known))
		if after > width*(1-leastNarrowing) {
			continue
		}
		list = append(list, Narrow{
			How: m.How, Figures: figures, Cost: cost, Before: width, After: after,
			PerCost: (width - after) / math.Max(cost, 1),
		})
	}
	slices.SortStableFunc(list, func(a, b Narrow) int { return cmp.Compare(b.PerCost, a.PerCost) })
	return list
}

func (s *study) labour() float64 { return cmp.Or(s.enquiry.Labour, s.catalogue.Labour) }

// inWords turns a place into words: "Casting.CapBolts.Nut" is "cap bolts: nut
// factor".
func inWords(place string) string {
	place = namedItem.ReplaceAllString(place, "$1")
	parts := strings.Split(place, ".")
	if n := len(parts); n > 1 {
		if w, known := figureWords[parts[n-2]+"."+parts[n-1]]; known {
			return w
		}
	}
	for i, p := range parts {
		if w, known := placeWords[p]; known {
			parts[i] = w
		} else {
			parts[i] = spaced(p)
		}
	}
	parts = slices.DeleteFunc(parts, func(p string) bool { return p == "" })
	if len(parts) == 1 {
		return parts[0]
	}
	return strings.Join(parts[:len(parts)-1], ", ") + ": " + parts[len(parts)-1]
}

// namedItem is an item of a list, which goes by its name alone.
var namedItem = regexp.MustCompile(`\w+\[(.*?)\]`)

// placeWords gives the trade's words where a field's name alone will not do.
var placeWords = map[string]string{
	"WheelBolts": "crown-wheel bolts", "HalfShafts": "half-shafts", "Settling": "settling of the joint", "Prying": "prying by the arch",
	"JointAcross": "share of the load along the joint", "JointOutward": "share of the load that lifts it",
	"LoadPlane": "where in the joint the load enters", "CreepShare": "share of the cup's load that drags the adjuster",
	"FrictionKept": "friction left under vibration", "FaceFriction": "friction of face and thread",
	"Casting": "", "Model": "", "Gears": "gear set", "Head": "head bearing", "Tail": "tail bearing", "Side": "side bearings",
	"Nut": "nut factor (torque to preload)", "CastingMetal": "strength of this casting's metal",
	"WeldToe": "strength of the iron beside a weld", "BoltMetal": "strength of the bolts above their class",
	"RootStress": "tooth root stress (method)", "FlankStress": "flank pressure (method)", "ToothLife": "scatter of tooth life", "WeldLife": "scatter of weld life",
	"BearingLife": "scatter of bearing life", "BearingLoad": "bearing loads (method)", "Movement": "movement (method)",
	"Engine": "engine torque", "Friction": "friction", "Shock": "shock factor", "Tyre": "tyre", "ThreadShare": "share of side load that the bolts take",
	"Seats": "casting stiffness", "Compliance": "casting's compliance matrix", "Engaged": "length of engaged thread", "Centre": "diff centre",
}

// spaced turns "LoadedRadius" into "loaded radius".
func spaced(name string) string {
	var b strings.Builder
	for i, r := range name {
		if i > 0 && r >= 'A' && r <= 'Z' {
			b.WriteByte(' ')
		}
		b.WriteRune(r)
	}
	return strings.ToLower(b.String())
}
