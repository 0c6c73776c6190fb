package session

import (
	"fmt"
	"time"
)

// ClockMoved tells that the laptop's clock went another way than time did while a night was open: it
// was put back or ahead, or the desk was closed for so long that nobody knows. Records keep what the
// clock says; this event carries all that is still being counted over to the clock as it is now, so
// that the difference between two times of a night is the time that has passed. It is an action of
// its own, and cannot be undone.
type ClockMoved struct {
	By int64 `json:"by"` // milliseconds that the clock went further than time did, negative when it was put back
	// Closed tells that the desk was closed meanwhile, for longer than anybody plays: what was announced
	// for a time of day stays as it is.
	Closed bool `json:"closed,omitempty"`
}

func clockMoved(by time.Duration, closed bool) ClockMoved {
	return ClockMoved{by.Milliseconds(), closed}
}

// Moved is by how much the clock went further than time did, negative when it was put back.
func (e ClockMoved) Moved() time.Duration { return time.Duration(e.By) * time.Millisecond }

func (e ClockMoved) apply(f *fold, _ time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	move := func(times ...*time.Time) {
		for _, t := range times {
			if !t.IsZero() {
				*t = t.Add(e.Moved())
			}
		}
	}
	for i := range n.Roll {
		move(&n.Roll[i].Since, &n.Roll[i].Waiting)
	}
	for _, g := range n.Running() {
		move(&g.Called)
		if g.Pause != nil {
			pause := *g.Pause
			move(&pause.Since)
			g.Pause = &pause
		}
	}
	if n.Heat != nil {
		heat := *n.Heat
		move(&heat.At)
		n.Heat = &heat
	}
	if n.Hold != nil {
		hold := *n.Hold
		move(&hold.Since, &hold.Thunder)
		n.Hold = &hold
	}
	if !e.Closed {
		move(&n.Settings.Closing)
		for i := range n.Roll {
			move(&n.Roll[i].Due, &n.Roll[i].Leaves)
		}
		for i := range n.Messages {
			move(&n.Messages[i].Until)
		}
	}
	return nil
}

// Words say what happened to the clock.
func (e ClockMoved) Words() string {
	switch by := e.Moved(); {
	case e.Closed:
		return fmt.Sprintf("the desk was closed for %s", spanText(by))
	case by < 0:
		return fmt.Sprintf("the laptop's clock was put back %s", spanText(-by))
	default:
		return fmt.Sprintf("the laptop's clock was put ahead %s", spanText(by))
	}
}

// spanText is a span of time in one unit, or in two where the second still tells something.
func spanText(d time.Duration) string {
	const day = 24 * time.Hour
	switch {
	case d < time.Minute:
		return fmt.Sprintf("%d s", int(d.Round(time.Second).Seconds()))
	case d < time.Hour:
		return fmt.Sprintf("%d min", int(d.Round(time.Minute).Minutes()))
	case d < day:
		d = d.Round(time.Minute)
		if minutes := int(d.Minutes()) % 60; minutes > 0 {
			return fmt.Sprintf("%d h %d min", int(d.Hours()), minutes)
		}
		return fmt.Sprintf("%d h", int(d.Hours()))
	case d < 2*day:
		return "1 day"
	case d < 365*day:
		return fmt.Sprintf("%d days", int(d/day))
	case d < 2*365*day:
		return "1 year"
	}
	return fmt.Sprintf("%d years", int(d/(365*day)))
}

// Noticeable tells whether somebody could notice that the clock was set: times are shown in minutes.
func (e ClockMoved) Noticeable() bool { return e.Moved().Abs() >= time.Minute/2 }
