package examples_test

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"sort"
	"strconv"
	"strings"
	"testing"

	"axlewright/axle"
	"axlewright/calc/gear"
)

// leaves flattens JSON to "cap.bolt.d": value.
func leaves(prefix string, v any, into map[string]any) {
	switch v := v.(type) {
	case map[string]any:
		for key, inner := range v {
			leaves(prefix+"."+key, inner, into)
		}
	case []any:
		for i, inner := range v {
			leaves(prefix+"["+strconv.Itoa(i)+"]", inner, into)
		}
	default:
		into[strings.TrimPrefix(prefix, ".")] = v
	}
}

func merge(base, over map[string]any) map[string]any {
	merged := map[string]any{}
	for key, v := range base {
		merged[key] = v
	}
	for key, v := range over {
		sub, isMap := v.(map[string]any)
		was, wasMap := merged[key].(map[string]any)
		if isMap && wasMap {
			v = merge(was, sub)
		}
		merged[key] = v
	}
	return merged
}

// leftOut are figures of the source that the catalogue form has no place for, and why.
var leftOut = map[string]string{
	"name":               "a name",
	"mesh.side":          "said by the mounting: drive flank forward",
	"mesh.sense":         "said by the mounting: drive flank forward",
	"mesh.mu":            "zero: tooth friction is not in the forces",
	"housing.cap_dir[1]": "zero", "housing.cap_dir[2]": "zero",
	"tooth.Kv": "one", "tooth.KHb_in_J": "one",
	"tooth.c_gamma":           "the tooth's own stiffness is no part of the load path",
	"tooth.crown":             "model of the pattern, which rigid movements do not tell",
	"tooth.bias":              "model of the pattern",
	"tooth.influence.drive.P": "model of the pattern", "tooth.influence.drive.G": "model of the pattern", "tooth.influence.drive.E": "model of the pattern",
	"tooth.influence.coast.P": "model of the pattern", "tooth.influence.coast.G": "model of the pattern", "tooth.influence.coast.E": "model of the pattern",
	"tooth.edge_gain": "model of the pattern", "tooth.edge_from": "model of the pattern",
	"limits.pattern_off":    "model of the pattern",
	"vehicle.grade_rev_deg": "the reverse block of the duty says how hard it backs",
	"vehicle.crawl_rpm":     "the blocks of the duty say how fast it turns",
}

// In the source: millimetres, newtons, megapascals, degrees.
const (
	mm      = 1e-3
	mpa     = 1e6
	perMM   = 1e3  // N/mm
	tilting = 1e-3 // N·mm/rad
	degree  = math.Pi / 180
)

// figures lists what a build of ours has for each figure of the source, in the
// source's units.
func figures(e *axle.Enquiry, c *axle.Catalogue, a *axle.Assembly) map[string]any {
	k, g := &a.Casting, &a.Gears
	f := map[string]any{}
	hand := map[gear.Hand]string{gear.LeftHand: "LH", gear.RightHand: "RH"}
	put := func(prefix string, unit float64, pairs ...any) {
		for i := 0; i < len(pairs); i += 2 {
			f[prefix+pairs[i].(string)] = pairs[i+1].(float64) / unit
		}
	}
	f["mesh.hand"] = hand[g.Hand]
	put("mesh.", 1, "z1", float64(g.PinionTeeth), "z2", float64(g.WheelTeeth))
	put("mesh.", mm, "R_mean", g.MeanRadius.Value, "face", g.Face.Value, "offset", g.Offset.Value, "cutter_radius", g.Cutter.Value)
	put("mesh.", degree, "psi_pinion_deg", g.PinionSpiral.Value, "phi_drive_deg", g.DriveAngle.Value, "phi_coast_deg", g.CoastAngle.Value)
	l := &k.Layout
	put("layout.", mm, "gear_to_head", l.GearToHead.Value, "head_to_tail", l.HeadToTail.Value, "mean_to_ring_mid", l.MeshToPlate.Value,
		"mean_to_hub", l.MeshToHub.Value, "z_near", l.Near.Value, "z_far", l.Far.Value, "dial_r", l.DialRadius.Value)
	for name, b := range map[string]*axle.Bearing{"head": &a.Head, "tail": &a.Tail, "side": &a.Side} {
		put("bearings."+name+".", 1, "Z", float64(b.Rollers))
		put("bearings."+name+".", mm, "Dwe", b.RollerDiameter.Value, "Lwe", b.RollerLength.Value, "Dpw", b.PitchDiameter.Value)
		put("bearings."+name+".", degree, "alpha_deg", b.CupAngle.Value)
	}
	put("preload.", mm, "pinion_mm", k.Preload.Pinion.Value, "side_mm", k.Preload.Side.Value)
	d := &a.Centre
	put("shafts.", mm, "d_neck", g.PinionNeck.Value, "d_neck_min", g.PinionNeckMin.Value, "d_mid", g.PinionShank.Value, "d_spline", g.PinionSpline.Value,
		"car_near[0]", d.NearOuter.Value, "car_near[1]", d.NearInner.Value, "car_far[0]", d.FarOuter.Value, "car_far[1]", d.FarInner.Value)
	put("shafts.", mpa, "Re", g.PinionYield.Value)
	put("shafts.", 1, "carrier_factor", d.BendingShare.Value)
	p := &g.Plate
	put("ring.", mm, "r_hub", d.HubRadius.Value, "r_ring_bore", p.Bore.Value, "r_flange", d.FlangeRadius.Value, "r_outer", p.Outer.Value,
		"t_flange", d.FlangeThickness.Value, "t_ring", p.Thickness.Value)
	put("ring.", 1, "bond", p.Bond.Value, "smear_rad", p.Spread.Value)
	put("ring.", mpa, "E", p.Modulus.Value)
	f["housing.cap_dir[0]"] = map[axle.Facing]float64{axle.AwayFromNose: -1, axle.TowardsNose: 1}[k.Cap.Facing]
	for name, s := range map[string]*axle.Seat{"head": &k.Seats.Head, "tail": &k.Seats.Tail} {
		put("housing."+name+".", perMM, "kax", s.Axial.Value, "krad", s.Radial.Value)
		put("housing."+name+".", tilting, "ktilt", s.Tilt.Value)
	}
	s := &k.Seats.Side
	put("housing.side.", perMM, "k_in", s.Inward.Value, "k_leg_x", s.Leg.Value, "k_y", s.Across.Value, "k_ax", s.Axial.Value)
	put("housing.side.", tilting, "ktilt", s.Tilt.Value)
	cap := &k.Cap
	put("cap.", mm, "r_bore", cap.BoreRadius.Value, "t", cap.Thickness.Value, "w", cap.Width.Value)
	put("cap.", mpa, "E", cap.Modulus.Value, "Re", cap.Yield.Value)
	put("cap.", 1, "mu", cap.Friction.Value, "prying", cap.Prying.Value, "load_plane", cap.LoadPlane.Value, "thread_share", cap.ThreadShare.Value, "creep", cap.CreepShare.Value)
	bolts := func(prefix string, b *axle.Bolts) {
		size, err := axle.ThreadSize(b.Thread)
		if err != nil {
			panic(err)
		}
		put(prefix, mm, "d", size.Diameter, "pitch", size.Pitch, "grip", b.Grip.Value)
		put(prefix, 1, "torque_Nm", b.Torque.Value, "K", b.Nut.Value)
		f[prefix+"grade"] = b.Grade
	}
	bolts("cap.bolt.", &k.CapBolts)
	bolts("ring_bolt.", &g.WheelBolts)
	put("ring_bolt.", 1, "n", float64(g.WheelBolts.Count), "mu", g.WheelBolts.Friction.Value)
	put("ring_bolt.", mm, "r", g.WheelBolts.Radius.Value)
	if o := a.Overlay; o != nil {
		put("cap.overlay.", mm, "t", o.Thickness.Value, "w", o.Width.Value)
		put("cap.overlay.", 1, "bond", o.Bond.Value)
	}
	if r := a.RingDowel; r != nil {
		put("cap.ring_dowel.", mm, "do", r.Outer.Value, "di", r.Inner.Value)
		put("cap.ring_dowel.", mpa, "Re", r.Yield.Value)
	}
	put("lock.", mm, "pitch", k.Adjuster.Pitch.Value, "r_face", k.Adjuster.FaceRadius.Value, "r_lock", k.Lock.Radius.Value)
	put("lock.", 1, "friction_kept", k.Adjuster.FrictionKept.Value, "mu_face", k.Adjuster.FaceFriction.Value, "F_shear", k.Lock.Shear.Value)
	put("tooth.", mm, "d_e2", g.OutsideDiameter.Value)
	put("tooth.", 1, "J", g.GeometryFactor.Value)
	put("tooth.", mpa, "sigma_overload", g.RootStrength.Value, "sigma_lowcycle", g.RootLowCycle.Value)
	put("limits.", 1, "s0_min", k.Limits.StaticMin.Value)
	put("halfshaft.", mm, "d", a.HalfShafts.Diameter.Value)
	put("halfshaft.", mpa, "tau_y", a.HalfShafts.Yield.Value)
	put("halfshaft.", 1, "share", d.Bias.Value/(1+d.Bias.Value))
	v := &e.Vehicle
	put("vehicle.", 1, "engine_Nm", v.Engine.Value, "gear1", v.FirstGear.Value, "low", v.LowRange.Value, "eta", v.Efficiency.Value,
		"shock", v.Shock.Value, "share", v.Share.Value, "mass", v.Laden.Value, "wheelbase", v.Wheelbase.Value, "h_cg", v.CentreOfMass.Value,
		"front_to_cg", v.AxleLoad.Value/v.Laden.Value*v.Wheelbase.Value, "mu", v.Friction.Value, "r_tyre", v.Tyre.LoadedRadius.Value)
	put("vehicle.", degree, "grade_deg", v.Grade.Value)
	f["vehicle.axle"] = string(e.Mounting.Position)
	duty, _ := c.Duty(e.Duty)
	for i, b := range duty.Blocks {
		prefix := fmt.Sprintf("duty[%d].", i)
		f[prefix+"name"], f[prefix+"flank"] = b.Name, string(e.Mounting.FlankOf(b.Going))
		put(prefix, 1, "km_share", b.Share.Value, "T_Nm", b.AxleTorque.Value)
		put(prefix, 1/3.6, "kmh", b.Speed.Value)
	}
	if a.Peg != nil {
		pegFigures(put, k, a.Peg)
	}
	return f
}

func pegFigures(put func(string, float64, ...any), k *axle.Casting, p *axle.Peg) {
	put("pegs[0].", degree, "angle_deg", p.Angle.Value)
	put("pegs[0].", mm, "r", p.Radius.Value, "gap", p.Gap.Value, "pad_d", p.PadDiameter.Value, "screw_d", p.Screw.Value,
		"screw_pitch", p.ScrewPitch.Value, "screw_len", p.ScrewLength.Value, "weld_throat", p.Plate.Throat.Value)
	put("pegs[0].", mpa, "pad_p_allow", p.PadBrief.Value, "screw_Re", p.ScrewYield.Value, "PV_allow", p.PadRubbing.Value,
		"p_cont", p.PadSteady.Value, "weld_allow", p.Plate.WeldLimit.Value)
	put("pegs[0].", perMM, "k_thread", p.ThreadStiff.Value, "k_wall", k.PegWall.Value)
	put("pegs[0].", 1, "mu", p.Friction.Value)
	put("pegs[0].plate.", mm, "a", p.Plate.Long.Value, "b", p.Plate.Short.Value, "t", p.Plate.Thickness.Value)
	put("pegs[0].plate.", 1, "n", float64(p.Plate.Count), "edge_fixity", p.Plate.Fixity.Value, "weld_frac", p.Plate.Welded.Value)
	put("pegs[0].plate.", mpa, "Re", p.Plate.Yield.Value)
}

// Every figure of the source is in the catalogue form, or is named as left out;
// and what our build has beyond the source is nothing that the source knows.
func TestTheReferenceAxleIsCarriedOver(t *testing.T) {
	text, err := os.ReadFile("reference/source.json")
	if err != nil {
		t.Fatal(err)
	}
	var source struct {
		Base   map[string]any
		Builds []struct {
			ID   string
			Over map[string]any
		}
	}
	if err := json.Unmarshal(text, &source); err != nil {
		t.Fatal(err)
	}
	if len(source.Builds) != 5 {
		t.Fatalf("%d builds", len(source.Builds))
	}
	for _, build := range source.Builds {
		e, c := load(t, "reference/build-"+strings.ToLower(build.ID)+".yaml")
		builds, err := c.BuildsFor(&e)
		if err != nil {
			t.Fatal(err)
		}
		ours := figures(&e, &c, &builds[0])
		theirs := map[string]any{}
		leaves("", merge(source.Base, build.Over), theirs)
		if len(theirs) < 150 {
			t.Fatalf("only %d figures", len(theirs))
		}
		for _, key := range sortedKeys(theirs) {
			want := theirs[key]
			got, there := ours[key]
			why, out := leftOut[key]
			switch {
			case out && there:
				t.Errorf("%s is said to be left out (%s), but we have it", key, why)
			case out:
				if x, number := want.(float64); number && (why == "zero" && x != 0 || why == "one" && x != 1) {
					t.Errorf("%s is %g, not %s", key, x, why)
				}
			case !there:
				t.Errorf("build %s: %s = %v is lost", build.ID, key, want)
			case !alike(got, want):
				t.Errorf("build %s: %s is %v, the source has %v", build.ID, key, got, want)
			}
		}
		for key := range ours {
			if _, there := theirs[key]; !there {
				t.Errorf("build %s: we have %s, the source does not", build.ID, key)
			}
		}
	}
}

func alike(got, want any) bool {
	g, number := got.(float64)
	w, _ := want.(float64)
	if number {
		return math.Abs(g-w) <= 1e-12*math.Max(math.Abs(w), 1)
	}
	return got == want
}

func sortedKeys(m map[string]any) []string {
	var keys []string
	for key := range m {
		keys = append(keys, key)
	}
	sort.Strings(keys)
	return keys
}
