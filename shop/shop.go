package shop

import (
	"context"
	"strconv"
	"sync"
	"time"
)

// Shop is the workshop: its methods are all that may be done with its data. It
// may be used from many goroutines at once.
type Shop struct {
	store Store
	now   func() time.Time
	id    ID
	key   signingKey
	seen  sync.Map // ID of a job to readSighting
	out   readOutcomes
}

// Options of Open.
type Options struct {
	Now func() time.Time // the clock; nil is the computer's
}

// Open makes a Shop of a Store. On a new store it gives the shop its identity:
// an ID, a signing key, a House card and one owner without a password.
func Open(ctx context.Context, store Store, o Options) (*Shop, error) {
	s := &Shop{store: store, now: o.Now}
	if s.now == nil {
		s.now = time.Now
	}
	if err := store.View(ctx, s.loadIdentity); err != nil {
		return nil, err
	}
	if s.id != "" {
		return s, nil
	}
	if err := store.Update(ctx, s.found); err != nil {
		return nil, err
	}
	return s, store.View(ctx, s.loadIdentity)
}

// The settings that make the shop what it is.
const (
	settingID  = "shop.id"
	settingKey = "shop.key"
)

func (s *Shop) loadIdentity(tx Tx) error {
	id, err := tx.Setting(settingID)
	if err != nil || id == nil {
		return err
	}
	seed, err := tx.Setting(settingKey)
	if err != nil {
		return err
	}
	key, err := keyFromSeed(seed)
	if err != nil {
		return err
	}
	s.id, s.key = ID(id), key
	return nil
}

// found gives a new shop its identity, unless another program was first.
func (s *Shop) found(tx Tx) error {
	if id, err := tx.Setting(settingID); err != nil || id != nil {
		return err
	}
	seed, err := newSeed()
	if err != nil {
		return err
	}
	if err := tx.PutSetting(settingKey, seed); err != nil {
		return err
	}
	if err := saveSheet(tx, s.now(), Program.By(), &House{Meta: Meta{ID: HouseID}, Name: "Workshop"}); err != nil {
		return err
	}
	if err := saveSheet(tx, s.now(), Program.By(), &Person{Meta: Meta{ID: FirstOwner}, Name: "Owner", Role: RoleOwner}); err != nil {
		return err
	}
	return tx.PutSetting(settingID, []byte(NewID()))
}

// ID is the shop's own, by which its jobs are told from another shop's.
func (s *Shop) ID() ID { return s.id }

// Store returns what the shop keeps its data in.
func (s *Shop) Store() Store { return s.store }

// Watch tells of changes, see Store.Watch. A web page sends them to its tablets.
func (s *Shop) Watch(ctx context.Context) (<-chan Change, error) { return s.store.Watch(ctx) }

// OpenJob begins a job: it gets the next running number and an empty record.
// The sets, as of Record, are written at once with it. A ticket sent twice
// opens one job: the second call returns the first one's.
func (s *Shop) OpenJob(ctx context.Context, by Actor, ticket string, sets ...Set) (*Job, error) {
	if err := by.Must(ActSell); err != nil {
		return nil, err
	}
	if err := checkTicket(ticket); err != nil {
		return nil, err
	}
	id := NewID()
	if ticket != "" {
		id = ID(hashOf([]byte("job " + string(s.id) + " " + ticket))[:32])
	}
	var job *Job
	err := s.store.Update(ctx, func(tx Tx) error {
		if _, err := tx.Head(id); CodeOf(err) != NotFound {
			if err == nil {
				job, err = readJob(tx, id)
			}
			return err
		}
		house, err := getSheet[House](tx, HouseID)
		if err != nil {
			return err
		}
		number, err := nextNumber(tx, numbersOfJobs)
		if err != nil {
			return err
		}
		if err := tx.AddJob(id); err != nil {
			return err
		}
		n := float64(number)
		opened := Entry{Kind: EntryOpened, Step: StepJob, Item: "opened",
			Value: Value{Typed: numberText(number), SI: &n, Link: &Link{Kind: KindHouse, ID: s.id, Label: house.Name}}}
		if job, err = s.write(tx, by, Read(id, nil, Head{}), []Entry{opened}); err != nil {
			return err
		}
		job, err = s.set(tx, by, job, sets)
		return err
	})
	if err != nil {
		return nil, err
	}
	return job, nil
}

// Job reads a job.
func (s *Shop) Job(ctx context.Context, id ID) (*Job, error) {
	var job *Job
	err := s.store.View(ctx, func(tx Tx) (err error) {
		job, err = readJob(tx, id)
		return err
	})
	return job, err
}

func readJob(tx Tx, id ID) (*Job, error) {
	head, err := tx.Head(id)
	if err != nil {
		return nil, err
	}
	sealed, err := tx.Entries(id)
	if err != nil {
		return nil, err
	}
	return Read(id, sealed, head), nil
}

// numbersOfJobs is the name under which jobs are counted.
const numbersOfJobs = "job"

// nextNumber counts 1, 2, 3 … under a name. A number given in an Update that
// fails is given again.
func nextNumber(tx Tx, name string) (int64, error) {
	n, err := lastNumber(tx, name)
	if err != nil {
		return 0, err
	}
	n++
	return n, tx.PutSetting(numberKey(name), []byte(strconv.FormatInt(n, 10)))
}

// lastNumber is the last number that was given, 0 before the first.
func lastNumber(tx Tx, name string) (int64, error) {
	text, err := tx.Setting(numberKey(name))
	if err != nil || text == nil {
		return 0, err
	}
	n, err := strconv.ParseInt(string(text), 10, 64)
	if err != nil {
		return 0, Fault(Damaged, "The running number of the shop cannot be read.").Because(err)
	}
	return n, nil
}

func numberKey(name string) string { return "number." + name }

// change runs a rule on a job as it stands, alone, and appends the entries
// that the rule returns.
func (s *Shop) change(ctx context.Context, by Actor, id ID, rule func(Tx, *Job) ([]Entry, error)) (*Job, error) {
	var job *Job
	err := s.store.Update(ctx, func(tx Tx) error {
		j, err := readJob(tx, id)
		if err != nil {
			return err
		}
		if err := j.whole(); err != nil {
			return err
		}
		entries, err := rule(tx, j)
		if err != nil {
			return err
		}
		job, err = s.write(tx, by, j, entries)
		return err
	})
	if err != nil {
		return nil, err
	}
	return job, nil
}

// write seals entries and brings the job's index up to date.
func (s *Shop) write(tx Tx, by Actor, j *Job, entries []Entry) (*Job, error) {
	if len(entries) == 0 {
		return j, nil
	}
	head := j.Head
	var added []Sealed
	var written []Entry
	for _, e := range entries {
		e.Job, e.Who, e.At = j.ID, by.By(), s.now()
		e, one, err := Seal(e, head)
		if err != nil {
			return nil, err
		}
		if len(one.Body) > maxEntry {
			return nil, Fault(TooLarge, "This is too much for one entry: keep it as a file.").At(e.Slot().String())
		}
		added, written = append(added, one), append(written, e)
		head = Head{one.Seq, one.Hash}
	}
	if err := tx.Append(j.ID, j.Head, added); err != nil {
		return nil, err
	}
	job := j.with(added, written)
	return job, tx.PutIndex(j.ID, job.Index(s.id))
}

// maxEntry is the largest entry, in bytes of its canonical form.
const maxEntry = 256 << 10
