package weld

import "testing"

func TestEffectiveLengthRules(t *testing.T) {
	near(t, "cut ends", must(EffectiveLength(LengthParams{Length: 60 * mm, Throat: 4 * mm})), 52*mm, 1e-12)
	near(t, "returned ends", must(EffectiveLength(LengthParams{60 * mm, 4 * mm, true})), 60*mm, 1e-12)
	near(t, "just 30 mm", must(EffectiveLength(LengthParams{Length: 36 * mm, Throat: 3 * mm})), 30*mm, 1e-12)
	_, err := EffectiveLength(LengthParams{Length: 35.9 * mm, Throat: 3 * mm})
	refused(t, "Length", err)
	_, err = EffectiveLength(LengthParams{Length: 60 * mm, Throat: 8 * mm}) // 44 mm < 6·8
	refused(t, "Length", err)
}

func TestLongLapFactorFallsFromOneAt150Throats(t *testing.T) {
	near(t, "150 a", must(LongLapFactor(LapParams{600 * mm, 4 * mm})), 1, 1e-15)
	near(t, "300 a", must(LongLapFactor(LapParams{1200 * mm, 4 * mm})), 0.8, 1e-12)
	near(t, "450 a", must(LongLapFactor(LapParams{1800 * mm, 4 * mm})), 0.6, 1e-12)
	_, err := LongLapFactor(LapParams{2.5, 4 * mm})
	refused(t, "Lap", err)
}
