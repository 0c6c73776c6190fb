package main

import (
	"strings"
	"testing"
	"time"
)

func TestRowsCompareLikeWithLike(t *testing.T) {
	ours := effort{wall: 4 * time.Millisecond, cpu: 2500 * time.Microsecond, search: 500 * time.Microsecond}
	theirs := effort{wall: 2 * time.Second, cpu: time.Second, search: 50 * time.Millisecond}
	for _, c := range []struct {
		name   string
		solved bool
		want   string
	}{
		{"solved", true, "| 8/2/7 | whist, plain | 2 s | 1 s | 50 ms | 4 ms | 2.5 ms | 0.5 ms | 500 | 400 | 100 |\n"},
		{"not solved", false, "| 8/2/7 | whist, plain | > 2 s | > 1 s | > 50 ms | 4 ms | 2.5 ms | 0.5 ms | > 500 | > 400 | > 100 |\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var out strings.Builder
			writeRow(&out, night{8, 2, 7}, attempt{method{"whist", false, 1}, c.solved, theirs}, ours)
			if out.String() != c.want {
				t.Errorf("got  %swant %s", out.String(), c.want)
			}
		})
	}
}

func TestBestAttempt(t *testing.T) {
	fast, slow := effort{cpu: time.Second}, effort{cpu: time.Minute}
	for _, c := range []struct {
		name string
		a, b attempt
		want bool
	}{
		{"solved beats unsolved", attempt{solved: true, effort: slow}, attempt{effort: fast}, true},
		{"unsolved never beats solved", attempt{effort: fast}, attempt{solved: true, effort: slow}, false},
		{"less work beats more", attempt{solved: true, effort: fast}, attempt{solved: true, effort: slow}, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := c.a.beats(c.b); got != c.want {
				t.Errorf("got %t", got)
			}
		})
	}
}

func TestNightsAreRead(t *testing.T) {
	for _, c := range []struct {
		text string
		want night
		ok   bool
	}{
		{"20/5/5", night{20, 5, 5}, true},
		{"8/2/7", night{8, 2, 7}, true},
		{"20/5", night{}, false},
		{"20/5/5/1", night{}, false},
		{"21/5/5", night{}, false},
		{"20/5/0", night{}, false},
		{"20/5/20", night{}, false},
		{"people", night{}, false},
	} {
		t.Run(c.text, func(t *testing.T) {
			got, err := parseNight(c.text)
			if got != c.want || (err == nil) != c.ok {
				t.Errorf("got %v, %v", got, err)
			}
		})
	}
}
