package main

import (
	"fmt"
	"io"
	"math"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"club/quadrille/cmd/quadrille/rotation"
	"club/quadrille/scheduler"
	"club/quadrille/scoring"
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
			return printJSON(cmd.OutOrStdout(), a)
		}
		return a.print(cmd.OutOrStdout())
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
	wished  int
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
func (f fitting) answer(cmd *cobra.Command, club *session.Club) (fitted, error) {
	h := f.hall
	habit := forecast.Learned(club, h.Rules)
	a, err := forecast.Of(h, habit, f.seed)
	if err != nil {
		return fitted{}, err
	}
	ways, best, err := forecast.Ways(h, club, f.games, f.seed)
	if err != nil {
		return fitted{}, err
	}
	mixes, err := forecast.Mixes(cmd.Context(), h, f.format, f.seed)
	if err != nil {
		return fitted{}, err
	}
	out := fitted{
		People: h.People, Courts: h.Courts, Minutes: h.Minutes, Flow: h.Flow, Rules: h.Rules.String(), Taught: habit.Games,
		Game: habit.Clock.Median(), Change: habit.Change, Round: a.Round, Games: fittedRange(a.Games),
		Rounds: numbers(a.Rounds), Each: numbers(a.Each), End: fittedEnd(a.End), wished: f.games,
	}
	for _, o := range forecast.Others(h, habit, f.seed) {
		out.Others = append(out.Others, fittedHall(o))
	}
	for i, w := range ways {
		out.Ways = append(out.Ways, fittedWay{ruleWords(w.Rules), w.Flow, w.Round, w.Each, i == best})
	}
	for _, m := range mixes {
		c := m.Certificate
		out.Mixing = append(out.Mixing, fittedMix{m.Rounds, c.PartnerRepeats, c.MeetingEvenness, c.Strangers})
	}
	return out, nil
}

func numbers(all []forecast.AtLeast) []fittedN {
	out := make([]fittedN, len(all))
	for i, a := range all {
		out[i] = fittedN(a)
	}
	return out
}

// ruleWords name rules as briefly as they can be told apart in a table of lengths.
func ruleWords(r scoring.Rules) string {
	if r.Minutes > 0 {
		return fmt.Sprintf("%d minutes", r.Minutes)
	}
	return fmt.Sprintf("to %d", r.To)
}

// print writes the answer for people.
func (a fitted) print(w io.Writer) error {
	var out strings.Builder
	fmt.Fprintf(&out, "%d people on %s for %s, in the %s flow, games %s.\n", a.People, counted(a.Courts, "court", "courts"), hoursWords(a.Minutes), a.Flow, a.Rules)
	out.WriteString(wrap(a.taughtWords(), 0) + "\n\n")
	fmt.Fprintf(&out, "games in all       %d to %d (in %.0f of 100 such nights)\n", a.Games.Low, a.Games.High, 100*a.Games.Chance)
	fmt.Fprintf(&out, "games each         %s\n", chances(a.Each))
	if len(a.Rounds) > 0 {
		fmt.Fprintf(&out, "rounds             %s\n", chances(a.Rounds))
		fmt.Fprintf(&out, "minutes a round    %.0f from call to call, half of them longer\n", a.Round)
	}
	fmt.Fprintf(&out, "last score         after %s; in 9 of 10 nights within %s\n", hoursWords(int(a.End.Median)), hoursWords(int(a.End.P90)))
	a.printOthers(&out)
	a.printWays(&out)
	a.printMixing(&out)
	_, err := io.WriteString(w, out.String())
	return err
}

func (a fitted) taughtWords() string {
	if a.Taught == 0 {
		return fmt.Sprintf("No games of your club are known yet: a model says that half of the games take %.0f minutes or more. It learns from each night that you run.", a.Game)
	}
	return fmt.Sprintf("Learned from %s of your club: half of them take %.1f minutes or more, and %.1f minutes pass between rounds.", counted(a.Taught, "game", "games"), a.Game, a.Change)
}

// chances are the numbers that are neither sure nor out of the question, and the last that is sure.
func chances(all []fittedN) string {
	var parts []string
	for i, x := range all {
		last := i+1 == len(all)
		if x.Chance < 0.02 || !last && all[i+1].Chance > 0.98 {
			continue
		}
		parts = append(parts, fmt.Sprintf("at least %d: %.0f %%", x.N, 100*x.Chance))
	}
	if len(parts) == 0 {
		return "none"
	}
	return strings.Join(parts, ", ")
}

func hoursWords(minutes int) string {
	return fmt.Sprintf("%d:%02d h", minutes/60, minutes%60)
}

func (a fitted) printOthers(out *strings.Builder) {
	fmt.Fprintf(out, "\n%-8s %-8s %-12s %s\n", "courts", "people", "games each", "of their time people sit out")
	for i, o := range a.Others {
		here := ""
		if i == 0 {
			here = "  as planned"
		}
		fmt.Fprintf(out, "%-8d %-8d %-12d %.0f %%%s\n", o.Courts, o.People, o.Each, 100*o.Waiting, here)
	}
}

func (a fitted) printWays(out *strings.Builder) {
	fmt.Fprintf(out, "\n%-12s %-9s %-16s %s\n", "a game", "flow", "minutes a round", "games each, probably")
	none := true
	for _, w := range a.Ways {
		mark := ""
		if w.Best {
			mark, none = fmt.Sprintf("  the longest that gives %s", counted(a.wished, "game", "games")), false
		}
		fmt.Fprintf(out, "%-12s %-9s %-16.0f %d%s\n", w.Rules, w.Flow, w.Round, w.Each, mark)
	}
	if none {
		out.WriteString(wrap(fmt.Sprintf("No way to play probably gives everybody %s: more courts, more time or fewer people would.", counted(a.wished, "game", "games")), 0) + "\n")
	}
}

func (a fitted) printMixing(out *strings.Builder) {
	fmt.Fprintf(out, "\n%-8s %-24s %-24s %s\n", "rounds", "same partner twice", "same people twice", "pairs who never meet")
	for _, m := range a.Mixing {
		fmt.Fprintf(out, "%-8d %-24s %-24s %s\n", m.Rounds, atLeastWords(m.Partners), atLeastWords(m.Meetings), atLeastWords(m.Strangers))
	}
	out.WriteString(wrap("With everybody there all the time; in brackets, where it is lower, what no rotation can be below that shares the sit-outs alike.", 0) + "\n")
}

// atLeastWords is a value, with its bound where that is lower.
func atLeastWords(v scheduler.Value) string {
	if v.Bound < v.Value {
		return fmt.Sprintf("%d (%d)", v.Value, v.Bound)
	}
	return fmt.Sprint(v.Value)
}
