package store

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"club/quadrille/session"
)

// TestIdentitiesAreRandom: version 4 and variant 1 of RFC 9562, section 5.4, and all other digits drawn.
func TestIdentitiesAreRandom(t *testing.T) {
	digits := make([]map[byte]bool, 36)
	for range 400 {
		u := newUUID().String()
		for i := range u {
			if digits[i] == nil {
				digits[i] = map[byte]bool{}
			}
			digits[i][u[i]] = true
		}
	}
	for i, d := range digits {
		want := 16 // of 400 draws each digit is missed with a chance of 6·10^-12
		switch i {
		case 8, 13, 18, 23, 14:
			want = 1
		case 19:
			want = 4
		}
		if len(d) != want {
			t.Errorf("place %d has %d values, want %d", i, len(d), want)
		}
	}
	if !digits[14]['4'] || !digits[19]['8'] || !digits[19]['b'] {
		t.Errorf("version %v, variant %v", digits[14], digits[19])
	}
}

// TestFewBackups: the one that was just made stays, however few are asked for, and else the newest.
func TestFewBackups(t *testing.T) {
	for _, most := range []int{-1, 0, 1, 2, 3} {
		dir := t.TempDir()
		s := mustOpen(t, filepath.Join(t.TempDir(), "club.qdb"))
		var made []string
		for i := range 4 {
			appendActions(t, s, actionAt(s.Last()+1))
			to, err := s.Keep(dir, most, time.Date(2026, 11, 25, 19, i, 0, 0, time.UTC))
			if err != nil {
				t.Fatal(err)
			}
			made = append(made, to)
		}
		kept, err := Kept(s.Path(), dir)
		if err != nil || !slices.Equal(kept, made[len(made)-max(1, most):]) {
			t.Errorf("of at most %d are kept %v, %v", most, kept, err)
		}
	}
}

// TestADisplacedFileIsToldByItsKind.
func TestADisplacedFileIsToldByItsKind(t *testing.T) {
	err := error(&DisplacedError{Path: "club.qdb", Removed: true})
	if !errors.Is(err, session.ErrDisplaced) || errors.Is(err, os.ErrNotExist) {
		t.Error("a removed file is not told as displaced")
	}
	for _, c := range []struct {
		err  DisplacedError
		want string
		gone bool
	}{
		{DisplacedError{Path: "c", Removed: true}, "c: the club file was removed", true},
		{DisplacedError{Path: "c"}, "c: the club file was moved away", false},
		{DisplacedError{Path: "c", Now: "d"}, "c: the club file was moved to d", false},
		{DisplacedError{Path: "c", Now: "d", Taken: true}, "c: another file stands there now, the club file was moved to d", false},
	} {
		if c.err.Error() != c.want || c.err.Gone() != c.gone {
			t.Errorf("%q, gone %v, want %q", c.err.Error(), c.err.Gone(), c.want)
		}
	}
}

// TestRecordsOfAnotherFileAreToldOnce, by the seed that they carry or, where they have none, by what the first follows.
func TestRecordsOfAnotherFileAreToldOnce(t *testing.T) {
	for _, c := range []struct {
		name     string
		hasFirst bool
		first    uint32
		seeds    map[uint32]uint64
		want     []string
	}{
		{"ours", true, 9, map[uint32]uint64{9: 1}, nil},
		{"all of another", true, 7, map[uint32]uint64{7: 1}, []string{"event 1 belongs to another file"}},
		{"a later one", true, 9, map[uint32]uint64{9: 1, 7: 5}, []string{"event 5 belongs to another file"}},
		{"a later one and the first of an older layout", true, 7, map[uint32]uint64{8: 5}, []string{"event 5 belongs to another file", "event 1 belongs to another file"}},
		{"of an older layout", true, 7, nil, []string{"event 1 belongs to another file"}},
		{"the first and a later one", true, 7, map[uint32]uint64{7: 1, 8: 3}, []string{"event 1 belongs to another file", "event 3 belongs to another file"}},
		{"without its first", false, 0, map[uint32]uint64{9: 4}, nil},
	} {
		chain := chain{hasFirst: c.hasFirst, first: c.first, seeds: c.seeds}
		if chain.belong(9); !slices.Equal(chain.faults, c.want) {
			t.Errorf("%s: %q, want %q", c.name, chain.faults, c.want)
		}
	}
}

// TestAFileThatCannotBeMadeLeavesNothing beside the place where it should be.
func TestAFileThatCannotBeMadeLeavesNothing(t *testing.T) {
	dir := t.TempDir()
	var frames []frame
	for _, r := range season(2) {
		frames = append(frames, frame{Record: r})
	}
	frames[1].Seq = 5
	if _, err := makeFilled(filepath.Join(dir, "club.qdb"), newHead(""), frames); err == nil || !strings.Contains(err.Error(), "club.qdb") {
		t.Fatalf("a file with a gap was made: %v", err)
	}
	if files, err := os.ReadDir(dir); err != nil || len(files) != 0 {
		t.Errorf("left are %v, %v", files, err)
	}
}

// TestAPassingFileThatVanishedIsNotHeld, nor one that nobody locks.
func TestAPassingFileThatVanishedIsNotHeld(t *testing.T) {
	name := filepath.Join(t.TempDir(), ".club.qdb.new-7")
	if held(name, "") {
		t.Error("a file that is gone is held")
	}
	if err := os.WriteFile(name, []byte("half"), 0o600); err != nil {
		t.Fatal(err)
	}
	if held(name, "") {
		t.Error("a file that nobody locks is held")
	}
}

// TestTimeNeverWentBackInTheOlderLayout: behind a gap comes what is not older, where the layout says no more.
func TestTimeNeverWentBackInTheOlderLayout(t *testing.T) {
	at := time.Date(2026, 11, 25, 19, 0, 0, 0, time.UTC)
	one := func(seq uint64, minute int, layout byte) *run {
		f := frame{layout: layout}
		f.Seq, f.Time = seq, at.Add(time.Duration(minute)*time.Minute)
		return &run{frames: []frame{f}}
	}
	for _, c := range []struct {
		name   string
		before *run
		r      *run
		want   bool
	}{
		{"later", one(3, 0, seedless), one(6, 5, seedless), true},
		{"at the same time", one(3, 5, seedless), one(6, 5, seedless), true},
		{"earlier", one(3, 5, seedless), one(6, 0, seedless), false},
		{"earlier, with a seed", one(3, 5, frameLayout), one(6, 0, frameLayout), true},
		{"far behind", one(3, 0, frameLayout), one(4+maxGap, 5, frameLayout), false},
		{"just near enough", one(3, 0, frameLayout), one(3+maxGap, 5, frameLayout), true},
	} {
		if got := c.r.mayFollow(c.before); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}
