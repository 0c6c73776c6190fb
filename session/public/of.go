package public

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"slices"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/hall"
)

// Of is what the hall may see at a moment. H is what stands there, of the same ledger and time; the times
// of day are those of now's zone.
func Of(l *session.Ledger, h hall.Hall, now time.Time) View {
	v := View{Version: Version, Seq: l.Last(), Clock: clock(now, now), Courts: []Court{}, Bench: []Waiting{}, Standings: []Place{}, People: []Person{}}
	n := l.Night()
	if n == nil {
		return v
	}
	s := show{n, namesOf(l.Club(), n), h, now}
	v.Open, v.Night, v.Here = true, n.Name, n.Count(session.Here)
	if n.Settings.Flow == session.Rounds {
		v.Round, v.Rounds = len(n.Rounds), max(n.Settings.Rounds, len(n.Rounds))
	}
	if at := n.Settings.Closing; !at.IsZero() {
		v.Closing, v.Left = clock(at, now), max(0, int((at.Sub(now)+time.Minute-1)/time.Minute))
	}
	if n.Hold != nil {
		v.Hold = &Hold{n.Hold.Why, minutes(now.Sub(n.Hold.Since))}
	}
	for _, m := range n.MessagesAt(now) {
		v.Messages = append(v.Messages, Message{m.Text, clock(m.Until, now)})
	}
	if card := l.Card(); card.OnBoard {
		for _, line := range card.Written() {
			v.Emergency = append(v.Emergency, Line(line))
		}
	}
	v.Courts, v.Next, v.Bench, v.Standings, v.People = s.courts(), s.next(), s.bench(), s.standings(), s.people()
	return v
}

// show is a night at a moment, with the names that it may be shown by.
type show struct {
	n     *session.Night
	names names
	h     hall.Hall
	now   time.Time
}

// states are the words for the states of a court.
var states = map[hall.State]string{
	hall.Closed: Closed, hall.Free: Free, hall.Planned: Planned, hall.Over: Over, hall.Called: Called, hall.Playing: Playing,
}

// onTheWay is for how long after a call people are taken to be on their way to the court.
const onTheWay = 2 * time.Minute

func (s show) courts() []Court {
	out := []Court{}
	for _, c := range s.h.Courts {
		court := Court{
			Name: string(c.ID), State: states[c.State], A: s.names.team(c.A), B: s.names.team(c.B),
			Minutes: minutes(c.Played), Last: c.Closing,
		}
		switch {
		case court.State != Called && court.State != Playing:
		case c.Played < onTheWay && !c.Scored:
			court.State = Called
		default:
			court.State = Playing
		}
		if c.Scored {
			court.Score = []int{c.Score.A, c.Score.B}
		}
		if c.Decided {
			court.Winner = map[scoring.Team]string{scoring.A: "a", scoring.B: "b"}[c.Winner]
		}
		out = append(out, court)
	}
	return out
}

func (s show) next() Next {
	next := Next{Round: s.h.Round, Out: s.names.list(s.h.Out)}
	for _, g := range s.h.Next {
		game := Game{A: s.names.team(g.A), B: s.names.team(g.B)}
		if s.n.Settings.Flow == session.Rounds {
			game.Court = string(g.Court)
		}
		next.Games = append(next.Games, game)
	}
	return next
}

func (s show) bench() []Waiting {
	out := []Waiting{}
	for _, w := range s.h.Bench {
		if name, ok := s.names[w.Person]; ok {
			out = append(out, Waiting{name, minutes(w.Waited), minutes(w.Turn.Likely)})
		}
	}
	return out
}

func (s show) standings() []Place {
	out := []Place{}
	for _, p := range s.h.Leaders {
		if len(s.names.list(p.People)) == 0 {
			continue
		}
		place := Place{Rank: p.Rank, Games: p.Games, Wins: p.Wins, Difference: p.Difference}
		for _, id := range p.People {
			place.Names = append(place.Names, s.names.player(id))
		}
		out = append(out, place)
	}
	return out
}

// people are those in the hall.
func (s show) people() []Person {
	out := []Person{}
	for _, a := range s.n.Roll {
		name, ok := s.names[a.Person]
		if !ok {
			continue
		}
		p := Person{Key: s.key(a.Person), Name: name}
		switch g := s.n.Playing(a.Person); {
		case g != nil:
			p.State, p.Court = OnCourt, string(g.Court)
		case a.State == session.Here:
			p.State = OnBench
		case a.State == session.Resting:
			p.State = Resting
		default:
			continue
		}
		out = append(out, p)
	}
	slices.SortFunc(out, func(a, b Person) int {
		return cmp.Or(cmp.Compare(reading(a.Name), reading(b.Name)), cmp.Compare(a.Key, b.Key))
	})
	return out
}

// key tells a person from the others of this night, and cannot be followed to another one.
func (s show) key(id session.PersonID) string {
	sum := sha256.Sum256([]byte(s.n.UID + "\x00" + string(id)))
	return hex.EncodeToString(sum[:8])
}

// clock is a time of day in the zone of now, empty for no time.
func clock(t, now time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.In(now.Location()).Format("15:04")
}

func minutes(d time.Duration) int { return max(0, int(d.Minutes())) }
