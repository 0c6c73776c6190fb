package rolling

import (
	"slices"
	"testing"

	"club/quadrille/scheduler/night"
)

// TestMemoryForgets: what was only thought of leaves no trace.
func TestMemoryForgets(t *testing.T) {
	m := newMemory(5, []night.Game{{Court: 0, A: night.Team{0, 1}, B: night.Team{2, 3}}})
	pair, latest := slices.Clone(m.pair), slices.Clone(m.latest)
	first := m.add(night.Game{Court: 0, A: night.Team{0, 2}, B: night.Team{4, 3}})
	second := m.add(night.Game{Court: 0, A: night.Team{0, 2}, B: night.Team{1, night.Nobody}})
	if m.of(0, 2) != (night.Tally{P: 2, O: 1}) || !m.last(0, 1) || m.last(0, 4) {
		t.Errorf("0 and 2 met as %+v", m.of(0, 2))
	}
	second()
	first()
	if !slices.Equal(m.pair, pair) || !slices.Equal(m.latest, latest) || m.games != 1 {
		t.Errorf("%v, %v after %d games, want %v, %v", m.pair, m.latest, m.games, pair, latest)
	}
}
