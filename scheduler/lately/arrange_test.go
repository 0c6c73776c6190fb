package lately_test

import (
	"context"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scheduler"
	"club/quadrille/scheduler/lately"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// TestNothingWithinTheNightChanges: whatever was before, the rounds stay valid, every measure but that of the last night
// is what it was, and that one is no worse. Without a memory the plan is the very same.
func TestNothingWithinTheNightChanges(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := nighttest.AnyProblem(t)
		budget := scheduler.Budget{Moves: 2_000}
		plain, err := scheduler.Plan(context.Background(), p, budget)
		if err != nil {
			return
		}
		people := len(p.People)
		for range rapid.IntRange(0, 30).Draw(t, "pairs") {
			a, b := rapid.IntRange(0, people-1).Draw(t, "a"), rapid.IntRange(0, people-1).Draw(t, "b")
			p.Lately = append(p.Lately, night.Recent{
				A: night.Player(a), B: night.Player(b),
				Partners:  rapid.SampledFrom([]int{0, 500, 1000, 2000}).Draw(t, "partners"),
				Opponents: rapid.SampledFrom([]int{0, 250, 1000}).Draw(t, "opponents"),
			})
		}
		arranged, err := scheduler.Plan(context.Background(), p, budget)
		if err != nil {
			t.Fatal(err)
		}
		if len(p.Lately) == 0 && !reflect.DeepEqual(arranged, plain) {
			t.Fatal("without a memory the plan is another one")
		}
		for _, v := range scheduler.Audit(p, arranged) {
			t.Fatalf("invalid: %s", v.Text)
		}
		was, is := scheduler.Certify(p, plain), scheduler.Certify(p, arranged)
		if is.LastPartners.Value > was.LastPartners.Value && cost(p, arranged) >= cost(p, plain) {
			t.Fatalf("%d partners of the last night again, without a memory %d", is.LastPartners.Value, was.LastPartners.Value)
		}
		if cost(p, arranged) > cost(p, plain) {
			t.Fatalf("the memory costs %d, and %d without looking at it", cost(p, arranged), cost(p, plain))
		}
		is.LastPartners, was.LastPartners = scheduler.Value{}, scheduler.Value{}
		if !reflect.DeepEqual(is, was) {
			t.Fatalf("the certificate was\n%+v\nand is\n%+v", was, is)
		}
	})
}

// cost is what the meetings of a plan cost by the memory, counted anew.
func cost(p scheduler.Problem, rounds []scheduler.Round) int {
	sum := 0
	for _, r := range rounds {
		for _, g := range r.Games {
			seats := g.Seats()
			for x, i := range seats {
				for y, j := range seats[:x] {
					for _, l := range p.Lately {
						if i == night.Nobody || j == night.Nobody || l.A == l.B || !(night.Pair{A: l.A, B: l.B}).Is(i, j) {
							continue
						}
						if x^y == 1 {
							sum += 4*l.Partners + l.Opponents
						} else {
							sum += l.Partners + l.Opponents
						}
					}
				}
			}
		}
	}
	return sum
}

// TestTheBestPlacesOfASmallNight: with eight people on two courts for a round, everybody who can has a new partner.
func TestTheBestPlacesOfASmallNight(t *testing.T) {
	p := nighttest.Club(8, 2, 1)
	for i := range night.Player(8) {
		for j := range i {
			if fresh := map[night.Player]night.Player{5: 0, 4: 1, 7: 2, 6: 3}; i < 4 || fresh[i] != j {
				p.Lately = append(p.Lately, night.Recent{A: i, B: j, Partners: night.LastNight})
			}
		}
	}
	rounds, err := scheduler.Plan(context.Background(), p, scheduler.Budget{})
	if err != nil {
		t.Fatal(err)
	}
	if c := scheduler.Certify(p, rounds); c.Remembered == 0 || c.LastPartners.Value != 0 || c.LastPartners.Open {
		t.Errorf("%+v of %d", c.LastPartners, c.Remembered)
	}
}

// TestHistoryPutsAnEndToIt: once games were played or somebody was pinned, people are not alike any more.
func TestHistoryPutsAnEndToIt(t *testing.T) {
	p := nighttest.Club(8, 2, 3)
	rounds, err := scheduler.Plan(context.Background(), p, scheduler.Budget{})
	if err != nil {
		t.Fatal(err)
	}
	p.Lately = []night.Recent{{A: rounds[1].Games[0].A[0], B: rounds[1].Games[0].A[1], Partners: night.LastNight}}
	for _, change := range []func(*night.Problem){
		func(p *night.Problem) { p.History = rounds[:1] },
		func(p *night.Problem) { p.Met = rounds[0].Games },
		func(p *night.Problem) {
			p.Pins = []night.Pin{{Round: 1, A: night.Team{0, 1}, B: night.Team{night.Nobody, night.Nobody}, Court: night.NoCourt}}
		},
		func(p *night.Problem) { p.Lately = nil },
	} {
		q := p
		change(&q)
		if got := lately.Arrange(night.New(&q), rounds[1:]); !reflect.DeepEqual(got, rounds[1:]) {
			t.Errorf("%+v: the rounds changed", q)
		}
	}
	if got := lately.Arrange(night.New(&p), rounds); reflect.DeepEqual(got, rounds) {
		t.Error("nothing changed although two are partners again")
	}
}

// TestOnePairOfTheLastNightIsCounted, as a value of which no bound is known; none at all proves itself.
func TestOnePairOfTheLastNightIsCounted(t *testing.T) {
	p := nighttest.Club(4, 1, 1)
	p.Lately = []night.Recent{{A: 1, B: 0, Partners: night.LastNight}, {A: 2, B: 3, Opponents: night.LastNight}}
	for _, c := range []struct {
		a, b night.Team
		want scheduler.Value
	}{
		{night.Team{0, 1}, night.Team{2, 3}, scheduler.Value{Value: 1, Open: true}},
		{night.Team{0, 2}, night.Team{1, 3}, scheduler.Value{}},
	} {
		cert := scheduler.Certify(p, []night.Round{{Games: []night.Game{{A: c.a, B: c.b}}}})
		if cert.LastPartners != c.want || cert.Remembered != 1 {
			t.Errorf("%v against %v: %+v of %d", c.a, c.b, cert.LastPartners, cert.Remembered)
		}
	}
}
