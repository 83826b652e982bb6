package kit

import (
	"math"
	"strconv"
)

// mm prints a length in millimetres to a micrometre: "10.2 mm".
func mm(x float64) string { return bareMM(x) + " mm" }

// bareMM prints it without its unit.
func bareMM(x float64) string {
	return strconv.FormatFloat(math.Round(x*1e6)/1e3+0, 'f', -1, 64)
}
