package scheduler

import (
	"encoding/json"
	"testing"

	"club/quadrille/scheduler/night/nighttest"
)

// TestCertificateByHand measures two rounds of four people that are easily counted.
func TestCertificateByHand(t *testing.T) {
	p := nighttest.Club(4, 1, 2)
	same := Round{Games: []Game{{Court: 0, A: Team{0, 1}, B: Team{2, 3}}}}
	cert := Certify(p, []Round{same, same})
	for name, v := range map[string][3]int{
		"partner repeats":   {cert.PartnerRepeats.Value, 2, cert.PartnerRepeats.Bound},
		"partner evenness":  {cert.PartnerEvenness.Value, 2, cert.PartnerEvenness.Bound},
		"opponent evenness": {cert.OpponentEvenness.Value, 4, cert.OpponentEvenness.Bound - 2},
		"meeting evenness":  {cert.MeetingEvenness.Value, 6, cert.MeetingEvenness.Bound - 6},
		"benched twice":     {cert.BenchedTwice.Value, 0, cert.BenchedTwice.Bound},
	} {
		if v[0] != v[1] || v[2] != 0 {
			t.Errorf("%s: value %d, want %d; the bound is off by %d", name, v[0], v[1], v[2])
		}
	}
}

// TestPublishedBounds holds the small cases of the literature.
func TestPublishedBounds(t *testing.T) {
	for _, c := range []struct{ people, rounds, bound int }{
		{4, 2, 6}, {8, 2, 4}, {12, 2, 3}, {16, 2, 0}, // two rounds in which nobody sits out
		{20, 6, 1},                // RP(20,4) does not exist
		{16, 10, 120},             // two affine planes
		{8, 7, 84}, {13, 13, 234}, // whist tournaments: 3·v(v-1)/2
	} {
		p := nighttest.Club(c.people, c.people/4, c.rounds)
		rounds := mustPlan(t, p, Budget{Moves: 50_000})
		if got := Certify(p, rounds).MeetingEvenness.Bound; got != c.bound {
			t.Errorf("%d people, %d rounds: bound %d, want %d", c.people, c.rounds, got, c.bound)
		}
	}
}

// TestBenchedTwiceIsFreeUpToTwiceTheSeats: nobody need be benched twice running exactly when P ≤ 8C.
func TestBenchedTwiceIsFreeUpToTwiceTheSeats(t *testing.T) {
	for people := 4; people <= 20; people++ {
		p := nighttest.Club(people, 1, 5)
		p.Benching = StrictBench
		cert := Certify(p, mustPlan(t, p, Budget{Moves: 30_000}))
		wantValue(t, p.People[people-1].Name+" people on one court", cert.BenchedTwice, 4*max(0, people-8))
	}
}

func TestCertificateJSON(t *testing.T) {
	text, err := json.Marshal(Certificate{PartnerRepeats: Value{Value: 1, Bound: 0}})
	if err != nil {
		t.Fatal(err)
	}
	zero := `":{"value":0,"bound":0},"`
	want := `{"sitout_evenness` + zero + `sitout_spread` + zero + `benched_twice` + zero + `longest_bench` + zero +
		`partner_repeats":{"value":1,"bound":0},"partner_evenness` + zero + `meeting_evenness` + zero + `strangers` + zero +
		`opponent_evenness` + zero + `court_spread":{"value":0,"bound":0}}`
	if string(text) != want {
		t.Errorf("got %s", text)
	}
}

// TestHistoryIsJudgedWithTheRest: playing rounds does not make them look unavoidable.
func TestHistoryIsJudgedWithTheRest(t *testing.T) {
	p := nighttest.Club(16, 4, 2)
	rounds := mustPlan(t, p, Budget{})
	whole := Certify(p, []Round{rounds[0], rounds[0]})
	p.History = []Round{rounds[0], rounds[0]}
	if got := Certify(p, nil); got != whole {
		t.Errorf("played rounds are judged as %+v, the same plan as %+v", got, whole)
	}
	if whole.MeetingEvenness != (Value{Value: 24, Bound: 0}) || whole.PartnerRepeats != (Value{Value: 8, Bound: 0}) {
		t.Errorf("the same round twice: %+v", whole)
	}
}

func TestCertifyGames(t *testing.T) {
	p := nighttest.Club(8, 2, 0)
	g := Game{Court: 0, A: Team{0, 1}, B: Team{2, 3}}
	h := Game{Court: 1, A: Team{4, 5}, B: Team{6, 7}}
	cert := CertifyGames(p, []Game{g, h, g})
	// who plays two of three games shares one with somebody: four such people, three pairs of games
	if cert.PartnerRepeats != (Value{Value: 2, Bound: 0}) || cert.MeetingEvenness != (Value{Value: 6, Bound: 1}) || cert.SitoutSpread != (Value{}) {
		t.Errorf("%+v", cert)
	}
	if cert := CertifyGames(nighttest.Club(4, 1, 0), []Game{g, g}); cert.MeetingEvenness != (Value{Value: 6, Bound: 6}) {
		t.Errorf("four people cannot but meet again: %+v", cert.MeetingEvenness)
	}
}

// TestChainsBeatPairsOfRounds: fifteen people on two courts cannot both keep to their halves and
// leave them. The plan proves that the bound of ten rounds is the optimum.
func TestChainsBeatPairsOfRounds(t *testing.T) {
	p := nighttest.Club(15, 2, 10)
	p.Benching = StrictBench
	wantValue(t, "meetings", Certify(p, mustPlan(t, p, Budget{})).MeetingEvenness, 41)
}

// TestFivesKnowHalves: of forty people on five courts two halves of twenty alternate, who cannot play
// six rounds each without a repeated meeting.
func TestFivesKnowHalves(t *testing.T) {
	for rounds, want := range map[int]int{10: 0, 11: 1, 12: 2} {
		p := nighttest.Club(40, 5, rounds)
		p.Benching = StrictBench
		if got := Certify(p, mustPlan(t, p, Budget{Moves: 20_000})).MeetingEvenness.Bound; got != want {
			t.Errorf("%d rounds: bound %d, want %d", rounds, got, want)
		}
	}
}
