package session

import (
	"testing"
	"time"
	_ "time/tzdata" // the zones of these tests, on a machine that has none

	"pgregory.net/rapid"

	"club/quadrille/session/roster"
)

// zones are halls whose clocks change at other times of the year, by half an hour, and never.
var zones = []string{"Europe/Berlin", "America/New_York", "Australia/Lord_Howe", "Asia/Kolkata"}

func zone(t testing.TB, name string) *time.Location {
	t.Helper()
	z, err := time.LoadLocation(name)
	if err != nil {
		t.Fatal(err)
	}
	return z
}

func moment(t testing.TB, text string) roster.Moment {
	t.Helper()
	m, err := roster.ParseMoment(text)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// A time of day is read as the people in the hall mean it, past midnight and on both days on which
// daylight saving changes. The dates of the changes are those of the IANA time zone database: Berlin
// 29 March and 25 October 2026, New York 8 March and 1 November, Lord Howe 4 October and 5 April (by half
// an hour), Kolkata never.
func TestTimesOfDay(t *testing.T) {
	const layout = "2006-01-02 15:04 -0700"
	for _, c := range []struct{ zone, opened, now, text, want string }{
		// an evening
		{"Europe/Berlin", "", "2026-11-20 19:00 +0100", "21:30", "2026-11-20 21:30 +0100"},
		{"Europe/Berlin", "", "2026-11-20 22:00 +0100", "00:30", "2026-11-21 00:30 +0100"},
		{"Europe/Berlin", "", "2026-11-21 00:10 +0100", "23:45", "2026-11-20 23:45 +0100"},
		{"Europe/Berlin", "", "2026-11-20 20:00 +0100", "19:40", "2026-11-20 19:40 +0100"},
		{"Europe/Berlin", "", "2026-11-20 08:00 +0100", "21:30", "2026-11-20 21:30 +0100"},
		{"Asia/Kolkata", "", "2026-11-20 23:59 +0530", "0:00", "2026-11-21 00:00 +0530"},
		{"Asia/Kolkata", "", "2026-12-31 22:00 +0530", "0:30", "2027-01-01 00:30 +0530"},
		// a night that goes on long after midnight, or all day
		{"Europe/Berlin", "2026-11-20 19:00 +0100", "2026-11-21 02:00 +0100", "19:40", "2026-11-20 19:40 +0100"},
		{"Europe/Berlin", "2026-11-20 19:00 +0100", "2026-11-21 02:00 +0100", "3:00", "2026-11-21 03:00 +0100"},
		{"Europe/Berlin", "2026-11-20 09:00 +0100", "2026-11-20 20:00 +0100", "0:30", "2026-11-21 00:30 +0100"},
		{"Europe/Berlin", "2026-11-20 19:00 +0100", "2026-11-21 12:30 +0100", "13:00", "2026-11-21 13:00 +0100"},
		{"Europe/Berlin", "2026-11-13 19:00 +0100", "2026-11-20 19:00 +0100", "21:30", "2026-11-20 21:30 +0100"},
		{"Europe/Berlin", "2027-11-20 19:00 +0100", "2026-11-20 19:00 +0100", "21:30", "2026-11-20 21:30 +0100"},
		// daylight saving begins: the evening after, the night of it, the hour that is left out
		{"Europe/Berlin", "", "2026-03-29 19:00 +0200", "21:30", "2026-03-29 21:30 +0200"},
		{"Europe/Berlin", "", "2026-03-28 22:00 +0100", "5:00", "2026-03-29 05:00 +0200"},
		{"Europe/Berlin", "", "2026-03-28 22:00 +0100", "2:30", "2026-03-29 03:30 +0200"},
		{"America/New_York", "", "2026-03-08 19:00 -0400", "21:30", "2026-03-08 21:30 -0400"},
		{"America/New_York", "", "2026-03-07 23:00 -0500", "2:15", "2026-03-08 03:15 -0400"},
		{"Australia/Lord_Howe", "", "2026-10-04 19:00 +1100", "21:30", "2026-10-04 21:30 +1100"},
		{"Australia/Lord_Howe", "", "2026-10-03 23:00 +1030", "2:10", "2026-10-04 02:40 +1100"},
		// daylight saving ends: the evening after, the hour that is there twice, before it and between
		{"Europe/Berlin", "", "2026-10-25 19:00 +0100", "21:30", "2026-10-25 21:30 +0100"},
		{"Europe/Berlin", "", "2026-10-24 22:00 +0200", "2:30", "2026-10-25 02:30 +0200"},
		{"Europe/Berlin", "", "2026-10-25 02:40 +0200", "2:30", "2026-10-25 02:30 +0100"},
		{"Europe/Berlin", "", "2026-10-25 02:40 +0100", "2:30", "2026-10-25 02:30 +0200"},
		{"Europe/Berlin", "", "2026-10-24 22:00 +0200", "3:30", "2026-10-25 03:30 +0100"},
		{"America/New_York", "", "2026-11-01 19:00 -0500", "21:30", "2026-11-01 21:30 -0500"},
		{"America/New_York", "", "2026-10-31 23:00 -0400", "1:30", "2026-11-01 01:30 -0400"},
		{"Australia/Lord_Howe", "", "2026-04-05 19:00 +1030", "21:30", "2026-04-05 21:30 +1030"},
		{"Australia/Lord_Howe", "", "2026-04-04 23:00 +1100", "1:45", "2026-04-05 01:45 +1100"},
	} {
		at := func(text string) time.Time {
			t.Helper()
			if text == "" {
				return time.Time{}
			}
			moment, err := time.Parse(layout, text)
			if err != nil {
				t.Fatal(err)
			}
			return moment.In(zone(t, c.zone))
		}
		var n *Night
		if c.opened != "" {
			n = &Night{Opened: at(c.opened).UTC()}
		}
		if got := n.TimeOfDay(moment(t, c.text), at(c.now)).In(zone(t, c.zone)); !got.Equal(at(c.want)) {
			t.Errorf("%s, %s typed at %s (night of %s) is %s, want %s", c.zone, c.text, c.now, c.opened, got.Format(layout), c.want)
		}
	}
}

// Whatever the zone and the day, a time of day lies within a day of now, the clock shows it then if it
// shows it at all, and what is shown of it reads back as it was.
func TestEveryTimeOfDayIsFound(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		in := zone(t, rapid.SampledFrom(append([]string{"Asia/Kathmandu", "UTC", "America/St_Johns"}, zones...)).Draw(rt, "zone"))
		day := rapid.IntRange(0, 366).Draw(rt, "day")
		if rapid.Bool().Draw(rt, "change") {
			day = rapid.SampledFrom([]int{66, 67, 87, 88, 93, 94, 95, 275, 276, 277, 296, 297, 298, 303, 304, 305}).Draw(rt, "day of change")
		}
		now := time.Date(2026, 1, 1, 0, rapid.IntRange(0, 24*60-1).Draw(rt, "minute"), 0, 0, time.UTC).AddDate(0, 0, day).In(in)
		clock := time.Duration(rapid.IntRange(0, 24*60-1).Draw(rt, "clock")) * time.Minute
		m := roster.Moment{Clock: clock, IsClock: true}
		got := TimeOfDay(m, now).In(in)
		if d := got.Sub(now); d < -before || d > 24*time.Hour-before+time.Hour {
			rt.Fatalf("%v at %v is %v away", clock, now, d)
		}
		shown := time.Duration(got.Hour())*time.Hour + time.Duration(got.Minute())*time.Minute
		// a time that is left out is shown by as much later as the clock goes ahead: half an hour or an hour
		if late := (shown - clock + 24*time.Hour) % (24 * time.Hour); late != 0 {
			_, offset := got.Add(-3 * time.Hour).Zone()
			if _, after := got.Zone(); time.Duration(after-offset)*time.Second != late {
				rt.Fatalf("%v at %v is %v", clock, now, got)
			}
		}
		m.Clock = shown
		if again := TimeOfDay(m, now).In(in); again.Format("2006-01-02 15:04") != got.Format("2006-01-02 15:04") {
			rt.Fatalf("%v at %v is %v, and that reads back as %v", clock, now, got, again)
		}
	})
}

// A roster that is read on the days on which the clock changes means the times that stand in it.
func TestARosterOnTheDayOfTheChange(t *testing.T) {
	for _, now := range []time.Time{
		time.Date(2026, 3, 29, 18, 0, 0, 0, zone(t, "Europe/Berlin")),
		time.Date(2026, 10, 25, 18, 0, 0, 0, zone(t, "Europe/Berlin")),
		time.Date(2026, 4, 5, 18, 0, 0, 0, zone(t, "Australia/Lord_Howe")),
	} {
		d, _, clock := newTestDesk(t)
		clock.now = now
		must(t, d, OpenNight{Settings: DefaultSettings(1), Courts: 1},
			ImportRoster{Entries: []roster.Entry{{Name: "Ada", Arrive: moment(t, "19:40"), Leave: moment(t, "0:30")}}})
		a := d.Ledger().Night().Roll[0]
		if due, leaves := a.Due.In(now.Location()), a.Leaves.In(now.Location()); due.Format("2 15:04") != now.Format("2 ")+"19:40" || leaves.Format("15:04") != "00:30" || !leaves.After(due) {
			t.Errorf("on %v Ada comes at %v and leaves at %v", now, due, leaves)
		}
	}
}
