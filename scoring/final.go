package scoring

import "fmt"

// Final is how one game ended. Only [Rules.Final] and its kin make one, so that a value other than the
// zero one is a score the game can have come to. The zero value is no result: see [Final.IsZero].
type Final struct {
	score  Score
	how    How
	winner Team
	won    bool
}

// Final is the final score a-b, ended as how says, or an error that says why no game under r ends so.
//
// Played takes the scores at which play itself ends. Timed and Retired take those at which it had not
// ended yet: the side that is behind counts as the one that retired (use [Rules.Retire] when it was the
// leader). Walkover takes the side with more points as the one that came. Void takes any score that can
// stand, and keeps it for the record.
func (r Rules) Final(a, b int, how How) (Final, error) {
	f, err := r.makeFinal(a, b, how)
	if err != nil {
		return Final{}, err
	}
	return f, nil
}

// makeFinal is Final with a value that may not be used when there is an error.
func (r Rules) makeFinal(a, b int, how How) (Final, error) {
	if err := r.Validate(); err != nil {
		return Final{}, err
	}
	f := Final{score: Score{a, b}, how: how}
	f.winner, f.won = f.leader()
	if !f.won && (how == Retired || how == Walkover) {
		return Final{}, fmt.Errorf("%v does not tell who won: write \"%v retired a\" when team A retired, \"walkover a\" when team A came alone",
			f.score, f.score)
	}
	switch how {
	case Played:
		return f, r.refusePlayed(a, b)
	case Timed, Retired:
		return f, r.refuseStopped(a, b, how)
	case Void:
		f.winner, f.won = A, false
		return f, r.refuseAny(a, b)
	case Walkover:
		return r.Walkover(f.winner), nil
	}
	return Final{}, fmt.Errorf("a game is played, timed, retired, walkover or void, and not %v", how)
}

// Retire is a game that team gave up at a-b. The other team wins, whatever the score.
func (r Rules) Retire(a, b int, side Team) (Final, error) {
	if err := r.Validate(); err != nil {
		return Final{}, err
	}
	if err := r.refuseStopped(a, b, Retired); err != nil {
		return Final{}, err
	}
	return Final{score: Score{a, b}, how: Retired, winner: side.Other(), won: true}, nil
}

// Walkover is a game that winner gets because the other team did not come. It is recorded as the target
// to nothing (2026: 22.K), or to the start the other team was given.
func (r Rules) Walkover(winner Team) Final {
	f := Final{score: Score{r.To, r.StartB}, how: Walkover, winner: winner, won: true}
	if winner == B {
		f.score = Score{r.StartA, r.To}
	}
	return f
}

// Score is the points as they stood.
func (f Final) Score() Score { return f.score }

// How is how the game ended.
func (f Final) How() How { return f.how }

// Winner is the side that won, and false for a draw on time, a void game and the zero value.
func (f Final) Winner() (Team, bool) { return f.winner, f.won }

// IsZero reports whether f is no result at all.
func (f Final) IsZero() bool { return f.how == 0 }

// leader is the side the score speaks for.
func (f Final) leader() (Team, bool) {
	if f.score.B > f.score.A {
		return B, true
	}
	return A, f.score.A > f.score.B
}

// String is the score with how it came about unless it was played: "11-7", "9-6 timed",
// "10-5 retired, B won".
func (f Final) String() string {
	switch {
	case f.how == 0:
		return "no result"
	case f.how == Played:
		return f.score.String()
	case f.upset():
		return fmt.Sprintf("%v %v, %v won", f.score, f.how, f.winner)
	}
	return fmt.Sprintf("%v %v", f.score, f.how)
}

// upset reports whether the side that won is not the one with more points.
func (f Final) upset() bool {
	side, ahead := f.leader()
	return f.won && (!ahead || side != f.winner)
}

// Check says why f cannot be the result of a game under r, and nil when it can. It is for results that
// come from a file, where the rules were not at hand when they were read.
func (r Rules) Check(f Final) error {
	if f.IsZero() {
		return fmt.Errorf("the game has no result yet")
	}
	want, err := r.Final(f.score.A, f.score.B, f.how)
	if f.how == Retired {
		want, err = r.Retire(f.score.A, f.score.B, f.winner.Other())
	}
	if err == nil && want != f {
		err = fmt.Errorf("a %v under %v is recorded as %v, and not as %v", f.how, r, want, f)
	}
	return err
}

// Credit is the score that a table counts for f. After a retirement the retiring side keeps its points
// and the other gets the fewest that win (12.F): a leader who gives up at 10-5 loses 10-12. Every other
// score counts as it stands.
func (r Rules) Credit(f Final) Score {
	if f.how != Retired {
		return f.score
	}
	s, loser := f.score, f.winner.Other()
	need := max(r.To, s.Of(loser)+r.WinBy)
	if r.Cap > 0 {
		need = min(need, r.Cap)
	}
	s.add(f.winner, need-s.Of(f.winner))
	return s
}
