package scheduler

import (
	"context"
	"slices"

	"club/quadrille/scheduler/night"
)

// LevelsChoosable tells whether there are levels in a format in which the choice of [LevelAlternatives] may matter.
func LevelsChoosable(p Problem) bool {
	stated := slices.ContainsFunc(p.People, func(x Person) bool { return x.Level != 0 })
	return stated && (p.Format == Rotating || p.Format == Mixed) && len(night.Contradictions(&p)) == 0
}

// LevelAlternatives makes up to three plans where the choice between them matters, one for each step of leveling:
// from each to the next fewer games have a sure winner, and as a rule more people meet again. A step that gains nothing beside
// one that is listed is left out, so one plan alone means that there is nothing to choose.
func LevelAlternatives(ctx context.Context, p Problem, b Budget) ([]Alternative, error) {
	var found []Alternative
	for _, step := range Levelings() {
		p.Leveling = step
		rounds, err := Plan(ctx, p, b)
		if err != nil {
			return nil, err
		}
		a := Alternative{Benching: p.Benching, Leveling: step, Rounds: rounds, Certificate: Certify(p, rounds)}
		if !slices.ContainsFunc(found, func(x Alternative) bool { return x.asEven(a) }) {
			found = append(found, a)
		}
	}
	return found, nil
}

// asEven tells whether a plan has as few games with a sure winner as another, and not more repeated meetings.
func (a Alternative) asEven(than Alternative) bool {
	return a.Certificate.Levels.Onesided <= than.Certificate.Levels.Onesided &&
		a.Certificate.MeetingEvenness.Value <= than.Certificate.MeetingEvenness.Value
}
