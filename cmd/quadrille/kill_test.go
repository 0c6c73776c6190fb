package main

import (
	"bufio"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"strconv"
	"testing"
	"time"

	"club/quadrille/session"
	"club/quadrille/store"
)

// nightArgs is a simulated night to be cut off: the 18 people of the roster with their late ones,
// their couple and their early goer. One court scores rally by rally, which makes many writes.
func nightArgs(flow, file string, more ...string) []string {
	return append([]string{
		"simulate", "--roster", "../../testdata/roster18.csv", "--courts", "4", "--rounds", "3", "--seed", "3",
		"--flow", flow, "--by-rally", "1", "--ack", "--data", file,
	}, more...)
}

// The process is killed at 50 random moments (30 with -short, 500 with QUADRILLE_LONG=1), some of
// them in the middle of a write. Whatever it acknowledged must be there, the file must be sound,
// and the night must go on to the same end as one that was never cut off. Most of the nights are
// rolling, because these spend nearly all of their time on writing.
func TestKilledNightLosesNothing(t *testing.T) {
	for flow, kills := range map[string]int{"rolling": 45, "rounds": 5} {
		switch {
		case os.Getenv("QUADRILLE_LONG") == "1":
			kills *= 10
		case testing.Short():
			kills = kills * 3 / 5
		}
		t.Run(flow, func(t *testing.T) { killNights(t, flow, kills) })
	}
}

func killNights(t *testing.T, flow string, kills int) {
	whole := filepath.Join(t.TempDir(), "whole.qdb")
	acks := acknowledged(t, nightArgs(flow, whole), -1, 0)
	if len(acks) < 50 {
		t.Fatalf("the night has only %d actions", len(acks))
	}
	want := records(t, whole)
	dice := rand.New(rand.NewPCG(1, 2))
	inFlight := 0
	for i := range kills {
		after, delay := dice.IntN(len(acks)), time.Duration(dice.IntN(3000))*time.Microsecond
		t.Run(fmt.Sprintf("%d after %d actions", i, after), func(t *testing.T) {
			file := filepath.Join(t.TempDir(), "night.qdb")
			var last uint64
			if seen := acknowledged(t, nightArgs(flow, file), after, delay); len(seen) > 0 {
				last = seen[len(seen)-1]
			}
			switch got := uint64(len(records(t, file))); {
			case got < last:
				t.Fatalf("record %d was acknowledged, the file has %d", last, got)
			case got > last:
				inFlight++
			}
			acknowledged(t, nightArgs(flow, file, "--resume"), -1, 0)
			if got := records(t, file); !reflect.DeepEqual(got, want) {
				t.Fatalf("the resumed night has %d records, not the %d of the whole one, or others", len(got), len(want))
			}
		})
	}
	t.Logf("%d of %d kills fell between a write and its acknowledgement", inFlight, kills)
}

// acknowledged runs a simulation and returns the numbers that it acknowledged. After so many of
// them and a delay it is killed; never if after is negative.
func acknowledged(t *testing.T, args []string, after int, delay time.Duration) []uint64 {
	t.Helper()
	cmd := command(t, args...)
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	killed := after == 0
	kill := func() {
		killed = true
		time.AfterFunc(delay, func() { _ = cmd.Process.Kill() }) // it may have ended by itself
	}
	if killed {
		kill()
	}
	var acks []uint64
	for lines := bufio.NewScanner(out); lines.Scan(); {
		last, err := strconv.ParseUint(lines.Text(), 10, 64)
		if err != nil {
			t.Fatal(err)
		}
		if acks = append(acks, last); len(acks) == after {
			kill()
		}
	}
	if err := cmd.Wait(); err != nil && !killed {
		t.Fatal(err)
	}
	return acks
}

// records reads a file that must be sound; one that was not made yet has none.
func records(t *testing.T, file string) []session.Record {
	t.Helper()
	if mustExist(file) != nil {
		return nil
	}
	report, err := store.Check(file)
	if err != nil || !report.Sound() {
		t.Fatalf("check: %v %v", err, report.Faults)
	}
	view, err := store.Look(file)
	if err != nil {
		t.Fatal(err)
	}
	var out []session.Record
	for r, err := range view.Records(1) {
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, r)
	}
	return out
}
