package rotation

import (
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scheduler"
)

// drawProblem draws a problem of people with names, wishes and times. Its rounds need not be
// possible: this package translates, it does not judge.
func drawProblem(t *rapid.T) (scheduler.Problem, []scheduler.Round) {
	people := rapid.IntRange(4, 12).Draw(t, "people")
	p := scheduler.Problem{
		Format:  rapid.SampledFrom([]scheduler.Format{scheduler.Rotating, scheduler.Mixed, scheduler.Pairs}).Draw(t, "format"),
		Courts:  []scheduler.CourtSpec{{Name: "1"}, {Name: "Centre"}},
		Rounds:  rapid.IntRange(1, 4).Draw(t, "rounds"),
		Seed:    rapid.Uint64().Draw(t, "seed"),
		History: nil,
	}
	for i := range people {
		person := scheduler.Person{
			Name:   fmt.Sprintf("Person %d", i),
			Group:  rapid.SampledFrom([]string{"x", "y"}).Draw(t, "group"),
			Level:  float64(rapid.IntRange(0, 10).Draw(t, "level")) / 2,
			Arrive: rapid.IntRange(0, 2).Draw(t, "arrive"),
		}
		if rapid.Bool().Draw(t, "leaves") {
			person.Leave = person.Arrive + rapid.IntRange(1, 3).Draw(t, "leave")
		}
		if rapid.IntRange(0, 4).Draw(t, "bound") == 0 {
			person.Courts = []scheduler.Court{scheduler.Court(rapid.IntRange(0, 1).Draw(t, "court"))}
		}
		p.People = append(p.People, person)
	}
	for i := 0; i+1 < people; i += 2 {
		pair := scheduler.Pair{A: scheduler.Player(i), B: scheduler.Player(i + 1)}
		switch rapid.IntRange(0, 3).Draw(t, "wish") {
		case 0:
			pair.Times = rapid.IntRange(0, 2).Draw(t, "times")
			p.Together = append(p.Together, pair)
		case 1:
			p.NeverMeet = append(p.NeverMeet, pair)
		}
	}
	var rounds []scheduler.Round
	for range p.Rounds {
		order := rapid.Permutation(players(people)).Draw(t, "order")
		r := scheduler.Round{
			Games: []scheduler.Game{{Court: 0, A: scheduler.Team{order[0], order[1]}, B: scheduler.Team{order[2], order[3]}}},
			Out:   slices.Clone(order[4:]),
		}
		if people >= 6 && rapid.Bool().Draw(t, "singles") {
			r.Games = append(r.Games, scheduler.Game{
				Court: 1, A: scheduler.Team{order[4], scheduler.Nobody}, B: scheduler.Team{order[5], scheduler.Nobody},
			})
			r.Out = slices.Clone(order[6:])
		}
		rounds = append(rounds, r)
	}
	return p, rounds
}

func players(n int) []scheduler.Player {
	out := make([]scheduler.Player, n)
	for i := range out {
		out[i] = scheduler.Player(i)
	}
	return out
}

// What is written is read back as the same problem with the same rounds; the certificate is not
// taken on trust.
func TestDocumentComesBackAsItWas(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, rounds := drawProblem(t)
		written := New(p, rounds)
		text, err := json.Marshal(written)
		if err != nil {
			t.Fatal(err)
		}
		read, err := Read(strings.NewReader(string(text)))
		if err != nil {
			t.Fatal(err)
		}
		if read.Certificate != (scheduler.Certificate{}) {
			t.Fatal("the certificate was believed")
		}
		read.Certificate = written.Certificate
		if !reflect.DeepEqual(read, written) {
			t.Fatalf("read %+v\nwritten %+v", read, written)
		}
		again, games, err := read.Problem()
		if err != nil {
			t.Fatal(err)
		}
		again.Together = again.Together[:min(len(again.Together), len(p.Together))] // pairs that were found besides
		if len(again.Together) == 0 {
			again.Together = nil
		}
		if !reflect.DeepEqual(again, p) {
			t.Fatalf("problem %+v\nwas %+v", again, p)
		}
		for i := range games {
			if !slices.Equal(games[i].Games, rounds[i].Games) || !slices.Equal(games[i].Out, rounds[i].Out) {
				t.Fatalf("round %d is %+v, was %+v", i+1, games[i], rounds[i])
			}
		}
	})
}

func TestRoundsAloneAreARotation(t *testing.T) {
	d, err := Read(strings.NewReader(`{"rounds":[{"games":[{"court":"2","a":["Dan","Ann"],"b":["Cas","Bob"]}],"out":["Eve"]},
		{"games":[{"court":"1","a":["Eve","Ann"],"b":["Cas","Bob"]}]}]}`))
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(d.Players, []string{"Ann", "Bob", "Cas", "Dan", "Eve"}) || !slices.Equal(d.Courts, []string{"1", "2"}) {
		t.Fatalf("players %v, courts %v", d.Players, d.Courts)
	}
	_, rounds, err := d.Problem()
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(rounds[1].Out, []scheduler.Player{3}) {
		t.Errorf("out of round 2 without a list are %v, not Dan alone", rounds[1].Out)
	}
}

// In a round without a list of those who sit out, only people who are there sit out.
func TestWhoIsNotThereDoesNotSitOut(t *testing.T) {
	d, err := Read(strings.NewReader(`{"players":["Ann","Bob","Cas","Dan","Eve","Fay"],"rounds":[
		{"games":[{"court":"1","a":["Ann","Bob"],"b":["Cas","Dan"]}]},{"games":[{"court":"1","a":["Ann","Bob"],"b":["Cas","Dan"]}]}],
		"roster":[{"name":"Eve","arrive":2},{"name":"Fay","leave":1}]}`))
	if err != nil {
		t.Fatal(err)
	}
	_, rounds, err := d.Problem()
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(rounds[0].Out, []scheduler.Player{5}) || !slices.Equal(rounds[1].Out, []scheduler.Player{4}) {
		t.Errorf("out are %v and %v, not Fay and then Eve", rounds[0].Out, rounds[1].Out)
	}
}

func TestReadRefuses(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"nothing", "", "the rotation is empty"},
		{"no JSON", "round 1", "no JSON"},
		{"two documents", `{"rounds":[{}]} {"rounds":[{}]}`, "one file holds one rotation"},
		{"no rounds", `{"players":["Ann"]}`, "no rounds"},
		{"rounds out of order", `{"rounds":[{"round":2},{"round":1}]}`, "round 2 stands where round 1 belongs"},
		{"two of one name", `{"players":["Ann","Ann"],"rounds":[{}]}`, "two players are called Ann"},
		{"two courts of one name", `{"courts":["1","1"],"rounds":[{}]}`, "two courts are called 1"},
		{"an unknown format", `{"format":"cricket","rounds":[{}]}`, "no format"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Read(strings.NewReader(tt.text))
			if err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("error %v, want one with %q", err, tt.want)
			}
		})
	}
}

func TestProblemNamesTheFault(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"a stranger plays", `{"players":["Ann","Bob"],"rounds":[{},{"games":[{"court":"7","a":["Ann"],"b":["Zed"]}]}]}`, "round 2, court 7: Zed is not among the players"},
		{"a stranger sits out", `{"players":["Ann"],"rounds":[{"out":["Zed"]}]}`, "round 1: Zed sits out but is not among the players"},
		{"three in a team", `{"rounds":[{"games":[{"court":"1","a":["Ann","Bob","Cas"],"b":["Dan"]}]}]}`, "round 1, court 1: a team has 3 people"},
		{"no team", `{"rounds":[{"games":[{"court":"1","a":[],"b":["Dan"]}]}]}`, "round 1, court 1: a team has 0 people"},
		{"a strange court", `{"courts":["1"],"rounds":[{"games":[{"court":"2","a":["Ann"],"b":["Dan"]}]}]}`, "round 1, court 2: this court is not among the courts"},
		{"a strange roster", `{"players":["Ann"],"roster":[{"name":"Zed"}],"rounds":[{}]}`, "the roster names Zed"},
		{"a strange wish", `{"players":["Ann"],"roster":[{"name":"Ann","keep_apart":["Zed"]}],"rounds":[{}]}`, "a pair with Zed"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d, err := Read(strings.NewReader(tt.text))
			if err != nil {
				t.Fatal(err)
			}
			if _, _, err = d.Problem(); err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("error %v, want one with %q", err, tt.want)
			}
		})
	}
}

// Any text is a document or a refusal; a document can be stated, judged and written again.
func FuzzRead(f *testing.F) {
	f.Add(`{"rounds":[{"games":[{"court":"1","a":["Ann","Bob"],"b":["Cas","Dan"]}],"out":["Eve"]}]}`)
	f.Add(`{"format":"mixed","players":["a","b","c","d"],"courts":["1"],"rounds":[{"round":1,"games":[{"court":"1","a":["a","b"],"b":["c","d"]}]}]}`)
	f.Add(`{"format":"pairs","rounds":[{"games":[{"court":"1","a":["a","a"],"b":["b"]}]}],"roster":[{"name":"a","arrive":-3,"leave":9}]}`)
	f.Fuzz(func(t *testing.T, text string) {
		d, err := Read(strings.NewReader(text))
		if err != nil {
			return
		}
		p, rounds, err := d.Problem()
		if err != nil {
			return
		}
		if faults := scheduler.Audit(p, rounds); len(faults) == 0 {
			if again := New(p, rounds); len(again.Rounds) != len(d.Rounds) {
				t.Fatalf("%d rounds became %d", len(d.Rounds), len(again.Rounds))
			}
		}
	})
}
