package drill

import (
	"fmt"

	"club/quadrille/scoring"
)

// Level is how hard the questions are.
type Level uint8

// The levels, in the order in which a lesson goes through them.
const (
	SideOuts      Level = iota + 1 // points and side outs
	SecondServers                  // and the second server
	Endings                        // and switching ends, game point and the end of the game
	EveryScoring                   // all of it, in singles and in rally scoring too
)

var levelNames = [...]string{"", "points and side outs", "second servers", "ends and game point", "every scoring"}

// String is what the level is about.
func (l Level) String() string {
	if l >= SideOuts && l <= EveryScoring {
		return levelNames[l]
	}
	return fmt.Sprintf("level %d", uint8(l))
}

// asksMore reports whether the questions of the level also ask for switching ends and game point.
func (l Level) asksMore() bool { return l >= Endings }

// fits reports whether a rally makes a good question of the level. Share is a number from 0 to 1 drawn for the
// question: what a level is about comes up in most of its questions, what came before in the others.
func (l Level) fits(after scoring.State, share float64) bool {
	_, gamePoint := after.GamePoint()
	ending := after.Done || after.EndsChange() || gamePoint
	const often = 0.6
	switch {
	case l == SideOuts && share < often:
		return after.What == scoring.ServeOver && !ending
	case l == SideOuts:
		return after.What == scoring.Point && !ending
	case l == SecondServers && share < often:
		return after.What == scoring.SecondServer && !ending
	case l == SecondServers:
		return !ending
	case share < often/3:
		return after.EndsChange()
	case share < 2*often/3:
		return gamePoint
	case share < often:
		return after.Done
	}
	return true
}

// others are what the last level plays beside the rules of the lesson.
func others(r scoring.Rules) []scoring.Rules {
	rally, singles, both := r, r, r
	rally.Scoring = scoring.RallyScoring
	singles.Singles = true
	both.Scoring, both.Singles = scoring.RallyScoring, true
	onServe := rally
	onServe.WinOnServe = true
	return []scoring.Rules{r, rally, singles, both, onServe}
}
