package scoring_test

import (
	"testing"

	"club/quadrille/scoring"
)

// TestAFaultThatIsNotKnownIsNamedByItsNumber and is not written.
func TestAFaultThatIsNotKnownIsNamedByItsNumber(t *testing.T) {
	unknown := scoring.Other + 1
	if got := unknown.String(); got != "fault 9" {
		t.Errorf("it is %q", got)
	}
	if text, err := unknown.MarshalText(); err == nil {
		t.Errorf("it is written as %q", text)
	}
}
