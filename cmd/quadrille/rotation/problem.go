package rotation

import (
	"slices"

	"club/quadrille/scheduler"
)

// Problem states what the document is a solution of, and its rounds in the scheduler's numbers.
// The error is a [*Fault] that names the round and the person or court that is not in the
// document's lists; whether the rotation is valid beyond that is the scheduler's to say.
func (d *Document) Problem() (scheduler.Problem, []scheduler.Round, error) {
	p := scheduler.Problem{Format: d.Format, Seed: d.Seed, Rounds: len(d.Rounds)}
	for _, name := range d.Players {
		p.People = append(p.People, scheduler.Person{Name: name})
	}
	for _, name := range d.Courts {
		p.Courts = append(p.Courts, scheduler.CourtSpec{Name: name})
	}
	n := numbers{people: index(d.Players), courts: index(d.Courts)}
	if err := n.know(&p, d.Roster); err != nil {
		return p, nil, err
	}
	rounds, err := n.rounds(p.People, d.Rounds)
	if err != nil {
		return p, nil, err
	}
	switch p.Format {
	case scheduler.Pairs:
		p.Together = append(p.Together, foundPairs(p, rounds)...)
	case scheduler.Mixed:
		findGroups(p.People, rounds)
	}
	return p, rounds, nil
}

// numbers translates names.
type numbers struct{ people, courts map[string]int }

func index(names []string) map[string]int {
	out := make(map[string]int, len(names))
	for i, name := range names {
		out[name] = i
	}
	return out
}

// know adds what the roster says to the problem.
func (n numbers) know(p *scheduler.Problem, roster []Person) error {
	for _, entry := range roster {
		i, ok := n.people[entry.Name]
		if !ok {
			return faultf(0, "", "the roster names %s, who is not among the players", entry.Name)
		}
		person := &p.People[i]
		person.Group, person.Level = entry.Group, entry.Level
		person.Arrive, person.Leave = max(0, entry.Arrive-1), max(0, entry.Leave)
		for _, name := range entry.Courts {
			c, ok := n.courts[name]
			if !ok {
				return faultf(0, name, "the roster has %s play only there, which is not among the courts", entry.Name)
			}
			person.Courts = append(person.Courts, scheduler.Court(c))
		}
		for _, w := range entry.PartnerWith {
			pair, err := n.pair(i, w.Name, w.Times)
			if err != nil {
				return err
			}
			p.Together = addPair(p.Together, pair)
		}
		for _, name := range entry.KeepApart {
			pair, err := n.pair(i, name, 0)
			if err != nil {
				return err
			}
			p.NeverMeet = addPair(p.NeverMeet, pair)
		}
		for _, name := range entry.NotPartner {
			pair, err := n.pair(i, name, 0)
			if err != nil {
				return err
			}
			p.NeverPartner = addPair(p.NeverPartner, pair)
		}
	}
	return nil
}

func (n numbers) pair(i int, other string, times int) (scheduler.Pair, error) {
	j, ok := n.people[other]
	if !ok || i == j {
		return scheduler.Pair{}, faultf(0, "", "the roster asks for a pair with %s, who is not among the other players", other)
	}
	return scheduler.Pair{A: scheduler.Player(min(i, j)), B: scheduler.Player(max(i, j)), Times: times}, nil
}

// addPair adds a pair unless the list already has the two.
func addPair(list []scheduler.Pair, pair scheduler.Pair) []scheduler.Pair {
	if slices.ContainsFunc(list, func(p scheduler.Pair) bool { return p.A == pair.A && p.B == pair.B }) {
		return list
	}
	return append(list, pair)
}

// rounds translates all rounds.
func (n numbers) rounds(people []scheduler.Person, rounds []Round) ([]scheduler.Round, error) {
	out := make([]scheduler.Round, len(rounds))
	for i, r := range rounds {
		for _, g := range r.Games {
			game, err := n.game(r.Round, g)
			if err != nil {
				return nil, err
			}
			out[i].Games = append(out[i].Games, game)
		}
		for _, name := range r.Out {
			p, ok := n.people[name]
			if !ok {
				return nil, faultf(r.Round, "", "%s sits out but is not among the players", name)
			}
			out[i].Out = append(out[i].Out, scheduler.Player(p))
		}
		if r.Out == nil {
			out[i].Out = others(people, i, out[i].Games)
		}
	}
	return out, nil
}

// game translates one game.
func (n numbers) game(round int, g Game) (scheduler.Game, error) {
	court, ok := n.courts[g.Court]
	if !ok {
		return scheduler.Game{}, faultf(round, g.Court, "this court is not among the courts")
	}
	out := scheduler.Game{Court: scheduler.Court(court)}
	for _, side := range []struct {
		names []string
		team  *scheduler.Team
	}{{g.A, &out.A}, {g.B, &out.B}} {
		if len(side.names) < 1 || len(side.names) > 2 {
			return out, faultf(round, g.Court, "a team has %d people: a team is two, or one in singles", len(side.names))
		}
		side.team[1] = scheduler.Nobody
		for seat, name := range side.names {
			p, ok := n.people[name]
			if !ok {
				return out, faultf(round, g.Court, "%s is not among the players", name)
			}
			side.team[seat] = scheduler.Player(p)
		}
	}
	return out, nil
}

// others lists who is there in a round, from 0, and in none of its games.
func others(people []scheduler.Person, round int, games []scheduler.Game) []scheduler.Player {
	var out []scheduler.Player
	for i, person := range people {
		here := round >= person.Arrive && (person.Leave == 0 || round < person.Leave)
		plays := slices.ContainsFunc(games, func(g scheduler.Game) bool { return slices.Contains(g.Players(), scheduler.Player(i)) })
		if here && !plays {
			out = append(out, scheduler.Player(i))
		}
	}
	return out
}
