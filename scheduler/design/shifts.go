package design

import "slices"

// Shifts plays a round robin on fewer courts than its rounds have games: it returns the same games
// in as many shifts as needed, at most courts games in each, nobody twice in one. Games are taken in
// order, each as early as both contestants are free; of the games that could be played at once, those
// whose contestants have played less come first, so that rests stay short and alike. No courts give
// no shifts.
func Shifts(rounds [][][2]int, courts int) (shifts [][][2]int) {
	if courts < 1 {
		return nil
	}
	var waiting [][2]int
	for _, round := range rounds {
		waiting = append(waiting, round...)
	}
	contestants := 0
	for _, g := range waiting {
		contestants = max(contestants, g[0]+1, g[1]+1)
	}
	played := make([]int, contestants)
	for len(waiting) > 0 {
		var shift [][2]int
		busy := make([]bool, contestants)
		for len(shift) < courts {
			next := -1
			for i, g := range waiting {
				if busy[g[0]] || busy[g[1]] {
					continue
				}
				if next < 0 || turns(played, g) < turns(played, waiting[next]) {
					next = i
				}
			}
			if next < 0 {
				break
			}
			g := waiting[next]
			waiting = slices.Delete(waiting, next, next+1)
			busy[g[0]], busy[g[1]] = true, true
			played[g[0]]++
			played[g[1]]++
			shift = append(shift, g)
		}
		shifts = append(shifts, shift)
	}
	return shifts
}

// turns tells how much the contestants of a game have played: who has played more counts first.
func turns(played []int, g [2]int) int {
	a, b := played[g[0]], played[g[1]]
	return max(a, b)<<16 + a + b
}
