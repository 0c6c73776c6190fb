package session

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"club/quadrille/scoring"
)

// Without is the state as it would be if an action of the newest night had not happened, folded anew without it;
// the error says why it cannot be undone. In the rolling flow the calls that free courts then make are not in it.
func (l *Ledger) Without(action uint64) (*Club, error) {
	_, after, _, err := l.takingBack(action)
	return after, err
}

// takingBack folds the night without an action that is to be undone. With are the earlier undos that cannot stand
// then.
func (l *Ledger) takingBack(action uint64) (a Action, after *Club, with []uint64, err error) {
	a, ok := l.Action(action)
	switch {
	case !ok:
		return a, nil, nil, fmt.Errorf("this night has no action %d", action)
	case a.IsUndo():
		return a, nil, nil, fmt.Errorf("an undo is taken back by a redo")
	case a.IsSent():
		return a, nil, nil, fmt.Errorf("a score that a court sent is taken or refused (y, Y), not undone")
	case !a.IsDone():
		return a, nil, nil, fmt.Errorf("what the clock did cannot be undone")
	case a.Undone:
		return a, nil, nil, fmt.Errorf("that is undone already")
	}
	if _, ok := a.Events[0].(NightOpened); ok {
		return a, nil, nil, ErrNothingToUndo
	}
	for _, refuse := range []func(Action) error{l.sealed, l.overtaken} {
		if err := refuse(a); err != nil {
			return a, nil, nil, err
		}
	}
	without := maps.Clone(l.undone)
	without[action] = true
	after, with, err = l.stand(without)
	if err != nil {
		return a, nil, nil, l.depends(a, err)
	}
	return a, after, with, l.reinterprets(a, after)
}

// WouldBe says in words what of the newest night would be another way in another state of it: who is where,
// courts, games, scores, the hold, the settings and the table.
func WouldBe(is, would *Club) []string {
	n, m := is.Night(), would.Night()
	if n == nil || m == nil || n.ID != m.ID {
		return nil
	}
	d := difference{is, would, n, m, nil}
	d.night()
	d.games()
	d.courts()
	d.people()
	d.places()
	return d.text
}

// difference compares two states of a night.
type difference struct {
	is, would *Club
	n, m      *Night
	text      []string
}

func (d *difference) say(format string, values ...any) {
	d.text = append(d.text, fmt.Sprintf(format, values...))
}

// night compares what concerns all.
func (d *difference) night() {
	switch {
	case !d.n.IsOpen() && d.m.IsOpen():
		d.say("the night goes on again")
	case len(d.n.Rounds) > len(d.m.Rounds):
		d.say("round %d is not called", len(d.n.Rounds))
	}
	if d.n.Settings != d.m.Settings {
		d.say("settings: %s", settingsText(d.m.Settings))
	}
	switch {
	case d.n.Hold == nil && d.m.Hold != nil:
		d.say("play is held again: %s", d.m.Hold.Why)
	case d.n.Hold != nil && d.m.Hold == nil:
		d.say("play is not held")
	}
	if d.n.LastCall && !d.m.LastCall {
		d.say("free courts are called again")
	}
	if d.n.Rolls && !d.m.Rolls {
		d.say("play has not begun")
	}
}

// mostGames is how many games that go are named one by one.
const mostGames = 4

// games compares the games and their scores.
func (d *difference) games() {
	var gone []*Game
	for i := range d.n.Games {
		g := &d.n.Games[i]
		h := d.m.Game(g.ID)
		if h == nil || h.Call != g.Call {
			gone = append(gone, g)
			continue
		}
		d.game(g, h)
	}
	for i, g := range gone {
		if i == mostGames-1 && len(gone) > mostGames {
			d.say("and %d more games are not called", len(gone)-i)
			return
		}
		what := ""
		if g.Final != nil {
			what = ", and its score " + ScoreText(*g.Final) + " is gone"
		}
		d.say("court %s: %s v %s are not called%s", g.Court, pairName(d.is, g.A), pairName(d.is, g.B), what)
	}
}

// game compares a game that is called in both.
func (d *difference) game(g, h *Game) {
	on := "court " + string(g.Court) + ": "
	for i, id := range g.Players() {
		if other := h.Players(); i < len(other) && other[i] != id {
			d.say("%s%s plays again in place of %s", on, d.is.Name(other[i]), d.is.Name(id))
		}
	}
	switch {
	case g.Final != nil && h.Final == nil:
		d.say("%sthe score %s is gone, and the game goes on", on, ScoreText(*g.Final))
	case g.Final == nil && h.Final != nil:
		d.say("%sthe game is over with %s", on, ScoreText(*h.Final))
	case g.Final != nil && *g.Final != *h.Final:
		d.say("%s%s again in place of %s", on, ScoreText(*h.Final), ScoreText(*g.Final))
	case g.State.Score != h.State.Score:
		d.say("%s%s in place of %s", on, points(h.State.Score), points(g.State.Score))
	case len(g.Entries) != len(h.Entries) || len(g.Rallies) != len(h.Rallies):
		d.say("%sits sheet has one entry less", on)
	}
}

func points(s scoring.Score) string { return fmt.Sprintf("%d-%d", s.A, s.B) }

// courts compares which courts there are and are open.
func (d *difference) courts() {
	for _, c := range d.n.Courts {
		switch other := d.m.Court(c.ID); {
		case other == nil:
			d.say("there is no court %s", c.ID)
		case c.Open && !other.Open:
			d.say("court %s is closed", c.ID)
		case !c.Open && other.Open:
			d.say("court %s is open", c.ID)
		}
		if other := d.m.Court(c.ID); other != nil && other.Note != c.Note {
			d.say("court %s is %s", c.ID, noteWords(other.Note))
		}
		if other := d.m.Court(c.ID); other != nil && other.Levels() != c.Levels() {
			d.say("court %s is for %s", c.ID, other.Levels())
		}
	}
}

// people compares where everybody is, beside being called.
func (d *difference) people() {
	words := map[Presence]string{Expected: "is expected, and not here", Here: "is here to play", Resting: "rests", Gone: "has left"}
	at := map[string][]string{}
	var order []string
	note := func(what, name string) {
		if at[what] == nil {
			order = append(order, what)
		}
		at[what] = append(at[what], name)
	}
	for _, a := range d.n.Roll {
		switch b := d.m.Attending(a.Person); {
		case b == nil:
			note("has no part in the night", d.is.Name(a.Person))
		case b.State != a.State:
			note(words[b.State], d.is.Name(a.Person))
		}
	}
	const most = 4
	for _, what := range order {
		names := at[what]
		if len(names) > most {
			names = append(names[:most-1:most-1], fmt.Sprintf("%d more", len(names)-most+1))
		}
		d.say("%s: %s", strings.Join(names, ", "), what)
	}
	for _, p := range d.is.People {
		if other, ok := d.would.Person(p.ID); ok && other.Name != p.Name {
			d.say("%s is called %s again", p.Name, other.Name)
		}
	}
}

// places compares the table.
func (d *difference) places() {
	rank := map[string]int{}
	for _, r := range Standings(d.would, d.m) {
		rank[r.Name] = r.Rank
	}
	var moved []string
	for _, r := range Standings(d.is, d.n) {
		switch now := rank[r.Name]; now {
		case r.Rank:
		case 0:
			moved = append(moved, fmt.Sprintf("%s has none in place of %d", r.Name, r.Rank))
		default:
			moved = append(moved, fmt.Sprintf("%s %d in place of %d", r.Name, now, r.Rank))
		}
	}
	const most = 3
	if k := len(moved); k > most {
		moved = append(slices.Clone(moved[:most]), fmt.Sprintf("%d more", k-most))
	}
	if len(moved) > 0 {
		d.say("places: %s", strings.Join(moved, ", "))
	}
}
