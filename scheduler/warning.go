package scheduler

import "fmt"

// Warnings says, before a round is called, which wishes cannot all be met and what they cost:
// sentences for the organiser, none when there is nothing to say. If the problem is impossible they
// are the reasons of the [Conflict].
func Warnings(p Problem) []string {
	if reasons := contradictions(&p); len(reasons) > 0 {
		return reasons
	}
	w := &warner{n: newNight(&p)}
	w.emptyRounds()
	w.rests()
	w.alone()
	w.bench()
	w.times()
	w.split()
	return w.said
}

type warner struct {
	n    *night
	said []string
}

func (w *warner) say(format string, args ...any) {
	w.said = append(w.said, fmt.Sprintf(format, args...))
}

// emptyRounds warns of later rounds without a game.
func (w *warner) emptyRounds() {
	for r := w.n.first; r < len(w.n.here); r++ {
		if w.n.mostGames(r, len(w.n.openCourts(r))) == 0 {
			w.say("%s", w.n.whyNoGame(r)[0])
		}
	}
}

// rests warns when the limit of games running leaves courts empty.
func (w *warner) rests() {
	n := w.n
	for r := n.first; r < len(n.here); r++ {
		games := n.mostGames(r, len(n.openCourts(r)))
		if less := n.restful(r, games); less < games {
			w.say("a rest after %d games running leaves %d of %d courts empty from round %d on", n.p.MaxRun, games-less, games, r+1)
			return
		}
	}
}

// alone warns of people who can never play: without their set partner, or with no court that suits them.
func (w *warner) alone() {
	n := w.n
	for i := range Player(n.people) {
		present, suited, paired := 0, 0, 0
		for r := n.first; r < len(n.here); r++ {
			if !n.p.People[i].present(r) {
				continue
			}
			present++
			paired += one(n.bound(i, r))
			for _, c := range n.openCourts(r) {
				if n.fits(i, c) {
					suited++
					break
				}
			}
		}
		switch {
		case present == 0:
		case suited == 0:
			w.say("%s can play on none of the open courts and sits out %d rounds", n.p.name(i), present)
		case n.p.Format == Pairs && paired == 0:
			w.say("%s has no partner tonight and sits out %d rounds: add one, or play rotating", n.p.name(i), present)
		}
	}
}

// bench warns when so many sit out that some must do so twice running.
func (w *warner) bench() {
	n := w.n
	for r := n.first; r < len(n.here); r++ {
		for k, pool := range n.pools(r) {
			seats := n.seatsOf(k, 4*n.restful(r, n.mostGames(r, len(n.openCourts(r)))))
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
	for _, t := range n.p.Together {
		if got := n.mayPartnerTimes(t); t.Times > got {
			w.say("%s and %s shall be partners %d times, but are there together for %d rounds only", n.p.name(t.A), n.p.name(t.B), t.Times, got)
		}
	}
}

// split warns that a ladder takes fixed partners apart.
func (w *warner) split() {
	for _, t := range w.n.p.Together {
		if w.n.p.Format == Ladder && t.Times == 0 {
			w.say("a ladder splits partners: %s and %s play together by chance only", w.n.p.name(t.A), w.n.p.name(t.B))
		}
	}
}

// mayPartnerTimes is how often two people can be partners tonight: as often as they were, and in
// every round to come in which both are there.
func (n *night) mayPartnerTimes(t Pair) int {
	times := 0
	for _, g := range n.p.earlier() {
		times += one(partners(g, t.A, t.B))
	}
	for r := n.first; r < len(n.here); r++ {
		times += one(n.p.People[t.A].present(r) && n.p.People[t.B].present(r))
	}
	return times
}
