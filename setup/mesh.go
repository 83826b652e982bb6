package setup

import (
	"axlewright/axle"
	"axlewright/calc/gear"
	"axlewright/quantity"
)

// A Mesh is the geometry that lash follows from. The zero Mesh is one that is
// not known: the rule of the trade takes its place.
type Mesh struct {
	Cones        gear.PitchCones
	Drive, Coast float64 // rad, generated pressure angles
	DialRadius   float64 // m, where lash is read, the heel as a rule; zero is the mean circle
}

// MeshOf returns the geometry of a gear set of the catalogue, read at the heel.
func MeshOf(g axle.GearSet) (Mesh, error) {
	pair, err := gear.PairAsMeasured(gear.PairMeasurements{
		PinionTeeth: g.PinionTeeth, WheelTeeth: g.WheelTeeth,
		WheelOutsideDiameter: g.OutsideDiameter.Value, FaceWidth: g.Face.Value, Offset: g.Offset.Value,
		PinionSpiral: g.PinionSpiral.Value, PressureAngle: (g.DriveAngle.Value + g.CoastAngle.Value) / 2, CutterRadius: g.Cutter.Value,
	})
	if err != nil {
		return Mesh{}, asFinding(err)
	}
	return Mesh{
		Cones: pair.Cones,
		Drive: g.DriveAngle.Value + pair.Angles.Limit, Coast: g.CoastAngle.Value - pair.Angles.Limit,
		DialRadius: pair.WheelPitchDiameter / 2,
	}, nil
}

func (m Mesh) known() bool { return m.Cones.WheelMeanRadius > 0 }

// dialShare is how much larger lash reads at the dial than on the mean circle.
func (m Mesh) dialShare() float64 {
	if !m.known() || m.DialRadius == 0 {
		return 1
	}
	return m.DialRadius / m.Cones.WheelMeanRadius
}

func (s *sheet) mesh(m Mesh) {
	if m.known() && m.DialRadius != 0 {
		s.number("Mesh.DialRadius", m.DialRadius, quantity.Length, m.DialRadius > m.Cones.WheelMeanRadius/2 && m.DialRadius < 2*m.Cones.WheelMeanRadius, "a radius on the teeth of the crown wheel, or zero for the mean circle")
	}
}

// Sensitivity is what lash does when a member moves.
type Sensitivity struct {
	Wheel  Spread // -, growth of lash per movement of the crown wheel away from the pinion
	Pinion Spread // -, growth of lash per movement of the pinion out of the nose
	Origin axle.Origin
	Source string
}

// Without geometry: rule of the trade and what common angles give.
const (
	leastWheelShare, usualWheelShare, mostWheelShare = 0.70, 0.78, 0.855
	usualPinionShare                                 = 0.24
)

// Sensitivity returns what lash, as the dial reads it, does when a member moves:
// from the geometry where it is known, else by the rule of the trade that lash
// changes by 0.7 to 0.85 of the movement.
func (m Mesh) Sensitivity() (Sensitivity, error) {
	if !m.known() {
		return Sensitivity{
			Wheel:  Spread{leastWheelShare, usualWheelShare, mostWheelShare},
			Pinion: Spread{0.2, usualPinionShare, 0.3},
			Origin: axle.Trade, Source: "[T] custom of the trade, no source: 0.7 to 0.85 of the movement",
		}, nil
	}
	step := m.Cones.WheelMeanRadius / 1000
	per := func(shift gear.MeshShift) (float64, error) {
		l, err := gear.LashChange(gear.LashChangeParams{Cones: m.Cones, DrivePressureAngle: m.Drive, CoastPressureAngle: m.Coast, Shift: shift})
		return l.Transverse / step * m.dialShare(), err
	}
	wheel, err := per(gear.MeshShift{WheelAway: step})
	if err != nil {
		return Sensitivity{}, asFinding(err)
	}
	pinion, err := per(gear.MeshShift{PinionAway: step})
	if err != nil {
		return Sensitivity{}, asFinding(err)
	}
	source := "[C] geometry of the pair, on the mean circle"
	if m.DialRadius != 0 {
		source = "[C] geometry of the pair, where the dial stands"
	}
	return Sensitivity{Wheel: exactly(wheel), Pinion: exactly(pinion), Origin: axle.Computed, Source: source}, nil
}

// wheelForPinion is how far the crown wheel must move away to keep the lash
// where the pinion goes out by one; it is negative, for the wheel comes in.
func (s Sensitivity) wheelForPinion() float64 { return -s.Pinion.Likely / s.Wheel.Likely }

// MoveOfMesh asks what moving a member does to the lash.
type MoveOfMesh struct {
	Mesh   Mesh
	Wheel  Reading // m, of the crown wheel away from the pinion; optional
	Pinion Reading // m, of the pinion out of the nose; optional
}

// LashOfMove returns what the lash does, as the dial reads it, when crown wheel
// or pinion move.
func LashOfMove(in MoveOfMesh) (Answer, error) {
	var s sheet
	var a Answer
	s.mesh(in.Mesh)
	const move = "a movement such as 0.10 mm"
	s.optional("Wheel", in.Wheel, quantity.Length, -5*mm, 5*mm, move)
	s.optional("Pinion", in.Pinion, quantity.Length, -5*mm, 5*mm, move)
	if err := s.err(); err != nil {
		return Answer{}, err
	}
	sens, err := in.Mesh.Sensitivity()
	if err != nil {
		return Answer{}, err
	}
	change := Spread{}
	for _, part := range []struct {
		words, symbol string
		moved         Reading
		per           Spread
	}{{"crown wheel away from the pinion", "b", in.Wheel, sens.Wheel}, {"pinion out of the nose", "a", in.Pinion, sens.Pinion}} {
		a.line("", "j'_"+part.symbol, "lash per movement, "+part.words, part.per.Likely, quantity.Number, sens.Origin, sens.Source)
		if part.moved.Taken {
			a.measured("×", part.symbol, part.words, part.moved, quantity.Length)
			more := part.per.times(part.moved.SI)
			change = Spread{change.Low + more.Low, change.Likely + more.Likely, change.High + more.High}
		}
	}
	if in.Wheel.Taken || in.Pinion.Taken {
		a.computed("=", "Δj", "lash grows by, "+change.shown(quantity.Length), change.Likely, quantity.Length, "")
		a.say("Lash grows by %s.", change.shown(quantity.Length))
	}
	a.done("Lash grows by %s of what the crown wheel moves away, and by %s of what the pinion moves out.", sens.Wheel.shown(quantity.Number), sens.Pinion.shown(quantity.Number))
	return a, nil
}
