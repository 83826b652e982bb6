package web

import "net/http"

// routes is the site map.
func (s *Server) routes() http.Handler {
	m := http.NewServeMux()
	in := func(pattern string, h handler) { m.Handle(pattern, s.inside(h)) }
	open := func(pattern string, h handler) { m.Handle(pattern, s.open(h)) }

	// Work.
	in("GET /{$}", todayPage)
	in("GET /search", searchPage)
	in("POST /job", openJob)
	in("GET /job/{job}", jobPage)
	in("GET /job/{job}/{step}", stepPage)
	in("GET /job/{job}/record", recordPage)
	in("GET /job/{job}/choose", choosePage)
	in("GET /job/{job}/file/{hash}", jobFile)
	in("GET /job/{job}/paper/{paper}", jobPaper)
	in("GET /paper/{paper}", emptyPaper)
	in("GET /job/{job}/certificate", certificatePage)
	in("GET /job/{job}/export.zip", exportJob)
	in("POST /job/{job}/set", set)
	in("POST /job/{job}/note", note)
	in("POST /job/{job}/mark", mark)
	in("POST /job/{job}/photo", photo)
	in("POST /job/{job}/state", setState)
	in("POST /job/{job}/override", override)
	in("POST /job/{job}/certify", certify)
	in("POST /job/{job}/new", newCardFor)
	in("POST /job/{job}/seen", answer)
	in("POST /job/{job}/call", callCasting)
	in("GET /job/{job}/identify/card.pdf", castingCard)
	in("GET /job/{job}/stations/trim.pdf", trimSheet)
	in("GET /live", live)

	// Advice and quotes.
	in("GET /job/{job}/advice", advicePage)
	in("POST /job/{job}/advice", askAdvice)
	in("POST /job/{job}/enquiry", keepEnquiry)
	in("GET /job/{job}/advice/{place}", keptAdvicePage)
	in("GET /job/{job}/advice/{place}/recommendation.pdf", keptAdvicePaper)
	in("POST /catalogue/examples", beginCatalogue)
	in("GET /job/{job}/quote", quotePage)
	in("POST /job/{job}/quote", keepQuote)

	// Kits and welds of a job.
	in("GET /job/{job}/kit", jobKitPage)
	in("GET /job/{job}/weld-plan", weldPlanPage)
	in("POST /job/{job}/weld-plan", askWeldPlan)
	in("GET /job/{job}/weld-plan.pdf", weldPlanPaper)
	in("GET /job/{job}/weld-log", weldLogPage)
	in("GET /job/{job}/weld-log.pdf", weldLogPaper)
	in("POST /job/{job}/weld-log", logRun)
	in("GET /welding", learnedPage)

	// Sums.
	in("GET /setting-up", settingUpPage)
	in("GET /setting-up/{question}", questionPage)
	in("GET /handbook", handbookPage)
	in("GET /handbook/{formula}", formulaPage)

	// What there is.
	in("GET /stock", stockPage)
	in("GET /stock/lots", lotsPage)
	in("GET /stock/lot/{id}", lotPage)
	in("GET /stock/kits", kitsPage)
	in("POST /stock/kits", bringKit)
	in("GET /stock/sheets", sheetsPage)
	in("POST /stock/sheets", planNest)
	in("GET /stock/nest/{id}", nestPage)
	in("POST /stock/nest/{id}", cutNest)
	in("GET /stock/nest/{id}/{file}", nestFile)
	in("GET /kits/{kit}/{revision}", kitPage)
	in("GET /kits/{kit}/{revision}/{file}", kitFile)
	in("GET /cards/{kind}", cardsPage)
	in("GET /cards/{kind}/{id}", cardPage)
	in("POST /cards/{kind}/{id}", saveCard)
	in("GET /cards/casting/{id}/stations", variantPage)

	// The shop.
	in("GET /settings", settingsPage)
	in("POST /settings/house", saveHouse)
	in("POST /settings/backup", backUpNow)
	in("POST /settings/verify", verifyRecords)
	in("POST /settings/import", importJob)
	in("GET /settings/people", peoplePage)
	in("POST /settings/person", savePerson)
	in("POST /settings/secret", setSecret)
	in("POST /settings/out", signOutAll)
	in("GET /settings/prices", pricesPage)
	in("POST /settings/prices", savePrices)
	in("GET /settings/limits", limitsPage)
	in("POST /settings/limits", saveLimit)
	in("GET /returns", returnsPage)
	in("GET /verify", verifyPage)
	in("POST /verify", verifyCertificate)

	// Coming in.
	open("GET /sign-in", signInPage)
	open("POST /sign-in", signIn)
	open("POST /sign-out", signOut)
	open("GET /start", startPage)
	open("POST /start", start)
	open("GET /trust", trustPage)
	open("GET /trust/authority.crt", authorityFile)

	m.Handle("GET /static/", staticFiles())
	open("/", nothingHere)
	return m
}
