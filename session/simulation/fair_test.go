package simulation

import (
	"os"
	"slices"
	"testing"

	"club/quadrille/scheduler"
	"club/quadrille/session"
)

// seeds is over how many nights the tests of fairness go: a few, or 200 with QUADRILLE_LONG=1.
func seeds() uint64 {
	if os.Getenv("QUADRILLE_LONG") == "1" {
		return 200
	}
	return 2
}

// On a night like the club's, 18 people on 4 courts, games are spread by time present, whoever comes
// late or goes early, and nobody sits out more than twice running.
func TestGamesAreSpreadFairly(t *testing.T) {
	for _, flow := range []session.Flow{session.Rounds, session.Rolling} {
		t.Run(string(flow), func(t *testing.T) {
			var jain []float64
			for seed := range seeds() {
				n := Night{
					People: Invented(18, seed), Courts: 4, Minutes: 120, Flow: flow, Scoring: sideOut, Late: 2, Leave: 2, Seed: seed,
				}
				log, r := play(t, n)
				jain = append(jain, r.GamesPerPlayer.Jain)
				l, err := session.Load(log.Records(1))
				if err != nil {
					t.Fatal(err)
				}
				if run := longestRest(l.Club().Night()); run > 2 {
					t.Errorf("seed %d: somebody sits out %d rounds running", seed, run)
				}
			}
			slices.Sort(jain)
			median := jain[len(jain)/2]
			t.Logf("Jain index over %d nights: median %.4f, least %.4f", len(jain), median, jain[0])
			if median < 0.98 {
				t.Errorf("the median of Jain's index is %.4f", median)
			}
		})
	}
}

// longestRest is the most rounds running that somebody who was there sat out.
func longestRest(n *session.Night) int {
	longest, run := 0, map[session.PersonID]int{}
	for _, r := range n.Rounds {
		for id := range run {
			if !slices.Contains(r.Out, id) {
				delete(run, id)
			}
		}
		for _, id := range r.Out {
			run[id]++
			longest = max(longest, run[id])
		}
	}
	return longest
}

// The scheduler's choice is held against the plain queue on the same nights: far fewer partner
// repeats, at no more waiting. The comparison is over many nights together, so that no lucky one
// decides.
func TestRollingBeatsTheQueue(t *testing.T) {
	repeats, queueRepeats := 0, 0
	var wait, queueWait float64
	for seed := range seeds() {
		n := Night{
			People: Invented(30, seed), Courts: 5, Minutes: 150, Flow: session.Rolling, Scoring: sideOut, Late: 3, Leave: 3, Seed: seed,
		}
		_, r := play(t, n)
		n.Pick = scheduler.QueueNext
		_, q := play(t, n)
		if q.Certificate.PartnerRepeats.Gap() == 0 {
			t.Errorf("seed %d: the certificate takes the repeats of the queue for unavoidable: %+v", seed, q.Certificate)
		}
		repeats += r.Certificate.PartnerRepeats.Value
		queueRepeats += q.Certificate.PartnerRepeats.Value
		wait += r.WaitMinutes.Median
		queueWait += q.WaitMinutes.Median
	}
	t.Logf("%d nights: %d partner repeats against %d, median wait %.2f against %.2f minutes",
		seeds(), repeats, queueRepeats, wait/float64(seeds()), queueWait/float64(seeds()))
	if queueRepeats == 0 || 5*repeats > queueRepeats {
		t.Errorf("%d partner repeats are not five times fewer than the %d of the queue", repeats, queueRepeats)
	}
	if wait > queueWait*1.02 {
		t.Errorf("people wait %.2f minutes in the median, %.2f in the queue", wait/float64(seeds()), queueWait/float64(seeds()))
	}
}

func BenchmarkRollingNight(b *testing.B) {
	n := Night{People: Invented(37, 1), Courts: 7, Minutes: 150, Flow: session.Rolling, Scoring: sideOut, Late: 4, Leave: 3, Seed: 1}
	for b.Loop() {
		if _, err := Run(b.Context(), &session.MemoryLog{}, n, nil); err != nil {
			b.Fatal(err)
		}
	}
}
