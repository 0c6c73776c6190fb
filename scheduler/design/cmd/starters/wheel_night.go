package main

import (
	"fmt"
	"strconv"
	"strings"

	"club/quadrille/scheduler/design"
)

// wheelNight is a night that a wheel is wanted for.
type wheelNight struct{ people, tables, rounds int }

// mostWheelRounds is how many rounds fit into the bits that note who sits out when.
const mostWheelRounds = 64

// parseWheelNight reads PEOPLE,TABLES,ROUNDS. The error says what is wrong with the numbers.
func parseWheelNight(text string) (n wheelNight, err error) {
	numbers := strings.Split(text, ",")
	into := []*int{&n.people, &n.tables, &n.rounds}
	for k, number := range numbers {
		if len(numbers) == len(into) {
			*into[k], err = strconv.Atoi(number)
		}
		if err != nil || len(numbers) != len(into) {
			return n, fmt.Errorf("-wheel %q is not PEOPLE,TABLES,ROUNDS; give three numbers such as 45,10,15", text)
		}
	}
	switch most := len(design.WheelLetters); {
	case n.people < 4:
		return n, fmt.Errorf("%d people do not fill a table of four; give 4 or more", n.people)
	case n.tables < 1 || n.tables > n.people/4:
		return n, fmt.Errorf("%d people do not fill %d tables of four; give 1 to %d tables", n.people, n.tables, n.people/4)
	case n.people > most:
		return n, fmt.Errorf("%d people are more than a wheel has letters for; give %d at most", n.people, most)
	case n.rounds < 2 || n.rounds > mostWheelRounds:
		return n, fmt.Errorf("a wheel has 2 to %d rounds, not %d", mostWheelRounds, n.rounds)
	}
	if games := n.rounds - n.leastOut(); games >= n.people {
		return n, fmt.Errorf("in %d games somebody must partner one of %d others twice; give fewer rounds", games, n.people-1)
	}
	return n, nil
}

func (n wheelNight) seats() int { return 4 * n.tables }

// leastOut and mostOut are how often each person may sit out in the rounds to be played.
func (n wheelNight) leastOut() int { return n.rounds * (n.people - n.seats()) / n.people }

func (n wheelNight) mostOut() int {
	return (n.rounds*(n.people-n.seats()) + n.people - 1) / n.people
}

// mustTwice is how often at least somebody sits out twice running.
func (n wheelNight) mustTwice() int { return (n.rounds - 1) * max(0, n.people-2*n.seats()) }

// mustMeet is a lower bound of Σ C(m,2) over the pairs, who meet m times: each person meets three others
// a game, and the sum is least when nobody is met much oftener than anybody else.
func (n wheelNight) mustMeet() int {
	sum, others := 0, n.people-1
	often := n.rounds*(n.people-n.seats()) - n.leastOut()*n.people // people who sit out once more than leastOut
	for p := range n.people {
		games := n.rounds - n.leastOut()
		if p < often {
			games--
		}
		each, over := 3*games/others, 3*games%others
		sum += others*each*(each-1)/2 + over*each
	}
	return (sum + 1) / 2
}
