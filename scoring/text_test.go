package scoring_test

import (
	"encoding/json"
	"strings"
	"testing"

	"club/quadrille/scoring"
)

func TestRulesInWords(t *testing.T) {
	for want, r := range map[string]scoring.Rules{
		"side-out to 11, win by 2":         {To: 11, WinBy: 2},
		"side-out singles to 15, win by 1": {Singles: true, To: 15, WinBy: 1},
		"rally to 21, win by 2, cap 23, last point on serve, 20 minutes": {
			Scoring: scoring.RallyScoring, To: 21, WinBy: 2, Cap: 23, WinOnServe: true, Minutes: 20,
		},
		"side-out to 11, win by 2, starting at 3-0": {To: 11, WinBy: 2, StartA: 3},
	} {
		if err := r.Validate(); err != nil {
			t.Errorf("%v: %v", r, err)
		}
		if r.String() != want {
			t.Errorf("%+v is %q, want %q", r, r, want)
		}
		data, err := json.Marshal(r)
		var back scoring.Rules
		if err != nil || json.Unmarshal(data, &back) != nil || back != r {
			t.Errorf("%v is written %s and read as %v", r, data, back)
		}
	}
}

func TestRulesThatCannotBePlayed(t *testing.T) {
	for name, r := range map[string]scoring.Rules{
		"zero value":             {},
		"no target":              {WinBy: 2},
		"target too high":        {To: 100, WinBy: 2},
		"no lead":                {To: 11},
		"lead of three":          {To: 11, WinBy: 3},
		"cap below the target":   {To: 11, WinBy: 2, Cap: 10},
		"cap too high":           {To: 11, WinBy: 2, Cap: 100},
		"side-out won on serve":  {To: 11, WinBy: 2, WinOnServe: true},
		"negative time":          {To: 11, WinBy: 2, Minutes: -1},
		"A starts at the target": {To: 11, WinBy: 2, StartA: 11},
		"B starts at the target": {To: 11, WinBy: 2, StartB: 11},
		"A starts below nothing": {To: 11, WinBy: 2, StartA: -1},
		"B starts below nothing": {To: 11, WinBy: 2, StartB: -1},
		"unknown scoring":        {Scoring: 7, To: 11, WinBy: 2},
	} {
		if err := r.Validate(); err == nil {
			t.Errorf("%s: accepted", name)
		}
		if _, err := r.Final(11, 7, scoring.Played); err == nil {
			t.Errorf("%s: a final score is accepted", name)
		}
		if _, err := (scoring.Sheet{Rules: r}).State(); err == nil {
			t.Errorf("%s: a sheet is accepted", name)
		}
	}
}

func TestRallyStrings(t *testing.T) {
	got, err := scoring.ParseRallies(" aB\n\tb A")
	if err != nil || scoring.FormatRallies(got) != "abba" {
		t.Errorf("read as %v, %v", got, err)
	}
	_, err = scoring.ParseRallies("ab bx")
	if err == nil || !strings.Contains(err.Error(), "character 5, after 3 rallies") {
		t.Errorf("the error is %v", err)
	}
}

// textual is a value with a text form, through a pointer to it.
type textual interface {
	MarshalText() ([]byte, error)
	UnmarshalText([]byte) error
}

func TestNamesAreReadAsTheyAreWritten(t *testing.T) {
	sides, boxes := []scoring.Team{scoring.A, scoring.B}, []scoring.Box{scoring.Right, scoring.Left}
	for i := range sides {
		checkText(t, &sides[i], new(scoring.Team))
		checkText(t, &boxes[i], new(scoring.Box))
		for index := range uint8(2) {
			checkText(t, &scoring.Seat{Team: sides[i], Index: index}, new(scoring.Seat))
		}
	}
	for _, s := range []scoring.Scoring{scoring.SideOut, scoring.RallyScoring} {
		checkText(t, &s, new(scoring.Scoring))
	}
	for _, f := range append(scoring.Faults(), scoring.None) {
		checkText(t, &f, new(scoring.Fault))
	}
	for h := scoring.Played; h <= scoring.Void; h++ {
		checkText(t, &h, new(scoring.How))
	}
	for k := scoring.RallyWon; k <= scoring.Remark; k++ {
		checkText(t, &k, new(scoring.Kind))
	}
}

func checkText(t *testing.T, value, back textual) {
	t.Helper()
	text, err := value.MarshalText()
	if err != nil {
		t.Fatal(err)
	}
	if err := back.UnmarshalText(text); err != nil {
		t.Fatal(err)
	}
	if again, _ := back.MarshalText(); string(again) != string(text) {
		t.Errorf("%q is read as %q", text, again)
	}
	if err := back.UnmarshalText([]byte("nonsense")); err == nil || !strings.Contains(err.Error(), "nonsense") {
		t.Errorf("%T reads nonsense with error %v", back, err)
	}
}

func TestValuesOutOfRangeAreNotWritten(t *testing.T) {
	for _, v := range []interface{ MarshalText() ([]byte, error) }{
		scoring.Team(2), scoring.Seat{Index: 2}, scoring.Fault(99), scoring.How(0), scoring.How(9), scoring.Kind(0), scoring.Kind(99),
	} {
		if text, err := v.MarshalText(); err == nil {
			t.Errorf("%T(%v) is written %q", v, v, text)
		}
	}
}
