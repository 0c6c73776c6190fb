package search

import (
	"slices"
	"testing"

	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// TestSinglesOfThoseLeftOver: of three on the bench the two who sat out most play, and only the third is out.
func TestSinglesOfThoseLeftOver(t *testing.T) {
	p := nighttest.Club(7, 2, 2)
	four := night.Game{Court: 0, A: night.Team{0, 1}, B: night.Team{2, 3}}
	p.History = []night.Round{{Games: []night.Game{{Court: 0, A: night.Team{0, 1}, B: night.Team{2, 4}}}, Out: []night.Player{3, 5, 6}}}
	p.Rounds = 1
	rounds := []night.Round{{Games: []night.Game{four}, Out: []night.Player{4, 5, 6}}}
	addSingles(night.New(&p), rounds)
	if len(rounds[0].Games) != 2 || !rounds[0].Games[1].Singles() || !slices.Equal(rounds[0].Out, []night.Player{4}) {
		t.Errorf("%+v", rounds[0])
	}
}

// TestHomeStaysWhereNothingTells: teams change sides only for who was team A more often.
func TestHomeStaysWhereNothingTells(t *testing.T) {
	p := nighttest.Club(4, 1, 2)
	n := night.New(&p)
	g := night.Game{A: night.Team{2, 3}, B: night.Team{0, 1}}
	rounds := []night.Round{{Games: []night.Game{g}}, {Games: []night.Game{g}}}
	balanceHome(n, rounds)
	if rounds[0].Games[0].A != g.A || rounds[1].Games[0].A != g.B {
		t.Errorf("%+v", rounds)
	}
}
