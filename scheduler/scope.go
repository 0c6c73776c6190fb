package scheduler

import "math/bits"

// scope is a night as the bounds see it: some rounds fixed because they were played, the others
// free but for who is there and how many games they hold.
type scope struct {
	n      *night
	here   [][]Player // for each free round
	games  []int      // doubles games of each free round
	extra  []int      // people of each free round who play singles
	low    []int      // fewest games in free rounds that are fair for each person
	high   []int      // most
	past   []tally    // at a·people + b: meetings in fixed rounds, and in games of no round
	got    []tally    // meetings of the whole night if its rounds are known
	then   []int      // each person's games in fixed rounds
	when   [][]uint64 // each person's presence in free rounds, one bit a round
	always []bool     // whose fixed partner is there in all free rounds that the person is
	rests  bool       // as few people as possible are benched twice running
}

// newScope describes the free rounds by who is there and how many games they hold. Sit-outs are fair
// by shares.
func newScope(n *night, here [][]Player, games []int) *scope {
	s := &scope{n: n, here: here, games: games, extra: make([]int, len(games))}
	s.low, s.high = make([]int, n.people), make([]int, n.people)
	s.then = make([]int, n.people)
	s.when = make([][]uint64, n.people)
	words := make([]uint64, n.people*(1+len(here)/64))
	for i := range s.when {
		s.when[i] = words[i*(1+len(here)/64) : (i+1)*(1+len(here)/64)]
	}
	for r, people := range here {
		for _, i := range people {
			s.when[i][r/64] |= 1 << (r % 64)
		}
	}
	s.always = make([]bool, n.people)
	for i := range s.always {
		s.always[i] = s.inseparable(Player(i))
	}
	s.past = make([]tally, n.people*n.people)
	for _, g := range n.p.earlier() {
		countMeetings(s.past, n.people, g.seats())
	}
	for _, round := range n.p.History {
		for _, g := range round.Games {
			if g.Singles() {
				continue
			}
			for _, i := range g.Players() {
				if n.known(i) {
					s.then[i]++
				}
			}
		}
	}
	return s
}

// fairGames sets how many games each person may have in the free rounds: those present less a fair
// number of sit-outs.
func (s *scope) fairGames(sh *shares, pastOuts []int) {
	for i := range s.low {
		present := 0
		for _, w := range s.when[i] {
			present += bits.OnesCount64(w)
		}
		if len(s.here) == 0 {
			continue
		}
		s.low[i] = max(0, present-max(0, sh.high[i]-pastOuts[i]))
		s.high[i] = max(s.low[i], min(present, present-sh.low[i]+pastOuts[i]))
	}
}

// admit widens the ranges so that a given number of games lies in it.
func (s *scope) admit(games []int) {
	for i, g := range games {
		s.low[i], s.high[i] = min(s.low[i], g), max(s.high[i], g)
	}
}

// common is the number of free rounds in which both are there.
func (s *scope) common(i, j Player) int {
	sum := 0
	for k, w := range s.when[i] {
		sum += bits.OnesCount64(w & s.when[j][k])
	}
	return sum
}

// mayMeet tells whether two people may share a court.
func (s *scope) mayMeet(i, j Player) bool {
	if i == j || s.n.wishes != nil && s.n.wishes.apart[s.n.wishes.at(i, j)] {
		return false
	}
	if s.n.walls == nil {
		return true
	}
	for c := range s.n.p.Courts {
		if s.n.fits(i, Court(c)) && s.n.fits(j, Court(c)) {
			return true
		}
	}
	return false
}

// mayPartner tells whether two people may be a team.
func (s *scope) mayPartner(i, j Player) bool {
	n := s.n
	switch {
	case !s.mayMeet(i, j):
		return false
	case n.wishes != nil && n.wishes.unteam[n.wishes.at(i, j)]:
		return false
	case n.side != nil && n.side[i] == n.side[j]:
		return false
	case n.p.Format == Pairs || s.always[i] || s.always[j]:
		return n.mate[i] == j
	}
	return true
}

// mayOppose tells whether two people may be opponents.
func (s *scope) mayOppose(i, j Player) bool {
	return s.mayMeet(i, j) && !(s.n.p.Format == Pairs && s.n.mate[i] == j)
}

// seats is the number of doubles seats in free round r.
func (s *scope) seats(r int) int { return 4 * s.games[r] }
