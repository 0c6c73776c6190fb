package session

import "time"

// Step is what the night needs next.
type Step uint8

// The steps of a night, in the order in which a night usually takes them.
const (
	StepOpen    Step = iota // no night is open
	StepCheckIn             // fewer than four people are here
	StepCall                // rounds: the next round can be called
	StepBegin               // rolling: play can begin
	StepScores              // games go on: their scores come next
	StepHeld                // play is held
	StepFree                // rolling: a court is free, and nobody to fill it or closing time has passed
	StepClose               // all planned rounds are played, or closing time has passed: close, or call one more
)

// Advice is what the organiser would do next and the figures to say so.
type Advice struct {
	Step    Step
	Here    int // people in the rotation
	Running int // games going on
	Round   int // the round that goes on or comes next
	Rounds  int // rounds planned for the night
	Late    int // expected people whose time has passed
}

// NextStep says what the night needs next. A nil night needs to be opened.
func (n *Night) NextStep(now time.Time) Advice {
	if n == nil || !n.IsOpen() {
		return Advice{Step: StepOpen}
	}
	a := Advice{Here: n.Count(Here), Running: len(n.Running()), Round: len(n.Rounds), Rounds: n.Settings.Rounds}
	for _, p := range n.Roll {
		if p.State == Expected && !p.Due.IsZero() && now.After(p.Due) {
			a.Late++
		}
	}
	if a.Running == 0 {
		a.Round++
	}
	a.Step = n.step(a, now)
	return a
}

func (n *Night) step(a Advice, now time.Time) Step {
	rounds := n.Settings.Flow == Rounds
	switch {
	case n.Hold != nil:
		return StepHeld
	case a.Running == 0 && a.Here < 4 && len(n.Games) == 0:
		return StepCheckIn
	case rounds && a.Running > 0:
		return StepScores
	case rounds && a.Here >= 4 && a.Round <= a.Rounds && !n.pastClosing(now):
		return StepCall
	case rounds:
		return StepClose
	case !n.Rolls && !n.LastCall && a.Here >= 4:
		return StepBegin
	case a.Running > 0:
		return StepScores
	case n.LastCall, n.pastClosing(now):
		return StepClose
	}
	return StepFree
}
