package crowd

import (
	"slices"
	"time"
)

// Update is a text that was sent at a moment.
type Update struct {
	Text string
	At   time.Time
}

// Took is how long the updates took to each stream, shortest first, and how many of them did not come before the
// next one.
func (r Report) Took(updates []Update, streams int) (took []time.Duration, missed int) {
	for i, u := range updates {
		came := make([]bool, streams)
		for _, a := range r.Arrivals {
			if a.Text != u.Text || a.At.Before(u.At) || i+1 < len(updates) && !a.At.Before(updates[i+1].At) || came[a.Stream] {
				continue
			}
			came[a.Stream] = true
			took = append(took, a.At.Sub(u.At))
		}
		for _, c := range came {
			if !c {
				missed++
			}
		}
	}
	slices.Sort(took)
	return took, missed
}

// Part is the value below which a share of the durations lies, which are sorted; 0 if there are none.
func Part(took []time.Duration, share float64) time.Duration {
	if len(took) == 0 {
		return 0
	}
	return took[min(len(took)-1, int(share*float64(len(took))))]
}
