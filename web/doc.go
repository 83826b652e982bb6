// Package web is the bench in the browser: one program, one port, pages made on
// the server, and small scripts of our own that save each reading as it is left.
// It holds no rules: those are in package shop.
//
// # Where to begin
//
// routes.go is the site map. A page or an action has a file of its own: its
// handler takes a visit (who asks, for what), calls the shop, and shows a
// template. status.go is the one table from codes of errors to HTTP statuses.
//
// # How a reading is saved
//
// Each box of a step is a form. Without scripts it is sent with its own button.
// With scripts (static/boxes.js) it is put into a queue on the tablet as it is
// left, sent, and taken out of the queue when the shop has answered. While the
// shop cannot be reached it stays in the queue, shown as "not yet saved", and
// goes out later with the time at which it was typed. The ticket made with it
// lets the shop write it once, however often it is sent.
//
// The answer is the box itself as HTML: saved, refused with a sentence, or with
// both writings where somebody else was first.
//
// What is refused stays in the queue and waits for the person: it is never sent
// again by itself, for what refused it may be gone by then without anybody
// having looked.
//
// # How pages open without the shop
//
// static/keep.js runs beside the pages, where browsers let it: over https and on
// the shop's own computer. It keeps the pages that were opened, shows them again
// with the time they are from while the shop cannot be reached, and forgets them
// when somebody signs in or out. Boxes on such a page go into the queue; what
// would need the shop is switched off.
//
// # How tablets see each other
//
// GET /live is a stream of what has changed. A page that shows what changed
// fetches itself again and replaces the parts marked data-live that differ,
// except a box that is being filled.
package web
