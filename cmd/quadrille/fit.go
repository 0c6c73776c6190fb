package main

import (
	"fmt"
	"io"
	"math"
	"os"

	"github.com/spf13/cobra"

	"club/quadrille/cmd/quadrille/rotation"
	"club/quadrille/scheduler"
	"club/quadrille/session"
	"club/quadrille/session/forecast"
)

// fitting is what the flags of fit ask for.
type fitting struct {
	hall   forecast.Hall
	hours  float64
	format scheduler.Format
	games  int // that everybody should get
	seed   uint64
	json   bool
}

// newFit builds the command that says before a night what fits into it.
func newFit(opts *options) *cobra.Command {
	f := fitting{hall: forecast.Hall{Flow: session.Rounds}, games: 5, seed: 1}
	cmd := &cobra.Command{
		Use:   "fit --players N --courts C --hours H",
		Short: "Say before a night how much fits into it",
		Long: `Says how many rounds and games fit into a night and with which chances, what one court or three
people more or fewer would change, which ways to play give everybody the games that you wish for,
and how well 1 to 16 rounds mix people. How long a game takes is learned from the games in the club
file, if there are any; until then a model stands in, which counts as much as four games. A way
counts as probable from a chance of 80 %.`,
		Example: `  quadrille fit --players 22 --courts 4 --hours 2.5
  quadrille fit --players 37 --courts 7 --hours 3 --flow rolling --games 6`,
		Args: nothing,
	}
	addWhole(cmd, &f.hall.People, "players", fewest, rotation.MaxPeople, "`N` people are expected")
	addWhole(cmd, &f.hall.Courts, "courts", 1, session.MaxCourts, "play on `C` courts")
	addShare(cmd, &f.hours, "hours", 0.25, 12, "`H` hours from the first call to closing time, such as 2.5")
	addChoice(cmd, &f.hall.Flow, "flow", "how games follow each other", session.ParseFlow, "rounds", "rolling")
	addChoice(cmd, &f.format, "format", "how teams are made, for the mixing", scheduler.ParseFormat, "rotating", "mixed")
	addWhole(cmd, &f.hall.Late, "late", 0, rotation.MaxPeople, "`K` of them come late")
	addWhole(cmd, &f.hall.Leave, "leave", 0, rotation.MaxPeople, "`K` of them go early")
	addWhole(cmd, &f.games, "games", 1, 60, "everybody should get `G` games")
	rules := rulesFlags(cmd)
	addSeed(cmd, &f.seed, "equal seeds give equal answers")
	cmd.Flags().BoolVar(&f.json, "json", false, "print the figures as JSON")
	dataFlag(cmd, opts, "learn from the games of this club `file` (default: $QUADRILLE_DATA, else the one in the folder for your data)")
	needs(cmd, "players", "courts", "hours")
	before(cmd, func(*cobra.Command) error {
		f.hall.Rules, f.hall.Minutes = *rules, int(math.Round(60*f.hours))
		if err := f.hall.Validate(); err != nil {
			return usage{err}
		}
		return nil
	})
	cmd.RunE = func(cmd *cobra.Command, _ []string) error {
		club, err := opts.ifThere()
		if err != nil {
			return err
		}
		a, err := f.answer(cmd, club)
		if err != nil {
			return err
		}
		if f.json {
			return printJSON(cmd.OutOrStdout(), formOf(a))
		}
		return printAnswer(cmd.OutOrStdout(), a)
	}
	return cmd
}

// ifThere is the club of the club file, nil where there is none yet. A file that somebody named must be there.
func (o *options) ifThere() (*session.Club, error) {
	path, err := o.path()
	if err != nil {
		return nil, err
	}
	if _, err := os.Stat(path); os.IsNotExist(err) && o.data == "" {
		return nil, nil
	}
	_, ledger, err := o.look()
	if err != nil {
		return nil, err
	}
	return ledger.Club(), nil
}

// fitted is what fits into a night, as `fit --json` prints it. Its form is fixed.
type fitted struct {
	People  int          `json:"people"`
	Courts  int          `json:"courts"`
	Minutes int          `json:"minutes"`
	Flow    session.Flow `json:"flow"`
	Rules   string       `json:"rules"`
	Taught  int          `json:"taught_by_games"`
	Game    float64      `json:"game_minutes"`
	Change  float64      `json:"change_minutes"`
	Round   float64      `json:"round_minutes"`
	Games   fittedRange  `json:"games"`
	Rounds  []fittedN    `json:"rounds"`
	Each    []fittedN    `json:"games_each"`
	End     fittedEnd    `json:"end_minutes"`
	Others  []fittedHall `json:"others"`
	Ways    []fittedWay  `json:"ways"`
	Mixing  []fittedMix  `json:"mixing"`
}

type fittedRange struct {
	Low    int     `json:"low"`
	High   int     `json:"high"`
	Chance float64 `json:"chance"`
}

type fittedN struct {
	N      int     `json:"n"`
	Chance float64 `json:"chance"`
}

type fittedEnd struct {
	Median float64 `json:"median"`
	P90    float64 `json:"p90"`
}

type fittedHall struct {
	Courts  int     `json:"courts"`
	People  int     `json:"people"`
	Each    int     `json:"games_each"`
	Waiting float64 `json:"sitting_out"`
}

type fittedWay struct {
	Rules string       `json:"rules"`
	Flow  session.Flow `json:"flow"`
	Round float64      `json:"round_minutes"`
	Each  int          `json:"games_each"`
	Best  bool         `json:"best"`
}

type fittedMix struct {
	Rounds    int             `json:"rounds"`
	Partners  scheduler.Value `json:"partner_repeats"`
	Meetings  scheduler.Value `json:"meeting_evenness"`
	Strangers scheduler.Value `json:"strangers"`
}

// answer works everything out.
func (f fitting) answer(cmd *cobra.Command, club *session.Club) (forecast.Report, error) {
	return forecast.Reported(cmd.Context(), forecast.Question{Hall: f.hall, Format: f.format, Wished: f.games, Seed: f.seed}, club)
}

// formOf is a report as `fit --json` prints it.
func formOf(r forecast.Report) fitted {
	out := fitted{
		People: r.Hall.People, Courts: r.Hall.Courts, Minutes: r.Hall.Minutes, Flow: r.Hall.Flow, Rules: r.Hall.Rules.String(), Taught: r.Habit.Games,
		Game: r.Habit.Clock.Median(), Change: r.Habit.Change, Round: r.Answer.Round, Games: fittedRange(r.Answer.Games),
		Rounds: numbers(r.Answer.Rounds), Each: numbers(r.Answer.Each), End: fittedEnd(r.Answer.End),
	}
	for _, o := range r.Others {
		out.Others = append(out.Others, fittedHall(o))
	}
	for i, w := range r.Ways {
		out.Ways = append(out.Ways, fittedWay{w.Words(), w.Flow, w.Round, w.Each, i == r.Best})
	}
	for _, m := range r.Mixes {
		c := m.Certificate
		out.Mixing = append(out.Mixing, fittedMix{m.Rounds, c.PartnerRepeats, c.MeetingEvenness, c.Strangers})
	}
	return out
}

func numbers(all []forecast.AtLeast) []fittedN {
	out := make([]fittedN, len(all))
	for i, a := range all {
		out[i] = fittedN(a)
	}
	return out
}

// printAnswer writes a report for people.
func printAnswer(w io.Writer, r forecast.Report) error {
	for _, l := range r.Text() {
		text := l.Text
		if l.Flows {
			text = wrap(text, 0)
		}
		if _, err := fmt.Fprintln(w, text); err != nil {
			return err
		}
	}
	return nil
}
