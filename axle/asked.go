package axle

// asked says, for everything an enquiry must tell, what is wanted and why it is
// asked. Each is a sentence that can be read out on the telephone.
var asked = map[string]string{
	"number":   "A number or a date, so that the sheet is found again, such as number: 31-07.",
	"customer": "Who asks; a first name will do. It heads the sheet.",
	"catalogue": "Which catalogue files to look in; without one there is no casting to choose from. " +
		"A line such as catalogue: [tarnhow.yaml].",
	"casting": "Which nose casting it is: castings that look alike differ in metal and strength. " +
		"If he cannot say, ask for the raised number, the count of ribs and the thread of the cap bolts.",
	"gears": "Which gear set, by its teeth: the ratio multiplies the engine, and a small pinion is a weak one. " +
		"If he cannot say, mark a wheel and the flange, and count turns.",
	"mounting.position": "Front or rear: the first question. Hills and braking load the two ends differently, and a front axle often pulls on the other side of its teeth.",
	"mounting.forward": "Drive or coast: the side of the crown wheel's teeth that pulls the vehicle forward. " +
		"Drive (convex) for most rear axles; coast (concave) for a rear gear set used in front. The push on the crown wheel more than doubles between them.",
	"vehicle.name":       "What vehicle it is; the sheet says whose figures these are.",
	"vehicle.engine":     "The engine's largest torque, such as engine: 190 N·m: times the gears it is one limit of what reaches the axle.",
	"vehicle.first_gear": "The reduction of first gear, such as first_gear: 3.6.",
	"vehicle.low_range":  "The reduction of the transfer box in low range, such as low_range: 3.3; 1 where there is none. It often triples what the engine can do to an axle.",
	"vehicle.efficiency": "How much of the torque is left at the axle, such as efficiency: 0.9; 0.9 is the usual guess.",
	"vehicle.shock":      "How much a landed wheel or a dropped clutch adds, as a guess with a spread, such as shock: 1.1..1.6.",
	"vehicle.axle_share": "How much of the engine's torque can reach this axle: axle_share: 1 with a locked centre or the other axle off the ground, 0.5 with an open one.",
	"vehicle.axle_load":  "The weight on this axle, laden, such as axle_load: 1450 kg. With the tyre it is the other limit: tyres that slip protect an axle. A weighbridge costs little.",
	"vehicle.tyre":       "The tyre's size as written on its wall, such as tyre: 235/85R16; the one planned, if others are to come. A larger tyre is a longer lever.",
	"vehicle.friction":   "How well the ground holds: friction: 0.5 in mud, 0.6 to 0.7 on gravel, 0.8 to 1.0 on dry rock or tarmac.",
	"use":                "What it is used for, such as use: [farm, towing]: some uses change the advice whatever the sums say.",
	"duty":               "How hard and how long it works, by the name of a duty of the catalogue, such as duty: farm. Bearings and teeth wear by it.",
}
