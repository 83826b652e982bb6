package sqlstore

import (
	"database/sql"
	"encoding/json"
	"slices"

	"axlewright/shop"
)

func readLine(text string) (shop.Line, error) {
	var line shop.Line
	if err := json.Unmarshal([]byte(text), &line); err != nil {
		return line, shop.Fault(shop.Damaged, "The line of a job cannot be read.").Because(err)
	}
	return line, nil
}

// Line returns the job's line.
func (t *tx) Line(job shop.ID) (shop.Line, error) {
	var text string
	found, err := t.row("SELECT line FROM jobs WHERE id = $1", []any{string(job)}, &text)
	if err != nil {
		return shop.Line{}, err
	}
	if !found {
		return shop.Line{}, noJob(job)
	}
	return readLine(text)
}

// FindJobs returns lines, newest change first.
func (t *tx) FindJobs(q shop.JobQuery) (shop.JobPage, error) {
	var w where
	if q.Number != "" && q.Exact {
		w.and("ordinal IN (SELECT job FROM job_numbers WHERE number = ?)", []byte(q.Number))
	} else if q.Number != "" {
		from, to := prefix(q.Number)
		w.and("ordinal IN (SELECT job FROM job_numbers WHERE number >= ? AND number < ?)", from, to)
	}
	for _, term := range q.Terms {
		from, to := prefix(term)
		w.and("ordinal IN (SELECT job FROM job_terms WHERE term >= ? AND term < ?)", from, to)
	}
	if len(q.States) > 0 {
		list, args := among(q.States)
		w.and("state IN "+list, args...)
	}
	if q.Mark != "" {
		w.and("ordinal IN (SELECT job FROM job_marks WHERE mark = ?)", string(q.Mark))
	}
	if q.Card != "" {
		w.and("ordinal IN (SELECT job FROM job_uses WHERE kind = ? AND card = ?)", string(q.Kind), string(q.Card))
	}
	if q.After != nil {
		at := micros(q.After.Changed)
		w.and("(changed_at < ? OR (changed_at = ? AND ordinal < ?))", at, at, q.After.Ordinal)
	}
	limit := between(q.Limit, 50, 500)
	w.add(" ORDER BY changed_at DESC, ordinal DESC LIMIT ?", limit+1)
	var page shop.JobPage
	var cursor shop.JobCursor
	err := t.rows("SELECT ordinal, line FROM jobs"+w.text.String(), w.args, func(r *sql.Rows) error {
		if len(page.Lines) == limit { // one more than was asked for: there is a next page
			page.Next = &cursor
			return nil
		}
		var ordinal int64
		var text string
		if err := r.Scan(&ordinal, &text); err != nil {
			return err
		}
		line, err := readLine(text)
		page.Lines = append(page.Lines, line)
		cursor = shop.JobCursor{Changed: line.Changed, Ordinal: ordinal}
		return err
	})
	return page, err
}

// between returns n, or the usual where n is not given, or the most.
func between(n, usual, most int) int {
	if n <= 0 {
		return usual
	}
	return min(n, most)
}

// CountJobs counts the jobs in each state.
func (t *tx) CountJobs() (map[shop.State]int, error) {
	counts := map[shop.State]int{}
	err := t.rows("SELECT state, COUNT(*) FROM jobs GROUP BY state", nil, func(r *sql.Rows) error {
		var state string
		var n int
		err := r.Scan(&state, &n)
		if state != "" {
			counts[shop.State(state)] = n
		}
		return err
	})
	return counts, err
}

// Uses returns which jobs use the card.
func (t *tx) Uses(kind shop.CardKind, card shop.ID, limit int) ([]shop.Use, error) {
	var all []shop.Use
	err := t.rows(`SELECT jobs.id, job_uses.slot, job_uses.quantity, job_uses.reserved FROM job_uses
		JOIN jobs ON jobs.ordinal = job_uses.job WHERE job_uses.kind = $1 AND job_uses.card = $2
		ORDER BY job_uses.job DESC, job_uses.slot DESC LIMIT $3`, []any{string(kind), string(card), limit}, func(r *sql.Rows) error {
		u := shop.Use{Kind: kind, Card: card}
		var job string
		err := r.Scan(&job, &u.Slot, &u.Quantity, &u.Reserved)
		u.Job = shop.ID(job)
		all = append(all, u)
		return err
	})
	slices.Reverse(all)
	return all, err
}

// Taken sums what jobs have of each lot.
func (t *tx) Taken(lots []shop.ID) (map[shop.ID]shop.Taken, error) {
	sums := map[shop.ID]shop.Taken{}
	const batch = 500 // placeholders in one statement
	for len(lots) > 0 {
		part := lots[:min(batch, len(lots))]
		lots = lots[len(part):]
		var w where
		w.and("kind = ?", string(shop.KindLot))
		list, args := among(part)
		w.and("card IN "+list, args...)
		err := t.rows("SELECT card, reserved, SUM(quantity) FROM job_uses"+w.text.String()+" GROUP BY card, reserved", w.args, func(r *sql.Rows) error {
			var card string
			var reserved bool
			var sum float64
			err := r.Scan(&card, &reserved, &sum)
			taken := sums[shop.ID(card)]
			if reserved {
				taken.Reserved = sum
			} else {
				taken.Used = sum
			}
			sums[shop.ID(card)] = taken
			return err
		})
		if err != nil {
			return nil, err
		}
	}
	return sums, nil
}
