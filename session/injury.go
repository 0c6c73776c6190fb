package session

import (
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode"

	"club/quadrille/scoring"
)

// Injury is what was noted when somebody was hurt. It is for the organiser alone: nothing of it is in what the hall sees.
type Injury struct {
	Person  PersonID  `json:"person"`
	Game    GameID    `json:"game,omitempty"` // in which it happened, 0 for none that went on
	At      time.Time `json:"at"`
	Head    bool      `json:"head,omitempty"` // a head injury is suspected
	Note    string    `json:"note,omitempty"`
	Cleared string    `json:"cleared,omitempty"` // the qualified person who said that the hurt one may play again tonight
}

// MaxInjuryNote is the longest note of an injury, and the longest name of who cleared somebody, in terminal cells.
const MaxInjuryNote = 100

// OutForTonight is the suspected head injury that keeps somebody from playing tonight; false when there is none, or when a
// qualified person has cleared the hurt one.
func (n *Night) OutForTonight(id PersonID) (Injury, bool) {
	i := slices.IndexFunc(n.Injuries, func(x Injury) bool { return x.Person == id && x.bars() })
	if i < 0 {
		return Injury{}, false
	}
	return n.Injuries[i], true
}

func (x Injury) bars() bool { return x.Head && x.Cleared == "" }

// InjuriesOf lists what was noted of somebody tonight, the oldest first.
func (n *Night) InjuriesOf(id PersonID) []Injury {
	return slices.DeleteFunc(slices.Clone(n.Injuries), func(x Injury) bool { return x.Person != id })
}

// Unsettled is the newest injury in a game that goes on about which nobody has decided yet: the game stands since, or who
// is out for tonight is still in it.
func (n *Night) Unsettled(g *Game) (Injury, bool) {
	for _, x := range slices.Backward(n.Injuries) {
		if g.Running() && g.Has(x.Person) && (x.bars() || x.Game == g.ID && g.Pause != nil && !g.Pause.Since.Before(x.At)) {
			return x, true
		}
	}
	return Injury{}, false
}

// barred refuses what would bring back somebody who is out for tonight.
func (n *Night) barred(club *Club, id PersonID) error {
	if _, out := n.OutForTonight(id); out {
		return fmt.Errorf("%s is out for tonight (suspected head injury) until a qualified person clears it: f, the name, i, c", club.Name(id))
	}
	return nil
}

// PersonHurt notes an injury. Whoever may have a head injury has left the rotation for tonight.
type PersonHurt struct {
	Person PersonID `json:"person"`
	Game   GameID   `json:"game,omitempty"`
	Head   bool     `json:"head,omitempty"`
	Note   string   `json:"note,omitempty"`
}

func (e PersonHurt) apply(f *fold, at time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	a := n.Attending(e.Person)
	if a == nil {
		return fmt.Errorf("%s has no part in the night", f.club.Name(e.Person))
	}
	if g := n.Game(e.Game); e.Game != 0 && (g == nil || !g.Has(e.Person)) {
		return fmt.Errorf("%s does not play in game %d", f.club.Name(e.Person), e.Game)
	}
	n.Injuries = append(n.Injuries, Injury{Person: e.Person, Game: e.Game, At: at, Head: e.Head, Note: CleanText(e.Note, MaxInjuryNote)})
	if e.Head {
		n.sendOut(a, at)
	}
	return nil
}

// sendOut takes somebody out of the rotation for tonight, in whatever state the person is.
func (n *Night) sendOut(a *Attendance, at time.Time) {
	if a.State != Gone {
		a.leaveTo(Gone, at)
		n.Plan = nil
	}
}

// PersonCleared notes that a qualified person decided that somebody may play again tonight.
type PersonCleared struct {
	Person PersonID `json:"person"`
	By     string   `json:"by"`
}

func (e PersonCleared) apply(f *fold, _ time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	by := CleanText(e.By, MaxInjuryNote)
	if _, out := n.OutForTonight(e.Person); !out || by == "" {
		return fmt.Errorf("%s is not out for tonight, or nobody is named who clears that", f.club.Name(e.Person))
	}
	for i := range n.Injuries {
		if x := &n.Injuries[i]; x.Person == e.Person && x.bars() {
			x.Cleared = by
		}
	}
	return nil
}

// ReportInjury notes that somebody is hurt. The game that the person plays is stopped, and stands until something is noted
// of it or decided, see [SettleInjury]. Whoever may have a head injury is out for tonight.
type ReportInjury struct {
	Person PersonID
	Head   bool
	Note   string
}

func (c ReportInjury) decide(l *Ledger, _ Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	if n.Attending(c.Person) == nil {
		return nil, fmt.Errorf("%s has no part in tonight: check in first, so that it can be noted", l.club.Name(c.Person))
	}
	if err := n.barred(l.club, c.Person); err != nil && c.Head {
		return nil, fmt.Errorf("%s is out for tonight already", l.club.Name(c.Person))
	}
	e := PersonHurt{Person: c.Person, Head: c.Head, Note: CleanText(c.Note, MaxInjuryNote)}
	g := n.Playing(c.Person)
	if g == nil {
		return []Event{e}, nil
	}
	e.Game = g.ID
	stop, err := notedEvents(g, scoring.Entry{Kind: scoring.RefereeTimeOut, Note: "injury"})
	return append([]Event{e}, stop...), err
}

// Settlement is what is decided about a game in which somebody was hurt.
type Settlement int

// What can be decided.
const (
	PlaysOn     Settlement = iota // the hurt person plays on
	SubForHurt                    // somebody from the bench plays on
	HurtRetires                   // the team retires
	VoidForHurt                   // the game is void
)

// SettleInjury decides how a game goes on in which somebody was hurt. But for PlaysOn the hurt person rests from then on, and is
// not called until back.
type SettleInjury struct {
	Person PersonID
	How    Settlement
	In     PersonID // the substitute of SubForHurt
}

func (c SettleInjury) decide(l *Ledger, env Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	g := n.Playing(c.Person)
	if g == nil {
		return nil, fmt.Errorf("%s is in no game", l.club.Name(c.Person))
	}
	var events []Event
	switch c.How {
	case PlaysOn:
		if err := n.barred(l.club, c.Person); err != nil {
			return nil, err
		}
		return notedEvents(g, scoring.Entry{Kind: scoring.Remark, Note: "play goes on after the injury"})
	case SubForHurt:
		events, err = Substitute{g.ID, c.Person, c.In}.decide(l, env)
	case HurtRetires:
		e := scoring.Entry{Kind: scoring.TeamRetired}
		if g.B.Has(c.Person) {
			e.Team = scoring.B
		}
		events, err = notedEvents(g, e)
	case VoidForHurt:
		var void scoring.Final
		void, err = g.Rules.Final(g.State.Score.A, g.State.Score.B, scoring.Void)
		events = []Event{GameFinished{g.ID, void}}
	default:
		return nil, fmt.Errorf("say what becomes of the game: substitute, retire, void or play on")
	}
	if err != nil {
		return nil, err
	}
	if n.contains(c.Person, Here) {
		events = append(events, PersonRested{c.Person})
	}
	return events, nil
}

// ClearToPlay notes the decision that somebody with a suspected head injury may play again tonight. It is a qualified
// person's, who is named; the program never takes it.
type ClearToPlay struct {
	Person PersonID
	By     string
}

func (c ClearToPlay) decide(l *Ledger, _ Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	by := CleanText(c.By, MaxInjuryNote)
	if _, out := n.OutForTonight(c.Person); !out {
		return nil, fmt.Errorf("%s is not out for tonight because of a head injury", l.club.Name(c.Person))
	}
	if !strings.ContainsFunc(by, unicode.IsLetter) {
		return nil, fmt.Errorf("name the qualified person who decided it, such as: Dr Vale, physician")
	}
	return []Event{PersonCleared{c.Person, by}}, nil
}

// hurtText says what an injury was.
func hurtText(club *Club, e PersonHurt) string {
	text := club.Name(e.Person) + " is hurt"
	if e.Head {
		text += ", a head injury is suspected: out for tonight"
	}
	if e.Note != "" {
		text += " (" + e.Note + ")"
	}
	return text
}
