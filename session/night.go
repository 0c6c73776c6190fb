package session

import (
	"cmp"
	"slices"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
)

// CourtID is the name of a court as it is written on the fence: "1", "2", "Centre".
type CourtID string

// Court is one court of the night.
type Court struct {
	ID   CourtID `json:"id"`
	Open bool    `json:"open"`
	Note string  `json:"note,omitempty"` // what is particular about it
	Game GameID  `json:"game,omitempty"` // the game going on there, 0 for none
	Low  float64 `json:"low,omitempty"`  // of the levels for which it is kept, 0 for no lower end
	High float64 `json:"high,omitempty"` // 0 for no upper end
}

// GameID numbers the games of a night from 1 in the order of their calls.
type GameID int

// Team is a pair, or in singles one person and an empty second place. The first is the one who
// starts in the right box.
type Team [2]PersonID

// Has tells whether id plays on this team.
func (s Team) Has(id PersonID) bool { return id != "" && (s[0] == id || s[1] == id) }

// Game is one game from its call to its score.
type Game struct {
	ID       GameID          `json:"id"`
	Round    int             `json:"round,omitempty"` // 0 in the rolling flow
	Court    CourtID         `json:"court"`
	A        Team            `json:"a"`
	B        Team            `json:"b"`
	Called   time.Time       `json:"called"`
	Call     uint64          `json:"call"`              // the action that called it
	Rallies  []scoring.Rally `json:"rallies,omitempty"` // those that count, with all corrections made
	Entries  []scoring.Entry `json:"entries,omitempty"` // of the sheet, rallies too; nil while there is nothing but rallies
	State    scoring.State   `json:"-"`                 // the fold of the sheet; A serves first
	Pause    *Pause          `json:"pause,omitempty"`   // the time-out that goes on, nil for none
	Earlier  []Lineup        `json:"earlier,omitempty"` // who played before somebody was put in, oldest first
	Final    *scoring.Final  `json:"final,omitempty"`   // nil while the game goes on
	Finished time.Time       `json:"finished,omitzero"` // when Final was entered
	End      uint64          `json:"end,omitempty"`     // the action that entered it
	Stood    time.Duration   `json:"stood,omitempty"`   // how long holds kept it waiting
	Rules    scoring.Rules   `json:"rules"`             // as agreed when the game was called; so is what follows

	Format  scheduler.Format `json:"format,omitempty"`
	Stopped bool             `json:"stopped,omitempty"` // counts for the table also as a walkover or retired

	Replaced []PersonID `json:"replaced,omitempty"` // who left the game before its end
	Proposed int        `json:"proposed,omitempty"` // how many scores came from the court
}

// Players lists who plays, without empty places.
func (g *Game) Players() []PersonID {
	var out []PersonID
	for _, id := range []PersonID{g.A[0], g.A[1], g.B[0], g.B[1]} {
		if id != "" {
			out = append(out, id)
		}
	}
	return out
}

// Has tells whether id plays in g.
func (g *Game) Has(id PersonID) bool { return g.A.Has(id) || g.B.Has(id) }

// Team is the people of one team of g.
func (g *Game) Team(s scoring.Team) Team {
	if s == scoring.B {
		return g.B
	}
	return g.A
}

// At is the person in a seat of g, empty for the second seats of singles.
func (g *Game) At(s scoring.Seat) PersonID { return g.Team(s.Team)[s.Index] }

// Running tells whether g still waits for its score.
func (g *Game) Running() bool { return g.Final == nil }

// Presence says where a person of the night is.
type Presence string

// The states of presence.
const (
	Expected Presence = "expected" // announced, not here yet
	Here     Presence = "here"     // checked in and willing to play
	Resting  Presence = "resting"  // here, but not to be called
	Gone     Presence = "gone"     // left for tonight
)

// Words is the presence as people say it: [Gone], which is its name in files, is "left".
func (p Presence) Words() string {
	if p == Gone {
		return "left"
	}
	return string(p)
}

// Attendance is one person's part in the night.
type Attendance struct {
	Person  PersonID      `json:"person"`
	State   Presence      `json:"state"`
	Arrived time.Time     `json:"arrived,omitzero"`  // first check-in
	Since   time.Time     `json:"since,omitzero"`    // start of the present spell of being here
	Waiting time.Time     `json:"waiting,omitzero"`  // start of the present wait on the bench
	Turn    uint64        `json:"turn,omitempty"`    // the action with which that wait began, 0 for none: the order of the bench
	Present time.Duration `json:"present,omitempty"` // earlier spells of being here, added up
	Stay
}

// PresentFor is how long the person has been here and willing to play until now.
func (a Attendance) PresentFor(now time.Time) time.Duration {
	if a.State == Here && now.After(a.Since) {
		return a.Present + now.Sub(a.Since)
	}
	return a.Present
}

// CalledRound is a round that was called: its games, and who sat out.
type CalledRound struct {
	Number int        `json:"number"`
	Called time.Time  `json:"called"`
	Games  []GameID   `json:"games"`
	Out    []PersonID `json:"out,omitempty"`
}

// PlannedGame is a game to come.
type PlannedGame struct {
	Court CourtID `json:"court"`
	A     Team    `json:"a"`
	B     Team    `json:"b"`
}

// PlannedRound is a round to come.
type PlannedRound struct {
	Games []PlannedGame `json:"games"`
	Out   []PersonID    `json:"out,omitempty"`
}

// Night is the state of one night: a fold of its events.
type Night struct {
	ID       NightID        `json:"id"`
	UID      string         `json:"uid"` // tells nights apart when files of two laptops are joined
	Name     string         `json:"name"`
	Venue    string         `json:"venue,omitempty"` // HomeVenue where the club has said of no place
	Opened   time.Time      `json:"opened"`
	Closed   time.Time      `json:"closed,omitzero"`
	Settings Settings       `json:"settings"`
	Courts   []Court        `json:"courts"`
	Roll     []Attendance   `json:"roll"`
	Games    []Game         `json:"games"`
	Rounds   []CalledRound  `json:"rounds,omitempty"`
	Plan     []PlannedRound `json:"plan,omitempty"`    // rounds to come; empty when they must be planned anew
	Picked   *Way           `json:"picked,omitempty"`  // how the organiser wants it planned; nil for what the settings say
	Pins     []Pin          `json:"pins,omitempty"`    // decided by hand, about what is called next and rounds to come
	Changes  int            `json:"changes,omitempty"` // how often games on court changed courts or players by hand: the rotation depends on it
	Lots     []Team         `json:"lots,omitempty"`    // persons or set pairs in the order in which lots were drawn
	Hold     *Hold          `json:"hold,omitempty"`
	LastCall bool           `json:"last_call,omitempty"` // rolling flow: no more games are called
	Rolls    bool           `json:"rolls,omitempty"`     // rolling flow: free courts call by themselves
	Messages []Message      `json:"messages,omitempty"`  // to the hall, with those whose time is over; see MessagesAt
	Heat     *Heat          `json:"heat,omitempty"`      // measured last, nil for never; what it points to never changes
	Injuries []Injury       `json:"injuries,omitempty"`  // tonight's, the oldest first
	// CourtScores is whether and how the courts send scores, nil before that was chosen; what it points to never changes.
	CourtScores *CourtScores `json:"court_scores,omitempty"`
	Proposals   []Proposal   `json:"proposals,omitempty"` // that neither count nor were refused, the oldest first

	leveled *leveled // what the ratings of the nights before say, shared by all states of the night; nil where it is worked out anew
	lookup  *lookup  // of the roll, nil where people must be searched for
	own     bool     // no other state has this lookup
}

// IsOpen tells whether the night goes on.
func (n *Night) IsOpen() bool { return n.Closed.IsZero() }

// Came is how many people have been here.
func (n *Night) Came() int {
	came := 0
	for _, a := range n.Roll {
		if !a.Arrived.IsZero() {
			came++
		}
	}
	return came
}

// Court finds a court, nil if the night has none of that name.
func (n *Night) Court(id CourtID) *Court {
	i := slices.IndexFunc(n.Courts, func(c Court) bool { return c.ID == id })
	if i < 0 {
		return nil
	}
	return &n.Courts[i]
}

// Game finds a game, nil if there is none of that number.
func (n *Night) Game(id GameID) *Game {
	if id < 1 || int(id) > len(n.Games) {
		return nil
	}
	return &n.Games[id-1]
}

// Attending finds a person's part in the night, nil if the person has none.
func (n *Night) Attending(id PersonID) *Attendance {
	i := -1
	if n.lookup.fit(len(n.Roll)) {
		if at, ok := n.lookup.byID[id]; ok {
			i = at
		}
	} else {
		searched(len(n.Roll))
		i = slices.IndexFunc(n.Roll, func(a Attendance) bool { return a.Person == id })
	}
	if i < 0 {
		return nil
	}
	return &n.Roll[i]
}

// enrol gives somebody a part in the night.
func (n *Night) enrol(id PersonID) *Attendance {
	if !n.own || !n.lookup.fit(len(n.Roll)) {
		searched(len(n.Roll))
		n.lookup, n.own = lookupIn(n.Roll), true
	}
	n.Roll = append(n.Roll, Attendance{Person: id})
	n.lookup.add(id, "", len(n.Roll)-1)
	return &n.Roll[len(n.Roll)-1]
}

// Playing is the running game that a person is in, nil when there is none.
func (n *Night) Playing(id PersonID) *Game {
	for _, c := range n.Courts {
		if g := n.Game(c.Game); g != nil && g.Has(id) {
			return g
		}
	}
	return nil
}

// Running lists the games that go on, in the order of the courts.
func (n *Night) Running() []*Game {
	var out []*Game
	for _, c := range n.Courts {
		if g := n.Game(c.Game); g != nil {
			out = append(out, g)
		}
	}
	return out
}

// NewestCalls lists the games that go on, those called last first; those of a round in the order of the
// courts.
func (n *Night) NewestCalls() []*Game {
	out := n.Running()
	slices.SortStableFunc(out, func(a, b *Game) int {
		if a.Round > 0 && a.Round == b.Round {
			return 0
		}
		return cmp.Compare(b.ID, a.ID)
	})
	return out
}

// Count is how many people are in a state of presence.
func (n *Night) Count(p Presence) int {
	k := 0
	for _, a := range n.Roll {
		if a.State == p {
			k++
		}
	}
	return k
}

// OpenCourts lists the courts that may be played on.
func (n *Night) OpenCourts() []CourtID {
	var out []CourtID
	for _, c := range n.Courts {
		if c.Open {
			out = append(out, c.ID)
		}
	}
	return out
}

// Bench lists who is here, willing and not on a court, longest wait first; people whose waits began
// with the same action keep the order of the roll.
func (n *Night) Bench() []Attendance {
	var out []Attendance
	playing := map[PersonID]bool{}
	for _, c := range n.Courts {
		if g := n.Game(c.Game); g != nil {
			for _, id := range g.Players() {
				playing[id] = true
			}
		}
	}
	for _, a := range n.Roll {
		if a.State == Here && !playing[a.Person] {
			out = append(out, a)
		}
	}
	slices.SortStableFunc(out, func(x, y Attendance) int { return cmp.Compare(x.Turn, y.Turn) })
	return out
}

// GamesOf counts the games that a person played or plays tonight, without voided ones.
func (n *Night) GamesOf(id PersonID) int {
	k := 0
	for i := range n.Games {
		if g := &n.Games[i]; g.Has(id) && g.stands() {
			k++
		}
	}
	return k
}

// gamesOfAll is GamesOf for everybody who has a game.
func (n *Night) gamesOfAll() map[PersonID]int {
	k := make(map[PersonID]int, len(n.Roll))
	for i := range n.Games {
		if g := &n.Games[i]; g.stands() {
			for _, id := range g.Players() {
				k[id]++
			}
		}
	}
	return k
}

// stands tells whether the game is played or was: a void one counts for nothing.
func (g *Game) stands() bool { return g.Final == nil || g.Final.How() != scoring.Void }

func (n *Night) clone() *Night {
	c := *n
	c.Courts = slices.Clone(n.Courts)
	c.Roll, c.own = slices.Clone(n.Roll), false
	c.Games = slices.Clone(n.Games)
	c.Rounds = slices.Clone(n.Rounds)
	c.Plan = slices.Clone(n.Plan)
	c.Messages = slices.Clone(n.Messages)
	c.Proposals = slices.Clone(n.Proposals)
	c.Injuries = slices.Clone(n.Injuries)
	c.Pins = slices.Clone(n.Pins)
	return &c
}
