package rotation

import (
	"fmt"
	"time"

	"club/quadrille/scoring/pace"
	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// fit is the box that answers which games fit into the rest of the night: to how many points must one
// play so that everybody gets six games by 21:30? What is wished for is turned with the arrows and + and
// -, and Enter takes the way to play that the cursor is on.
type fit struct {
	wish   session.Wish
	cursor ui.Cursor
	moved  bool // the cursor was moved; until then it is on the longest games that fit

	last answer
}

// answer is a forecast with what it was asked for. It takes some milliseconds to work out, and a frame
// must not.
type answer struct {
	wish     session.Wish
	record   uint64
	minute   time.Time
	forecast session.Forecast
	err      error
}

// Steps and bounds of what is wished for.
const (
	closingStep  = 15 * time.Minute
	maxGames     = 30
	usualGames   = 6
	usualEvening = 2 * time.Hour
)

// newFit begins with the closing time of the night and the games that its rounds give everybody.
func newFit(c ui.Context) *fit {
	n := c.Night()
	f := &fit{wish: session.Wish{Games: usualGames, Closing: n.Settings.Closing}}
	if n.Settings.Flow == session.Rounds {
		if games := n.GamesEach(); games > 0 {
			f.wish.Games = games
		}
	}
	if f.wish.Closing.IsZero() {
		f.wish.Closing = c.Now.Add(usualEvening).Truncate(closingStep)
	}
	return f
}

// Title implements ui.Dialog.
func (*fit) Title() string { return "Will it fit?" }

// Actions implements ui.Dialog.
func (f *fit) Actions(c ui.Context) []ui.Action {
	forecast, err := f.forecast(c)
	return []ui.Action{
		{Key: ui.Bind("games", "←→", "left", "right"), Do: func(key string) ui.Intent {
			by := 1
			if key == "left" {
				by = -1
			}
			f.wish.Games = min(maxGames, max(1, f.wish.Games+by))
			f.moved = false
			return nil
		}},
		{Key: ui.Bind("finish", "+-", "+", "=", "-"), Do: func(key string) ui.Intent {
			by := closingStep
			if key == "-" {
				by = -closingStep
			}
			f.wish.Closing = f.wish.Closing.Add(by)
			f.moved = false
			return nil
		}},
		{Key: ui.Bind("way to play", "↑↓", "up", "down", "pgup", "pgdown", "home", "end"), Do: func(key string) ui.Intent {
			f.cursor = ui.Cursor(f.at(forecast))
			f.moved = f.cursor.Press(key, len(forecast.Options)) || f.moved
			return nil
		}},
		ui.Act(ui.Bind("apply", "enter", "enter"), func() ui.Intent { return f.take(c, forecast, err) }),
		ui.Ask(ui.Bind("back", "esc", "esc"), ui.Close{}),
	}
}

// take is the way to play that the cursor is on.
func (f *fit) take(c ui.Context, forecast session.Forecast, err error) ui.Intent {
	switch {
	case err != nil:
		return ui.Refuse{Err: err}
	case len(forecast.Options) == 0:
		return nil
	}
	o := forecast.Options[f.at(forecast)]
	return ui.Do{Command: session.ChangeSettings{Settings: c.Night().Take(o, f.wish.Closing)}}
}

// forecast is the answer to the wish as things stand in this minute.
func (f *fit) forecast(c ui.Context) (session.Forecast, error) {
	minute := c.Now.Truncate(time.Minute)
	if a := f.last; a.wish != f.wish || a.record != c.Ledger.Last() || !a.minute.Equal(minute) {
		f.last = answer{wish: f.wish, record: c.Ledger.Last(), minute: minute}
		f.last.forecast, f.last.err = c.Night().Suggest(f.wish, c.Now)
	}
	return f.last.forecast, f.last.err
}

// at is the option that the cursor is on.
func (f *fit) at(forecast session.Forecast) int {
	if f.moved {
		return f.cursor.In(len(forecast.Options))
	}
	return max(0, forecast.Best)
}

// Lines implements ui.Dialog.
func (f *fit) Lines(c ui.Context) []string {
	closing := f.wish.Closing.In(c.Now.Location()).Format("15:04")
	out := []string{
		fmt.Sprintf("Games each < %s >   finish by - %s +",
			c.Theme.Strong.Render(fmt.Sprint(f.wish.Games)), c.Theme.Strong.Render(closing)),
		"",
	}
	forecast, err := f.forecast(c)
	if err != nil {
		return append(out, c.Theme.Warn.Render(line.Cut(err.Error(), c.Width)))
	}
	unit := "rounds"
	if c.Night().Settings.Flow == session.Rolling {
		unit = "games on each court"
	}
	out = append(out, fmt.Sprintf("It takes %d more %s:", forecast.Rounds, unit), "")
	if forecast.Best < 0 {
		out = append(out, c.Theme.Warn.Render("Nothing fits: ask for fewer games or a later finish."), "")
	}
	for i, o := range forecast.Options {
		out = append(out, f.option(c, o, i == f.at(forecast), i == forecast.Best))
	}
	fits := forecast.Fit
	return append(out, "",
		c.Theme.Dim.Render(line.Cut(fmt.Sprintf("As you play now, rounds that fit until %s: %d at 50 %%,", closing, fits.Even), c.Width)),
		c.Theme.Dim.Render(line.Cut(fmt.Sprintf("%d at 80 %%, %d at 95 %%. Minutes a game are learned from tonight's games.", fits.Probable, fits.Sure), c.Width)),
		c.Theme.Dim.Render(line.Cut("What you take is for tonight only; o keeps it as usual.", c.Width)))
}

// option is one way to play, with how sure it is.
func (f *fit) option(c ui.Context, o pace.Option, selected, best bool) string {
	mark, style := "  ", c.Theme.Strong
	if selected {
		mark, style = "> ", c.Theme.Selected
	}
	note := ""
	if best {
		note = "longest that fits"
	}
	name := o.Rules.String()
	if o.Rules.Minutes > 0 {
		name = fmt.Sprintf("%d minutes, then the score decides", o.Rules.Minutes)
	}
	text := line.Fit(name, 36) + line.Right(fmt.Sprintf("%.0f min", o.Median), 7) + line.Right(chance(o), 8) + "  " + note
	return mark + style.Render(line.Fit(text, c.Width-2))
}

// chance is how sure an option is. Play that the clock stops always fits.
func chance(o pace.Option) string {
	if o.Rules.Minutes > 0 && o.Chance == 1 {
		return "sure"
	}
	return line.Percent(o.Chance)
}

// Next implements ui.Adviser.
func (*fit) Next(ui.Context) (string, bool) {
	return "←→ games, +- finish; enter applies from the next call", true
}
