package bearing

import (
	"math"

	"axlewright/calc/check"
)

// leastLaminae is the number of laminae below which a reference life is refused.
const leastLaminae = 31

// ReferenceParams holds what [ReferenceRating] prepares a bearing from.
type ReferenceParams struct {
	Rating  float64 // N, C_r: basic dynamic load rating
	Rollers Rollers // roller set of the one row
	Laminae int     // -, n_s: laminae of a roller, 31 or more and the same for all bearings compared
	Turning Raceway // name, ring that turns against the direction of the load: cone (inner) or cup (outer)
}

// ReferenceResult is a bearing prepared for reference lives from many sets of
// lamina loads.
type ReferenceResult struct {
	ConeRating  float64   // N, q_kci: dynamic load rating of a lamina on the cone
	CupRating   float64   // N, q_kce: dynamic load rating of a lamina on the cup
	Edge        []float64 // -, f: stress raising factor of each lamina
	Rating      float64   // N, C_r: basic dynamic load rating
	ConeTurning bool      // -, whether the cone turns against the direction of the load
}

// ReferenceRating returns the load ratings of the laminae of a tapered roller
// bearing and the stress raising factors along its rollers.
//
//	q_kci = Q_ci·(1/n_s)^(7/9),  q_kce = Q_ce·(1/n_s)^(7/9)
//	Q_ci = (1/0.83)·C_r/(0.378·Z·cos α)·(1 + v^(9/2))^(2/9)
//	Q_ce = (1/0.83)·C_r/(0.364·Z·cos α)·(1 + v^(−9/2))^(2/9)
//	v = 1.038·[(1 − γ)/(1 + γ)]^(143/108)
//	f_k = 1 − 0.01/ln(1.985·|(2k − n_s − 1)/(2·n_s)|)
//
// f stands in the standard for rollers whose profile is not calculated: the
// outermost laminae are stressed by a quarter more, the middle by nothing.
// Valid for 31 laminae and more; the life depends on their number, so that it
// must be the same for all bearings compared.
// Errors: *check.RangeError outside that range, for rollers that cannot exist or
// an unknown ring.
// Source: ISO/TS 16281:2008, roller bearings (from memory).
func ReferenceRating(p ReferenceParams) (ReferenceResult, error) {
	const fn = "bearing.ReferenceRating"
	if err := check.All(fn,
		check.Positive("Rating", p.Rating),
		check.That("Laminae", float64(p.Laminae), p.Laminae >= leastLaminae, ">= 31"),
	); err != nil {
		return ReferenceResult{}, err
	}
	r := p.Rollers
	if err := r.check(fn); err != nil {
		return ReferenceResult{}, err
	}
	if p.Turning != Cone && p.Turning != Cup {
		return ReferenceResult{}, unknown(fn, "Turning")
	}
	ns := float64(p.Laminae)
	gamma := r.gamma()
	v := math.Pow(1.038*math.Pow((1-gamma)/(1+gamma), 143./108), 9./2)
	even := p.Rating / 0.83 / (float64(r.Count) * math.Cos(r.CupAngle)) * math.Pow(ns, -7./9)
	out := ReferenceResult{
		ConeRating:  even / 0.378 * math.Pow(1+v, 2./9),
		CupRating:   even / 0.364 * math.Pow(1+1/v, 2./9),
		Edge:        make([]float64, p.Laminae),
		Rating:      p.Rating,
		ConeTurning: p.Turning == Cone,
	}
	for i := range out.Edge {
		out.Edge[i] = 1
		if x := math.Abs(float64(2*(i+1))-ns-1) / (2 * ns); x > 0 {
			out.Edge[i] -= 0.01 / math.Log(1.985*x)
		}
	}
	return out, nil
}

// ReferenceLifeParams holds the inputs of [ReferenceLife].
type ReferenceLifeParams struct {
	Bearing ReferenceParams // bearing and its division into laminae
	Loads   []float64       // N, q_jk: lamina loads, roller after roller
}

// ReferenceLifeResult holds the reference life and what it says.
type ReferenceLifeResult struct {
	Life     float64 // -, L10r: basic reference rating life, in revolutions
	Load     float64 // N, P_ref: load whose basic life would be as long
	Hardest  int     // -, k: lamina that costs most life, counted from 1
	EndShare float64 // -, share of the damage done by the outermost tenth of the laminae at each end
}

// ReferenceLife returns the life of a tapered roller bearing from the loads on
// the laminae of its rollers, so that tilt and preload cost life as they do.
//
//	L10r = {Σ_k [(q_kci/q_kei)^(−9/2) + (q_kce/q_kee)^(−9/2)]}^(−8/9) · 1 000 000
//	q_ke = [(1/Z)·Σ_j (f_k·q_jk)^m]^(1/m),  m = 4 on the ring that turns against the load, 9/2 on the other
//	P_ref = C_r·(L10r/1 000 000)^(−3/10)
//
// Valid for Z·n_s loads that are not negative, one of them at least above zero.
// Errors: *check.RangeError outside that range and as ReferenceRating.
// Source: ISO/TS 16281:2008, basic reference rating life of roller bearings
// (from memory).
func ReferenceLife(p ReferenceLifeParams) (ReferenceLifeResult, error) {
	const fn = "bearing.ReferenceLife"
	r, err := ReferenceRating(p.Bearing)
	if err != nil {
		return ReferenceLifeResult{}, err
	}
	if err := check.All(fn, check.That("Loads", float64(len(p.Loads)),
		len(p.Loads) == p.Bearing.Rollers.Count*p.Bearing.Laminae, "one for each lamina of each roller")); err != nil {
		return ReferenceLifeResult{}, err
	}
	total := 0.
	for _, q := range p.Loads {
		if err := check.All(fn, check.NotNegative("Loads", q)); err != nil {
			return ReferenceLifeResult{}, err
		}
		total += q
	}
	if err := check.All(fn, check.Positive("Loads", total)); err != nil {
		return ReferenceLifeResult{}, err
	}
	var out ReferenceLifeResult
	ns := p.Bearing.Laminae
	sum, end, most := 0., 0., 0.
	for k := range ns {
		d := r.damage(p.Loads, k)
		sum += d
		if k < ns/10 || k >= ns-ns/10 {
			end += d
		}
		if d > most {
			most, out.Hardest = d, k+1
		}
	}
	out.EndShare = end / sum
	out.Life = million * math.Pow(sum, -8./9)
	out.Load = r.Rating * math.Pow(out.Life/million, -3./10)
	return out, nil
}

// Life is L10r of [ReferenceLife] in revolutions, without checks and garbage;
// +Inf without load. The loads stand roller after roller.
func (r *ReferenceResult) Life(loads []float64) float64 {
	sum := 0.
	for k := range r.Edge {
		sum += r.damage(loads, k)
	}
	return million * math.Pow(sum, -8./9)
}

// ModifiedLife is the reference life in revolutions with film, dirt and fatigue
// limit weighed lamina by lamina, a1 being 1. A lamina counts as if its whole
// bearing were loaded like it over half the circle:
// P_k = (C_r/0.83)·(n_s·D_k)^(2/9) with D_k its damage (derived; ISO/TS 16281
// writes it out in other constants).
func (r *ReferenceResult) ModifiedLife(loads []float64, kappa, contamination, fatigueLimit float64) float64 {
	sum := 0.
	for k := range r.Edge {
		d := r.damage(loads, k)
		if d == 0 {
			continue
		}
		load := r.Rating / 0.83 * math.Pow(float64(len(r.Edge))*d, 2./9)
		sum += d * math.Pow(systemFactor(kappa, contamination*fatigueLimit/load), -9./8)
	}
	return million * math.Pow(sum, -8./9)
}

// damage is (q_kci/q_kei)^(−9/2) + (q_kce/q_kee)^(−9/2) of one lamina.
func (r *ReferenceResult) damage(loads []float64, k int) float64 {
	ns := len(r.Edge)
	fourth, half := 0., 0. // sums of q⁴ and q^(9/2)
	rollers := 0
	for i := k; i < len(loads); i += ns {
		q2 := loads[i] * loads[i]
		fourth += q2 * q2
		half += q2 * q2 * math.Sqrt(loads[i])
		rollers++
	}
	f, z := r.Edge[k], float64(rollers)
	turning := f * math.Sqrt(math.Sqrt(fourth/z))
	standing := f * f * f * f * math.Sqrt(f) * half / z // to the power 9/2 already
	if r.ConeTurning {
		return power92(turning/r.ConeRating) + standing/power92(r.CupRating)
	}
	return standing/power92(r.ConeRating) + power92(turning/r.CupRating)
}

// power92 is x^(9/2).
func power92(x float64) float64 { x2 := x * x; return x2 * x2 * math.Sqrt(x) }
