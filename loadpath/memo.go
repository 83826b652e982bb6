package loadpath

// memo keeps the last solutions of a system without the peg. They serve every
// build that shares the system: the pinion's feels neither peg nor caps, and the
// wheel's is where every peg starts from and what it is measured against.
type memo struct {
	next int
	used int
	kept [16]kept
}

type kept struct {
	flank  Flank
	torque float64
	at     placement
}

func (m *memo) clear() { m.next, m.used = 0, 0 }

func (m *memo) find(flank Flank, torque float64) *placement {
	for i := range m.used {
		if k := &m.kept[i]; k.torque == torque && k.flank == flank {
			return &k.at
		}
	}
	return nil
}

// keep takes the place of the oldest.
func (m *memo) keep(flank Flank, torque float64, at *placement) *placement {
	k := &m.kept[m.next]
	*k = kept{flank, torque, *at}
	m.next = (m.next + 1) % len(m.kept)
	m.used = min(m.used+1, len(m.kept))
	return &k.at
}
