package tui

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/roster"
	"club/quadrille/tui/dialog"
)

// setting is one choice of a night: how it is shown and explained, and what is made of what somebody types.
type setting struct {
	label   string
	hint    string
	options []string // the only values possible; empty for free text
	show    func(s session.Settings, now time.Time) string
	read    func(s *session.Settings, text string, typed typedAt) error
}

// typedAt is when something is typed, and for which night, nil for one that is still to be opened.
type typedAt struct {
	night *session.Night
	now   time.Time
}

// The labels by which a form finds a setting.
const (
	closingLabel = "Closing time"
	levelsLabel  = "Even levels"
	benchLabel   = "Bench"
)

// settingsOfANight are the choices of a night in the order of the form.
func settingsOfANight() []setting {
	return []setting{
		{
			label: "Flow", options: []string{string(session.Rounds), string(session.Rolling)},
			hint: "rounds: all courts start together; rolling: a free court calls the next four",
			show: plainly(func(s session.Settings) string { return string(s.Flow) }),
			read: parsed(session.ParseFlow, func(s *session.Settings) *session.Flow { return &s.Flow }),
		},
		{
			label: "Format", options: []string{"rotating", "mixed", "set pairs", "ladder"},
			hint: "rotating partners; mixed: one of each group a team; set pairs: partners stay; ladder: winners move up",
			show: plainly(func(s session.Settings) string { return s.Format.Words() }),
			read: parsed(scheduler.ParseFormat, func(s *session.Settings) *scheduler.Format { return &s.Format }),
		},
		{
			label: "Scoring", options: []string{"side-out", "rally"},
			hint: "side-out: only the serving team scores; rally: every rally is a point",
			show: plainly(func(s session.Settings) string { return s.Scoring.Scoring.String() }),
			read: parsed(scoring.ParseScoring, func(s *session.Settings) *scoring.Scoring { return &s.Scoring.Scoring }),
		},
		count("Game to", "11, 15 or 21 as a rule", func(s *session.Settings) *int { return &s.Scoring.To }),
		count("Win by", "the lead that ends a game", func(s *session.Settings) *int { return &s.Scoring.WinBy }, "1", "2"),
		count("Rounds", "rounds to plan; more can be called at the end", func(s *session.Settings) *int { return &s.Rounds }),
		count("Minutes a round", "from one call to the next, for people who come late or leave early", func(s *session.Settings) *int { return &s.Slot }),
		{
			label: closingLabel, hint: "when play ends, such as 21:30; empty if open",
			show: func(s session.Settings, now time.Time) string { return timeText(s.Closing, now) },
			read: readClosing,
		},
		{
			label: levelsLabel, options: []string{"off", "gentle", "even"},
			hint: "gentle: fewer games with a sure winner; even: hardly any, for a few more repeats",
			show: plainly(func(s session.Settings) string { return s.Leveling().String() }),
			read: readLevels,
		},
		either("Left-over two", "when two are left over and a court is free", "play singles", "sit out", func(s *session.Settings) *bool { return &s.Singles }),
		either("Walkovers", "walkovers and retired games in the table; the rulebook leaves them out", "count", "left out", func(s *session.Settings) *bool { return &s.Stopped }),
		optional("Cap", "points that win with any lead, such as 15; empty for none", func(s *session.Settings) *int { return &s.Scoring.Cap }),
		optional("Time limit", "minutes after which a game stops and the score decides; empty for none", func(s *session.Settings) *int { return &s.Scoring.Minutes }),
		{
			label: "Start score", hint: "what both teams begin with, such as 3 for shorter games; empty for 0",
			show: plainly(func(s session.Settings) string {
				if s.Scoring.StartA == s.Scoring.StartB {
					return wholeNumber(s.Scoring.StartA)
				}
				return fmt.Sprintf("%d-%d", s.Scoring.StartA, s.Scoring.StartB)
			}),
			read: func(s *session.Settings, text string, _ typedAt) (err error) {
				start := 0
				if strings.TrimSpace(text) != "" {
					start, err = number(text, "start score")
				}
				s.Scoring.StartA, s.Scoring.StartB = start, start
				return err
			},
		},
		optional("Rest after", "games running, in rounds: then somebody sits out; empty for as the courts allow", func(s *session.Settings) *int { return &s.MaxRun }),
		either("Last point", "rally scoring only: on serve, the winning point takes the serve", "on serve", "by anybody", func(s *session.Settings) *bool { return &s.Scoring.WinOnServe }),
		either("Levels from", "ratings: the games of the nights before; who is new stands in the middle, or where a level is stated", "ratings", "people", func(s *session.Settings) *bool { return &s.Rated }),
		either("Nights before", "remembered: who met on the last nights meets less, where all else is equal", "forgotten", "remembered", func(s *session.Settings) *bool { return &s.Forget }),
		{
			label: benchLabel, options: []string{"mixed", "strict"},
			hint: "mixed: a few sit out twice running once, so that all meet; strict: as few as can be",
			show: plainly(func(s session.Settings) string { return s.Benching.String() }),
			read: parsed(scheduler.ParseBenching, func(s *session.Settings) *scheduler.Benching { return &s.Benching }),
		},
		either("Free courts", "rolling: mix more: half the repeats, a minute or two more wait; by wait: as a queue", "by wait", "mix more", func(s *session.Settings) *bool { return &s.ByWait }),
	}
}

// settingsFields are the settings as fields of a form.
func settingsFields(s session.Settings, now time.Time) []dialog.Field {
	var out []dialog.Field
	for _, x := range settingsOfANight() {
		out = append(out, dialog.Field{Label: x.label, Value: x.show(s, now), Hint: x.hint, Options: x.options})
	}
	return out
}

// readSettings reads the values of settingsFields, for a night that goes on or, if n is nil, for a new one. What is
// left as it was is not read anew: a form shows less than some settings have.
func readSettings(s session.Settings, values []string, n *session.Night, now time.Time) (session.Settings, error) {
	before := s
	for i, x := range settingsOfANight() {
		if strings.TrimSpace(values[i]) == x.show(before, now) {
			continue
		}
		if err := x.read(&s, values[i], typedAt{n, now}); err != nil {
			return before, err
		}
	}
	return s, s.Validate()
}

// plainly shows a setting that looks the same at any time.
func plainly(show func(session.Settings) string) func(session.Settings, time.Time) string {
	return func(s session.Settings, _ time.Time) string { return show(s) }
}

// parsed reads a setting that has a parser.
func parsed[T any](parse func(string) (T, error), of func(*session.Settings) *T) func(*session.Settings, string, typedAt) error {
	return func(s *session.Settings, text string, _ typedAt) error {
		v, err := parse(text)
		if err == nil {
			*of(s) = v
		}
		return err
	}
}

// count is a setting that is a whole number.
func count(label, hint string, of func(*session.Settings) *int, options ...string) setting {
	return setting{
		label: label, hint: hint, options: options,
		show: plainly(func(s session.Settings) string { return strconv.Itoa(*of(&s)) }),
		read: func(s *session.Settings, text string, _ typedAt) (err error) {
			*of(s), err = number(text, strings.ToLower(label))
			return err
		},
	}
}

// optional is a whole number that may be left out, which is 0.
func optional(label, hint string, of func(*session.Settings) *int) setting {
	x := count(label, hint, of)
	read := x.read
	x.show = plainly(func(s session.Settings) string { return wholeNumber(*of(&s)) })
	x.read = func(s *session.Settings, text string, typed typedAt) error {
		if strings.TrimSpace(text) == "" {
			*of(s) = 0
			return nil
		}
		return read(s, text, typed)
	}
	return x
}

// wholeNumber is a whole number, empty for 0.
func wholeNumber(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

// either is a setting with two ways, of which the second is the usual one and stands first among the options.
func either(label, hint, yes, no string, of func(*session.Settings) *bool) setting {
	return setting{
		label: label, hint: hint, options: []string{no, yes},
		show: plainly(func(s session.Settings) string {
			if *of(&s) {
				return yes
			}
			return no
		}),
		read: func(s *session.Settings, text string, _ typedAt) error {
			*of(s) = text == yes
			return nil
		},
	}
}

// evenChance is the most that a likelier winner may have where levels are to be even.
const evenChance = 0.75

func readLevels(s *session.Settings, text string, _ typedAt) error {
	step, err := scheduler.ParseLeveling(text)
	if err != nil {
		return err
	}
	s.Gentle, s.Balance = step == scheduler.GentleLevels, evenChance
	if step == scheduler.AnyLevels {
		s.Balance = 0
	}
	return nil
}

func readClosing(s *session.Settings, text string, typed typedAt) error {
	text = strings.TrimSpace(text)
	at, err := roster.ParseMoment(text)
	if err != nil || text != "" && !at.IsClock {
		return fmt.Errorf("closing time %q: write a time such as 21:30", text)
	}
	s.Closing = typed.night.TimeOfDay(at, typed.now)
	return nil
}

// timeText is a time of day as it is shown and typed, empty for none.
func timeText(t, now time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.In(now.Location()).Format("15:04")
}
