package drill_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"

	"club/quadrille/scoring"
	"club/quadrille/scoring/drill"
)

// TestLessonsAskWhatTheyAsked holds what lessons ask on each level and what is right, for some seeds: the mix of a level
// is drawn, and a change of it shows here.
func TestLessonsAskWhatTheyAsked(t *testing.T) {
	var out strings.Builder
	for seed := range uint64(3) {
		for level := drill.SideOuts; level <= drill.EveryScoring; level++ {
			l, err := drill.New(seed, scoring.Rules{To: 11, WinBy: 2})
			if err != nil {
				t.Fatal(err)
			}
			l.Level = level
			for range 24 {
				q := l.Question()
				fmt.Fprintf(&out, "%d, %v: %s, rally to %v; %v\n", seed, level, q.Before.Call(), q.Won, q.Expected())
				l.Asked++
			}
		}
	}
	golden.RequireEqual(t, []byte(out.String()))
}
