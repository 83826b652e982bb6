package assess

// A memo keeps what is dear to work out and the same for several links or
// builds of one draw.
type memo struct{ values map[memoKey]float64 }

type memoKey struct {
	what string
	part any // tells the parts of builds apart
}

func newMemo() memo { return memo{values: map[memoKey]float64{}} }

// get returns the value for a key, worked out once a draw.
func (m *memo) get(what string, part any, work func() (float64, error)) (float64, error) {
	if m == nil {
		return work()
	}
	key := memoKey{what, part}
	if v, known := m.values[key]; known {
		return v, nil
	}
	v, err := work()
	if err == nil {
		m.values[key] = v
	}
	return v, err
}

// forget starts a new draw.
func (m *memo) forget() { clear(m.values) }
