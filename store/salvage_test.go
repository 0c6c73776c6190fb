package store

import (
	"fmt"
	"testing"

	"club/quadrille/session"
)

// chained gives n frames, chained to each other, that say who wrote them.
func chained(tb testing.TB, n int, by string) []frame {
	tb.Helper()
	out := make([]frame, n)
	for i := range out {
		out[i] = frame{Record: session.Record{Seq: uint64(i) + 1, Action: 1, Kind: by}}
		if i > 0 {
			out[i].before = out[i-1].sum
		}
		if _, _, err := out[i].encode(); err != nil {
			tb.Fatal(err)
		}
	}
	return out
}

// kinds tells a log by the kinds of its records.
func kinds(frames []frame) string {
	var out []string
	for _, f := range frames {
		out = append(out, f.Kind)
	}
	return fmt.Sprint(out)
}

func TestSalvagePutsTheRightRecordInEachPlace(t *testing.T) {
	log := chained(t, 5, "true")
	ghost := func(i int) frame { // an action that was never acknowledged and whose number was used again
		f := log[i]
		f.Kind = "ghost"
		if _, _, err := f.encode(); err != nil {
			t.Fatal(err)
		}
		return f
	}
	ghosts := []frame{ghost(1), ghost(2)}
	ghosts[1].before = ghosts[0].sum
	if _, _, err := ghosts[1].encode(); err != nil {
		t.Fatal(err)
	}
	foreign := chained(t, 5, "foreign")
	far := frame{Record: session.Record{Seq: 5 + 2*maxGap, Kind: "far"}}
	for _, c := range []struct {
		name   string
		placed []frame
		loose  []frame
		want   string
		faults int
	}{
		{"all in place", log, nil, "[true true true true true]", 0},
		{"one out of place", []frame{log[0], log[2]}, []frame{log[1]}, "[true true true]", 0},
		{"ghost before the true one", []frame{log[0], log[2]}, []frame{ghost(1), log[1]}, "[true true true]", 0},
		{"only the ghost", []frame{log[0], log[2]}, []frame{ghost(1)}, "[true RecordLost true]", 1},
		{"what is in place wins", log[:3], []frame{ghost(1)}, "[true true true]", 0},
		{"end by its chain", log[:2], []frame{foreign[2], log[2]}, "[true true true]", 0},
		{"end that fits nowhere", log[:2], []frame{foreign[2]}, "[true true]", 0},
		{"nothing in place", nil, []frame{ghost(1), log[2], log[1], log[0]}, "[true true true]", 0},
		{"copies of the same", nil, []frame{log[0], log[0], log[1], log[0]}, "[true true]", 0},
		{"two ghosts in a row", log[:1], []frame{ghosts[0], ghosts[1], log[1], log[2], log[3]}, "[true true true true]", 0},
		{"alone behind a gap", log[:1], []frame{log[3]}, "[true RecordLost RecordLost true]", 1},
		{"two gaps", []frame{log[1], log[3]}, nil, "[RecordLost true RecordLost true]", 2},
		{"too far", log[:1], []frame{far}, "[true]", 1},
		{"nothing", nil, nil, "[]", 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := salvage{placed: map[uint64]frame{}, loose: map[uint64][]frame{}}
			for _, f := range c.placed {
				s.placed[f.Seq] = f
			}
			for _, f := range c.loose {
				s.find(f)
			}
			var r Report
			out := s.restore(&r)
			if kinds(out) != c.want || len(r.Faults) != c.faults || r.Last != uint64(len(out)) {
				t.Errorf("got %s, want %s; faults %q, want %d", kinds(out), c.want, r.Faults, c.faults)
			}
		})
	}
}

func TestLostEndOfAnActionIsStoodFor(t *testing.T) {
	s := salvage{placed: map[uint64]frame{1: {more: 2, Record: session.Record{Seq: 1, Action: 1, Night: 4, Kind: "true"}}}}
	var r Report
	out := s.restore(&r)
	if kinds(out) != "[true RecordLost RecordLost]" || out[1].more != 1 || out[2].more != 0 {
		t.Fatalf("got %+v", out)
	}
	if out[2].Night != 4 || out[2].Action != 1 || r.Records != 1 || r.Faults[0] != "events 2 to 3 are lost" {
		t.Errorf("got %+v, %+v", out[2], r)
	}
}

// TestTheNearestOfTheRecordsTooFarIsNamed, not the farthest, and none that is within reach.
func TestTheNearestOfTheRecordsTooFarIsNamed(t *testing.T) {
	s := salvage{placed: map[uint64]frame{}, loose: map[uint64][]frame{}}
	for _, seq := range []uint64{5 + maxGap, 9 + 3*maxGap, 6 + maxGap, 7 + 2*maxGap} {
		s.placed[seq] = frame{Record: session.Record{Seq: seq}}
	}
	if got := s.beyond(5); got != 6+maxGap {
		t.Errorf("behind 5 it is %d, want %d", got, 6+maxGap)
	}
	if got := s.beyond(9 + 3*maxGap); got != 0 {
		t.Errorf("behind all it is %d", got)
	}
}

// TestAHeadOfAnotherFileTakesItsNoteAway: what another file noted as its newest event says nothing of this one.
func TestAHeadOfAnotherFileTakesItsNoteAway(t *testing.T) {
	mine, other := newHead("mine"), newHead("other")
	for _, c := range []struct {
		before Head
		noted  uint64
		open   bool
	}{{mine, 9, false}, {other, 0, true}, {Head{}, 9, false}} {
		r := Report{Head: c.before, noted: 9}
		if r.take(mine); r.Head != mine || r.noted != c.noted || r.OpenEnd != c.open {
			t.Errorf("behind the head of %q: %+v", c.before.CreatedBy, r)
		}
	}
}
