package person

import (
	"fmt"
	"strings"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/evening"
	"club/quadrille/tui/ui"
)

// about is what the club knows of the person, and the times of tonight.
func (f *facts) about(c ui.Context) string {
	var parts []string
	if f.person.Level > 0 {
		parts = append(parts, fmt.Sprintf("level %g", f.person.Level))
	}
	if f.person.Group != "" {
		parts = append(parts, "group "+f.person.Group)
	}
	if !f.took {
		return strings.Join(append(parts, "no part in the newest night"), " · ")
	}
	clock := func(t time.Time) string { return t.In(c.Now.Location()).Format("15:04") }
	a := f.evening.Attendance
	if !a.Arrived.IsZero() {
		parts = append(parts, "here since "+clock(a.Arrived))
	}
	if !a.Leaves.IsZero() {
		parts = append(parts, "leaves "+clock(a.Leaves))
	}
	if a.Last > 0 {
		parts = append(parts, fmt.Sprintf("leaves after round %d", a.Last))
	}
	return strings.Join(parts, " · ")
}

// now says where the person is.
func (f *facts) now(c ui.Context) string {
	if !f.took || !f.open {
		if f.night == nil || f.open {
			return "not checked in"
		}
		return "the night is over"
	}
	if p := f.evening.Now(); p != nil {
		text := "court " + string(p.Court) + game(c, p)
		if g := f.night.Playing(f.person.ID); g != nil && len(g.Rallies)+len(g.Entries) > 0 {
			text += fmt.Sprintf(" · %d-%d", p.Ours, p.Theirs)
		}
		return text + fmt.Sprintf(" · %d min", int(c.Now.Sub(p.Called).Minutes()))
	}
	a := f.evening.Attendance
	switch a.State {
	case session.Here:
		text := fmt.Sprintf("on the bench for %d min", int(a.Waited(c.Now).Minutes()))
		if f.rolling() && f.bench > 0 {
			text += fmt.Sprintf(" · number %d of %d", f.bench, f.waiting)
		}
		return text
	case session.Resting:
		return "rests, and is not called until back"
	case session.Expected:
		switch {
		case a.From > 0:
			return fmt.Sprintf("not here yet, expected for round %d", a.From)
		case !a.Due.IsZero():
			return "not here yet, expected " + a.Due.In(c.Now.Location()).Format("15:04")
		}
		return "not here yet"
	}
	if x, out := f.night.OutForTonight(f.person.ID); out {
		return "out for tonight: a head injury is suspected since " + x.At.In(c.Now.Location()).Format("15:04") + "; qualified people decide"
	}
	return "left for tonight"
}

// injuries are what was noted tonight, the oldest first.
func (f *facts) injuries(c ui.Context) string {
	if f.night == nil {
		return ""
	}
	var parts []string
	for _, x := range f.night.InjuriesOf(f.person.ID) {
		text := x.At.In(c.Now.Location()).Format("15:04") + " hurt"
		if x.Head {
			text += ", head injury suspected"
		}
		if x.Note != "" {
			text += ": " + x.Note
		}
		if x.Cleared != "" {
			text += ", cleared by " + x.Cleared
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, " · ")
}

func (f *facts) rolling() bool { return f.night.Settings.Flow == session.Rolling }

// next says what comes next and when.
func (f *facts) next(c ui.Context) string {
	if !f.took || !f.open {
		return "no game"
	}
	if a := f.evening.Attendance; a.State != session.Here && f.evening.NextGame() == nil {
		return "no game until checked in"
	}
	if f.rolling() {
		return f.nextRolling(c)
	}
	next, play := f.evening.Next(), f.evening.NextGame()
	switch {
	case next == nil && c.Rotation.Err != nil:
		return "no round: " + c.Rotation.Err.Error()
	case next == nil && !c.Rotation.Ready:
		return "working out the next round…"
	case next == nil:
		return "no round is left in tonight's plan"
	case next.Kind == evening.WillSit && play == nil:
		if last := f.evening.Parts[len(f.evening.Parts)-1].Round; last > next.Round {
			return fmt.Sprintf("sits out rounds %d to %d: no game is planned", next.Round, last)
		}
		return fmt.Sprintf("sits out round %d, the last of the plan%s", next.Round, when(next))
	case next.Kind == evening.WillSit:
		return fmt.Sprintf("sits out round %d; round %d, court %s%s%s", next.Round, play.Round, play.Court, game(c, play), when(play))
	}
	return fmt.Sprintf("round %d, court %s%s%s", next.Round, next.Court, game(c, next), when(next))
}

func (f *facts) nextRolling(c ui.Context) string {
	next := f.evening.NextGame()
	switch {
	case f.night.LastCall:
		return "no more games are called"
	case next != nil:
		return "the next free court" + game(c, next) + " · " + clockOf(c, f.turn)
	case f.bench > 0:
		return clockOf(c, f.turn)
	case f.waiting == 0:
		return "again as soon as this court or another is free"
	case f.waiting == 1:
		return "after this game, behind the one who waits"
	}
	return fmt.Sprintf("after this game, behind the %d who wait", f.waiting)
}

// clockOf is a wait in minutes and by the clock.
func clockOf(c ui.Context, w session.Wait) string {
	if w.Late == 0 {
		return "at once"
	}
	return fmt.Sprintf("likely %s, about %s", w.Words(), c.Now.Add(w.Likely).Format("15:04"))
}

// when says when a round is likely to be called.
func when(p *evening.Part) string {
	if p.About.IsZero() {
		return ""
	}
	return " · about " + p.About.Format("15:04")
}

// game names the partner and the opponents.
func game(c ui.Context, p *evening.Part) string {
	text := ""
	if p.Partner != "" {
		text = " with " + c.Names.Short(p.Partner)
	}
	return text + " against " + c.Names.Team(p.Against)
}

// outcome is the score of a part with who won, or what it was instead.
func outcome(p evening.Part) string {
	switch p.Kind {
	case evening.Played:
		switch p.How {
		case scoring.Void:
			return "void"
		case scoring.Walkover:
			if p.Won {
				return "w/o ✓"
			}
			return "w/o"
		}
		text := fmt.Sprintf("%d-%d", p.Ours, p.Theirs)
		if p.Won {
			text += " ✓"
		}
		return text
	case evening.OnCourt:
		if p.Ours+p.Theirs > 0 {
			return fmt.Sprintf("%d-%d", p.Ours, p.Theirs)
		}
		return "plays"
	case evening.Left:
		return "a sub"
	}
	return ""
}

// fairness says how much the person has had beside everybody else.
func (f *facts) fairness() string {
	if !f.took || f.evening.Attendance.Arrived.IsZero() {
		return ""
	}
	own := f.evening.Own()
	text := fmt.Sprintf("%s, present %d min", count(own.Games, "game"), int(own.Present.Minutes()))
	if f.rolling() {
		low, high := f.evening.Games().Range()
		return text + fmt.Sprintf(". Everybody %s games: %s.", between(low, high), spread(f.evening.Games()))
	}
	more, same := f.evening.Place()
	less := len(f.evening.Counts) - 1 - more - same
	text += fmt.Sprintf(". Sat out %s", times(own.SatOut))
	if rounds := f.satOut(); rounds != "" {
		text += " (" + rounds + ")"
	}
	text += fmt.Sprintf(". Of the %d others %d sat out more often, %d as often, %d less", len(f.evening.Counts)-1, more, same, less)
	low, high := f.evening.SitOuts().Range()
	return text + fmt.Sprintf("; everybody %s.", between(low, high))
}

// satOut names the rounds that were sat out, with why.
func (f *facts) satOut() string {
	var out []string
	for _, p := range f.evening.Parts {
		if p.Kind == evening.SatOut {
			out = append(out, fmt.Sprintf("round %d: %d for %d places", p.Round, p.Of, p.Places))
		}
	}
	return strings.Join(out, ", ")
}

// spread says how many people have how many.
func spread(s evening.Spread) string {
	var parts []string
	for k, people := range s {
		if people > 0 {
			parts = append(parts, fmt.Sprintf("%d people %d", people, k))
		}
	}
	return strings.Join(parts, ", ")
}

func between(low, high int) string {
	if low == high {
		return fmt.Sprint(low)
	}
	return fmt.Sprintf("%d to %d", low, high)
}

func count(k int, word string) string {
	if k == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", k, word)
}

func times(k int) string {
	switch k {
	case 0:
		return "never"
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return fmt.Sprintf("%d times", k)
}

// standing says where the person stands, and why there.
func (f *facts) standing() string {
	p := f.place
	if p == nil {
		return "no game that counts for the table yet"
	}
	text := fmt.Sprintf("place %d of %d%s · won %d of %d · points %+d", p.Rank, f.places, moved(p), p.Wins, p.Games, p.Difference)
	if len(p.People) > 1 {
		text = p.Name + ": " + text
	}
	if p.Why != "" {
		text += " · " + p.Why
	}
	return text
}

// moved says how many places somebody went since the newest round.
func moved(p *session.Place) string {
	up, ok := p.Moved()
	switch {
	case !ok || up == 0:
		return ""
	case up > 0:
		return fmt.Sprintf(" ↑%d", up)
	}
	return fmt.Sprintf(" ↓%d", -up)
}

// ratingText is the rating with its 95 % range.
func (f *facts) ratingText() string {
	r := f.rated
	if !r.has {
		low, high := r.start.Interval()
		return fmt.Sprintf("%.1f to begin with, 95 %% range %.1f to %.1f · no game yet", r.start.Mu, low, high)
	}
	low, high := r.now.Interval()
	text := fmt.Sprintf("%.1f, 95 %% range %.1f to %.1f · %s, %s", r.now.Mu, low, high, count(r.now.Games, "game"), count(len(r.nights), "night"))
	if !r.now.Comparable {
		return text + " · not yet comparable"
	}
	return text + fmt.Sprintf(" · %d. of %d", r.place, r.all)
}

// wish is a wish with how far it is kept.
func wish(c ui.Context, w evening.Wish) string {
	name := c.Names.Short(w.With)
	switch {
	case w.Apart && w.Done > 0:
		return fmt.Sprintf("✗ never on a court with %s: %s tonight", name, count(w.Done, "game"))
	case w.Apart:
		return fmt.Sprintf("✓ never on a court with %s", name)
	case w.NoTeam && w.Done > 0:
		return fmt.Sprintf("✗ never partners with %s: %s tonight", name, count(w.Done, "game"))
	case w.NoTeam:
		return fmt.Sprintf("✓ never partners with %s", name)
	}
	ask := "partner " + name
	if w.Theirs {
		ask = name + " asks for this partner"
	}
	mark := "·"
	if w.Kept() && w.Done > 0 {
		mark = "✓"
	}
	text := fmt.Sprintf("%s %s in every game: %d of %d", mark, ask, w.Done, w.Games)
	if w.Times > 0 {
		text = fmt.Sprintf("%s %s in %s: %d done", mark, ask, count(w.Times, "game"), w.Done)
	}
	if w.Ahead > 0 {
		text += fmt.Sprintf(", %d planned", w.Ahead)
	}
	if !w.Here {
		text += " (not here)"
	}
	return text
}
