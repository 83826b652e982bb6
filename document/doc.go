// Package document prints: it turns finished results into text for a terminal
// and sheets of paper. Data in, bytes out; nothing is computed here.
package document
