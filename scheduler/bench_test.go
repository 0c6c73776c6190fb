package scheduler

import (
	"context"
	"fmt"
	"testing"

	"club/quadrille/scheduler/night/nighttest"
)

func benchPlan(b *testing.B, p Problem, moves int) {
	b.Helper()
	for b.Loop() {
		if _, err := Plan(context.Background(), p, Budget{Moves: moves}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkPlan is a whole plan from nothing: a night that a design solves, and two that the whole
// budget goes into.
func BenchmarkPlan(b *testing.B) {
	for _, c := range []struct{ people, courts, rounds int }{
		{24, 6, 8}, {20, 5, 5}, {18, 4, 9}, {37, 7, 14}, {40, 10, 39},
	} {
		b.Run(fmt.Sprintf("%d-%d-%d", c.people, c.courts, c.rounds), func(b *testing.B) {
			benchPlan(b, nighttest.Club(c.people, c.courts, c.rounds), 0)
		})
	}
}

// BenchmarkReplan plans on after somebody leaves 48 people on 12 courts before round 4 of 10.
func BenchmarkReplan(b *testing.B) {
	p := nighttest.Club(48, 12, 10)
	rounds, err := Plan(context.Background(), p, Budget{})
	if err != nil {
		b.Fatal(err)
	}
	p.History, p.Rounds = rounds[:3], 7
	p.People[17].Leave = 3
	benchPlan(b, p, 0)
	b.StopTimer()
	rest, _ := Plan(context.Background(), p, Budget{})
	cert := Certify(p, rest)
	b.ReportMetric(float64(cert.MeetingEvenness.Value), "meetings")
	b.ReportMetric(float64(cert.MeetingEvenness.Bound), "bound")
}

// BenchmarkOneRound fills 250 courts from 1,000 people after three rounds.
func BenchmarkOneRound(b *testing.B) {
	p := nighttest.Club(1000, 250, 3)
	rounds, err := Plan(context.Background(), p, Budget{Moves: 100_000})
	if err != nil {
		b.Fatal(err)
	}
	p.History, p.Rounds = rounds, 1
	benchPlan(b, p, 0)
}

// BenchmarkCertify measures a night of 48 people against its bounds.
func BenchmarkCertify(b *testing.B) {
	p := nighttest.Club(48, 11, 16)
	rounds, err := Plan(context.Background(), p, Budget{Moves: 1000})
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		Certify(p, rounds)
	}
}
