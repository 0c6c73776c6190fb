package scoring

import (
	"encoding/json"
	"fmt"
)

// finalJSON is the stored form. The winner stands there only where the score does not tell it.
type finalJSON struct {
	A   int   `json:"a"`
	B   int   `json:"b"`
	How How   `json:"how"`
	Won *Team `json:"won,omitempty"`
}

// MarshalJSON writes {"a":11,"b":7,"how":"played"}, with "won" where the loser has the higher score.
func (f Final) MarshalJSON() ([]byte, error) {
	if f.IsZero() {
		return []byte("null"), nil
	}
	out := finalJSON{A: f.score.A, B: f.score.B, How: f.how}
	if f.upset() {
		out.Won = &f.winner
	}
	return json.Marshal(out)
}

// UnmarshalJSON reads what [Final.MarshalJSON] writes. It cannot know the rules of the game; check a
// result from an untrusted place with [Rules.Check].
func (f *Final) UnmarshalJSON(data []byte) error {
	if string(data) == "null" {
		*f = Final{}
		return nil
	}
	var in finalJSON
	if err := json.Unmarshal(data, &in); err != nil {
		return fmt.Errorf("this is no final score: %w", err)
	}
	out := Final{score: Score{in.A, in.B}, how: in.How}
	out.winner, out.won = out.leader()
	switch {
	case in.How == 0:
		return fmt.Errorf("the score %v lacks how the game ended: played, timed, retired, walkover or void", out.score)
	case !possible(in.A, in.B):
		return fmt.Errorf("%v is no score: points are 0 to %d", out.score, maxPoints)
	case in.How == Void:
		out.winner, out.won = A, false
	case in.How == Retired && in.Won != nil:
		out.winner, out.won = *in.Won, true
	case !out.won && in.How != Timed:
		return fmt.Errorf("a game that was %v has a winner, and %v has none", in.How, out.score)
	}
	*f = out
	return nil
}
