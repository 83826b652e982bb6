package material

// Castings and pad bronzes. Strengths are the standards' least values for separately
// cast test pieces, from memory of the standard named in the row unless it says read.

const (
	en10293 = "EN 10293:2015 (from memory)"
	en1563  = "EN 1563:1997 (strengths, E and density read)"
	en1562  = "EN 1562:2012, test piece of 12 mm (from memory)"
	en1562b = "EN 1562:2012, test piece of 12 or 15 mm (from memory)"
	en1561  = "EN 1561:1997, cast bar of 30 mm (from memory)"
	en1982  = "EN 1982:2017 (from memory)"
	cast    = "separately cast test piece"
)

var castSteels = []grade{
	{name: "GE200", other: "GS-38, 1.0420", family: CastSteel, standard: en10293, section: "normalised, up to 300 mm", rm: 380, re: 200, a: 25, hbLow: 110, hbHigh: 150},
	{name: "GE240", other: "GS-45, 1.0446", family: CastSteel, standard: en10293, section: "normalised, up to 300 mm", rm: 450, re: 240, a: 22, hbLow: 130, hbHigh: 175},
	{name: "GE300", other: "GS-60, 1.0558", family: CastSteel, standard: en10293, section: "normalised, up to 30 mm", rm: 600, re: 300, a: 15, hbLow: 175, hbHigh: 220,
		note: "about 0.4 % carbon: hardens beside a weld"},
	{name: "G17Mn5+QT", other: "G17Mn5, 1.1131", family: CastSteel, standard: en10293, section: "quenched and tempered, up to 50 mm", rm: 450, re: 240, a: 24, hbLow: 130, hbHigh: 175},
	{name: "G20Mn5+N", other: "1.6220+N", family: CastSteel, standard: en10293, section: "normalised, up to 30 mm", rm: 480, re: 300, a: 20, hbLow: 140, hbHigh: 180},
	{name: "G20Mn5+QT", other: "G20Mn5, 1.6220", family: CastSteel, standard: en10293, section: "quenched and tempered, up to 100 mm", rm: 500, re: 300, a: 22, hbLow: 145, hbHigh: 190},
	{name: "G26CrMo4+QT", other: "G26CrMo4, GS-25CrMo4, 1.7221", family: CastSteel, standard: en10293, section: "quenched and tempered, up to 100 mm", rm: 600, re: 450, a: 16, hbLow: 175, hbHigh: 220},
	{name: "G42CrMo4+QT", other: "G42CrMo4, GS-42CrMo4, 1.7231", family: CastSteel, standard: en10293, section: "quenched and tempered, up to 100 mm", rm: 800, re: 600, a: 12, hbLow: 235, hbHigh: 280,
		note: "0.4 % carbon: hardens beside a weld"},
}

var ductileIrons = []grade{
	{name: "EN-GJS-350-22", other: "GJS-350-22, GGG-35.3, EN-JS1010", family: DuctileIron, standard: en1563, section: cast, rm: 350, re: 220, a: 22, hbLow: 110, hbHigh: 160, shear: 315, bending: 180},
	{name: "EN-GJS-400-18", other: "GJS-400-18, GGG-40.3, EN-JS1020", family: DuctileIron, standard: en1563, section: cast, rm: 400, re: 250, a: 18, hbLow: 130, hbHigh: 175, shear: 360, compress: 700, bending: 195},
	{name: "EN-GJS-400-15", other: "GJS-400-15, GGG-40, EN-JS1030", family: DuctileIron, standard: en1563, section: cast, rm: 400, re: 250, a: 15, hbLow: 135, hbHigh: 180, shear: 360, compress: 700, bending: 200},
	{name: "EN-GJS-450-10", other: "GJS-450-10, EN-JS1040", family: DuctileIron, standard: en1563, section: cast, rm: 450, re: 310, a: 10, hbLow: 160, hbHigh: 210, shear: 405, compress: 700, bending: 210},
	{name: "EN-GJS-500-7", other: "GJS-500-7, GGG-50, EN-JS1050", family: DuctileIron, standard: en1563, section: cast, rm: 500, re: 320, a: 7, hbLow: 170, hbHigh: 230, shear: 450, compress: 800, bending: 224},
	{name: "EN-GJS-600-3", other: "GJS-600-3, GGG-60, EN-JS1060", family: DuctileIron, standard: en1563, section: cast, rm: 600, re: 370, a: 3, hbLow: 190, hbHigh: 270, e: 174, eLow: 165, eHigh: 180, density: 7.2, shear: 540, compress: 870, bending: 248},
	{name: "EN-GJS-700-2", other: "GJS-700-2, GGG-70, EN-JS1070", family: DuctileIron, standard: en1563, section: cast, rm: 700, re: 420, a: 2, hbLow: 225, hbHigh: 305, e: 176, eLow: 167, eHigh: 182, density: 7.2, shear: 630, compress: 1000, bending: 280},
	{name: "EN-GJS-800-2", other: "GJS-800-2, GGG-80, EN-JS1080", family: DuctileIron, standard: en1563, section: cast, rm: 800, re: 480, a: 2, hbLow: 245, hbHigh: 335, e: 176, eLow: 167, eHigh: 182, density: 7.2, shear: 720, compress: 1150, bending: 304},
}

var blackheartIrons = []grade{
	{name: "EN-GJMB-300-6", other: "GJMB-300-6", family: BlackheartIron, standard: en1562b, section: cast, rm: 300, a: 6, hbLow: 100, hbHigh: 150},
	{name: "EN-GJMB-350-10", other: "GJMB-350-10, GTS-35-10", family: BlackheartIron, standard: en1562b, section: cast, rm: 350, re: 200, a: 10, hbLow: 110, hbHigh: 150},
	{name: "EN-GJMB-450-6", other: "GJMB-450-6, GTS-45-06", family: BlackheartIron, standard: en1562b, section: cast, rm: 450, re: 270, a: 6, hbLow: 150, hbHigh: 200},
	{name: "EN-GJMB-550-4", other: "GJMB-550-4, GTS-55-04", family: BlackheartIron, standard: en1562b, section: cast, rm: 550, re: 340, a: 4, hbLow: 180, hbHigh: 230},
	{name: "EN-GJMB-650-2", other: "GJMB-650-2, GTS-65-02", family: BlackheartIron, standard: en1562b, section: cast, rm: 650, re: 430, a: 2, hbLow: 210, hbHigh: 260},
	{name: "EN-GJMB-700-2", other: "GJMB-700-2, GTS-70-02", family: BlackheartIron, standard: en1562b, section: cast, rm: 700, re: 530, a: 2, hbLow: 240, hbHigh: 290},
}

var whiteheartIrons = []grade{
	{name: "EN-GJMW-350-4", other: "GJMW-350-4, GTW-35-04", family: WhiteheartIron, standard: en1562, section: cast, rm: 350, a: 4, hbLow: 140, hbHigh: 230},
	{name: "EN-GJMW-360-12", other: "GJMW-360-12, GTW-S 38-12", family: WhiteheartIron, standard: en1562, section: cast, rm: 360, re: 190, a: 12, hbLow: 120, hbHigh: 200,
		note: "the grade meant for welding without heat treatment after it, in thin walls"},
	{name: "EN-GJMW-400-5", other: "GJMW-400-5, GTW-40-05", family: WhiteheartIron, standard: en1562, section: cast, rm: 400, re: 220, a: 5, hbLow: 150, hbHigh: 220},
	{name: "EN-GJMW-450-7", other: "GJMW-450-7, GTW-45-07", family: WhiteheartIron, standard: en1562, section: cast, rm: 450, re: 260, a: 7, hbLow: 150, hbHigh: 220},
}

var greyIrons = []grade{
	{name: "EN-GJL-150", other: "GJL-150, GG-15", family: GreyIron, standard: en1561, section: cast, rm: 150, re: 98, a: 0.3, hbLow: 125, hbHigh: 185, e: 90, eLow: 78, eHigh: 103, density: 7.1, shear: 170, compress: 600, bending: 70},
	{name: "EN-GJL-200", other: "GJL-200, GG-20", family: GreyIron, standard: en1561, section: cast, rm: 200, re: 130, a: 0.3, hbLow: 150, hbHigh: 210, e: 100, eLow: 88, eHigh: 113, density: 7.15, shear: 230, compress: 720, bending: 90},
	{name: "EN-GJL-250", other: "GJL-250, GG-25", family: GreyIron, standard: en1561, section: cast, rm: 250, re: 165, a: 0.3, hbLow: 170, hbHigh: 230, e: 110, eLow: 103, eHigh: 118, density: 7.2, shear: 290, compress: 840, bending: 120},
	{name: "EN-GJL-300", other: "GJL-300, GG-30", family: GreyIron, standard: en1561, section: cast, rm: 300, re: 195, a: 0.3, hbLow: 190, hbHigh: 250, e: 122, eLow: 108, eHigh: 137, density: 7.25, shear: 345, compress: 960, bending: 140},
	{name: "EN-GJL-350", other: "GJL-350, GG-35", family: GreyIron, standard: en1561, section: cast, rm: 350, re: 228, a: 0.3, hbLow: 210, hbHigh: 275, e: 133, eLow: 123, eHigh: 143, density: 7.3, shear: 400, compress: 1080, bending: 145},
}

var bronzes = []grade{
	{name: "CuSn5Zn5Pb5-C", other: "CC491K, gunmetal, LG2", family: Bronze, standard: en1982, section: "continuously cast", rm: 250, re: 110, a: 13, hbLow: 65, hbHigh: 85, density: 8.8, note: "leaded: forgiving of dirt and poor oil, does not weld"},
	{name: "CuSn7Zn4Pb7-C", other: "CC493K, Rg7", family: Bronze, standard: en1982, section: "continuously cast", rm: 260, re: 120, a: 12, hbLow: 70, hbHigh: 90, density: 8.8, note: "leaded: runs in well, does not weld"},
	{name: "CuSn12-C", other: "CC483K, phosphor bronze, PB2", family: Bronze, standard: en1982, section: "continuously cast", rm: 300, re: 150, a: 6, hbLow: 90, hbHigh: 110, density: 8.7},
	{name: "CuSn12Ni2-C", other: "CC484K", family: Bronze, standard: en1982, section: "continuously cast", rm: 300, re: 180, a: 10, hbLow: 95, hbHigh: 115, density: 8.7, note: "tougher than plain CuSn12 under blows"},
	{name: "CuAl10Fe5Ni5-C", other: "CC333G, aluminium bronze, AB2", family: Bronze, standard: en1982, section: "continuously cast", rm: 650, re: 280, a: 13, hbLow: 150, hbHigh: 190, e: 120, eLow: 115, eHigh: 127, density: 7.6, note: "strong, but wants a hard, smooth counterface and good oil"},
}
