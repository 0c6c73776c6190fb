package search

import (
	"cmp"
	"context"
	"slices"

	"club/quadrille/scheduler/lineup"
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/sitout"
)

// Replan searches for the best rounds as [Rounds] does, but sets out from rounds to come that people have seen:
// those without who is not there any more, and with who is there now. Among equally good plans it takes one that
// keeps more of the games.
func Replan(ctx context.Context, p night.Problem, shown []night.Round, moves int) []night.Round {
	n := night.New(&p)
	if len(shown) == 0 {
		return Rounds(ctx, p, moves)
	}
	s := newSearch(n, moves)
	drawn := s.draw()
	strict := drawn.floor(true)
	w, floor := s.weighing(drawn)
	seen := *w // as people see it: who opposed whom how often is no reason to change what was shown
	seen[measure.Opponents], seen[measure.TwiceAtOnce] = 0, 0
	var best *board
	if n.Free() && n.Side == nil {
		best = s.warm(drawn, shown).under(w)
	} else {
		best = s.warmBound(drawn, shown).under(w)
	}
	if Fits(&p, shown) && s.bound(shown) { // nothing changed but levels, weights, or wishes that the search can mend
		if b := newSearch(n, moves).boardOf(shown).under(w); slices.Equal(games(b.shapes), games(best.shapes)) {
			best = b
		}
	}
	for _, heat := range nearHeat { // the colder, the more games stay
		if best.cost(&seen) <= strict.Weight(&seen) {
			break
		}
		near := best.under(w)
		a := newAnnealer(near, s.d, floor, 0)
		if a.best >= brokenWeight {
			a.run(ctx, moves/nearShare, hotRepair, hot)
		}
		a.still = true
		a.run(ctx, moves/nearShare, heat, heat/2)
		a.restore()
		if near.cost(&seen) < best.cost(&seen) && !near.paysWithPartners(best) {
			best = near
		}
	}
	if best.cost(&seen) > strict.Weight(&seen) {
		// what was shown may be of a design that only its own search finds
		other := newSearch(n, moves).solve(ctx)
		sameGames := slices.Equal(games(other.shapes), games(best.shapes))
		if sameGames && other.cost(&seen) < best.cost(&seen) && !other.paysWithPartners(best) || !sameGames && s.giveUp(best) {
			best = other
		}
	}
	return s.pinned(ctx, s.finish(best, shown), shown)
}

// paysWithPartners tells whether a plan has more partner repeats than another without being better in what is more
// important. The weights let many repeated meetings buy one, but whoever saw a plan without it would not.
func (b *board) paysWithPartners(than *board) bool {
	ours, theirs := b.score(), than.score()
	for k, weight := range b.w {
		if weight > b.w[measure.Partners] && ours[k] < theirs[k] {
			return false
		}
	}
	return ours[measure.Partners] > theirs[measure.Partners]
}

// nearHeat are the temperatures at which a plan is sought near the one that was shown, and nearShare the part of the
// moves, one of so many, that each gets.
var nearHeat = []float64{0.01, 1, 2, 4}

const nearShare = 8

// warm is a board that keeps as many of the shown games as can be. Whoever is missing in a game is replaced by
// somebody on the bench who sat out most, and sit-outs are made fair again by as few exchanges as do it.
func (s *search) warm(drawn *board, shown []night.Round) *board {
	n := s.n
	rows := make([][]night.Player, len(drawn.shapes))
	out := make([][]night.Player, len(drawn.shapes))
	books := lineup.NewRecord(n)
	for r, shape := range drawn.shapes {
		var round night.Round
		if r < len(shown) {
			round = shown[r]
		}
		rows[r], out[r] = fitShown(n, n.First+r, shape, round, books)
		books.Enter(n, n.First+r, out[r])
	}
	sitout.Fairest(n, drawn.fair.Shares, out)
	b := drawn.blank()
	for r, seats := range rows {
		b.seatWith(r, seats, out[r])
	}
	b.recount()
	return b
}

// warmBound is warm for nights on which not everybody may play in everybody's stead. It sets out from a plan that is
// valid, and seats each shown game whose people are all there on its court, where the others allow it; the search
// then makes sit-outs fair again.
func (s *search) warmBound(drawn *board, shown []night.Round) *board {
	b := drawn.under(drawn.w).holding()
	for r, round := range shown[:min(len(shown), len(b.shapes))] {
		for _, g := range round.Games {
			if s.seatable(r, g) {
				b.place(night.Pin{Round: s.n.First + r, A: g.A, B: g.B, Court: g.Court}, s.d)
			}
		}
	}
	b.held = nil
	b.recount()
	return b
}

// bound tells whether all shown games are as the search keeps them: a plan that parts a couple stays parted, since no
// move joins the two.
func (s *search) bound(shown []night.Round) bool {
	for r, round := range shown {
		if slices.ContainsFunc(round.Games, func(g night.Game) bool { return !g.Singles() && !s.seatable(r, g) }) {
			return false
		}
	}
	return true
}

// seatable tells whether a shown game can be played in planned round r: all four are there, its court is open and theirs
// to play on, and the teams are such as no move of the search would have to join: fixed partners, one of each group.
func (s *search) seatable(r int, g night.Game) bool {
	n := s.n
	if g.Singles() || !slices.Contains(n.OpenCourts(n.First+r), g.Court) {
		return false
	}
	for _, i := range g.Seats() {
		if !n.Known(i) || !slices.Contains(n.Here[n.First+r], i) || !n.MayPlayOn(i, g.Court) {
			return false
		}
	}
	return s.team(r, g.A) && s.team(r, g.B)
}

// team tells whether two people can be a team in planned round r.
func (s *search) team(r int, t night.Team) bool {
	n := s.n
	if n.Side != nil && n.Side[t[0]] == n.Side[t[1]] {
		return false
	}
	if n.HasMate(t[0], n.First+r) || n.HasMate(t[1], n.First+r) {
		return n.Mate[t[0]] == t[1]
	}
	return n.Problem.Format != night.Pairs
}

// fitShown seats a shown round: its games on their courts as far as these are open, gaps filled from the bench.
func fitShown(n *night.Night, r int, shape night.Shape, shown night.Round, books *lineup.Record) (seats, out []night.Player) {
	seats = slices.Repeat([]night.Player{night.Nobody}, shape.Seats())
	free := make([]bool, n.People)
	for _, i := range n.Here[r] {
		free[i] = true
	}
	var elsewhere []night.Game
	put := func(at int, g night.Game) {
		for k, i := range g.Seats() {
			if n.Known(i) && free[i] {
				seats[4*at+k], free[i] = i, false
			}
		}
	}
	taken := make([]bool, len(shape.Courts))
	for _, g := range shown.Games {
		if at := slices.Index(shape.Courts, g.Court); at >= 0 && !taken[at] && !g.Singles() {
			taken[at] = true
			put(at, g)
		} else if !g.Singles() {
			elsewhere = append(elsewhere, g)
		}
	}
	for _, g := range elsewhere {
		if at := slices.Index(taken, false); at >= 0 {
			taken[at] = true
			put(at, g)
		}
	}
	for _, i := range n.Here[r] {
		if free[i] {
			out = append(out, i)
		}
	}
	slices.SortStableFunc(out, func(i, j night.Player) int { return cmp.Compare(books.Behind(j), books.Behind(i)) })
	for k, i := range seats {
		if i == night.Nobody {
			seats[k], out = out[0], out[1:]
		}
	}
	slices.Sort(out)
	return seats, out
}

// seatWith seats round r: who should sit out does, and whoever plays for them takes their seats.
func (b *board) seatWith(r int, seats, out []night.Player) {
	row := b.row(r)[:0]
	plays := make([]bool, b.n.People)
	for _, i := range seats {
		plays[i] = true
	}
	var in []night.Player
	for _, i := range b.n.Here[b.n.First+r] {
		if !plays[i] && !slices.Contains(out, i) {
			in = append(in, i)
		}
	}
	for _, i := range seats {
		if slices.Contains(out, i) {
			i, in = in[0], in[1:]
		}
		row = append(row, int32(i))
	}
	for _, i := range out {
		row = append(row, int32(i))
	}
}
