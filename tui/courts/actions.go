package courts

import (
	"errors"
	"fmt"
	"slices"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/ui"
)

// The desk's undo takes back what is half typed, before it takes back anything that is saved. Its redo
// would bring back something that nobody looks at.
const (
	undoKey = "ctrl+z"
	redoKey = "ctrl+y"
)

var errTyped = errors.New("a score is being typed: enter saves it, esc drops it")

// noRedo stands in the way of the desk's redo.
var noRedo = ui.Ask(ui.Bind("redo", redoKey, redoKey), nil).Because(errTyped.Error()).Quietly()

var digits = []string{"0", "1", "2", "3", "4", "5", "6", "7", "8", "9"}

// Actions implements ui.Screen.
func (s *Courts) Actions(c ui.Context) []ui.Action {
	n := c.Night()
	if n == nil || len(n.Courts) == 0 {
		return nil
	}
	if g := s.board.on(n); g != nil {
		return s.boardActions(c, g)
	}
	court := n.Courts[s.current(n)]
	if s.finder.on {
		return s.finderActions(c)
	}
	if !s.entry.empty() {
		return s.entryActions(c, court)
	}
	return s.gridActions(c, court)
}

// gridActions are the keys while nothing is typed.
func (s *Courts) gridActions(c ui.Context, court session.Court) []ui.Action {
	n := c.Night()
	substitute := ui.Act(ui.Bind("sub", "x", "x"), func() ui.Intent {
		return ui.Show{Dialog: replaceMenu(c, n.Game(court.Game))}
	}).Explained("put somebody from the bench in for a player")
	if n.Game(court.Game) == nil {
		substitute.Why = fmt.Sprintf("court %s has no game: there is nobody to substitute for", court.ID)
	}
	out := append(s.sentActions(c, court), []ui.Action{
		{Key: ui.Bind("court", "arrows", "left", "right", "up", "down", "home", "end"), Do: func(key string) ui.Intent {
			s.walk(c, key)
			return nil
		}},
		{Key: ui.Bind("score", "0-9", digits...), Do: func(key string) ui.Intent { return s.startEntry(n, court, key) }},
		ui.Act(ui.Bind("rallies", "enter", "enter"), func() ui.Intent { return s.open(c, court) }).Explained("score the game rally by rally"),
		substitute,
		ui.Act(ui.Bind("more", "m", "m"), func() ui.Intent { return ui.Show{Dialog: gridMenu(c, court)} }).
			Explained("more about this court: close it, a walkover, make the game void"),
		ui.Act(ui.Bind("court no.", "g", "g"), func() ui.Intent {
			s.finder = finder{on: true}
			return nil
		}).Explained("go to a court by its number or its name"),
		ui.Ask(ui.Bind("read out", "v", "v"), ui.Open{Page: ui.CallingPage}).Explained("read the newest call aloud, court by court"),
	}...)
	for i := range out {
		do := out[i].Do
		out[i].Do = func(key string) ui.Intent {
			twice := key == "enter" && s.justSaved(c)
			if s.saved = (time.Time{}); twice {
				return nil
			}
			return do(key)
		}
	}
	return out
}

// justSaved tells whether the key before saved a score: an enter right after it is one out of habit.
func (s *Courts) justSaved(c ui.Context) bool {
	return !s.saved.IsZero() && c.Now.Sub(s.saved) < time.Second
}

// walk moves the cursor over the courts.
func (s *Courts) walk(c ui.Context, key string) {
	n, columns := c.Night(), s.layout(c).columns
	s.selected = n.Courts[s.current(n)].ID
	switch key {
	case "home":
		s.selected = n.Courts[0].ID
	case "end":
		s.selected = n.Courts[len(n.Courts)-1].ID
	default:
		s.move(n, map[string]int{"left": -1, "right": 1, "up": -columns, "down": columns}[key])
	}
}

// entryActions are the keys while a score is typed.
func (s *Courts) entryActions(c ui.Context, court session.Court) []ui.Action {
	press := func(key string) ui.Intent {
		s.entry.press(key)
		return nil
	}
	out := []ui.Action{
		ui.Act(ui.Bind("save", "enter", "enter"), func() ui.Intent { return s.save(c, court) }),
		ui.Act(ui.Bind("drop", "esc", "esc", undoKey), func() ui.Intent {
			s.entry = entry{}
			return nil
		}),
		{Key: ui.Bind("swap teams", "tab", "tab"), Do: press},
		{Key: ui.Bind("time ran out", "t", "t"), Do: press},
		{Key: ui.Bind("retired", "r", "r"), Do: press},
		{Key: ui.Bind("both scores", "digits", append(digits[:len(digits):len(digits)], " ", "-", ":", ".", ",", "/")...), Do: press, Quiet: true},
		{Key: ui.Bind("take back", "bksp", "backspace"), Do: press, Quiet: true},
		noRedo,
	}
	if s.entry.how != scoring.Retired {
		return out
	}
	return slices.Insert(out, 0, ui.Action{Key: ui.Bind("which team", "a b", "a", "b"), Do: press})
}

// Type implements ui.Typist: keys that mean nothing while a score is typed or a game is scored rally by
// rally do no harm elsewhere.
func (s *Courts) Type(c ui.Context, k tea.KeyMsg) (ui.Intent, bool) {
	s.saved = time.Time{}
	letter := k.Type == tea.KeyRunes || k.Type == tea.KeySpace
	g := s.board.on(c.Night())
	switch {
	case s.finder.on && letter:
		s.finder.typed(k.Runes)
		if id, ok := c.Night().CourtMeant(s.finder.text); ok {
			s.finder, s.selected = finder{}, id
		}
		return nil, true
	case g != nil && k.String() == "?":
		return nil, false
	case g != nil && !g.Running() && k.String() == "n":
		s.board.leave()
		return nil, false
	case g != nil && !g.Running():
		return nil, letter || k.Type == tea.KeyLeft || k.Type == tea.KeyRight || k.Type == tea.KeyBackspace
	case g != nil:
		return nil, letter
	case !s.entry.empty() && letter:
		return ui.Refuse{Err: errTyped}, true
	}
	return nil, false
}

// boardActions are the keys while a game is scored rally by rally, or has just ended there.
func (s *Courts) boardActions(c ui.Context, g *session.Game) []ui.Action {
	switch {
	case !g.Running():
		return []ui.Action{
			ui.Act(ui.Bind("go on", "enter", "enter", "esc"), func() ui.Intent {
				s.board.leave()
				s.next(c.Night(), g.Court)
				return nil
			}),
			ui.Act(ui.Bind("undo", "u", "u"), func() ui.Intent { return undoEnd(c, g) }),
		}
	case s.board.asks(g):
		return s.faultActions(g)
	}
	return s.rallyActions(c, g)
}

// rallyActions are the keys between two rallies.
func (s *Courts) rallyActions(c ui.Context, g *session.Game) []ui.Action {
	faults := "faults"
	if s.board.faults {
		faults = "no faults"
	}
	out := []ui.Action{
		{Key: ui.Bind("who won", "←→", "left", "a", "right", "b"), Ways: s.board.wonWays(c, g), Do: func(key string) ui.Intent { return s.won(g, s.board.teamNamed(g, key)) }},
		ui.Ask(ui.Bind("undo", "bksp", "backspace"), ui.Do{Command: session.UndoRally{Game: g.ID}}).Explained("take the last rally or note back"),
		ui.Act(ui.Bind("more", "m", "m"), func() ui.Intent { return ui.Show{Dialog: gameMenu(c, g)} }).
			Explained("more about this game: set it right, time-outs, a team retires"),
		ui.Act(ui.Bind(faults, "F", "F"), func() ui.Intent {
			s.board.faults = !s.board.faults
			return nil
		}).Explained("ask after each rally how it was lost, or stop asking"),
		ui.Act(ui.Bind("back", "esc", "esc", "enter"), func() ui.Intent {
			s.board.leave()
			return nil
		}),
		// a score that is typed although the board is open is this court's final score
		{Key: ui.Bind("final score", "digits", digits...), Quiet: true, Do: func(key string) ui.Intent {
			s.board.leave()
			s.selected, s.entry = g.Court, entry{}
			s.entry.press(key)
			return nil
		}},
	}
	out = append(out, ui.Act(ui.Bind("mirror", "v", "v"), func() ui.Intent {
		s.board.mirror = !s.board.mirror
		return nil
	}).Explained("draw the court as it is seen from the other side of the hall, for tonight; ← and → go with the drawing"))
	ends := ui.Ask(ui.Bind("ends changed", "e", "e"), note(g, scoring.Entry{Kind: scoring.EndsSwitched}))
	ends.Quiet = !g.EndsDue()
	return append(out, ends)
}

// wonWays name the teams that can have won a rally.
func (b *board) wonWays(c ui.Context, g *session.Game) []ui.Way {
	left := b.left(g)
	return []ui.Way{
		{Key: "left", Label: c.Names.Team(g.Team(left)) + " won the rally"},
		{Key: "right", Label: c.Names.Team(g.Team(left.Other())) + " won the rally"},
	}
}

// teamNamed is the team that a key means: an arrow the one on that side of the drawing, a letter the same one
// always.
func (b *board) teamNamed(g *session.Game, key string) scoring.Team {
	switch key {
	case "left":
		return b.left(g)
	case "right":
		return b.left(g).Other()
	case "b":
		return scoring.B
	}
	return scoring.A
}

// faultActions are the keys while it is asked how a rally was lost.
func (s *Courts) faultActions(g *session.Game) []ui.Action {
	r := s.board.asked.rally
	var all []string
	for _, f := range faultKeys {
		all = append(all, f.key)
	}
	out := []ui.Action{{Key: ui.Bind("how it was lost", "o n s k v t h x", all...), Ways: faultWays(), Do: func(key string) ui.Intent {
		done := r
		for _, f := range faultKeys {
			if f.key == key {
				done.Fault = f.fault
			}
		}
		if g.Rules.Singles {
			done.By = 1
		}
		return s.rally(g, done)
	}}}
	who := ui.Action{Key: ui.Bind("who", "1 2", "1", "2"), Quiet: g.Rules.Singles, Do: func(key string) ui.Intent {
		s.board.asked.choose(g, key[0]-'0')
		return nil
	}}
	return append(out, who, noRedo,
		ui.Act(ui.Bind("not noted", "enter", "enter", " "), func() ui.Intent { return s.rally(g, scoring.Rally{Won: r.Won}) }),
		ui.Act(ui.Bind("drop", "esc", "esc", "backspace", undoKey), func() ui.Intent {
			s.board.asked = asked{}
			return nil
		}),
		ui.Action{Key: ui.Bind("the next rally", "←→", "left", "a", "right", "b"), Quiet: true, Do: func(key string) ui.Intent {
			return s.rallyAnd(g, r.Won, s.board.teamNamed(g, key))
		}},
	)
}
