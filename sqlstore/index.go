package sqlstore

import (
	"encoding/json"
	"slices"

	"axlewright/shop"
)

// foundBy is what stands in the tables job_* for one job. It is kept with the
// job too, so that the next index can be written as a difference.
type foundBy struct {
	Numbers []string    `json:"numbers,omitempty"`
	Terms   []string    `json:"terms,omitempty"`
	Marks   []shop.Mark `json:"marks,omitempty"`
	Uses    []shop.Use  `json:"uses,omitempty"`
}

// PutIndex sets what the job is found by and listed as.
func (t *tx) PutIndex(job shop.ID, x shop.Index) error {
	var ordinal int64
	var beforeText, lineBefore string
	found, err := t.row("SELECT ordinal, found_by, line FROM jobs WHERE id = $1", []any{string(job)}, &ordinal, &beforeText, &lineBefore)
	if err != nil {
		return err
	}
	if !found {
		return noJob(job)
	}
	var before foundBy
	if err := json.Unmarshal([]byte(beforeText), &before); err != nil {
		return shop.Fault(shop.Damaged, "The index of a job cannot be read.").Because(err)
	}
	after := foundBy{x.Numbers, x.Terms, x.Line.Marks, x.Uses}
	text, err := json.Marshal(after)
	if err != nil {
		return err
	}
	line, err := json.Marshal(x.Line)
	if err != nil {
		return err
	}
	if _, err := t.exec("UPDATE jobs SET state = $1, changed_at = $2, line = $3, found_by = $4 WHERE ordinal = $5",
		string(x.Line.State), micros(x.Line.Changed), string(line), string(text), ordinal); err != nil {
		return err
	}
	if string(text) == beforeText {
		return nil
	}
	return firstError(
		difference(before.Numbers, after.Numbers,
			func(n string) error {
				return t.run("DELETE FROM job_numbers WHERE number = $1 AND job = $2", []byte(n), ordinal)
			},
			func(n string) error {
				return t.run("INSERT INTO job_numbers (number, job) VALUES ($1, $2)", []byte(n), ordinal)
			}),
		difference(before.Terms, after.Terms,
			func(w string) error {
				return t.run("DELETE FROM job_terms WHERE term = $1 AND job = $2", []byte(w), ordinal)
			},
			func(w string) error {
				return t.run("INSERT INTO job_terms (term, job) VALUES ($1, $2)", []byte(w), ordinal)
			}),
		difference(before.Marks, after.Marks,
			func(m shop.Mark) error {
				return t.run("DELETE FROM job_marks WHERE mark = $1 AND job = $2", string(m), ordinal)
			},
			func(m shop.Mark) error {
				return t.run("INSERT INTO job_marks (mark, job) VALUES ($1, $2)", string(m), ordinal)
			}),
		difference(before.Uses, after.Uses,
			func(u shop.Use) error {
				return t.run("DELETE FROM job_uses WHERE kind = $1 AND card = $2 AND job = $3 AND slot = $4", string(u.Kind), string(u.Card), ordinal, u.Slot)
			},
			func(u shop.Use) error {
				return t.run("INSERT INTO job_uses (kind, card, job, slot, quantity, reserved) VALUES ($1, $2, $3, $4, $5, $6)",
					string(u.Kind), string(u.Card), ordinal, u.Slot, u.Quantity, u.Reserved)
			}),
	)
}

func (t *tx) run(statement string, args ...any) error {
	_, err := t.exec(statement, args...)
	return err
}

// difference takes away what is no longer there, then adds what is new.
func difference[T comparable](before, after []T, remove, add func(T) error) error {
	for _, x := range before {
		if !slices.Contains(after, x) {
			if err := remove(x); err != nil {
				return err
			}
		}
	}
	for i, x := range after {
		if !slices.Contains(before, x) && !slices.Contains(after[:i], x) {
			if err := add(x); err != nil {
				return err
			}
		}
	}
	return nil
}

func firstError(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
