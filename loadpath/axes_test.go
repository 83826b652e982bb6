package loadpath

import (
	"math"
	"testing"

	"axlewright/calc/gear"
)

func TestRigidMotionOfTheWholeAxleMovesNoTeeth(t *testing.T) {
	a := referenceAxle(t, "A")
	motion := Motion{Vector{1e-4, 2e-4, -3e-4}, Vector{1e-3, -2e-3, 5e-4}}
	m := a.meshMovement(&motion, &motion)
	if x := a.axisMovement(&motion, &motion); m != (MeshMovement{}) || x != (AxisMovement{}) {
		t.Errorf("%+v, %+v", m, x)
	}
	// A wheel that leans its axis towards −x opens the angle between the axes.
	m = a.meshMovement(&Motion{}, &Motion{Turn: Vector{Z: 1e-3}})
	if m.ShaftAngle != 1e-3 {
		t.Errorf("%+v", m)
	}
}

// A member that turns about its own axis leaves the axes where they are; one
// that shifts moves them by just that.
func TestAxesMoveAsTheMembersDo(t *testing.T) {
	a := referenceAxle(t, "A")
	about := func(turn, through, shift Vector) *Motion {
		return &Motion{turn.cross(a.Mesh.MeanPoint.minus(through)).plus(shift), turn}
	}
	ownPinion := about(Vector{X: 1e-3}, Vector{Z: a.Mesh.PinionAxisZ}, Vector{1e-4, 2e-4, -3e-4})
	ownWheel := about(Vector{Y: 1e-3}, Vector{}, Vector{})
	got := a.axisMovement(ownPinion, ownWheel)
	want := AxisMovement{Wheel: -2e-4, Pinion: 1e-4, Offset: 3e-4} // the pinion's axis lies at −z
	if math.Abs(got.Wheel-want.Wheel) > 1e-15 || math.Abs(got.Pinion-want.Pinion) > 1e-15 || math.Abs(got.Offset-want.Offset) > 1e-15 || got.Angle != 0 {
		t.Errorf("got %+v, want %+v", got, want)
	}
	got = a.axisMovement(&Motion{}, about(Vector{Z: 1e-3}, Vector{}, Vector{}))
	if math.Abs(got.Angle-1e-3) > 1e-15 || math.Abs(got.Wheel)+math.Abs(got.Pinion)+math.Abs(got.Offset) > 1e-15 {
		t.Errorf("a wheel leaning about the crossing point: %+v", got)
	}
}

func TestMeshFollowsTheGears(t *testing.T) {
	cones, err := gear.BevelPitchCones(10, 41, 35*degree, 0.093)
	if err != nil {
		t.Fatal(err)
	}
	m, err := NewMesh(cones, gear.LeftHand, 20*degree, 20*degree)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range []Vector{m.Drive, m.Coast} {
		if torque := math.Abs(m.MeanPoint.cross(f).Y); math.Abs(torque-1) > 1e-12 {
			t.Errorf("force per torque turns the wheel with %g", torque)
		}
	}
	if !(m.Coast.Y > 2*m.Drive.Y && m.Drive.Y > 0) {
		t.Errorf("thrust on the wheel: drive %g, coast %g per metre", m.Drive.Y, m.Coast.Y)
	}
	if !(m.Drive.X < 0 && m.Coast.X > 0) {
		t.Errorf("the drive flank pushes the pinion out of the nose, the coast flank draws it in: %g, %g", -m.Drive.X, -m.Coast.X)
	}
}
