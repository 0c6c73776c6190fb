package main

import (
	"math"
	"math/rand/v2"
	"slices"

	"club/quadrille/scheduler/measure"
	"club/quadrille/session"
	"club/quadrille/session/simulation"
)

// known is a night of which everything is known beforehand: when each court frees, and who is there until when. Who
// plays does not change that. So it shows what a method could reach that foresees the whole night.
type known struct {
	slots []slot
	here  []stay
	seat  [][4]int // of each slot, two and two
	turns [][]int  // of each person, the slots in ascending order
	pair  []tally  // at a·people + b
	allow limits
}

// slot is a game, in minutes after the first call.
type slot struct{ at, over float64 }

// stay is when somebody is there, in minutes after the first call; until closing time at most they count for Jain.
type stay struct{ from, until, counted float64 }

type tally struct{ partners, met int }

// limits are what the waits of a night may be.
type limits struct{ p95, longest, jain float64 }

// foreseen is the night that was played by the queue, with what its waits may be.
func foreseen(n *session.Night, r simulation.Report) *known {
	k := &known{allow: limits{r.WaitMinutes.P95 + allowedP95, r.WaitMinutes.Max + allowedLongest, r.GamesPerPlayer.Jain - allowedJain}}
	start := n.Games[0].Called
	place := map[session.PersonID]int{}
	for _, a := range n.Roll {
		if a.Arrived.IsZero() {
			continue
		}
		place[a.Person] = len(k.here)
		from, until := max(0, a.Arrived.Sub(start).Minutes()), a.Arrived.Add(a.Present).Sub(start).Minutes()
		k.here = append(k.here, stay{from, until, min(until, n.Settings.Closing.Sub(start).Minutes()) - from})
	}
	k.turns, k.pair = make([][]int, len(k.here)), make([]tally, len(k.here)*len(k.here))
	for s := range n.Games {
		g := &n.Games[s]
		k.slots = append(k.slots, slot{g.Called.Sub(start).Minutes(), g.Finished.Sub(start).Minutes()})
		seat := [4]int{place[g.A[0]], place[g.A[1]], place[g.B[0]], place[g.B[1]]}
		for _, a := range seat {
			k.turns[a] = append(k.turns[a], s)
		}
		k.seat = append(k.seat, seat)
		k.put(s, 1)
	}
	return k
}

// put enters the meetings of a slot, or takes them out, and returns by how much the plan costs more.
func (k *known) put(s, by int) (cost int) {
	w := &measure.Usual
	for x, a := range k.seat[s] {
		for y, b := range k.seat[s] {
			if x == y {
				continue
			}
			t := &k.pair[a*len(k.here)+b]
			old := *t
			t.met += by
			if x^y == 1 {
				t.partners += by
			}
			if x < y {
				cost += w[measure.Meetings]*(measure.Pairs(t.met)-measure.Pairs(old.met)) + w[measure.Partners]*(measure.Pairs(t.partners)-measure.Pairs(old.partners))
			}
		}
	}
	return cost
}

// strain is by how much the waits and games are beyond what is allowed, with a price at which the search ends
// within it on nearly all nights; infinite if somebody would be in two places.
func (k *known) strain() float64 {
	sum, waits, long, rate, squares := 0.0, 0, 0, 0.0, 0.0
	wait := func(minutes float64) {
		waits++
		if minutes > k.allow.p95 {
			long++
			sum += 2 * (minutes - k.allow.p95)
		}
		if over := minutes - k.allow.longest; over > 0 {
			sum += 200 + 50*over
		}
	}
	end, last := k.slots[len(k.slots)-1].over, k.slots[len(k.slots)-1].at
	for a, here := range k.here {
		from := here.from
		for _, s := range k.turns[a] {
			t := k.slots[s]
			if from > t.at+1e-9 || t.at >= here.until {
				return math.Inf(1)
			}
			if t.at > 0 {
				wait(t.at - from)
			}
			from = t.over
		}
		if from < last && here.until > from {
			wait(min(here.until, end) - from)
		}
		r := float64(len(k.turns[a])) / here.counted
		rate += r
		squares += r * r
	}
	if x := float64(long) - 0.05*float64(waits); x > 0 {
		sum += 60 * x
	}
	if jain := rate * rate / (float64(len(k.here)) * squares); jain < k.allow.jain {
		sum += 40_000 * (k.allow.jain - jain)
	}
	return sum
}

// anneal looks for the plan that costs least.
func (k *known) anneal(moves int, seed uint64) {
	const hot, cold = 120.0, 3.0
	dice := rand.New(rand.NewPCG(seed, 1))
	strain := k.strain()
	for m := range moves {
		nerve := -hot * math.Pow(cold/hot, float64(m)/float64(moves)) * math.Log(1-dice.Float64())
		s, x, kind := dice.IntN(len(k.slots)), dice.IntN(4), dice.IntN(8)
		if kind == 0 {
			u := x ^ 2 ^ dice.IntN(2)
			if float64(k.swap(s, x, s, u)) > nerve {
				k.swap(s, x, s, u)
			}
			continue
		}
		a, b := k.seat[s][x], dice.IntN(len(k.here))
		if slices.Contains(k.seat[s][:], b) {
			continue
		}
		was := [2][]int{k.turns[a], k.turns[b]}
		u, y := -1, 0
		if kind >= 4 && len(was[1]) > 0 {
			u = was[1][dice.IntN(len(was[1]))]
			y = slices.Index(k.seat[u][:], b)
			if slices.Contains(k.seat[u][:], a) {
				continue
			}
		}
		k.turns[a], k.turns[b] = changed(was[0], s, u), changed(was[1], u, s)
		after := k.strain()
		if after-strain-nerve > 2000 {
			k.turns[a], k.turns[b] = was[0], was[1]
			continue
		}
		move := func(a, b int) int {
			if u >= 0 {
				return k.swap(s, x, u, y)
			}
			cost := k.put(s, -1)
			k.seat[s][x] = b
			return cost + k.put(s, 1)
		}
		if float64(move(a, b))+after-strain <= nerve {
			strain = after
			continue
		}
		move(b, a)
		k.turns[a], k.turns[b] = was[0], was[1]
	}
}

// swap exchanges two seats and returns by how much the plan costs more.
func (k *known) swap(s, x, u, y int) (cost int) {
	cost = k.put(s, -1)
	if u != s {
		cost += k.put(u, -1)
	}
	k.seat[s][x], k.seat[u][y] = k.seat[u][y], k.seat[s][x]
	if u != s {
		cost += k.put(u, 1)
	}
	return cost + k.put(s, 1)
}

// changed is the turns without one and with another, where those are not negative.
func changed(turns []int, without, with int) []int {
	var out []int
	for _, s := range turns {
		if s != without {
			out = append(out, s)
		}
	}
	if with >= 0 {
		at, _ := slices.BinarySearch(out, with)
		out = slices.Insert(out, at, with)
	}
	return out
}

// met counts repeats of partners and of meetings.
func (k *known) met() (repeats, meetings int) {
	for at, t := range k.pair {
		if at/len(k.here) < at%len(k.here) {
			repeats += measure.Pairs(t.partners)
			meetings += measure.Pairs(t.met)
		}
	}
	return repeats, meetings
}
