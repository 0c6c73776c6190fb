package forecast

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"

	"club/quadrille/scoring"
	"club/quadrille/session"
)

// TestReportsSayWhatTheySaid holds whole reports about halls of both flows, and about one in which nobody gets what was
// wished. Whoever changes words or reckoning on purpose writes the file anew with -update.
func TestReportsSayWhatTheySaid(t *testing.T) {
	done, cancel := context.WithCancel(t.Context())
	cancel() // the mixing is the scheduler's
	var out strings.Builder
	for _, q := range []Question{
		{Hall: Hall{People: 18, Courts: 4, Minutes: 130, Late: 3, Leave: 2, Flow: session.Rounds, Rules: scoring.Rules{To: 11, WinBy: 2}}, Wished: 5, Seed: 3},
		{Hall: Hall{People: 13, Courts: 2, Minutes: 90, Flow: session.Rolling, Rules: scoring.Rules{Scoring: scoring.RallyScoring, To: 15, WinBy: 1}}, Wished: 3, Seed: 4},
		{Hall: Hall{People: 9, Courts: 2, Minutes: 45, Leave: 4, Flow: session.Rounds, Rules: scoring.Rules{To: 11, WinBy: 2, Minutes: 12}}, Wished: 30, Seed: 5},
		{Hall: Hall{People: 4, Courts: 1, Minutes: 60, Flow: session.Rolling, Rules: scoring.Rules{To: 21, WinBy: 2, Singles: true}}, Wished: 1, Seed: 6},
	} {
		r, err := Reported(done, q, nil)
		if err != nil {
			fmt.Fprintln(&out, "refused:", err)
			continue
		}
		for _, l := range r.Text() {
			fmt.Fprintf(&out, "%t %s\n", l.Flows, l.Text)
		}
	}
	golden.RequireEqual(t, []byte(out.String()))
}
