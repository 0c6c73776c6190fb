// Command rolling plays rolling nights in three ways, by the plain queue, strictly by waiting time, and mixing
// more, and prints beside each other how people met and waited; beneath them, what a search finds that knows
// beforehand how long each game lasts, and a plan of as many games in rounds; and how many pairs of those who came off
// court together are called again together at least.
//
//	go run ./session/simulation/cmd/rolling             # 10 nights of each of six sizes: some minutes
//	go run ./session/simulation/cmd/rolling -nights 200 # what figures.md has
package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"slices"

	"club/quadrille/scheduler"
	"club/quadrille/session"
	"club/quadrille/session/simulation"
)

// What mixing may cost beside the plain queue: minutes of the wait that 19 of 20 do not exceed and of the longest,
// and of Jain's index.
const (
	allowedP95     = 1
	allowedLongest = 3
	allowedJain    = 0.002
)

func main() {
	nights := flag.Uint64("nights", 10, "play `n` nights of each size")
	only := flag.Int("only", -1, "only the hall of that number, from 0")
	beside := flag.Uint64("beside", 10, "for the first `n` nights search what could be reached with everything known, and plan rounds")
	moves := flag.Int("moves", 1_000_000, "`moves` of that search")
	flag.Parse()
	fmt.Println("way      games  partner repeats (avoidable now, by waiting a game)  meetings  wait: median   p95  longest    Jain")
	for k, hall := range simulation.Halls() {
		if *only >= 0 && k != *only {
			continue
		}
		c := comparison{hall: hall, nights: *nights, moves: *moves, beside: *beside}
		if err := c.run(); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		c.print()
	}
}

// ways are how the next four are chosen.
var ways = []struct {
	name string
	pick session.Picker
}{
	{"queue", scheduler.QueueNext},
	{"strict", func(r scheduler.Rolling) (scheduler.Game, error) { r.ByWait = true; return scheduler.Call(r) }},
	{"mix", func(r scheduler.Rolling) (scheduler.Game, error) { r.ByWait = false; return scheduler.Call(r) }},
}

// comparison plays the nights of one hall in all ways.
type comparison struct {
	hall           simulation.Night
	nights, beside uint64
	moves          int

	ways             [3]sums
	known, mix, plan met // the first nights: with everything known, mixed, and in rounds
	fours, passed    int // of these, as the queue played them: see [known.passed]
}

// met counts repeats of partners and of meetings.
type met struct{ repeats, meetings int }

func (m *met) add(c scheduler.Certificate) {
	m.repeats += c.PartnerRepeats.Value
	m.meetings += c.MeetingEvenness.Value
}

// sums adds up nights.
type sums struct {
	met
	played               int
	avoidable            [2]int
	median, p95, longest float64
	jain                 float64
	more                 [3][]float64 // p95, longest and Jain beyond the queue, of each night
}

func (c *comparison) run() error {
	for seed := range c.nights {
		n := c.hall.At(seed, session.Rolling)
		var queue simulation.Report
		for k, way := range ways {
			s := &c.ways[k]
			n.Pick = func(r scheduler.Rolling) (scheduler.Game, error) {
				g, err := way.pick(r)
				if err == nil {
					now, after := simulation.Avoidable(r, g)
					s.avoidable[0] += one(now)
					s.avoidable[1] += one(after)
				}
				return g, err
			}
			log := &session.MemoryLog{}
			r, err := simulation.Run(context.Background(), log, n, nil)
			if err != nil {
				return err
			}
			if k == 0 {
				queue = r
			}
			s.add(r, queue)
			if k == 0 && seed < c.beside {
				err = c.foresee(log, r, seed)
			}
			if k == len(ways)-1 && seed < c.beside {
				c.mix.add(r.Certificate)
				err = c.inRounds(r.Games, seed)
			}
			if err != nil {
				return err
			}
		}
	}
	return nil
}

// foresee searches the night that the queue played.
func (c *comparison) foresee(log session.Log, r simulation.Report, seed uint64) error {
	l, err := session.Load(log.Records(1))
	if err != nil {
		return err
	}
	k := foreseen(l.Club().Night(), r)
	fours, passed := k.passed()
	c.fours += fours
	c.passed += passed
	k.anneal(c.moves, seed)
	repeats, meetings := k.met()
	c.known.repeats += repeats
	c.known.meetings += meetings
	return nil
}

func (c *comparison) print() {
	fmt.Printf("\n%d people on %d courts, %d min, %d nights\n", len(c.hall.People), c.hall.Courts, c.hall.Minutes, c.nights)
	for k, way := range ways {
		s, n := &c.ways[k], float64(c.nights)
		fmt.Printf("%-8s %6d %6d (%d, %d) %10d %9.2f %7.2f %7.2f %8.4f\n", way.name, s.played, s.repeats, s.avoidable[0], s.avoidable[1], s.meetings,
			s.median/n, s.p95/n, s.longest/n, s.jain/n)
		if k == 0 {
			continue
		}
		fmt.Printf("         beside the queue: p95 %s, longest %s, Jain less by %s\n", spread(s.more[0], allowedP95), spread(s.more[1], allowedLongest), spread(s.more[2], allowedJain))
	}
	if n := min(c.beside, c.nights); n > 0 {
		fmt.Printf("of the first %d nights, meetings (partner repeats): mix %d (%d), everything known %d (%d), in rounds %d (%d)\n", n,
			c.mix.meetings, c.mix.repeats, c.known.meetings, c.known.repeats, c.plan.meetings, c.plan.repeats)
		mean := float64(c.passed) / float64(max(1, c.fours))
		fmt.Printf("%d fours let pass %.1f calls in the mean; called again together are at least about", c.fours, mean)
		if pairs, ok := meanTogether(mean, 1); ok {
			fmt.Printf(" %.0f pairs of them if nobody goes straight back on,", pairs*float64(c.fours))
		}
		pairs, _ := meanTogether(mean, 0)
		fmt.Printf(" %.0f in any case\n", pairs*float64(c.fours))
	}
}

// spread is the mean, the value that 9 of 10 nights do not exceed, the greatest, and how many are above what is allowed.
func spread(more []float64, allowed float64) string {
	slices.Sort(more)
	sum, over := 0.0, 0
	for _, x := range more {
		sum += x
		over += one(x > allowed+1e-9)
	}
	n := len(more)
	digits := 2
	if allowed < 0.1 {
		digits = 4
	}
	return fmt.Sprintf("%+.*f (9 of 10 nights %+.*f, worst %+.*f, %d nights over %v)", digits, sum/float64(n), digits, more[n*9/10], digits, more[n-1], over, allowed)
}

func one(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

func (s *sums) add(r, queue simulation.Report) {
	s.played += r.Games
	s.met.add(r.Certificate)
	s.median += r.WaitMinutes.Median
	s.p95 += r.WaitMinutes.P95
	s.longest += r.WaitMinutes.Max
	s.jain += r.GamesPerPlayer.Jain
	s.more[0] = append(s.more[0], r.WaitMinutes.P95-queue.WaitMinutes.P95)
	s.more[1] = append(s.more[1], r.WaitMinutes.Max-queue.WaitMinutes.Max)
	s.more[2] = append(s.more[2], queue.GamesPerPlayer.Jain-r.GamesPerPlayer.Jain)
}

// inRounds plans as many games in rounds for everybody all the time.
func (c *comparison) inRounds(games int, seed uint64) error {
	courts := c.hall.Courts
	p := scheduler.Problem{People: make([]scheduler.Person, len(c.hall.People)), Courts: make([]scheduler.CourtSpec, courts), Seed: seed}
	p.Rounds = (games + courts - 1) / courts
	rounds, err := scheduler.Plan(context.Background(), p, scheduler.Budget{Moves: 200_000})
	if err != nil {
		return err
	}
	last := &rounds[len(rounds)-1]
	for over := p.Rounds*courts - games; over > 0; over-- {
		g := last.Games[len(last.Games)-1]
		last.Games, last.Out = last.Games[:len(last.Games)-1], slices.Concat(last.Out, g.Players())
	}
	c.plan.add(scheduler.Certify(p, rounds))
	return nil
}
