package ui

import (
	"errors"
	"slices"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// Action is what a key does now. One list of them is matched, drawn in the footer and the help page, and
// offered elsewhere, so that no key is offered that does nothing, and none does something unseen.
type Action struct {
	Key   key.Binding
	Do    func(key string) Intent // key tells which of the binding's keys it was
	Why   string                  // why it cannot be done now; empty when it can
	About string                  // what the help page says; empty for the help of the binding
	Quiet bool                    // has no place in the footer
	Ways  []Way                   // what its keys do, where they do different things that need no cursor
	one   bool                    // all of its keys do the same
}

// Way is one key of an action whose keys do different things.
type Way struct{ Key, Label string }

// Act is an action with one result, whichever of its keys is pressed.
func Act(b key.Binding, do func() Intent) Action {
	return Action{Key: b, Do: func(string) Intent { return do() }, one: true}
}

// Ask is an action that asks the desk for the same thing each time.
func Ask(b key.Binding, i Intent) Action {
	return Action{Key: b, Do: func(string) Intent { return i }, one: true}
}

// Named lists what can be asked for by name: the action, or each of its ways. What moves a cursor or types
// has no name, since it means something only beside what it moves.
func (a Action) Named() []Way {
	if a.one && len(a.Key.Keys()) > 0 {
		return []Way{{a.Key.Keys()[0], a.Key.Help().Desc}}
	}
	return a.Ways
}

// Text is what the help page says about the action.
func (a Action) Text() string {
	if a.About != "" {
		return a.About
	}
	return a.Key.Help().Desc
}

// Without takes keys away from actions: others have them first. An action that has none left is dropped.
func Without(actions []Action, taken []Action) []Action {
	var gone []string
	for _, a := range taken {
		gone = append(gone, a.Key.Keys()...)
	}
	var out []Action
	for _, a := range actions {
		left := slices.DeleteFunc(slices.Clone(a.Key.Keys()), func(k string) bool { return slices.Contains(gone, k) })
		switch {
		case len(left) == 0 && len(a.Key.Keys()) > 0:
			continue
		case len(left) < len(a.Key.Keys()):
			shown := a.Key.Help().Key
			if !slices.Contains(left, shown) {
				shown = left[0]
			}
			a.Key = Bind(a.Key.Help().Desc, shown, left...)
		}
		out = append(out, a)
	}
	return out
}

// Because gives the reason why an action cannot be done now. An empty one changes nothing.
func (a Action) Because(why string) Action {
	a.Why = why
	return a
}

// Explained gives an action a longer text for the help page.
func (a Action) Explained(about string) Action {
	a.About = about
	return a
}

// Quietly keeps an action out of the footer.
func (a Action) Quietly() Action {
	a.Quiet = true
	return a
}

// Take is what pressing one of the keys asks for.
func (a Action) Take(key string) Intent {
	if a.Why != "" {
		return Refuse{errors.New(a.Why)}
	}
	return a.Do(key)
}

// Match finds the action of a key and what it asks for; false when no action has that key. Pasted text is
// never a key.
func Match(actions []Action, k tea.KeyMsg) (Intent, bool) {
	if k.Paste {
		return nil, false
	}
	for _, a := range actions {
		if key.Matches(k, a.Key) {
			return a.Take(k.String()), true
		}
	}
	return nil, false
}

// Press gives a key to a screen or a dialog: to its actions first, and as text if none has the key.
func Press(p Pressed, c Context, k tea.KeyMsg) (Intent, bool) {
	if i, ok := Match(p.Actions(c), k); ok {
		return i, true
	}
	if t, ok := p.(Typist); ok {
		return t.Type(c, k)
	}
	return nil, false
}

// Pressed is whatever takes keys.
type Pressed interface {
	// Actions lists what the keys do now, the most useful first.
	Actions(c Context) []Action
}

// Typist is a screen or a dialog that takes more than its actions: text.
type Typist interface {
	// Type handles a key that no action has; false lets the desk try its own.
	Type(c Context, k tea.KeyMsg) (Intent, bool)
}
