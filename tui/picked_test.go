package tui

import (
	"testing"

	"club/quadrille/scheduler"
	"club/quadrille/session"
)

// TestTheSettingsShowTheWayThatWasPicked, keep it where something else is changed, and say where it is taken back.
func TestTheSettingsShowTheWayThatWasPicked(t *testing.T) {
	s := planning(t, 16, 2, 8).resize(120, 40)
	strict := session.Way{Benching: scheduler.StrictBench}
	s.press("r")
	for _, way := range s.m.plan.Ways {
		if way.Way == strict && s.night().Settings.Benching == scheduler.MixedBench {
			s.do(session.PickWay{Way: strict, Rounds: way.Rounds})
		}
	}
	if s.night().Picked == nil {
		t.Fatal("no strict bench to pick")
	}
	s.press("o", "e").shows("Bench              strict")
	for range 5 {
		s.press("down")
	}
	s.press("9", "enter")
	if n := s.night(); n.Settings.Rounds != 9 || n.Way() != strict || n.Settings.Benching != scheduler.MixedBench {
		t.Errorf("after nine rounds were asked for the night has %d, and the way is %+v, the setting %v", n.Settings.Rounds, n.Way(), n.Settings.Benching)
	}
	s.press("o", "e", "up", "up", "right").shows("< mixed >").press("enter").shows("pick this one in the rotation (r, m)")
	s.press("esc", "o", "e")
	for range 8 {
		s.press("down")
	}
	s.press("right").shows("< gentle >").press("enter")
	if n := s.night(); n.Picked != nil || n.Way().Benching != scheduler.StrictBench || n.Way().Leveling() != scheduler.GentleLevels {
		t.Errorf("gentle levels leave the way %+v, picked %v", n.Way(), n.Picked)
	}
}

// TestADecisionByHandIsReleased after other things were done, without undoing these.
func TestADecisionByHandIsReleased(t *testing.T) {
	s := called(t, 2, 11).press("r", "x").shows("release what is decided by hand (nothing is)")
	s.press("r").press("esc", "+", "hug", "enter", "iri", "enter", "enter").shows("by hand")
	s.press("c", "117", "enter").press("r", "x", "r").shows("Release which?", "Hugo Vale & Iris Vale as partners in round 2").press("1")
	if n := s.night(); len(n.Pins) != 0 || len(n.Running()) != 1 {
		t.Errorf("the release leaves pins %+v and %d games:\n%s", n.Pins, len(n.Running()), s.m.View())
	}
	if d := s.desk.Ledger().Decisions(); len(d) != 0 {
		t.Errorf("still listed: %+v", d)
	}
}
