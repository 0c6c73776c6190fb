package main

import (
	"bytes"
	"errors"
	"os"
	"reflect"
	"strings"
	"testing"
	"time"
)

func stored(t testing.TB, file string) string {
	t.Helper()
	text, err := os.ReadFile("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func TestStoredAnswersAreJudged(t *testing.T) {
	for _, c := range []struct {
		file string
		night
		want error
	}{
		{"golfer_set_20_5_5.txt", night{20, 5, 5}, nil},
		{"whist_8_2_7.txt", night{8, 2, 7}, nil},
		{"golfer_int_32_8_9.txt", night{32, 8, 9}, errNoAnswer},
		{"golfer_int_8_2_2.txt", night{8, 2, 2}, errImpossible},
	} {
		t.Run(c.file, func(t *testing.T) {
			if err := c.check(stored(t, c.file)); !errors.Is(err, c.want) {
				t.Errorf("got %v, want %v", err, c.want)
			}
		})
	}
}

func TestWrongAnswersAreRefused(t *testing.T) {
	whist := stored(t, "whist_8_2_7.txt")
	for _, c := range []struct{ name, old, new, want string }{
		{"a round is missing", "game 7 ", "gone 7 ", "6 rounds where 7 were asked"},
		{"a game is missing", "game 3 2 ", "gone 3 2 ", "neither plays nor sits out"},
		{"somebody plays twice", "game 3 2 2 3 6 8", "game 3 2 1 3 6 8", "already plays on court 1"},
		{"a court is used twice", "game 3 2 ", "game 3 1 ", "two games are on this court"},
		{"a person is unknown", "game 3 2 2 3 6 8", "game 3 2 9 3 6 8", "not in the list"},
		{"teams are split otherwise", "game 3 2 2 3 6 8", "game 3 2 2 6 3 8", "above the bound"},
		{"a team is short", "game 3 2 2 3 6 8", "game 3 2 2 3 6", "is no game"},
		{"a game has five", "game 3 2 2 3 6 8", "game 3 2 2 3 6 8 1", "is no game"},
		{"a number is too large", "game 3 2 2 3 6 8", "game 9999 2 2 3 6 8", "is not between"},
		{"counting begins at 0", "game 3 2 2 3 6 8", "game 3 0 2 3 6 8", "is not between"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if !strings.Contains(whist, c.old) {
				t.Fatalf("the stored answer has no %q", c.old)
			}
			err := night{8, 2, 7}.check(strings.ReplaceAll(whist, c.old, c.new))
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("got %v, want an error with %q", err, c.want)
			}
		})
	}
}

// TestQuadrilleSpeaksTheModelsForm plans each compared night and judges what is printed, as the contest
// does.
func TestQuadrilleSpeaksTheModelsForm(t *testing.T) {
	for _, n := range nightsToCompare {
		t.Run(n.String(), func(t *testing.T) {
			var out, notes bytes.Buffer
			if err := run(t.Context(), []string{"-plan", n.String()}, &out, &notes); err != nil {
				t.Fatal(err)
			}
			if err := n.check(out.String()); err != nil {
				t.Error(err)
			}
			if searchTime(out.String()) <= 0 {
				t.Error("the time of the search is missing")
			}
		})
	}
}

func TestSearchTimeLeavesTranslationOut(t *testing.T) {
	const want = 5_495*time.Microsecond + 11_526*time.Microsecond
	if got := searchTime(stored(t, "whist_8_2_7.txt")); got.Round(time.Microsecond) != want {
		t.Errorf("got %v, want %v", got, want)
	}
}

func FuzzReadAnswer(f *testing.F) {
	for _, file := range []string{"golfer_set_20_5_5.txt", "whist_8_2_7.txt", "golfer_int_8_2_2.txt"} {
		f.Add(stored(f, file))
	}
	f.Add("game 1 1 1 2 3 4\ngame 3 1 1 3 2 4")
	f.Fuzz(func(t *testing.T, text string) {
		rounds, err := readAnswer(strings.NewReader(text))
		if err != nil {
			return
		}
		var out strings.Builder
		if err := writeAnswer(&out, rounds, time.Second); err != nil {
			t.Fatal(err)
		}
		again, err := readAnswer(strings.NewReader(out.String()))
		if err != nil {
			t.Fatalf("what was read is written as %q: %v", out.String(), err)
		}
		if !reflect.DeepEqual(rounds, again) {
			t.Errorf("read %v, then %v", rounds, again)
		}
	})
}
