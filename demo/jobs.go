package demo

import "axlewright/shop"

// A job is one unit of the demo.
type job struct {
	days      int // before today it was opened; a block of its record is filled every third day
	state     shop.State
	why       string // it went there
	works     string
	told      string   // on the telephone
	quoted    bool     // a quote is kept
	advise    bool     // it waits for its advice
	record    []string // a day's work each
	certified bool
	after     string // written after the certificate, some days ago
}

// What is the same from unit to unit. A box filled again later is corrected.
const (
	agreed = `
		deal/price   1480
		deal/paid    740`

	strip = `
		donor/accept          accepted
		donor/matched         both etched 2217
		donor/caps            both there and match
		donor/threads         run free
		strip/lash_found/1    0.38 mm
		strip/lash_found/2    0.41 mm
		strip/lash_found/3    0.36 mm
		strip/lash_found/4    0.40 mm
		strip/runout_found    0.06 mm
		strip/torque_found    0.9 N·m
		strip/old_shim        1.10 mm
		strip/old_mark        2
		clean/wash            hot aqueous wash
		clean/bake            180 °C
		clean/bake_time       90 min
		clean/smoke           no
		clean/method          penetrant
		clean/cracks          none`

	isT24 = `
		identify/casting      T24
		identify/sure         sure
		identify/seen/raised number  24
		identify/seen/ribs    four straight
		identify/seen/web     window
		identify/seen/oil trough     right
		identify/seen/peg boss       right
		identify/seen/drain plug     hexagon
		identify/seen/old work       none
		identify/modified     no
		metal/swarf           short chips
		metal/ring            rings
		metal/tab             tore out bright
		metal/metal           ductile iron`

	plates = `
		stations/gap/1        0.4 mm
		stations/gap/2        0.7 mm
		stations/gap/3        1.1 mm
		stations/gap/4        0.6 mm
		stations/gap/5        0.3 mm
		stations/gap/6        0.9 mm
		stations/gap/7        1.3 mm
		stations/gap/8        0.5 mm
		plates/kit            1 KIT-T24-A.2, lot L7
		plates/trim           left cheek, lower edge, 1.5 mm
		plates/fit/1          0.8 mm
		plates/bright         yes
		plates/vents          every cavity has its vent`

	weld = `
		jig/caps              yes
		jig/mandrel           free
		jig/dial              0.00 mm
		weld/method           cold, short runs
		weld/filler           0.15 nickel-iron rod 2.4 mm, lot N55
		weld/start/1          22 °C
		weld/interpass/1      45 °C
		weld/plate/1          3 mm
		weld/process/1        TIG
		weld/position/1       horizontal
		weld/length/1         210 mm
		weld/amps/1           95 A
		weld/volts/1          13 V
		weld/minutes/1        10 min
		weld/lot/1            nickel-iron rod 2.4 mm, lot N55
		weld/runs/1           14
		weld/start/2          24 °C
		weld/interpass/2      48 °C
		weld/plate/2          3 mm
		weld/process/2        TIG
		weld/position/2       flat
		weld/length/2         180 mm
		weld/amps/2           102 A
		weld/volts/2          14 V
		weld/minutes/2        8 min
		weld/lot/2            nickel-iron rod 2.4 mm, lot N55
		weld/runs/2           12
		cooled/temperature    38 °C
		cooled/mandrel        turns by hand
		cooled/caps           torqued
		cooled/bore_crown/0°  80.012 mm
		cooled/bore_crown/45°  80.018 mm
		cooled/bore_crown/90°  80.009 mm
		cooled/bore_other/0°  80.010 mm
		cooled/bore_other/45°  80.014 mm
		cooled/bore_other/90°  80.011 mm
		cooled/flange         0.06 mm
		cooled/square         0.02 mm
		cooled/toes           clean
		cooled/decision       free`

	filledUp = `
		resin/resin           0.4 metal-filled resin, lot R9
		resin/mass            400 g
		resin/casting         34 °C
		resin/label           yes
		leak/pressure         55 kPa
		leak/fall             6 kPa`

	caps = `
		drill/wall            11.2 mm
		drill/square          0.05 mm
		caps/register/crown side  0.03 mm
		caps/register/other side  0.02 mm
		caps/joint            does not enter
		caps/skimmed          no
		caps/bolts/1          4 cap bolts M12 × 80 10.9, lot 4711
		caps/engagement       24 mm
		caps/torque/crown side  108 N·m
		caps/torque/other side  108 N·m
		bores/caps            torqued
		bores/mandrel         turns by hand
		bores/line            0.03 mm
		bores/bore_crown/0°   80.012 mm
		bores/bore_crown/45°  80.018 mm
		bores/bore_crown/90°  80.009 mm
		bores/bore_other/0°   80.010 mm
		bores/bore_other/45°  80.014 mm
		bores/bore_other/90°  80.011 mm
		bores/offset          0.02 mm
		bores/square          0.02 mm
		bores/decision        accepted
		locks/kind            bolted tab
		locks/wheel_side      left
		locks/pitch           1.5 mm
		locks/notches         20
		locks/clearance       3.5 mm`

	setting = `
		assemble/washed       yes
		assemble/gears        2217 on both
		assemble/set          new
		assemble/wheel_bolts  10 crown wheel bolts M10 12.9, lot 88A
		assemble/wheel_torque  78 N·m
		assemble/runout       0.05 mm
		assemble/head_bearing  1 head bearing, lot B1
		assemble/tail_bearing  1 tail bearing, lot B2
		assemble/side_bearings/crown side  1 side bearings, lot B3
		assemble/side_bearings/other side  1 side bearings, lot B3
		assemble/cups         does not enter
		shim/way              towards the crown wheel
		shim/new_mark         5
		shim/mark_unit        0.01 mm
		shim/mark_plus        plus sits further from the crown wheel
		shim/wanted           1.070 mm
		shim/fitted/1         1 pinion shim 1.075 mm
		preload/bearings      new
		preload/seal          out
		preload/spacer        solid, with shims
		preload/tool          torque wrench
		preload/when          while turning steadily
		preload/torque        22 lbf·in
		preload/nut           240 N·m
		side/spread           0.25 mm
		side/last             tightening
		lash/lash/1           0.14 mm
		lash/lash/2           0.16 mm
		lash/lash/3           0.15 mm
		lash/lash/4           0.13 mm
		lash/dial             along the turn
		pattern/load          bar, by hand
		pattern/drive_along   in the middle of the length
		pattern/drive_height  in the middle of the height
		pattern/drive_shape   narrow, both ends fading
		pattern/coast_along   in the middle of the length
		pattern/coast_height  in the middle of the height
		pattern/coast_shape   narrow, both ends fading
		pattern/depth         tapered
		pattern/decision      accepted`

	pegged = `
		peg/pad               1 bronze pads, lot P3
		peg/final             yes
		peg/spot              tight spot
		peg/pitch             1.5 mm
		peg/angle             75 deg
		peg/gap/tight spot    0.27 mm
		peg/gap/1             0.29 mm
		peg/gap/2             0.32 mm
		peg/gap/3             0.30 mm
		peg/nut               45 N·m
		peg/touches           clears all round`

	finished = `
		paint/masked          yes
		run/oil               as the gear maker says, 2.1 litres
		run/breather          yes
		run/turned            smooth`

	handed = `
		handover/papers       set-up sheet | certificate | care sheet | tag
		handover/warranty     weld and setting-up, 12 months`
)

// jobs are in the order in which they were opened.
var jobs = []job{
	{days: 150, state: shop.StateOut, works: "better fixings | peg | plates", quoted: true, certified: true,
		told: `
			enquiry/customer      Bracken of Scar End
			enquiry/vehicle       hill-farm pick-up
			enquiry/end           rear
			enquiry/axle          T24, nose photographed from three sides
			enquiry/why           Second crown wheel in four years; heel ends off. Tows 2.5 t.
			enquiry/tyre_fitted   235/85R16
			enquiry/tyre_planned  235/85R16
			enquiry/axle_load     1450 kg
			enquiry/differential  open
			enquiry/teeth         46/13
			enquiry/engine        190 N·m
			enquiry/gears         3.6 × 3.3
			enquiry/use           farm | towing
			enquiry/unit          own unit
			enquiry/fitter        a workshop of his own choice
			enquiry/country       yearly inspection; asked, nothing against it`,
		record: []string{agreed + `
			donor/donor           D-07
			donor/teeth           46/13` + strip, isT24, plates, weld, filledUp, caps + `
			stamp/number          FW-T24-0101`, setting + `
			lash/lash/3           0.19 mm`, `
			lash/lash/3           0.15 mm
			lash/note  Moved the left adjuster one notch; turned twice, it stays so.` + pegged, finished, handed + `
			handover/day          now
			handover/to           Mr Bracken`}},
	{days: 140, state: shop.StateBack, why: "bronze in the oil", works: "better fixings | peg", certified: true,
		told: `
			enquiry/customer      Nan O’Hara
			enquiry/vehicle       forest tipper
			enquiry/end           rear
			enquiry/why           Wants a peg before the season.
			enquiry/tyre_planned  255/85R16
			enquiry/axle_load     1700 kg
			enquiry/engine        300 N·m
			enquiry/use           forest
			enquiry/unit          own unit
			enquiry/fitter        a workshop of his own choice
			enquiry/country       yearly inspection; asked, nothing against it`,
		record: []string{agreed + `
			donor/donor           D-08` + strip, isT24, weld, caps + `
			stamp/number          FW-T24-0102`, setting, pegged + `
			peg/gap/tight spot    0.14 mm
			peg/note  Tight, but it clears.`, finished, handed + `
			handover/day          now`},
		after: `
			return/day            now
			return/distance       6200 km
			return/complaint      Oil glitters at the first change
			return/evidence       bronze flakes in the oil
			return/oil            level right, bronze on the magnet
			return/lash/1         0.15 mm
			return/lash/2         0.16 mm
			return/peg            0.02 mm`},
	{days: 110, state: shop.StateOut, works: "peg", quoted: true, certified: true,
		told: `
			enquiry/customer      Sykeson & Daughter
			enquiry/vehicle       recovery truck
			enquiry/end           rear
			enquiry/why           Cannot stand still: wants one from the shelf.
			enquiry/tyre_planned  7.50R16
			enquiry/axle_load     1900 kg
			enquiry/use           recovery | road
			enquiry/unit          exchange unit
			enquiry/fitter        a workshop of his own choice
			enquiry/country       yearly inspection; asked, nothing against it`,
		record: []string{agreed + `
			deal/deposit          150
			deal/core_due         -14
			donor/donor           D-09` + strip, `
			identify/casting      T20K
			identify/sure         sure
			identify/seen/raised number  20
			identify/seen/ribs    four curved
			identify/seen/foundry mark   wheel
			identify/modified     no
			metal/swarf           short chips
			metal/ring            rings
			metal/tab             tore out bright
			metal/metal           ductile iron` + weld, caps + `
			stamp/number          FW-T20K-0103`, setting, pegged, finished, handed + `
			handover/day          now`}},
	{days: 60, state: shop.StateReady, works: "better fixings", quoted: true,
		told: `
			enquiry/customer      Ingrid Thwaite
			enquiry/vehicle       overland camper
			enquiry/end           rear
			enquiry/why           Leaves for two years; wants new bolts and everything measured.
			enquiry/tyre_planned  235/85R16
			enquiry/axle_load     1650 kg
			enquiry/engine        290 N·m
			enquiry/use           overland
			enquiry/due           6
			enquiry/unit          own unit
			enquiry/fitter        a workshop of his own choice
			enquiry/country       yearly inspection; asked, nothing against it`,
		record: []string{agreed + `
			donor/donor           D-10` + strip, isT24, caps + `
			stamp/number          FW-T24-0104`, setting, finished}},
	{days: 35, state: shop.StateBench, works: "better fixings | peg | plates", quoted: true,
		told: `
			enquiry/customer      Quarry at Black Nab
			enquiry/vehicle       quarry water cart
			enquiry/end           rear
			enquiry/why           Third casting in five years, cracked at the cap.
			enquiry/tyre_planned  7.50R16
			enquiry/axle_load     2300 kg
			enquiry/engine        340 N·m
			enquiry/use           quarry
			enquiry/due           12
			enquiry/unit          exchange unit
			enquiry/fitter        a workshop of his own choice
			enquiry/country       yearly inspection; asked, nothing against it`,
		record: []string{agreed + `
			deal/deposit          150
			deal/core_due         10
			donor/donor           D-11` + strip, isT24, plates, weld, filledUp, caps + `
			stamp/number          FW-T24-0105`, `
			assemble/washed       yes
			assemble/wheel_bolts  10 crown wheel bolts M10 12.9, lot 88A
			assemble/runout       0.12 mm
			lash/lash/1           0.22 mm
			lash/lash/2           0.15 mm`}},
	{days: 26, state: shop.StateBench, works: "peg | plates",
		told: `
			enquiry/customer      Pia Lindqvist-Marr
			enquiry/vehicle       competition car
			enquiry/end           front
			enquiry/why           Turned-round front axle, coast side pulls.
			enquiry/tyre_planned  255/85R16
			enquiry/axle_load     1100 kg
			enquiry/use           competition
			enquiry/due           20
			enquiry/unit          own unit
			enquiry/fitter        a workshop of his own choice
			enquiry/country       yearly inspection; asked, nothing against it`,
		record: []string{`
			deal/agreed           now
			donor/donor           D-12` + strip, `
			identify/casting      T24S
			identify/sure         likely
			identify/seen/raised number  24
			identify/seen/ribs    four straight
			identify/seen/foundry mark   three dots
			identify/seen/drain plug     can't see it
			identify/modified     no
			metal/swarf           powder
			metal/ring            thuds
			metal/metal           grey iron
			metal/note  Powder, and it thuds. A service casting, grey: no plates on this one.`}},
	{days: 22, state: shop.StateWaiting, why: "10 g of drillings are at the laboratory", works: "better fixings | plates",
		told: `
			enquiry/customer      Tom Garth, restorer
			enquiry/vehicle       1960s pick-up
			enquiry/end           rear
			enquiry/why           A farm trailer on the pick-up.
			enquiry/axle_load     1200 kg
			enquiry/use           road | towing
			enquiry/unit          own unit
			enquiry/fitter        a workshop of his own choice
			enquiry/country       yearly inspection; asked, nothing against it`,
		record: []string{`
			deal/agreed           now
			donor/donor           D-13` + strip, `
			identify/casting      T20
			identify/sure         likely
			identify/seen/raised number  ground off
			identify/seen/ribs    can't see it
			identify/seen/head bore      72.01 mm
			identify/seen/cap seat       58.3 mm
			metal/metal           not known`}},
	{days: 12, state: shop.StateAccepted, works: "better fixings | peg | plates", quoted: true,
		told: `
			enquiry/customer      Bracken of Scar End
			enquiry/vehicle       hill-farm pick-up
			enquiry/end           front
			enquiry/why           The front one too, now that the rear one holds.
			enquiry/tyre_planned  235/85R16
			enquiry/axle_load     1150 kg
			enquiry/engine        190 N·m
			enquiry/use           farm | towing
			enquiry/due           30
			enquiry/unit          own unit
			enquiry/fitter        a workshop of his own choice
			enquiry/country       yearly inspection; asked, nothing against it`,
		record: []string{`
			deal/agreed           now
			deal/price            1480
			deal/paid             400
			deal/parts/1          set aside 4 cap bolts M12 × 80 10.9, lot 4711
			deal/parts/2          set aside 1 KIT-T24-A.2, lot L7
			deal/parts/3          set aside 1 gear set 37/9, lot G5
			donor/donor           D-14`}},
	{days: 5, state: shop.StateQuoted, works: "peg", quoted: true,
		told: `
			enquiry/customer      Tom Garth, restorer
			enquiry/vehicle       1960s pick-up
			enquiry/end           rear
			enquiry/why           Whines since another shop set it up.
			enquiry/axle_load     1200 kg
			enquiry/use           road
			enquiry/budget        600
			enquiry/unit          own unit
			enquiry/fitter        a workshop of his own choice
			enquiry/country       yearly inspection; asked, nothing against it`},
	{days: 1, state: shop.StateEnquiry, advise: true,
		told: `
			enquiry/customer      Mountain rescue, Fellgate
			enquiry/vehicle       rescue vehicle
			enquiry/end           front
			enquiry/axle          T24 with rear-cut gears, turned round
			enquiry/why           Caps have walked twice.
			enquiry/tyre_fitted   235/85R16
			enquiry/tyre_planned  255/85R16
			enquiry/axle_load     1350 kg
			enquiry/differential  locker
			enquiry/engine        300 N·m
			enquiry/gears         3.9 × 2.6
			enquiry/use           overland | recovery
			enquiry/due           45`},
	{days: 48, state: shop.StateDeclined, why: "not this axle: a bigger one is cheaper per year", quoted: true,
		told: `
			enquiry/customer      Pia Lindqvist-Marr
			enquiry/vehicle       competition car
			enquiry/end           rear
			enquiry/why           Wants twice the torque with the same axle.
			enquiry/tyre_planned  285/75R16
			enquiry/axle_load     1300 kg
			enquiry/engine        620 N·m
			enquiry/use           competition`},
	{days: 44, state: shop.StateScrapped, why: "cracked into the bearing bore", works: "plates",
		told: `
			enquiry/customer      Quarry at Black Nab
			enquiry/vehicle       quarry water cart
			enquiry/end           rear
			enquiry/why           As the one before.
			enquiry/axle_load     2300 kg
			enquiry/use           quarry`,
		record: []string{`
			donor/donor           D-17` + strip, `
			clean/cracks          bearing bore
			clean/finds           from the crown-side bore to the second rib, 40 mm`}},
}
