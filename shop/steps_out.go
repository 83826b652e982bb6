package shop

import "axlewright/quantity"

var stepsOut = []Step{
	{
		Key: "run", Title: "Oil and first run",
		Decides: "Oil, breather, and how the first kilometres are driven.",
		Mistake: "A blocked breather: the pinion seal goes.",
		Papers:  []Paper{PaperCare},
		Fields: []Field{
			{Key: "oil", Title: "Oil", Kind: FieldText, Optional: true, Hint: "Kind and how much; the gear maker's grade wins."},
			{Key: "breather", Title: "Breather clear", Kind: FieldChoice, Options: []Option{fine("yes"), look("no", "")}},
			{Key: "turned", Title: "Turned by hand through a full turn of the wheel", Kind: FieldChoice, Options: []Option{fine("smooth"), look("tight spot", "Find it before it goes out.")}},
			{Key: "temperature", Title: "Case after a run", Kind: FieldFigure, Dim: quantity.Temperature, Unit: "°C", Optional: true, Limits: []Limit{celsius(noEnd, 100, "after a hard run; above 120 °C and climbing: stop", custom)}},
		},
		Cautions: []string{"The case is at 60 to 100 °C after a run: gloves. Under a vehicle: stands, never a jack alone.", "Who drives it on a road needs what the law there asks for an altered axle: local codes and licensed inspection decide."},
	},
	{
		Key: "handover", Title: "Handover",
		Decides: "What goes out with it, and what is promised.",
		Mistake: "A certificate that reads like a rating: it says what was done and measured, no more.",
		Papers:  []Paper{PaperCertificate, PaperBuildRecord, PaperSetUpSheet, PaperCare},
		Fields: []Field{
			{Key: "day", Title: "Handed over on", Kind: FieldDay},
			{Key: "to", Title: "To", Kind: FieldText, Optional: true},
			{Key: "papers", Title: "Given along", Kind: FieldChoices, Options: plain("set-up sheet", "certificate", "care sheet", "tag")},
			{Key: "warranty", Title: "Warranty: what, until when", Kind: FieldText, Optional: true},
		},
		Cautions: []string{"No strength rating and no road approval are given: local codes and licensed inspection decide. A built unit weighs up to 45 kg."},
	},
	{
		Key: "return", Title: "Return and failure",
		Decides: "What broke, why, and whose it is.",
		Mistake: "Scrapping it before photographs, oil and readings are compared with the record. Failing twice for a cause unknown is the dearest thing there is.",
		Papers:  []Paper{PaperReturn},
		Fields: []Field{
			{Key: "day", Title: "Came back on", Kind: FieldDay, Optional: true},
			{Key: "distance", Title: "Distance since handover", Kind: FieldFigure, Whole: true, Dim: quantity.Length, Unit: "km", Optional: true},
			{Key: "complaint", Title: "Complaint", Kind: FieldText, Optional: true},
			{Key: "evidence", Title: "Seen", Kind: FieldChoices, Options: evidenceOptions(), Optional: true},
			{Key: "oil", Title: "Oil: level, kind, what is in it", Kind: FieldText, Optional: true},
			{Key: "lash", Title: "Lash as it came back", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Places: numbered(4), Optional: true},
			{Key: "preload", Title: "Turning torque as it came back", Kind: FieldFigure, Dim: quantity.Torque, Unit: "N·m", Optional: true},
			{Key: "peg", Title: "Peg gap as it came back", Kind: FieldFigure, Dim: quantity.Length, Unit: "mm", Optional: true},
			{Key: "cause", Title: "Cause", Kind: FieldChoice, Options: plain("our weld", "our setting-up", "gears", "bearing", "oil", "shock or misuse", "fitting", "not known"), Optional: true},
			{Key: "settled", Title: "Settled how", Kind: FieldText, Optional: true},
			{Key: "cost", Title: "Cost to us", Kind: FieldSum, Optional: true},
		},
		Cautions: []string{"Broken teeth and swarf cut: gloves. Drain hot oil with care; a built unit weighs up to 45 kg: two people or a crane."},
	},
}
