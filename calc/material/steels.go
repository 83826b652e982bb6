package material

// Rolled and heat-treated steels. Strengths are the standards' least values, all from
// memory of the standard named in the row.

const (
	en10025 = "EN 10025-2:2019 (from memory)"
	fineN   = "EN 10025-3:2019 (from memory)"
	formed  = "EN 10149-2:2013 (from memory)"
	treated = "EN ISO 683-2:2018, as EN 10083 (from memory)"
	plain45 = "EN ISO 683-1:2018, as EN 10083-2 (from memory)"
	blank   = "DIN 17210:1986, blank-hardened core of 30 mm (from memory)"
	to16    = "up to 16 mm"
)

var structuralSteels = []grade{
	{name: "S235", other: "S235JR, S235J2, St 37-2, Fe 360, 1.0038", family: StructuralSteel, standard: en10025, section: to16, rm: 360, re: 235, a: 26, hbLow: 100, hbHigh: 150},
	{name: "S275", other: "S275JR, S275J2, St 44-2, Fe 430, 1.0044", family: StructuralSteel, standard: en10025, section: to16, rm: 410, re: 275, a: 23, hbLow: 115, hbHigh: 165},
	{name: "S355", other: "S355JR, S355J2, S355K2, St 52-3, Fe 510, 1.0577", family: StructuralSteel, standard: en10025, section: to16, rm: 470, re: 355, a: 22, hbLow: 140, hbHigh: 190,
		note: "R_m 510 MPa up to 3 mm, 470 MPa above; EN 1993-1-1 prints 510"},
	{name: "E295", other: "St 50-2, Fe 490, 1.0050", family: StructuralSteel, standard: en10025, section: to16, rm: 470, re: 295, a: 20, hbLow: 140, hbHigh: 185,
		note: "carbon not limited: not meant for welding"},
	{name: "E335", other: "St 60-2, Fe 590, 1.0060", family: StructuralSteel, standard: en10025, section: to16, rm: 570, re: 335, a: 16, hbLow: 170, hbHigh: 220,
		note: "carbon not limited: not meant for welding"},
	{name: "S420", other: "S420N, S420NL, 1.8902", family: StructuralSteel, standard: fineN, section: to16, rm: 520, re: 420, a: 19, hbLow: 155, hbHigh: 205},
	{name: "S460", other: "S460N, S460NL, 1.8901", family: StructuralSteel, standard: fineN, section: to16, rm: 540, re: 460, a: 17, hbLow: 165, hbHigh: 220},
}

var formedSteels = []grade{
	{name: "S355MC", other: "1.0976", family: FormedSteel, standard: formed, section: "all thicknesses", rm: 430, re: 355, a: 23},
	{name: "S420MC", other: "1.0980", family: FormedSteel, standard: formed, section: "all thicknesses", rm: 480, re: 420, a: 19},
	{name: "S500MC", other: "1.0984", family: FormedSteel, standard: formed, section: "all thicknesses", rm: 550, re: 500, a: 14},
	{name: "S600MC", other: "1.8969", family: FormedSteel, standard: formed, section: "up to 8 mm", rm: 650, re: 600, a: 13},
	{name: "S700MC", other: "1.8974", family: FormedSteel, standard: formed, section: "up to 8 mm", rm: 750, re: 700, a: 12, hbLow: 235, hbHigh: 290,
		note: "yield may be 20 MPa less above 8 mm; no stiffer than mild steel"},
}

var treatedSteels = []grade{
	{name: "C45+N", other: "C45, C45E, 1.0503, 080M46", family: TreatedSteel, standard: plain45, section: "normalised, 16 to 100 mm", rm: 580, re: 305, a: 16, hbLow: 170, hbHigh: 215},
	{name: "C45+QT", other: "C45E+QT, 1.1191+QT", family: TreatedSteel, standard: plain45, section: "quenched and tempered, 16 to 40 mm", rm: 650, re: 430, a: 16, hbLow: 190, hbHigh: 240},
	{name: "34CrMo4+QT", other: "34CrMo4, 1.7220", family: TreatedSteel, standard: treated, section: "quenched and tempered, 16 to 40 mm", rm: 900, re: 650, a: 12, hbLow: 265, hbHigh: 325},
	{name: "42CrMo4+QT", other: "42CrMo4, 1.7225, 708M40", family: TreatedSteel, standard: treated, section: "quenched and tempered, 16 to 40 mm", rm: 1000, re: 750, a: 11, hbLow: 295, hbHigh: 355},
	{name: "34CrNiMo6+QT", other: "34CrNiMo6, 1.6582, 817M40", family: TreatedSteel, standard: treated, section: "quenched and tempered, 16 to 40 mm", rm: 1100, re: 900, a: 10, hbLow: 325, hbHigh: 385},
	{name: "30CrNiMo8+QT", other: "30CrNiMo8, 1.6580", family: TreatedSteel, standard: treated, section: "quenched and tempered, 16 to 40 mm", rm: 1250, re: 1050, a: 9, hbLow: 365, hbHigh: 430},
}

var caseSteels = []grade{
	{name: "16MnCr5", other: "1.7131", family: CaseHardenedSteel, standard: blank, section: "core, 30 mm", rm: 780, re: 590, a: 10, hbLow: 230, hbHigh: 320, skinLow: 58, skinHigh: 62},
	{name: "20MnCr5", other: "1.7147", family: CaseHardenedSteel, standard: blank, section: "core, 30 mm", rm: 980, re: 685, a: 8, hbLow: 290, hbHigh: 380, skinLow: 58, skinHigh: 62},
	{name: "15CrNi6", other: "1.5919", family: CaseHardenedSteel, standard: blank, section: "core, 30 mm", rm: 880, re: 635, a: 9, hbLow: 260, hbHigh: 350, skinLow: 58, skinHigh: 62},
	{name: "18CrNiMo7-6", other: "17CrNiMo6, 1.6587", family: CaseHardenedSteel, standard: blank, section: "core, 30 mm", rm: 1080, re: 785, a: 8, hbLow: 320, hbHigh: 395, skinLow: 58, skinHigh: 62},
}
