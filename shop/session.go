package shop

import "time"

// A Session is a person signed in on a device. The store keeps only the hash
// of its token, so that a stolen copy of the data signs nobody in.
type Session struct {
	TokenHash string // SHA-256 of the token, hex
	Person    ID
	Device    string // what the browser calls itself, for the list of sessions
	Began     time.Time
	Seen      time.Time
	Ends      time.Time
}

// Tries is how often signing in failed under one key.
type Tries struct {
	Count int
	Last  time.Time
	Until time.Time // no further try before this
}
