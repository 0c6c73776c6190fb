package forecast

import (
	"math"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/scoring/pace"
	"club/quadrille/session"
)

// What a club is taken to need of which nothing is known. The game is to 11, side-out, from the call to
// the score. Common practice, no source.
const (
	usualGame   = 14.0 // minutes, half of the games take longer
	usualChange = 3.0  // minutes from the end of a round to the call of the next
)

const (
	guessWeighs  = 4                // gaps between rounds that the guess counts as much as
	nightsDiffer = 100              // games that knowledge of the mean is worth at most: no night is quite like another
	longestGap   = 15 * time.Minute // between two rounds; longer is a break, which nobody plans by
)

// Habit is how long games and changes of courts take in a club.
type Habit struct {
	Clock  pace.Clock // of games under the rules that were asked about
	Games  int        // that taught it, 0 for the model alone
	Change float64    // minutes between two rounds
	Gaps   int        // that taught that
	Desk   pace.Clock // with which the desk begins a night, by the club's settings; games of the night teach it
}

// Learned is what a club's games teach about games under some rules: a lognormal fit that starts from
// the model, which counts as much as four games. Games that were not played to their end are left out,
// those under other rules count as long as they would be under these. Club may be nil.
func Learned(club *session.Club, rules scoring.Rules) Habit {
	h := Habit{Change: usualChange}
	model := scoring.Rules{Scoring: scoring.SideOut, To: 11, WinBy: 2}
	rules.Minutes = 0
	h.Clock, _ = pace.NewClock(session.Like(usualGame, model, rules)) // minutes above 0 are always taken
	settings := session.DefaultSettings(0)
	if club != nil && club.Usual != nil {
		settings = club.Usual.Settings
	} else if club != nil && club.Night() != nil {
		settings = club.Night().Settings
	}
	settings.Scoring = rules
	h.Desk = (&session.Night{Settings: settings}).Clock()
	if club == nil {
		return h
	}
	total := usualChange * guessWeighs
	for _, n := range club.Nights {
		for i := range n.Games {
			g := &n.Games[i]
			if g.Final != nil && g.Final.How() == scoring.Played && g.Rules.Singles == rules.Singles {
				h.Clock = h.Clock.After(session.Like(n.GameTime(g, g.Finished).Minutes(), g.Rules, rules))
				h.Games++
			}
		}
		for _, gap := range gaps(n) {
			total += gap.Minutes()
			h.Gaps++
		}
	}
	h.Change = total / float64(guessWeighs+h.Gaps)
	h.Clock.Kappa = math.Min(h.Clock.Kappa, nightsDiffer)
	return h
}

// gaps are the times between the last score of a round and the call of the next, where there was no break.
func gaps(n *session.Night) (out []time.Duration) {
	var over time.Time // the last score so far
	for _, r := range n.Rounds {
		if len(r.Games) == 0 {
			continue
		}
		called := n.Game(r.Games[0]).Called
		if gap := called.Sub(over); !over.IsZero() && gap >= 0 && gap <= longestGap {
			out = append(out, gap)
		}
		for _, id := range r.Games {
			if g := n.Game(id); g.Final != nil && g.Finished.After(over) {
				over = g.Finished
			}
		}
	}
	return out
}
