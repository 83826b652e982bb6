package sqlstore

import (
	"database/sql"
	"encoding/json"

	"axlewright/shop"
)

func readCard(body, about string) (shop.Card, error) {
	var c shop.Card
	if err := json.Unmarshal([]byte(about), &c); err != nil {
		return c, shop.Fault(shop.Damaged, "A card cannot be read.").Because(err)
	}
	c.Body = []byte(body)
	return c, nil
}

func noCard(kind shop.CardKind) error { return shop.Fault(shop.NotFound, "There is no such %s.", kind) }

// Card returns the newest revision.
func (t *tx) Card(kind shop.CardKind, id shop.ID) (shop.Card, error) {
	var body, about string
	found, err := t.row(`SELECT r.body, r.about FROM cards c JOIN card_revisions r ON r.kind = c.kind AND r.id = c.id AND r.revision = c.revision
		WHERE c.kind = $1 AND c.id = $2`, []any{string(kind), string(id)}, &body, &about)
	if err != nil {
		return shop.Card{}, err
	}
	if !found {
		return shop.Card{}, noCard(kind)
	}
	return readCard(body, about)
}

// PutCard keeps a new revision.
func (t *tx) PutCard(c shop.Card, terms []string) error {
	if !c.ID.Valid() || c.Kind == "" {
		return shop.Fault(shop.Invalid, "This cannot be the ID of a card.")
	}
	about, err := json.Marshal(c)
	if err != nil {
		return err
	}
	termsText, err := json.Marshal(terms)
	if err != nil {
		return err
	}
	var standing int64
	var before string
	found, err := t.row("SELECT revision, terms FROM cards WHERE kind = $1 AND id = $2", []any{string(c.Kind), string(c.ID)}, &standing, &before)
	if err != nil {
		return err
	}
	if c.Revision != standing+1 {
		return t.cardConflict(c, found)
	}
	var oldTerms []string
	if found {
		if err := json.Unmarshal([]byte(before), &oldTerms); err != nil {
			return shop.Fault(shop.Damaged, "The index of a card cannot be read.").Because(err)
		}
		_, err = t.exec("UPDATE cards SET revision = $1, sort = $2, belongs = $3, state = $4, retired = $5, terms = $6 WHERE kind = $7 AND id = $8",
			c.Revision, []byte(c.Sort), c.Group, c.State, c.Retired, string(termsText), string(c.Kind), string(c.ID))
	} else {
		_, err = t.exec("INSERT INTO cards (kind, id, revision, sort, belongs, state, retired, terms) VALUES ($1, $2, $3, $4, $5, $6, $7, $8)",
			string(c.Kind), string(c.ID), c.Revision, []byte(c.Sort), c.Group, c.State, c.Retired, string(termsText))
	}
	if err != nil {
		return err
	}
	if _, err := t.exec("INSERT INTO card_revisions (kind, id, revision, body, about) VALUES ($1, $2, $3, $4, $5)",
		string(c.Kind), string(c.ID), c.Revision, string(c.Body), string(about)); err != nil {
		return err
	}
	t.changes = append(t.changes, shop.Change{Kind: c.Kind, Card: c.ID})
	return difference(oldTerms, terms,
		func(w string) error {
			return t.run("DELETE FROM card_terms WHERE kind = $1 AND term = $2 AND id = $3", string(c.Kind), []byte(w), string(c.ID))
		},
		func(w string) error {
			return t.run("INSERT INTO card_terms (kind, term, id) VALUES ($1, $2, $3)", string(c.Kind), []byte(w), string(c.ID))
		})
}

func (t *tx) cardConflict(refused shop.Card, found bool) error {
	e := shop.Fault(shop.Conflict, "Somebody else changed this card in the meantime: look at both.").At("revision")
	e.Clash = &shop.Clash{RefusedCard: &refused}
	if found {
		stands, err := t.Card(refused.Kind, refused.ID)
		if err != nil {
			return err
		}
		e.Clash.StandsCard = &stands
	}
	return e
}

// FindCards returns newest revisions in the order of their folded labels.
func (t *tx) FindCards(q shop.CardQuery) (shop.CardPage, error) {
	var w where
	w.and("c.kind = ?", string(q.Kind))
	if q.Group != "" {
		w.and("c.belongs = ?", q.Group)
	}
	if len(q.States) > 0 {
		list, args := among(q.States)
		w.and("c.state IN "+list, args...)
	}
	for _, term := range q.Terms {
		from, to := prefix(term)
		w.and("c.id IN (SELECT id FROM card_terms WHERE kind = ? AND term >= ? AND term < ?)", string(q.Kind), from, to)
	}
	if !q.Retired {
		w.and("c.retired = FALSE")
	}
	if q.After != nil {
		w.and("(c.sort > ? OR (c.sort = ? AND c.id > ?))", []byte(q.After.Sort), []byte(q.After.Sort), string(q.After.ID))
	}
	limit := between(q.Limit, 200, 5000)
	w.add(" ORDER BY c.sort, c.id LIMIT ?", limit+1)
	var page shop.CardPage
	err := t.rows("SELECT r.body, r.about FROM cards c JOIN card_revisions r ON r.kind = c.kind AND r.id = c.id AND r.revision = c.revision"+
		w.text.String(), w.args, func(r *sql.Rows) error {
		if len(page.Cards) == limit {
			last := page.Cards[limit-1]
			page.Next = &shop.CardCursor{Sort: last.Sort, ID: last.ID}
			return nil
		}
		var body, about string
		if err := r.Scan(&body, &about); err != nil {
			return err
		}
		c, err := readCard(body, about)
		page.Cards = append(page.Cards, c)
		return err
	})
	return page, err
}

// CardHistory returns all revisions, oldest first.
func (t *tx) CardHistory(kind shop.CardKind, id shop.ID) ([]shop.Card, error) {
	var all []shop.Card
	err := t.rows("SELECT body, about FROM card_revisions WHERE kind = $1 AND id = $2 ORDER BY revision", []any{string(kind), string(id)}, func(r *sql.Rows) error {
		var body, about string
		if err := r.Scan(&body, &about); err != nil {
			return err
		}
		c, err := readCard(body, about)
		all = append(all, c)
		return err
	})
	if err == nil && len(all) == 0 {
		err = noCard(kind)
	}
	return all, err
}
