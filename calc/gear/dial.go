package gear

import (
	"math"

	"axlewright/calc/check"
)

// DialSetting says how the plunger of a dial stands on the tooth.
type DialSetting string

const (
	DialTangential DialSetting = "tangential" // along the circle of the wheel: reads the lash
	DialSquare     DialSetting = "square"     // square to the flank, which is mis-set: reads too little
)

// DialLashParams is what a dial shows of a lash.
type DialLashParams struct {
	Lash          float64     // m, j: lash along a circle of the wheel, or the reading where it is turned round
	LashRadius    float64     // m, radius of that circle
	DialRadius    float64     // m, radius at which the dial touches, the heel as a rule
	Setting       DialSetting // name, how the plunger stands
	SpiralAngle   float64     // rad, β: spiral angle where the dial touches; for the square setting
	PressureAngle float64     // rad, α_n: pressure angle of the flank it touches; for the square setting
}

// DialReading returns what a dial on a tooth of the crown wheel shows of a lash.
//
//	reading = j·r_dial/r_lash, times cos α_n·cos β where it stands square to the tooth
//
//	reading  what the dial shows, m
//
// Valid for 10° ≤ α_n ≤ 35° and 0 ≤ β < 60° with the square setting.
// Errors: *check.RangeError outside that range.
// Source: derived from the direction of the flank; setting the dial along the
// circle at the heel is common practice.
func DialReading(p DialLashParams) (float64, error) {
	share, err := p.share("gear.DialReading")
	return p.Lash * share, err
}

// LashFromDial returns the lash along a circle of the wheel behind the reading of a dial.
//
//	j = reading·r_lash/r_dial, over cos α_n·cos β where it stood square to the tooth
//
//	j  lash along the circle of the wheel, m
//
// The reading goes in as Lash.
//
// Valid for 10° ≤ α_n ≤ 35° and 0 ≤ β < 60° with the square setting.
// Errors: *check.RangeError as DialReading.
// Source: as DialReading, turned round.
func LashFromDial(p DialLashParams) (float64, error) {
	share, err := p.share("gear.LashFromDial")
	if err != nil {
		return 0, err
	}
	return p.Lash / share, nil
}

// share of the lash that the dial shows.
func (p DialLashParams) share(fn string) (float64, error) {
	if err := check.All(fn,
		check.Finite("Lash", p.Lash), check.Positive("LashRadius", p.LashRadius), check.Positive("DialRadius", p.DialRadius),
		check.That("Setting", 0, p.Setting == DialTangential || p.Setting == DialSquare, "tangential or square"),
	); err != nil {
		return 0, err
	}
	share := p.DialRadius / p.LashRadius
	if p.Setting == DialTangential {
		return share, nil
	}
	return share * math.Cos(p.PressureAngle) * math.Cos(p.SpiralAngle), check.All(fn,
		check.That("PressureAngle", p.PressureAngle, within(p.PressureAngle, 10, 35), "10° to 35°"),
		check.That("SpiralAngle", p.SpiralAngle, p.SpiralAngle >= 0 && p.SpiralAngle < maxSpiral, "0 to below 60°"))
}
