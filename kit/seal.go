package kit

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
)

// Seal is a fingerprint of everything that a revision says: names, sizes as
// typed, reasons. Comments and the layout of the file do not count.
func (k *Kit) Seal() string {
	text, err := json.Marshal(k)
	if err != nil {
		panic("kit: " + err.Error()) // a kit is plain data
	}
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:16])
}
