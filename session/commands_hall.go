package session

import (
	"fmt"
	"time"
)

// PostMessage shows a line to everybody in the hall, until a time or, where that is zero, until it is ended.
type PostMessage struct {
	Text  string
	Until time.Time
}

func (c PostMessage) decide(l *Ledger, env Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	m := Message{Text: CleanText(c.Text, MaxMessage+1), Until: stamp(c.Until)}
	standing := n.MessagesAt(env.Now)
	switch {
	case m.Text == "":
		return nil, fmt.Errorf("a message needs a text, such as \"pizza at 20:30\"")
	case CleanText(m.Text, MaxMessage) != m.Text:
		return nil, fmt.Errorf("a message is one line of at most %d characters: make it shorter", MaxMessage)
	case m.over(env.Now):
		return nil, fmt.Errorf("%s has passed: name a later end, or none", m.Until.In(env.Zone).Format("15:04"))
	case len(standing) >= MaxMessages:
		return nil, fmt.Errorf("%d messages stand already: end one of them first", len(standing))
	}
	for _, s := range standing {
		if s.Text == m.Text {
			return nil, fmt.Errorf("that message stands already: end it to give it another end")
		}
	}
	m.ID = string(env.NewID())
	return []Event{MessagePosted{m}}, nil
}

// EndMessage takes a message away before its time.
type EndMessage struct{ ID string }

func (c EndMessage) decide(l *Ledger, env Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	if i := n.message(c.ID); i < 0 || n.Messages[i].over(env.Now) {
		return nil, fmt.Errorf("that message stands no more")
	}
	return []Event{MessageEnded(c)}, nil
}

// ChooseNaming says how the club's people are called in the hall, on this and on later nights.
type ChooseNaming struct{ Naming Naming }

func (c ChooseNaming) decide(l *Ledger, _ Env) ([]Event, error) {
	if err := c.Naming.validate(); err != nil {
		return nil, err
	}
	if c.Naming == l.club.Naming {
		return nil, fmt.Errorf("the hall sees %s already", c.Naming)
	}
	return []Event{NamingChosen(c)}, nil
}
