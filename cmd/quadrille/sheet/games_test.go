package sheet

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"club/quadrille/scoring"
	"club/quadrille/session"
)

const header = "a1,a2,b1,b2,score_a,score_b\n"

func TestGamesAsSpreadsheetsSaveThem(t *testing.T) {
	tests := []struct {
		name, text string
		want       []string // a side, b side, night, winner
	}{
		{"doubles", header + "Ann,Bob,Cas,Dan,11,7\n", []string{"[Ann Bob] [Cas Dan] 11-7 -1 "}},
		{"singles", header + "Ann,,Cas,,7,11\n", []string{"[Ann] [Cas] 7-11 1 "}},
		{"a draw on time", header + "Ann,Bob,Cas,Dan,9,9\n", []string{"[Ann Bob] [Cas Dan] 9-9 0 "}},
		{"columns in any order, upper case, semicolons", "Score_B;SCORE_A;b1;a1;Night\n7;11;Bea;Ann;2026-01-08\n", []string{"[Ann] [Bea] 11-7 -1 2026-01-08"}},
		{"byte order mark, Windows line ends, quotes", "\xef\xbb\xbf" + "a1,b1,score_a,score_b\r\n\"Ann, the elder\",Bea,11,7\r\n", []string{"[Ann, the elder] [Bea] 11-7 -1 "}},
		{"one person in two spellings", header + "Ann,Bob,Cas,Dan,11,7\nANN,bob,Eve,Fay,11,7\n", []string{"[Ann Bob] [Cas Dan] 11-7 -1 ", "[Ann Bob] [Eve Fay] 11-7 -1 "}},
		{"what was not played out", "a1,b1,score_a,score_b,how\nAnn,Bea,,,void\nAnn,Bea,11,0,Walkover\nAnn,Bea,9,5,retired\nAnn,Bea,9,5,retired a\nAnn,Bea,5,5,Retired B\nAnn,Bea,0,11,walkover b\nAnn,Bea,9,5,timed\nAnn,Bea,11,5,played\n", []string{
			"[Ann] [Bea] 0-0 0  void", "[Ann] [Bea] 11-0 -1  walkover", "[Ann] [Bea] 9-5 -1  retired", "[Ann] [Bea] 9-5 1  retired",
			"[Ann] [Bea] 5-5 -1  retired", "[Ann] [Bea] 0-11 1  walkover", "[Ann] [Bea] 9-5 -1  timed", "[Ann] [Bea] 11-5 -1 ",
		}},
		{"a name that was kept from being a formula", header + "'=Ann,Bob,Cas,Dan,11,7\n", []string{"[=Ann Bob] [Cas Dan] 11-7 -1 "}},
		{"escape sequences", header + "A\x1b[31mnn,Bob,Cas,Dan,11,7\n", []string{"[Ann Bob] [Cas Dan] 11-7 -1 "}},
		{"no games", header, nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			read, err := Games(strings.NewReader(tt.text))
			if err != nil {
				t.Fatal(err)
			}
			var got []string
			for _, g := range read.Games {
				got = append(got, describe(g))
			}
			if !reflect.DeepEqual(got, tt.want) {
				t.Errorf("got %q, want %q", got, tt.want)
			}
		})
	}
}

func TestGamesRefusesWithTheLine(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"nothing", "", "the games are empty"},
		{"no header", "Ann,Bob,Cas,Dan,11,7\n", "no column a1"},
		{"a column twice", "a1,a1,b1,score_a,score_b\n", "the column a1 twice"},
		{"two against one", header + "Ann,Bob,Cas,,11,7\n", "games line 2: 2 play against 1"},
		{"nobody", header + "Ann,Bob,,Dan,11,7\n", "games line 2: team b: the first name is missing"},
		{"twice in one game", header + "Ann,Bob,Cas,Dan,11,7\nAnn,Bob,Cas,ann,11,7\n", "games line 3: Ann stands twice"},
		{"no score", header + "Ann,Bob,Cas,Dan,11,\n", "games line 2: score_b: \"\" is no number"},
		{"a score below zero", header + "Ann,Bob,Cas,Dan,-1,11\n", "games line 2: score_a: \"-1\" is no number"},
		{"an unknown end", "a1,b1,score_a,score_b,how\nAnn,Bea,11,2,\nAnn,Bea,11,2,abandoned\n", "games line 3: how \"abandoned\" is not known: write played, timed"},
		{"an end of no team", "a1,b1,score_a,score_b,how\nAnn,Bea,11,2,retired c\n", "games line 2: how \"retired c\" is not known"},
		{"an end that has no team", "a1,b1,score_a,score_b,how\nAnn,Bea,11,2,void a\n", "games line 2: how \"void a\" is not known"},
		{"nobody ahead", "a1,b1,score_a,score_b,how\nAnn,Bea,5,5,retired\n", "games line 2: 5-5 does not tell who won: write \"retired a\""},
		{"a workbook", "PK\x03\x04 xl/", "save it as CSV"},
		{"a broken quote", header + "Ann,\"Bob,Cas,Dan,11,7\n", "no CSV"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Games(strings.NewReader(tt.text))
			if err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("error %v, want one with %q", err, tt.want)
			}
		})
	}
}

func TestWhatIsLeftOutIsCounted(t *testing.T) {
	read, err := Games(strings.NewReader("a1,b1,score_a,score_b,how,weather\nAnn,Bea,,,void\nAnn,Bea,11,0,walkover\nAnn,Bea,9,5,retired\nAnn,Bea,5,11,\nAnn,Bea,,,void\n"))
	if err != nil || strings.Join(read.Notes, "; ") != "not used: the column weather" {
		t.Fatalf("%q, %v", read.Notes, err)
	}
	for _, c := range []struct {
		ways []scoring.How
		kept int
		text string
	}{
		{nil, 5, ""},
		{[]scoring.How{scoring.Timed}, 5, ""},
		{[]scoring.How{scoring.Retired}, 4, "1 game left out: 1 retired"},
		{[]scoring.How{scoring.Retired, scoring.Walkover, scoring.Void}, 1, "4 games left out: 1 retired, 1 walkover, 2 void"},
	} {
		if kept, text := Without(read.Games, c.ways...); len(kept) != c.kept || text != c.text {
			t.Errorf("without %v: %d games, %q", c.ways, len(kept), text)
		}
	}
}

func FuzzGames(f *testing.F) {
	f.Add(header + "Ann,Bob,Cas,Dan,11,7\n")
	f.Add("Score_B;SCORE_A;b1;a1\n7;11;Bea;Ann\n")
	f.Add("\xef\xbb\xbfa1,b1,score_a,score_b,how\n\"x\ny\",z,1,2,void")
	f.Fuzz(func(t *testing.T, text string) {
		read, err := Games(strings.NewReader(text))
		if err != nil {
			if read.Games != nil {
				t.Fatal("games beside an error")
			}
			return
		}
		for _, g := range read.Games {
			if len(g.A) != len(g.B) || len(g.A) < 1 || len(g.A) > 2 || g.ScoreA < 0 || g.ScoreB < 0 {
				t.Fatalf("no game: %s", describe(g))
			}
			for _, name := range append(append([]string{}, g.A...), g.B...) {
				if clean, err := session.CleanName(name); err != nil || clean != name {
					t.Fatalf("the name %q is not clean", name)
				}
			}
		}
	})
}

func describe(g Game) string {
	text := fmt.Sprintf("%v %v %d-%d %d %s", g.A, g.B, g.ScoreA, g.ScoreB, g.Winner, g.Night)
	if g.How != scoring.Played {
		text += " " + g.How.String()
	}
	return text
}
