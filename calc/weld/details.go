package weld

import "axlewright/calc/check"

// Detail is a welded detail with a fatigue category.
type Detail string

// Details that come up on plates, pegs and caps. The first part of the list is
// EN 1993-1-9, the last four are the IIW's own figures for the same places.
const (
	ToeOfLoadCarryingFillet Detail = "toe of a load-carrying fillet, cruciform or tee"
	RootOfFillet            Detail = "root of a load-carrying fillet or partial butt"
	ShearAlongFillet        Detail = "shear along a fillet"
	OverlappingPlate        Detail = "overlapping plate at a side-welded lap"
	LapMainPlate            Detail = "main plate at a fillet-welded lap"
	EndOfAttachment         Detail = "end of an attachment along the stress"
	SlopedAttachment        Detail = "end of a long attachment sloped under 45°"
	RadiusedAttachment      Detail = "end of an attachment ground to a radius above 150 mm"
	EdgeAttachment          Detail = "attachment on the edge of a plate"
	StiffenerToe            Detail = "toe of a stiffener across the stress"
	EndOfThinnerCover       Detail = "end of a cover plate thinner than its plate"
	EndOfThickerCover       Detail = "end of a cover plate as thick as its plate or thicker"
	ContinuousFillet        Detail = "continuous fillet along the stress, by hand"
	IntermittentFillet      Detail = "intermittent fillet along the stress"
	CopeHole                Detail = "fillet along the stress with cope holes"
	ButtGroundFlush         Detail = "butt weld across the stress, ground flush"
	ButtAsWelded            Detail = "butt weld across the stress, as welded from both sides"

	IIWToeOfLoadCarryingFillet Detail = "IIW: toe of a load-carrying fillet"
	IIWToeOfFullPenetration    Detail = "IIW: toe of a full-penetration tee"
	IIWRootOfFillet            Detail = "IIW: root of a load-carrying fillet, throat stress"
	IIWShearAlongFillet        Detail = "IIW: shear along a fillet"
)

// A category of a detail, up to a length of attachment and a plate thickness (zero: any).
type category struct {
	length, thickness float64 // mm
	mpa               float64
}

type detailRow struct {
	detail     Detail
	source     string
	kind       StressKind
	categories []category
	note       string
}

var attachmentLengths = []category{{50, 0, 80}, {80, 0, 71}, {100, 0, 63}, {0, 0, 56}}

var loadCarrying = []category{
	{50, 0, 80}, {80, 0, 71}, {100, 0, 63}, {120, 0, 56}, {0, 20, 56},
	{200, 0, 50}, {0, 30, 50}, {300, 0, 45}, {0, 50, 45}, {0, 0, 40},
}

var detailRows = []detailRow{
	{ToeOfLoadCarryingFillet, "EN 1993-1-9:2005, table 8.5, 1", DirectRange, loadCarrying, "stress in the plate; check the root too"},
	{RootOfFillet, "EN 1993-1-9:2005, table 8.5, 3", DirectRange, []category{{0, 0, 36}}, "stress on the throat, √(σ_⊥² + τ_⊥²)"},
	{ShearAlongFillet, "EN 1993-1-9:2005, table 8.5, 8 and 9", ShearRange, []category{{0, 0, 80}}, "shear on the throat"},
	{OverlappingPlate, "EN 1993-1-9:2005, table 8.5, 5", DirectRange, []category{{0, 0, 45}}, "stress in the overlapping plate"},
	{LapMainPlate, "EN 1993-1-9:2005, table 8.5, 4", DirectRange, loadCarrying, "stress in the main plate, spread at 1 in 2"},
	{EndOfAttachment, "EN 1993-1-9:2005, table 8.4, 1", DirectRange, attachmentLengths, "length of the attachment along the stress"},
	{SlopedAttachment, "EN 1993-1-9:2005, table 8.4, 2", DirectRange, []category{{0, 0, 71}}, "longer than 100 mm, slope under 45°"},
	{RadiusedAttachment, "EN 1993-1-9:2005, table 8.4, 3", DirectRange, []category{{0, 0, 80}}, "radius cut or ground, weld end ground"},
	{EdgeAttachment, "EN 1993-1-9:2005, table 8.4, 5", DirectRange, []category{{0, 0, 40}}, "as welded, without a radius"},
	{StiffenerToe, "EN 1993-1-9:2005, table 8.4, 6 and 7", DirectRange, []category{{50, 0, 80}, {80, 0, 71}}, "stress in the plate"},
	{EndOfThinnerCover, "EN 1993-1-9:2005, table 8.5, 6", DirectRange, []category{{0, 20, 56}, {0, 30, 50}, {0, 50, 45}, {0, 0, 40}}, "thickness of the plate covered"},
	{EndOfThickerCover, "EN 1993-1-9:2005, table 8.5, 6", DirectRange, []category{{0, 20, 50}, {0, 30, 45}, {0, 50, 40}, {0, 0, 36}}, "thickness of the plate covered"},
	{ContinuousFillet, "EN 1993-1-9:2005, table 8.2, 5", DirectRange, []category{{0, 0, 100}}, "by hand; 112 by machine without stops"},
	{IntermittentFillet, "EN 1993-1-9:2005, table 8.2, 8", DirectRange, []category{{0, 0, 80}}, "gap over length 2.5 at most"},
	{CopeHole, "EN 1993-1-9:2005, table 8.2, 9", DirectRange, []category{{0, 0, 71}}, "cope holes 60 mm high at most"},
	{ButtGroundFlush, "EN 1993-1-9:2005, table 8.3, 1", DirectRange, []category{{0, 0, 112}}, "above 25 mm with the thickness factor; tested"},
	{ButtAsWelded, "EN 1993-1-9:2005, table 8.3, 5", DirectRange, []category{{0, 0, 90}}, "excess weld a tenth of its width at most; tested"},

	{IIWToeOfLoadCarryingFillet, "IIW recommendations, Hobbacher 2016, 413", DirectRange, []category{{0, 0, 63}}, "stress in the plate"},
	{IIWToeOfFullPenetration, "IIW recommendations, Hobbacher 2016, 412", DirectRange, []category{{0, 0, 71}}, "stress in the plate"},
	{IIWRootOfFillet, "IIW recommendations, Hobbacher 2016, 414", DirectRange, []category{{0, 0, 36}}, "stress on the throat"},
	{IIWShearAlongFillet, "IIW recommendations, Hobbacher 2016, table 3.2", ShearRange, []category{{0, 0, 80}}, "shear on the throat"},
}

// DetailParams is a welded detail with the sizes its category may hang on.
type DetailParams struct {
	Detail    Detail  // name, detail
	Length    float64 // m, ℓ: length of the attachment along the stress, or over both toes across it
	Thickness float64 // m, t: thickness of the stressed plate
}

// DetailCategoryResult is the fatigue category of a detail.
type DetailCategoryResult struct {
	Category float64 // Pa, Δσ_C or Δτ_C: strength at two million cycles
	Kind     string  // name, direct or shear: which curve it belongs to
	Source   string  // name, where the figure stands (from memory)
	Note     string  // name, which stress it is set against
}

// DetailCategory returns the fatigue category of a welded detail.
//
//	Δσ_C = table 8.2 to 8.5 by detail, length and thickness
//
// Valid for steel welded to a good standard and inspected. There is no published
// category for welds on iron: do not use one of these for it.
// Errors: *check.RangeError for an unknown detail, sizes that are not positive, or sizes the table leaves out.
// Source: EN 1993-1-9:2005, tables 8.2 to 8.5; IIW recommendations for fatigue design of welded joints, 2016 (from memory).
func DetailCategory(p DetailParams) (DetailCategoryResult, error) {
	const fn = "weld.DetailCategory"
	if err := check.All(fn, check.Positive("Length", p.Length), check.Positive("Thickness", p.Thickness)); err != nil {
		return DetailCategoryResult{}, err
	}
	for _, row := range detailRows {
		if row.detail != p.Detail {
			continue
		}
		for _, c := range row.categories {
			if fits(p.Length, c.length) && fits(p.Thickness, c.thickness) {
				return DetailCategoryResult{c.mpa * 1e6, string(row.kind), row.source, row.note}, nil
			}
		}
		return DetailCategoryResult{}, check.All(fn, check.That("Length", p.Length, false, "within the table of this detail"))
	}
	known := make([]Detail, len(detailRows))
	for i, row := range detailRows {
		known[i] = row.detail
	}
	return DetailCategoryResult{}, notNamed(fn, "Detail", p.Detail, known)
}

func fits(size, most float64) bool { return most == 0 || size <= most*1e-3*(1+1e-12) }
