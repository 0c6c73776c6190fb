//go:build !windows

package main

import (
	"fmt"
	"net"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// away is what a board says while no desk is open.
const away = "The desk is not open."

// TestBoardsOnTerminals: two boards see what is entered at the desk; one is killed, which the desk does not mind,
// and the other waits for the desk and follows it again.
func TestBoardsOnTerminals(t *testing.T) {
	bin, path := build(t), fullHall(t, 2)
	small := bin.open(t, 40, 12, nil, "board", "--data", path).Shows("Open quadrille on")
	desk := bin.open(t, 80, 24, nil, "--data", path).Shows("Full hall", "q quit")
	usual, wide := bin.open(t, 80, 24, nil, "board", "--data", path), bin.open(t, 213, 60, nil, "board", "--data", path)
	small.Shows("GO NOW")
	for court, points := range []int{7, 3} {
		desk.Press("c").Type("g").Type(fmt.Sprint(court + 1)).Type(fmt.Sprintf("11 %d\r", points))
		score := fmt.Sprintf("over 11-%d", points)
		desk.Shows(fmt.Sprintf("Saved: court %d: 11-%d", court+1, points))
		wide.Shows(score)
		usual.Shows(score)
		small.Shows(score)
	}
	if err := wide.cmd.Process.Kill(); err != nil {
		t.Fatal(err)
	}
	if code := desk.Shows("Next:").Quit("q"); code != exitFine {
		t.Errorf("the desk ends with %d", code)
	}
	usual.Shows(away)
	small.Shows(away)
	again := bin.open(t, 80, 24, nil, "--data", path).Shows("Full hall", "q quit")
	usual.Hides(away)
	again.Type("!").Shows("Hold play: why?").Type("h")
	usual.Shows("Stay off the courts until the organiser says so.")
	again.Type("!").Shows("stay on hold").Type("y").Hides("PLAY HELD")
	usual.Hides("Stay off the courts")
	again.Type("M").Shows("Message to the hall").Type("chess at 9").Shows("chess at 9").Press("enter").Shows("Saved: message: chess at 9")
	small.Shows("chess at 9")
	for _, s := range []*terminal{again, usual} {
		if code := s.Quit("q"); code != exitFine {
			t.Errorf("a screen ends with %d", code)
		}
	}
	if code := small.Signal(os.Interrupt).Code(); code != exitFine {
		t.Errorf("a board that is interrupted ends with %d", code)
	}
	if left, err := filepath.Glob(filepath.Join(filepath.Dir(path), "*.sock*")); err != nil || len(left) > 0 {
		t.Errorf("the desk leaves %v, %v", left, err)
	}
}

// TestBoardsFollowADeskThatWasKilled, which leaves its socket behind; and a board that is stopped for a while keeps
// nobody waiting, and then shows what is newest.
func TestBoardsFollowADeskThatWasKilled(t *testing.T) {
	bin, path := build(t), fullHall(t, 2)
	board := bin.open(t, 80, 24, nil, "board", "--data", path).Shows("Open quadrille on")
	desk := bin.open(t, 80, 24, nil, "--data", path).Shows("Full hall", "q quit")
	board.Shows("GO NOW")
	if err := desk.cmd.Process.Kill(); err != nil {
		t.Fatal(err)
	}
	board.Shows(away)
	<-desk.exited
	if _, err := os.Lstat(path + ".sock"); err != nil {
		t.Fatal(err)
	}
	again := bin.open(t, 80, 24, nil, "--data", path).Shows("Full hall", "q quit")
	board.Hides(away).Signal(syscall.SIGSTOP)
	again.Type("11 7\r").Shows("Saved: court 1: 11-7").Press("home").Type("11 4\r").Shows("Saved: court 1: corrected to 11-4")
	board.Signal(syscall.SIGCONT).Shows("over 11-4")
}

// TestTheDeskMindsNobodyAtTheSocket: a million random bytes and a thousand connections change nothing at the desk,
// neither on its screen nor in the club file, and a board follows afterwards.
func TestTheDeskMindsNobodyAtTheSocket(t *testing.T) {
	bin, path := build(t), fullHall(t, 4)
	desk := bin.open(t, 80, 24, nil, "--data", path).Shows("Full hall", "q quit")
	desk.quiet()
	before := desk.Screen()
	random, x := make([]byte, 1_000_000), uint64(2463534242)
	for i := range random {
		x ^= x << 13
		x ^= x >> 7
		x ^= x << 17
		random[i] = byte(x)
	}
	made := 0
	for i := range 1000 {
		c, err := net.Dial("unix", path+".sock")
		if err != nil {
			continue // the desk takes its time with so many
		}
		made++
		_ = c.SetDeadline(time.Now().Add(time.Second))
		_, _ = c.Write(random[1000*i : 1000*(i+1)])
		if i%2 == 0 {
			_ = c.Close()
			continue
		}
		t.Cleanup(func() { _ = c.Close() })
	}
	if made < 500 {
		t.Errorf("only %d connections were made", made)
	}
	bin.open(t, 80, 24, nil, "board", "--data", path).Shows("GO NOW")
	desk.quiet()
	if after := desk.Screen(); clockless(after) != clockless(before) {
		t.Errorf("the desk shows\n%s\nand did\n%s", after, before)
	}
	desk.Type("11 7\r").Shows("Saved: court 1: 11-7")
}

// clockless is a screen without its first line, which has the time of day, and without minutes.
func clockless(screen string) string {
	_, rest, _ := strings.Cut(screen, "\n")
	return strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' || r == '━' || r == '╌' {
			return -1
		}
		return r
	}, rest)
}
