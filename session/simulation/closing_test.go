package simulation

import (
	"testing"

	"club/quadrille/session"
)

// Rolling nights are over when the hall must be left: in the mean of each kind of night before closing time,
// and on hardly any night by more than a few minutes, as a game is called with a chance of 80 % to be over
// in time. The courts still play nearly up to then.
func TestRollingNightsEndByClosing(t *testing.T) {
	for _, hall := range halls {
		t.Run(hall.kind(), func(t *testing.T) {
			over, idle, nights := 0.0, 0.0, min(200, 4*seeds())
			late := 0
			for seed := range nights {
				_, r := play(t, hall.At(seed, session.Rolling))
				overrun := r.Minutes - float64(hall.Minutes)
				over += overrun
				idle += r.IdleCourtShare
				late += count(overrun > 5)
			}
			n := float64(nights)
			t.Logf("%d nights: %.1f minutes past closing time, courts idle %.1f %%, %d later than 5 minutes", nights, over/n, 100*idle/n, late)
			if over/n > 0 {
				t.Errorf("the last score falls %.1f minutes after closing time in the mean", over/n)
			}
			if 10*late > int(nights) {
				t.Errorf("%d of %d nights run over by more than 5 minutes", late, nights)
			}
			if idle/n > 0.12 {
				t.Errorf("courts are idle %.1f %% of the time", 100*idle/n)
			}
		})
	}
}
