package kit

// A Bill lists the pieces of one kit.
type Bill struct {
	Rows  []BillRow
	Mass  float64 // kg, of one kit
	Area  float64 // m²
	Cut   float64 // m
	Etch  float64 // m
	Count int     // pieces in one kit
}

// A BillRow is one plate: the figures are of a single one.
type BillRow struct {
	Key       string // "1L"
	Name      string
	Count     int
	Steel     string
	Thickness float64 // m
	Long      float64 // m, of the box round it
	Wide      float64 // m
	Area      float64 // m²
	Mass      float64 // kg
	Cut       float64 // m, all edges
	Pierces   int
	Etch      float64 // m
	Weld      float64 // m, of edges to be welded
}

// Bill of the kit.
func (d *Drawn) Bill() Bill {
	var b Bill
	for i := range d.Plates {
		p := &d.Plates[i]
		box := p.Outline.Bounds()
		row := BillRow{
			Key: p.Key(), Name: p.Name, Count: p.Count, Steel: p.Steel, Thickness: p.Thickness,
			Long: box.Width(), Wide: box.Height(), Area: p.Area(), Mass: p.Mass(),
			Cut: p.CutLength(), Pierces: p.Pierces(), Etch: p.Etched.Length(), Weld: p.SeamLength(WeldSeam),
		}
		n := float64(row.Count)
		b.Rows = append(b.Rows, row)
		b.Mass += n * row.Mass
		b.Area += n * row.Area
		b.Cut += n * row.Cut
		b.Etch += n * row.Etch
		b.Count += row.Count
	}
	return b
}
