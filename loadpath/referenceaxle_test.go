package loadpath

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"axlewright/calc/bearing"
	"axlewright/calc/bolt"
	"axlewright/calc/gear"
	"axlewright/calc/ring"
)

const degree = math.Pi / 180

// The invented axle of testdata, in millimetres and newtons as it is written.
type refAxle struct {
	Mesh struct {
		Z1          int     `json:"z1"`
		Z2          int     `json:"z2"`
		Mean        float64 `json:"R_mean"`
		Offset      float64 `json:"offset"`
		Spiral      float64 `json:"psi_pinion_deg"`
		Drive       float64 `json:"phi_drive_deg"`
		Coast       float64 `json:"phi_coast_deg"`
		Hand        string  `json:"hand"`
		ToothRub    float64 `json:"mu"`
		Face        float64 `json:"face"`
		CutterIsFor float64 `json:"cutter_radius"`
	} `json:"mesh"`
	Layout struct {
		GearToHead float64 `json:"gear_to_head"`
		HeadToTail float64 `json:"head_to_tail"`
		ToMid      float64 `json:"mean_to_ring_mid"`
		ToHub      float64 `json:"mean_to_hub"`
		Near       float64 `json:"z_near"`
		Far        float64 `json:"z_far"`
		Dial       float64 `json:"dial_r"`
	} `json:"layout"`
	Bearings map[string]struct {
		Z             int
		Dwe, Lwe, Dpw float64
		Alpha         float64 `json:"alpha_deg"`
	} `json:"bearings"`
	Preload struct {
		Pinion float64 `json:"pinion_mm"`
		Side   float64 `json:"side_mm"`
	} `json:"preload"`
	Shafts struct {
		Neck  float64    `json:"d_neck"`
		Mid   float64    `json:"d_mid"`
		Near  [2]float64 `json:"car_near"`
		Far   [2]float64 `json:"car_far"`
		Share float64    `json:"carrier_factor"`
	} `json:"shafts"`
	Ring struct {
		Hub     float64 `json:"r_hub"`
		Bore    float64 `json:"r_ring_bore"`
		Flange  float64 `json:"r_flange"`
		Outer   float64 `json:"r_outer"`
		TFlange float64 `json:"t_flange"`
		TRing   float64 `json:"t_ring"`
		Bond    float64 `json:"bond"`
		Smear   float64 `json:"smear_rad"`
		E       float64
	} `json:"ring"`
	Housing struct {
		CapDir [3]float64 `json:"cap_dir"`
		Head   refSeat    `json:"head"`
		Tail   refSeat    `json:"tail"`
		Side   struct {
			In   float64 `json:"k_in"`
			Leg  float64 `json:"k_leg_x"`
			Y    float64 `json:"k_y"`
			Ax   float64 `json:"k_ax"`
			Tilt float64 `json:"ktilt"`
		} `json:"side"`
	} `json:"housing"`
	Cap struct {
		Bore      float64 `json:"r_bore"`
		T         float64 `json:"t"`
		W         float64 `json:"w"`
		E         float64
		LoadPlane float64 `json:"load_plane"`
		Bolt      struct {
			D     float64 `json:"d"`
			Pitch float64 `json:"pitch"`
			Grip  float64 `json:"grip"`
		} `json:"bolt"`
		Overlay *struct {
			T    float64 `json:"t"`
			W    float64 `json:"w"`
			Bond float64 `json:"bond"`
		} `json:"overlay"`
	} `json:"cap"`
	Pegs []refPeg `json:"pegs"`
}

type refSeat struct {
	Ax   float64 `json:"kax"`
	Rad  float64 `json:"krad"`
	Tilt float64 `json:"ktilt"`
}

type refPeg struct {
	Angle  float64 `json:"angle_deg"`
	R      float64 `json:"r"`
	Gap    float64 `json:"gap"`
	PadD   float64 `json:"pad_d"`
	Mu     float64 `json:"mu"`
	ScrewD float64 `json:"screw_d"`
	Pitch  float64 `json:"screw_pitch"`
	Length float64 `json:"screw_len"`
	Thread float64 `json:"k_thread"`
	Wall   float64 `json:"k_wall"`
	Plate  struct {
		A      float64 `json:"a"`
		B      float64 `json:"b"`
		T      float64 `json:"t"`
		N      int     `json:"n"`
		Fixity float64 `json:"edge_fixity"`
	} `json:"plate"`
}

// referenceAxle is one build of the reference axle.
func referenceAxle(t testing.TB, build string) *Axle { return readReference(t, build).axle(t) }

func referenceCap(t testing.TB, build string) CapStiffness { return readReference(t, build).cap(t) }

// readReference reads the base with one build's changes over it.
func readReference(t testing.TB, build string) *refAxle {
	t.Helper()
	text, err := os.ReadFile("testdata/reference-axle.json")
	if err != nil {
		t.Fatal(err)
	}
	var file struct {
		Base   json.RawMessage `json:"base"`
		Builds []struct {
			ID   string          `json:"id"`
			Over json.RawMessage `json:"over"`
		} `json:"builds"`
	}
	if err := json.Unmarshal(text, &file); err != nil {
		t.Fatal(err)
	}
	var base, over map[string]any
	if err := json.Unmarshal(file.Base, &base); err != nil {
		t.Fatal(err)
	}
	found := false
	for _, b := range file.Builds {
		if b.ID == build {
			found = true
			if err := json.Unmarshal(b.Over, &over); err != nil {
				t.Fatal(err)
			}
		}
	}
	if !found {
		t.Fatalf("no build %q", build)
	}
	merge(base, over)
	merged, err := json.Marshal(base)
	if err != nil {
		t.Fatal(err)
	}
	var r refAxle
	if err := json.Unmarshal(merged, &r); err != nil {
		t.Fatal(err)
	}
	return &r
}

func merge(base, over map[string]any) {
	for key, v := range over {
		if sub, ok := v.(map[string]any); ok {
			if b, ok := base[key].(map[string]any); ok {
				merge(b, sub)
				continue
			}
		}
		base[key] = v
	}
}

func (r *refAxle) axle(t testing.TB) *Axle {
	t.Helper()
	must := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	const mm, stiff, tilt = 1e-3, 1e3, 1e-3
	cones, err := gear.HypoidPitchCones(gear.HypoidConesParams{
		PinionTeeth: r.Mesh.Z1, WheelTeeth: r.Mesh.Z2, Offset: r.Mesh.Offset * mm, PinionSpiral: r.Mesh.Spiral * degree,
		WheelMeanRadius: r.Mesh.Mean * mm, Condition: gear.ApexAtCrossing,
	})
	must(err)
	hand := gear.LeftHand
	if r.Mesh.Hand != "LH" {
		hand = gear.RightHand
	}
	mesh, err := NewMesh(cones, hand, r.Mesh.Drive*degree, r.Mesh.Coast*degree)
	must(err)
	rollers := func(name string) bearing.Rollers {
		b := r.Bearings[name]
		return bearing.Rollers{Count: b.Z, Diameter: b.Dwe * mm, Length: b.Lwe * mm, PitchDiameter: b.Dpw * mm, CupAngle: b.Alpha * degree}
	}
	seat := func(s refSeat) Seat { return Seat{Axial: s.Ax * stiff, Radial: s.Rad * stiff, Tilt: s.Tilt * tilt} }
	l := r.Layout
	hub := mesh.MeanPoint.Y + l.ToHub*mm
	side := SideSeat{
		Inward: r.Housing.Side.In * stiff, Leg: r.Housing.Side.Leg * stiff, Across: r.Housing.Side.Y * stiff,
		Axial: r.Housing.Side.Ax * stiff, Tilt: r.Housing.Side.Tilt * tilt, Cap: r.cap(t).Total,
	}
	a := &Axle{
		Mesh: mesh,
		Layout: Layout{
			GearToHead: l.GearToHead * mm, HeadToTail: l.HeadToTail * mm, MeshToPlate: l.ToMid * mm, MeshToHub: l.ToHub * mm,
			Near: l.Near * mm, Far: l.Far * mm,
		},
		Pinion: PinionShaft{
			Neck:    []Section{{Length: l.GearToHead * mm, Outer: r.Shafts.Neck * mm}},
			Shank:   []Section{{Length: l.HeadToTail * mm, Outer: r.Shafts.Mid * mm}},
			Modulus: 206e9, Poisson: 0.3,
		},
		Centre: DiffCentre{
			ToNear:  []Section{{Length: l.Near*mm - hub, Outer: r.Shafts.Near[0] * mm, Inner: r.Shafts.Near[1] * mm, Share: r.Shafts.Share}},
			ToFar:   []Section{{Length: l.Far*mm + hub, Outer: r.Shafts.Far[0] * mm, Inner: r.Shafts.Far[1] * mm, Share: r.Shafts.Share}},
			Modulus: 170e9, Poisson: 0.27,
		},
		Head: rollers("head"), Tail: rollers("tail"), Near: rollers("side"), Far: rollers("side"),
		PinionPreload: r.Preload.Pinion * mm, SidePreload: r.Preload.Side * mm,
		HeadSeat: seat(r.Housing.Head), TailSeat: seat(r.Housing.Tail), NearSeat: side, FarSeat: side,
		CapDirection: Vector{r.Housing.CapDir[0], r.Housing.CapDir[1], r.Housing.CapDir[2]},
	}
	places := PlatePlaces{MeshRadius: r.Mesh.Mean * mm, MeshSpread: r.Ring.Smear, DialRadius: l.Dial * mm}
	if len(r.Pegs) > 0 {
		p := r.Pegs[0]
		places.PegRadius, places.PegAngle, places.PadRadius = p.R*mm, p.Angle*degree, p.PadD/2*mm
		a.Peg = &Peg{
			Gap: p.Gap * mm, Stiffness: p.stiffness(t), Friction: p.Mu, Radius: p.R * mm, Angle: p.Angle * degree,
			BackFaceY: r.Ring.TRing / 2 * mm,
		}
	}
	a.Plate, err = NewPlate(r.wheel(), places)
	must(err)
	return a
}

func (r *refAxle) wheel() ring.CrownWheelParams {
	const mm = 1e-3
	return ring.CrownWheelParams{
		ClampRadius: r.Ring.Hub * mm, Bore: r.Ring.Bore * mm, FlangeRadius: r.Ring.Flange * mm, OuterRadius: r.Ring.Outer * mm,
		FlangeThickness: r.Ring.TFlange * mm, WheelThickness: r.Ring.TRing * mm, Bond: r.Ring.Bond,
		FlangeBehind: (r.Layout.ToHub - r.Layout.ToMid) * mm,
		WheelModulus: r.Ring.E * 1e6, Poisson: 0.3,
	}
}

func (r *refAxle) cap(t testing.TB) CapStiffness {
	t.Helper()
	const mm = 1e-3
	c := r.Cap
	thread, err := bolt.ThreadGeometry(bolt.Metric, c.Bolt.D*mm, c.Bolt.Pitch*mm)
	if err != nil {
		t.Fatal(err)
	}
	arch := ring.CapParams{
		BoreRadius: c.Bore * mm, Layers: []ring.SectionLayer{{Thickness: c.T * mm, Width: c.W * mm, Modulus: c.E * 1e6}},
		Poisson: 0.27, HalfArc: math.Pi / 3, Load: ring.CosineLoad,
	}
	if o := c.Overlay; o != nil {
		arch.Layers = append(arch.Layers, ring.SectionLayer{Thickness: o.T * mm, Width: o.W * mm, Modulus: 206e9})
		arch.Bond = o.Bond
	}
	k, err := CapBuild{
		Arch: arch, CapJoint: CapJoint{
			Bolt: bolt.BoltResilienceParams{
				Sections: []bolt.Section{{Length: c.Bolt.Grip * mm, Diameter: c.Bolt.D * mm}}, Diameter: c.Bolt.D * mm,
				Core: thread.CoreDiameter, Modulus: 206e9, Head: bolt.Hexagon, Seat: bolt.TappedHole, SeatModulus: c.E * 1e6,
			},
			Clamped: bolt.MemberParams{
				Bearing: 19.6 * mm, Hole: 15.5 * mm, Outside: c.W * mm, Clamp: c.Bolt.Grip * mm, Modulus: c.E * 1e6, Seat: bolt.TappedHole,
			},
			LoadPlane: c.LoadPlane,
		}}.Stiffness()
	if err != nil {
		t.Fatal(err)
	}
	return k
}

func (p refPeg) stiffness(t testing.TB) float64 {
	t.Helper()
	const mm = 1e-3
	area, err := bolt.StressArea(p.ScrewD*mm, p.Pitch*mm)
	if err != nil {
		t.Fatal(err)
	}
	pad := math.Sqrt(math.Pi) / 2 * p.PadD * mm
	k, err := PegBuild{
		ScrewArea: area, ScrewLength: p.Length * mm, ScrewModulus: 206e9, Thread: p.Thread * 1e3, Wall: p.Wall * 1e3,
		Plate: ring.PatchPlateParams{
			Length: p.Plate.A * mm, Width: p.Plate.B * mm, Thickness: p.Plate.T * mm, Modulus: 206e9, Poisson: 0.3,
			Left: ring.Welded, Right: ring.Welded, Near: ring.Welded, Far: ring.Welded, Fixity: p.Plate.Fixity,
			PatchX: p.Plate.A / 2 * mm, PatchY: p.Plate.B / 2 * mm, PatchA: pad, PatchB: pad,
		},
		Plates: p.Plate.N,
	}.Stiffness()
	if err != nil {
		t.Fatal(err)
	}
	return k
}
