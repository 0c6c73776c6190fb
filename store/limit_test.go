//go:build linux

package store

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"club/quadrille/session"
)

func init() { roles["limit"] = writeUnderLimits }

// limitFileSize lets no file of this process grow beyond n bytes, or be written behind them: each
// write that tries fails with EFBIG, some of them halfway. It is how a disk that is full looks to
// a program, at a place that the test can choose.
func limitFileSize(n uint64) error {
	var l syscall.Rlimit
	if err := syscall.Getrlimit(syscall.RLIMIT_FSIZE, &l); err != nil {
		return err
	}
	l.Cur = min(n, l.Max)
	return syscall.Setrlimit(syscall.RLIMIT_FSIZE, &l)
}

const unlimited = ^uint64(0)

// writeUnderLimits appends actions of which many meet a full disk.
func writeUnderLimits(path string) error {
	const actions = 200
	s, err := Open(path)
	if err != nil {
		return err
	}
	r := rand.New(rand.NewPCG(3, 4))
	failed, landed := 0, 0
	for done := 0; done < actions; {
		info, err := os.Stat(path)
		if err != nil {
			return err
		}
		next := actionAt(s.Last() + 1)
		room := uint64(info.Size()) // some writes to it fail …
		if r.IntN(2) == 0 {
			room *= 4 // … or only those that let it grow
		}
		if err := limitFileSize(r.Uint64N(room)); err != nil {
			return err
		}
		appendErr := s.Append(next)
		if err := limitFileSize(unlimited); err != nil {
			return err
		}
		if appendErr == nil {
			done++
			continue
		}
		failed++
		durable, err := afterFailure(s, next, appendErr)
		if err != nil {
			return err
		}
		if durable {
			landed++
			done++
		}
	}
	fmt.Println("failed", failed, "landed", landed)
	return s.Close()
}

// afterFailure checks that a failed append is told as such, and finds out whether it is durable.
func afterFailure(s *Store, next []session.Record, failure error) (durable bool, err error) {
	var file *FileError
	if !errors.As(failure, &file) || !answered(file.Err, syscall.EFBIG) {
		return false, fmt.Errorf("the failure was told as %w", failure)
	}
	before := next[0].Seq - 1
	if err := s.Reopen(); err != nil {
		return false, fmt.Errorf("after %v: %w", failure, err)
	}
	switch s.Last() {
	case before:
		return false, nil
	case before + uint64(len(next)):
		return true, nil
	}
	return false, fmt.Errorf("of events %d to %d, the file has those up to %d", before+1, next[len(next)-1].Seq, s.Last())
}

func TestFullDiskLosesNothingAndTheDeskGoesOn(t *testing.T) {
	path := filepath.Join(t.TempDir(), "club.qdb")
	c := start(t, "limit", path)
	summary := c.line(t)
	if err := c.cmd.Wait(); err != nil {
		t.Fatal(summary, err)
	}
	var failed, landed int
	if _, err := fmt.Sscanf(summary, "failed %d landed %d", &failed, &landed); err != nil || failed < 50 {
		t.Fatalf("the test met too few full disks: %q, %v", summary, err)
	}
	t.Log(summary)
	v, err := Look(path)
	if err != nil {
		t.Fatal(err)
	}
	sameRecords(t, allOf(t, v), season(int(v.Last())))
	mustBeSound(t, path)
}

func TestFileCutShortUnderTheProgramIsToldNotFatal(t *testing.T) {
	path, recs := nightFile(t, 2000)
	s := mustOpen(t, path)
	if err := os.Truncate(path, 8192); err != nil {
		t.Fatal(err)
	}
	var err error
	for _, err = range s.Records(1) {
		if err != nil {
			break
		}
	}
	if err == nil || !strings.Contains(err.Error(), "cut short") {
		t.Errorf("reading gave %v", err)
	}
	if err := s.Append(actionAt(uint64(len(recs)) + 1)); err == nil {
		t.Error("an append to a file that is gone was acknowledged")
	}
	var damaged *DamagedError
	if err := s.Reopen(); !errors.As(err, &damaged) {
		t.Errorf("reopening gave %v", err)
	}
}
