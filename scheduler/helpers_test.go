package scheduler

import (
	"context"
	"testing"
)

// mustPlan plans and fails the test unless the plan is valid.
func mustPlan(t testing.TB, p Problem, b Budget) []Round {
	t.Helper()
	rounds, err := Plan(context.Background(), p, b)
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range Audit(p, rounds) {
		t.Errorf("invalid plan: %s", v.Text)
	}
	return rounds
}

// wantValue checks one measure.
func wantValue(t *testing.T, name string, got Value, value int) {
	t.Helper()
	if got.Value != value || got.Gap() != 0 {
		t.Errorf("%s is %d with bound %d, want both %d", name, got.Value, got.Bound, value)
	}
}
