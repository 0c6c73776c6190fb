package search

import (
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"testing"

	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
)

// clubNight is one of thirty invented nights: who comes late or leaves early, at what level they play, who wishes to
// partner whom, and whom not to meet.
type clubNight struct {
	Name             string
	Courts, Rounds   int
	Levels           []float64 // of each person
	Arrive, Leave    map[night.Player]int
	Together, Apart  []night.Pair
	Leveling, Strict bool
}

func (c clubNight) problem() night.Problem {
	p := night.Problem{Rounds: c.Rounds, Courts: make([]night.CourtSpec, c.Courts), Together: c.Together, NeverMeet: c.Apart, Seed: 1}
	for i, level := range c.Levels {
		p.People = append(p.People, night.Person{Name: fmt.Sprint("P", i), Level: level, Arrive: c.Arrive[night.Player(i)], Leave: c.Leave[night.Player(i)]})
	}
	if c.Leveling {
		p.Leveling = night.EvenLevels
	}
	if c.Strict {
		p.Benching = night.StrictBench
	}
	return p
}

func clubNights(t *testing.T) (nights []clubNight) {
	text, err := os.ReadFile("testdata/clubnights.json")
	if err == nil {
		err = json.Unmarshal(text, &nights)
	}
	if err != nil {
		t.Fatal(err)
	}
	return nights
}

// plainMoves is how many moves one core makes in two and a half seconds, where [defaultMoves] take 0.15.
const plainMoves = 33_000_000

var plainShare = flag.Int("plainshare", 1, "give the plain annealer one of so many of its moves")

// plain anneals the same weights from a board that is drawn by lot, with nothing that this package has beside: no
// design, no second start, no phase for wishes or levels. It is the yardstick, with some sixteen times the moves.
func plain(p night.Problem, w *measure.Weights, moves int) int {
	s := newSearch(night.New(&p), moves)
	s.d = dice.New(p.Seed, 99)
	b := s.draw().under(w)
	a := newAnnealer(b, s.d, -1<<40, 0)
	const steps = 60
	for k, heat := 0, 80.0; k < steps; k, heat = k+1, heat*0.939 { // from 80 to 2
		a.run(context.Background(), moves/steps, heat, heat*0.939)
	}
	a.restore()
	return b.cost(w)
}

// clubSeeds is with how many seeds the search plans each night: one alone says more of luck than of the search.
const clubSeeds = 8

// TestClubNightsAgainstPlainAnnealing compares what all nights weigh in the sum. With sixteen times the moves the yardstick
// is ahead, and here is held by how much at most; with about as many moves as the search (the short form) it is behind.
func TestClubNightsAgainstPlainAnnealing(t *testing.T) {
	nights := clubNights(t)
	if len(nights) != 30 {
		t.Fatalf("%d nights", len(nights))
	}
	share := *plainShare
	if os.Getenv("QUADRILLE_LONG") == "" {
		nights, share = nights[:6], max(share, 33)
	}
	seeds := 1
	if share == 1 {
		seeds = clubSeeds
	}
	ours, theirs := 0, 0
	for _, c := range nights {
		judged := c.problem()
		if !c.Leveling {
			// even games are not to cost anything then, and the yardstick need not look at them
			for i := range judged.People {
				judged.People[i].Level = 0
			}
		}
		s := newSearch(night.New(&judged), 0)
		var w *measure.Weights
		our := 0
		for seed := range uint64(seeds) {
			p := c.problem()
			p.Seed = seed + 1
			b := s.boardOf(Rounds(context.Background(), p, UsualMoves(&p)))
			w, _ = s.weighing(b)
			our += b.cost(w)
		}
		their := seeds * plain(judged, w, plainMoves/share)
		t.Logf("%-44s %8.1f %6d", c.Name, float64(our)/float64(seeds), their/seeds)
		ours, theirs = ours+our, theirs+their
	}
	t.Logf("in all %d, plain annealing with %d moves %d: %+.1f%%", ours/seeds, plainMoves/share, theirs/seeds, 100*float64(ours-theirs)/float64(theirs))
	if limit := 102 - 3*night.One(share > 1); 100*ours > limit*theirs {
		t.Errorf("all nights weigh %d, plain annealing %d", ours/seeds, theirs/seeds)
	}
}
