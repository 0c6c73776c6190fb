package session

import (
	"fmt"
	"slices"
	"time"
)

// Message is one line of the organiser to everybody in the hall.
type Message struct {
	ID    string    `json:"id"`
	Text  string    `json:"text"`
	Until time.Time `json:"until,omitzero"` // when it goes by itself, zero for when it is ended
}

// MaxMessages is how many messages stand at once: more would not be read.
const MaxMessages = 3

// MaxMessage is the longest message, in terminal cells: one line.
const MaxMessage = 60

// MessagesAt are the messages that stand at a moment, the oldest first.
func (n *Night) MessagesAt(now time.Time) []Message {
	return slices.DeleteFunc(slices.Clone(n.Messages), func(m Message) bool { return m.over(now) })
}

func (m Message) over(now time.Time) bool { return !m.Until.IsZero() && !now.Before(m.Until) }

// message is where a message stands, -1 where it does not.
func (n *Night) message(id string) int {
	return slices.IndexFunc(n.Messages, func(m Message) bool { return m.ID == id })
}

// MessagePosted shows a message to the hall.
type MessagePosted struct {
	Message Message `json:"message"`
}

func (e MessagePosted) apply(f *fold, _ time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	m := e.Message
	if m.Text = CleanText(m.Text, MaxMessage); m.Text == "" || m.ID == "" {
		return fmt.Errorf("a message needs a text and an identity")
	}
	if n.message(m.ID) >= 0 {
		return fmt.Errorf("message %q stands already", m.ID)
	}
	n.Messages = append(n.Messages, m)
	return nil
}

// MessageEnded takes a message away.
type MessageEnded struct {
	ID string `json:"id"`
}

func (e MessageEnded) apply(f *fold, _ time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	i := n.message(e.ID)
	if i < 0 {
		return fmt.Errorf("there is no message %q", e.ID)
	}
	n.Messages = slices.Delete(n.Messages, i, i+1)
	return nil
}

// Naming is how people are called where everybody can see it.
type Naming string

// The ways to call people. The zero value is ByInitial: it tells people apart and says no more of them
// than is called out in the hall.
const (
	ByInitial Naming = ""       // first name and initial
	InFull    Naming = "full"   // as the club knows them
	AsChosen  Naming = "chosen" // as each has chosen, and else by first name and initial
)

// Namings lists the ways to call people.
func Namings() []Naming { return []Naming{ByInitial, InFull, AsChosen} }

// String says a naming in words.
func (n Naming) String() string {
	switch n {
	case InFull:
		return "full names"
	case AsChosen:
		return "the names that people chose"
	}
	return "first names and initials"
}

// validate refuses what is no naming.
func (n Naming) validate() error {
	if !slices.Contains(Namings(), n) {
		return fmt.Errorf("no way to call people is called %q: use full, chosen or nothing", string(n))
	}
	return nil
}

// NamingChosen says how the club's people are called in the hall from now on.
type NamingChosen struct {
	Naming Naming `json:"naming,omitempty"`
}

func (e NamingChosen) apply(f *fold, _ time.Time) error {
	if err := e.Naming.validate(); err != nil {
		return err
	}
	f.club.Naming = e.Naming
	return nil
}
