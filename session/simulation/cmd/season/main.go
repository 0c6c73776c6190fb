// Command season plays seasons of a club twice, with draws that remember the nights before and with draws that do not,
// and prints how many pairs are partners on two nights one after the other, and whether anything within a night is
// worse for it. Then it plays seasons of clubs whose people are alike, as usual and very unlike, of whom no level is known,
// and prints how much more likely the stronger team of a game is to win it, with levels by ratings and without.
//
//	go run ./session/simulation/cmd/season
package main

import (
	"flag"
	"fmt"
	"os"

	"club/quadrille/session"
	"club/quadrille/session/simulation"
)

func main() {
	s := simulation.Season{Seed: 1}
	flag.IntVar(&s.People, "people", 60, "people of the club")
	flag.IntVar(&s.Each, "each", 24, "people who come to a night")
	flag.IntVar(&s.Courts, "courts", 5, "courts")
	flag.IntVar(&s.Rounds, "rounds", 8, "rounds of a night")
	flag.IntVar(&s.Nights, "nights", 50, "nights")
	rated := flag.Int("rated", 200, "nights of a season with ratings")
	flag.Parse()
	for _, s.Flow = range []session.Flow{session.Rounds, session.Rolling} {
		if err := compare(s); err != nil {
			fmt.Fprintln(os.Stderr, "season:", err)
			os.Exit(1)
		}
	}
	s.Flow, s.Nights = session.Rounds, *rated
	for _, s.Spread = range []float64{0.3, 0.6, 1} {
		if err := rate(s); err != nil {
			fmt.Fprintln(os.Stderr, "season:", err)
			os.Exit(1)
		}
	}
}

// rate plays a season with levels by ratings and without levels.
func rate(s simulation.Season) error {
	fmt.Printf("levels that differ by %.1f, %d nights: the stronger team's chance in the mean, repeated meetings and partners\n", s.Spread, s.Nights)
	for _, s.Rated = range []bool{false, true} {
		nights, err := s.Play()
		if err != nil {
			return err
		}
		chance, meetings, repeats := 0.0, 0, 0
		for _, n := range nights {
			chance += 100 * n.Stronger / float64(len(nights))
			meetings += n.Certificate.MeetingEvenness.Value
			repeats += n.Certificate.PartnerRepeats.Value
		}
		how := map[bool]string{false: "no levels known", true: "by ratings"}[s.Rated]
		fmt.Printf("  %-15s  %.1f %%, %d, %d\n", how, chance, meetings, repeats)
	}
	return nil
}

// compare plays a season both ways.
func compare(s simulation.Season) error {
	var nights [2][]simulation.Played
	for i, forget := range []bool{true, false} {
		var err error
		s.Forget = forget
		if nights[i], err = s.Play(); err != nil {
			return err
		}
	}
	other := 0
	var repeats, meetings [2]int
	for i := range nights[0] {
		if !nights[0][i].Alike(nights[1][i]) {
			other++
		}
		for k := range nights {
			repeats[k] += nights[k][i].Certificate.PartnerRepeats.Value
			meetings[k] += nights[k][i].Certificate.MeetingEvenness.Value
		}
	}
	fmt.Printf("%s: %d nights of %d from %d people, %d courts, %d rounds\n", s.Flow, s.Nights, s.Each, s.People, s.Courts, s.Rounds)
	for k, how := range []string{"forgotten", "remembered"} {
		fmt.Printf("  nights before %-10s  %4d pairs partners on two nights running; within the nights %d partner repeats, meeting evenness %d\n",
			how, simulation.Again(nights[k]), repeats[k], meetings[k])
	}
	fmt.Printf("  %d nights have another certificate for it\n", other)
	return nil
}
