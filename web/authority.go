package web

import (
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/sha256"
	"crypto/tls"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/hex"
	"encoding/pem"
	"errors"
	"io/fs"
	"math/big"
	"net"
	"os"
	"path/filepath"
	"strings"
	"time"

	"axlewright/shop"
)

// An Authority is the shop's own certificate authority: it vouches for the
// bench to the tablets that were told to trust it, and for nothing else.
type Authority struct {
	PEM  []byte // its certificate
	cert *x509.Certificate
	key  *ecdsa.PrivateKey
}

// OpenAuthority reads the authority of a folder, making it where there is none.
// Its key never leaves the folder.
func OpenAuthority(dir string, now time.Time) (*Authority, error) {
	certPath, keyPath := filepath.Join(dir, "authority.crt"), filepath.Join(dir, "authority.key")
	certPEM, err := os.ReadFile(certPath)
	if errors.Is(err, fs.ErrNotExist) {
		return newAuthority(dir, certPath, keyPath, now)
	}
	if err != nil {
		return nil, err
	}
	pair, err := tls.LoadX509KeyPair(certPath, keyPath)
	if err != nil {
		return nil, err
	}
	cert, err := x509.ParseCertificate(pair.Certificate[0])
	if err != nil {
		return nil, err
	}
	key, ok := pair.PrivateKey.(*ecdsa.PrivateKey)
	if !ok {
		return nil, errors.New("the key of the shop's authority is of another kind")
	}
	return &Authority{certPEM, cert, key}, nil
}

func newAuthority(dir, certPath, keyPath string, now time.Time) (*Authority, error) {
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return nil, err
	}
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		return nil, err
	}
	serial, err := serialNumber()
	if err != nil {
		return nil, err
	}
	template := &x509.Certificate{SerialNumber: serial, Subject: pkix.Name{CommonName: "Axlewright bench of this shop"},
		NotBefore: now.Add(-24 * time.Hour), NotAfter: now.AddDate(10, 0, 0), IsCA: true, BasicConstraintsValid: true, MaxPathLenZero: true,
		KeyUsage: x509.KeyUsageCertSign | x509.KeyUsageCRLSign}
	der, err := x509.CreateCertificate(rand.Reader, template, template, &key.PublicKey, key)
	if err != nil {
		return nil, err
	}
	keyDER, err := x509.MarshalPKCS8PrivateKey(key)
	if err != nil {
		return nil, err
	}
	if err := os.WriteFile(keyPath, pem.EncodeToMemory(&pem.Block{Type: "PRIVATE KEY", Bytes: keyDER}), 0o600); err != nil {
		return nil, err
	}
	certPEM := pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: der})
	if err := os.WriteFile(certPath, certPEM, 0o644); err != nil {
		return nil, err
	}
	cert, err := x509.ParseCertificate(der)
	return &Authority{certPEM, cert, key}, err
}

// Certificate makes a certificate for the names and addresses by which the
// bench is reached. A new one is made at each start.
func (a *Authority) Certificate(names []string, now time.Time) (tls.Certificate, error) {
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		return tls.Certificate{}, err
	}
	serial, err := serialNumber()
	if err != nil {
		return tls.Certificate{}, err
	}
	// Tablets refuse certificates that hold for longer than 825 days (from memory; the
	// figure is that of ballot 193 of the CA/Browser Forum).
	template := &x509.Certificate{SerialNumber: serial, Subject: pkix.Name{CommonName: "Axlewright bench"},
		NotBefore: now.Add(-24 * time.Hour), NotAfter: now.AddDate(0, 0, 820),
		KeyUsage: x509.KeyUsageDigitalSignature, ExtKeyUsage: []x509.ExtKeyUsage{x509.ExtKeyUsageServerAuth}}
	if template.NotAfter.After(a.cert.NotAfter) {
		template.NotAfter = a.cert.NotAfter
	}
	for _, n := range names {
		if ip := net.ParseIP(n); ip != nil {
			template.IPAddresses = append(template.IPAddresses, ip)
		} else if n != "" {
			template.DNSNames = append(template.DNSNames, n)
		}
	}
	der, err := x509.CreateCertificate(rand.Reader, template, a.cert, &key.PublicKey, a.key)
	if err != nil {
		return tls.Certificate{}, err
	}
	return tls.Certificate{Certificate: [][]byte{der, a.cert.Raw}, PrivateKey: key}, nil
}

// Names are the names and addresses by which this computer may be reached.
func Names(host string) []string {
	names := []string{"localhost", "127.0.0.1", "::1"}
	if host != "" && net.ParseIP(host) == nil {
		names = append(names, host)
	}
	if name, err := os.Hostname(); err == nil {
		names = append(names, name, name+".local")
	}
	addrs, err := net.InterfaceAddrs()
	if err == nil {
		for _, a := range addrs {
			if n, ok := a.(*net.IPNet); ok && !n.IP.IsLoopback() && !n.IP.IsLinkLocalUnicast() {
				names = append(names, n.IP.String())
			}
		}
	}
	return names
}

func serialNumber() (*big.Int, error) {
	return rand.Int(rand.Reader, new(big.Int).Lsh(big.NewInt(1), 120))
}

// Fingerprint is the SHA-256 of the certificate in pairs, as tablets show it.
func Fingerprint(pemText []byte) string {
	block, _ := pem.Decode(pemText)
	if block == nil {
		return ""
	}
	sum := sha256.Sum256(block.Bytes)
	text := strings.ToUpper(hex.EncodeToString(sum[:]))
	var pairs []string
	for i := 0; i < len(text); i += 2 {
		pairs = append(pairs, text[i:i+2])
	}
	return strings.Join(pairs, " ")
}

// trustPage explains how a tablet is told to trust the bench.
func trustPage(v *visit) error {
	if v.o.Authority == nil {
		return shop.Fault(shop.NotFound, "This bench has no authority of its own.")
	}
	if who, err := v.actor(v.r); err == nil {
		v.who = who
	}
	return v.show(trustSheet(v.frame("Trust this bench"), Fingerprint(v.o.Authority)))
}

// authorityFile hands the authority's certificate over.
func authorityFile(v *visit) error {
	if v.o.Authority == nil {
		return shop.Fault(shop.NotFound, "This bench has no authority of its own.")
	}
	block, _ := pem.Decode(v.o.Authority)
	if block == nil {
		return shop.Fault(shop.Damaged, "The authority's certificate cannot be read.")
	}
	v.w.Header().Set("Content-Type", "application/x-x509-ca-cert")
	v.w.Header().Set("Content-Disposition", `attachment; filename="bench-authority.crt"`)
	_, err := v.w.Write(block.Bytes)
	return err
}
