package nighttest

import (
	"slices"

	"club/quadrille/scheduler/night"
)

// Contradictory looks for wishes that exclude each other, by brute force over all pairs of wishes.
func Contradictory(p night.Problem) bool {
	groups := map[string]bool{}
	for _, person := range p.People {
		groups[person.Group] = true
	}
	if p.Format == night.Mixed && len(groups) != 2 {
		return true
	}
	for _, list := range [][]night.Pair{p.Together, p.NeverPartner, p.NeverMeet} {
		for _, w := range list {
			if w.A == w.B {
				return true
			}
		}
	}
	mates := allMates(p)
	for _, w := range p.Together {
		for _, v := range append(slices.Clone(p.NeverPartner), p.NeverMeet...) {
			if w.Is(v.A, v.B) {
				return true
			}
		}
		if p.Format == night.Mixed && p.People[w.A].Group == p.People[w.B].Group {
			return true
		}
		if len(p.Courts) > 0 && !slices.ContainsFunc(p.Courts, func(c night.CourtSpec) bool {
			k := night.Court(slices.IndexFunc(p.Courts, func(d night.CourtSpec) bool { return d.Name == c.Name }))
			return playsOn(p, w.A, k) && playsOn(p, w.B, k)
		}) {
			return true
		}
		for _, i := range []night.Player{w.A, w.B} {
			if m, ok := mates[i]; ok && !w.Is(i, m) {
				return true
			}
		}
	}
	if p.Format == night.Pairs {
		for i, m := range mates {
			for _, v := range append(slices.Clone(p.NeverPartner), p.NeverMeet...) {
				if v.Is(i, m) {
					return true
				}
			}
		}
	}
	return false
}

// allMates lists fixed partners; with set pairs those left over pair up in the order of the list, each with the first
// who may be the partner and leaves partners for the others.
func allMates(p night.Problem) map[night.Player]night.Player {
	mates := map[night.Player]night.Player{}
	for _, w := range p.Together {
		if w.Times == 0 {
			mates[w.A], mates[w.B] = w.B, w.A
		}
	}
	if p.Format == night.Pairs {
		var left []night.Player
		for i := range p.People {
			if _, ok := mates[night.Player(i)]; !ok {
				left = append(left, night.Player(i))
			}
		}
		pairs, ok := paired(p, left, len(left)%2)
		if !ok {
			pairs = nil
			for k := 0; k+1 < len(left); k += 2 {
				pairs = append(pairs, night.Team{left[k], left[k+1]})
			}
		}
		for _, t := range pairs {
			mates[t[0]], mates[t[1]] = t[1], t[0]
		}
	}
	return mates
}

// paired tries all ways in which people pair up, in their order, with so many alone.
func paired(p night.Problem, left []night.Player, alone int) ([]night.Team, bool) {
	if len(left) == 0 {
		return nil, true
	}
	for k := 1; k < len(left); k++ {
		t := night.Pair{A: left[0], B: left[k]}
		if night.HasPair(p.NeverPartner, t) || night.HasPair(p.NeverMeet, t) {
			continue
		}
		if rest, ok := paired(p, slices.Concat(left[1:k], left[k+1:]), alone); ok {
			return append([]night.Team{{t.A, t.B}}, rest...), true
		}
	}
	if alone > 0 {
		return paired(p, left[1:], alone-1)
	}
	return nil, false
}

func playsOn(p night.Problem, i night.Player, c night.Court) bool {
	own := p.People[i].Courts
	return len(own) == 0 || slices.Contains(own, c)
}

// FirstGame tells, by trying all teams on all courts, whether the first round to plan can have a game.
func FirstGame(p night.Problem) bool {
	r := len(p.History)
	mates := allMates(p)
	var here []night.Player
	for i, person := range p.People {
		if person.Arrive <= r && (person.Leave == 0 || person.Leave > r) && !tired(p, night.Player(i)) {
			here = append(here, night.Player(i))
		}
	}
	present := func(i night.Player) bool {
		return p.People[i].Arrive <= r && (p.People[i].Leave == 0 || p.People[i].Leave > r)
	}
	team := func(a, b night.Player) bool {
		for _, i := range []night.Player{a, b} {
			m, ok := mates[i]
			if ok && present(m) && m != a && m != b || !ok && p.Format == night.Pairs {
				return false
			}
		}
		if p.Format == night.Pairs && mates[a] != b || p.Format == night.Mixed && p.People[a].Group == p.People[b].Group {
			return false
		}
		return !night.HasPair(p.NeverPartner, night.Pair{A: a, B: b}) && !night.HasPair(p.NeverMeet, night.Pair{A: a, B: b})
	}
	for c, spec := range p.Courts {
		if spec.Open > r || spec.Close != 0 && spec.Close <= r {
			continue
		}
		for _, a := range here {
			for _, b := range here {
				if b <= a || !team(a, b) || !playsOn(p, a, night.Court(c)) || !playsOn(p, b, night.Court(c)) {
					continue
				}
				for _, x := range here {
					for _, y := range here {
						if x == a || x == b || y <= x || y == a || y == b || !team(x, y) ||
							!playsOn(p, x, night.Court(c)) || !playsOn(p, y, night.Court(c)) {
							continue
						}
						apart := func(i, j night.Player) bool { return night.HasPair(p.NeverMeet, night.Pair{A: i, B: j}) }
						if !apart(a, x) && !apart(a, y) && !apart(b, x) && !apart(b, y) {
							return true
						}
					}
				}
			}
		}
	}
	return false
}

// tired tells whether somebody has played as many games running as allowed.
func tired(p night.Problem, i night.Player) bool {
	if p.MaxRun == 0 || len(p.History) < p.MaxRun {
		return false
	}
	for _, round := range p.History[len(p.History)-p.MaxRun:] {
		if !slices.ContainsFunc(round.Games, func(g night.Game) bool { return slices.Contains(g.Players(), i) }) {
			return false
		}
	}
	return true
}
