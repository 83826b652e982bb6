// Package paper lays papers out on A4, upright, in black and white, for a
// printer or for the pencil, and writes them as PDF with their letters embedded.
//
// # To add a paper
//
// Write one function, in a file of its own, that turns finished data into a
// Paper: a Head and Blocks from top to bottom. That is all:
//
//	func TrimSheet(c *casting.Trim, shop paper.Head) paper.Paper {
//		p := paper.Paper{Head: shop}
//		p.Title, p.Number = "Trim sheet", c.Unit
//		p.Add(
//			paper.Caution{Text: "Laser edges carry a burr: deburr, gloves."},
//			paper.Picture{Drawing: drawing.Stations(c), Width: 120},
//			paper.Heading{Text: "Stations"},
//			paper.Table{Columns: []paper.Column{{Title: "station"}, {Title: "read", Right: true}}, Rows: rows, Blank: 4},
//			paper.Boxes{{Label: "Gap at the weld", Unit: "mm", Range: "up to 1.00 mm (39 thou)", From: "trade"}},
//			paper.Sign{"Trimmed by"},
//			paper.Notes{},
//		)
//		return p
//	}
//
// and p.WritePDF(w). What is empty is for the pencil: a Head without a number
// leaves the plate open, a Box without a text is a box to write in, Blank adds
// empty rows to a table. The same function thus prints a paper full and empty.
//
// # What the package sees to
//
// A paper is set as large as it goes on to one page, in steps down to letters of
// 7.5 points; what does not go then is set on several, each with the head, "page
// 1 of n" and "continued on page 2". Nothing is ever cut: texts wrap, rows and
// boxes with long texts are parted over pages, heads of tables are repeated. A
// letter that the face does not have is printed as □ and named at the foot.
//
// The blocks: Heading, Text, List, Answer, Caution, Mind, Table, Boxes, Columns,
// Balanced, Group, Picture, Grow, Code, Sign, Notes, Space. A block of another kind implements Block. Lengths are
// millimetres, from the top left corner of the strip that a block is drawn in.
package paper
