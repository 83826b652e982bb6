package handbook

import "axlewright/calc/bolt"

// subjects lists every formula function of calc. Go cannot list them itself;
// a test compares this with the source text, so none is forgotten.
var subjects = [][]any{boltFormulas}

var boltFormulas = []any{
	bolt.StressArea,
}
