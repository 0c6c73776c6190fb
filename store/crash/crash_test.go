package crash

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

const workVar = "CRASH_TEST_WORK"

func TestMain(m *testing.M) {
	if dir := os.Getenv(workVar); dir != "" {
		if err := Work(dir, os.Stdout); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		os.Exit(0)
	}
	os.Exit(m.Run())
}

// recorded is the trace of the work, and the folder that it left.
func recorded(t *testing.T) (*Trace, string) {
	t.Helper()
	dir := t.TempDir()
	cmd := exec.Command(os.Args[0])
	cmd.Env, cmd.Stderr = append(os.Environ(), workVar+"="+dir), os.Stderr
	trace, err := Record(cmd, dir)
	if errors.Is(err, ErrCannotRecord) {
		t.Skip("this test needs a system that lets it watch its own programs:", err)
	}
	if err != nil {
		t.Fatal(err)
	}
	return trace, dir
}

// A night is recorded, and 200 states (2,000 with QUADRILLE_LONG=1) that a crash could leave are opened:
// nothing that was acknowledged before is lost, no action is there by halves, and no backup is broken.
func TestNoCrashLosesWhatWasAcknowledged(t *testing.T) {
	states := 200
	if os.Getenv("QUADRILLE_LONG") == "1" {
		states = 2000
	}
	trace, dir := recorded(t)
	all, err := Records(dir)
	if err != nil {
		t.Fatal(err)
	}
	r, err := trace.Replay(states, 1, all, t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%s; %s", trace, r)
	if r.Ahead == 0 || r.Backups == 0 || trace.Acked(len(trace.Ops)) != uint64(len(all)) {
		t.Errorf("the trace has not all of the work: %s, %s", trace, r)
	}
}

// The last state of a trace is what the program really left, byte for byte.
func TestTheRecordingIsWhatTheProgramLeft(t *testing.T) {
	trace, dir := recorded(t)
	replayed := t.TempDir()
	if err := trace.State(len(trace.Ops), Kept, nil, replayed); err != nil {
		t.Fatal(err)
	}
	for _, folder := range []string{".", backupName} {
		want, err := os.ReadDir(filepath.Join(dir, folder))
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range want {
			if f.IsDir() {
				continue
			}
			a, errA := os.ReadFile(filepath.Join(dir, folder, f.Name()))
			b, errB := os.ReadFile(filepath.Join(replayed, folder, f.Name()))
			if errA != nil || errB != nil || string(a) != string(b) {
				t.Errorf("%s differs: %d and %d bytes (%v, %v)", f.Name(), len(a), len(b), errA, errB)
			}
		}
	}
}

// A program that acknowledges before it flushes is found out: the same work with its flushes of the file
// left out of the trace loses something.
func TestAMissingFlushIsFoundOut(t *testing.T) {
	trace, dir := recorded(t)
	all, err := Records(dir)
	if err != nil {
		t.Fatal(err)
	}
	var careless Trace
	for _, op := range trace.Ops {
		if op.Kind == Sync {
			op.Covers = 0
		}
		careless.Ops = append(careless.Ops, op)
	}
	if r, err := careless.Replay(100, 1, all, t.TempDir()); err == nil {
		t.Errorf("without flushes nothing is lost: %s", r)
	}
}

// What is flushed is there whatever becomes of the rest, names too.
func TestAFlushHoldsWhatCameBeforeIt(t *testing.T) {
	trace := &Trace{Ops: []Op{
		{Kind: Create, File: 1, Path: ".new"},
		{Kind: Write, File: 1, Data: []byte("first")},
		{Kind: Sync, File: 1, Covers: 2},
		{Kind: Write, File: 1, Offset: 5, Data: []byte("second")},
		{Kind: Rename, Path: ".new", To: "club"},
		{Kind: SyncDir, Path: ".", Covers: 5},
		{Kind: Unlink, Path: "club"},
	}}
	for _, c := range []struct {
		at   int
		fate Fate
		name string
		want string
	}{
		{4, Kept, ".new", "firstsecond"},
		{6, Dropped, "club", "first"},
		{7, Dropped, "club", "first"},
		{7, Kept, "club", "gone"},
	} {
		dir := t.TempDir()
		if err := trace.State(c.at, c.fate, rand.New(rand.NewPCG(1, 1)), dir); err != nil {
			t.Fatal(err)
		}
		got, err := os.ReadFile(filepath.Join(dir, c.name))
		if c.want == "gone" && errors.Is(err, os.ErrNotExist) {
			continue
		}
		if err != nil || !strings.HasPrefix(string(got), c.want) || c.fate == Dropped && string(got) != c.want {
			t.Errorf("before operation %d: %q, %v, want %q", c.at, got, err, c.want)
		}
	}
}
