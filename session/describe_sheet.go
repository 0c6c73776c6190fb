package session

import (
	"fmt"

	"club/quadrille/scoring"
)

// EntryText says in a few words what an entry of a game's sheet notes.
func EntryText(club *Club, g *Game, e scoring.Entry) string {
	return entryText(e, func(s scoring.Team) string {
		if s == scoring.B {
			return pairName(club, g.B)
		}
		return pairName(club, g.A)
	})
}

func entryText(e scoring.Entry, side func(scoring.Team) string) string {
	text := eventText(e, side)
	if e.Note != "" && e.Kind != scoring.Remark {
		text += " (" + e.Note + ")"
	}
	return text
}

// eventText is an entry without its note.
func eventText(e scoring.Entry, side func(scoring.Team) string) string {
	switch e.Kind {
	case scoring.RallyWon:
		return rallyText(e.Rally, side)
	case scoring.RallyReplayed:
		return "a rally is played again"
	case scoring.RallyInserted:
		return fmt.Sprintf("missed rally added as rally %d: %s", e.At, rallyText(e.Rally, side))
	case scoring.RallyRemoved:
		return fmt.Sprintf("rally %d does not count", e.At)
	case scoring.RallyChanged:
		return fmt.Sprintf("rally %d was wrong: %s", e.At, rallyText(e.Rally, side))
	case scoring.SetRight:
		s := e.Setting
		return fmt.Sprintf("corrected to %d-%d, %v serves", s.Score.A, s.Score.B, s.Server)
	case scoring.EndsSwitched:
		return "ends switched"
	case scoring.RefereeTimeOut:
		return "referee time-out"
	case scoring.TimeUp:
		return "time is up"
	case scoring.Remark:
		return "note: " + e.Note
	}
	return teamText(e.Kind, side(e.Team))
}

// teamText is an entry about one team.
func teamText(k scoring.Kind, who string) string {
	switch k {
	case scoring.TechnicalFoul:
		return "technical foul of " + who
	case scoring.TimeOut, scoring.MedicalTimeOut:
		return k.String() + " of " + who
	case scoring.TeamRetired:
		return who + " retired"
	case scoring.NoShow:
		return who + " did not come"
	}
	return k.String()
}

// rallyText says who won a rally, and by which fault where somebody noted it.
func rallyText(r scoring.Rally, side func(scoring.Team) string) string {
	text := "rally to " + side(r.Won)
	if r.Fault != scoring.None {
		text += " (" + r.Fault.String() + ")"
	}
	return text
}
