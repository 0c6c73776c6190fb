package store

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"club/quadrille/session"
)

// writeForEver appends action after action and says after each what is durable. Now and then it
// makes a backup, keeps a snapshot or compacts the file.
func writeForEver(path string) error {
	s, err := Open(path)
	if err != nil {
		return err
	}
	fmt.Println("acked", s.Last())
	for n := 1; ; n++ {
		if err := s.Append(actionAt(s.Last() + 1)); err != nil {
			return err
		}
		fmt.Println("acked", s.Last())
		switch {
		case n%40 == 0:
			err = s.Compact()
		case n%25 == 0:
			to := path + ".backup-" + strconv.FormatUint(s.Last(), 10)
			os.Remove(to)
			err = s.Backup(to)
		case n%10 == 0:
			err = s.KeepSnapshot(session.Snapshot{Seq: s.Last(), State: make([]byte, 50_000)})
		}
		if err != nil {
			return err
		}
	}
}

func TestKilledAtAnyMomentNothingAcknowledgedIsLost(t *testing.T) {
	kills := atLength(30, 500)
	path := filepath.Join(t.TempDir(), "club.qdb")
	r := rand.New(rand.NewPCG(1, 2))
	var want []session.Record
	unacked := 0
	for kill := range kills {
		acked := killWriter(t, path, time.Duration(r.IntN(60_000))*time.Microsecond, uint64(len(want)))
		for uint64(len(want)) < acked {
			want = append(want, actionAt(uint64(len(want))+1)...)
		}
		s := mustOpen(t, path)
		if s.Last() != acked {
			unacked++
			want = append(want, actionAt(acked+1)...)
		}
		if s.Last() != uint64(len(want)) {
			t.Fatalf("kill %d: %d was acknowledged, the file ends with %d", kill, acked, s.Last())
		}
		if kill%10 == 0 || kill == kills-1 {
			sameRecords(t, allOf(t, s), want)
		}
		s.Close()
		mustBeSound(t, path)
	}
	t.Logf("%d kills, %d records, %d actions durable but not acknowledged", kills, len(want), unacked)
	checkBackups(t, path, want)
}

// killWriter starts a writer, kills it some time after its first word, and gives the last number
// that it acknowledged. before is what was durable when it started.
func killWriter(t *testing.T, path string, after time.Duration, before uint64) uint64 {
	t.Helper()
	c := start(t, "write", path)
	acked := before
	take := func(line string) {
		n, err := strconv.ParseUint(strings.TrimPrefix(line, "acked "), 10, 64)
		if err != nil || n < acked {
			t.Fatalf("the writer said %q after %d", line, acked)
		}
		acked = n
	}
	take(c.line(t))
	timer := time.AfterFunc(after, func() { c.cmd.Process.Kill() })
	defer timer.Stop()
	for c.lines.Scan() {
		take(c.lines.Text())
	}
	c.cmd.Wait()
	return acked
}

// checkBackups makes sure that every finished backup is whole.
func checkBackups(t *testing.T, path string, want []session.Record) {
	t.Helper()
	backups, err := filepath.Glob(path + ".backup-*")
	if err != nil || len(backups) == 0 {
		t.Fatalf("no backups were made: %v", err)
	}
	for _, b := range slices.Sorted(slices.Values(backups)) {
		v, err := Look(b)
		if err != nil {
			t.Fatal(err)
		}
		sameRecords(t, allOf(t, v), want[:v.Last()])
	}
}
