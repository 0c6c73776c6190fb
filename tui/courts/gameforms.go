package courts

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// noteField is the last field of each correction.
var noteField = dialog.Field{Label: "Note", Hint: "why, for the record; may stay empty"}

// try is the intent to add an entry, or what is wrong with it, so that the form can say it.
func try(g *session.Game, e scoring.Entry) (ui.Intent, error) {
	if _, err := g.Sheet().Add(e); err != nil {
		return nil, err
	}
	return note(g, e), nil
}

// setRightForm changes how a game stands, whatever its rallies say.
func setRightForm(c ui.Context, g *session.Game) ui.Dialog {
	set, names := g.State.Setting(), seatNames(c, g)
	a, b := c.Names.Team(g.A), c.Names.Team(g.B)
	fields := []dialog.Field{
		{Label: "Points of " + a, Value: strconv.Itoa(set.Score.A), Hint: "enter takes the form as it is"},
		{Label: "Points of " + b, Value: strconv.Itoa(set.Score.B), Hint: "enter takes the form as it is"},
		{Label: "Serves", Value: names.Player(set.Server), Options: players(g, names), Hint: "who serves next"},
	}
	if set.Number > 0 {
		fields = append(fields, dialog.Field{Label: "Server number", Value: strconv.Itoa(set.Number), Options: []string{"1", "2"}, Hint: "the third number of the call"})
	}
	if !g.Rules.Singles {
		for side, who := range []string{a, b} {
			s := scoring.Team(side)
			fields = append(fields, dialog.Field{
				Label: "Right box of " + who, Value: names.Player(set.Right[side]), Options: partners(names, s), Hint: "as the team itself sees it, facing the net",
			})
		}
	}
	send := func(v []string) (ui.Intent, error) {
		next, err := readSetting(g, names, v)
		if err != nil {
			return nil, err
		}
		return try(g, scoring.Entry{Kind: scoring.SetRight, Setting: next, Note: v[len(v)-1]})
	}
	return dialog.NewForm(fmt.Sprintf("Court %s: correct", g.Court), send, append(fields, noteField)...)
}

// players lists the names of all who play, in the order of their seats.
func players(g *session.Game, names scoring.Names) []string {
	var out []string
	for _, p := range g.State.Positions() {
		out = append(out, names.Player(p.Seat))
	}
	return out
}

func partners(names scoring.Names, s scoring.Team) []string {
	return []string{names.Player(scoring.Seat{Team: s}), names.Player(scoring.Seat{Team: s, Index: 1})}
}

// readSetting reads the values of setRightForm.
func readSetting(g *session.Game, names scoring.Names, v []string) (scoring.Setting, error) {
	var (
		set scoring.Setting
		err error
	)
	for i, points := range []*int{&set.Score.A, &set.Score.B} {
		if *points, err = wholeNumber(v[i], "points"); err != nil {
			return set, err
		}
	}
	seats := g.State.Positions()
	set.Server = seats[max(0, slices.Index(players(g, names), v[2]))].Seat
	set.Serving = set.Server.Team
	set.Right = [2]scoring.Seat{{Team: scoring.A}, {Team: scoring.B}}
	rest := v[3 : len(v)-1]
	if g.State.Setting().Number > 0 {
		set.Number, rest = 1, rest[1:]
		if v[3] == "2" {
			set.Number = 2
		}
	}
	for i, name := range rest {
		set.Right[i].Index = uint8(max(0, slices.Index(partners(names, scoring.Team(i)), name)))
	}
	return set, nil
}

func wholeNumber(text, what string) (int, error) {
	n, err := strconv.Atoi(strings.TrimSpace(text))
	if err != nil {
		return 0, fmt.Errorf("%s: %q is no whole number", what, text)
	}
	return n, nil
}

// forgottenForm puts a rally in that nobody noted.
func forgottenForm(c ui.Context, g *session.Game) ui.Dialog {
	a, b := c.Names.Team(g.A), c.Names.Team(g.B)
	last := len(g.Rallies) + 1
	send := func(v []string) (ui.Intent, error) {
		at, err := wholeNumber(v[1], "rally")
		if err != nil {
			return nil, err
		}
		return try(g, scoring.Entry{Kind: scoring.RallyInserted, At: at, Rally: scoring.Rally{Won: sideNamed(v[0], a)}, Note: v[2]})
	}
	return dialog.NewForm(fmt.Sprintf("Court %s: a missed rally", g.Court), send,
		dialog.Field{Label: "Won by", Value: a, Options: []string{a, b}, Hint: "who won the rally that was missed"},
		dialog.Field{Label: "As rally", Value: strconv.Itoa(last), Hint: fmt.Sprintf("%d is the end; %s", last, recent(c, g))},
		noteField)
}

// never is the answer that a rally was none.
const never = "it never was"

// wrongForm corrects or removes a rally.
func wrongForm(c ui.Context, g *session.Game) ui.Dialog {
	a, b := c.Names.Team(g.A), c.Names.Team(g.B)
	send := func(v []string) (ui.Intent, error) {
		at, err := wholeNumber(v[0], "rally")
		if err != nil {
			return nil, err
		}
		e := scoring.Entry{Kind: scoring.RallyChanged, At: at, Rally: scoring.Rally{Won: sideNamed(v[1], a)}, Note: v[2]}
		if v[1] == never {
			e.Kind, e.Rally = scoring.RallyRemoved, scoring.Rally{}
		}
		return try(g, e)
	}
	was := a
	if k := len(g.Rallies); k > 0 && g.Rallies[k-1].Won == scoring.A {
		was = b // the last one is meant most often, and then it is the other team's
	}
	return dialog.NewForm(fmt.Sprintf("Court %s: a rally noted wrongly", g.Court), send,
		dialog.Field{Label: "Rally", Value: strconv.Itoa(len(g.Rallies)), Hint: recent(c, g)},
		dialog.Field{Label: "Won by", Value: was, Options: []string{a, b, never}, Hint: "who won it really, or that it is one too many"},
		noteField)
}

func sideNamed(name, a string) scoring.Team {
	if name == a {
		return scoring.A
	}
	return scoring.B
}

// recent tells who won the last rallies, so that one of them can be named.
func recent(c ui.Context, g *session.Game) string {
	const shown = 4
	var out []string
	for i := max(0, len(g.Rallies)-shown); i < len(g.Rallies); i++ {
		out = append(out, fmt.Sprintf("%d %s", i+1, c.Names.Short(g.Team(g.Rallies[i].Won)[0])))
	}
	if len(out) == 0 {
		return "no rally is noted yet"
	}
	return "the last ones: " + strings.Join(out, ", ")
}

// remarkForm writes a note on the sheet.
func remarkForm(g *session.Game) ui.Dialog {
	send := func(v []string) (ui.Intent, error) {
		if strings.TrimSpace(v[0]) == "" {
			return nil, fmt.Errorf("type the note")
		}
		return note(g, scoring.Entry{Kind: scoring.Remark, Note: v[0]}), nil
	}
	return dialog.NewForm(fmt.Sprintf("Court %s: a note", g.Court), send,
		dialog.Field{Label: "Note", Hint: "a wrong server that was put right, a dispute and how it was settled"})
}
