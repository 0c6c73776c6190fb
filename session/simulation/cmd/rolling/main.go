// Command rolling plays rolling nights in three ways, by the plain queue, strictly by waiting time, and mixing
// more, and as many games in rounds, and prints beside each other how people met and waited.
//
//	go run ./session/simulation/cmd/rolling             # 10 nights of each of six sizes: a minute or two
//	go run ./session/simulation/cmd/rolling -nights 200 # what figures.md has
package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"slices"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/simulation"
)

// halls are the six sizes; people come late and go early as in clubs.
var halls = []simulation.Night{
	{Courts: 2, Minutes: 120, Late: 2, Leave: 2},
	{Courts: 4, Minutes: 120, Late: 2, Leave: 2},
	{Courts: 4, Minutes: 150, Late: 2, Leave: 2},
	{Courts: 3, Minutes: 180, Late: 3, Leave: 3},
	{Courts: 5, Minutes: 150, Late: 3, Leave: 3},
	{Courts: 7, Minutes: 150, Late: 4, Leave: 3},
}

var people = []int{16, 18, 24, 24, 30, 37}

func main() {
	nights := flag.Uint64("nights", 10, "play `n` nights of each size")
	only := flag.Int("only", -1, "only the hall of that number, from 0")
	flag.Parse()
	fmt.Println("hall       way     partner repeats  meetings  wait: median   p95  longest  Jain (means; of Jain and waits also the worst beside the queue)")
	for k, hall := range halls {
		if *only >= 0 && k != *only {
			continue
		}
		hall.Flow, hall.Scoring = session.Rolling, scoring.Rules{Scoring: scoring.SideOut, To: 11, WinBy: 2}
		if err := compare(hall, people[k], *nights); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
	}
}

// ways are how the next four are chosen.
var ways = []struct {
	name string
	pick session.Picker
}{
	{"queue", scheduler.QueueNext},
	{"strict", func(r scheduler.Rolling) (scheduler.Game, error) { r.ByWait = true; return scheduler.Next(r) }},
	{"mix", func(r scheduler.Rolling) (scheduler.Game, error) { r.ByWait = false; return scheduler.Next(r) }},
}

// sums adds up nights.
type sums struct {
	repeats, meetings, most  int
	median, p95, longest     float64
	jain                     float64
	worstP95, worstMax, less float64
}

func compare(hall simulation.Night, people int, nights uint64) error {
	all := make([]sums, len(ways))
	var rounds sums
	for seed := range nights {
		hall.People, hall.Seed = simulation.Invented(people, seed), seed
		var queue simulation.Report
		for k, way := range ways {
			hall.Pick = way.pick
			r, err := simulation.Run(context.Background(), &session.MemoryLog{}, hall, nil)
			if err != nil {
				return err
			}
			if k == 0 {
				queue = r
			}
			all[k].add(r, queue)
			if k == len(ways)-1 {
				c, err := inRounds(people, hall.Courts, r.Games, seed)
				if err != nil {
					return err
				}
				rounds.meetings += c.MeetingEvenness.Value
				rounds.repeats += c.PartnerRepeats.Value
				rounds.most += 1
			}
		}
	}
	name := fmt.Sprintf("%d/%d, %d min", people, hall.Courts, hall.Minutes)
	for k, way := range ways {
		s, n := all[k], float64(nights)
		fmt.Printf("%-15s %-7s %8d %12d %10.2f %8.2f %7.2f %8.4f   p95 %+.2f, longest %+.2f, Jain %+.4f\n", name, way.name, s.repeats, s.meetings,
			s.median/n, s.p95/n, s.longest/n, s.jain/n, s.worstP95, s.worstMax, -s.less)
	}
	fmt.Printf("%-15s %-7s %8d %12d   a plan of as many games in rounds\n", name, "rounds", rounds.repeats, rounds.meetings)
	return nil
}

func (s *sums) add(r, queue simulation.Report) {
	s.repeats += r.Certificate.PartnerRepeats.Value
	s.meetings += r.Certificate.MeetingEvenness.Value
	s.median += r.WaitMinutes.Median
	s.p95 += r.WaitMinutes.P95
	s.longest += r.WaitMinutes.Max
	s.jain += r.GamesPerPlayer.Jain
	s.worstP95 = max(s.worstP95, r.WaitMinutes.P95-queue.WaitMinutes.P95)
	s.worstMax = max(s.worstMax, r.WaitMinutes.Max-queue.WaitMinutes.Max)
	s.less = max(s.less, queue.GamesPerPlayer.Jain-r.GamesPerPlayer.Jain)
}

// inRounds plans as many games in rounds for everybody all the time.
func inRounds(people, courts, games int, seed uint64) (scheduler.Certificate, error) {
	p := scheduler.Problem{People: make([]scheduler.Person, people), Courts: make([]scheduler.CourtSpec, courts), Seed: seed}
	p.Rounds = (games + courts - 1) / courts
	rounds, err := scheduler.Plan(context.Background(), p, scheduler.Budget{Moves: 200_000})
	if err != nil {
		return scheduler.Certificate{}, err
	}
	last := &rounds[len(rounds)-1]
	for over := p.Rounds*courts - games; over > 0; over-- {
		g := last.Games[len(last.Games)-1]
		last.Games, last.Out = last.Games[:len(last.Games)-1], slices.Concat(last.Out, g.Players())
	}
	return scheduler.Certify(p, rounds), nil
}
