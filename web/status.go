package web

import (
	"errors"
	"net/http"

	"axlewright/axle"
	"axlewright/quantity"
	"axlewright/shop"
)

// statusOf says how each code of error is answered.
var statusOf = map[shop.Code]int{
	shop.Invalid:   http.StatusUnprocessableEntity,
	shop.NotFound:  http.StatusNotFound,
	shop.Conflict:  http.StatusConflict,
	shop.Stopped:   http.StatusLocked,
	shop.Forbidden: http.StatusForbidden,
	shop.SignIn:    http.StatusUnauthorized,
	shop.TooMany:   http.StatusTooManyRequests,
	shop.Short:     http.StatusConflict,
	shop.Damaged:   http.StatusInternalServerError,
	shop.Full:      http.StatusInsufficientStorage,
	shop.InUse:     http.StatusServiceUnavailable,
	shop.TooLarge:  http.StatusRequestEntityTooLarge,
	shop.Closed:    http.StatusServiceUnavailable,
	shop.Internal:  http.StatusInternalServerError,
}

// A fault is an error as the person at the bench is told of it.
type fault struct {
	Status int
	Says   string
	Log    bool // a fault of the program or machine, kept for whoever looks after it
}

// faultOf puts an error into words. What is inside an internal error is not told.
func faultOf(err error) fault {
	var parse *quantity.ParseError
	var findings axle.Findings
	var e *shop.Error
	switch {
	case errors.As(err, &parse):
		return fault{http.StatusUnprocessableEntity, parse.Sentence, false}
	case errors.As(err, &findings):
		return fault{http.StatusUnprocessableEntity, findings.Error(), false}
	case errors.As(err, &e) && e.Code != shop.Internal:
		return fault{statusOf[e.Code], e.Says, e.Code == shop.Damaged || e.Code == shop.Full || e.Code == shop.Closed}
	}
	return fault{http.StatusInternalServerError, "Something went wrong in the program. It has been noted; what was typed is still on this page. Try again.", true}
}

// codeOf is the code of an error, also of those that are not the shop's.
func codeOf(err error) shop.Code {
	var parse *quantity.ParseError
	var findings axle.Findings
	if errors.As(err, &parse) || errors.As(err, &findings) {
		return shop.Invalid
	}
	return shop.CodeOf(err)
}
