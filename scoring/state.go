package scoring

import "fmt"

// Score is the points of both teams.
type Score struct {
	A int `json:"a"`
	B int `json:"b"`
}

// Of is the points of one team.
func (s Score) Of(side Team) int {
	if side == A {
		return s.A
	}
	return s.B
}

// String is the score with A's points first, such as "11-7".
func (s Score) String() string { return fmt.Sprintf("%d-%d", s.A, s.B) }

// add gives side n more points.
func (s *Score) add(side Team, n int) {
	if side == A {
		s.A += n
	} else {
		s.B += n
	}
}

// What is what changed last.
type What uint8

// The changes. A rally makes the first five, the others are entries of a [Sheet].
const (
	Begin        What = iota // start: nothing was played yet
	Point                    // the serving team scored and serves on
	SecondServer             // the serve goes to the partner
	ServeOver                // side out: the serve goes to the other team
	Game                     // the rally ended the game
	Corrected                // the state was set right by hand: see [State.Set]
	Penalty                  // a technical foul changed the score: see [State.Penalise]
)

var whatNames = [...]string{"start", "point", "second server", "side out", "game", "correction", "technical foul"}

// String is "start", "point", "second server", "side out" or "game" after a rally, and "correction" or
// "technical foul" where the state was changed without one.
func (w What) String() string {
	if int(w) < len(whatNames) {
		return whatNames[w]
	}
	return fmt.Sprintf("change %d", uint8(w))
}

// State is a game between two rallies, or after its last one. It is a value: [State.After] makes a new
// one. Start and After keep its fields true to one another; set none of them by hand.
type State struct {
	Score    Score
	Rally    int  // rallies played
	Serving  Team // who serves next, and once the game is over who served last
	Number   int  // 1 or 2, the server's number; 0 where the call has two numbers
	Server   Seat
	Receiver Seat
	Box      Box  // the box the server serves from; the receiver stands in the box of the same name
	Won      Team // who won the last rally; A before the first
	What     What
	Done     bool
	Winner   Team // once Done

	rules Rules
	ends  endChange
	last  turn    // who served in the last rally: what Why talks about
	flip  [2]bool // the partners stand in each other's box, after a correction
}

// turn is the serve that a rally was played under.
type turn struct {
	server   Seat
	number   int
	opening  bool // the first turn of the game, which has one server
	withheld bool // the rally won no point because the last point must be won on serve
}

// Start is the state before the first serve of a game in which first serves. In side-out doubles that
// side has one server in its first turn, who counts as the second: the call is 0-0-2 (4.B.6; 2026: 5.B).
//
// The rules must be valid ([Rules.Validate]).
func Start(r Rules, first Team) State {
	s := State{
		Score:    Score{r.StartA, r.StartB},
		Serving:  first,
		Server:   Seat{Team: first},
		Receiver: Seat{Team: first.Other()},
		rules:    r,
		ends:     newEndChange(r),
	}
	if r.threeNumbers() {
		s.Number = 2
	}
	s.last.opening = true
	s.place()
	return s
}

// Fold is the state of a game after rallies. Rallies after the end of the game change nothing.
func Fold(r Rules, first Team, rallies []Rally) State {
	s := Start(r, first)
	for _, rl := range rallies {
		s.play(rl.Won)
	}
	return s
}

// After is the state after one more rally. Once the game is done it is s itself.
func (s State) After(rl Rally) State {
	s.play(rl.Won)
	return s
}

// Rules are what the game is played under.
func (s State) Rules() Rules { return s.rules }
