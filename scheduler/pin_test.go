package scheduler

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// plain is a night in which anybody may play anywhere.
func plain(people, courts, rounds int) Problem {
	p := Problem{Rounds: rounds, Seed: 7}
	for i := range people {
		p.People = append(p.People, Person{Name: fmt.Sprint("P", i+1)})
	}
	for c := range courts {
		p.Courts = append(p.Courts, CourtSpec{Name: fmt.Sprint(c + 1)})
	}
	return p
}

// TestPinsAreKeptWhereAnybodyMayPlay: on a night without wishes each pin is kept, planned afresh and planned anew.
func TestPinsAreKeptWhereAnybodyMayPlay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := plain(rapid.IntRange(8, 26).Draw(t, "people"), rapid.IntRange(2, 5).Draw(t, "courts"), rapid.IntRange(1, 5).Draw(t, "rounds"))
		p.Benching = rapid.SampledFrom(Benchings()).Draw(t, "bench")
		p.LeftoverSingles = rapid.Bool().Draw(t, "singles")
		shown, err := Plan(context.Background(), p, Budget{Moves: 4_000})
		if err != nil {
			t.Fatal(err)
		}
		if rapid.Bool().Draw(t, "played") && p.Rounds > 1 {
			p.History, p.Rounds, shown = shown[:1], p.Rounds-1, shown[1:]
		}
		p.Pins = anyPins(t, p)
		for k := range p.Pins {
			before := p
			before.Pins = p.Pins[:k]
			if why := Unpinnable(before, p.Pins[k]); why != "" {
				t.Fatalf("%s", why)
			}
		}
		rounds, err := Plan(context.Background(), p, Budget{Moves: 4_000})
		if err != nil {
			t.Fatal(err)
		}
		again, _, err := Replan(context.Background(), p, shown, Budget{Moves: 4_000})
		if err != nil {
			t.Fatal(err)
		}
		better, _, err := Improve(context.Background(), p, rounds, Budget{Moves: 4_000}, rapid.Uint64Range(0, 3).Draw(t, "slice"))
		if err != nil {
			t.Fatal(err)
		}
		for _, rounds := range [][]Round{rounds, again, better} {
			for _, v := range Audit(p, rounds) {
				t.Fatal(v.Text)
			}
			checkBounds(t, Certify(p, rounds))
		}
	})
}

// anyPins draws pins of people who are in no other pin of theirs.
func anyPins(t *rapid.T, p Problem) []Pin {
	people := rapid.Permutation(slices.Collect(func(yield func(Player) bool) {
		for i := range p.People {
			if !yield(Player(i)) {
				return
			}
		}
	})).Draw(t, "who")
	r := rapid.IntRange(len(p.History), p.TotalRounds()-1).Draw(t, "round")
	court := rapid.SampledFrom([]Court{NoCourt, 0, Court(min(len(p.Courts), len(p.People)/4) - 1)}).Draw(t, "court")
	pins := []Pin{night.Partners(r, people[0], people[1]), night.Plays(r, people[2])}
	if len(p.Courts) > 1 && len(people) > 11 {
		pins = append(pins, Pin{Round: r, A: Team(people[3:5]), B: Team(people[5:7]), Court: court})
	}
	pins = pins[:rapid.IntRange(1, len(pins)).Draw(t, "pins")]
	if len(people) > max(7, 4*min(len(p.Courts), len(people)/4)) && rapid.Bool().Draw(t, "somebody sits out") {
		pins = append(pins, night.SitsOut(r, people[7]))
	}
	return pins
}

// TestAPinIsKeptOrRefusedWithAReason plans nights of any kind with pins of any kind.
func TestAPinIsKeptOrRefusedWithAReason(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := nighttest.AnyProblem(t)
		if len(p.People) < 4 || len(p.Courts) == 0 {
			return
		}
		if _, err := Plan(context.Background(), p, Budget{Moves: 2_000}); err != nil {
			return // there is no plan without pins either
		}
		p.Pins = anyPins(t, p)
		rounds, err := Plan(context.Background(), p, Budget{Moves: 4_000})
		var conflict *Conflict
		if errors.As(err, &conflict) {
			if len(conflict.Reasons) == 0 || strings.Contains(err.Error(), "nobody") {
				t.Fatalf("refused without a good reason: %v", err)
			}
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		for _, v := range Audit(p, rounds) {
			t.Fatal(v.Text)
		}
	})
}

// TestPinsAreRefusedInWords has a pin for each reason that is known before planning.
func TestPinsAreRefusedInWords(t *testing.T) {
	p := plain(12, 2, 3)
	p.People[11].Arrive = 2
	p.People[10].Courts = []Court{0}
	p.NeverPartner = []Pair{{A: 0, B: 1}}
	p.NeverMeet = []Pair{{A: 0, B: 2}}
	p.Together = []Pair{{A: 4, B: 5}}
	p.Courts[1].Close = 2
	none := Team{Nobody, Nobody}
	out := night.SitsOut(0, 3)
	out.A[1] = 4
	for _, c := range []struct {
		pin  Pin
		want string
	}{
		{night.Partners(0, 0, 1), "P1 and P2 shall never be partners"},
		{night.Partners(0, 0, 2), "P1 and P3 shall never meet"},
		{night.Partners(0, 3, 4), "P5 always plays with P6"},
		{night.Partners(0, 3, 11), "P12 is not there then"},
		{night.Plays(3, 3), "about round 4, but the rounds to plan are 1 to 3"},
		{Pin{Round: 0, A: Team{3, 6}, B: Team{7, 10}, Court: 1}, "P11 must not play on court 2"},
		{Pin{Round: 2, A: Team{3, 6}, B: Team{7, 8}, Court: 1}, "court 2 is closed then"},
		{Pin{Round: 0, A: Team{3, 3}, B: none, Court: NoCourt}, "names one person twice: P4"},
		{Pin{Round: 0, A: Team{3, 6}, B: none, Court: 1}, "only a whole game has one"},
		{Pin{Round: 0, A: Team{3, 6}, B: Team{7, Nobody}, Court: NoCourt}, "not about 3 people"},
		{Pin{Round: 0, A: Team{Nobody, 6}, B: none, Court: NoCourt}, "not about 1 people"},
		{out, "sits out is about one person, and not about 2 people"},
		{night.SitsOut(1, 11), "P12 is not there then"},
		{night.SitsOut(3, 3), "about round 4"},
		{night.Partners(0, 3, 40), "names person 41, but there are 12 people"},
	} {
		if why := Unpinnable(p, c.pin); !strings.Contains(why, c.want) {
			t.Errorf("%+v: %q, want %q", c.pin, why, c.want)
		}
	}
	p.Pins = []Pin{night.Partners(0, 3, 6)}
	if why := Unpinnable(p, night.Plays(0, 6)); !strings.Contains(why, "P7 is pinned otherwise") {
		t.Error(why)
	}
	if why := Unpinnable(p, night.SitsOut(0, 3)); !strings.Contains(why, "P4 is pinned otherwise") {
		t.Error(why)
	}
	p.Pins = append(p.Pins, night.SitsOut(0, 2), night.SitsOut(0, 4))
	if why := Unpinnable(p, night.SitsOut(0, 1)); !strings.Contains(why, "only 3 sit out in that round") { // P5 with P6
		t.Error(why)
	}
	p.Pins = p.Pins[:2]
	if why := Unpinnable(p, night.SitsOut(0, 4)); why != "" {
		t.Error(why)
	}
	if why := Unpinnable(plain(12, 3, 2), night.SitsOut(1, 4)); why != "everybody plays in that round" {
		t.Error(why)
	}
	p.Pins = append(p.Pins[:1], night.Partners(0, 7, 8), night.Partners(0, 9, 1), night.Partners(0, 0, 10))
	if why := Unpinnable(p, night.Plays(0, 2)); !strings.Contains(why, "the 2 games of that round have no place left") {
		t.Error(why)
	}
}

// TestAuditFindsAPinThatIsNotKept in rounds that come from elsewhere.
func TestAuditFindsAPinThatIsNotKept(t *testing.T) {
	p := plain(5, 1, 1)
	rounds := []Round{{Games: []Game{{A: Team{0, 1}, B: Team{2, 3}}}, Out: []Player{4}}}
	for _, c := range []struct {
		pin  Pin
		kept bool
	}{
		{night.Plays(0, 4), false},
		{night.Plays(0, 3), true},
		{night.SitsOut(0, 4), true},
		{night.SitsOut(0, 3), false},
		{night.Partners(0, 1, 0), true},
		{night.Partners(0, 1, 2), false},
		{Pin{Round: 0, A: Team{3, 2}, B: Team{1, 0}, Court: 0}, true},
		{Pin{Round: 0, A: Team{3, 1}, B: Team{2, 0}, Court: 0}, false},
	} {
		p.Pins = []Pin{c.pin}
		if found := Audit(p, rounds); (len(found) == 0) != c.kept {
			t.Errorf("%s: %v", c.pin.Words(&p), found)
		}
	}
}

// TestWhoSitsOutByDecisionHasNoGame: fixed partners sit out together, and who sits out plays no singles either.
func TestWhoSitsOutByDecisionHasNoGame(t *testing.T) {
	pairs := plain(10, 2, 4)
	pairs.Format = Pairs
	for i := range Player(5) {
		pairs.Together = append(pairs.Together, Pair{A: 2 * i, B: 2*i + 1})
	}
	singles := plain(10, 3, 4)
	singles.LeftoverSingles = true
	for name, p := range map[string]Problem{"pairs": pairs, "singles": singles} {
		for i := range Player(10) {
			p.Pins = []Pin{night.SitsOut(2, i)}
			rounds := mustPlan(t, p, Budget{Moves: 4_000})
			out := rounds[2].Out
			if !slices.Contains(out, i) || len(out) != 2 || name == "pairs" && !slices.Contains(out, i^1) {
				t.Errorf("%s: %d and others sit out: %v", name, i, out)
			}
		}
	}
}
