package session

import (
	"slices"
	"strings"
	"testing"
	"time"

	"club/quadrille/scheduler"
)

// TestAUsualNightOpensAsItWasKept: settings, venue, courts and the closing time on the clock of the hall, whatever
// nights came between.
func TestAUsualNightOpensAsItWasKept(t *testing.T) {
	zone := time.FixedZone("hall", 2*3600)
	d, log, clock := newTestDesk(t)
	s := DefaultSettings(3)
	s.Flow, s.Benching, s.Rounds = Rolling, scheduler.StrictBench, 6
	s.Closing = evening.Add(2*time.Hour + 30*time.Minute)
	closing := s.Closing.In(zone).Format("15:04")
	day := evening.In(zone).Weekday().String()
	must(t, d, OpenNight{Name: "n", Settings: s, Courts: 3, Venue: "Dock"}, NoteCourt{"2", "slow"}, CloseCourt{"1"})
	refused(t, d, KeepUsualNight{Name: "", Zone: zone}, "needs a name")
	refused(t, d, KeepUsualNight{Name: "x", Day: "someday", Zone: zone}, "no day of the week")
	for closing, ok := range map[string]bool{"": true, "21:30": true, "21:70": false, "5": false, "soon": false} {
		err := (UsualNight{Name: "x", Settings: DefaultSettings(1), Courts: 1, Closing: closing}).validate()
		if (err == nil) != ok || !ok && !strings.Contains(err.Error(), "write a time such as 21:30") {
			t.Errorf("closing time %q: %v", closing, err)
		}
	}
	refused(t, d, DropUsualNight{"Doubles"}, `no usual night is called "Doubles"`)
	must(t, d, KeepUsualNight{Name: " Doubles", Day: day[:3], Zone: zone})
	refused(t, d, KeepUsualNight{Name: "Doubles", Day: day, Zone: zone}, "kept just so already")
	checkReplay(t, d, log)
	kept := d.Ledger().Club().UsualNights[0]
	want := s
	want.Closing, want.Seed = time.Time{}, 0
	if kept != (UsualNight{"Doubles", day, "Dock", 2, want, closing}) {
		t.Fatalf("kept %+v", kept)
	}
	if text := "2 courts at Dock until " + closing + ", rolling, rotating, side-out to 11, win by 2"; kept.Words() != text {
		t.Errorf("it is %q, want %q", kept.Words(), text)
	}
	if kept.Called() != "Doubles ("+day+")" || (UsualNight{Name: "tuesday club", Day: "Tuesday"}).Called() != "tuesday club" {
		t.Errorf("it is called %q", kept.Called())
	}
	must(t, d, EndNight{}, OpenNight{Settings: DefaultSettings(1), Courts: 7}, EndNight{})

	clock.now = clock.now.AddDate(0, 0, 7)
	opening := d.Ledger().Club().NightsOffered(clock.now.In(zone))[0].Opening(clock.now.In(zone), 99)
	must(t, d, opening)
	n := d.Ledger().Night()
	want.Seed, want.Closing = 99, s.Closing.AddDate(0, 0, 7)
	if n.Settings != want || n.Venue != "Dock" || n.Name != "Doubles "+clock.now.In(zone).Format("2 January") {
		t.Errorf("opened %q at %q with %+v, want %+v", n.Name, n.Venue, n.Settings, want)
	}
	if !slices.Equal(n.Courts, []Court{{ID: "2", Open: true, Note: "slow"}, {ID: "3", Open: true}}) {
		t.Errorf("on %+v", n.Courts)
	}
	if got := d.Ledger().Club().Unusual(); len(got) > 0 {
		t.Errorf("unusual on such a night: %q", got)
	}
	must(t, d, changed(d, func(s *Settings) { s.Rounds, s.Closing = 4, time.Time{} }), KeepUsualNight{Name: "doubles", Zone: zone})
	if u := d.Ledger().Club().UsualNights; len(u) != 1 || u[0].Settings.Rounds != 4 || u[0].Day != "" || u[0].Closing != "" {
		t.Errorf("kept anew it is %+v", u)
	}
	must(t, d, Undo{})
	if u := d.Ledger().Club().UsualNights; len(u) != 1 || u[0] != kept {
		t.Errorf("with that undone it is %+v", u)
	}
	must(t, d, DropUsualNight{"doubles"})
	if u := d.Ledger().Club().UsualNights; len(u) != 0 {
		t.Errorf("forgotten, and still there: %+v", u)
	}
	for i := range MaxUsualNights {
		must(t, d, KeepUsualNight{Name: string(rune('a' + i)), Zone: zone})
	}
	refused(t, d, KeepUsualNight{Name: "one more", Zone: zone}, "9 usual nights")
	must(t, d, changed(d, func(s *Settings) { s.Rounds = 9 }), KeepUsualNight{Name: "A", Zone: zone})
	checkReplay(t, d, log)
}

// TestTodaysNightIsOfferedFirst: then those of any day, then those to come.
func TestTodaysNightIsOfferedFirst(t *testing.T) {
	c := &Club{UsualNights: []UsualNight{{Name: "m", Day: "Monday"}, {Name: "any"}, {Name: "f", Day: "Friday"}, {Name: "t", Day: "Tuesday"}, {Name: "th", Day: "Thursday"}}}
	var got []string
	for _, u := range c.NightsOffered(time.Date(2026, 11, 26, 19, 0, 0, 0, time.UTC)) { // a Thursday
		got = append(got, u.Name)
	}
	if !slices.Equal(got, []string{"th", "any", "f", "m", "t"}) {
		t.Errorf("offered %q", got)
	}
}

func TestParseDay(t *testing.T) {
	for text, want := range map[string]string{"": "", " any ": "", "tu": "Tuesday", "TUES": "Tuesday", "Sunday": "Sunday", "sa": "Saturday"} {
		if got, err := ParseDay(text); err != nil || got != want {
			t.Errorf("%q is %q, %v", text, got, err)
		}
	}
	for _, text := range []string{"t", "tuesdays", "1", "everyday"} {
		if got, err := ParseDay(text); err == nil {
			t.Errorf("%q is %q", text, got)
		}
	}
}
