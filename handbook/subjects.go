package handbook

import "axlewright/calc/bolt"

var subjects = [][]any{{bolt.StressArea}}
