package scheduler

import (
	"fmt"

	"club/quadrille/scheduler/night"
)

// Warnings says, before a round is called, which wishes cannot all be met and what they cost:
// sentences for the organiser, none when there is nothing to say. If the problem is impossible they
// are the reasons of the [Conflict].
func Warnings(p Problem) []string {
	if reasons := night.Contradictions(&p); len(reasons) > 0 {
		return reasons
	}
	w := &warner{n: night.New(&p)}
	w.emptyRounds()
	w.rests()
	w.alone()
	w.bench()
	w.times()
	w.split()
	return w.said
}

type warner struct {
	n    *night.Night
	said []string
}

func (w *warner) say(format string, args ...any) {
	w.said = append(w.said, fmt.Sprintf(format, args...))
}

// emptyRounds warns of later rounds without a game.
func (w *warner) emptyRounds() {
	for r := w.n.First; r < len(w.n.Here); r++ {
		if w.n.MostGames(r, len(w.n.OpenCourts(r))) == 0 {
			w.say("%s", w.n.WhyNoGame(r)[0])
		}
	}
}

// rests warns when the limit of games running leaves courts empty.
func (w *warner) rests() {
	n := w.n
	for r := n.First; r < len(n.Here); r++ {
		games := n.MostGames(r, len(n.OpenCourts(r)))
		if less := n.Restful(r, games); less < games {
			w.say("a rest after %d games running leaves %d of %d courts empty from round %d on", n.Problem.MaxRun, games-less, games, r+1)
			return
		}
	}
}

// alone warns of people who can never play: without their set partner, or with no court that suits them.
func (w *warner) alone() {
	n := w.n
	for i := range Player(n.People) {
		present, suited, paired := 0, 0, 0
		for r := n.First; r < len(n.Here); r++ {
			if !n.Problem.People[i].PresentIn(r) {
				continue
			}
			present++
			paired += night.One(n.HasMate(i, r))
			for _, c := range n.OpenCourts(r) {
				if n.MayPlayOn(i, c) {
					suited++
					break
				}
			}
		}
		switch {
		case present == 0:
		case suited == 0:
			w.say("%s can play on none of the open courts and sits out %d rounds", n.Problem.NameOf(i), present)
		case n.Problem.Format == Pairs && paired == 0:
			w.say("%s has no partner tonight and sits out %d rounds: add one, or play rotating", n.Problem.NameOf(i), present)
		}
	}
}

// bench warns when so many sit out that some must do so twice running.
func (w *warner) bench() {
	n := w.n
	for r := n.First; r < len(n.Here); r++ {
		for k, pool := range n.Pools(r) {
			seats := n.SeatsOf(k, 4*n.Restful(r, n.MostGames(r, len(n.OpenCourts(r)))))
			if out := len(pool) - seats; seats > 0 && out > seats {
				w.say("from round %d on %d of %d people sit out each round, and %d of them twice running: more courts or shorter games help",
					r+1, out, len(pool), out-seats)
				return
			}
		}
	}
}

// times warns of partnerships that were asked for more often than both are there.
func (w *warner) times() {
	n := w.n
	for _, t := range n.Problem.Together {
		if got := mayPartnerTimes(n, t); t.Times > got {
			w.say("%s and %s shall be partners %d times, but are there together for %d rounds only", n.Problem.NameOf(t.A), n.Problem.NameOf(t.B), t.Times, got)
		}
	}
}

// split warns that a ladder takes fixed partners apart.
func (w *warner) split() {
	for _, t := range w.n.Problem.Together {
		if w.n.Problem.Format == Ladder && t.Times == 0 {
			w.say("a ladder splits partners: %s and %s play together by chance only", w.n.Problem.NameOf(t.A), w.n.Problem.NameOf(t.B))
		}
	}
}
