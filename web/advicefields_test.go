package web_test

// adviceFields are the invented hill farm's enquiry as a page sends it.
var adviceFields = []string{"casting", "T20", "gears", "20-3.54", "mounting.position", "rear", "mounting.forward", "drive",
	"vehicle.name", "farm truck", "vehicle.engine", "190 N·m ± 5 %, maker", "vehicle.first_gear", "3.6, exact", "vehicle.low_range", "3.3, exact",
	"vehicle.axle_load", "1450 kg ± 6 %", "vehicle.tyre", "235/85R16", "vehicle.axle_share", "1, exact", "vehicle.friction", "0.7 ± 12 %",
	"vehicle.efficiency", "0.9 ± 4 %", "vehicle.shock", "1.1..1.6", "use", "farm", "use", "towing", "duty", "farm", "history", "heel breaks"}
