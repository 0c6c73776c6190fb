package scheduler

import (
	"context"
	"fmt"
	"os"
	"testing"

	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
	"club/quadrille/scheduler/sitout"
)

// everyRound lists every way to fill the courts with some of the people, the rest on the bench.
func everyRound(people []Player, courts int) []Round {
	if courts == 0 {
		return []Round{{Out: people}}
	}
	var all []Round
	for _, rest := range everyRound(people, courts-1) {
		out := rest.Out
		for a := range out {
			for b := a + 1; b < len(out); b++ {
				for c := b + 1; c < len(out); c++ {
					for d := c + 1; d < len(out); d++ {
						// each set of games once: the courts in the order of their first people
						if k := len(rest.Games); k > 0 && rest.Games[k-1].A[0] > out[a] {
							continue
						}
						bench := without4(out, a, b, c, d)
						for _, s := range [3][4]int{{a, b, c, d}, {a, c, b, d}, {a, d, b, c}} {
							g := Game{Court: Court(courts - 1), A: Team{out[s[0]], out[s[1]]}, B: Team{out[s[2]], out[s[3]]}}
							games := append(append([]Game(nil), rest.Games...), g)
							all = append(all, Round{Games: games, Out: bench})
						}
					}
				}
			}
		}
	}
	return all
}

func without4(list []Player, drop ...int) []Player {
	var out []Player
	for k, i := range list {
		if k != drop[0] && k != drop[1] && k != drop[2] && k != drop[3] {
			out = append(out, i)
		}
	}
	return out
}

// optimum finds by exhaustion the least value of a measure among all plans that are as fair in
// sitting out as can be, in the order of importance: spread, then benched twice. Results stand for
// [repeats, partner evenness, opponents, meetings].
func optimum(p Problem, choices [][]Round) (best [4]int, plans int) {
	n := night.New(&p)
	top := [2]int{1 << 30, 1 << 30}
	rounds := make([]Round, len(choices))
	var walk func(r int)
	walk = func(r int) {
		if r == len(choices) {
			m := measure.Count(n, rounds)
			fair := [2]int{unfairness(m, n, rounds), m.Twice}
			if fair[0] > top[0] || fair[0] == top[0] && fair[1] > top[1] {
				return
			}
			got := [4]int{m.Repeats, m.Partners, m.Opponents, m.Meetings}
			if fair != top {
				top, best, plans = fair, got, 0
			}
			plans++
			for k := range best {
				best[k] = min(best[k], got[k])
			}
			return
		}
		for _, round := range choices[r] {
			rounds[r] = round
			walk(r + 1)
		}
	}
	walk(0)
	return best, plans
}

// unfairness sums how far people's sit-outs are from their fair shares.
func unfairness(m *measure.Counts, n *night.Night, rounds []Round) int {
	s := sitout.SharesOf(n, rounds)
	sum := 0
	for i, outs := range m.Outs {
		x := s.Excess(int32(i), outs)
		sum += x * x
	}
	return sum
}

// TestBoundsNeverExceedTheOptimum searches small nights exhaustively. No bound may lie above the true
// optimum, and the planner must reach the optimum of meetings in nearly all of them.
//
// QUADRILLE_LONG=1 adds nights that take minutes.
func TestBoundsNeverExceedTheOptimum(t *testing.T) {
	nights := []struct {
		people, courts, rounds int
		late, gone             int // the last person arrives, the first leaves, with this round
	}{
		{4, 1, 3, 0, 0},
		{5, 1, 3, 0, 0},
		{5, 1, 4, 0, 0},
		{6, 1, 3, 0, 0},
		{7, 1, 3, 0, 0},
		{8, 1, 2, 0, 0},
		{9, 1, 2, 0, 0},
		{8, 2, 2, 0, 0},
		{9, 2, 2, 0, 0},
		{6, 1, 3, 1, 0},
		{6, 1, 3, 0, 2},
		{6, 1, 3, 1, 2},
		{7, 1, 3, 2, 0},
		{9, 2, 2, 1, 0},
	}
	if os.Getenv("QUADRILLE_LONG") != "" {
		nights = append(nights, []struct{ people, courts, rounds, late, gone int }{
			{6, 1, 4, 0, 0},
			{9, 2, 2, 0, 1},
			{8, 1, 3, 0, 0},
			{8, 2, 3, 0, 0},
			{12, 3, 2, 0, 0},
		}...)
	}
	met := 0
	for _, c := range nights {
		name := fmt.Sprintf("%d people, %d courts, %d rounds, late %d, gone %d", c.people, c.courts, c.rounds, c.late, c.gone)
		p := nighttest.Club(c.people, c.courts, c.rounds)
		p.People[c.people-1].Arrive = c.late
		p.People[0].Leave = c.gone
		var choices [][]Round
		n := night.New(&p)
		for r := range c.rounds {
			choices = append(choices, everyRound(n.Here[r], n.MostGames(r, c.courts)))
		}
		if c.late == 0 && c.gone == 0 {
			choices[0] = choices[0][:1] // all first rounds are alike
		}
		best, plans := optimum(p, choices)
		rounds, err := Plan(context.Background(), p, Budget{})
		if err != nil {
			t.Fatal(err)
		}
		cert := Certify(p, rounds)
		for k, v := range []Value{cert.PartnerRepeats, cert.PartnerEvenness, cert.OpponentEvenness, cert.MeetingEvenness} {
			if v.Bound > best[k] {
				t.Errorf("%s: bound %d of measure %d is above the optimum %d of %d plans", name, v.Bound, k, best[k], plans)
			}
		}
		if cert.MeetingEvenness.Value == best[3] {
			met++
		} else {
			t.Logf("%s: meetings %+v, optimum %d", name, cert.MeetingEvenness, best[3])
		}
		if cert.MeetingEvenness.Bound < best[3] {
			t.Logf("%s: meetings bound %d, optimum %d", name, cert.MeetingEvenness.Bound, best[3])
		}
	}
	if met < len(nights)-1 {
		t.Errorf("the planner reached the optimum of meetings in %d of %d nights", met, len(nights))
	}
}
