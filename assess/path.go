package assess

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"axlewright/axle"
	"axlewright/calc/bolt"
	"axlewright/calc/ring"
	"axlewright/loadpath"
)

// Metals that no catalogue asks for: gear steel of the pinion, iron of the diff
// centre.
const (
	pinionModulus, pinionPoisson = 206e9, 0.3
	centreModulus, centrePoisson = 170e9, 0.27
	ironPoisson                  = 0.27
)

// knots are the torques at which the load path is solved, as shares of the
// highest torque looked at: close together where demands lie.
var knots = [...]float64{0, 0.2, 0.5, 1}

// A pathSolver solves the load paths of all kinds of pinion and wheel in one
// draw after another.
type pathSolver struct {
	highest float64
	elastic *loadpath.Elastic
	plates  []wheelPlates // by kind of wheel
	order   []int         // of the kinds: those that differ by their peg alone stand together and share a solution
	pinions [][2]*curve
	wheels  [][2]*curve
}

// wheelPlates is what of one kind of wheel does not change from draw to draw:
// it takes milliseconds and is worked out once for all workers.
type wheelPlates struct {
	wheel *loadpath.PlateTable
	peg   *plateTable // nil without a peg
}

func newPathSolver(wheels []*axle.Assembly, plates []wheelPlates, highest float64) *pathSolver {
	s := &pathSolver{highest: highest, plates: plates}
	for w := range wheels {
		s.order = append(s.order, w)
	}
	slices.SortStableFunc(s.order, func(a, b int) int { return strings.Compare(caseKey(wheels[a]), caseKey(wheels[b])) })
	for range plates {
		s.wheels = append(s.wheels, s.newCurves())
	}
	return s
}

// newWheelPlates solves the plates of kinds of wheel, those alike once.
func newWheelPlates(wheels []*axle.Assembly) ([]wheelPlates, error) {
	known := map[string]wheelPlates{}
	var all []wheelPlates
	for _, a := range wheels {
		key := plateKey(a)
		p, done := known[key]
		if !done {
			var err error
			if p.wheel, err = newCrownWheel(a); err != nil {
				return nil, fmt.Errorf("build %q: %w", buildName(*a), err)
			}
			if a.Peg != nil {
				if p.peg, err = newPlateTable(a.Peg); err != nil {
					return nil, fmt.Errorf("build %q: %w", buildName(*a), err)
				}
			}
			known[key] = p
		}
		all = append(all, p)
	}
	return all, nil
}

func (s *pathSolver) newCurves() [2]*curve {
	var c [2]*curve
	for f := range c {
		c[f] = &curve{torques: make([]float64, len(knots)), rows: make([]response, len(knots))}
		for i, k := range knots {
			c[f].torques[i] = k * s.highest
		}
	}
	return c
}

// solve works out the response of every drawn pinion and wheel on both flanks.
// The first pinion is solved with every wheel, then the other pinions with the
// last wheel: the two do not feel each other. Where the casting couples them
// each pinion is the one of the wheel beside it (pinionKey, wheelKey). The
// curves hold until the next call.
func (s *pathSolver) solve(pinions, wheels []*axle.Assembly, m *memo) error {
	for len(s.pinions) < len(pinions) {
		s.pinions = append(s.pinions, s.newCurves())
	}
	coupled := wheels[0].Casting.Compliance.Couples()
	last := 0
	for _, w := range s.order {
		p := 0
		if coupled {
			p = w
		}
		if err := s.one(pinions[p], wheels[w], p, w, m); err != nil {
			return fmt.Errorf("build %q: %w", buildName(*wheels[w]), err)
		}
		last = w
	}
	if coupled {
		return nil
	}
	for p := 1; p < len(pinions); p++ {
		if err := s.one(pinions[p], wheels[last], p, last, m); err != nil {
			return fmt.Errorf("build %q: %w", buildName(*pinions[p]), err)
		}
	}
	return nil
}

// one solves one pinion with one wheel and keeps both responses.
func (s *pathSolver) one(pinion, wheel *axle.Assembly, p, w int, m *memo) error {
	input, err := s.input(pinion, wheel, s.plates[w], m)
	if err != nil {
		return err
	}
	if s.elastic == nil {
		s.elastic, err = loadpath.Prepare(input)
	} else {
		err = s.elastic.Reset(input)
	}
	if err != nil {
		return err
	}
	var state loadpath.State
	for f, flank := range flanks {
		for i := range knots {
			if f > 0 && knots[i] == 0 { // without torque there is no flank
				s.pinions[p][f].rows[i], s.wheels[w][f].rows[i] = s.pinions[p][0].rows[i], s.wheels[w][0].rows[i]
				continue
			}
			if err := s.elastic.SolveInto(&state, flank, s.wheels[w][f].torques[i]); err != nil {
				return err
			}
			s.pinions[p][f].rows[i].readPinion(&state)
			s.wheels[w][f].rows[i].readWheel(&state, input.CapDirection)
		}
	}
	return nil
}

// input describes a drawn build to the load path: the pinion of one, the rest of
// the other.
func (s *pathSolver) input(pinion, a *axle.Assembly, plates wheelPlates, m *memo) (*loadpath.Axle, error) {
	cones, err := a.Gears.Cones()
	if err != nil {
		return nil, err
	}
	mesh, err := loadpath.NewMesh(cones, a.Gears.Hand, a.Gears.DriveAngle.Value, a.Gears.CoastAngle.Value)
	if err != nil {
		return nil, err
	}
	k := &a.Casting
	l := &k.Layout
	capStiffness, err := stiffnessOfCap(a, m)
	if err != nil {
		return nil, err
	}
	plate, err := plates.wheel.At(a.Gears.Plate.Bond.Value, a.Gears.Plate.Modulus.Value)
	if err != nil {
		return nil, err
	}
	hub := mesh.MeanPoint.Y + l.MeshToHub.Value
	side := loadpath.SideSeat{
		Inward: k.Seats.Side.Inward.Value, Leg: k.Seats.Side.Leg.Value, Across: k.Seats.Side.Across.Value,
		Axial: k.Seats.Side.Axial.Value, Tilt: k.Seats.Side.Tilt.Value, Cap: capStiffness,
	}
	seat := func(x *axle.Seat) loadpath.Seat {
		return loadpath.Seat{Axial: x.Axial.Value, Radial: x.Radial.Value, Tilt: x.Tilt.Value}
	}
	c := &a.Centre
	in := &loadpath.Axle{
		Mesh: mesh,
		Layout: loadpath.Layout{
			GearToHead: l.GearToHead.Value, HeadToTail: l.HeadToTail.Value, MeshToPlate: l.MeshToPlate.Value,
			MeshToHub: l.MeshToHub.Value, Near: l.Near.Value, Far: l.Far.Value,
		},
		Pinion: loadpath.PinionShaft{
			Neck:    []loadpath.Section{{Length: l.GearToHead.Value, Outer: pinion.Gears.PinionNeck.Value}},
			Shank:   []loadpath.Section{{Length: l.HeadToTail.Value, Outer: a.Gears.PinionShank.Value}},
			Modulus: pinionModulus, Poisson: pinionPoisson,
		},
		Centre: loadpath.DiffCentre{
			ToNear:  []loadpath.Section{{Length: l.Near.Value - hub, Outer: c.NearOuter.Value, Inner: c.NearInner.Value, Share: c.BendingShare.Value}},
			ToFar:   []loadpath.Section{{Length: l.Far.Value + hub, Outer: c.FarOuter.Value, Inner: c.FarInner.Value, Share: c.BendingShare.Value}},
			Modulus: centreModulus, Poisson: centrePoisson,
		},
		Head: pinion.Head.RollerSet(), Tail: pinion.Tail.RollerSet(), Near: a.Side.RollerSet(), Far: a.Side.RollerSet(),
		PinionPreload: k.Preload.Pinion.Value, SidePreload: k.Preload.Side.Value,
		HeadSeat: seat(&k.Seats.Head), TailSeat: seat(&k.Seats.Tail), NearSeat: side, FarSeat: side,
		CapDirection: facing(k.Cap.Facing),
		Plate:        plate,
	}
	if p := a.Peg; p != nil {
		in.Peg = &loadpath.Peg{
			Gap: p.Gap.Value, RunOut: p.RunOut.Value, Spot: loadpath.Tight, // where a fitter sets it
			Stiffness: pegStiffness(a, plates.peg), Friction: p.Friction.Value,
			Radius: p.Radius.Value, Angle: p.Angle.Value, BackFaceY: a.Gears.Plate.Thickness.Value / 2,
		}
	}
	if k.Compliance != nil {
		if in.Casting, err = wholeCasting(in, k); err != nil {
			return nil, err
		}
	}
	return in, nil
}

// wholeCasting is the matrix of a casting that has one: what the seats say, with
// what was measured in its place.
func wholeCasting(in *loadpath.Axle, k *axle.Casting) (*loadpath.Casting, error) {
	measured, err := k.Compliance.Matrix()
	if err != nil {
		return nil, err
	}
	whole, err := loadpath.SeatsAsCasting(in, k.PegWall.Value)
	if err != nil {
		return nil, err
	}
	for i, row := range k.Compliance.Freedoms {
		for j, column := range k.Compliance.Freedoms[:i+1] {
			whole.Set(slices.Index(axle.Freedoms, row), slices.Index(axle.Freedoms, column), measured.At(i, j))
		}
	}
	return &whole, nil
}

// facing is the direction of the caps in the frame of the load path, in which
// x points out of the nose.
func facing(f axle.Facing) loadpath.Vector {
	if f == axle.TowardsNose {
		return loadpath.Vector{X: 1}
	}
	return loadpath.Vector{X: -1}
}

// pegStiffness puts in series what stands behind the pad.
func pegStiffness(a *axle.Assembly, plate *plateTable) float64 {
	p := a.Peg
	core := p.Screw.Value - 0.9382*p.ScrewPitch.Value // diameter of the stress area, ISO 898-1
	area := math.Pi / 4 * core * core
	give := p.ScrewLength.Value/(area*boltModulus) + 1/p.ThreadStiff.Value + 1/(float64(p.Plate.Count)*plate.stiffness(&p.Plate))
	if a.Casting.Compliance == nil { // else the wall is in its matrix
		give += 1 / a.Casting.PegWall.Value
	}
	return 1 / give
}

// archKey tells the caps of one draw apart: bare, or with which overlay.
func archKey(a *axle.Assembly) string {
	if a.Overlay == nil {
		return ""
	}
	return a.Overlay.Thickness.Text + " " + a.Overlay.Metal
}

// capLayers are the cap's own iron and a welded overlay where there is one.
func capLayers(a *axle.Assembly) (layers []ring.SectionLayer, bond float64) {
	k := &a.Casting.Cap
	layers = []ring.SectionLayer{{Thickness: k.Thickness.Value, Width: k.Width.Value, Modulus: k.Modulus.Value}}
	if o := a.Overlay; o != nil {
		return append(layers, ring.SectionLayer{Thickness: o.Thickness.Value, Width: o.Width.Value, Modulus: boltModulus}), o.Bond.Value
	}
	return layers, 1
}

// capArc is half the arc over which a side bearing presses on its cap.
const capArc = math.Pi / 3

// capUnderForce solves the arch of a cap under a force of one newton.
func capUnderForce(a *axle.Assembly, m *memo) (ring.CapResult, error) {
	return m.cap(archKey(a), func() (ring.CapResult, error) {
		layers, bond := capLayers(a)
		return ring.Cap(ring.CapParams{
			BoreRadius: a.Casting.Cap.BoreRadius.Value, Layers: layers, Bond: bond, Poisson: ironPoisson,
			Force: 1, HalfArc: capArc, Load: ring.CosineLoad,
		})
	})
}

func stiffnessOfCap(a *axle.Assembly, m *memo) (float64, error) {
	arch, err := capUnderForce(a, m)
	if err != nil {
		return 0, fmt.Errorf("cap: %w", err)
	}
	b := &a.Casting.CapBolts
	size, err := axle.ThreadSize(b.Thread)
	if err != nil {
		return 0, err
	}
	thread, err := bolt.ThreadGeometry(size.Form, size.Diameter, size.Pitch)
	if err != nil {
		return 0, err
	}
	modulus := a.Casting.Cap.Modulus.Value
	k, err := loadpath.CapJoint{
		Bolt: boltSpring(size.Diameter, thread, b.Grip.Value, modulus), Clamped: clampedUnder(size.Diameter, b.Grip.Value, modulus),
		LoadPlane: a.Casting.Cap.LoadPlane.Value,
	}.Stiffness(arch.Stiffness)
	if err != nil {
		return 0, fmt.Errorf("cap: %w", err)
	}
	return k.Total, nil
}

// newCrownWheel solves the crown wheel on its flange for every bond between
// loose and solid.
func newCrownWheel(a *axle.Assembly) (*loadpath.PlateTable, error) {
	w := &a.Gears.Plate
	cones, err := a.Gears.Cones()
	if err != nil {
		return nil, err
	}
	places := loadpath.PlatePlaces{
		MeshRadius: cones.WheelMeanRadius, MeshSpread: w.Spread.Value, DialRadius: a.Casting.Layout.DialRadius.Value,
	}
	if p := a.Peg; p != nil {
		places.PegRadius, places.PegAngle, places.PadRadius = p.Radius.Value, p.Angle.Value, p.PadDiameter.Value/2
	}
	return loadpath.NewPlateTable(ring.CrownWheelParams{
		ClampRadius: a.Centre.HubRadius.Value, Bore: w.Bore.Value, FlangeRadius: a.Centre.FlangeRadius.Value, OuterRadius: w.Outer.Value,
		FlangeThickness: a.Centre.FlangeThickness.Value, WheelThickness: w.Thickness.Value,
		FlangeBehind: a.Casting.Layout.MeshToHub.Value - a.Casting.Layout.MeshToPlate.Value,
		WheelModulus: w.Modulus.Value, Poisson: pinionPoisson,
	}, places)
}
