// Package summary tells a night in a few figures and sentences: games, people, courts, who leads, how fair it was.
// It is a pure function of the ledger and the time.
package summary

import (
	"slices"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/timeline"
)

// Summary is a night in short. Times are in minutes.
type Summary struct {
	Night   session.NightID `json:"night"`
	Name    string          `json:"name"`
	Opened  time.Time       `json:"opened"`
	Ended   time.Time       `json:"ended,omitzero"` // zero while the night goes on
	People  int             `json:"people"`         // who came
	Rounds  int             `json:"rounds"`         // 0 in the rolling flow
	Games   int             `json:"games"`          // that are over, without void ones
	Void    int             `json:"void"`
	Running int             `json:"running"` // that go on
	Courts  []CourtUse      `json:"courts"`
	Idle    float64         `json:"idle"` // share of the time of open courts in which nobody played, 0 to 1
	Leaders []Leader        `json:"leaders"`
	Fewest  int             `json:"fewest_games"` // of who came, most and fewest
	Most    int             `json:"most_games"`
	SatOut  [2]int          `json:"sat_out"` // rounds that somebody sat out, fewest and most
	Wait    *Wait           `json:"longest_wait,omitempty"`
	Closest *ClosestGame    `json:"closest,omitempty"`
	Met     []Pair          `json:"met_most"`        // who shared a court most often
	Repeats int             `json:"partner_repeats"` // games of two who had been partners before
	Again   []Pair          `json:"partners_again"`  // who were partners most often, if more than once
}

// CourtUse is how a court was used.
type CourtUse struct {
	Court session.CourtID `json:"court"`
	Games int             `json:"games"`
	Idle  int             `json:"idle"`
}

// Leader is a line at the top of the table.
type Leader struct {
	Place      int    `json:"place"`
	Name       string `json:"name"`
	Games      int    `json:"games"`
	Wins       int    `json:"wins"`
	Difference int    `json:"difference"`
}

// Wait is how long somebody waited for a game.
type Wait struct {
	Name    string `json:"name"`
	Minutes int    `json:"minutes"`
}

// ClosestGame is the game with the fewest points between the teams.
type ClosestGame struct {
	Court session.CourtID `json:"court"`
	Round int             `json:"round,omitempty"`
	A     []string        `json:"a"`
	B     []string        `json:"b"`
	Score string          `json:"score"`
}

// Pair is two people and how often they did something.
type Pair struct {
	Names [2]string `json:"names"`
	Times int       `json:"times"`
}

// places is how many places of the table are told.
const places = 3

// Of is the summary of the newest night of a ledger; false where there is none.
func Of(l *session.Ledger, now time.Time) (s Summary, ok bool) {
	t, ok := timeline.Of(l, nil, now)
	if !ok {
		return Summary{}, false
	}
	n, club := t.Night, l.Club()
	s = Summary{
		Night: n.ID, Name: n.Name, Opened: n.Opened, Ended: n.Closed, Rounds: len(n.Rounds), Idle: t.IdleShare(),
		Courts: []CourtUse{}, Leaders: []Leader{}, Met: []Pair{}, Again: []Pair{},
	}
	for _, r := range t.Rows {
		c := CourtUse{Court: r.Court, Idle: int(r.Idle.Minutes() + 0.5)}
		for _, b := range r.Blocks {
			if g := n.Game(b.Game); g != nil && (g.Final == nil || g.Final.How() != scoring.Void) {
				c.Games++
			}
		}
		s.Courts = append(s.Courts, c)
	}
	s.count(n)
	for _, p := range session.Standings(club, n) {
		if p.Rank <= places {
			s.Leaders = append(s.Leaders, Leader{p.Rank, p.Name, p.Games, p.Wins, p.Difference})
		}
	}
	s.turns(n)
	s.meetings(club, n)
	s.Closest = closest(club, n)
	s.Wait = longestWait(l, n, now)
	return s, true
}

// count counts the games.
func (s *Summary) count(n *session.Night) {
	for i := range n.Games {
		switch g := &n.Games[i]; {
		case g.Final == nil:
			s.Running++
		case g.Final.How() == scoring.Void:
			s.Void++
		default:
			s.Games++
		}
	}
}

// turns says how many games and sit-outs who came had.
func (s *Summary) turns(n *session.Night) {
	all := n.TurnsOfAll()
	for _, a := range n.Roll {
		if a.Arrived.IsZero() {
			continue
		}
		had := all[a.Person]
		if s.People == 0 {
			s.Fewest, s.SatOut[0] = had.Games, had.SatOut
		}
		s.People++
		s.Fewest, s.Most = min(s.Fewest, had.Games), max(s.Most, had.Games)
		s.SatOut[0], s.SatOut[1] = min(s.SatOut[0], had.SatOut), max(s.SatOut[1], had.SatOut)
	}
}

// closest is the game that was played to its end with the fewest points between the teams; of several the one
// with the most points, and of those the first.
func closest(club *session.Club, n *session.Night) *ClosestGame {
	var best *session.Game
	gap := func(g *session.Game) (int, int) {
		p := g.Final.Score()
		return max(p.A-p.B, p.B-p.A), -p.A - p.B
	}
	for i := range n.Games {
		g := &n.Games[i]
		if g.Final == nil || g.Final.How() != scoring.Played {
			continue
		}
		if best == nil {
			best = g
			continue
		}
		d, points := gap(g)
		if least, most := gap(best); d < least || d == least && points < most {
			best = g
		}
	}
	if best == nil {
		return nil
	}
	return &ClosestGame{Court: best.Court, Round: best.Round, A: names(club, best.A), B: names(club, best.B), Score: session.ScoreText(*best.Final)}
}

func names(club *session.Club, s session.Team) []string {
	var out []string
	for _, id := range s {
		if id != "" {
			out = append(out, club.Name(id))
		}
	}
	return out
}

// mostPairs is how many pairs are told of those who are level.
const mostPairs = 3

// meetings counts who shared a court, and who were partners.
func (s *Summary) meetings(club *session.Club, n *session.Night) {
	met, together := map[[2]session.PersonID]int{}, map[[2]session.PersonID]int{}
	for i := range n.Games {
		g := &n.Games[i]
		if g.Final != nil && g.Final.How() == scoring.Void {
			continue
		}
		all := g.Players()
		for k, a := range all {
			for _, b := range all[k+1:] {
				met[pair(a, b)]++
			}
		}
		for _, t := range []session.Team{g.A, g.B} {
			if t[0] != "" && t[1] != "" {
				if together[pair(t[0], t[1])]++; together[pair(t[0], t[1])] > 1 {
					s.Repeats++
				}
			}
		}
	}
	s.Met, s.Again = top(club, met, 2), top(club, together, 2)
}

func pair(a, b session.PersonID) [2]session.PersonID {
	if b < a {
		a, b = b, a
	}
	return [2]session.PersonID{a, b}
}

// top lists the pairs with the highest count, by name; nobody where it is below least.
func top(club *session.Club, counts map[[2]session.PersonID]int, least int) []Pair {
	most := 0
	for _, k := range counts {
		most = max(most, k)
	}
	out := []Pair{}
	for p, k := range counts {
		if k == most && most >= least {
			two := [2]string{club.Name(p[0]), club.Name(p[1])}
			slices.Sort(two[:])
			out = append(out, Pair{two, k})
		}
	}
	slices.SortFunc(out, func(a, b Pair) int { return slices.Compare(a.Names[:], b.Names[:]) })
	return out
}
