package simulation

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"time"

	"club/quadrille/session"
	"club/quadrille/session/roster"
)

// Invented makes n people called P01, P02 and so on, of levels as a club has them, every second one
// of the other group.
func Invented(n int, seed uint64) []roster.Entry {
	dice := rand.New(rand.NewPCG(seed, streamPeople))
	digits := max(2, len(strconv.Itoa(n)))
	people := make([]roster.Entry, n)
	for i := range people {
		level := math.Round(2*(unstated+0.6*dice.NormFloat64())) / 2
		people[i] = roster.Entry{
			Line:  i + 2,
			Name:  fmt.Sprintf("P%0*d", digits, i+1),
			Group: []string{"x", "y"}[i%2],
			Level: min(5, max(2, level)),
		}
	}
	return people
}

// visit is when somebody comes and goes.
type visit struct {
	comes time.Time
	goes  time.Time // zero for somebody who stays to the end
}

// visits settles when everybody comes and goes: as the roster says; where it says nothing, late or
// early if chance picks the person, else before the first call and not before the end.
func (n Night) visits() []visit {
	dice := n.dice(streamVisits, 0)
	out := make([]visit, len(n.People))
	var punctual, staying []int
	for i, e := range n.People {
		out[i].comes = opening.Add(time.Duration(dice.IntN(int(doors/time.Second))) * time.Second)
		if e.Arrive.IsZero() {
			punctual = append(punctual, i)
		} else {
			out[i].comes = n.moment(e.Arrive, 0)
		}
		if !e.Leave.IsZero() {
			out[i].goes = n.moment(e.Leave, 1)
		}
	}
	dice.Shuffle(len(punctual), func(i, j int) { punctual[i], punctual[j] = punctual[j], punctual[i] })
	late := min(n.Late, len(punctual))
	for _, i := range punctual[:late] {
		out[i].comes = n.during(0.1, 0.4, dice)
	}
	for _, i := range punctual[late:] {
		if n.People[i].Leave.IsZero() {
			staying = append(staying, i)
		}
	}
	for _, i := range staying[:min(n.Leave, len(staying))] {
		out[i].goes = n.during(0.5, 0.85, dice)
	}
	return out
}

// during is a moment between two shares of the night.
func (n Night) during(from, to float64, dice *rand.Rand) time.Time {
	share := from + (to-from)*dice.Float64()
	return n.firstCall().Add(time.Duration(share * float64(n.length()))).Truncate(time.Second)
}

// moment is when a moment of the roster falls: shift 1 takes the end of a round in place of its
// start.
func (n Night) moment(m roster.Moment, shift int) time.Time {
	if m.IsClock {
		return session.TimeOfDay(m, opening)
	}
	return n.firstCall().Add(time.Duration(m.Round-1+shift) * slot * time.Minute)
}

// newID makes identities that follow from the night and from what the log already holds.
func (n Night) newID(last func() uint64) func() session.PersonID {
	var made, since uint64
	return func() session.PersonID {
		if at := last(); at != since {
			made, since = 0, at
		}
		made++
		dice := n.dice(streamNames, since<<16+made)
		return session.PersonID(fmt.Sprintf("%016x%08x", dice.Uint64(), dice.Uint32()))
	}
}
