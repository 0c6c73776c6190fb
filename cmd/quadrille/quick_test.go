//go:build !windows

package main

import (
	"os"
	"os/exec"
	"testing"
	"time"
)

// The figures of a person who waits, in wall time: benchmarks show them, no test asserts them.
func BenchmarkFirstFrame(b *testing.B) {
	bin, path := build(b), fullHall(b, 4)
	for b.Loop() {
		desk := bin.open(b, 80, 24, nil, "--data", path).Shows("Full hall", "q quit")
		b.StopTimer()
		desk.Quit("q")
		b.StartTimer()
	}
}

func BenchmarkVersion(b *testing.B) {
	bin := build(b)
	for b.Loop() {
		if err := exec.Command(string(bin), "--version").Run(); err != nil {
			b.Fatal(err)
		}
	}
}

// Processor time hardly depends on what else a machine does. The limits are many times what is
// needed, and even so they are asserted only on request, with QUADRILLE_LONG=1.
func TestCommandsTakeLittleProcessorTime(t *testing.T) {
	if os.Getenv("QUADRILLE_LONG") != "1" {
		t.Skip("measures only with QUADRILLE_LONG=1")
	}
	bin := build(t)
	used := func(s *os.ProcessState) time.Duration { return s.UserTime() + s.SystemTime() }
	check := func(what string, took, limit time.Duration) {
		t.Logf("%s takes %v (limit %v)", what, took, limit)
		if took > limit {
			t.Errorf("%s takes %v of processor time, more than %v", what, took, limit)
		}
	}
	for _, c := range []struct {
		limit time.Duration
		args  []string
	}{
		{250 * time.Millisecond, []string{"--version"}},
		{2 * time.Second, []string{"plan", "--players", "24", "--courts", "6", "--rounds", "8"}},
		{2 * time.Second, []string{"plan", "--players", "48", "--courts", "12", "--rounds", "16"}},
	} {
		cmd := exec.Command(string(bin), c.args...)
		if err := cmd.Run(); err != nil {
			t.Fatal(err)
		}
		check(c.args[0], used(cmd.ProcessState), c.limit)
	}
	desk := bin.open(t, 80, 24, nil, "--data", fullHall(t, 4)).Shows("Full hall", "q quit")
	desk.Quit("q")
	check("opening and leaving the desk", used(desk.cmd.ProcessState), time.Second)
}
