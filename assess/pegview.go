package assess

import (
	"fmt"
	"math"
	"slices"

	"axlewright/axle"
	"axlewright/calc/gear"
	"axlewright/loadpath"
)

// pegView says what a peg brings to this axle: the best build with a peg is set
// beside the same build without it, draw by draw.
func (s *study) pegView(a *Advice) error {
	with, without := s.pegTwins(a)
	if with < 0 {
		a.Peg.Text = "No peg is offered for this casting."
		if s.builds[0].Peg != nil {
			a.Peg.Text = "A peg is fitted already; every build keeps it."
		}
		return nil
	}
	a.Peg.Offered = true
	cw, co := s.column(with), s.column(without)
	gain := float64(count(cw.holds)-count(co.holds)) / float64(s.draws.n)
	longer := bandOf(cw.least).Median/bandOf(co.least).Median - 1
	a.Peg.Gain, a.Peg.Longer = gain, longer
	a.Peg.Brings = gain > 0.01 || longer > 0.02
	thrust, err := s.thrusts(with)
	if err != nil {
		return err
	}
	sum := fmt.Sprintf("The teeth push the crown wheel off the pinion with %.1f kN for each 1,000 N·m on the drive side and %.1f kN on the coast side; this axle pulls forward on its %s side.",
		thrust[0], thrust[1], s.enquiry.Mounting.Forward)
	beside := s.label(without)
	if a.Peg.Brings {
		a.Peg.Text = fmt.Sprintf("%s By the draws, a peg added to %s moves the chance of carrying the demand by %+.0f points and the median give-out torque by %+.0f %%.", sum, beside, whole(100*gain), whole(100*longer))
	} else {
		a.Peg.Text = fmt.Sprintf("No peg. %s By the draws, added to %s it moves the chance of carrying the demand by %+.0f points and the median give-out torque by %+.0f %%: not worth its money here.", sum, beside, whole(100*gain), whole(100*longer))
	}
	a.Peg.Flank = gear.Coast
	if thrust[0] > thrust[1] {
		a.Peg.Flank = gear.Drive
	}
	pegPaths, err := s.nominal(with, s.highest)
	if err != nil {
		return err
	}
	gap, err := pegGap(s.unitOf(&s.builds[with], pegPaths, s.plates[s.wheels.of[with]]), s.plates[s.wheels.of[with]], s.highest)
	if err != nil {
		return fmt.Errorf("gap of the peg: %w", err)
	}
	a.Peg.Gap = &gap
	a.Peg.Curve, err = s.pegCurve(with, without, a.Peg.Flank)
	return err
}

// whole rounds and gives nothing no sign.
func whole(x float64) float64 { return math.Round(x) + 0 }

// pegTwins returns the best build with a peg and its twin without: those
// nearest the recommended build where it has one.
func (s *study) pegTwins(a *Advice) (with, without int) {
	best, bestScore := [2]int{-1, -1}, math.Inf(-1)
	wanted := a.Builds[a.Best].Upgrades
	for i := range s.builds {
		if s.builds[i].Peg == nil {
			continue
		}
		j := s.withoutPeg(i)
		if j < 0 {
			continue
		}
		score := -float64(apart(s.builds[i].Upgrades, wanted)) - s.builds[i].Price*1e-6
		if score > bestScore {
			best, bestScore = [2]int{i, j}, score
		}
	}
	return best[0], best[1]
}

// withoutPeg finds the build that differs by nothing but the peg.
func (s *study) withoutPeg(i int) int {
	var rest []string
	for _, name := range s.builds[i].Upgrades {
		if u, err := s.catalogue.Upgrade(name); err != nil || u.Peg == nil {
			rest = append(rest, name)
		}
	}
	return slices.IndexFunc(s.builds, func(b axle.Assembly) bool { return b.Peg == nil && slices.Equal(b.Upgrades, rest) })
}

// apart counts the upgrades that two builds do not share.
func apart(a, b []string) int {
	n := 0
	for _, x := range a {
		if !slices.Contains(b, x) {
			n++
		}
	}
	for _, x := range b {
		if !slices.Contains(a, x) {
			n++
		}
	}
	return n
}

// thrusts returns the tooth thrust on the crown wheel in kN for each 1,000 N·m, by flank.
func (s *study) thrusts(build int) ([2]float64, error) {
	const trial = 1000
	c, err := s.nominal(build, trial)
	if err != nil {
		return [2]float64{}, err
	}
	return [2]float64{c.wheel[0].at(wheelThrust, trial) / 1000, c.wheel[1].at(wheelThrust, trial) / 1000}, nil
}

// nominal solves the load path of a build with every figure at its value.
func (s *study) nominal(build int, highest float64) (paths, error) {
	return nominalPaths(&s.builds[build], s.plates[s.wheels.of[build]], highest)
}

// nominalPaths solves the load path of one build whose plates are solved.
func nominalPaths(b *axle.Assembly, plates wheelPlates, highest float64) (paths, error) {
	one := []*axle.Assembly{b}
	s := newPathSolver(one, []wheelPlates{plates}, highest)
	if err := s.solve(one, one, nil); err != nil {
		return paths{}, err
	}
	return paths{s.pinions[0], s.wheels[0]}, nil
}

// pegCurve is load and movement over torque with every figure at its value,
// each point solved for itself: the straight pieces between the knots of a path
// would blur the corner at which the peg is first touched. That corner is a
// point of its own.
func (s *study) pegCurve(with, without int, flank axle.Flank) ([]PegPoint, error) {
	highest := s.highest / 2
	const points = 24
	var torques []float64
	for i := range points + 1 {
		torques = append(torques, highest*float64(i)/points)
	}
	pegged, err := s.prepared(with)
	if err != nil {
		return nil, err
	}
	peg := s.builds[with].Peg
	touch, err := pegged.FirstTouch(flank, peg.Gap.Value+peg.RunOut.Value/2, highest) // in the middle of the run-out, as the load
	if err != nil {
		return nil, err
	}
	if i, there := slices.BinarySearch(torques, touch.Torque); touch.Touches && !there {
		torques = slices.Insert(torques, i, touch.Torque)
	}
	bare, err := s.prepared(without)
	if err != nil {
		return nil, err
	}
	on, off := make([]loadpath.State, len(torques)), make([]loadpath.State, len(torques))
	if err := pegged.Sweep(flank, torques, on); err != nil {
		return nil, err
	}
	if err := bare.Sweep(flank, torques, off); err != nil {
		return nil, err
	}
	var curve []PegPoint
	for i, t := range torques {
		load := on[i].Peg.Load
		if t <= touch.Torque || !touch.Touches { // nothing but what the solver leaves
			load = 0
		}
		curve = append(curve, PegPoint{Torque: t, Load: load, With: on[i].Mesh.WheelAxial, Without: off[i].Mesh.WheelAxial})
	}
	return curve, nil
}

// prepared is the load path of a build with every figure at its value, ready to
// be solved.
func (s *study) prepared(build int) (*loadpath.Elastic, error) {
	b := &s.builds[build]
	plates := s.plates[s.wheels.of[build]]
	input, err := newPathSolver([]*axle.Assembly{b}, []wheelPlates{plates}, s.highest).input(b, b, plates, nil)
	if err != nil {
		return nil, err
	}
	return loadpath.Prepare(input)
}

// bearingShares tells what each bearing carries at the vehicle's peak.
func (s *study) bearingShares(build int) ([]BearingShare, error) {
	p, err := s.nominal(build, s.highest)
	if err != nil {
		return nil, err
	}
	peak := s.highest / highestTimes
	var list []BearingShare
	for _, b := range []struct {
		name          string
		radial, axial int
	}{
		{"head, by the teeth", headRadial, headAxial}, {"tail, at the flange", tailRadial, tailAxial},
		{"near side, crown wheel", nearRadial, nearAxial}, {"far side", farRadial, farAxial},
	} {
		list = append(list, BearingShare{
			Bearing:     b.name,
			DriveRadial: p.at(gear.Drive, b.radial, peak), DriveAxial: math.Max(0, p.at(gear.Drive, b.axial, peak)),
			CoastRadial: p.at(gear.Coast, b.radial, peak), CoastAxial: math.Max(0, p.at(gear.Coast, b.axial, peak)),
		})
	}
	return list, nil
}
