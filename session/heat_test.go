package session

import (
	"math"
	"strings"
	"testing"
	"time"

	"club/quadrille/session/care"
)

// The air that was measured last is kept with its time, undone and replayed like anything else, and each night begins
// without it.
func TestTheHeatOfANight(t *testing.T) {
	d, log, clock := newTestDesk(t)
	refused(t, d, MeasureHeat{care.Air{Fahrenheit: 91, Humidity: 60}}, ErrNoNight.Error())
	withPeople(t, d, 1, 4, Rounds)
	for _, c := range []struct {
		air  care.Air
		want string
	}{
		{care.Air{Fahrenheit: 91, Humidity: 101}, "between 0 and 100 %"},
		{care.Air{Fahrenheit: 91, Humidity: math.NaN()}, "between 0 and 100 %"},
		{care.Air{Fahrenheit: 150, Humidity: 50}, "between -40 °C and 60 °C"},
		{care.Air{Fahrenheit: math.Inf(-1), Humidity: 50}, "between -40 °C and 60 °C"},
	} {
		refused(t, d, MeasureHeat{c.air}, c.want)
	}
	first, second := care.Air{Fahrenheit: 82, Humidity: 60}, care.Air{Fahrenheit: 95, Humidity: 60}
	must(t, d, MeasureHeat{first})
	at := clock.now
	clock.now = clock.now.Add(59 * time.Minute)
	must(t, d, MeasureHeat{second})
	if got := d.Ledger().Newest(); !strings.Contains(got, `feels like 45.1 °C`) || !strings.Contains(got, `class "danger"`) {
		t.Errorf("history says %q", got)
	}
	if h := d.Ledger().Night().Heat; h.Air != second || !h.At.Equal(clock.now) || h.Overdue(clock.now) != 0 {
		t.Errorf("measured %+v", h)
	}
	checkReplay(t, d, log)
	must(t, d, Undo{})
	if h := d.Ledger().Night().Heat; h.Air != first || !h.At.Equal(at) || h.Overdue(clock.now) != 1 || h.Overdue(clock.now.Add(time.Minute)) != 2 {
		t.Errorf("after the undo %+v", h)
	}
	checkReplay(t, d, log)
	must(t, d, EndNight{}, OpenNight{Settings: DefaultSettings(1), Courts: 1})
	if d.Ledger().Night().Heat != nil {
		t.Error("a night begins with the heat of another")
	}
}

// When the laptop's clock is set, the heat is as old as it was.
func TestTheHeatIsAsOldAsItWas(t *testing.T) {
	l := playing(t)
	next, err := record(l, evening, []Event{HeatMeasured{care.Air{Fahrenheit: 91, Humidity: 60}}})
	if err != nil {
		t.Fatal(err)
	}
	if l, err = l.Extend(next); err != nil {
		t.Fatal(err)
	}
	if next, err = record(l, evening.Add(3*time.Hour), []Event{ClockMoved{By: (3 * time.Hour).Milliseconds()}}); err != nil {
		t.Fatal(err)
	}
	if l, err = l.Extend(next); err != nil {
		t.Fatal(err)
	}
	if got := l.Night().Heat.Overdue(evening.Add(3 * time.Hour)); got != 0 {
		t.Errorf("due %d times right after the clock was put ahead", got)
	}
}
