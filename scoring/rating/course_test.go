package rating

import (
	"testing"
)

// TestCourseIsTheReplaySoFar: after each of somebody's games the course has what a replay of the games up to
// it has.
func TestCourseIsTheReplaySoFar(t *testing.T) {
	var games []Game[string]
	people := []string{"a", "b", "c", "d", "e"}
	for i := range 20 {
		games = append(games, Game[string]{
			A: []string{people[i%5], people[(i+1)%5]}, B: []string{people[(i+2)%5], people[(i+3)%5]},
			Share: float64(i%3) / 2, Week: float64(i / 4),
		})
	}
	start := map[string]Rating{"b": {30, 4}}
	for _, who := range people {
		own := 0
		err := Course(Club(), start, games, who, func(i int, got Rating) {
			own++
			table, err := Replay(Club(), start, games[:i+1])
			if want, ok := table.Of(who); err != nil || !ok || got != want.Rating || want.Games != own {
				t.Errorf("%s after game %d has %v, in a replay %v, %v", who, i+1, got, want, err)
			}
		})
		if err != nil || own != 16 {
			t.Errorf("%s has a course of %d games: %v", who, own, err)
		}
	}
	bad := append(games[:3:3], Game[string]{A: []string{"a"}, B: []string{"a"}})
	if err := Course(Club(), nil, bad, "a", func(int, Rating) {}); err == nil {
		t.Error("a game of somebody against the same person is taken")
	}
}
