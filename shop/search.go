package shop

import "context"

// FindJobs lists jobs, newest change first.
func (s *Shop) FindJobs(ctx context.Context, q JobQuery) (JobPage, error) {
	var page JobPage
	err := s.store.View(ctx, func(tx Tx) (err error) {
		page, err = tx.FindJobs(q)
		return err
	})
	return page, err
}

// Search finds jobs by whatever was typed: first those whose stamped, running
// or donor's number it is, or begins so, then those that have all the words. A number is
// found however its letters, spaces and hyphens are written.
func (s *Shop) Search(ctx context.Context, text string, limit int) ([]Line, error) {
	if limit <= 0 || limit > 500 {
		limit = 50
	}
	number, words := FoldNumber(text), FoldWords(text)
	var found []Line
	err := s.store.View(ctx, func(tx Tx) error {
		found = nil
		seen := map[ID]bool{}
		add := func(q JobQuery) error {
			q.Limit = limit
			page, err := tx.FindJobs(q)
			for _, l := range page.Lines {
				if !seen[l.Job] && len(found) < limit {
					seen[l.Job] = true
					found = append(found, l)
				}
			}
			return err
		}
		if number != "" {
			if err := firstFault(add(JobQuery{Number: number, Exact: true}), add(JobQuery{Number: number})); err != nil {
				return err
			}
		}
		if len(words) > 0 && len(found) < limit {
			return add(JobQuery{Terms: words})
		}
		return nil
	})
	return found, err
}

// searchedKinds are the cards that people look for beside jobs.
var searchedKinds = []CardKind{KindLot, KindDonor, KindCustomer, KindVehicle, KindKit, KindCasting}

// SearchCards finds lots, donors, customers and so on by words; so many of each
// kind at most.
func (s *Shop) SearchCards(ctx context.Context, text string, limit int) ([]Card, error) {
	words := FoldWords(text)
	var found []Card
	err := s.store.View(ctx, func(tx Tx) error {
		found = nil
		for _, kind := range searchedKinds {
			if len(words) == 0 {
				return nil
			}
			page, err := tx.FindCards(CardQuery{Kind: kind, Terms: words, Limit: limit, Retired: true})
			if err != nil {
				return err
			}
			found = append(found, page.Cards...)
		}
		return nil
	})
	return found, err
}

// CountJobs counts the jobs in each state.
func (s *Shop) CountJobs(ctx context.Context) (map[State]int, error) {
	var counts map[State]int
	err := s.store.View(ctx, func(tx Tx) (err error) {
		counts, err = tx.CountJobs()
		return err
	})
	return counts, err
}
