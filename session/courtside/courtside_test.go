package courtside

import (
	"errors"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/sessiontest"
)

const secret = "000102030405060708090a0b0c0d0e0f"

// TestWhatACourtShows, from the first call to the end of the night: the game that goes on, or the result of the last
// one, and what was sent, to whoever has the code and to nobody else.
func TestWhatACourtShows(t *testing.T) {
	d := sessiontest.Open(t, sessiontest.Flow(session.Rounds), 2, 9)
	if h := Of(d.Ledger(), d.Clock); len(h.Codes()) != 0 {
		t.Errorf("before scores are wanted there are the codes %v", h.Codes())
	}
	d.Must(session.ChooseCourtScores{On: true, Pass: session.BothSent, Secret: secret})
	code := d.Night().CourtCode("2")
	look := func() Court {
		t.Helper()
		c, ok := Of(d.Ledger(), d.Clock).Court(code)
		if !ok || c.Name != "2" || c.Night != "test night" || c.Pass != session.BothSent {
			t.Fatalf("the code of court 2 shows %+v", c)
		}
		return c
	}
	if c := look(); c.Game != 0 || c.Result != "" {
		t.Errorf("before the first call %+v", c)
	}
	d.Must(session.CallRound{}, session.HoldPlay{Why: "heat"})
	if c := look(); c.Game != d.On("2").ID || c.Rules.To != 11 || !c.Held || !strings.HasPrefix(c.A, "Person ") || !strings.Contains(c.A, " & ") || c.A == c.B {
		t.Errorf("while a game goes on %+v", c)
	}
	d.Must(session.ResumePlay{}, session.ProposeScore{Code: code, Game: d.On("2").ID, By: scoring.B, A: 11, B: 7})
	if c := look(); len(c.Sent) != 1 || c.Team(c.Sent[0].By) != c.B {
		t.Errorf("after a score was sent %+v", c)
	}
	d.Finish(d.On("2"), 11, 8, scoring.Played)
	if c := look(); c.Game != 0 || c.Result != "11-8" || c.A == "" || len(c.Sent) != 0 {
		t.Errorf("after the game %+v", c)
	}
	h := Of(d.Ledger(), d.Clock)
	for _, wrong := range []string{"", "2", code[1:], strings.ToLower(code), code + "=", strings.Repeat("A", len(code))} {
		if c, ok := h.Court(wrong); ok {
			t.Errorf("%q shows %+v", wrong, c)
		}
	}
	if len(h.Codes()) != 2 || h.Codes()["2"] != code || h.Codes()["1"] == code || len(code) != 26 {
		t.Errorf("the codes are %v", h.Codes())
	}
	d.Must(session.EndNight{SetAside: true})
	if _, ok := Of(d.Ledger(), d.Clock).Court(code); ok {
		t.Error("the code holds after the night")
	}
}

// TestHiddenPeopleAreHiddenHereToo: names are those of the hall.
func TestHiddenPeopleAreHiddenHereToo(t *testing.T) {
	d := sessiontest.Open(t, sessiontest.Flow(session.Rounds), 1, 4)
	for _, p := range d.Ledger().Club().People {
		p.Hidden = true
		d.Must(session.ChangePerson{Person: p})
	}
	d.Must(session.CallRound{}, session.ChooseCourtScores{On: true, Secret: secret})
	c, _ := Of(d.Ledger(), d.Clock).Court(d.Night().CourtCode("1"))
	if strings.Contains(c.A+c.B, "Person") || !strings.Contains(c.A+c.B, "somebody") {
		t.Errorf("hidden people are called %q and %q", c.A, c.B)
	}
}

// TestABoardIsTheFoldOfItsRallies, and refuses what are none.
func TestABoardIsTheFoldOfItsRallies(t *testing.T) {
	c := Court{Rules: session.DefaultSettings(1).Scoring}
	if b, err := c.Board(""); err != nil || b.Call != "0-0-2" || b.Over || b.Serving != scoring.A {
		t.Errorf("before the first rally %+v, %v", b, err)
	}
	if b, err := c.Board("aaabba"); err != nil || b.Score != (scoring.Score{A: 3, B: 1}) || b.Serving != scoring.B || b.Call != "1-3-2" {
		t.Errorf("%+v, %v", b, err)
	}
	for _, wrong := range []string{"abc", "a1", strings.Repeat("ab", MostRallies)} {
		if _, err := c.Board(wrong); !errors.Is(err, ErrRallies) {
			t.Errorf("%.20q: %v", wrong, err)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[abAB ]{0,80}`).Draw(t, "rallies")
		b, err := c.Board(text)
		won, _ := scoring.ParseRallies(text)
		want := scoring.Fold(c.Rules, scoring.A, won)
		if err != nil || b.Score != want.Score || b.Over != want.Done || b.Serving != want.Serving || (b.Call == "") != b.Over {
			t.Fatalf("%q gives %+v, %v", text, b, err)
		}
		again, err := c.Board(b.Rallies)
		if err != nil || again != b || !strings.HasPrefix(strings.ToLower(strings.ReplaceAll(text, " ", "")), b.Rallies) {
			t.Fatalf("%q gives %+v, and that %+v, %v", text, b, again, err)
		}
		if b.Over {
			if _, err := c.Rules.Final(b.Score.A, b.Score.B, scoring.Played); err != nil {
				t.Fatalf("%q ends at %v: %v", text, b.Score, err)
			}
		}
	})
}
