// Package lately gives the places of a plan to people so that those meet again who have not met on the nights before.
// It only exchanges people who are alike in all that the plan is judged by, so nothing within the night gets worse, and
// nothing better: what happened on other nights is the last measure.
package lately

import (
	"slices"

	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/night"
)

// What it costs that two are partners or opponents who were so lately, for each thousandth of a game. Having the same
// partner again is what people mind.
const (
	partnersAgain  = 4 // partners who were partners
	partnersMet    = 1 // partners who were opponents
	opponentsAgain = 1 // opponents who were either
)

// Arrange returns the rounds with people in other places, for a night of which nothing was played yet. The plan stays
// as it is but for who is who.
func Arrange(n *night.Night, rounds []night.Round) []night.Round {
	p := n.Problem
	if len(p.Lately) == 0 || len(p.History)+len(p.Met)+len(p.Pins) > 0 {
		return rounds
	}
	a := newArrangement(n, rounds)
	var best []int
	least := 0
	for try := range tries(n.People) {
		a.begin(try)
		if cost := a.settle(); best == nil || cost < least {
			best, least = slices.Clone(a.who), cost
		}
	}
	return renamed(rounds, best)
}

// tries is from how many orders the exchanges set out. One takes about the cube of the people in steps.
func tries(people int) int { return max(1, min(24, 2_000_000/max(1, people*people*people))) }

// arrangement is who has which place of a plan: place i, in which the plan has person i.
type arrangement struct {
	people int
	class  []int // of each person: those of one class may exchange their places
	team   []int // at i·people + j: how often places i and j are partners
	versus []int // and opponents
	asTeam []int // at i·people + j: what it costs that persons i and j are partners
	asFoes []int // and opponents
	who    []int // the person at each place
	d      *dice.Dice
}

func newArrangement(n *night.Night, rounds []night.Round) *arrangement {
	k := n.People
	a := &arrangement{
		people: k, class: classes(n), who: make([]int, k), d: dice.New(n.Problem.Seed, 5),
		team: make([]int, k*k), versus: make([]int, k*k), asTeam: make([]int, k*k), asFoes: make([]int, k*k),
	}
	for _, r := range rounds {
		for _, g := range r.Games {
			seats := g.Seats()
			for x, i := range seats {
				for y, j := range seats[:x] {
					if n.Known(i) && n.Known(j) {
						to := a.versus
						if x^y == 1 {
							to = a.team
						}
						to[int(i)*k+int(j)]++
						to[int(j)*k+int(i)]++
					}
				}
			}
		}
	}
	for _, r := range n.Problem.Lately {
		if !n.Known(r.A) || !n.Known(r.B) || r.A == r.B {
			continue
		}
		for _, at := range [2]int{int(r.A)*k + int(r.B), int(r.B)*k + int(r.A)} {
			a.asTeam[at] += partnersAgain*r.Partners + partnersMet*r.Opponents
			a.asFoes[at] += opponentsAgain * (r.Partners + r.Opponents)
		}
	}
	return a
}

// begin puts everybody at the own place, or in later tries at any place of the own class.
func (a *arrangement) begin(try int) {
	for i := range a.who {
		a.who[i] = i
	}
	if try == 0 {
		return
	}
	byClass := map[int][]int{}
	for i, c := range a.class {
		byClass[c] = append(byClass[c], i)
	}
	for i, c := range a.class { // in the order of people, since that of a map is not the same each time
		if places := byClass[c]; places[0] == i {
			people := slices.Clone(places)
			dice.Shuffle(a.d, people)
			for x, place := range places {
				a.who[place] = people[x]
			}
		}
	}
}

// settle exchanges two people as long as that costs less, and returns what is left.
func (a *arrangement) settle() int {
	for again := true; again; {
		again = false
		for i := range a.people {
			for j := range i {
				if a.class[i] == a.class[j] && a.gain(i, j) < 0 {
					a.who[i], a.who[j] = a.who[j], a.who[i]
					again = true
				}
			}
		}
	}
	sum := 0
	for i := range a.people {
		for j := range i {
			sum += a.cost(i, j, a.who[i], a.who[j])
		}
	}
	return sum
}

// cost is what two places cost with two people in them.
func (a *arrangement) cost(i, j, p, q int) int {
	at, of := i*a.people+j, p*a.people+q
	return a.team[at]*a.asTeam[of] + a.versus[at]*a.asFoes[of]
}

// gain is what it costs more, below 0 for less, that the people at two places exchange them.
func (a *arrangement) gain(i, j int) int {
	p, q, sum := a.who[i], a.who[j], 0
	for k, r := range a.who {
		if k != i && k != j {
			sum += a.cost(i, k, q, r) + a.cost(j, k, p, r) - a.cost(i, k, p, r) - a.cost(j, k, q, r)
		}
	}
	return sum
}

// renamed is a plan with other people in its places.
func renamed(rounds []night.Round, who []int) []night.Round {
	name := func(p night.Player) night.Player {
		if p >= 0 && int(p) < len(who) {
			return night.Player(who[p])
		}
		return p
	}
	out := make([]night.Round, len(rounds))
	for r, round := range rounds {
		for _, g := range round.Games {
			for x := range g.A {
				g.A[x], g.B[x] = name(g.A[x]), name(g.B[x])
			}
			out[r].Games = append(out[r].Games, g)
		}
		for _, p := range round.Out {
			out[r].Out = append(out[r].Out, name(p))
		}
		slices.Sort(out[r].Out)
	}
	return out
}
