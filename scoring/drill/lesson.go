package drill

import (
	"fmt"

	"club/quadrille/scoring"
)

// Lesson is a row of questions that get harder. Its zero value is not a lesson; see [New].
type Lesson struct {
	Seed   uint64
	Rules  scoring.Rules
	Level  Level
	Asked  int
	Right  int
	Streak int // right answers in a row at this level
}

// climb is how many right answers in a row lead to the next level.
const climb = 3

// New is a lesson on games under some rules. The error is that of rules which cannot be played.
func New(seed uint64, r scoring.Rules) (Lesson, error) {
	if err := r.Validate(); err != nil {
		return Lesson{}, err
	}
	return Lesson{Seed: seed, Rules: r, Level: SideOuts}, nil
}

// Question is the question to answer now.
func (l Lesson) Question() Question { return ask(l.Seed, l.Asked, l.Level, l.Rules) }

// Answer is the lesson after an answer to its question, and what became of it.
func (l Lesson) Answer(a Answer) (Lesson, Verdict) {
	v := l.Question().Check(a)
	l.Asked++
	l.Streak++
	if v.Right {
		l.Right++
	} else {
		l.Streak = 0
	}
	if l.Streak == climb && l.Level < EveryScoring {
		l.Level++
		l.Streak = 0
	}
	return l, v
}

// String counts the right answers: "7 of 9 right, second servers".
func (l Lesson) String() string { return fmt.Sprintf("%d of %d right, %v", l.Right, l.Asked, l.Level) }
