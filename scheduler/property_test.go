package scheduler

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// anyProblem draws a night with arrivals, departures, courts that open and close, couples, keep-aparts,
// walls, bands, levels and a history that an earlier plan made.
func anyProblem(t *rapid.T) Problem {
	p := Problem{
		Format:          rapid.SampledFrom([]Format{Rotating, Rotating, Mixed, Pairs}).Draw(t, "format"),
		Rounds:          rapid.IntRange(1, 6).Draw(t, "rounds"),
		MaxRun:          rapid.SampledFrom([]int{0, 0, 1, 2, 3}).Draw(t, "most running"),
		LevelLimit:      rapid.SampledFrom([]float64{0, 0, 0.7}).Draw(t, "limit"),
		LeftoverSingles: rapid.Bool().Draw(t, "singles"),
		Seed:            rapid.Uint64().Draw(t, "seed"),
	}
	people := rapid.IntRange(0, 22).Draw(t, "people")
	courts := rapid.IntRange(0, 5).Draw(t, "courts")
	for c := range courts {
		spec := CourtSpec{Name: fmt.Sprint(c + 1)}
		if rapid.IntRange(0, 4).Draw(t, "court kind") == 0 {
			spec.Open = rapid.IntRange(0, 2).Draw(t, "opens")
			spec.Close = rapid.IntRange(0, 4).Draw(t, "closes")
			spec.MinLevel = rapid.SampledFrom([]float64{0, 3}).Draw(t, "band")
			spec.Strict = rapid.Bool().Draw(t, "strict")
		}
		p.Courts = append(p.Courts, spec)
	}
	for i := range people {
		person := Person{
			Name:  fmt.Sprintf("P%02d", i+1),
			Group: rapid.SampledFrom([]string{"x", "y"}).Draw(t, "group"),
			Level: rapid.SampledFrom([]float64{0, 2.5, 3, 3.5, 4.5}).Draw(t, "level"),
		}
		switch rapid.IntRange(0, 7).Draw(t, "presence") {
		case 0:
			person.Arrive = rapid.IntRange(1, 3).Draw(t, "arrives")
		case 1:
			person.Leave = rapid.IntRange(1, 4).Draw(t, "leaves")
		case 2:
			if courts > 0 {
				person.Courts = []Court{Court(rapid.IntRange(0, courts-1).Draw(t, "own court"))}
			}
		}
		p.People = append(p.People, person)
	}
	if people > 1 {
		p.Together = anyPairs(t, people, "together", true)
		p.NeverPartner = anyPairs(t, people, "never partner", false)
		p.NeverMeet = anyPairs(t, people, "never meet", false)
	}
	return p
}

func anyPairs(t *rapid.T, people int, what string, times bool) []Pair {
	var pairs []Pair
	for range rapid.SampledFrom([]int{0, 0, 1, 3}).Draw(t, what) {
		pair := Pair{
			A: Player(rapid.IntRange(0, people-1).Draw(t, "one")),
			B: Player(rapid.IntRange(0, people-1).Draw(t, "other")),
		}
		if times {
			pair.Times = rapid.SampledFrom([]int{0, 0, 1, 2}).Draw(t, "times")
		}
		pairs = append(pairs, pair)
	}
	return pairs
}

// TestAnyNightIsPlannedOrRightlyRefused plans random nights, plays some rounds, lets people leave,
// and plans on, sometimes with what was played as games of no round. A plan must be valid and not better
// than its bounds; a refusal must be one that an independent look confirms.
func TestAnyNightIsPlannedOrRightlyRefused(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyProblem(t)
		rounds, ok := planOrRefuse(t, p)
		if !ok || len(rounds) < 2 {
			return
		}
		played := rapid.IntRange(1, len(rounds)-1).Draw(t, "played")
		p.History, p.Rounds = rounds[:played], len(rounds)-played
		for range rapid.IntRange(0, 3).Draw(t, "departures") {
			i := rapid.IntRange(0, len(p.People)-1).Draw(t, "gone")
			p.People[i].Leave = max(played, p.People[i].Arrive+1)
		}
		if rapid.Bool().Draw(t, "of no round") {
			p.Met, p.History = p.earlier(), nil
		}
		planOrRefuse(t, p)
	})
}

func planOrRefuse(t *rapid.T, p Problem) ([]Round, bool) {
	rounds, err := Plan(context.Background(), p, Budget{Moves: 4_000})
	var conflict *Conflict
	switch {
	case errors.As(err, &conflict):
		if !contradictory(p) && firstGame(p) {
			t.Fatalf("refused although a first game exists: %v", err)
		}
		if len(Warnings(p)) == 0 && contradictory(p) {
			t.Fatal("refused without a warning")
		}
		return nil, false
	case err != nil:
		t.Fatal(err)
	}
	if contradictory(p) {
		t.Fatal("planned although the wishes contradict each other")
	}
	for _, v := range Audit(p, rounds) {
		if !shortOfTimes(p, v) {
			t.Fatalf("invalid: %s", v.Text)
		}
	}
	checkBounds(t, Certify(p, rounds))
	return rounds, true
}

// shortOfTimes tells whether a violation is about partners who were together too rarely, which a short
// search may leave and the audit must then report.
func shortOfTimes(p Problem, v Violation) bool {
	for _, t := range p.Together {
		if t.Times > 0 && v.Player == t.A && v.Court == NoCourt {
			return true
		}
	}
	return false
}

func checkBounds(t *rapid.T, c Certificate) {
	for name, v := range map[string]Value{
		"partner repeats": c.PartnerRepeats, "partner evenness": c.PartnerEvenness,
		"opponent evenness": c.OpponentEvenness, "meeting evenness": c.MeetingEvenness,
		"sit-out spread": c.SitoutSpread, "benched twice": c.BenchedTwice, "court spread": c.CourtSpread,
	} {
		if v.Value < v.Bound {
			t.Fatalf("%s is %d, below its bound %d", name, v.Value, v.Bound)
		}
	}
}

// contradictory looks for wishes that exclude each other, by brute force over all pairs of wishes.
func contradictory(p Problem) bool {
	groups := map[string]bool{}
	for _, person := range p.People {
		groups[person.Group] = true
	}
	if p.Format == Mixed && len(groups) != 2 {
		return true
	}
	for _, list := range [][]Pair{p.Together, p.NeverPartner, p.NeverMeet} {
		for _, w := range list {
			if w.A == w.B {
				return true
			}
		}
	}
	mates := allMates(p)
	for _, w := range p.Together {
		for _, v := range append(slices.Clone(p.NeverPartner), p.NeverMeet...) {
			if w.is(v.A, v.B) {
				return true
			}
		}
		if p.Format == Mixed && p.People[w.A].Group == p.People[w.B].Group {
			return true
		}
		if len(p.Courts) > 0 && !slices.ContainsFunc(p.Courts, func(c CourtSpec) bool {
			k := Court(slices.IndexFunc(p.Courts, func(d CourtSpec) bool { return d.Name == c.Name }))
			return playsOn(p, w.A, k) && playsOn(p, w.B, k)
		}) {
			return true
		}
		for _, i := range []Player{w.A, w.B} {
			if m, ok := mates[i]; ok && !w.is(i, m) {
				return true
			}
		}
	}
	if p.Format == Pairs {
		for i, m := range mates {
			for _, v := range append(slices.Clone(p.NeverPartner), p.NeverMeet...) {
				if v.is(i, m) {
					return true
				}
			}
		}
	}
	return false
}

// allMates lists fixed partners; with set pairs those left over pair up in the order of the list.
func allMates(p Problem) map[Player]Player {
	mates := map[Player]Player{}
	for _, w := range p.Together {
		if w.Times == 0 {
			mates[w.A], mates[w.B] = w.B, w.A
		}
	}
	if p.Format == Pairs {
		var left []Player
		for i := range p.People {
			if _, ok := mates[Player(i)]; !ok {
				left = append(left, Player(i))
			}
		}
		for k := 0; k+1 < len(left); k += 2 {
			mates[left[k]], mates[left[k+1]] = left[k+1], left[k]
		}
	}
	return mates
}

func playsOn(p Problem, i Player, c Court) bool {
	own, spec := p.People[i].Courts, p.Courts[c]
	if len(own) > 0 && !slices.Contains(own, c) {
		return false
	}
	level := p.People[i].Level
	return !spec.Strict || level == 0 || level >= spec.MinLevel && (spec.MaxLevel == 0 || level <= spec.MaxLevel)
}

// firstGame tells, by trying all teams on all courts, whether the first round to plan can have a game.
func firstGame(p Problem) bool {
	r := len(p.History)
	mates := allMates(p)
	var here []Player
	for i, person := range p.People {
		if person.Arrive <= r && (person.Leave == 0 || person.Leave > r) && !tired(p, Player(i)) {
			here = append(here, Player(i))
		}
	}
	present := func(i Player) bool {
		return p.People[i].Arrive <= r && (p.People[i].Leave == 0 || p.People[i].Leave > r)
	}
	team := func(a, b Player) bool {
		for _, i := range []Player{a, b} {
			m, ok := mates[i]
			if ok && present(m) && m != a && m != b || !ok && p.Format == Pairs {
				return false
			}
		}
		if p.Format == Pairs && mates[a] != b || p.Format == Mixed && p.People[a].Group == p.People[b].Group {
			return false
		}
		return !hasPair(p.NeverPartner, Pair{A: a, B: b}) && !hasPair(p.NeverMeet, Pair{A: a, B: b})
	}
	for c, spec := range p.Courts {
		if spec.Open > r || spec.Close != 0 && spec.Close <= r {
			continue
		}
		for _, a := range here {
			for _, b := range here {
				if b <= a || !team(a, b) || !playsOn(p, a, Court(c)) || !playsOn(p, b, Court(c)) {
					continue
				}
				for _, x := range here {
					for _, y := range here {
						if x == a || x == b || y <= x || y == a || y == b || !team(x, y) ||
							!playsOn(p, x, Court(c)) || !playsOn(p, y, Court(c)) {
							continue
						}
						apart := func(i, j Player) bool { return hasPair(p.NeverMeet, Pair{A: i, B: j}) }
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
func tired(p Problem, i Player) bool {
	if p.MaxRun == 0 || len(p.History) < p.MaxRun {
		return false
	}
	for _, round := range p.History[len(p.History)-p.MaxRun:] {
		if !slices.ContainsFunc(round.Games, func(g Game) bool { return slices.Contains(g.Players(), i) }) {
			return false
		}
	}
	return true
}
