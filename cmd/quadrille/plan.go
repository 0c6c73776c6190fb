package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"club/quadrille/cmd/quadrille/rotation"
	"club/quadrille/scheduler"
	"club/quadrille/session/spreadsheet"
)

// planner is what the flags of plan ask for.
type planner struct {
	ask    rotation.Request
	roster string // a file in place of a number of people
	effort effort
	json   bool
	csv    bool
}

// newPlan builds the command that makes a rotation.
func newPlan() *cobra.Command {
	var p planner
	cmd := &cobra.Command{
		Use:   "plan (--players N | --roster FILE) --courts C --rounds R",
		Short: "Make a rotation, with its fairness certificate",
		Long: `Makes a rotation and proves how fair it is. The certificate gives each measure beside the
least that any rotation could reach which shares the sit-outs like this one; where the gap is
0 it is the best of these. Where about half of the people sit out, --benching strict keeps
everybody from sitting out twice running, and then two groups hardly meet. There the ways to
share the bench are shown with what each gains and pays.

A roster is CSV with the header name,group,level,arrive,leave,partner_with,keep_apart,
not_partner,courts; only name is required. arrive is the first round that somebody plays and leave the last, or both
are times of day, which then need --start and --slot.`,
		Example: `  quadrille plan --players 16 --courts 4 --rounds 5
  quadrille plan --roster people.csv --courts 4 --rounds 8 --start 19:00
  quadrille plan --players 12 --courts 3 --rounds 11 --format pairs --json`,
		Args: nothing,
		RunE: func(cmd *cobra.Command, _ []string) error { return p.run(cmd) },
	}
	flags := cmd.Flags()
	addWhole(cmd, &p.ask.Players, "players", fewest, rotation.MaxPeople, "plan for `N` people, called P01, P02 and so on")
	addFile(cmd, &p.roster, "roster", "plan for the people of this CSV `file` (- for the standard input)", "csv")
	addWhole(cmd, &p.ask.Courts, "courts", 1, rotation.MaxCourts, "play on `C` courts")
	addWhole(cmd, &p.ask.Rounds, "rounds", 1, rotation.MaxRounds, "plan `R` rounds")
	addChoice(cmd, &p.ask.Format, "format", "how teams are made", scheduler.ParseFormat, "rotating", "mixed", "pairs")
	addChoice(cmd, &p.ask.Leveling, "levels", "how even games shall be for what they cost in meetings, if the roster has levels", scheduler.ParseLeveling, "off", "gentle", "even")
	addChoice(cmd, &p.ask.Benching, "benching", "mixed: a few sit out twice running where all meet more for it; strict: as few as can be", scheduler.ParseBenching, "mixed", "strict")
	addWhole(cmd, &p.ask.MaxRun, "longest-run", 1, rotation.MaxRounds, "let people sit out after `N` games running (default: as the courts allow)")
	addEffort(cmd, &p.effort)
	addClock(cmd, &p.ask.Start, "start", "when round 1 is called, for rosters with times of day (`19:00`)")
	p.ask.Slot = 15
	addWhole(cmd, &p.ask.Slot, "slot", 1, 12*60, "`minutes` from one round to the next, for rosters with times of day")
	p.ask.Seed = 1
	addSeed(cmd, &p.ask.Seed, "equal seeds give equal rotations")
	flags.BoolVar(&p.json, "json", false, "print the rotation as JSON")
	flags.BoolVar(&p.csv, "csv", false, "print the rotation as CSV, a game a line")
	excludes(cmd, "json", "csv")
	needsOne(cmd, "players", "roster")
	needs(cmd, "courts", "rounds")
	goesWith(cmd, "start", "roster")
	goesWith(cmd, "slot", "roster")
	return cmd
}

// run makes the rotation and prints it.
func (p *planner) run(cmd *cobra.Command) (err error) {
	if p.ask.Format == scheduler.Ladder {
		return usagef("--format cannot be ladder here: each round of a ladder follows from the results of the one before; the desk plays it")
	}
	if p.roster != "" {
		if p.ask.Roster, err = readRoster(cmd, p.roster); err != nil {
			return err
		}
	}
	problem, err := p.ask.Problem()
	if err != nil {
		return err
	}
	for _, w := range scheduler.Warnings(problem) {
		note(cmd, "%s", w)
	}
	noteEmptyCourts(cmd, len(problem.Courts), len(problem.People))
	rounds, err := p.effort.plan(cmd.Context(), problem)
	if err != nil {
		return err
	}
	for _, u := range scheduler.Unkept(problem, rounds) {
		note(cmd, "%s", u)
	}
	doc := rotation.New(problem, rounds)
	switch out := cmd.OutOrStdout(); {
	case p.json:
		return printJSON(out, doc)
	case p.csv:
		return writeRotation(out, doc)
	default:
		if err := printRotation(out, doc); err != nil {
			return err
		}
		return p.printChoices(cmd, problem)
	}
}

// printChoices shows what else could be chosen, where that matters.
func (p *planner) printChoices(cmd *cobra.Command, problem scheduler.Problem) error {
	budget := p.effort.budget()
	if scheduler.Choosable(problem) {
		ways, err := scheduler.Alternatives(cmd.Context(), problem, budget)
		if err != nil {
			return err
		}
		if err := printAlternatives(cmd.OutOrStdout(), ways, problem); err != nil {
			return err
		}
	}
	if scheduler.LevelsChoosable(problem) {
		steps, err := scheduler.LevelAlternatives(cmd.Context(), problem, budget)
		if err != nil {
			return err
		}
		return printLevelAlternatives(cmd.OutOrStdout(), steps, problem.Leveling)
	}
	return nil
}

// fewest is how many people a game of doubles needs.
const fewest = 4

// noteEmptyCourts tells of courts that nobody will play on.
func noteEmptyCourts(cmd *cobra.Command, courts, people int) {
	if full := people / fewest; full < courts {
		note(cmd, "%s can fill %d of %d courts: %d stand empty", counted(people, "person", "people"), full, courts, courts-full)
	}
}

// printRotation writes a rotation for people: a paragraph a round, then the certificate.
func printRotation(w io.Writer, d rotation.Document) error {
	var out strings.Builder
	for _, r := range d.Rounds {
		fmt.Fprintf(&out, "Round %d\n", r.Round)
		pieces := make([]string, 0, len(r.Games))
		for _, g := range r.Games {
			pieces = append(pieces, fmt.Sprintf("%s: %s v %s", g.Court, pair(g.A), pair(g.B)))
		}
		out.WriteString(flow(pieces, 2, 4) + "\n")
		if len(r.Out) > 0 {
			out.WriteString(flow(append([]string{"out:"}, commas(r.Out)...), 2, 1) + "\n")
		}
	}
	out.WriteByte('\n')
	if _, err := io.WriteString(w, out.String()); err != nil {
		return err
	}
	return printCertificate(w, d.Certificate, 0) // a plan leaves no game out
}

// pair names a team, short enough for two teams and a court on one line.
func pair(names []string) string {
	const most = 34
	text := strings.Join(names, " & ")
	if len(names) == 2 && width(text) > most {
		return cut(names[0], (most-3)/2) + " & " + cut(names[1], (most-3)/2)
	}
	return cut(text, most)
}

// commas puts a comma behind every name but the last.
func commas(names []string) []string {
	out := make([]string, len(names))
	for i, name := range names {
		out[i] = name
		if i < len(names)-1 {
			out[i] += ","
		}
	}
	return out
}

// writeRotation writes a rotation for a spreadsheet. Who sits out stands beside the first game of
// the round.
func writeRotation(w io.Writer, d rotation.Document) error {
	out := csv.NewWriter(w)
	_ = out.Write([]string{"round", "court", "a1", "a2", "b1", "b2", "out"}) // Error tells of failed writes
	for _, r := range d.Rounds {
		for i, g := range r.Games {
			row := []string{strconv.Itoa(r.Round), spreadsheet.Text(g.Court), "", "", "", "", ""}
			for j, name := range g.A {
				row[2+j] = spreadsheet.Text(name)
			}
			for j, name := range g.B {
				row[4+j] = spreadsheet.Text(name)
			}
			if i == 0 {
				row[6] = spreadsheet.Text(strings.Join(r.Out, "; "))
			}
			_ = out.Write(row)
		}
	}
	out.Flush()
	return out.Error()
}
