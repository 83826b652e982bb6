package web

import (
	"net/http"

	"axlewright/shop"
)

// verifyPage asks for the text of a certificate.
func verifyPage(v *visit) error {
	return v.show(verifySheet(v.frame("Verify a certificate").at("settings"), "", "", nil, string(v.shop.PublicKey())))
}

// verifyCertificate says what there is to say of a certificate.
func verifyCertificate(v *visit) error {
	form, err := v.form()
	if err != nil {
		return err
	}
	text := form.Get("text")
	f := v.frame("Verify a certificate").at("settings")
	check, err := v.shop.CheckCertificate(v.ctx(), text)
	switch shop.CodeOf(err) {
	case "":
		return v.show(verifySheet(f, text, "", &check, string(v.shop.PublicKey())))
	case shop.Invalid:
		return v.showAs(http.StatusUnprocessableEntity, verifySheet(f, text, faultOf(err).Says, nil, string(v.shop.PublicKey())))
	}
	return err
}
