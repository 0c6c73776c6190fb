// Package public says what everybody in the hall may see of a night. Wall boards and whatever else shows
// the night to more than the organiser draw a [View] and nothing else, so that one place decides what is
// shown: no notes, levels, groups, wishes or ratings, and people by the names that the club shows.
package public

// Version is that of the form in which a View is written as JSON. Fields may be added under it; it is raised
// only when a reader of the older form would read something wrong.
const Version = 1

// Somebody stands on a court for a person who is hidden.
const Somebody = "somebody"

// View is what the hall may see at a moment. Names in it are unlike each other, so that a name is enough to
// find a person in all of its parts. Whoever is hidden is "somebody" on a court and in no list.
type View struct {
	Version   int       `json:"version"`
	Seq       uint64    `json:"seq"`   // of the newest event
	Clock     string    `json:"clock"` // time of day in the hall
	Open      bool      `json:"open"`  // a night goes on; all that follows is empty without one
	Night     string    `json:"night,omitempty"`
	Round     int       `json:"round,omitempty"`   // called last, 0 before the first and in the rolling flow
	Rounds    int       `json:"rounds,omitempty"`  // planned, 0 in the rolling flow
	Here      int       `json:"here"`              // people in the rotation
	Closing   string    `json:"closing,omitempty"` // time of day when play ends
	Left      int       `json:"left"`              // minutes until then, begun ones as whole; 0 when it has passed
	Hold      *Hold     `json:"hold,omitempty"`
	Messages  []Message `json:"messages,omitempty"`
	Courts    []Court   `json:"courts"`
	Next      Next      `json:"next"`
	Bench     []Waiting `json:"bench"` // who plays next comes first
	Standings []Place   `json:"standings"`
	People    []Person  `json:"people"`              // in the hall, by name
	Phones    string    `json:"phones,omitempty"`    // address of the page for phones while there is one; who sends views knows it
	Emergency []Line    `json:"emergency,omitempty"` // of the emergency card, where the organiser wants it shown
}

// Line is a line of the emergency card.
type Line struct {
	Label string `json:"label"`
	Text  string `json:"text"`
}

// Hold is play stopped for safety.
type Hold struct {
	Why     string `json:"why"`
	Minutes int    `json:"minutes"` // since it began
}

// Message is a line of the organiser.
type Message struct {
	Text  string `json:"text"`
	Until string `json:"until,omitempty"` // time of day, empty for until it is ended
}

// The states of a court.
const (
	Closed  = "closed"  // out of play, and nobody on it
	Free    = "free"    // nobody on it
	Planned = "planned" // a and b come there with the next call
	Over    = "over"    // the game is over
	Called  = "called"  // a and b are on their way: they were called less than two minutes ago
	Playing = "playing" // a game goes on
)

// Court is one court.
type Court struct {
	Name    string   `json:"name"`
	State   string   `json:"state"`
	A       []string `json:"a,omitempty"` // one or two names
	B       []string `json:"b,omitempty"`
	Score   []int    `json:"score,omitempty"`  // of a and b, where it is known
	Winner  string   `json:"winner,omitempty"` // a or b, of a game that is over and was decided
	Minutes int      `json:"minutes"`          // that were played
	Last    bool     `json:"last,omitempty"`   // closed after this game
}

// Game is a game to come.
type Game struct {
	Court string   `json:"court,omitempty"` // empty for the next that is free
	A     []string `json:"a"`
	B     []string `json:"b"`
}

// Next is what comes with the next call.
type Next struct {
	Round int      `json:"round,omitempty"` // its number, 0 in the rolling flow
	Games []Game   `json:"games,omitempty"`
	Out   []string `json:"out,omitempty"` // who sits out then
}

// Waiting is somebody on the bench.
type Waiting struct {
	Name    string `json:"name"`
	Minutes int    `json:"minutes"` // waited
	Until   int    `json:"until"`   // minutes until the person plays, most likely
}

// Place is a line of the standings.
type Place struct {
	Rank       int      `json:"rank"` // equal people share one
	Names      []string `json:"names"`
	Games      int      `json:"games"`
	Wins       int      `json:"wins"`
	Difference int      `json:"difference"` // points won less points lost
}

// The states of a person.
const (
	OnCourt = "court" // plays, or is called
	OnBench = "bench" // waits
	Resting = "rests" // is in the hall, and not called until back
)

// Person is somebody in the hall.
type Person struct {
	Key   string `json:"key"` // stays the same all night, whatever the name; says nothing else
	Name  string `json:"name"`
	State string `json:"state"`
	Court string `json:"court,omitempty"`
}
