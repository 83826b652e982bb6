package shop

import (
	"context"
	"strconv"

	"axlewright/quantity"
)

// Note writes free words beside a step. Nothing stops a note. A ticket is
// wanted: it names the note.
func (s *Shop) Note(ctx context.Context, by Actor, job ID, step StepKey, text, ticket string) (*Job, error) {
	if ticket == "" {
		ticket = string(NewID())
	}
	at := Slot{step, ItemNote, ticketPlace(ticket)}
	if err := firstFault(mayRecord(by, step), checkTicket(ticket), required(at.String(), text), lengthOf(at.String(), text, longText)); err != nil {
		return nil, err
	}
	return s.beside(ctx, by, job, Entry{Kind: EntryNote, Step: at.Step, Item: at.Item, Place: at.Place, Ticket: ticket, Value: Value{Text: text}})
}

// AddPhoto keeps a photograph beside a step: turned upright, without what the
// camera noted of place and time, and with a small one for lists. The same
// photograph at the same step is kept once. Nothing stops a photograph.
func (s *Shop) AddPhoto(ctx context.Context, by Actor, job ID, step StepKey, caption string, upload []byte) (*Job, error) {
	if err := firstFault(mayRecord(by, step), lengthOf("caption", caption, 1000)); err != nil {
		return nil, err
	}
	photo, err := CleanPhoto(upload)
	if err != nil {
		return nil, err
	}
	value := Value{Text: caption}
	if value.File, err = s.keepFile(ctx, photo.Full, "image/jpeg", "photograph.jpg"); err != nil {
		return nil, err
	}
	if value.Thumb, err = s.keepFile(ctx, photo.Thumb, "image/jpeg", "small.jpg"); err != nil {
		return nil, err
	}
	value.File.Width, value.File.Height = photo.Width, photo.Height
	value.Thumb.Width, value.Thumb.Height = photo.ThumbWidth, photo.ThumbHeight
	return s.beside(ctx, by, job, Entry{Kind: EntryPhoto, Step: step, Item: ItemPhoto, Place: value.File.SHA256[:16], Value: value})
}

// beside writes the first entry of a place of its own, once.
func (s *Shop) beside(ctx context.Context, by Actor, job ID, e Entry) (*Job, error) {
	if _, ok := StepOf(e.Step); !ok {
		return nil, Fault(NotFound, "There is no step %q.", e.Step)
	}
	return s.change(ctx, by, job, func(_ Tx, j *Job) ([]Entry, error) {
		if j.Standing(e.Slot()) != nil {
			return nil, nil
		}
		e.Corrects = lastSeq(j.Last(e.Slot()))
		if e.Corrects != 0 {
			e.Ticket = "" // the ticket named the one that was withdrawn
		}
		return []Entry{e}, nil
	})
}

// An Attachment is something finished that is kept with a job as it is:
// advice with its inputs, a quote, a printed paper. It is never computed anew.
type Attachment struct {
	Kind    EntryKind // EntryAdvice, EntryPlan, EntryQuote or EntryPaper
	Step    StepKey
	Paper   Paper  // of EntryPaper
	Name    string // file name for people: "advice.json"
	Media   string // "application/json", "application/pdf"
	Content []byte
	Words   []string // for lists: the verdict, the build
	Text    string   // one line: "Peg and plates, 83 % sure; program 1.2"
	Holds   *float64 // of advice: the chance that the build it recommends holds
	Ticket  string
}

// Attach keeps an attachment. Each one has a place of its own, "1", "2" …, so
// that a new one never replaces an old one.
func (s *Shop) Attach(ctx context.Context, by Actor, job ID, a Attachment) (*Job, error) {
	act := ActBuild
	switch a.Kind {
	case EntryAdvice, EntryQuote:
		act = ActSell
	case EntryPlan: // of those at the bench
	case EntryPaper:
		act = by.Role.either(ActSell, ActBuild)
	default:
		return nil, Fault(Invalid, "Only advice, weld plans, quotes and papers are attached.").At("kind")
	}
	if err := firstFault(by.Must(act), checkTicket(a.Ticket), lengthOf("name", a.Name, 100), lengthOf("text", a.Text, 1000), lengthOf("media", a.Media, 100)); err != nil {
		return nil, err
	}
	for _, w := range a.Words {
		if err := lengthOf("words", w, 200); err != nil {
			return nil, err
		}
	}
	if len(a.Content) == 0 || len(a.Content) > maxAttachment {
		return nil, Fault(TooLarge, "An attachment has 1 byte to 20 MB.").At("content")
	}
	file, err := s.keepFile(ctx, a.Content, a.Media, a.Name)
	if err != nil {
		return nil, err
	}
	words := a.Words
	if a.Kind == EntryPaper {
		words = append([]string{string(a.Paper)}, words...)
	}
	return s.change(ctx, by, job, func(_ Tx, j *Job) ([]Entry, error) {
		if j.ticket(a.Ticket) != nil {
			return nil, nil
		}
		value := Value{Words: words, Text: a.Text, File: file}
		if a.Kind == EntryAdvice && a.Holds != nil {
			value.Typed, value.SI, value.Dim = quantity.Chance(*a.Holds), a.Holds, quantity.Share
		}
		return []Entry{{Kind: a.Kind, Step: a.Step, Item: string(a.Kind), Place: j.nextPlace(a.Step, string(a.Kind)),
			Ticket: a.Ticket, Value: value}}, nil
	})
}

const maxAttachment = 20 << 20

// nextPlace is the next of "1", "2" … that nothing has stood in.
func (j *Job) nextPlace(step StepKey, item string) string {
	n := 1
	for ; j.Last(Slot{step, item, strconv.Itoa(n)}) != nil; n++ {
	}
	return strconv.Itoa(n)
}

// File reads a photograph, paper or advice that an entry names.
func (s *Shop) File(ctx context.Context, f File) ([]byte, error) { return s.store.File(ctx, f.SHA256) }

func (s *Shop) keepFile(ctx context.Context, content []byte, media, name string) (*File, error) {
	hash, err := s.store.PutFile(ctx, content)
	if err != nil {
		return nil, err
	}
	return &File{SHA256: hash, Bytes: int64(len(content)), Media: media, Name: name}, nil
}

// ticketPlace makes a place of a ticket: without strokes.
func ticketPlace(ticket string) string { return hashOf([]byte(ticket))[:16] }
