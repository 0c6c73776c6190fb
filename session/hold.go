package session

import (
	"fmt"
	"slices"
	"strings"
	"time"
)

// Hold is play stopped for safety. Nothing but a person's decision ends it.
type Hold struct {
	Why     string    `json:"why"`
	Since   time.Time `json:"since"`
	Thunder time.Time `json:"thunder,omitzero"` // when thunder was heard last since then, zero for never
	Heard   int       `json:"heard,omitempty"`  // how often
	Told    []CourtID `json:"told,omitempty"`   // the courts whose players were told to stop
}

// ThunderWait is for how long nobody plays after the last thunder or lightning (Walsh et al., National Athletic
// Trainers' Association position statement, J Athl Train 48(2):258-270, 2013). It is the least that people
// are advised; whoever decides for the venue may ask for more.
const ThunderWait = 30 * time.Minute

// Lightning tells whether play is held for lightning or thunder, so that ThunderWait counts.
func (h Hold) Lightning() bool {
	why := strings.ToLower(h.Why)
	return strings.Contains(why, "lightning") || strings.Contains(why, "thunder")
}

// LastThunder is when the count of ThunderWait began: with the hold, or with the thunder heard last since.
func (h Hold) LastThunder() time.Time {
	if h.Thunder.After(h.Since) {
		return h.Thunder
	}
	return h.Since
}

// ThunderLeft is what is left of ThunderWait, 0 when it is over. That it is over ends no hold.
func (h Hold) ThunderLeft(now time.Time) time.Duration {
	return max(0, ThunderWait-max(0, now.Sub(h.LastThunder())))
}

// ThunderHeard tells that thunder was heard, or lightning seen, while play was held: ThunderWait begins anew.
type ThunderHeard struct{}

func (ThunderHeard) apply(f *fold, at time.Time) error {
	return f.onHold(func(h *Hold) { h.Thunder, h.Heard = at, h.Heard+1 })
}

// CourtsTold tells that the players of some courts know that play is held.
type CourtsTold struct {
	Courts []CourtID `json:"courts"`
}

func (e CourtsTold) apply(f *fold, _ time.Time) error {
	return f.onHold(func(h *Hold) {
		for _, c := range e.Courts {
			if !slices.Contains(h.Told, c) {
				h.Told = append(slices.Clip(h.Told), c)
			}
		}
	})
}

// onHold changes the hold that goes on, in a copy: the state before keeps its own.
func (f *fold) onHold(change func(*Hold)) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	if n.Hold == nil {
		return fmt.Errorf("play is not held")
	}
	h := *n.Hold
	change(&h)
	n.Hold = &h
	return nil
}

// HearThunder restarts the count of ThunderWait.
type HearThunder struct{}

func (HearThunder) decide(l *Ledger, _ Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	switch {
	case n.Hold == nil:
		return nil, fmt.Errorf("play is not held: hold it for lightning first")
	case !n.Hold.Lightning():
		return nil, fmt.Errorf("play is held for another reason (%s): resume it, and hold it for lightning", n.Hold.Why)
	}
	return []Event{ThunderHeard{}}, nil
}

// TellCourts notes that the players of some courts were told to stop.
type TellCourts struct{ Courts []CourtID }

func (c TellCourts) decide(l *Ledger, _ Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	if n.Hold == nil {
		return nil, fmt.Errorf("play is not held")
	}
	var courts []CourtID
	for _, id := range c.Courts {
		k := n.Court(id)
		if k == nil || k.Game == 0 {
			return nil, fmt.Errorf("court %s has no game: nobody there needs to be told", id)
		}
		if !slices.Contains(n.Hold.Told, id) && !slices.Contains(courts, id) {
			courts = append(courts, id)
		}
	}
	if len(courts) == 0 {
		return nil, fmt.Errorf("all of them were told already")
	}
	return []Event{CourtsTold{courts}}, nil
}

// Untold lists the courts that play and whose players were not told yet that play is held.
func (n *Night) Untold() []CourtID {
	var out []CourtID
	for _, c := range n.Courts {
		if n.Hold != nil && c.Game != 0 && !slices.Contains(n.Hold.Told, c.ID) {
			out = append(out, c.ID)
		}
	}
	return out
}
