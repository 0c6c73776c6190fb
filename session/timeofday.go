package session

import (
	"slices"
	"time"

	"club/quadrille/session/roster"
)

const (
	// before and behind bound where a time of day lies: six hours before now, or before the night was
	// opened, is the earliest that anybody means; eighteen hours back is too long ago whatever happened.
	before = 6 * time.Hour
	behind = 18 * time.Hour
)

// TimeOfDay is when the clock of a hall shows a time of day, in UTC: the first time from six hours before
// now on, in the zone of now. So 21:30 typed at 22:00 is half an hour ago, and 0:30 typed at 22:00 is in
// two and a half hours. It is zero for a moment that is no time of day.
//
// A time that the clock shows twice, when daylight saving ends, is the first of the two, unless only the
// second is still to come. A time that it leaves out, when daylight saving begins, is as long after
// midnight as if it did not: 2:30 becomes 3:30 (both as in RFC 5545, section 3.3.5, but for what is past).
func TimeOfDay(m roster.Moment, now time.Time) time.Time {
	return timeOfDay(m, now, now.Add(-before))
}

// TimeOfDay is [TimeOfDay] around the night: as long as the night goes on, a time from its beginning on
// is one of this night, and not of the next evening. Without a night it is the same as TimeOfDay.
func (n *Night) TimeOfDay(m roster.Moment, now time.Time) time.Time {
	if n == nil {
		return TimeOfDay(m, now)
	}
	from := now.Add(-before)
	if opened := n.Opened.Add(-before); opened.Before(from) {
		from = latest(opened, now.Add(-behind))
	}
	return timeOfDay(m, now, from)
}

func latest(a, b time.Time) time.Time {
	if a.After(b) {
		return a
	}
	return b
}

// timeOfDay is when the clock shows a time of day from some moment on.
func timeOfDay(m roster.Moment, now, from time.Time) time.Time {
	if !m.IsClock {
		return time.Time{}
	}
	day := from.In(now.Location())
	for i := -1; ; i++ {
		shown := showings(day.Year(), day.Month(), day.Day()+i, m.Clock, now.Location())
		shown = slices.DeleteFunc(shown, func(t time.Time) bool { return t.Before(from) })
		if len(shown) == 0 {
			continue
		}
		if last := shown[len(shown)-1]; shown[0].Before(now) && !last.Before(now) {
			return last
		}
		return shown[0]
	}
}

// showings lists when the clock shows a time on a date, in UTC: once, twice when it is put back over that
// time, or the moment at which it would, had it not been put ahead.
func showings(year int, month time.Month, day int, clock time.Duration, zone *time.Location) []time.Time {
	const half = 12 * time.Hour
	// as if the zone were UTC; what it is ahead by is known some hours before and after
	as := time.Date(year, month, day, int(clock/time.Hour), int(clock%time.Hour/time.Minute), 0, 0, time.UTC)
	ahead := func(t time.Time) time.Duration {
		_, seconds := t.In(zone).Zone()
		return time.Duration(seconds) * time.Second
	}
	near := as.Add(-ahead(as))
	early, late := ahead(near.Add(-half)), ahead(near.Add(half))
	var out []time.Time
	for _, offset := range []time.Duration{early, late} {
		t := as.Add(-offset)
		if ahead(t) == offset && !slices.ContainsFunc(out, t.Equal) {
			out = append(out, t)
		}
	}
	if len(out) == 0 {
		out = append(out, as.Add(-early))
	}
	slices.SortFunc(out, time.Time.Compare)
	return out
}
