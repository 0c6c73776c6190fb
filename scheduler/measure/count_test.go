package measure

import (
	"slices"
	"testing"

	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// TestCountByHand counts a night of six on two courts, of which one round is history and for which 5 comes a round late.
func TestCountByHand(t *testing.T) {
	p := nighttest.Club(6, 2, 3)
	p.People[5].Arrive = 1
	game := func(c night.Court, a, b, x, y night.Player) night.Game {
		return night.Game{Court: c, A: night.Team{a, b}, B: night.Team{x, y}}
	}
	p.History = []night.Round{{Games: []night.Game{game(0, 0, 1, 2, 3)}, Out: []night.Player{4}}}
	p.Rounds = 3
	rounds := []night.Round{
		{Games: []night.Game{game(0, 0, 1, 2, 3)}, Out: []night.Player{4, 5}},
		{Games: []night.Game{game(1, 0, 2, 4, 5)}, Out: []night.Player{1, 3}},
		{Games: []night.Game{game(0, 1, 3, 4, 0)}, Out: []night.Player{2, 5}},
	}
	m := Count(night.New(&p), rounds)
	if m.Twice != 1 || m.Longest != 2 {
		t.Errorf("twice %d, longest %d: 4 sat out the first two rounds, 5 not running", m.Twice, m.Longest)
	}
	if want := []int{0, 1, 1, 1, 2, 2}; !slices.Equal(m.Outs, want) {
		t.Errorf("sit-outs %v, want %v", m.Outs, want)
	}
	if want := []int{3, 2, 2, 2, 2, 1}; !slices.Equal(m.Games, want) {
		t.Errorf("games after the history %v, want %v", m.Games, want)
	}
	if m.Throughout[5] || !m.Throughout[4] || m.Spread() != 2 {
		t.Errorf("there throughout %v, spread %d", m.Throughout, m.Spread())
	}
	// on the first court 3, 3, 2, 3, 1, 0 games, on the second 1, 0, 1, 0, 1, 1
	if got := m.CourtSpread(); got != 2+3+1+3+0+1 {
		t.Errorf("court spread %d of %v", got, m.OnCourt)
	}
	if m.Repeats != 2 || m.Partners != 2 {
		t.Errorf("%+v: 0 and 1 partner again, and 2 and 3, and nobody else", m.PairSums)
	}
	if m.Singles {
		t.Error("singles that nobody played")
	}
	rounds[2].Games = append(rounds[2].Games, night.Game{Court: 1, A: night.Team{2, night.Nobody}, B: night.Team{5, night.Nobody}})
	if again := Count(night.New(&p), rounds); !again.Singles || !slices.Equal(again.Games, m.Games) {
		t.Errorf("singles %v, doubles games %v", again.Singles, again.Games)
	}
}
