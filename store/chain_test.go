package store

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"club/quadrille/session"
)

func TestChainTellsWhatIsWrong(t *testing.T) {
	rec := func(seq uint64) session.Record { return session.Record{Seq: seq, Action: seq, Kind: "RallyWon"} }
	type link struct {
		seq  uint64
		more uint32
		torn bool // not chained to the one before
	}
	for _, c := range []struct {
		name  string
		links []link
		want  []string
	}{
		{"sound", []link{{seq: 1, more: 1}, {seq: 2}, {seq: 3}}, nil},
		{"torn", []link{{seq: 1}, {seq: 2, torn: true}}, []string{"event 2 does not follow the event 1 that is there"}},
		{"hole", []link{{seq: 1}, {seq: 4, torn: true}}, []string{"events 2 to 3 are missing"}},
		{"late start", []link{{seq: 2}}, []string{"event 1 is missing"}},
		{"twice", []link{{seq: 1}, {seq: 1}}, []string{"event 1 stands where event 2 should"}},
		{"action cut short", []link{{seq: 1, more: 2}, {seq: 2, more: 2}, {seq: 3, more: 1}, {seq: 4}}, []string{"the action that event 1 belongs to is cut short"}},
		{"action without end", []link{{seq: 1, more: 2}}, []string{"events 2 to 3 are missing"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var got chain
			for _, l := range c.links {
				f := frame{Record: rec(l.seq), before: got.sum, more: l.more}
				if l.torn {
					f.before++
				}
				key, value, err := f.encode()
				if err != nil {
					t.Fatal(err)
				}
				if _, ok := got.add(key, value); !ok {
					t.Fatalf("record %d is sound", l.seq)
				}
			}
			if got.end(0); !slices.Equal(got.faults, c.want) {
				t.Errorf("found %q, want %q", got.faults, c.want)
			}
		})
	}
}

func TestFaultsAreListedUpToALimit(t *testing.T) {
	var c chain
	for range maxFaults + 10 {
		c.add([]byte("garbage"), nil)
	}
	if len(c.faults) != maxFaults || c.sound != 0 {
		t.Fatal(len(c.faults), c.sound)
	}
	text := (&DamagedError{Path: "club.qdb", Faults: c.faults}).Error()
	if want := fmt.Sprintf("and %d more faults", maxFaults-3); len(text) > 500 || !strings.Contains(text, want) {
		t.Errorf("the error reads %q", text)
	}
}

// TestAnOldRecordOfAnotherFileIsTold: records of the older layout know their file by the first of them alone.
func TestAnOldRecordOfAnotherFileIsTold(t *testing.T) {
	for _, c := range []struct {
		before, seed uint32
		faults       int
	}{{7, 7, 0}, {8, 7, 1}} {
		f := frame{layout: seedless, before: c.before, Record: session.Record{Seq: 1, Action: 1, Kind: "k"}}
		key, value, err := f.encode()
		if err != nil {
			t.Fatal(err)
		}
		var checked chain
		if _, ok := checked.add(key, value); !ok {
			t.Fatal(checked.faults)
		}
		if checked.belong(c.seed); len(checked.faults) != c.faults {
			t.Errorf("first before %d, seed %d: %q", c.before, c.seed, checked.faults)
		}
	}
}
