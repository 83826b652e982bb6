package setup

import (
	"math"
	"math/cmplx"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"
)

// body is an invented wheel on its seat.
type body struct {
	holes               int
	seat, wheel         float64 // m, amplitude
	seatHigh, wheelHigh float64 // rad
	bent                float64 // m, amplitude, with the seat
	noise               func() float64
}

func (b body) round(places, turned int) Round {
	phi := float64(turned) * 2 * math.Pi / float64(b.holes)
	return Round{turn(places, 0.1*mm, b.noise, hump(1, b.seat, b.seatHigh), hump(1, b.wheel, b.wheelHigh+phi), hump(2, b.bent, 0.3)), turned}
}

// best is the least full reading that any hole gives, by trying them all.
func (b body) best(turned int) (int, float64) {
	at, least := 0, math.Inf(1)
	for k := range b.holes {
		phi := float64(turned+k) * 2 * math.Pi / float64(b.holes)
		if full := 2 * cmplx.Abs(cmplx.Rect(b.seat, b.seatHigh)+cmplx.Rect(b.wheel, b.wheelHigh+phi)); full < least-1e-9 {
			at, least = k, full
		}
	}
	return at, least
}

func TestRunOutIsTakenApart(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		sigma := rapid.Float64Range(0, 0.002).Draw(rt, "noise") * mm
		rng := rand.New(rand.NewPCG(rapid.Uint64().Draw(rt, "seed"), 7))
		b := body{
			holes: rapid.IntRange(6, 14).Draw(rt, "holes"),
			seat:  rapid.Float64Range(0, 0.06).Draw(rt, "seat") * mm, wheel: rapid.Float64Range(0, 0.06).Draw(rt, "wheel") * mm,
			seatHigh: rapid.Float64Range(0, 6.2).Draw(rt, "seat high"), wheelHigh: rapid.Float64Range(0, 6.2).Draw(rt, "wheel high"),
			noise: func() float64 { return sigma * rng.NormFloat64() },
		}
		places := rapid.IntRange(6, 12).Draw(rt, "places")
		from := rapid.IntRange(0, b.holes-1).Draw(rt, "from")
		to := from + rapid.IntRange(2, b.holes-2).Draw(rt, "turned")
		r := must[RunOutResult](t)(SeparateRunOut(RunOutByTurning{Spec: light, Holes: b.holes, First: b.round(places, from), Second: b.round(places, to)}))
		apart := cmplx.Abs(cmplx.Rect(1, float64(to-from)*2*math.Pi/float64(b.holes)) - 1)
		doubt := 12*sigma/math.Sqrt(float64(places))/apart + 1e-10
		if d := cmplx.Abs(r.Seat.vector() - cmplx.Rect(b.seat, b.seatHigh)); d > doubt {
			rt.Errorf("seat off by %g, doubt %g", d, doubt)
		}
		if d := cmplx.Abs(r.Wheel.vector() - cmplx.Rect(b.wheel, b.wheelHigh)); d > doubt {
			rt.Errorf("wheel off by %g, doubt %g", d, doubt)
		}
		if _, least := b.best(to); r.Best.Full > least+4*doubt+0.2e-6 || r.Best.Full > r.AtHoles[0].Full {
			rt.Errorf("%d holes on gives %g, best there is %g, now %g", r.Best.Turned, r.Best.Full, least, r.AtHoles[0].Full)
		}
	})
}

func TestIndexInWords(t *testing.T) {
	b := body{holes: 10, seat: 0.03 * mm, wheel: 0.05 * mm, seatHigh: 1, wheelHigh: 2, noise: quiet}
	pegged := Spec{Kind: LightAdjusted, Pegged: true}
	in := RunOutByTurning{Spec: pegged, Holes: 10, First: b.round(8, 0), Second: b.round(8, 9)}
	r := must[RunOutResult](t)(SeparateRunOut(in))
	at, least := b.best(9)
	if r.Best.Turned != at || !near(r.Best.Full, least, 1e-12) {
		t.Errorf("best %d holes on with %g, by trying %d with %g", r.Best.Turned, r.Best.Full, at, least)
	}
	wantState(t, r.Answer, Look, "Turn the crown wheel 4 bolt holes on, the way the places are counted", "crown wheel itself", "turned by 36° only")
	in.Allowed = []int{0, 5}
	r = must[RunOutResult](t)(SeparateRunOut(in))
	if len(r.AtHoles) != 2 || r.Best.Turned != 5 {
		t.Errorf("only half a turn is allowed, yet %v", r.AtHoles)
	}
	in.First.Turned, in.Allowed = 9, nil
	_, err := SeparateRunOut(in)
	wantField(t, err, "Second.Turned")
}

func TestGoodWheelStaysWhereItIs(t *testing.T) {
	b := body{holes: 10, seat: 0.01 * mm, wheel: 0.015 * mm, seatHigh: 1, wheelHigh: 2, noise: quiet}
	r := must[RunOutResult](t)(SeparateRunOut(RunOutByTurning{Spec: light, Holes: 10, First: b.round(8, 0), Second: b.round(8, 5)}))
	wantState(t, r.Answer, Fine, "Leave the wheel where it is")
}

func TestBentWheelIsNotATiltedOne(t *testing.T) {
	b := body{holes: 10, seat: 0.01 * mm, wheel: 0.01 * mm, bent: 0.05 * mm, noise: quiet}
	r := must[RunOutResult](t)(SeparateRunOut(RunOutByTurning{Spec: light, Holes: 10, First: b.round(8, 0), Second: b.round(8, 5)}))
	if !r.Bent || !near(r.Twice.FullReading(), 0.10*mm, 1e-10) {
		t.Errorf("bent %v, twice a turn %g mm, want 0.10", r.Bent, r.Twice.FullReading()/mm)
	}
	wantState(t, r.Answer, Look, "Turning it cannot cure this")
	four := must[RunOutResult](t)(SeparateRunOut(RunOutByTurning{Spec: light, Holes: 10, First: b.round(4, 0), Second: b.round(4, 5)}))
	if !four.Has("cannot be told from a tilted one") {
		t.Errorf("four places cannot show a bent wheel\n%s", told(four.Answer))
	}
}

// Both ways of measuring give one answer.
func TestFlangeFaceGivesTheSame(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		b := body{holes: 10, seat: rapid.Float64Range(0.005, 0.05).Draw(rt, "seat") * mm, wheel: rapid.Float64Range(0.005, 0.05).Draw(rt, "wheel") * mm,
			seatHigh: rapid.Float64Range(0, 6.2).Draw(rt, "seat high"), wheelHigh: rapid.Float64Range(0, 6.2).Draw(rt, "wheel high"), noise: quiet}
		turned := rapid.IntRange(0, 9).Draw(rt, "turned")
		flange := turn(8, 0, quiet, hump(1, b.seat*60/95, b.seatHigh)) // a tilt reads less nearer the middle
		face := must[RunOutResult](t)(RunOutFromFace(RunOutByFace{Spec: light, Holes: 10, Flange: flange, FlangeRadius: 60 * mm, BackFace: b.round(8, turned), BackFaceRadius: 95 * mm}))
		turning := must[RunOutResult](t)(SeparateRunOut(RunOutByTurning{Spec: light, Holes: 10, First: b.round(8, turned+3), Second: b.round(8, turned)}))
		if d := cmplx.Abs(face.Wheel.vector() - turning.Wheel.vector()); d > 1e-12 {
			rt.Errorf("wheel by face and by turning differ by %g", d)
		}
		if face.Best.Turned != turning.Best.Turned {
			rt.Errorf("best hole %d and %d", face.Best.Turned, turning.Best.Turned)
		}
	})
}

// vector turns the wave into a complex number: waves of one kind add.
func (w Wave) vector() complex128 { return cmplx.Rect(w.Amplitude, w.High) }

// Worked by hand with the two parts as arrows: the seat 0.06 mm full reading,
// high at 0°, the wheel 0.08 mm, high at 90° of its own mark. As they sit, a
// right angle apart, they make √(0.06² + 0.08²) = 0.10 mm; the wheel half a turn
// less a quarter on, opposite the seat, leaves 0.08 − 0.06 = 0.02 mm.
func TestTwoArrowsByHand(t *testing.T) {
	round := func(wheelHigh float64) []Reading {
		var all []Reading
		for i := range 8 {
			at := float64(i) * math.Pi / 4
			all = append(all, Read(0.03*mm*math.Cos(at)+0.04*mm*math.Cos(at-wheelHigh)))
		}
		return all
	}
	r := must[RunOutResult](t)(SeparateRunOut(RunOutByTurning{Spec: light, Holes: 8,
		First: Round{Readings: round(math.Pi / 2)}, Second: Round{Readings: round(math.Pi), Turned: 2}}))
	for name, c := range map[string]struct{ got, want float64 }{
		"seat": {r.Seat.FullReading(), 0.06 * mm}, "wheel": {r.Wheel.FullReading(), 0.08 * mm},
		"as it sits now, opposite": {r.AtHoles[0].Full, 0.02 * mm}, "two holes back": {r.AtHoles[6].Full, 0.10 * mm}, "half a turn on": {r.AtHoles[4].Full, 0.14 * mm},
	} {
		if !near(c.got, c.want, 1e-9) {
			t.Errorf("%s: %g, want %g", name, c.got, c.want)
		}
	}
	wantState(t, r.Answer, Fine, "Leave the wheel where it is")
}
