package casting

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// What may follow an answer that is written on one line of a record, as the
// origin follows a figure: "four curved, looked 2 times", "10, heard".
const (
	heardMark   = ", heard"
	lookedMark  = ", looked "
	lookedTimes = " times"
	mostLooks   = 9
)

// Said is an answer as one line of a record; Item reads it back.
func Said(answer string, looked int, told bool) string {
	if looked > 1 {
		answer += lookedMark + strconv.Itoa(min(looked, mostLooks)) + lookedTimes
	}
	if told {
		answer += heardMark
	}
	return answer
}

// Item reads what a line of a record says of a feature: "four curved",
// "72.00 mm ± 0.01 mm", "can't see it", each as Said may have marked it.
//
// Errors: a sentence that says what was expected.
func (c *Catalogue) Item(feature, line string) (Item, error) {
	item := Item{Feature: feature}
	k := c.feature(feature)
	if k < 0 {
		return item, fmt.Errorf("%q is no feature of the catalogue", feature)
	}
	text := strings.TrimSpace(line)
	text, item.Told = strings.CutSuffix(text, heardMark)
	if head, n, found := cutLooks(text); found {
		text, item.Looked = head, n
	}
	if err := item.read(&c.Features[k], text); err != nil {
		return item, err
	}
	if problem := item.problem(&c.Features[k]); problem != "" {
		return item, errors.New(problem)
	}
	return item, nil
}

func cutLooks(text string) (head string, n int, found bool) {
	bare, times := strings.CutSuffix(text, lookedTimes)
	at := strings.LastIndex(bare, lookedMark)
	if !times || at < 0 {
		return text, 0, false
	}
	n, err := strconv.Atoi(bare[at+len(lookedMark):])
	if err != nil || n < 2 || n > mostLooks {
		return text, 0, false
	}
	return bare[:at], n, true
}

// Feature returns the feature of that name.
func (c *Catalogue) Feature(name string) (*Feature, bool) {
	k := c.feature(name)
	if k < 0 {
		return nil, false
	}
	return &c.Features[k], true
}

// Again says whether looking at a feature again makes it surer.
func (f *Feature) Again() bool { return sorts[f.Sort].again }

// Says is the item in words, "four curved" or "72.00 ± 0.02 mm (2.8346 ± 0.0008 in), measured".
func (i *Item) Says(f *Feature) string { return i.said(f) }
