package main

import (
	"encoding/json"
	"slices"
	"testing"

	"club/quadrille/cmd/quadrille/rotation"
)

// What the plan promises, recounted from the JSON that it prints.
func TestPlanKeepsItsPromises(t *testing.T) {
	tests := []struct {
		name             string
		args             []string
		people           int
		nobodyMeetsTwice bool
	}{
		{"16 people, nobody meets twice", []string{"--players", "16", "--courts", "4", "--rounds", "5"}, 16, true},
		{"18 people on 4 courts", []string{"--players", "18", "--courts", "4", "--rounds", "9"}, 18, false},
		{"the club's 24", []string{"--players", "24", "--courts", "6", "--rounds", "8"}, 24, false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			out, errs, code := quadrille(t, "", append([]string{"plan", "--json"}, tt.args...)...)
			if code != exitFine || errs != "" {
				t.Fatalf("exit %d: %s", code, errs)
			}
			var d rotation.Document
			if err := json.Unmarshal([]byte(out), &d); err != nil {
				t.Fatal(err)
			}
			c := count(t, d)
			if len(d.Players) != tt.people || c.repeats != 0 || c.spread > 1 || c.twice != 0 {
				t.Errorf("%d people, %d partner repeats, sit-out spread %d, benched twice running %d",
					len(d.Players), c.repeats, c.spread, c.twice)
			}
			if tt.nobodyMeetsTwice && c.meetings != 0 {
				t.Errorf("%d pairs meet again", c.meetings)
			}
			certificate := d.Certificate
			if certificate.PartnerRepeats.Value != c.repeats || certificate.SitoutSpread.Value != c.spread ||
				certificate.BenchedTwice.Value != c.twice || certificate.MeetingEvenness.Value != c.meetings {
				t.Errorf("counted %+v, the certificate says %+v", c, certificate)
			}
			if tt.nobodyMeetsTwice && certificate.MeetingEvenness.Gap() != 0 {
				t.Errorf("meeting evenness %+v is not at its bound", certificate.MeetingEvenness)
			}
		})
	}
}

// counts are measures of the certificate, counted the plain way.
type counts struct{ repeats, meetings, spread, twice int }

// count recounts a rotation in which everybody is there throughout, and fails the test where it is
// invalid.
func count(t *testing.T, d rotation.Document) counts {
	t.Helper()
	var c counts
	partners, met, out := map[[2]string]int{}, map[[2]string]int{}, map[string]int{}
	meet := func(m map[[2]string]int, a, b string) { m[[2]string{min(a, b), max(a, b)}]++ }
	var benched []string
	for _, r := range d.Rounds {
		var seen []string
		for _, g := range r.Games {
			four := append(slices.Clone(g.A), g.B...)
			if len(g.A) != 2 || len(g.B) != 2 {
				t.Fatalf("round %d: %v is no game of doubles", r.Round, g)
			}
			meet(partners, g.A[0], g.A[1])
			meet(partners, g.B[0], g.B[1])
			for i, a := range four {
				for _, b := range four[i+1:] {
					meet(met, a, b)
				}
			}
			seen = append(seen, four...)
		}
		for _, name := range r.Out {
			out[name]++
			if slices.Contains(benched, name) {
				c.twice++
			}
		}
		benched = r.Out
		seen = append(seen, r.Out...)
		slices.Sort(seen)
		if everybody := slices.Sorted(slices.Values(d.Players)); !slices.Equal(seen, everybody) {
			t.Fatalf("round %d is about %v, not about %v", r.Round, seen, everybody)
		}
	}
	for _, n := range partners {
		c.repeats += n - 1
	}
	for _, n := range met {
		c.meetings += n * (n - 1) / 2
	}
	least, most := len(d.Rounds), 0
	for _, name := range d.Players {
		least, most = min(least, out[name]), max(most, out[name])
	}
	c.spread = most - least
	return c
}
