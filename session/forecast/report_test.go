package forecast

import (
	"context"
	"slices"
	"strings"
	"testing"

	"club/quadrille/scoring"
	"club/quadrille/session"
)

// TestTheReportSaysWhatWasWorkedOut: each figure of the answer, the halls beside, the ways and the mixing stand in the text,
// the best way is marked, and only paragraphs flow.
func TestTheReportSaysWhatWasWorkedOut(t *testing.T) {
	q := Question{
		Hall:   Hall{People: 18, Courts: 4, Minutes: 130, Flow: session.Rounds, Rules: scoring.Rules{To: 11, WinBy: 2}},
		Wished: 5, Seed: 3,
	}
	r, err := Reported(t.Context(), q, nil)
	if err != nil {
		t.Fatal(err)
	}
	var rows, flows []string
	for _, l := range r.Text() {
		if l.Flows {
			flows = append(flows, l.Text)
			continue
		}
		if rows = append(rows, strings.Join(strings.Fields(l.Text), " ")); len(l.Text) > 80 {
			t.Errorf("a row of a table is too long for a terminal of 80: %q", l.Text)
		}
	}
	way := r.Ways[r.Best]
	for _, want := range []string{
		"games each " + chances(r.Answer.Each), "rounds " + chances(r.Answer.Rounds),
		"last score after " + hours(int(r.Answer.End.Median)) + "; in 9 of 10 nights within " + hours(int(r.Answer.End.P90)),
		way.Words() + " rounds", "16 " + bounded(r.Mixes[15].Certificate.PartnerRepeats),
	} {
		if !slices.ContainsFunc(rows, func(row string) bool { return strings.HasPrefix(row, want) }) {
			t.Errorf("no row begins with %q in\n%s", want, strings.Join(rows, "\n"))
		}
	}
	if len(r.Mixes) != LongestMixed || len(r.Others) != 5 || way.Flow != session.Rounds || way.Each < 5 {
		t.Errorf("%d rounds mixed, %d halls, best %+v", len(r.Mixes), len(r.Others), way)
	}
	if !strings.HasPrefix(flows[0], "18 people on 4 courts for 2:10 h: rounds") || !strings.Contains(flows[1], "No games of your club") {
		t.Errorf("it begins %q", flows[:2])
	}
	if n := strings.Count(strings.Join(rows, "\n"), "the longest that gives 5 games"); n != 1 {
		t.Errorf("%d ways are the best", n)
	}
	q.Wished = 40
	if r, err = Reported(t.Context(), q, nil); err != nil || r.Best != -1 || !slices.ContainsFunc(r.Text(), func(l Line) bool { return l.Flows && strings.HasPrefix(l.Text, "No way to play") }) {
		t.Errorf("40 games each are promised by way %d, %v", r.Best, err)
	}
	ended, cancel := context.WithCancel(t.Context())
	cancel()
	if r, err := Reported(ended, q, nil); err != nil || len(r.Mixes) != 0 || len(r.Ways) == 0 {
		t.Errorf("cancelled it has %d rounds mixed, %v", len(r.Mixes), err)
	}
	q.Hall.People = 2
	if _, err := Reported(t.Context(), q, nil); err == nil {
		t.Error("two people fill a court")
	}
}

// TestACapMovesWithThePoints: it stays as far above them, and where there is none there is none.
func TestACapMovesWithThePoints(t *testing.T) {
	for _, c := range []struct{ points, limit, to, want int }{{11, 15, 15, 19}, {11, 15, 11, 15}, {15, 17, 9, 11}, {11, 0, 21, 0}} {
		if got := To(scoring.Rules{To: c.points, WinBy: 2, Cap: c.limit}, c.to); got.To != c.to || got.Cap != c.want || got.WinBy != 2 {
			t.Errorf("to %d with a cap of %d becomes %+v", c.points, c.limit, got)
		}
	}
}

// TestTheSmallestHall has people for one court, and one fewer is too few.
func TestTheSmallestHall(t *testing.T) {
	h := Hall{People: 4, Courts: 1, Minutes: 60, Flow: session.Rounds, Rules: scoring.Rules{To: 11, WinBy: 2}}
	if err := h.Validate(); err != nil {
		t.Error(err)
	}
	for _, change := range []func(h *Hall){
		func(h *Hall) { h.People = 3 }, func(h *Hall) { h.Late = 1 }, func(h *Hall) { h.Courts = 0 }, func(h *Hall) { h.Minutes = 0 },
		func(h *Hall) { h.Minutes = 12*60 + 1 }, func(h *Hall) { h.Courts = session.MaxCourts + 1 }, func(h *Hall) { h.Leave = -1 },
	} {
		wrong := h
		if change(&wrong); wrong.Validate() == nil {
			t.Errorf("%+v is a hall", wrong)
		}
	}
}
