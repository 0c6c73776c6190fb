package scheduler

import (
	"testing"

	"club/quadrille/scheduler/night/nighttest"
)

// TestGamesOfNoRoundCount: what was played before the first round is not played again, although nobody
// sat out meanwhile.
func TestGamesOfNoRoundCount(t *testing.T) {
	p := nighttest.Club(20, 5, 3)
	first := mustPlan(t, p, Budget{})
	for _, r := range first {
		p.Met = append(p.Met, r.Games...)
	}
	p.Rounds, p.Seed = 2, 2
	rest := mustPlan(t, p, Budget{})
	cert := Certify(p, rest)
	if cert.PartnerRepeats.Value != 0 || cert.MeetingEvenness.Value != 0 {
		t.Errorf("five rounds without a repeat exist for 20 people, but after three rounds that were rolled: %+v", cert)
	}
	p.Met = nil
	blind := mustPlan(t, p, Budget{})
	if c := Certify(nighttest.Club(20, 5, 0), append(first, blind...)); c.MeetingEvenness.Value == 0 {
		t.Error("a plan that knows nothing of the games before repeats no meeting either: this test shows nothing")
	}
}

// TestGamesOfNoRoundAreJudged: their meetings are in the certificate, and sitting out is not.
func TestGamesOfNoRoundAreJudged(t *testing.T) {
	p := nighttest.Club(5, 1, 0)
	g := Game{Court: 0, A: Team{0, 1}, B: Team{2, 3}}
	p.Met = []Game{g}
	c := Certify(p, []Round{{Games: []Game{g}, Out: []Player{4}}, {Games: []Game{{Court: 0, A: Team{4, 1}, B: Team{2, 3}}}, Out: []Player{0}}})
	// 0 and 1 are partners twice, 2 and 3 three times; 0 and 1 and either of 2 and 3 meet as often
	// as 0 plays, and 1, 2 and 3 meet three times.
	if c.PartnerRepeats.Value != 3 || c.PartnerEvenness.Value != 4 || c.MeetingEvenness.Value != 3*1+3*3 {
		t.Errorf("%+v", c)
	}
	if c.SitoutSpread.Value != 1 || c.BenchedTwice.Value != 0 {
		t.Errorf("two sat out once each in two rounds: %+v", c)
	}
}

// TestCoupleThatIsParted: the bounds hold when one of a couple goes home and the other plays on.
func TestCoupleThatIsParted(t *testing.T) {
	p := nighttest.Club(9, 2, 0)
	p.Together = []Pair{{A: 0, B: 1}}
	c := CertifyGames(p, []Game{
		{Court: 0, A: Team{0, 1}, B: Team{2, 3}}, {Court: 0, A: Team{0, 4}, B: Team{5, 6}}, {Court: 0, A: Team{0, 7}, B: Team{8, 2}}, {Court: 0, A: Team{0, 5}, B: Team{4, 3}},
	})
	if c.PartnerRepeats.Gap() < 0 || c.MeetingEvenness.Gap() < 0 {
		t.Errorf("below a bound: %+v", c)
	}
}
