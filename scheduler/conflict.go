package scheduler

import "strings"

// Conflict is the error of a problem that no plan can solve: the wishes contradict each other, or
// too few people or courts are there. Each reason is a sentence that says what clashes and by
// how much.
type Conflict struct {
	Reasons []string
}

// Error joins the reasons.
func (c *Conflict) Error() string { return strings.Join(c.Reasons, "; ") }
