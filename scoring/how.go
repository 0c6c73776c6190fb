package scoring

import "fmt"

// How is how a game came to its final score. The zero value is no way at all.
type How uint8

// The ways a game ends.
const (
	Played   How = iota + 1 // to the end, by the rules
	Timed                   // stopped by the clock: the higher score wins, level scores are a draw
	Retired                 // one team could not go on; the score is what stood then
	Walkover                // one team did not come, or could not begin
	Void                    // set aside: nobody won, and it counts for nothing
)

var howNames = [...]string{"", "played", "timed", "retired", "walkover", "void"}

// String is "played", "timed", "retired", "walkover" or "void".
func (h How) String() string {
	if h >= Played && h <= Void {
		return howNames[h]
	}
	return fmt.Sprintf("ending %d", uint8(h))
}

// MarshalText writes [How.String].
func (h How) MarshalText() ([]byte, error) {
	if h < Played || h > Void {
		return nil, fmt.Errorf("a game cannot end in way number %d", uint8(h))
	}
	return []byte(howNames[h]), nil
}

// UnmarshalText reads a way as [How.String] writes it.
func (h *How) UnmarshalText(text []byte) error {
	for i := Played; i <= Void; i++ {
		if howNames[i] == string(text) {
			*h = i
			return nil
		}
	}
	return fmt.Errorf("a game is played, timed, retired, walkover or void, and not %q", text)
}
