package kit

import (
	"fmt"
	"math"
	"strconv"

	"axlewright/calc/material"
	"axlewright/kit/outline"
)

// pieces draws every piece, and both hands of a pair.
func (d *draft) pieces() {
	seen := map[int]bool{}
	for i := range d.k.Pieces {
		p := &d.k.Pieces[i]
		number, err := strconv.Atoi(p.Number.Text)
		if err != nil || number < 1 || number > 999 || seen[number] {
			d.bad(p.Number, fmt.Sprintf("pieces[%d].number", i), "pieces are numbered from 1 to 999, each once")
			continue
		}
		seen[number] = true
		d.piece(p, number)
	}
}

// plates of 0.5 to 60 mm are cut from sheet and plate.
const thinnest, thickest = 0.5e-3, 60e-3

func (d *draft) piece(p *Piece, number int) {
	field := fmt.Sprintf("pieces[%d]", number)
	before := len(d.found)
	plate := Plate{Kit: d.done.Name, Casting: d.k.Casting, Piece: number, Name: p.Name, Count: max(p.Count, 1)}
	if p.Count < 0 || p.Count > 100 {
		d.bad(p.Number, field+".count", "%d in a kit; expected 1 to 100", p.Count)
	}
	plate.Thickness = d.within(p.Thickness, field+".thickness", d.known, 0, thickest)
	if plate.Thickness < thinnest {
		d.bad(p.Thickness, field+".thickness", "expected %s to %s", mm(thinnest), mm(thickest))
	}
	if metal, err := material.Lookup(p.Steel.Text); err != nil {
		d.bad(p.Steel, field+".steel", "%v", err)
	} else {
		plate.Steel, plate.Density = metal.Name, metal.Density
	}
	grain, known := grains[p.Grain.Text]
	if !known {
		d.bad(p.Grain, field+".grain", "%q; expected along, across or any", p.Grain.Text)
	}
	plate.Grain = grain
	scope, known := d.frames[p.Frame.Text]
	if !known {
		d.bad(p.Frame, field+".frame", "there is no frame %q", p.Frame.Text)
		return
	}
	for _, f := range d.k.Frames {
		if f.Name.Text == p.Frame.Text {
			plate.Frame = f
		}
	}
	var follows map[int]outline.Point
	plate.Outline, follows = d.rim(p.Outline, field+".outline", scope, p.Number)
	d.stations(&plate, p, follows, field)
	d.holes(&plate, p, scope, field)
	d.cutouts(&plate, p, scope, field)
	if len(d.found) > before {
		return
	}
	d.ligaments(&plate, p, field)
	if len(d.found) == before {
		d.hands(plate, p, scope, field)
	}
}

// hands etches the plate and adds it, or both of a pair.
func (d *draft) hands(plate Plate, p *Piece, scope names, field string) {
	hands := []Plate{plate}
	switch p.Hand.Text {
	case "", "none":
	case "left":
		hands[0].Hand = Left
	case "right":
		hands[0].Hand = Right
	case "pair":
		hands[0].Hand = Left
		hands = append(hands, plate.mirrored())
	default:
		d.bad(p.Hand, field+".hand", "%q; expected pair, left, right or none", p.Hand.Text)
		return
	}
	var twin *Plate
	for i := range hands {
		before := len(d.found)
		d.etch(&hands[i], p, scope, field+".mark", twin)
		if len(d.found) > before {
			return
		}
		d.done.Plates = append(d.done.Plates, hands[i])
		twin = &hands[i]
	}
}

// stations notes which corner follows which station.
func (d *draft) stations(plate *Plate, p *Piece, follows map[int]outline.Point, field string) {
	at := d.at[p.Frame.Text]
	for _, s := range plate.Frame.Stations {
		if corner, does := follows[s.Number]; does {
			plate.Stations = append(plate.Stations, StationPoint{s.Number, s.Name, at[s.Number], corner})
		}
	}
	for number := range follows {
		if _, known := at[number]; !known {
			d.bad(p.Number, field+".outline", "it follows station %d, which frame %q does not have", number, p.Frame.Text)
		}
	}
}

// tabsAndSlots demands that slots for tabs are 0.2 to 0.3 mm larger than the
// tabs and plates that go into them (common practice, no source).
func (d *draft) tabsAndSlots() {
	for i := range d.k.Pieces {
		p := &d.k.Pieces[i]
		for _, s := range p.Slots {
			if !s.Tab.Given() {
				continue
			}
			field := fmt.Sprintf("pieces[%s].slots[%s]", p.Number.Text, s.Label.Text)
			other := d.pieceNumbered(s.Tab.Text)
			if other == nil {
				d.bad(s.Tab, field+".tab", "there is no piece %q", s.Tab.Text)
				continue
			}
			long, _ := d.length(s.Long, field, d.frames[p.Frame.Text])
			wide, _ := d.length(s.Wide, field, d.frames[p.Frame.Text])
			thick, _ := d.length(other.Thickness, field, d.known)
			if !clears(wide, thick) {
				d.bad(s.Wide, field+".wide", "piece %s is %s thick; a slot for it is 0.2 to 0.3 mm wider, not %s", s.Tab.Text, mm(thick), mm(wide))
			}
			fits := false
			for _, step := range other.Outline {
				for _, t := range step.Tabs {
					w, _ := d.length(t.Wide, field, d.frames[other.Frame.Text])
					fits = fits || clears(long, w)
				}
			}
			if !fits {
				d.bad(s.Long, field+".long", "no tab of piece %s is 0.2 to 0.3 mm less wide than %s", s.Tab.Text, mm(long))
			}
		}
	}
}

func clears(slot, tab float64) bool {
	gap := slot - tab
	return gap > 0.2e-3-outline.Touch && gap < 0.3e-3+outline.Touch
}

func (d *draft) pieceNumbered(text string) *Piece {
	for i := range d.k.Pieces {
		if d.k.Pieces[i].Number.Text == text {
			return &d.k.Pieces[i]
		}
	}
	return nil
}

// degrees works out an angle in degrees, as radians; nothing is nought.
func (d *draft) degrees(t Typed, field string, scope names) float64 {
	x, _ := d.plain(t, field, scope)
	return x * math.Pi / 180
}
