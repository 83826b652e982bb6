package assess

import "math"

// Beyond is the give-out torque of a link that holds up to the highest torque
// looked at.
var Beyond = math.Inf(1)

// giveOut returns the least torque between zero and highest at which
// excess(torque), demand less capacity, rises to zero. A link that is over its
// capacity before any torque acts gives out at zero; one that still holds at
// highest returns Beyond.
//
// The range is first walked in steps, so that the least root of a curve that
// turns back is found, then the step that holds it is closed by the secant
// method kept inside its bracket (the Illinois form of regula falsi; Dowell &
// Jarratt, BIT 11, 1971).
func giveOut(highest, tolerance float64, excess func(torque float64) float64) float64 {
	const steps = 6
	low, fLow := 0.0, excess(0)
	if fLow >= 0 {
		return 0
	}
	for i := 1; i <= steps; i++ {
		high := highest * float64(i) / steps
		fHigh := excess(high)
		if fHigh >= 0 {
			return illinois(low, high, fLow, fHigh, tolerance, excess)
		}
		low, fLow = high, fHigh
	}
	return Beyond
}

// illinois closes a bracket with fLow < 0 <= fHigh.
func illinois(low, high, fLow, fHigh, tolerance float64, f func(float64) float64) float64 {
	kept := 0 // which end has been kept: -1 low, +1 high
	for range 60 {
		if high-low <= tolerance || fHigh == 0 {
			break
		}
		mid := (low*fHigh - high*fLow) / (fHigh - fLow)
		if !(mid > low && mid < high) {
			mid = (low + high) / 2
		}
		fMid := f(mid)
		if fMid >= 0 {
			if math.Abs(mid-high) <= tolerance {
				return mid
			}
			high, fHigh = mid, fMid
			if kept == -1 {
				fLow /= 2
			}
			kept = -1
		} else {
			if math.Abs(mid-low) <= tolerance && high-low <= 2*tolerance {
				return mid
			}
			low, fLow = mid, fMid
			if kept == 1 {
				fHigh /= 2
			}
			kept = 1
		}
	}
	return high
}
