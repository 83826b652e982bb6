package loadpath

// memo keeps the last solutions of the pinion, which peg, caps and crown wheel
// do not touch, for the builds to come that share it.
type memo struct {
	valid bool
	next  int
	used  int
	kept  [16]pinionAt
}

type pinionAt struct {
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

func (m *memo) keep(flank Flank, torque float64, at *placement) {
	m.kept[m.next] = pinionAt{flank, torque, *at}
	m.next = (m.next + 1) % len(m.kept)
	m.used = max(m.used, m.next)
	if m.next == 0 {
		m.used = len(m.kept)
	}
}
