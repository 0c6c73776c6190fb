package session

import (
	"fmt"
	"slices"
	"time"

	"club/quadrille/scoring"
)

// RotationPlanned fixes the rounds to come.
type RotationPlanned struct {
	Rounds []PlannedRound `json:"rounds"`
}

func (e RotationPlanned) apply(f *fold, _ time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	n.Plan = slices.Clone(e.Rounds)
	return nil
}

// RoundCalled sends people to their courts, all at once.
type RoundCalled struct {
	Round int           `json:"round"`
	Games []PlannedGame `json:"games"`
	Out   []PersonID    `json:"out,omitempty"`
	Terms Terms         `json:"terms,omitzero"` // since version 2
}

func (e RoundCalled) apply(f *fold, at time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	if e.Round != len(n.Rounds)+1 {
		return fmt.Errorf("round %d cannot follow round %d", e.Round, len(n.Rounds))
	}
	if len(n.Running()) > 0 {
		return fmt.Errorf("a game of the round before still goes on")
	}
	terms, err := n.calledUnder(e.Terms)
	if err != nil {
		return err
	}
	r := CalledRound{Number: e.Round, Called: at, Out: slices.Clone(e.Out)}
	for _, pg := range e.Games {
		id := GameID(len(n.Games) + 1)
		if err := f.call(n, Game{ID: id, Round: e.Round, Court: pg.Court, A: pg.A, B: pg.B, Called: at}, terms); err != nil {
			return err
		}
		r.Games = append(r.Games, id)
	}
	n.Rounds = append(n.Rounds, r)
	n.endPins(func(p Pin) bool { return p.Round <= e.Round })
	if len(n.Plan) > 0 {
		n.Plan = n.Plan[1:]
	}
	return nil
}

// PlayBegun starts the rolling flow: from now on a free court calls the next four.
type PlayBegun struct {
	Flow Flow `json:"flow,omitempty"` // rolling; since version 2
}

func (e PlayBegun) apply(f *fold, _ time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	if err := n.goesBy(e.Flow); err != nil {
		return err
	}
	n.Rolls, n.LastCall = n.Settings.Flow == Rolling, false // a file from before calls had terms may have it in a night of rounds
	return nil
}

// CallsEnded ends the rolling flow: the games on court are the last ones.
type CallsEnded struct{}

func (CallsEnded) apply(f *fold, _ time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	n.Rolls, n.LastCall = false, true
	return nil
}

// GameCalled sends four people, or two, to one court.
type GameCalled struct {
	Game  GameID  `json:"game"`
	Court CourtID `json:"court"`
	A     Team    `json:"a"`
	B     Team    `json:"b"`
	Terms Terms   `json:"terms,omitzero"` // since version 2
}

func (e GameCalled) apply(f *fold, at time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	if int(e.Game) != len(n.Games)+1 {
		return fmt.Errorf("game %d cannot follow game %d", e.Game, len(n.Games))
	}
	terms, err := n.calledUnder(e.Terms)
	if err != nil {
		return err
	}
	if err := f.call(n, Game{ID: e.Game, Court: e.Court, A: e.A, B: e.B, Called: at}, terms); err != nil {
		return err
	}
	called := PlannedGame{Court: e.Court, A: e.A, B: e.B}
	n.endPins(func(p Pin) bool { return p.kept(called) || p.whole() && slices.ContainsFunc(p.People(), called.has) })
	return nil
}

// call puts a game on its court, under terms that it keeps, after checking that the court and everybody
// in it are free.
func (f *fold) call(n *Night, g Game, t Terms) error {
	c := n.Court(g.Court)
	switch {
	case c == nil:
		return fmt.Errorf("tonight has no court %s", g.Court)
	case !c.Open:
		return fmt.Errorf("court %s is closed", g.Court)
	case c.Game != 0:
		return fmt.Errorf("court %s still has a game", g.Court)
	case g.A[0] == "" || g.B[0] == "" || (g.A[1] == "") != (g.B[1] == ""):
		return fmt.Errorf("a game needs two people or two teams")
	}
	players := g.Players()
	for i, id := range players {
		a := n.Attending(id)
		if a == nil || a.State != Here {
			return fmt.Errorf("%s is not in the rotation", f.club.Name(id))
		}
		if slices.Contains(players[:i], id) || n.Playing(id) != nil {
			return fmt.Errorf("%s plays already", f.club.Name(id))
		}
		a.unwait()
	}
	g.Call = f.action
	g.Format, g.Rules, g.Stopped = t.Format, t.Rules, t.Stopped
	g.Rules.Singles = g.A[1] == ""
	g.State = scoring.Start(g.Rules, scoring.A)
	c.Game = g.ID
	n.Games = append(n.Games, g)
	return nil
}

// PlayerReplaced puts somebody in for somebody else while a game goes on.
type PlayerReplaced struct {
	Game GameID   `json:"game"`
	Out  PersonID `json:"out"`
	In   PersonID `json:"in"`
}

func (e PlayerReplaced) apply(f *fold, at time.Time) error {
	n, g, err := f.running(e.Game)
	if err != nil {
		return err
	}
	in := n.Attending(e.In)
	switch {
	case e.Out == "" || !g.Has(e.Out):
		return fmt.Errorf("%s does not play in game %d", f.club.Name(e.Out), e.Game)
	case in == nil || in.State != Here || n.Playing(e.In) != nil:
		return fmt.Errorf("%s is not free", f.club.Name(e.In))
	}
	if played := len(g.Rallies); played > 0 {
		g.Earlier = append(slices.Clip(g.Earlier), Lineup{Until: played, A: g.A, B: g.B})
	}
	for _, seat := range []*PersonID{&g.A[0], &g.A[1], &g.B[0], &g.B[1]} {
		if *seat == e.Out {
			*seat = e.In
		}
	}
	g.Replaced = append(slices.Clip(g.Replaced), e.Out)
	n.endPins(func(p Pin) bool { return p.Round == 0 && p.A == Team{e.In} })
	in.unwait()
	if out := n.Attending(e.Out); out.State == Here {
		f.wait(out, at)
	}
	if g.Round > 0 {
		r := &n.Rounds[g.Round-1]
		r.Out = slices.DeleteFunc(slices.Clone(r.Out), func(id PersonID) bool { return id == e.In })
		r.Out = append(r.Out, e.Out)
	}
	n.Plan = nil
	return nil
}

// RallyWon is one rally of a game that is scored rally by rally.
type RallyWon struct {
	Game  GameID        `json:"game"`
	Rally scoring.Rally `json:"rally"`
}

func (e RallyWon) apply(f *fold, at time.Time) error {
	_, g, err := f.running(e.Game)
	if err != nil {
		return err
	}
	if g.State.Done {
		return fmt.Errorf("game %d is decided", e.Game)
	}
	return g.note(scoring.Entry{Kind: scoring.RallyWon, Rally: e.Rally}, at)
}

// GameFinished ends a game and frees its court and its people.
type GameFinished struct {
	Game  GameID        `json:"game"`
	Final scoring.Final `json:"final"`
}

func (e GameFinished) apply(f *fold, at time.Time) error {
	n, g, err := f.running(e.Game)
	if err != nil {
		return err
	}
	g.Final, g.Finished, g.End = &e.Final, at, f.action
	n.withdraw(g.ID, nil)
	if n.Hold != nil && at.After(n.Hold.Since) {
		g.Stood += at.Sub(n.Hold.Since)
	}
	g.pause(scoring.Entry{}, at)
	if e.Final.How() == scoring.Void {
		n.Plan = nil // its people sat out after all, and the rounds to come have to make up for it
	}
	n.Court(g.Court).Game = 0
	for _, id := range g.Players() {
		if a := n.Attending(id); a.State == Here {
			f.wait(a, at)
		}
	}
	return nil
}

// ScoreCorrected replaces the score of a finished game.
type ScoreCorrected struct {
	Game  GameID        `json:"game"`
	Final scoring.Final `json:"final"`
}

func (e ScoreCorrected) apply(f *fold, _ time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	g := n.Game(e.Game)
	if g == nil || g.Running() {
		return fmt.Errorf("game %d has no score to correct", e.Game)
	}
	if (g.Final.How() == scoring.Void) != (e.Final.How() == scoring.Void) {
		n.Plan = nil
	}
	g.Final = &e.Final
	return nil
}

// running finds a game that goes on.
func (f *fold) running(id GameID) (*Night, *Game, error) {
	n, err := f.night()
	if err != nil {
		return nil, nil, err
	}
	g := n.Game(id)
	if g == nil {
		return nil, nil, fmt.Errorf("tonight has no game %d", id)
	}
	if !g.Running() {
		return nil, nil, fmt.Errorf("game %d is over: correct its score instead", id)
	}
	return n, g, nil
}

// LotsDrawn orders those whom the table cannot part.
type LotsDrawn struct {
	Lots []Team `json:"lots"` // all that were drawn tonight, in order
}

func (e LotsDrawn) apply(f *fold, _ time.Time) error {
	n, err := f.night()
	if err != nil {
		return err
	}
	n.Lots = slices.Clone(e.Lots)
	return nil
}
