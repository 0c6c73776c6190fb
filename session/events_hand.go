package session

import (
	"fmt"
	"slices"
	"time"
)

// ByHand is what somebody decided, for the history to tell.
type ByHand string

// The ways to decide by hand about what is called next.
const (
	PinnedPartners ByHand = "partners" // two people are partners
	PinnedGame     ByHand = "game"     // a planned game stays as it is
	SwappedPeople  ByHand = "swap"     // two people of a round to come take each other's place
	MovedGame      ByHand = "move"     // a planned game is on another court
	PutFirstByHand ByHand = "first"    // somebody plays before everybody else who waits
)

// Pinned notes decisions by hand about rounds to come or the next call. They take the place of earlier ones about the
// same people or the same court in the same round.
type Pinned struct {
	Pins   []Pin      `json:"pins"`
	By     ByHand     `json:"by,omitempty"`
	People []PersonID `json:"people,omitempty"` // of a swap: the two who take each other's place
}

func (e Pinned) older() uint16 {
	return layoutWithout(!slices.ContainsFunc(e.Pins, func(p Pin) bool { return p.Out }))
}

func (e Pinned) apply(f *fold, _ time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	if len(e.Pins) == 0 {
		return fmt.Errorf("nothing is decided")
	}
	for k, p := range e.Pins {
		switch {
		case !p.wellFormed():
			return fmt.Errorf("a decision by hand is about one person, two partners or a game of four")
		case p.Round > 0 && p.Round <= len(n.Rounds):
			return fmt.Errorf("round %d has been called", p.Round)
		}
		for _, id := range p.People() {
			if n.Attending(id) == nil {
				return fmt.Errorf("%s has no part in the night", f.club.Name(id))
			}
			if slices.ContainsFunc(e.Pins[:k], func(q Pin) bool { return q.Round == p.Round && q.Has(id) }) {
				return fmt.Errorf("%s cannot be in two games", f.club.Name(id))
			}
		}
	}
	n.addPins(e.Pins)
	return nil
}

// PlayersExchanged lets two people who are on court take each other's place.
type PlayersExchanged struct {
	One   PersonID `json:"one"`
	Other PersonID `json:"other"`
}

func (e PlayersExchanged) apply(f *fold, _ time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	if err := n.mayExchange(f.club, e.One, e.Other); err != nil {
		return err
	}
	g, h := n.Playing(e.One), n.Playing(e.Other)
	games := []*Game{g}
	if h != g {
		games = append(games, h)
	}
	for _, g := range games {
		if played := len(g.Rallies); played > 0 {
			g.Earlier = append(slices.Clip(g.Earlier), Lineup{Until: played, A: g.A, B: g.B})
		}
		for _, seat := range []*PersonID{&g.A[0], &g.A[1], &g.B[0], &g.B[1]} {
			switch *seat {
			case e.One:
				*seat = e.Other
			case e.Other:
				*seat = e.One
			}
		}
	}
	n.Changes++ // the rounds to come stay as people have seen them
	return nil
}

// mayExchange says why two people cannot take each other's place on court.
func (n *Night) mayExchange(club *Club, one, other PersonID) error {
	for _, id := range [2]PersonID{one, other} {
		if n.Playing(id) == nil {
			return fmt.Errorf("%s is not on court", club.Name(id))
		}
		if err := n.barred(club, id); err != nil {
			return err
		}
	}
	g, h := n.Playing(one), n.Playing(other)
	switch {
	case one == other:
		return fmt.Errorf("choose two people: %s cannot change places with the same person", club.Name(one))
	case g == h && g.A.Has(one) == g.A.Has(other):
		return fmt.Errorf("%s and %s are partners already", club.Name(one), club.Name(other))
	}
	return nil
}

// GameMoved takes a game that goes on to another court; a game that goes on there comes to the court that it leaves.
type GameMoved struct {
	Game  GameID  `json:"game"`
	Court CourtID `json:"court"`
	Other GameID  `json:"other,omitempty"` // the game that was on that court
}

func (e GameMoved) apply(f *fold, _ time.Time) error {
	n, g, err := f.running(e.Game)
	if err != nil {
		return err
	}
	from, to := n.Court(g.Court), n.Court(e.Court)
	switch {
	case to == nil:
		return fmt.Errorf("tonight has no court %s", e.Court)
	case from == nil || from.Game != g.ID || to == from:
		return fmt.Errorf("the game is on court %s", g.Court)
	case to.Game != e.Other:
		return fmt.Errorf("another game is on court %s", e.Court)
	case to.Game == 0 && !to.Open:
		return fmt.Errorf("court %s is closed", e.Court)
	}
	if other := n.Game(to.Game); other != nil {
		other.Court = from.ID
	}
	from.Game, to.Game = to.Game, g.ID
	g.Court = to.ID
	n.Changes++
	return nil
}

// moves tells whether an action takes a game to another court.
func (a Action) moves(id GameID) bool {
	return a.has(func(e Event) bool {
		m, ok := e.(GameMoved)
		return ok && (m.Game == id || m.Other == id)
	})
}

// describeHand is describe for what was decided by hand.
func describeHand(club *Club, e Event) string {
	switch e := e.(type) {
	case Pinned:
		return e.words(club)
	case PlayersExchanged:
		return fmt.Sprintf("%s and %s changed places", club.Name(e.One), club.Name(e.Other))
	case GameMoved:
		text := "game"
		if g := club.game(e.Game); g != nil {
			text = pairName(club, g.A) + " v " + pairName(club, g.B)
		}
		return text + fmt.Sprintf(" moved to court %s", e.Court)
	}
	return ""
}

// words says what was decided.
func (e Pinned) words(club *Club) string {
	p := e.Pins[0]
	when := "next"
	if p.Round > 0 {
		when = fmt.Sprintf("in round %d", p.Round)
	}
	switch {
	case e.By == SwappedPeople && len(e.People) == 2:
		return fmt.Sprintf("%s and %s swapped %s by hand", club.Name(e.People[0]), club.Name(e.People[1]), when)
	case e.By == PutFirstByHand:
		return fmt.Sprintf("%s put first by the organiser's decision: plays %s", club.Name(p.A[0]), when)
	case e.By == MovedGame:
		return fmt.Sprintf("%s v %s moved to court %s %s by hand", pairName(club, p.A), pairName(club, p.B), p.Court, when)
	}
	return fmt.Sprintf("%s %s by hand", p.words(club), when)
}
