package rating

import (
	"fmt"
	"slices"
)

// Course follows one person through a [Replay]: it hands each of the person's games, by its place in games,
// and the rating right after it to a function. The errors are those of [Replay].
func Course[K comparable](m Model, start map[K]Rating, games []Game[K], who K, after func(game int, r Rating)) error {
	if err := m.Validate(); err != nil {
		return err
	}
	r := replay[K]{model: m, start: start, index: map[K]int{}}
	for i, g := range games {
		if err := r.add(g); err != nil {
			return fmt.Errorf("game %d: %w", i+1, err)
		}
		if slices.Contains(g.A, who) || slices.Contains(g.B, who) {
			after(i, r.people[r.index[who]].Rating)
		}
	}
	return nil
}
