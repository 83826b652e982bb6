package assess

import "axlewright/calc/ring"

// A memo keeps what is dear to work out and the same for several links and
// builds of one draw: the arch of a cap.
type memo struct{ caps map[string]ring.CapResult }

func newMemo() memo { return memo{caps: map[string]ring.CapResult{}} }

// cap returns the arch for a key, worked out once a draw. A nil memo keeps nothing.
func (m *memo) cap(key string, work func() (ring.CapResult, error)) (ring.CapResult, error) {
	if m == nil {
		return work()
	}
	if r, known := m.caps[key]; known {
		return r, nil
	}
	r, err := work()
	if err == nil {
		m.caps[key] = r
	}
	return r, err
}

// forget starts a new draw.
func (m *memo) forget() { clear(m.caps) }
