package rolling

import (
	"math"
	"testing"

	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// TestWhatWaitsCostByHand: four who go, four who wait for the court that frees in ten minutes, and four for the one in
// twenty: the third power of each wait, a game less than others taken off who goes, and the square of what is over
// the slack.
func TestWhatWaitsCostByHand(t *testing.T) {
	p := nighttest.Club(12, 3, 1)
	c := &caller{n: night.New(&p), r: Moment{Free: []float64{10, 20}}, pace: pace{interval: 10}, longest: 20}
	var line []call
	for i := range night.Player(12) {
		line = append(line, call{who: []night.Player{i}, waited: 6 - float64(i/4)})
	}
	line[4].behind = 2
	cube := func(minutes float64) float64 { return mixWeight * minutes * minutes * minutes }
	four := []night.Player{4, 5, 6, 7}
	want := 4*cube(5) - 2*behindWeight + 4*cube(16) + 4*(cube(24)+overWeight*1*1) // 24 is 1 over 20 and the slack of 3
	if got := c.waits(line, four); math.Abs(got-want) > 1e-6 {
		t.Errorf("passing the first over costs %g, want %g", got, want)
	}
	want = 4*cube(6) + 4*cube(15) + 4*(cube(24)+overWeight*1*1)
	if got := c.waits(line, nil); math.Abs(got-want) > 1e-6 {
		t.Errorf("in turn it costs %g, want %g", got, want)
	}
	c.r.ByWait = true
	cube = func(minutes float64) float64 { return strictWeight * math.Pow(minutes/10, 3) }
	want = 4*cube(5) - 2*behindWeight + 4*cube(16) + 4*cube(24)
	if got := c.waits(line, four); math.Abs(got-want) > 1e-6 {
		t.Errorf("strictly it costs %g, want %g", got, want)
	}
}

// TestWhenTheCourtFreesForThem: as expected while that is known, and at the pace of the night behind it.
func TestWhenTheCourtFreesForThem(t *testing.T) {
	c := &caller{r: Moment{Free: []float64{-1, 4}}, pace: pace{interval: 3}}
	for before, want := range []float64{0, 4, 7, 10} {
		if got := c.untilFree(before); got != want {
			t.Errorf("behind %d others: %g min, want %g", before, got, want)
		}
	}
	c.r.ByWait = true
	for before, want := range []float64{3, 6, 9} {
		if got := c.untilFree(before); got != want {
			t.Errorf("by wait, behind %d others: %g min, want %g", before, got, want)
		}
	}
}
