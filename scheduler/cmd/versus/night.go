package main

import (
	"context"
	"fmt"
	"io"
	"time"

	"club/quadrille/scheduler"
)

// night is one instance that both sides plan: everybody plays in every round.
type night struct{ people, courts, rounds int }

// nightsToCompare are nights on which nobody need meet twice, then whist tournaments, both from easy
// to hard.
var nightsToCompare = []night{
	{20, 5, 5},
	{24, 6, 5},
	{32, 8, 6},
	{24, 6, 7},
	{8, 2, 7},
	{12, 3, 11},
}

// parseNight reads people/courts/rounds.
func parseNight(s string) (night, error) {
	var n night
	var rest string
	if got, _ := fmt.Sscanf(s, "%d/%d/%d%s", &n.people, &n.courts, &n.rounds, &rest); got != 3 {
		return night{}, fmt.Errorf("%q is no night: write people/courts/rounds, as in 20/5/5", s)
	}
	if n.courts < 1 || n.people != 4*n.courts || n.rounds < 1 || n.rounds >= n.people {
		return night{}, fmt.Errorf("the night %s does not fit the models: they need four people for each court, and fewer rounds than people", n)
	}
	return n, nil
}

// String writes people/courts/rounds.
func (n night) String() string { return fmt.Sprintf("%d/%d/%d", n.people, n.courts, n.rounds) }

// whist tells whether the night is as long as a whist tournament, where everybody partners
// everybody once and opposes everybody twice.
func (n night) whist() bool { return n.rounds == n.people-1 }

// models lists the models that can find a best plan of the night.
func (n night) models() []string {
	if n.whist() {
		return []string{"whist"}
	}
	return []string{"golfer_int", "golfer_set"}
}

// problem is the night as Quadrille takes it.
func (n night) problem() scheduler.Problem {
	return scheduler.Problem{
		People: make([]scheduler.Person, n.people),
		Courts: make([]scheduler.CourtSpec, n.courts),
		Rounds: n.rounds,
		Seed:   1,
	}
}

// print plans the night and writes it in the form of the models' answers, with the time that the
// plan took.
func (n night) print(ctx context.Context, out io.Writer) error {
	start := time.Now()
	rounds, err := scheduler.Plan(ctx, n.problem(), scheduler.Budget{})
	if err != nil {
		return err
	}
	if err := writeAnswer(out, rounds, time.Since(start)); err != nil {
		return fmt.Errorf("writing the plan: %w", err)
	}
	return nil
}

// judge returns an error if the plan is invalid or may not be the best: it must meet the bounds of
// everything that says who meets whom. Courts are left out, as the models do not spread them.
func (n night) judge(rounds []scheduler.Round) error {
	p := n.problem()
	if len(rounds) != n.rounds {
		return fmt.Errorf("the plan has %d rounds where %d were asked", len(rounds), n.rounds)
	}
	if wrong := scheduler.Audit(p, rounds); len(wrong) > 0 {
		return fmt.Errorf("the plan is invalid: %s", wrong[0].Text)
	}
	c := scheduler.Certify(p, rounds)
	for _, m := range []struct {
		name string
		scheduler.Value
	}{
		{"partner repeats", c.PartnerRepeats},
		{"partner evenness", c.PartnerEvenness},
		{"opponent evenness", c.OpponentEvenness},
		{"meeting evenness", c.MeetingEvenness},
	} {
		if m.Gap() != 0 {
			return fmt.Errorf("the plan is not proved best: %s %d is above the bound %d", m.name, m.Value.Value, m.Bound)
		}
	}
	return nil
}
