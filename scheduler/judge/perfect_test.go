package judge

import (
	"strings"
	"testing"
)

// TestPerfectIsEveryGapNone: one measure above its bound, or without one, and the night is not proved best; the words
// say which, and what rounds already played make certain is told apart.
func TestPerfectIsEveryGapNone(t *testing.T) {
	for _, c := range []struct {
		name    string
		change  func(*Certificate)
		perfect bool
		want    string
	}{
		{"all met", func(*Certificate) {}, true, "Every gap is 0"},
		{"met above 0", func(c *Certificate) { c.MeetingEvenness = Value{Value: 7, Bound: 7} }, true, "Every gap is 0"},
		{"a gap", func(c *Certificate) { c.MeetingEvenness = Value{Value: 8, Bound: 7} }, false, "Not proved best: meeting evenness by at most 1;"},
		{"no bound", func(c *Certificate) { c.Strangers = Value{Value: 3, Open: true} }, false, "No bound is known for strangers."},
		{"played", func(c *Certificate) { c.PartnerRepeats = Value{Value: 3, Bound: 1, Played: 2} }, false, "partner repeats, 2 above its bound. The rounds already played make that certain"},
		{"partly played", func(c *Certificate) { c.PartnerRepeats = Value{Value: 4, Bound: 1, Played: 2} }, false, "partner repeats by at most 1 besides 2 that lie in rounds already played"},
		{"twice running", func(c *Certificate) { c.BenchedTwice = Value{Value: 5, Bound: 1} }, false, "Above the bound, as they are weighed against meeting others again: out twice running by up to 4. What to ask"},
		{"twice running and longer", func(c *Certificate) {
			c.BenchedTwice, c.LongestBench = Value{Value: 5, Bound: 1, Played: 1}, Value{Value: 2, Bound: 1}
		}, false, "Above the bound, as they are weighed against meeting others again: out twice running by up to 3 besides 1 that lie in rounds already played and longest bench by up to 1. What to ask"},
		{"longer alone", func(c *Certificate) { c.LongestBench = Value{Value: 2, Bound: 1} }, false, "Not proved best: longest bench by at most 1;"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var cert Certificate
			c.change(&cert)
			words := strings.Join(cert.Words(true), "\n")
			if cert.Perfect() != c.perfect || !strings.Contains(words, c.want) {
				t.Errorf("perfect %v, %s", cert.Perfect(), words)
			}
			twice := cert.BenchedTwice.Gap() > 0
			if strings.Contains(words, "are weighed against") != twice || twice && strings.Contains(words, "Not proved best") {
				t.Errorf("out twice running %v: %s", twice, words)
			}
			if rolling := strings.Join(cert.Words(false), "\n"); strings.Contains(rolling, "are weighed against") || strings.Contains(rolling, "Every gap") {
				t.Errorf("without rounds: %s", rolling)
			}
		})
	}
}
