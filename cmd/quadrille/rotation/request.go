package rotation

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/session/roster"
)

// Request is what somebody asks a plan for: a number of people or a roster, and the hall.
type Request struct {
	Format  scheduler.Format
	Players int            // people without names, if there is no roster
	Roster  []roster.Entry // people with names, in place of Players
	Courts  int
	Rounds  int
	Start   string // time of day of the first call, "19:00"; needed for rosters with times of day
	Slot    int    // minutes from one call to the next
	Seed    uint64

	Leveling scheduler.Leveling // how much even games are worth
	MaxRun   int                // games running after which somebody sits out; 0 for no limit
	Benching scheduler.Benching // what sitting out twice running may cost
}

// Problem states the request for the scheduler. The error says which part of it cannot be.
func (q Request) Problem() (scheduler.Problem, error) {
	people := q.Players
	if q.Roster != nil {
		people = len(q.Roster)
	}
	switch {
	case people < 4 || people > MaxPeople:
		return scheduler.Problem{}, fmt.Errorf("a rotation is for 4 to %d players, not %d", MaxPeople, people)
	case q.Courts < 1 || q.Courts > MaxCourts:
		return scheduler.Problem{}, fmt.Errorf("a rotation needs 1 to %d courts, not %d", MaxCourts, q.Courts)
	case q.Rounds < 1 || q.Rounds > MaxRounds:
		return scheduler.Problem{}, fmt.Errorf("a rotation has 1 to %d rounds, not %d", MaxRounds, q.Rounds)
	case q.Format == scheduler.Ladder:
		return scheduler.Problem{}, fmt.Errorf("a ladder cannot be planned: each round follows from the results of the one before")
	}
	p := scheduler.Problem{Format: q.Format, Rounds: q.Rounds, Seed: q.Seed, Benching: q.Benching, Leveling: q.Leveling, MaxRun: q.MaxRun}
	for i := range q.Courts {
		p.Courts = append(p.Courts, scheduler.CourtSpec{Name: strconv.Itoa(i + 1)})
	}
	if q.Roster == nil {
		p.People = Numbered(q.Players, q.Format)
		return p, nil
	}
	return p, q.invite(&p)
}

// Numbered makes people without names: P01, P02 and so on, with as many digits as the last one
// needs and at least two. In mixed games every second one belongs to the other group.
func Numbered(n int, format scheduler.Format) []scheduler.Person {
	digits := max(2, len(strconv.Itoa(n)))
	people := make([]scheduler.Person, n)
	for i := range people {
		people[i].Name = fmt.Sprintf("P%0*d", digits, i+1)
		if format == scheduler.Mixed {
			people[i].Group = []string{"x", "y"}[i%2]
		}
	}
	return people
}

// invite adds the people of the roster and their wishes.
func (q Request) invite(p *scheduler.Problem) error {
	names := map[string]int{}
	for i, e := range q.Roster {
		names[strings.ToLower(e.Name)] = i
	}
	for i, e := range q.Roster {
		person := scheduler.Person{Name: e.Name, Group: e.Group, Level: e.Level}
		var err error
		if person.Arrive, err = q.round(e.Arrive, math.Ceil); err != nil {
			return fmt.Errorf("roster line %d: %s: arrive: %w", e.Line, e.Name, err)
		}
		if person.Leave, err = q.round(e.Leave, math.Floor); err != nil {
			return fmt.Errorf("roster line %d: %s: leave: %w", e.Line, e.Name, err)
		}
		if e.Leave.Round > 0 {
			person.Leave++ // the person still plays the round that the roster names
		}
		if !e.Leave.IsZero() && person.Leave <= person.Arrive {
			return fmt.Errorf("roster line %d: %s leaves before the first round that fits: leave the line out or change the times", e.Line, e.Name)
		}
		for _, name := range e.Courts {
			c, err := strconv.Atoi(name)
			if err != nil || c < 1 || c > q.Courts {
				return fmt.Errorf("roster line %d: %s plays only on court %s, and the courts are 1 to %d", e.Line, e.Name, name, q.Courts)
			}
			person.Courts = append(person.Courts, scheduler.Court(c-1))
		}
		p.People = append(p.People, person)
		for _, w := range e.PartnerWith {
			p.Together = addPair(p.Together, orderedPair(i, names[strings.ToLower(w.Name)], w.Times))
		}
		for _, other := range e.KeepApart {
			p.NeverMeet = addPair(p.NeverMeet, orderedPair(i, names[strings.ToLower(other)], 0))
		}
		for _, other := range e.NotPartner {
			p.NeverPartner = addPair(p.NeverPartner, orderedPair(i, names[strings.ToLower(other)], 0))
		}
	}
	return nil
}

// round is the round, from 0, in which a moment falls; times of day that fall within a round go to
// a whole one as whole says.
func (q Request) round(m roster.Moment, whole func(float64) float64) (int, error) {
	switch {
	case m.IsZero():
		return 0, nil
	case !m.IsClock:
		return m.Round - 1, nil
	case q.Start == "":
		return 0, fmt.Errorf("a time of day needs to know when round 1 is called: add --start 19:00")
	case q.Slot < 1:
		return 0, fmt.Errorf("a round takes 1 minute or more, not %d", q.Slot)
	}
	start, err := roster.ParseMoment(q.Start)
	if err != nil || !start.IsClock {
		return 0, fmt.Errorf("--start %q is no time of day: write it as 19:00", q.Start)
	}
	rounds := float64(m.After(start)) / float64(time.Duration(q.Slot)*time.Minute)
	return max(0, int(whole(rounds))), nil
}

func orderedPair(i, j, times int) scheduler.Pair {
	return scheduler.Pair{A: scheduler.Player(min(i, j)), B: scheduler.Player(max(i, j)), Times: times}
}
