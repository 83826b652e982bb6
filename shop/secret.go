package shop

import (
	"crypto/rand"
	"crypto/subtle"
	"encoding/base64"
	"fmt"
	"strings"
	"sync"

	"golang.org/x/crypto/argon2"
)

// How PINs and passwords are hashed: argon2id (RFC 9106) with 19 MiB, two
// passes, one lane, which OWASP's password storage cheat sheet names as a
// minimum; about a tenth of a second on a small computer.
const (
	argonMemory  = 19 * 1024 // KiB
	argonPasses  = 2
	argonLanes   = 1
	argonSalt    = 16
	argonKey     = 32
	argonVersion = argon2.Version
)

// hashing lets one be computed at a time, so that a crowd at the door cannot
// take all memory.
var hashing sync.Mutex

// hashSecret returns the PHC string of a secret: "$argon2id$v=19$m=…,t=…,p=…$salt$hash".
func hashSecret(secret string) (string, error) {
	salt := make([]byte, argonSalt)
	if _, err := rand.Read(salt); err != nil {
		return "", Fault(Internal, "No password can be made.").Because(err)
	}
	b64 := base64.RawStdEncoding
	return fmt.Sprintf("$argon2id$v=%d$m=%d,t=%d,p=%d$%s$%s", argonVersion, argonMemory, argonPasses, argonLanes,
		b64.EncodeToString(salt), b64.EncodeToString(argon(secret, salt, argonMemory, argonPasses, argonLanes, argonKey))), nil
}

func argon(secret string, salt []byte, memory, passes uint32, lanes uint8, length uint32) []byte {
	hashing.Lock()
	defer hashing.Unlock()
	return argon2.IDKey([]byte(secret), salt, passes, memory, lanes, length)
}

// secretFits compares a secret with a PHC string. It takes as long for a
// string that cannot be read as for one that can.
func secretFits(secret, phc string) bool {
	var version int
	var memory, passes uint32
	var lanes uint8
	parts := strings.Split(phc, "$")
	readable := len(parts) == 6 && parts[1] == "argon2id"
	var salt, want []byte
	if readable {
		_, err1 := fmt.Sscanf(parts[2], "v=%d", &version)
		_, err2 := fmt.Sscanf(parts[3], "m=%d,t=%d,p=%d", &memory, &passes, &lanes)
		var err3, err4 error
		salt, err3 = base64.RawStdEncoding.DecodeString(parts[4])
		want, err4 = base64.RawStdEncoding.DecodeString(parts[5])
		readable = err1 == nil && err2 == nil && err3 == nil && err4 == nil && version == argonVersion &&
			memory > 0 && memory <= 1<<20 && passes > 0 && passes <= 100 && lanes > 0 && len(want) >= 16 && len(want) <= 64
	}
	if !readable {
		argon(secret, make([]byte, argonSalt), argonMemory, argonPasses, argonLanes, argonKey)
		return false
	}
	got := argon(secret, salt, memory, passes, lanes, uint32(len(want)))
	return subtle.ConstantTimeCompare(got, want) == 1
}
