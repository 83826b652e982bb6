package shop

// How the bands of the trade are written in the tables of steps. All of them
// are shown as what they are: the manual of the axle on the bench wins.

const (
	custom    = "common practice, no source"
	published = "published for axles of this kind; the manual of the axle on the bench wins"
)

func metres(mm float64) *float64 { x := mm * 1e-3; return &x }

// between is a band in millimetres.
func between(low, high float64, kind, source string) Limit {
	return Limit{Low: metres(low), High: metres(high), Kind: kind, Origin: Trade, Source: source}
}

// upTo is a band in millimetres without a lower end.
func upTo(high float64, kind, source string) Limit {
	return Limit{High: metres(high), Kind: kind, Origin: Trade, Source: source}
}

// newtonMetres is a band of torque.
func newtonMetres(low, high float64, kind, source string) Limit {
	return Limit{Low: &low, High: &high, Kind: kind, Origin: Trade, Source: source}
}

// celsius is a band of temperature; either end may be left out as below -273.
func celsius(low, high float64, kind, source string) Limit {
	l := Limit{Kind: kind, Origin: Trade, Source: source}
	if low > -273 {
		x := low + 273.15
		l.Low = &x
	}
	if high > -273 {
		x := high + 273.15
		l.High = &x
	}
	return l
}

// when makes a band that holds only where a word was chosen at the same step.
func when(field, word string, l Limit) Limit {
	l.When = &When{field, word}
	return l
}

const noEnd = -1000 // of celsius

// plain makes options that are neither good nor bad.
func plain(words ...string) []Option {
	var all []Option
	for _, w := range words {
		all = append(all, Option{Word: w, Verdict: NotYet})
	}
	return all
}

func fine(word string) Option       { return Option{Word: word, Verdict: Fine} }
func look(word, says string) Option { return Option{Word: word, Verdict: Look, Says: says} }
func halt(word, says string) Option { return Option{Word: word, Verdict: Halt, Says: says} }

// numbered returns the places "1" to "n".
func numbered(n int) []string {
	names := []string{"1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12"}
	return names[:n:n]
}
