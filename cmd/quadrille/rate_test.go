package main

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"
)

// A chain of thirty games between eight people, rated by the library openskill from outside this
// project: see the source note beside the file.
func TestRateAgreesWithAnotherLibrary(t *testing.T) {
	text, err := os.ReadFile("../../scoring/rating/testdata/weng_lin.json")
	if err != nil {
		t.Fatal(err)
	}
	var file struct {
		Chain struct {
			Games []struct {
				TeamA   [2]int `json:"team_a"`
				TeamB   [2]int `json:"team_b"`
				Outcome string `json:"outcome"`
			} `json:"games"`
			Final []struct{ Mu, Sigma float64 } `json:"final"`
		} `json:"chain"`
	}
	if err := json.Unmarshal(text, &file); err != nil || len(file.Chain.Games) != 30 {
		t.Fatalf("%d games, %v", len(file.Chain.Games), err)
	}
	var csv strings.Builder
	csv.WriteString("a1,a2,b1,b2,score_a,score_b\n")
	for _, g := range file.Chain.Games {
		score, known := map[string]string{"a_wins": "11,5", "b_wins": "5,11", "tie": "7,7"}[g.Outcome]
		if !known {
			t.Fatalf("outcome %q", g.Outcome)
		}
		fmt.Fprintf(&csv, "player %d,player %d,player %d,player %d,%s\n", g.TeamA[0], g.TeamA[1], g.TeamB[0], g.TeamB[1], score)
	}
	out, errs, code := quadrille(t, csv.String(), "rate", "-", "--json")
	if code != exitFine || errs != "" {
		t.Fatalf("exit %d: %s", code, errs)
	}
	var got []rated
	if err := json.Unmarshal([]byte(out), &got); err != nil || len(got) != len(file.Chain.Final) {
		t.Fatalf("%d people, %v", len(got), err)
	}
	for _, p := range got {
		var i int
		if _, err := fmt.Sscanf(p.Name, "player %d", &i); err != nil {
			t.Fatal(err)
		}
		if want := file.Chain.Final[i]; math.Abs(p.Mu-want.Mu) > 1e-9 || math.Abs(p.Sigma-want.Sigma) > 1e-9 || !p.Comparable {
			t.Errorf("%+v, want %+v", p, want)
		}
	}
}
