package jsontext_test

import (
	"encoding/json"
	"strings"
	"testing"
	"time"

	"club/quadrille/session/jsontext"
)

type Inner struct {
	Court string `json:"court"`
	Won   word   `json:"won"`
}

type word uint8

func (w *word) UnmarshalText([]byte) error { return nil }

type outer struct {
	Inner
	Games []Inner   `json:"games"`
	At    time.Time `json:"at"`
	Seed  uint64    `json:"seed"`
	Round int       `json:"round"`
	Share float64   `json:"share"`
	Done  bool      `json:"done"`
	First struct {
		Inner Inner `json:"inner"`
	} `json:"first"`
}

func TestWhyIsInWords(t *testing.T) {
	for text, want := range map[string]string{
		`{`:                                "it ends in the middle",
		`{"games":[`:                       "it ends in the middle",
		`{x`:                               "character 2 cannot stand there",
		`[]`:                               "the whole is a list, where an object belongs",
		`{"games":3}`:                      "games is a number, where a list belongs",
		`{"games":[{"court":1}]}`:          "games.court is a number, where a text belongs",
		`{"games":[{"won":1}]}`:            "games.won is a number, where a word belongs",
		`{"court":1}`:                      "court is a number, where a text belongs",
		`{"at":"yesterday"}`:               "yesterday is no time such as 2026-01-08T18:50:00Z",
		`{"seed":-1}`:                      "seed is the number -1, where a whole number from 0 belongs",
		`{"round":1.5}`:                    "round is the number 1.5, where a whole number belongs",
		`{"share":"x"}`:                    "share is a text, where a number belongs",
		`{"done":1}`:                       "done is a number, where true or false belongs",
		`{"first":{"inner":{"court":{}}}}`: "first.inner.court is an object, where a text belongs",
	} {
		var v outer
		err := json.Unmarshal([]byte(text), &v)
		if err == nil {
			t.Fatalf("%s is fine", text)
		}
		if got := jsontext.Why(err); got != want {
			t.Errorf("%s: %q, want %q", text, got, want)
		}
	}
}

// Whatever stands in a text, no word of Go is in the reason.
func FuzzWhy(f *testing.F) {
	for _, seed := range []string{"{", `{"at":3}`, `{"games":[{"court":[]}]}`, "\x00", `{"at":"2026"}`, `{"seed":1e400}`} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		var v outer
		err := json.Unmarshal([]byte(text), &v)
		if err == nil {
			return
		}
		got := jsontext.Why(err)
		for _, library := range []string{"json:", "unmarshal", "Go ", "struct", "parsing time", "outer", "reflect"} {
			if strings.Contains(got, library) && !strings.Contains(text, library) {
				t.Errorf("%q: %q", text, got)
			}
		}
	})
}
