package axle

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"axlewright/calc/fatigue"
	"axlewright/quantity"
)

// recordBands is how many steps of torque a record is sorted into each way.
const recordBands = 20

// Blocks sorts a record into the blocks of a duty: time at each level of
// torque and way of going, which is what teeth and bearings count. Each block
// has the torque at the upper edge of its level, so that the peak is kept and
// no load is taken lighter than it was; governing is the torque of which the
// blocks state a share, in N·m.
//
// Errors: a record that covers no distance or has no torque.
func (r Record) Blocks(governing float64) ([]Block, error) {
	var highest, lowest float64
	for _, t := range r.Torques {
		highest, lowest = math.Max(highest, t), math.Min(lowest, t)
	}
	if highest == 0 && lowest == 0 {
		return nil, fmt.Errorf("the record has no torque in it")
	}
	edges, tops := torqueEdges(lowest, highest)
	var times, ways [2][]float64 // forward and backward, by level: s, m
	for backward := range 2 {
		times[backward], ways[backward] = make([]float64, len(tops)), make([]float64, len(tops))
	}
	for from := 0; from+1 < len(r.Times); {
		backward := r.backward(from)
		to := from + 1
		for to+1 < len(r.Times) && r.backward(to) == backward {
			to++
		}
		levels, err := fatigue.TimeAtLevel(fatigue.TimeAtLevelParams{
			Times: r.Times[from : to+1], Loads: r.Torques[from : to+1], Speeds: r.Speeds[from : to+1], Edges: edges,
		})
		if err != nil {
			return nil, err
		}
		way := 0
		if backward {
			way = 1
		}
		for i, t := range levels.Durations {
			times[way][i] += t
			ways[way][i] += t * levels.MeanSpeeds[i]
		}
		from = to
	}
	return blocksOf(times, ways, tops, governing)
}

// cycleSteps is how finely ranges and means of torque cycles are told apart:
// a long record has few kinds of cycle.
const cycleSteps = 64

// TorqueCycles counts the record's cycles of torque by the rainflow method, as
// fractions of the governing torque in N·m. Ranges are rounded up, means to the
// nearest step.
//
// Errors: a record that covers no distance or has no torque.
func (r Record) TorqueCycles(governing float64) ([]TorqueCycle, error) {
	counted, err := r.Cycles()
	if err != nil {
		return nil, err
	}
	distance, widest := 0.0, 0.0
	for i := 1; i < len(r.Times); i++ {
		distance += math.Abs(r.Speeds[i-1]+r.Speeds[i]) / 2 * (r.Times[i] - r.Times[i-1])
	}
	for _, c := range counted {
		widest = math.Max(widest, c.Range)
	}
	if distance == 0 || widest == 0 {
		return nil, fmt.Errorf("the record covers no distance or its torque never changes")
	}
	type kind struct{ span, mean int }
	step, counts := widest/cycleSteps, map[kind]float64{}
	for _, c := range counted {
		counts[kind{int(math.Ceil(c.Range/step - 1e-9)), int(math.Round(c.Mean / step))}] += c.Count
	}
	var list []TorqueCycle
	for k, n := range counts {
		mean, half := float64(k.mean)*step, float64(k.span)*step/2
		list = append(list, TorqueCycle{(mean - half) / governing, (mean + half) / governing, n / distance})
	}
	slices.SortFunc(list, func(a, b TorqueCycle) int {
		return cmp.Or(cmp.Compare(b.High-b.Low, a.High-a.Low), cmp.Compare(b.High, a.High))
	})
	return list, nil
}

// backward says whether the vehicle rolls backward between a sample and the next.
func (r Record) backward(i int) bool { return r.Speeds[i]+r.Speeds[i+1] < 0 }

// torqueEdges are the edges of the levels, and for each level the torque that
// stands for it.
func torqueEdges(lowest, highest float64) (edges, tops []float64) {
	const nudge = 1 + 1e-9 // a stretch at the very peak belongs to the last level
	if lowest < 0 {
		for i := recordBands; i > 0; i-- {
			edge := lowest * float64(i) / recordBands
			edges, tops = append(edges, edge), append(tops, edge)
		}
	}
	edges = append(edges, 0)
	if highest > 0 {
		for i := 1; i <= recordBands; i++ {
			edge := highest * float64(i) / recordBands
			edges, tops = append(edges, edge), append(tops, edge)
		}
		edges[len(edges)-1] *= nudge
	}
	if highest == 0 { // so that a stretch without torque has a level
		edges, tops = append(edges, -lowest/recordBands), append(tops, 0)
	}
	return edges, tops
}

func blocksOf(times, ways [2][]float64, tops []float64, governing float64) ([]Block, error) {
	distance := 0.0
	for way := range ways {
		for _, s := range ways[way] {
			distance += s
		}
	}
	if distance == 0 {
		return nil, fmt.Errorf("the record covers no distance: its speed is zero throughout")
	}
	var blocks []Block
	for way := range ways {
		for i, top := range tops {
			if times[way][i] == 0 {
				continue
			}
			going := Forward
			switch { // by the flank that carries, which the torque's sense decides
			case top < 0 && way == 0:
				going = Overrun
			case top < 0:
				going = Reverse
			}
			name := fmt.Sprintf("%s at %s", going, quantity.Format(math.Abs(top), quantity.Torque))
			if way == 1 && top >= 0 {
				name = fmt.Sprintf("held back in reverse at %s", quantity.Format(top, quantity.Torque))
			}
			b := Block{Name: name, Going: going}
			b.Share.Number = logged(ways[way][i]/distance, quantity.Number)
			b.Speed.Number = logged(ways[way][i]/times[way][i], quantity.Speed)
			b.AxleTorque.Number = logged(math.Abs(top), quantity.Torque)
			b.Torque.Number = logged(math.Abs(top)/governing, quantity.Number)
			b.Torque.Certain = false // the next journey may be harder: the catalogue's doubt goes
			blocks = append(blocks, b)
		}
	}
	return blocks, nil
}

// logged is a figure out of a record.
func logged(x float64, dim quantity.Dimension) Number {
	return Number{
		Value: x, Low: x, High: x, Origin: Measured, Certain: true, Kind: string(dim),
		Text: quantity.Format(x, dim) + ", measured",
	}
}

// settleDuty works the enquiry's duty out for its vehicle, where it was logged
// or states torques.
func (r *reading) settleDuty(e *Enquiry, c *Catalogue) {
	for i := range c.Duties {
		d := &c.Duties[i]
		if d.Name != e.Duty {
			continue
		}
		field := "duties[" + d.Name + "]"
		g, err := c.GearSet(e.Gears)
		if err != nil {
			return // told with the enquiry
		}
		demand, err := e.Vehicle.Demand(&g, e.Mounting.Position)
		if err != nil {
			r.about(field, "cannot be set against what the vehicle can do: %s", sentence(err))
			return
		}
		if d.Record != "" {
			r.settleRecord(d, &g, demand.Governing, field, c.DefaultDoubts)
			return
		}
		for k := range d.Blocks {
			if b := &d.Blocks[k]; b.AxleTorque.Given() {
				b.Torque.Number = b.AxleTorque.over(demand.Governing)
			}
		}
	}
}

func (r *reading) settleRecord(d *Duty, g *GearSet, governing float64, field string, defaults []DefaultDoubt) {
	record, err := ReadRecord(d.Record)
	if err != nil {
		found, _ := err.(Findings)
		r.found = append(r.found, found...)
		return
	}
	if record.Propshaft {
		for i := range record.Torques {
			record.Torques[i] *= g.Ratio()
		}
	}
	if d.Blocks, err = record.Blocks(governing); err != nil {
		r.about(field+".record", "%s: %s", d.Record, sentence(err))
		return
	}
	if d.Cycles, err = record.TorqueCycles(governing); err != nil {
		r.about(field+".record", "%s: %s", d.Record, sentence(err))
	}
	settleDoubts(d, defaults)
}

// over is the figure as a share of x.
func (n Number) over(x float64) Number {
	n.Value, n.Low, n.High = n.Value/x, n.Low/x, n.High/x
	choices := n.Choices
	n.Choices = nil
	for _, c := range choices {
		n.Choices = append(n.Choices, Choice{c.Value / x, c.Share})
	}
	n.Kind, n.typed = string(quantity.Number), ""
	return n
}
