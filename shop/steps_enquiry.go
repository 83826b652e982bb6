package shop

import "axlewright/quantity"

var stepsEnquiry = []Step{
	{
		Key: "enquiry", Title: "Enquiry",
		Decides: "Is this our job at all: rebuild as standard, strengthen, or a bigger axle?",
		Mistake: "Quoting from the vehicle's name or the tyre on the wall: axles are swapped and bigger tyres are planned. A wrong unit comes back at two carriages and a day.",
		Papers:  []Paper{PaperEnquiry, PaperRecommendation},
		Fields: []Field{
			{Key: "customer", Title: "Customer", Kind: FieldLink, Card: KindCustomer},
			{Key: "vehicle", Title: "Vehicle", Kind: FieldLink, Card: KindVehicle},
			{Key: "end", Title: "Front or rear", Kind: FieldChoice, Options: plain("rear", "front"),
				Hint: "The first question: driven the other way, the thrust on the crown wheel can double."},
			{Key: "axle", Title: "Which axle", Kind: FieldText, Hint: "Photographs of the nose from three sides say more than the vehicle's name."},
			{Key: "why", Title: "What broke, or why now", Kind: FieldText},
			{Key: "tyre_fitted", Title: "Tyre fitted", Kind: FieldText, Hint: "235/85R16"},
			{Key: "tyre_planned", Title: "Tyre planned", Kind: FieldText, Hint: "Ask: what will be on it next year?"},
			{Key: "axle_load", Title: "Laden weight on this axle", Kind: FieldFigure, Whole: true, Dim: quantity.Mass, Unit: "kg"},
			{Key: "differential", Title: "Diff centre", Kind: FieldChoice, Options: plain("open", "limited slip", "locker", "not known")},
			{Key: "teeth", Title: "Teeth, wheel / pinion", Kind: FieldText, Hint: "46/13, or what the tag says"},
			{Key: "engine", Title: "Engine torque", Kind: FieldFigure, Whole: true, Dim: quantity.Torque, Unit: "N·m"},
			{Key: "gears", Title: "Lowest gear × low range", Kind: FieldText, Hint: "3.6 × 3.3"},
			{Key: "use", Title: "Use", Kind: FieldChoices, Options: plain("road", "towing", "farm", "forest", "quarry", "overland", "competition", "recovery")},
			{Key: "driver", Title: "Who drives", Kind: FieldText, Optional: true},
			{Key: "budget", Title: "Budget", Kind: FieldSum, Optional: true},
			{Key: "due", Title: "Wanted by", Kind: FieldDay, Optional: true},
			{Key: "country", Title: "Country, and road inspection there", Kind: FieldText},
			{Key: "fitter", Title: "Who fits it", Kind: FieldText},
			{Key: "unit", Title: "Own unit or exchange", Kind: FieldChoice, Options: plain("own unit", "exchange unit")},
			{Key: "work", Title: "Work beyond a rebuild as standard", Kind: FieldChoices, Optional: true, Options: plain(wordsOf(Works)...),
				Hint: "None is an answer: a standard rebuild, measured and set, is surprisingly often the right one."},
		},
		Cautions: []string{
			"Many countries want an inspection or an engineer's certificate when axle, ratio, tyres or brakes are altered: ask there, and tell the insurer.",
		},
	},
	{
		Key: "deal", Title: "Quote and agreement",
		Decides: "What is built, for how much, and what is held for the old unit.",
		Mistake: "Sending an exchange unit without a deposit on the core: castings are scarcer than money.",
		Papers:  []Paper{PaperQuote},
		Fields: []Field{
			{Key: "agreed", Title: "Agreed on", Kind: FieldDay, Optional: true},
			{Key: "price", Title: "Price agreed", Kind: FieldSum, Optional: true},
			{Key: "paid", Title: "Paid", Kind: FieldSum, Optional: true},
			{Key: "deposit", Title: "Deposit held for the core", Kind: FieldSum, Optional: true},
			{Key: "core_due", Title: "Core due back", Kind: FieldDay, Optional: true},
			{Key: "core_back", Title: "Core came back", Kind: FieldDay, Optional: true},
			{Key: "core", Title: "Core booked in as donor", Kind: FieldLink, Card: KindDonor, Optional: true},
			{Key: "deposit_returned", Title: "Deposit given back", Kind: FieldSum, Optional: true},
			{Key: "parts", Title: "Parts set aside", Kind: FieldPart, Places: numbered(12), Open: true, Optional: true},
		},
		Cautions: []string{"What is sold is work and measurements, no strength rating and no road approval: local codes and licensed inspection decide."},
	},
	{
		Key: "donor", Title: "Donor", Pictures: []string{"donor-views"},
		Decides: "Accept, accept for parts only, or refuse; which class and price.",
		Mistake: "Caps swapped or parted from their casting in the wash basket: they are bored with it. Line-boring or scrap.",
		Papers:  []Paper{PaperDonorTag},
		Fields: []Field{
			{Key: "donor", Title: "Donor", Kind: FieldLink, Card: KindDonor},
			{Key: "accept", Title: "Accepted", Kind: FieldChoice, Options: []Option{fine("accepted"),
				look("for parts only", "It cannot carry a build."), halt("refused", "It goes back or to scrap.")}},
			{Key: "teeth", Title: "Teeth counted, wheel / pinion", Kind: FieldText},
			{Key: "matched", Title: "Matched-set numbers on wheel and pinion", Kind: FieldText, Hint: "Both, as etched. Gears of two donors are never quiet."},
			{Key: "caps", Title: "Cap marks", Kind: FieldChoice, Options: []Option{fine("both there and match"),
				halt("do not match", "Caps are bored with their casting: line-bore or scrap."), look("not marked", "Mark them before they come off.")}},
			{Key: "threads", Title: "Adjuster threads", Kind: FieldChoice, Options: []Option{fine("run free"), look("tight or damaged", "A tight thread feigns preload.")}},
			{Key: "signs", Title: "Seen", Kind: FieldChoices, Optional: true, Options: []Option{
				look("old welds", "Modified before: penetrant and bores first."), look("broken ear", "See the crack check."),
				look("rust line from water", "Pitted seats."), look("heat colour", "Run dry: bearings and gears are suspect."),
				look("magnetic swarf in the oil", "Find where it came from.")}},
			{Key: "source", Title: "Source and price", Kind: FieldText, Optional: true},
		},
		Cautions: []string{"A bare casting weighs 12 to 20 kg, a built unit up to 45 kg: two people or a crane above 25 kg. No eye bolts in cap threads."},
	},
	{
		Key: "identify", Title: "Which variant",
		Decides: "Which variant it is, how sure, and what would settle it.",
		Mistake: "A kit cut for a straight rib forced on to a curved one: hours of fettling, poor gaps, distortion, sometimes a scrapped casting.",
		Papers:  []Paper{PaperIdentification},
		Fields: []Field{
			{Key: "casting", Title: "Variant", Kind: FieldLink, Card: KindCasting},
			{Key: "sure", Title: "How sure", Kind: FieldChoice, Options: []Option{fine(SureYes), look("likely", "Measure what separates it from the next likely."),
				look("a guess", "Do not cut or weld for it yet."), look(SureNew, "Make a card for it.")}},
			{Key: SeenItem, Title: "Seen and measured", Kind: FieldText, Optional: true, Open: true, Wanted: 8, Hint: "Each on a line of its own; a size with its unit, or can’t see it.",
				Places: []string{"raised number", "foundry mark", "date", "ribs", "head bore", "cap seat", "cap bolt", "adjuster pitch"}},
			{Key: "modified", Title: "Modified before", Kind: FieldChoice, Options: []Option{fine("no"),
				look(ModifiedYes, "Penetrant and bores before anything; no standard kit.")}},
		},
	},
}

func wordsOf[T ~string](all []T) []string {
	words := make([]string, len(all))
	for i, w := range all {
		words[i] = string(w)
	}
	return words
}
