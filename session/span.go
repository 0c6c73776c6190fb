package session

import (
	"fmt"
	"strings"
	"time"

	"club/quadrille/scheduler"
)

// Span chooses games of the club: those of nights from a day on and until a day, under one format, among people of some
// levels. What is zero chooses nothing; a format is chosen where it is not nil.
type Span struct {
	From, Until time.Time // days, both of which count
	Format      *scheduler.Format
	Low, High   float64 // of the levels that all four state; who states none has none of these
}

// Validate says what is wrong with s, and nil when nothing is.
func (s Span) Validate() error {
	if !s.From.IsZero() && !s.Until.IsZero() && s.Until.Before(s.From) {
		return fmt.Errorf("nights from %s until %s are none: the earlier day comes first", s.From.Format(time.DateOnly), s.Until.Format(time.DateOnly))
	}
	return validLevels(s.Low, s.High)
}

// IsZero tells whether all games of all nights are chosen.
func (s Span) IsZero() bool { return s == Span{} }

// Words says what is chosen: "nights from 2026-01-08 on, mixed, levels from 3.5", or "all nights".
func (s Span) Words() string {
	var parts []string
	switch from, until := s.From.Format(time.DateOnly), s.Until.Format(time.DateOnly); {
	case !s.From.IsZero() && !s.Until.IsZero():
		parts = append(parts, "nights from "+from+" until "+until)
	case !s.From.IsZero():
		parts = append(parts, "nights from "+from+" on")
	case !s.Until.IsZero():
		parts = append(parts, "nights until "+until)
	default:
		parts = append(parts, "all nights")
	}
	if s.Format != nil {
		parts = append(parts, s.Format.Words())
	}
	if s.Low > 0 || s.High > 0 {
		parts = append(parts, levelRange(s.Low, s.High))
	}
	return strings.Join(parts, ", ")
}

// has tells whether a night lies in the span.
func (s Span) has(n *Night) bool {
	return (s.From.IsZero() || !n.Opened.Before(s.From)) && (s.Until.IsZero() || n.Opened.Before(s.Until.AddDate(0, 0, 1)))
}

// takes tells whether a game is one of those that are chosen, in a night that is.
func (s Span) takes(club *Club, g *Game) bool {
	if s.Format != nil && g.Format != *s.Format {
		return false
	}
	if s.Low == 0 && s.High == 0 {
		return true
	}
	for _, id := range g.Players() {
		if p, _ := club.Person(id); p.Level == 0 || p.Level < s.Low || s.High > 0 && p.Level > s.High {
			return false
		}
	}
	return true
}

// of is a night with none but the chosen games.
func (s Span) of(club *Club, n *Night) *Night {
	if s.Format == nil && s.Low == 0 && s.High == 0 {
		return n
	}
	only := *n
	only.Games = nil
	for i := range n.Games {
		if g := &n.Games[i]; s.takes(club, g) {
			only.Games = append(only.Games, *g)
		}
	}
	return &only
}

// Nights is how many nights of the club lie in the span.
func (s Span) Nights(club *Club) int {
	count := 0
	for _, n := range club.Nights {
		if s.has(n) {
			count++
		}
	}
	return count
}
