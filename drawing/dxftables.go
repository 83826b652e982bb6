package drawing

// Handles of what every R2000 file has. Entities begin at firstFree.
const (
	vportTable = 1 + iota
	ltypeTable
	layerTable
	styleTable
	viewTable
	ucsTable
	appidTable
	dimstyleTable
	blockTable
	vportActive
	ltypeByBlock
	ltypeByLayer
	ltypeFull
	ltypeDashed
	layerZero
	layerMark
	layerCut
	layerGuide
	styleStandard
	appidAcad
	dimstyleStandard
	modelSpace
	paperSpace
	modelBlock
	modelEnd
	paperBlock
	paperEnd
	rootDictionary
	groupDictionary
	firstFree = 0x40
)

// tablesR12 holds line types, layers and the one style of letters.
func (d *dxf) tablesR12() {
	d.section("TABLES", func() {
		d.tableR12("LTYPE", 2, func() {
			d.lineType(0, "CONTINUOUS", "Solid line", false)
			d.lineType(0, "DASHED", "__ __ __", true)
		})
		d.tableR12("LAYER", 1+len(cutLayers), func() {
			d.layerRow(0, "0", 7, false)
			for _, l := range cutLayers {
				d.layerRow(0, string(l.name), l.colour, l.dashed)
			}
		})
		d.tableR12("STYLE", 1, func() { d.styleRow() })
	})
}

func (d *dxf) tableR12(name string, rows int, body func()) {
	d.group(0, "TABLE")
	d.group(2, name)
	d.integer(70, rows)
	body()
	d.group(0, "ENDTAB")
}

// tablesR2000 holds every table that the version demands, empty ones too.
func (d *dxf) tablesR2000() {
	d.section("TABLES", func() {
		d.table("VPORT", vportTable, 1, func() {
			d.row("VPORT", vportActive, vportTable, "AcDbViewportTableRecord")
			d.group(2, "*ACTIVE")
			d.integer(70, 0)
			for _, pair := range [][3]float64{{10, 0, 0}, {11, 1, 1}, {12, 100, 100}, {13, 0, 0}, {14, 10, 10}, {15, 10, 10}} {
				d.number(int(pair[0]), pair[1])
				d.number(int(pair[0])+10, pair[2])
			}
			for _, code := range []int{16, 26} {
				d.number(code, 0)
			}
			d.number(36, 1)
			for _, code := range []int{17, 27, 37} {
				d.number(code, 0)
			}
			d.number(40, 300) // height of the view
			d.number(41, 1.5)
			d.number(42, 50)
			for _, code := range []int{43, 44, 50, 51} {
				d.number(code, 0)
			}
			for _, pair := range [][2]int{{71, 0}, {72, 100}, {73, 1}, {74, 3}, {75, 0}, {76, 0}, {77, 0}, {78, 0}} {
				d.integer(pair[0], pair[1])
			}
		})
		d.table("LTYPE", ltypeTable, 4, func() {
			d.lineType(ltypeByBlock, "ByBlock", "", false)
			d.lineType(ltypeByLayer, "ByLayer", "", false)
			d.lineType(ltypeFull, "CONTINUOUS", "Solid line", false)
			d.lineType(ltypeDashed, "DASHED", "__ __ __", true)
		})
		d.table("LAYER", layerTable, 1+len(cutLayers), func() {
			d.layerRow(layerZero, "0", 7, false)
			for i, l := range cutLayers {
				d.layerRow(layerMark+i, string(l.name), l.colour, l.dashed)
			}
		})
		d.table("STYLE", styleTable, 1, d.styleRow)
		d.table("VIEW", viewTable, 0, func() {})
		d.table("UCS", ucsTable, 0, func() {})
		d.table("APPID", appidTable, 1, func() {
			d.row("APPID", appidAcad, appidTable, "AcDbRegAppTableRecord")
			d.group(2, "ACAD")
			d.integer(70, 0)
		})
		d.table("DIMSTYLE", dimstyleTable, 1, d.dimensionStyle)
		d.table("BLOCK_RECORD", blockTable, 2, func() {
			for _, r := range []struct {
				handle int
				name   string
			}{{modelSpace, "*Model_Space"}, {paperSpace, "*Paper_Space"}} {
				d.row("BLOCK_RECORD", r.handle, blockTable, "AcDbBlockTableRecord")
				d.group(2, r.name)
			}
		})
	})
}

func (d *dxf) table(name string, handle, rows int, body func()) {
	d.group(0, "TABLE")
	d.group(2, name)
	d.handle(handle)
	d.group(330, "0")
	d.group(100, "AcDbSymbolTable")
	d.integer(70, rows)
	if name == "DIMSTYLE" {
		d.group(100, "AcDbDimStyleTable")
		d.integer(71, rows)
	}
	body()
	d.group(0, "ENDTAB")
}

// row begins a record of a table. The handle of a dimension style has a group
// code of its own.
func (d *dxf) row(kind string, handle, owner int, class string) {
	d.group(0, kind)
	if d.r2000 {
		if kind == "DIMSTYLE" {
			d.group(105, hex(handle))
		} else {
			d.handle(handle)
		}
	}
	d.owner(owner)
	d.class("AcDbSymbolTableRecord")
	d.class(class)
}

func (d *dxf) lineType(handle int, name, picture string, dashed bool) {
	d.row("LTYPE", handle, ltypeTable, "AcDbLinetypeTableRecord")
	d.group(2, name)
	d.integer(70, 0)
	d.group(3, picture)
	d.integer(72, 65)
	if !dashed {
		d.integer(73, 0)
		d.number(40, 0)
		return
	}
	d.integer(73, 2)
	d.number(40, 6)
	for _, dash := range []float64{4, -2} {
		d.number(49, dash)
		if d.r2000 {
			d.integer(74, 0)
		}
	}
}

func (d *dxf) layerRow(handle int, name string, colour int, dashed bool) {
	d.row("LAYER", handle, layerTable, "AcDbLayerTableRecord")
	d.group(2, name)
	d.integer(70, 0)
	d.integer(62, colour)
	line := "CONTINUOUS"
	if dashed {
		line = "DASHED"
	}
	d.group(6, line)
	if d.r2000 && name == string(GuideLine) {
		d.integer(290, 0) // not plotted
	}
}

func (d *dxf) styleRow() {
	d.row("STYLE", styleStandard, styleTable, "AcDbTextStyleTableRecord")
	d.group(2, "STANDARD")
	d.integer(70, 0)
	d.number(40, 0)
	d.number(41, 1)
	d.number(50, 0)
	d.integer(71, 0)
	d.number(42, 2.5)
	d.group(3, "txt")
	d.group(4, "")
}

func (d *dxf) dimensionStyle() {
	d.row("DIMSTYLE", dimstyleStandard, dimstyleTable, "AcDbDimStyleTableRecord")
	d.group(2, "STANDARD")
	d.integer(70, 0)
}

// blocksR2000 writes the two spaces that every file has, empty.
func (d *dxf) blocksR2000() {
	d.section("BLOCKS", func() {
		for _, b := range []struct {
			name              string
			begin, end, owner int
			paper             bool
		}{{"*Model_Space", modelBlock, modelEnd, modelSpace, false}, {"*Paper_Space", paperBlock, paperEnd, paperSpace, true}} {
			part := func(kind string, handle int, class string) {
				d.group(0, kind)
				d.handle(handle)
				d.owner(b.owner)
				d.class("AcDbEntity")
				if b.paper {
					d.integer(67, 1)
				}
				d.group(8, "0")
				d.class(class)
			}
			part("BLOCK", b.begin, "AcDbBlockBegin")
			d.group(2, b.name)
			d.integer(70, 0)
			for _, code := range []int{10, 20, 30} {
				d.number(code, 0)
			}
			d.group(3, b.name)
			d.group(1, "")
			part("ENDBLK", b.end, "AcDbBlockEnd")
		}
	})
}

// objects writes the root dictionary and the empty one of groups.
func (d *dxf) objects() {
	d.section("OBJECTS", func() {
		d.group(0, "DICTIONARY")
		d.handle(rootDictionary)
		d.owner(0)
		d.class("AcDbDictionary")
		d.integer(281, 1)
		d.group(3, "ACAD_GROUP")
		d.group(350, hex(groupDictionary))
		d.group(0, "DICTIONARY")
		d.handle(groupDictionary)
		d.owner(rootDictionary)
		d.class("AcDbDictionary")
		d.integer(281, 1)
	})
}
