package scoring_test

import (
	"encoding/json"
	"os"
	"strings"
	"testing"

	"club/quadrille/scoring"
)

// sequence is one game of testdata/sequences.json.
type sequence struct {
	ID      string
	Title   string
	Scoring string
	Format  string
	Target  int
	WinBy   int               `json:"win_by"`
	First   scoring.Team      `json:"first_serving_team"`
	Winners []string          `json:"rally_winners"`
	States  []sequenceState   `json:"states"`
	Starter map[string]string `json:"starting_server"`
}

type sequenceState struct {
	Rally    int
	Call     *string
	Serving  *scoring.Team `json:"serving_team"`
	Server   *string
	Number   *int         `json:"server_number"`
	Box      *scoring.Box `json:"server_box"`
	Receiver *string      `json:"receiver"`
	Score    struct{ A, B int }
	Over     bool    `json:"game_over"`
	ARight   *string `json:"A_right"`
	ALeft    *string `json:"A_left"`
	BRight   *string `json:"B_right"`
	BLeft    *string `json:"B_left"`
	Winner   *scoring.Team
}

// people are the names that the sequences use, by seat.
var people = scoring.Names{{"Ann", "Art"}, {"Bea", "Bob"}}

func readSequences(t *testing.T) []sequence {
	t.Helper()
	data, err := os.ReadFile("testdata/sequences.json")
	if err != nil {
		t.Fatal(err)
	}
	var file struct{ Sequences []sequence }
	if err := json.Unmarshal(data, &file); err != nil {
		t.Fatal(err)
	}
	return file.Sequences
}

// rules are what a sequence is played under.
func (s sequence) rules() scoring.Rules {
	r := scoring.Rules{To: s.Target, WinBy: s.WinBy, Singles: s.Format == "singles"}
	if strings.HasPrefix(s.Scoring, "rally") {
		r.Scoring = scoring.RallyScoring
		r.WinOnServe = strings.Contains(s.Scoring, "2025")
	}
	return r
}

// begin is the state before the first rally, which in some sequences is the middle of a game.
func (s sequence) begin(t *testing.T) scoring.State {
	t.Helper()
	state := scoring.Start(s.rules(), s.First)
	first := s.States[0]
	if first.Score.A == 0 && first.Score.B == 0 {
		return state
	}
	set := state.Setting()
	set.Score = scoring.Score(first.Score)
	set.Serving = *first.Serving
	set.Server = seatOf(*first.Server)
	if first.Number != nil {
		set.Number = *first.Number
	}
	set.Right = [2]scoring.Seat{seatOf(*first.ARight), seatOf(*first.BRight)}
	state, err := state.Set(set)
	if err != nil {
		t.Fatal(err)
	}
	return state
}

func seatOf(name string) scoring.Seat {
	for side := range people {
		for i, n := range people[side] {
			if n == name {
				return scoring.Seat{Team: scoring.Team(side), Index: uint8(i)}
			}
		}
	}
	panic("no such player: " + name)
}

// Rules 4.B and 12.B.1 (2026: 5.B, 14.A), as worked out by hand.
func TestEngineAgreesWithSequencesWorkedByHand(t *testing.T) {
	for _, seq := range readSequences(t) {
		t.Run(seq.ID, func(t *testing.T) {
			state := seq.begin(t)
			compare(t, seq.States[0], state)
			for i, winner := range seq.Winners {
				switch winner {
				case "A":
					state = state.After(scoring.Rally{Won: scoring.A})
				case "B":
					state = state.After(scoring.Rally{Won: scoring.B})
				}
				compare(t, seq.States[i+1], state)
			}
		})
	}
}

func compare(t *testing.T, want sequenceState, got scoring.State) {
	t.Helper()
	if got.Score != scoring.Score(want.Score) || got.Done != want.Over {
		t.Fatalf("after rally %d: score %v, done %v; want %v, %v", want.Rally, got.Score, got.Done, want.Score, want.Over)
	}
	boxes := map[string]*string{"A right": want.ARight, "A left": want.ALeft, "B right": want.BRight, "B left": want.BLeft}
	for _, p := range got.Positions() {
		place := p.Seat.Team.String() + " " + p.Box.String()
		if boxes[place] == nil || people.Player(p.Seat) != *boxes[place] {
			t.Errorf("after rally %d: %v stands %v", want.Rally, people.Player(p.Seat), place)
		}
	}
	if want.Over {
		if got.Winner != *want.Winner || got.Call() != "" {
			t.Errorf("after rally %d: winner %v, call %q; want %v and no call", want.Rally, got.Winner, got.Call(), *want.Winner)
		}
		return
	}
	number := 0
	if want.Number != nil {
		number = *want.Number
	}
	if got.Call() != *want.Call || got.Serving != *want.Serving || got.Number != number || got.Box != *want.Box ||
		people.Player(got.Server) != *want.Server || people.Player(got.Receiver) != *want.Receiver {
		t.Errorf("after rally %d: %q, %v serves number %d from the %v to %v; want %q, %v number %d from the %v to %v",
			want.Rally, got.Call(), people.Player(got.Server), got.Number, got.Box, people.Player(got.Receiver),
			*want.Call, *want.Server, number, *want.Box, *want.Receiver)
	}
}
