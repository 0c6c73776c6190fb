package scheduler

// Violation is one thing that is wrong with a rotation.
type Violation struct {
	Round  int    // of the night, from 0
	Court  Court  // or NoCourt
	Player Player // or Nobody
	Text   string // a sentence that names round (from 1), court and person
}

// Audit returns everything that is invalid in the rounds that follow the problem's history; none
// when the rotation is valid.
func Audit(p Problem, rounds []Round) []Violation { return nil }
