package session

import (
	"fmt"
	"testing"

	"club/quadrille/scheduler"
)

// TestACertificateIsOfWhatWasPlayed: settings that nothing was played under change nothing about it.
func TestACertificateIsOfWhatWasPlayed(t *testing.T) {
	for _, flow := range []Flow{Rounds, Rolling} {
		d, _, clock := newTestDesk(t)
		withPeople(t, d, 2, 10, flow)
		if flow == Rounds {
			for range 4 {
				playRound(t, d, clock)
			}
		} else {
			must(t, d, BeginPlay{})
			score(t, d, clock, 8)
			must(t, d, EndCalls{})
			score(t, d, clock, 2)
		}
		before := Certify(d.Ledger().Club(), d.Ledger().Night(), clock.now)
		for _, format := range scheduler.Formats() {
			for _, to := range []Flow{Rounds, Rolling} {
				must(t, d, changed(d, func(s *Settings) { s.Flow, s.Format = to, format }))
				if after := Certify(d.Ledger().Club(), d.Ledger().Night(), clock.now); after != before {
					t.Errorf("played by %s, the certificate was\n%+v\nand is, with %s and %s to come,\n%+v", flow, before, to, format, after)
				}
			}
		}
	}
}

// TestBoundsHoldForANightOfSeveralFormats: no measure is below what is said to be possible, of the night and of
// the plan.
func TestBoundsHoldForANightOfSeveralFormats(t *testing.T) {
	for _, formats := range [][]scheduler.Format{
		{scheduler.Rotating, scheduler.Mixed},
		{scheduler.Mixed, scheduler.Rotating},
		{scheduler.Pairs, scheduler.Rotating},
		{scheduler.Rotating, scheduler.Pairs},
		{scheduler.Ladder, scheduler.Mixed, scheduler.Pairs},
	} {
		d, _, clock := newTestDesk(t)
		s := DefaultSettings(7)
		s.Format, s.Rounds = formats[0], 3*len(formats)
		must(t, d, OpenNight{Settings: s, Courts: 2})
		for i := range 9 {
			must(t, d, AddGuest{Name: fmt.Sprintf("Person %d", i), Group: string("xy"[i%2])})
		}
		for _, format := range formats {
			must(t, d, changed(d, func(s *Settings) { s.Format = format }))
			for range 3 {
				playRound(t, d, clock)
				plan, err := PlanRotation(t.Context(), d.Ledger(), clock.now)
				if err != nil {
					t.Fatal(err)
				}
				for what, c := range map[string]scheduler.Certificate{
					"night": Certify(d.Ledger().Club(), d.Ledger().Night(), clock.now), "plan": plan.Certificate,
				} {
					for _, v := range []scheduler.Value{
						c.PartnerRepeats, c.PartnerEvenness, c.OpponentEvenness, c.MeetingEvenness, c.SitoutSpread, c.BenchedTwice, c.CourtSpread,
					} {
						if v.Gap() < 0 {
							t.Errorf("%v: the %s has a measure below its bound: %+v", formats, what, c)
						}
					}
				}
			}
		}
	}
}
