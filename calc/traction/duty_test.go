package traction

import (
	"errors"
	"math"
	"testing"

	"axlewright/calc/check"
)

func TestEveryUseHasADutyThatHolds(t *testing.T) {
	if len(DutyNames) != len(duties) {
		t.Errorf("%d names, %d duties", len(DutyNames), len(duties))
	}
	for _, name := range DutyNames {
		d, err := name.Duty()
		if err != nil {
			t.Fatal(err)
		}
		if err := d.Check(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if d.TorqueSpread <= 1 || d.ShareSpread <= 1 || d.Basis != assumption {
			t.Errorf("%s: an assumption needs its spread and must say what it is: %+v", name, d)
		}
		going := map[Going]bool{}
		for _, b := range d.Blocks {
			going[b.Going] = true
		}
		if !going[Forward] || !going[Overrun] || !going[Reverse] {
			t.Errorf("%s: every use drives forward, overruns and backs", name)
		}
	}
}

// No block may ask for more power than vehicles of this kind have: an
// expedition vehicle's grip limit, 6,700 N·m at 0.405 m, both axles alike.
func TestDutiesAskForNoImpossiblePower(t *testing.T) {
	const torque, radius, power = 6700, 0.405, 200e3
	for _, name := range DutyNames {
		d, _ := name.Duty()
		for _, b := range d.Blocks {
			if got := b.Torque * torque * b.Speed / radius; got > power {
				t.Errorf("%s, %s: one axle takes %g kW", name, b.Name, got/1e3)
			}
		}
	}
}

// The uses are listed from the mildest: the torque that wears most, by the
// slope of a tooth root, rises from road to rock.
func TestDutiesRiseInSeverity(t *testing.T) {
	const slope = 8.74
	last := 0.0
	for _, name := range DutyNames {
		d, _ := name.Duty()
		sum := 0.0
		for i, share := range d.DistanceShares() {
			sum += share * math.Pow(d.Blocks[i].Torque, slope)
		}
		equivalent := math.Pow(sum, 1/slope)
		if equivalent <= last || equivalent >= 1 {
			t.Errorf("%s: equivalent torque %.3f after %.3f", name, equivalent, last)
		}
		last = equivalent
	}
}

func TestDistanceSharesAddUp(t *testing.T) {
	for _, name := range DutyNames {
		d, _ := name.Duty()
		sum, distance := 0.0, 0.0
		for i, share := range d.DistanceShares() {
			sum += share
			distance += share / d.Blocks[i].Speed // hours for each unit of distance
		}
		if math.Abs(sum-1) > 1e-12 || math.Abs(1/distance-d.MeanSpeed()) > 1e-9 {
			t.Errorf("%s: shares add up to %g; mean speed %g, by shares %g", name, sum, d.MeanSpeed(), 1/distance)
		}
	}
}

func TestDutyFaultsAreNamed(t *testing.T) {
	var r *check.RangeError
	if _, err := DutyName("parade").Duty(); !errors.As(err, &r) || r.Param != "name" {
		t.Errorf("unknown use: got %v", err)
	}
	d, _ := Farm.Duty()
	d.Blocks[0].Share += 0.1
	if err := d.Check(); !errors.As(err, &r) || r.Param != "sum of Share" {
		t.Errorf("shares past 1: got %v", err)
	}
	again, _ := Farm.Duty()
	if err := again.Check(); err != nil {
		t.Errorf("a changed copy spoiled the table: %v", err)
	}
	d, _ = Farm.Duty()
	d.Blocks[1].Going = "sideways"
	if err := d.Check(); !errors.As(err, &r) || r.Param != "Blocks[1].Going" {
		t.Errorf("unknown way of going: got %v", err)
	}
}
