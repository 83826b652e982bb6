package shop

import (
	"crypto/ed25519"
	"crypto/rand"
	"encoding/base64"
)

// signingKey is the shop's Ed25519 key (RFC 8032).
type signingKey struct {
	private ed25519.PrivateKey
	public  PublicKey
}

// A PublicKey is what a certificate is verified with, in base64url without
// padding (RFC 4648): 43 characters that can be printed.
type PublicKey string

// PublicKey returns the shop's public key, for papers and strangers.
func (s *Shop) PublicKey() PublicKey { return s.key.public }

// Fingerprint is the beginning of the key's SHA-256, for finding the right one.
func (k PublicKey) Fingerprint() string {
	raw, err := k.bytes()
	if err != nil {
		return ""
	}
	return hashOf(raw)[:16]
}

func (k PublicKey) bytes() (ed25519.PublicKey, error) {
	raw, err := base64.RawURLEncoding.Strict().DecodeString(string(k))
	if err != nil || len(raw) != ed25519.PublicKeySize {
		return nil, Fault(Invalid, "This is not a public key: 43 letters, digits, hyphens and low lines.").At("key")
	}
	return raw, nil
}

func newSeed() ([]byte, error) {
	seed := make([]byte, ed25519.SeedSize)
	if _, err := rand.Read(seed); err != nil {
		return nil, Fault(Internal, "No signing key can be made.").Because(err)
	}
	return seed, nil
}

func keyFromSeed(seed []byte) (signingKey, error) {
	if len(seed) != ed25519.SeedSize {
		return signingKey{}, Fault(Damaged, "The shop's signing key cannot be read.")
	}
	private := ed25519.NewKeyFromSeed(seed)
	public := private.Public().(ed25519.PublicKey)
	return signingKey{private, PublicKey(base64.RawURLEncoding.EncodeToString(public))}, nil
}

func (k signingKey) sign(message string) string {
	return base64.RawURLEncoding.EncodeToString(ed25519.Sign(k.private, []byte(message)))
}

func (k PublicKey) signed(message, signature string) bool {
	raw, err := k.bytes()
	if err != nil {
		return false
	}
	sig, err := base64.RawURLEncoding.Strict().DecodeString(signature)
	return err == nil && ed25519.Verify(raw, []byte(message), sig)
}
