package main

import (
	"fmt"
	"math/rand/v2"
	"os"
	"strconv"
	"time"

	"club/quadrille/scheduler/design"
)

func main() {
	for _, s := range design.Starters() {
		if len(os.Args) > 1 && os.Args[1] != strconv.Itoa(s.People) {
			continue
		}
		start := time.Now()
		found := false
		limit := 30.0
		if len(os.Args) > 2 {
			limit, _ = strconv.ParseFloat(os.Args[2], 64)
		}
		moves := 1000000
		if len(os.Args) > 3 {
			moves, _ = strconv.Atoi(os.Args[3])
		}
		o := float64(s.Group.Order())
		for seed := uint64(1); !found && time.Since(start).Seconds() < limit; seed++ {
			rng := rand.New(rand.NewPCG(seed, 0))
			p := newPuzzle(s, rng)
			if anneal(p, rng, moves, 8*o*o, 1*o*o) {
				found = true
				s.Bases = p.rounds()
				fmt.Printf("%d %d seed %d %v %v\n", s.Kind, s.People, seed, time.Since(start), p.rounds())
			} else if seed%1 == 0 {
				fmt.Println("  ", s.People, seed, p.cost, 4*o*o)
			}
		}
		if !found {
			fmt.Println(s.Kind, s.People, "not found")
		}
	}
}
