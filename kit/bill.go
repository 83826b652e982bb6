package kit

// A Bill lists the pieces of one kit.
type Bill struct {
	Rows  []BillRow `json:"rows"`
	Mass  float64   `json:"mass"`  // kg, of one kit
	Area  float64   `json:"area"`  // m²
	Cut   float64   `json:"cut"`   // m
	Etch  float64   `json:"etch"`  // m
	Count int       `json:"count"` // pieces in one kit
}

// A BillRow is one plate: the figures are of a single one.
type BillRow struct {
	Key       string  `json:"key"` // "1L"
	Name      string  `json:"name"`
	Count     int     `json:"count"`
	Steel     string  `json:"steel"`
	Thickness float64 `json:"thickness"` // m
	Long      float64 `json:"long"`      // m, of the box round it
	Wide      float64 `json:"wide"`      // m
	Area      float64 `json:"area"`      // m²
	Mass      float64 `json:"mass"`      // kg
	Cut       float64 `json:"cut"`       // m, all edges
	Pierces   int     `json:"pierces"`
	Etch      float64 `json:"etch"` // m
	Weld      float64 `json:"weld"` // m, of edges to be welded
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
