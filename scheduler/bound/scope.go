package bound

import (
	"math/bits"

	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/sitout"
)

// Scope is a night as the bounds see it: some rounds fixed because they were played, the others
// free but for who is there and how many games they hold.
type Scope struct {
	n      *night.Night
	here   [][]night.Player // for each free round
	games  []int            // doubles games of each free round
	extra  []int            // people of each free round who play singles
	Low    []int            // fewest games in free rounds that are fair for each person
	High   []int            // most
	past   []night.Tally    // at a·people + b: meetings in fixed rounds, and in games of no round
	got    []night.Tally    // meetings of the whole night if its rounds are known
	then   []int            // each person's games in fixed rounds
	when   [][]uint64       // each person's presence in free rounds, one bit a round
	was    [][]uint64       // the same of fixed rounds
	always []bool           // whose fixed partner is there in all free rounds that the person is
	Loose  bool             // there are no rounds, and presence is not known
	Rests  bool             // as few people as possible are benched twice running
}

// NewScope describes the free rounds by who is there and how many games they hold. Sit-outs are fair
// by shares.
func NewScope(n *night.Night, here [][]night.Player, games []int) *Scope {
	s := &Scope{n: n, here: here, games: games, extra: make([]int, len(games))}
	s.Low, s.High = make([]int, n.People), make([]int, n.People)
	s.then = make([]int, n.People)
	s.when, s.was = presence(n.People, here), presence(n.People, n.Here[:n.First])
	s.always = make([]bool, n.People)
	for i := range s.always {
		s.always[i] = s.inseparable(night.Player(i))
	}
	s.past = make([]night.Tally, n.People*n.People)
	for _, g := range n.Problem.Earlier() {
		night.CountMeetings(s.past, n.People, g.Seats())
	}
	for _, round := range n.Problem.History {
		for _, g := range round.Games {
			if g.Singles() {
				continue
			}
			for _, i := range g.Players() {
				if n.Known(i) {
					s.then[i]++
				}
			}
		}
	}
	return s
}

// presence notes for each person who is there in which round, one bit a round.
func presence(people int, here [][]night.Player) [][]uint64 {
	size := 1 + len(here)/64
	when, words := make([][]uint64, people), make([]uint64, people*size)
	for i := range when {
		when[i] = words[i*size : (i+1)*size]
	}
	for r, named := range here {
		for _, i := range named {
			when[i][r/64] |= 1 << (r % 64)
		}
	}
	return when
}

// FairGames sets how many games each person may have in the free rounds: those present less a fair
// number of sit-outs.
func (s *Scope) FairGames(sh *sitout.Shares, pastOuts []int) {
	for i := range s.Low {
		present := 0
		for _, w := range s.when[i] {
			present += bits.OnesCount64(w)
		}
		if len(s.here) == 0 {
			continue
		}
		s.Low[i] = max(0, present-max(0, sh.High[i]-pastOuts[i]))
		s.High[i] = max(s.Low[i], min(present, present-sh.Low[i]+pastOuts[i]))
	}
}

// admit widens the ranges so that a given number of games lies in it.
func (s *Scope) admit(games []int) {
	for i, g := range games {
		s.Low[i], s.High[i] = min(s.Low[i], g), max(s.High[i], g)
	}
}

// common is the number of free rounds in which both are there.
func (s *Scope) common(i, j night.Player) int {
	sum := 0
	for k, w := range s.when[i] {
		sum += bits.OnesCount64(w & s.when[j][k])
	}
	return sum
}

// mayMeet tells whether two people may share a court.
func (s *Scope) mayMeet(i, j night.Player) bool {
	if i == j || s.n.Wishes != nil && s.n.Wishes.Apart[s.n.Wishes.At(i, j)] {
		return false
	}
	if s.n.Walls == nil {
		return true
	}
	for c := range s.n.Problem.Courts {
		if s.n.MayPlayOn(i, night.Court(c)) && s.n.MayPlayOn(j, night.Court(c)) {
			return true
		}
	}
	return false
}

// mayPartner tells whether two people may be a team.
func (s *Scope) mayPartner(i, j night.Player) bool {
	n := s.n
	switch {
	case !s.mayMeet(i, j):
		return false
	case n.Wishes != nil && n.Wishes.Unteam[n.Wishes.At(i, j)]:
		return false
	case n.Side != nil && n.Side[i] == n.Side[j]:
		return false
	case n.Problem.Format == night.Pairs || s.always[i] || s.always[j]:
		return n.Mate[i] == j
	}
	return true
}

// mayOppose tells whether two people may be opponents.
func (s *Scope) mayOppose(i, j night.Player) bool {
	return s.mayMeet(i, j) && !(s.n.Problem.Format == night.Pairs && s.n.Mate[i] == j)
}

// seats is the number of doubles seats in free round r.
func (s *Scope) seats(r int) int { return 4 * s.games[r] }
