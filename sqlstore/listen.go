package sqlstore

import (
	"context"
	"encoding/json"
	"time"

	"github.com/jackc/pgx/v5"

	"axlewright/shop"
)

// notice is a change told to the other programs that have the shop open.
type notice struct {
	From    string        `json:"from"` // who tells it, so that nobody tells itself
	Changes []shop.Change `json:"changes"`
}

// self names this program among others.
var self = string(shop.NewID())

// channelOf is the name to listen on: one for each schema.
const channelOf = "SELECT 'axlewright_' || md5(current_schema())"

// listen passes on what other programs write. It has a connection of its own,
// made anew when it breaks; then something was missed.
func (s *Store) listen(ctx, beside context.Context, config *pgx.ConnConfig) error {
	conn, err := listening(ctx, config)
	if err != nil {
		return err
	}
	go func() {
		for beside.Err() == nil {
			n, err := conn.WaitForNotification(beside)
			if err == nil {
				var told notice
				if json.Unmarshal([]byte(n.Payload), &told) == nil && told.From != self {
					s.hub.publish(told.Changes)
				}
				continue
			}
			conn.Close(context.Background())
			for beside.Err() == nil {
				if conn, err = listening(beside, config); err == nil {
					s.hub.publish([]shop.Change{{Missed: true}})
					break
				}
				select {
				case <-beside.Done():
				case <-time.After(time.Second):
				}
			}
		}
		if conn != nil {
			conn.Close(context.Background())
		}
	}()
	return nil
}

func listening(ctx context.Context, config *pgx.ConnConfig) (*pgx.Conn, error) {
	conn, err := pgx.ConnectConfig(ctx, config.Copy())
	if err != nil {
		return nil, err
	}
	var channel string
	if err = conn.QueryRow(ctx, channelOf).Scan(&channel); err == nil {
		_, err = conn.Exec(ctx, "LISTEN "+pgx.Identifier{channel}.Sanitize())
	}
	if err != nil {
		conn.Close(context.Background())
		return nil, err
	}
	return conn, nil
}

// tell sends changes with the transaction that makes them. A payload has a
// limit; where it would be passed, the others look at everything again.
func (t *tx) tell() error {
	changes := t.changes
	payload, err := json.Marshal(notice{self, changes})
	if err != nil {
		return err
	}
	if len(payload) > 7000 {
		if payload, err = json.Marshal(notice{self, []shop.Change{{Missed: true}}}); err != nil {
			return err
		}
	}
	_, err = t.tx.ExecContext(t.ctx, "SELECT pg_notify('axlewright_' || md5(current_schema()), $1)", string(payload))
	return err
}
