package session

import (
	"fmt"
	"slices"
	"strings"

	"club/quadrille/scoring"
	"club/quadrille/session/care"
)

// Describe says in one line what an action was, in the words of the desk. Many events of one kind,
// as a roster brings them, are counted; games where more than three are called.
func Describe(club *Club, a Action) string {
	if text, ok := describeEnd(a); ok {
		return text
	}
	var parts []string
	counted, many := map[string]int{}, countsOf(a.Events)
	club = club.with(a.Events)
	ends := slices.ContainsFunc(a.Events, func(e Event) bool { _, ok := e.(GameFinished); return ok })
	for _, e := range a.Events {
		if _, ok := e.(RallyWon); ok && ends {
			continue // the score says it all
		}
		if _, ok := e.(ScoreProposed); ok && ends {
			continue // it is the score
		}
		if word := manyWord(e); word != "" && many[word] {
			counted[word]++
			continue
		}
		if text := describe(club, e); text != "" {
			parts = append(parts, text)
		}
	}
	for _, word := range manyWords {
		if k := counted[word]; k > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", k, word))
		}
	}
	return strings.Join(parts, ", ")
}

// Describe says what an action of the newest night was; of an undo or a redo it also says what that
// was about.
func (l *Ledger) Describe(a Action) string {
	about := func(word string, id uint64) string {
		if of, ok := l.Action(id); ok {
			word += ": " + Describe(l.club, of)
		}
		if len(a.Events) > 1 && !a.Undone {
			if then := Describe(l.club, Action{Events: a.Events[1:]}); then != "" {
				word += "; then " + then
			}
		}
		return word
	}
	switch e := a.Events[0].(type) {
	case Undone:
		return about("undid", e.Action)
	case Redone:
		return about("redid", e.Action)
	}
	return Describe(l.club, a)
}

// Newest says what the newest action was, "" if there is none.
func (l *Ledger) Newest() string {
	actions := l.Actions()
	if len(actions) == 0 {
		return ""
	}
	return l.Describe(actions[len(actions)-1])
}

// with is c with the people whom some events made known to it: an action that was taken back is told
// with their names too.
func (c *Club) with(events []Event) *Club {
	for _, e := range events {
		added, ok := e.(PersonAdded)
		if !ok {
			continue
		}
		if _, known := c.Person(added.Person.ID); !known {
			c = &Club{People: append(slices.Clip(c.People), added.Person), Nights: c.Nights}
		}
	}
	return c
}

// describeEnd says that an action ended the night, and how many games it set aside for that.
func describeEnd(a Action) (string, bool) {
	if _, ok := a.Events[len(a.Events)-1].(NightClosed); !ok {
		return "", false
	}
	if aside := len(a.Events) - 1; aside > 0 {
		return fmt.Sprintf("night ended, games voided: %d", aside), true
	}
	return "night ended", true
}

// manyWords are what events are counted as, in the order in which they are told.
var manyWords = []string{"new to the club", "changed", "expected", "checked in", "games called"}

// manyWord is what an event is counted as when an action has many.
func manyWord(e Event) string {
	switch e.(type) {
	case PersonAdded:
		return manyWords[0]
	case PersonChanged:
		return manyWords[1]
	case PersonExpected:
		return manyWords[2]
	case PersonArrived:
		return manyWords[3]
	case GameCalled:
		return manyWords[4]
	}
	return ""
}

// countsOf tells which events of an action are counted and not listed: those of a long action. A few
// calls are listed, since whom to call out is what the organiser reads; of many the page to read aloud has the list.
func countsOf(events []Event) map[string]bool {
	const most, mostCalls = 6, 3
	many, calls := map[string]bool{}, 0
	for _, e := range events {
		word := manyWord(e)
		if _, ok := e.(GameCalled); ok {
			calls++
			many[word] = calls > mostCalls
			continue
		}
		many[word] = len(events) > most
	}
	return many
}

// describe says what one event was; events that only serve another in their action say nothing.
func describe(club *Club, e Event) string {
	switch e := e.(type) {
	case PersonAdded:
		return e.Person.Name + " is new to the club"
	case PersonChanged:
		return e.Person.Name + " changed"
	case PeopleMerged:
		return club.Name(e.From) + " and " + club.Name(e.Into) + " are one person"
	case PersonExpected:
		if e.From == 0 && e.Due.IsZero() && (e.Last > 0 || !e.Leaves.IsZero()) {
			return club.Name(e.Person) + " leaves early" // who may be here already
		}
		return club.Name(e.Person) + " expected"
	case PersonArrived:
		return club.Name(e.Person) + " checked in"
	case PersonRested:
		return club.Name(e.Person) + " rests"
	case PersonReturned:
		return club.Name(e.Person) + " is back"
	case PersonLeft:
		return club.Name(e.Person) + " left"
	case PersonHurt:
		return hurtText(club, e)
	case PersonCleared:
		return fmt.Sprintf("%s may play again, cleared by %s", club.Name(e.Person), e.By)
	case RoundCalled:
		return fmt.Sprintf("round %d called", e.Round)
	case PlayBegun:
		return "play begun"
	case GameCalled:
		return fmt.Sprintf("court %s: %s v %s called", e.Court, pairName(club, e.A), pairName(club, e.B))
	case PlayerReplaced:
		return fmt.Sprintf("%s in for %s", club.Name(e.In), club.Name(e.Out))
	case Pinned, PlayersExchanged, GameMoved:
		return describeHand(club, e)
	case RallyWon:
		return courtOf(club, e.Game) + "rally to " + teamName(club, e.Game, e.Rally.Won)
	case GameNoted:
		return courtOf(club, e.Game) + entryText(e.Entry, func(s scoring.Team) string { return teamName(club, e.Game, s) })
	case GameFinished:
		return courtOf(club, e.Game) + scoreText(club, e.Game, e.Final)
	case ScoreProposed:
		return fmt.Sprintf("%s%v sent from the court by %s", courtOf(club, e.Game), e.Final, teamName(club, e.Game, e.By))
	case ProposalTaken:
		return "as the court sent it"
	case ProposalsRefused:
		return courtOf(club, e.Game) + "what the court sent is refused"
	case ScoreCorrected:
		return courtOf(club, e.Game) + "corrected to " + scoreText(club, e.Game, e.Final)
	}
	return describeNight(e)
}

// describeNight is describe for what concerns no person.
func describeNight(e Event) string {
	switch e := e.(type) {
	case NightOpened:
		return "night opened" + at(e.Venue)
	case NightClosed:
		return "night ended"
	case SettingsChanged:
		return "settings: " + settingsText(e.Settings)
	case WayPicked:
		return "way picked: " + e.Way.Words()
	case UsualKept:
		return "kept as usual: " + settingsText(e.Usual.Settings)
	case VenueKept:
		return "courts kept" + at(e.Venue.Name)
	case UsualNightKept:
		return "kept as a usual night: " + e.Night.Name
	case UsualNightDropped:
		return "no usual night any more: " + e.Name
	case CourtOpened:
		return fmt.Sprintf("court %s opened", e.Court)
	case CourtLeveled:
		return fmt.Sprintf("court %s for %s", e.Court, levelRange(e.Low, e.High))
	case CourtNoted:
		return fmt.Sprintf("court %s %s", e.Court, noteWords(e.Note))
	case CourtClosed:
		return fmt.Sprintf("court %s closed", e.Court)
	case LotsDrawn:
		return "lots drawn"
	case CallsEnded:
		return "last games: no more are called"
	case ClockMoved:
		return e.Words()
	case PlayHeld:
		return "play held: " + e.Why
	case PlayResumed:
		return "play resumed"
	case MessagePosted:
		return "message: " + e.Message.Text
	case MessageEnded:
		return "message ended"
	case CourtScoresChosen:
		return e.Choice.words()
	case LeagueChosen:
		return e.words()
	case NamingChosen:
		return "the hall sees " + e.Naming.String()
	case ThunderHeard:
		return "thunder heard: 30 minutes from now"
	case RemindersChosen:
		if e.Off {
			return "reminders of usual caution off"
		}
		return "reminders of usual caution on"
	case CardWritten:
		return "emergency card written" + at(e.Venue)
	case HeatMeasured:
		index := e.Index()
		return fmt.Sprintf("heat: feels like %s, %s", care.BothScales(index), care.BandOf(index).Words())
	case CourtsTold:
		return "told that play is held: " + CourtNames(e.Courts)
	case RecordLost:
		return "an event that was lost to damage"
	case Undone:
		return "undo"
	case Redone:
		return "redo"
	}
	return ""
}

// at says where something is, and nothing for the only place.
func at(venue string) string {
	if venue == HomeVenue {
		return ""
	}
	return " at " + venue
}

// settingsText is what matters most of some settings.
func settingsText(s Settings) string {
	return fmt.Sprintf("%s, %s, %s, %s", s.Flow, s.Format.Words(), s.Scoring, Counted(s.Rounds, "round"))
}

// pairName joins the names of a team.
func pairName(club *Club, s Team) string {
	if s[1] == "" {
		return club.Name(s[0])
	}
	return club.Name(s[0]) + " & " + club.Name(s[1])
}

// game finds a game of the newest night.
func (c *Club) game(id GameID) *Game {
	if n := c.Night(); n != nil {
		return n.Game(id)
	}
	return nil
}

func courtOf(club *Club, id GameID) string {
	if g := club.game(id); g != nil {
		return fmt.Sprintf("court %s: ", g.Court)
	}
	return ""
}

func teamName(club *Club, id GameID, side scoring.Team) string {
	g := club.game(id)
	switch {
	case g == nil:
		return "team " + side.String()
	case side == scoring.A:
		return pairName(club, g.A)
	}
	return pairName(club, g.B)
}

// scoreText is a final score with the names of the teams.
func scoreText(club *Club, id GameID, f scoring.Final) string {
	g := club.game(id)
	if g == nil {
		return ScoreText(f)
	}
	teams := pairName(club, g.A) + " v " + pairName(club, g.B)
	if w, ok := f.Winner(); ok && f.How() == scoring.Retired {
		return fmt.Sprintf("%s %s (%s retired)", points(f.Score()), teams, pairName(club, g.Team(w.Other())))
	}
	return ScoreText(f) + " " + teams
}

// ScoreText is a final score with how it came about, where that is not by playing to the end.
func ScoreText(f scoring.Final) string {
	s := f.Score()
	switch f.How() {
	case scoring.Played:
		return fmt.Sprintf("%d-%d", s.A, s.B)
	case scoring.Void:
		return "void"
	}
	return fmt.Sprintf("%d-%d (%s)", s.A, s.B, retiredFirst(f))
}

// retiredFirst is how a game ended, with the team before "retired", a or b as it is typed.
func retiredFirst(f scoring.Final) string {
	if w, ok := f.Winner(); ok && f.How() == scoring.Retired {
		return strings.ToLower(w.Other().String()) + " retired"
	}
	return f.How().String()
}
