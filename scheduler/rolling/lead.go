package rolling

import (
	"cmp"
	"fmt"
	"slices"

	"club/quadrille/scheduler/night"
)

// lead puts those at the head of the queue whom the organiser pinned or put first, in the order of these decisions.
func (c *caller) lead() {
	rank := make(map[night.Player]int)
	for _, p := range c.r.pinned() {
		rank[p.A], rank[p.B] = len(rank)+1, len(rank)+2
	}
	for _, i := range c.r.First {
		if rank[i] == 0 {
			rank[i] = len(rank) + 1
		}
	}
	if len(rank) == 0 {
		return
	}
	of := func(x call) int {
		least := len(c.line) + 2*len(rank)
		for _, i := range x.who {
			if k := rank[i]; k > 0 {
				least = min(least, k)
			}
		}
		return least
	}
	slices.SortStableFunc(c.line, func(x, y call) int { return cmp.Compare(of(x), of(y)) })
	for c.led < len(c.line) && slices.ContainsFunc(c.line[c.led].who, func(i night.Player) bool { return rank[i] > 0 }) {
		c.led++
	}
}

// pinned lists the pinned pairs that hold now: both wait, and nothing stands against them.
func (r Moment) pinned() []night.Pair {
	var out []night.Pair
	for _, p := range r.Pinned {
		if r.Unpinnable(p) == "" && !slices.ContainsFunc(out, func(q night.Pair) bool {
			return q.A == p.A || q.A == p.B || q.B == p.A || q.B == p.B
		}) {
			out = append(out, p)
		}
	}
	return out
}

// Unpinnable says why two people cannot be pinned as partners of the next game, empty where they can.
func (r Moment) Unpinnable(p night.Pair) string {
	of := &night.Problem{Format: r.Format, People: r.People}
	for _, i := range [2]night.Player{p.A, p.B} {
		switch {
		case i < 0 || int(i) >= len(r.People):
			return "one of them is not here"
		case p.A == p.B:
			return of.NameOf(i) + " cannot be a partner of the same person"
		case !slices.ContainsFunc(r.Waiting, func(w Waiting) bool { return w.Player == i }):
			return of.NameOf(i) + " does not wait on the bench"
		}
		for _, t := range r.Together {
			if t.Times == 0 && (t.A == i || t.B == i) && !t.Is(p.A, p.B) {
				return fmt.Sprintf("%s and %s always play together", of.NameOf(t.A), of.NameOf(t.B))
			}
		}
	}
	a, b := of.NameOf(p.A), of.NameOf(p.B)
	switch {
	case night.HasPair(r.NeverPartner, p):
		return fmt.Sprintf("%s and %s shall never be partners", a, b)
	case night.HasPair(r.NeverMeet, p):
		return fmt.Sprintf("%s and %s shall never meet", a, b)
	case r.Format == night.Mixed && r.People[p.A].Group == r.People[p.B].Group:
		return fmt.Sprintf("%s and %s are of one group on a mixed night", a, b)
	case r.Format == night.Pairs && !slices.ContainsFunc(r.Together, func(t night.Pair) bool { return t.Times == 0 && t.Is(p.A, p.B) }):
		return fmt.Sprintf("%s and %s are no set pair", a, b)
	}
	return ""
}

// together lists who play together for the next game: who always does, and who is pinned. Who is pinned has no
// other wish for that game.
func (r Moment) together() []night.Pair {
	pinned := r.pinned()
	if len(pinned) == 0 {
		return r.Together
	}
	var out []night.Pair
	for _, t := range r.Together {
		if !slices.ContainsFunc(pinned, func(p night.Pair) bool {
			return t.A == p.A || t.A == p.B || t.B == p.A || t.B == p.B
		}) {
			out = append(out, t)
		}
	}
	for _, p := range pinned {
		out = append(out, night.Pair{A: p.A, B: p.B})
	}
	return out
}
