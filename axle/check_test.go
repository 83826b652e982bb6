package axle

import (
	"strings"
	"testing"
)

// Each case breaks one thing of the example catalogue. It must be found in a
// sentence, at its field and its line, and be the only thing found unless more
// says so.
func TestBrokenCatalogues(t *testing.T) {
	const tarnhow, upgrades, duties = "tarnhow.yaml", "upgrades.yaml", "duties.yaml"
	for _, c := range []struct {
		file, old, with string
		field, says     string
		off             int // lines from the change to the place
		more            bool
	}{
		{tarnhow, "wanted_chance: 0.95", "wanted_chance: 95", "wanted_chance", "95 is not a chance", 0, false},
		{tarnhow, "kind: length, percent: 1}", "kind: lenght, percent: 1}", "default_doubts[1].kind", `"lenght" is no kind of figure; expected "length"`, 0, false},
		{tarnhow, "kind: angle, percent: 2}", "kind: length, percent: 2}", "default_doubts[2].kind", "tarnhow.yaml:25; leave one out", 0, false},
		{tarnhow, "kind: mass, percent: 5}", "kind: mass, percent: 0}", "default_doubts[5].percent", "0 is no doubt in percent", 0, false},

		// Metals, bolts, words.
		{tarnhow, "metal: EN-GJS-400-15", "metal: EN-GJS-400", "castings[T20].metal", `is "EN-GJS-400-18" or "EN-GJS-400-15" meant?`, 0, false},
		{tarnhow, "metal: EN-GJS-400-15", "metal: unobtainium", "castings[T20].metal", "expected a grade as its standard writes it", 0, false},
		{tarnhow, "thread: M12x1.75", "thread: M12", "castings[T20].cap_bolts.thread", `"M12" is no thread known here`, 0, false},
		{tarnhow, "thread: M12x1.75", "thread: M12x4", "castings[T20].cap_bolts.thread", "is no thread of an axle", 0, false},
		{tarnhow, "grade: 8.8", "grade: 7.7", "castings[T20].cap_bolts.grade", `"7.7" is no grade of a M12x1.75 bolt`, 0, false},
		{tarnhow, "torque: 84 N·m, maker", "torque: 84 lbf·ft, maker", "", "", 0, false}, // high, but it may be so
		{tarnhow, "torque: 84 N·m, maker", "torque: 840 N·m, maker", "castings[T20].cap_bolts.torque", "would tear a M12x1.75 bolt of grade 8.8", 0, false},
		{tarnhow, "count: 2 ", "count: 0 ", "castings[T20].cap_bolts.count", "needs one bolt or more", 0, false},
		{tarnhow, "notches: 16", "notches: 0", "castings[T20].adjuster.notches", "one notch or more", 0, false},
		{tarnhow, "facing: away from the nose", "facing: up", "castings[T20].cap.facing", `expected "away from the nose" or "towards the nose"`, 0, false},
		{tarnhow, "locking: open", "locking: opened", "diff_centres[20-2P].locking", `expected "open", "limited slip" or "locked"`, 0, false},
		{tarnhow, "locking: limited slip, bias: 2.5 ± 25 %", "locking: limited slip", "diff_centres[24-LS]", "needs its bias", 0, false},
		{tarnhow, "locking: limited slip, bias: 2.5 ± 25 %", "locking: limited slip, bias: 0.4", "diff_centres[24-LS].bias", `"0.4" is not 1 or more`, 0, false},
		{tarnhow, "locking: open}", "locking: open, bias: 3}", "diff_centres[20-2P].bias", "only a limited-slip centre has a bias", 0, false},
		{tarnhow, "pins: 2,", "pins: 1,", "diff_centres[20-2P].pins", "2, 3 or 4 ends, not 1", 0, false},
		{tarnhow, "near_inner: 41 mm", "near_inner: 81 mm", "diff_centres[20-2P].near_inner", "is not smaller than the outer one", 0, false},

		// Teeth that cannot mesh.
		{tarnhow, "pinion_teeth: 13\n    wheel_teeth: 46", "pinion_teeth: 46\n    wheel_teeth: 13", "gear_sets[20-3.54].wheel_teeth", "teeth that cannot mesh: 13 on the crown wheel and 46 on the pinion; are the two the wrong way round?", 1, false},
		{tarnhow, "pinion_teeth: 13", "pinion_teeth: 4", "gear_sets[20-3.54].pinion_teeth", "a pinion of 4 teeth is not cut", 0, false},
		{tarnhow, "wheel_teeth: 46", "wheel_teeth: 460", "gear_sets[20-3.54].wheel_teeth", "a ratio of 460 to 13 is not cut", 0, false},
		{tarnhow, "offset: 25 mm, measured", "offset: 105 mm, measured", "gear_sets[24-3.54]", "teeth that cannot mesh: no pair of cones has this offset", -5, false},
		{tarnhow, "spiral: 35 deg, trade", "spiral: 75 deg, trade", "gear_sets[20-3.54]", "teeth that cannot mesh", -6, false},
		{tarnhow, "face: 32 mm", "face: 52 mm", "gear_sets[20-3.54].face", "is over a third of the wheel's radius", 0, false},
		{tarnhow, "hand: left ", "hand: sinister ", "gear_sets[20-3.54].hand", `expected "left" or "right"`, 0, false},
		{tarnhow, "{bore: 62 mm, outer: 102 mm", "{bore: 102 mm, outer: 62 mm", "gear_sets[20-3.54].plate.bore", "both are radii", 0, true},
		{tarnhow, "radius: 72 mm, settling", "radius: 172 mm, settling", "gear_sets[20-3.54].wheel_bolts.radius", "is not within the crown wheel", 0, false},
		{tarnhow, "radius: 72 mm, settling", "settling", "gear_sets[20-3.54].wheel_bolts", "lacks radius, of the bolt circle", 0, false},
		{tarnhow, "pinion_neck_min: 35 mm, measured  ", "pinion_neck_min: 45 mm, measured  ", "gear_sets[20-3.54].pinion_neck_min", "is more than its diameter", 0, true},

		// Bearings that cannot be, or fit nothing.
		{tarnhow, `roller_diameter: "9.8 mm, measured", roller_length: "16`, `roller_diameter: "19.8 mm, measured", roller_length: "16`, "bearings[H35x72].roller_diameter", "rollers fit round the pitch circle; measure again", 0, false},
		{tarnhow, `rollers: 16`, `rollers: 2`, "bearings[H35x72].rollers", "2 cannot be: expected >= 3", 0, false},
		{tarnhow, `name: H35x72, bore: "35 mm`, `name: H35x72, bore: "53 mm`, "bearings[H35x72].bore", "smaller than the cone raceway", 0, true},
		{tarnhow, "head_bearing: H35x72", "head_bearing: H35x73", "castings[T20].head_bearing", `the catalogue has no bearing "H35x73"; is "H35x72" meant?`, 0, false},
		{tarnhow, "head_bearing: H35x72", "head_bearing: H45x95", "castings[T20].head_bearing", "finds no shoulder on the pinion of 20-3.54", 0, true},
		{tarnhow, "head_bearing: H35x72", "head_bearing: T30x62", "castings[T20].head_bearing", "does not go on the pinion of 20-3.54", 0, true},
		{tarnhow, "tail_bearing: T30x62", "tail_bearing: T38x80", "castings[T20].tail_bearing", "does not go over the spline (27 mm, measured) on to the shank", 0, true},
		{tarnhow, "bore_radius: 40 mm, exact", "bore_radius: 41 mm, exact", "castings[T20].side_bearing", "S45x80 has an outside diameter of 80 mm, exact and does not fit the cap's bore of radius 41 mm, exact", 36, false},
		{tarnhow, "side_bearing: S45x80", "side_bearing: S57x95", "castings[T20].side_bearing", "does not fit the cap's bore", 0, false},
		{tarnhow, "diff_centre: 20-2P", "diff_centre: 31-4P", "", "", 0, false}, // its flange takes the smaller wheel too
		{tarnhow, "diff_centre: 31-4P", "diff_centre: 20-2P", "", "", 0, false},
		{tarnhow, "hub_radius: 45 mm, flange_radius: 82 mm", "hub_radius: 65 mm, flange_radius: 82 mm", "castings[T20].gear_sets", "does not sit on the flange of 20-2P", 0, true},
		{tarnhow, "gear_sets: [20-3.54, 20-4.10, 20-4.70, 20-5.38]", "gear_sets: []", "castings[T20].gear_sets", "names no gear set", 0, false},
		{tarnhow, "gear_sets: [20-3.54, 20-4.10,", "gear_sets: [20-3.55, 20-4.10,", "castings[T20].gear_sets", `is "20-3.54" meant?`, 0, false},
		{tarnhow, "half_shafts: 20-standard", "half_shafts: none", "castings[T20].half_shafts", "the catalogue has no pair of half-shafts", 0, false},
		{tarnhow, "- name: T20K", "- name: T20", "castings[T20]", "stands twice, first at", 0, true},

		// Figures that cannot be.
		{tarnhow, "thickness: 15.5 mm, measured", "thickness: 15.5 kg, measured", "castings[T20].cap.thickness", "expected a length such as 12 mm, got a mass", 0, false},
		{tarnhow, "thickness: 15.5 mm, measured", "thickness: -15.5 mm, measured", "castings[T20].cap.thickness", "is not above zero", 0, false},
		{tarnhow, "thickness: 15.5 mm, measured", "thickness: 15.5 mm ± 16 mm, measured", "castings[T20].cap.thickness", "reaches to zero or below", 0, false},
		{tarnhow, "thickness: 15.5 mm, measured", "thickness: 15.5 mm ± -1 mm, measured", "castings[T20].cap.thickness", "a spread is not negative", 0, false},
		{tarnhow, "thickness: 15.5 mm, measured", "thick: 15.5 mm, measured", "castings[T20].cap", "lacks thickness", -1, true},
		{tarnhow, "thread_share: 0.3..0.6 ", "thread_share: 0.3..1.6 ", "castings[T20].cap.thread_share", "the doubt of \"0.3..1.6\" reaches beyond what it can be: within 0 and 1", 0, false},
		{tarnhow, "pinion: 0.03 mm ± 0.015 mm", "pinion: -0.03 mm ± 0.015 mm", "", "", 0, false}, // end play

		// Upgrades.
		{upgrades, "fits: [T20]", "fits: []", "upgrades[cap-bolts-20].fits", "fits no casting; name at least one", 0, false},
		{upgrades, "fits: [T20]", "fits: [T21]", "upgrades[cap-bolts-20].fits", `the catalogue has no casting "T21"; is "T20" meant?`, 0, false},
		{upgrades, "needs: [cap-bolts-20]", "needs: [cap-bolt-20]", "upgrades[cap-dowels-20].needs", `is "cap-bolts-20" meant?`, 0, false},
		{upgrades, "needs: [cap-bolts-20]", "needs: [cap-overlay-20]", "upgrades[cap-dowels-20].needs", "needs itself by way of \"cap-overlay-20\"", 0, true},
		{upgrades, "needs: [cap-bolts-20]", "needs: [cap-dowels-20]", "upgrades[cap-dowels-20].needs", "needs itself", 0, false},
		{upgrades, "needs: [cap-bolts-20]", "needs: [cap-bolts-20]\n    excludes: [cap-bolts-20]", "upgrades[cap-dowels-20].needs", "needs and excludes", 0, false},
		{upgrades, "needs: [cap-bolts-20]", "excludes: [cap-dowels-20]", "upgrades[cap-dowels-20].excludes", "excludes itself", 0, false},
		{upgrades, "lock: {name: M5 12.9 through-bolt, radius: 43 mm, shear: 13 kN}", "welds: false", "upgrades[lock-20]", "changes nothing", -3, false},
		{upgrades, "thread: M12x1.75", "thread: M12x1.5", "upgrades[cap-bolts-20].cap_bolts.thread", "does not screw into casting T20, which is tapped M12x1.75", 0, false},
		{upgrades, "thread: M12x1.75", "thread: M10x1.5", "upgrades[cap-bolts-20].cap_bolts.thread", "falls through the holes of casting T20", 0, false},
		{upgrades, "count: 2", "count: 4", "upgrades[cap-bolts-20].cap_bolts.count", "casting T20 has 2 bolts to a cap, not 4", 0, false},
		{upgrades, "outer: 18 mm, inner: 12.5 mm", "outer: 18 mm, inner: 11.5 mm", "upgrades[cap-dowels-20].ring_dowel.inner", "does not let the M12x1.75 cap bolts of casting T20 through", 0, false},
		{upgrades, "outer: 18 mm, inner: 12.5 mm", "outer: 12 mm, inner: 12.5 mm", "upgrades[cap-dowels-20].ring_dowel.inner", "is not smaller than the dowel", 0, false},
		{upgrades, "head_bearing: H45x92", "head_bearing: H45x95", "upgrades[head-bearing-24].head_wall", "is more than boring casting T24 leaves", 2, false},
		{upgrades, "fits: [T24, T24S]\n    head_bearing: H45x92", "fits: [T20]\n    head_bearing: H45x92", "upgrades[head-bearing-24].head_bearing", "boring casting T20 for H45x92 would leave no iron: the wall is 6 mm, measured and the radius grows by 10.00 mm", 1, false},
		{upgrades, "head_bearing: H45x92", "head_bearing: H35x72", "upgrades[head-bearing-24].head_bearing", "does not go on the pinion", 0, true},
		{upgrades, "pinion_neck: {diameter: 53 mm, least: 45 mm}", "pinion_neck: {diameter: 43 mm, least: 45 mm}", "upgrades[head-bearing-24].pinion_neck.least", "is more than the diameter", 0, false},
		{upgrades, "radius: 93 mm", "radius: 193 mm", "upgrades[peg-20].peg.radius", "misses the back of the crown wheel", 0, true},
		{upgrades, "screw_pitch: 1.5 mm", "screw_pitch: 2 mm", "upgrades[peg-20].peg.screw_pitch", "is not the pitch of M16x1.5", 0, false},
		{upgrades, "screw_diameter: 16 mm", "screw_diameter: 18 mm", "upgrades[peg-20].peg.screw_diameter", "is not the diameter of M16x1.5", 0, false},
		{upgrades, "long: 88 mm, short: 60 mm", "long: 60 mm, short: 88 mm", "upgrades[peg-20].peg.plate.short", "is longer than the long one", 0, false},
		{upgrades, "diff_centre: 20-4P", "diff_centre: 20-5P", "upgrades[four-pin-20].diff_centre", "no diff centre", 0, false},
		{upgrades, "half_shafts: 20-strong", "half_shafts: strong", "upgrades[shafts-20].half_shafts", "no pair of half-shafts", 0, false},
		{upgrades, "minutes: 25", "minutes: -25", "upgrades[cap-bolts-20].minutes", "zero or more", 0, false},
		{tarnhow, "metal: EN-GJS-400-15", "metal: EN-GJL-250", "upgrades[cap-overlay-20].fits", "has a structural weld, and casting T20 is grey iron", 0, true},

		// Duties and measurements.
		{duties, "share: 0.12 ", "share: 0.22 ", "duties[road].blocks", "the shares of the blocks add up to 1.1; expected 1", -1, false},
		{duties, "going: overrun", "going: backwards", "duties[road].blocks[engine braking].going", "expected \"forward\", \"overrun\" or \"reverse\"", 0, false},
		{duties, "torque: 0.08 ± 40 %, ", "", "duties[road].blocks[cruising]", "states its torque by one of torque", 0, false},
		{duties, "torque: 0.08 ± 40 %", "torque: 0.08 ± 40 %, axle_torque: 90 N·m", "duties[road].blocks[cruising]", "states its torque by one of torque", 0, false},
		{duties, "speed: 79.2 km/h", "speed: 0 km/h", "duties[road].blocks[cruising].speed", "at some speed, not at none", 0, false},
		{duties, "speed: 79.2 km/h", "speed: 79.2 kmh/h", "duties[road].blocks[cruising].speed", "the unit", 0, false},
		{duties, "    blocks:", "    record: log.csv\n    blocks:", "duties[road].record", "has blocks or a record", 0, false},
		{upgrades, "figures: [Vehicle.AxleLoad]", "figures: [Vehicle.AxelLoad]", "measurements[1].figures", "is Vehicle.AxleLoad meant?", 0, false},
		{upgrades, "figures: [Vehicle.AxleLoad]", "figures: []", "measurements[1].figures", "names no figure", 0, false},
		{upgrades, "leaves: 0.2\n", "leaves: 1\n", "measurements[1].leaves", "leaves 1 of the doubt", 0, false},
	} {
		t.Run(strings.TrimSpace(c.with), func(t *testing.T) {
			found, line := broken(t, c.file, c.old, c.with)
			if c.says == "" {
				if len(found) > 0 {
					t.Errorf("this may be so, but found\n%v", found)
				}
				return
			}
			at := line + c.off
			if c.more && c.off == 0 {
				at = 0
			}
			expect(t, found, at, c.field, c.says)
			if len(found) > 1 && !c.more {
				t.Errorf("found more than one thing:\n%v", found)
			}
			for _, f := range found {
				if f.Line == 0 || f.Excerpt == "" || !strings.HasSuffix(f.Excerpt, "^") {
					t.Errorf("no place: %+v", f)
				}
			}
		})
	}
}

// A casting with too many builds to compare is told, not worked out for ever.
func TestTooManyBuilds(t *testing.T) {
	upgrades := ""
	for i := range 30 {
		upgrades += "  - {name: u" + string(rune('a'+i%26)) + string(rune('a'+i/26)) + ", title: x, fits: [T31], minutes: 1, parts: 1, head_wall: 10 mm}\n"
	}
	found, _ := broken(t, "upgrades.yaml", "upgrades:\n", "upgrades:\n"+upgrades)
	if len(found) != 0 {
		t.Errorf("thirty upgrades that put in the same part make few builds, but found\n%v", found)
	}
	var c Catalogue
	for i := range 40 {
		c.Upgrades = append(c.Upgrades, Upgrade{Name: string(rune('a' + i)), Fits: []string{"x"}})
	}
	if _, err := c.builds(Assembly{Casting: Casting{Name: "x"}}, nil, func(*Upgrade) bool { return true }); err == nil || !strings.Contains(err.Error(), "more than 2048 builds") {
		t.Errorf("forty upgrades that go together: %v", err)
	}
}
