package tui

import (
	"strings"
	"testing"

	"club/quadrille/scoring"
	"club/quadrille/session"
)

// change changes the settings of the night that goes on.
func (s *stage) change(how func(*session.Settings)) *stage {
	s.t.Helper()
	settings := s.night().Settings
	how(&settings)
	return s.do(session.ChangeSettings{Settings: settings})
}

// undoIn undoes what the history says of something that is not the newest.
func (s *stage) undoIn(what string) *stage {
	s.t.Helper()
	s.press("h")
	for range 40 {
		for _, l := range s.lines() {
			if strings.HasPrefix(l, "> ") && strings.Contains(l, what) {
				return s.press("enter", "u")
			}
		}
		s.press("down")
	}
	s.t.Fatalf("the history has no %q\n%s", what, s.m.View())
	return s
}

// TestAnUndoThatIsRefusedSaysSoInFull: on 80 columns all of the reason and of the way out is there, also when
// the action that stands against it has long names in it.
func TestAnUndoThatIsRefusedSaysSoInFull(t *testing.T) {
	s := newStage(t).people(2, 9, nil).change(func(n *session.Settings) { n.Flow = session.Rolling }).press("n").shows("play begun")
	s.undoIn("settings: rolling").shows(`"play begun" rests on it: change the flow back (o)`)
	s.press("esc", "esc").do(session.EndCalls{}).pass(10).press("c", "117", "enter", "117", "enter").press("esc")
	s.do(session.CallGame{Court: "1"}).press("c", "home", "enter", "a").press("esc")
	s.undoIn("court 1: " + s.m.context().Names.Full(s.night().Game(3).A[0])).shows("rests on it; undo that first")
}

// TestABoardGoesOnUnderItsOwnRules: to 15, with the settings that said so undone.
func TestABoardGoesOnUnderItsOwnRules(t *testing.T) {
	s := newStage(t).people(1, 4, nil).change(func(n *session.Settings) {
		n.Scoring = scoring.Rules{Scoring: scoring.RallyScoring, To: 15, WinBy: 2}
	})
	s.press("n", "enter").press(strings.Split(strings.Repeat("a", 12), "")...).shows("12")
	s.press("esc").undoIn("settings:").shows("undid: settings")
	s.press("c", "enter").shows("12").hides("over", "decided")
	s.press("a").hides("decided").press("a", "a").shows("Game over")
	if got := s.final(1); got != "15-0" {
		t.Errorf("the score is %q, want 15-0", got)
	}
}

// TestRolledGamesInANightOfRounds: they are no games of a round, and their scores can be corrected until the
// next round is called.
func TestRolledGamesInANightOfRounds(t *testing.T) {
	s := called(t, 1, 5).pass(10).press("117", "enter").change(func(n *session.Settings) { n.Flow = session.Rolling })
	s.press("n").shows("play begun").change(func(n *session.Settings) { n.Flow = session.Rounds })
	s.shows("arrows to a court").hides("round 1: arrows").press("r").hides("on court now").press("c")
	s.pass(10).press("118", "enter").press("119", "enter").shows("corrected to 11-9")
	if a, b := s.final(1), s.final(2); a != "11-7" || b != "11-9" {
		t.Errorf("the games are %q and %q, want 11-7 and 11-9", a, b)
	}
	s.press("n").shows("round 2 called")
}

// TestRoundsOfARollingNight stay in view when the flow has changed.
func TestRoundsOfARollingNight(t *testing.T) {
	s := called(t, 1, 5).pass(10).press("117", "enter").change(func(n *session.Settings) { n.Flow = session.Rolling })
	s.press("r").shows("Tonight is rolling now: no more rounds are planned", "Round 1  played").hides("there are no rounds")
}

// TestWhatWasTakenInAnEmergencyIsForTonightOnly: the next night is proposed as the club plays as a rule. The
// options say what is different tonight, and one key keeps it.
func TestWhatWasTakenInAnEmergencyIsForTonightOnly(t *testing.T) {
	for _, keep := range []bool{false, true} {
		s := newStage(t).people(2, 12, nil)
		s.press("o").hides("For tonight only").press("esc")
		s.press("r", "p").shows("for tonight only").press("right", "right", "-", "-", "-", "end", "enter").shows("Saved: settings:")
		tonight := s.night().Settings
		s.press("o").shows("For tonight only: ", "minutes a round (usually 15)")
		if keep {
			s.press("k").shows("Saved: kept as usual").press("o").hides("For tonight only").press("k").shows("all is as usual")
		} else {
			s.press("e", "down", "down", "down", "down", "down", "down").shows("usually 15; ").press("esc", "esc")
		}
		s.press("esc", "esc").do(session.EndNight{}).press("n").shows("Open tonight").press("enter")
		next := s.night().Settings
		want := session.DefaultSettings(7)
		if keep {
			want = tonight
			want.Closing = next.Closing
		}
		if next != want || tonight == session.DefaultSettings(7) {
			t.Errorf("kept as usual: %v; tonight %+v, the next night %+v", keep, tonight, next)
		}
	}
}

// TestATeamThatLeadsRetires: which team it was is asked, what comes of it is said before it is saved, and under
// the table; in the menu of the game, in the form that corrects a score, and where retirements count as well.
func TestATeamThatLeadsRetires(t *testing.T) {
	for _, count := range []bool{false, true} {
		s := newStage(t).people(1, 4, nil).change(func(n *session.Settings) { n.Stopped = count }).press("n")
		s.press("enter", "m", "g").shows("Which team retires?", "The other team wins").press("esc", "esc", "esc", "esc", "c")
		s.press("9", " ", "4", "r").shows("which team retired?", "a  Agnes & Dario    b  Bram & Cleo", "say which team retired, a or b")
		s.press("enter").shows("! which team retired? a or b", "a  Agnes & Dario    b  Bram & Cleo")
		if got := s.final(1); got != "" {
			t.Fatalf("nobody said who retired, and the score is %q", got)
		}
		effect, foot := "Not in the table; lost in the ratings.", "Left out: 1 retired. Ratings count retired games."
		if count {
			effect, foot = "In the table 9-11; lost in the ratings.", "Counted with the fewest points that win: 1 retired. Ratings count retired games."
		}
		s.press("a").shows("Agnes & Dario retired at 9-4. " + effect).press("enter").press("s").shows(foot)
		if got := s.final(1); got != "9-4 retired, B won" {
			t.Errorf("the score is %q", got)
		}
		s.press("h", "enter", "e").shows("9-4 retired a").press("9-4 retired", "enter").shows("say which team retired: write 9-4 retired a, or 9-4 retired b")
	}
}

// TestAnUnfinishedGameIsTold: on the bench, at the door, and where a substitute is chosen.
func TestAnUnfinishedGameIsTold(t *testing.T) {
	s := called(t, 1, 5)
	g := s.night().Game(1)
	s.do(session.Substitute{Game: 1, Out: g.A[0], In: s.night().Bench()[0].Person})
	name := s.m.context().Names.Full(g.A[0])
	s.press("b")
	for _, l := range s.lines() {
		if strings.Contains(l, name) {
			if f := strings.Fields(l); !strings.Contains(l, "1 unfinished") || f[len(f)-1] != "0" || f[len(f)-2] != "0" {
				t.Errorf("the bench says %q", l)
			}
		}
	}
	s.shows("1 unfinished").press("d").shows("here, 1 unfinished").press("esc", "ctrl+b")
	s.press("c", "x", "1").shows("games: 0, 1 unfinished")
}

// A night that becomes rolling while games go on frees no court at once: the line Next does not promise it.
func TestPlayThatBeginsWhileGamesGoOn(t *testing.T) {
	s := called(t, 1, 5).change(func(n *session.Settings) { n.Flow = session.Rolling })
	s.shows("press n to begin play: a court that frees calls the next four").hides("each court gets")
	s.press("n").shows("play begun")
}
