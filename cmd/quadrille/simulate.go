package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"strings"
	"syscall"

	"github.com/spf13/cobra"

	"club/quadrille/cmd/quadrille/rotation"
	"club/quadrille/scheduler"
	"club/quadrille/session"
	"club/quadrille/session/simulation"
)

// simulator is what the flags of simulate ask for.
type simulator struct {
	night   simulation.Night
	players int
	roster  string
	file    string // the club file to write, "" for a temporary one
	resume  bool
	ack     bool
	json    bool
}

// newSimulate builds the command that plays a whole night.
func newSimulate(opts *options) *cobra.Command {
	s := simulator{night: simulation.Night{Flow: session.Rounds}}
	cmd := &cobra.Command{
		Use:   "simulate (--players N | --roster FILE) --courts C",
		Short: "Play an invented night through the real desk",
		Long: `Plays a whole night through the real desk and a real club file, with an invented clock:
people come, some late; games take their time; scores fall as levels have it; people go. The
rolling flow is played twice, the second time calling simply the first four of the queue, so
that the difference shows. The file is temporary unless --data names a new one.`,
		Example: `  quadrille simulate --players 37 --courts 7 --minutes 150 --flow rolling
  quadrille simulate --roster people.csv --courts 4 --rounds 8 --json`,
		Args: nothing,
	}
	flags := cmd.Flags()
	addWhole(cmd, &s.players, "players", fewest, rotation.MaxPeople, "`N` people called P01, P02 and so on")
	addFile(cmd, &s.roster, "roster", "the people of this CSV `file`, with their times (- for the standard input)", "csv")
	addWhole(cmd, &s.night.Courts, "courts", 1, session.MaxCourts, "play on `C` courts")
	addWhole(cmd, &s.night.Minutes, "minutes", 1, 12*60, "`M` minutes from the first call to closing time")
	addWhole(cmd, &s.night.Rounds, "rounds", 1, 60, "play `R` rounds (default: 8, or as many as fit)")
	addChoice(cmd, &s.night.Flow, "flow", "how games follow each other", session.ParseFlow, "rounds", "rolling")
	addChoice(cmd, &s.night.Format, "format", "how teams are made", scheduler.ParseFormat, "rotating", "mixed", "pairs")
	addWhole(cmd, &s.night.ByRally, "by-rally", 0, session.MaxCourts, "score `N` courts rally by rally, the others by final score")
	addWhole(cmd, &s.night.Late, "late", 0, rotation.MaxPeople, "`K` people come late")
	addWhole(cmd, &s.night.Leave, "leave", 0, rotation.MaxPeople, "`K` people go early")
	s.night.Seed = 1
	addSeed(cmd, &s.night.Seed, "equal seeds give equal nights")
	flags.BoolVar(&s.resume, "resume", false, "go on with the night that --data holds, which the same flags began")
	flags.BoolVar(&s.ack, "ack", false, "print the number of the newest event after each action, and nothing else")
	flags.BoolVar(&s.json, "json", false, "print the figures as JSON")
	_ = flags.MarkHidden("ack")
	rules := rulesFlags(cmd)
	dataFlag(cmd, opts, "keep the night in this new `file` (default: a temporary one)")
	needsOne(cmd, "players", "roster")
	needs(cmd, "courts")
	goesWith(cmd, "resume", "data")
	before(cmd, s.possible)
	cmd.RunE = func(cmd *cobra.Command, _ []string) error {
		s.night.Scoring, s.file = *rules, opts.data
		if err := s.night.Scoring.Validate(); err != nil {
			return usage{err}
		}
		ctx, stop := signal.NotifyContext(cmd.Context(), os.Interrupt, syscall.SIGTERM) // leave no temporary file
		defer stop()
		cmd.SetContext(ctx)
		return s.run(cmd)
	}
	return cmd
}

// possible refuses numbers that do not fit each other.
func (s *simulator) possible(cmd *cobra.Command) error {
	switch going := s.night.Late + s.night.Leave; {
	case s.roster == "" && going > s.players-fewest:
		return usagef("--late and --leave take %d of %d people at most, not %d: four must be there throughout", s.players-fewest, s.players, going)
	case s.night.ByRally > s.night.Courts:
		return usagef("--by-rally takes at most the %s of --courts, not %d", counted(s.night.Courts, "court", "courts"), s.night.ByRally)
	}
	return nil
}

// run plays the night, and in the rolling flow the plain queue beside it.
func (s *simulator) run(cmd *cobra.Command) (err error) {
	s.night.People = simulation.Invented(s.players, s.night.Seed)
	if s.roster != "" {
		if s.night.People, err = readRoster(cmd, s.roster); err != nil {
			return err
		}
	}
	if err := s.night.Validate(); err != nil {
		return err
	}
	var kept func(uint64) error
	if s.ack {
		kept = func(last uint64) error {
			_, err := fmt.Fprintln(cmd.OutOrStdout(), last)
			return err
		}
	}
	noteEmptyCourts(cmd, s.night.Courts, len(s.night.People))
	report, err := s.play(cmd.Context(), kept)
	if err != nil || s.ack {
		return err
	}
	if s.night.Flow == session.Rolling {
		queue := s.night
		queue.Pick = scheduler.QueueNext
		plain, err := simulation.Run(cmd.Context(), &session.MemoryLog{}, queue, nil)
		if err != nil {
			return fmt.Errorf("the plain queue: %w", err)
		}
		report.Queue = &plain
	}
	if s.json {
		return printJSON(cmd.OutOrStdout(), report)
	}
	return printReport(cmd.OutOrStdout(), report)
}

// play plays the night on its club file.
func (s *simulator) play(ctx context.Context, kept func(uint64) error) (report simulation.Report, err error) {
	file := s.file
	if file == "" {
		folder, err := os.MkdirTemp("", "quadrille-simulation-")
		if err != nil {
			return report, err
		}
		defer func() { err = errors.Join(err, os.RemoveAll(folder)) }()
		file = filepath.Join(folder, "night.qdb")
	}
	log, err := openClub(file)
	if err != nil {
		return report, err
	}
	defer func() { err = errors.Join(err, log.Close()) }()
	if log.Last() > 0 && !s.resume {
		return report, fmt.Errorf("%s holds events already: name a new file, or add --resume to go on with the simulated night in it", file)
	}
	return simulation.Run(ctx, log, s.night, kept)
}

// printReport writes the figures of a night for people, with those of the plain queue beside them.
func printReport(w io.Writer, r simulation.Report) error {
	var out strings.Builder
	reports := []simulation.Report{r}
	fmt.Fprintf(&out, "%-32s %12s", "simulated night", "quadrille")
	if r.Queue != nil {
		reports = append(reports, *r.Queue)
		fmt.Fprintf(&out, " %14s", "first in queue")
	}
	out.WriteByte('\n')
	line := func(name, format string, value func(simulation.Report) any) {
		fmt.Fprintf(&out, "%-32s %12s", name, fmt.Sprintf(format, value(reports[0])))
		for _, other := range reports[1:] {
			fmt.Fprintf(&out, " %14s", fmt.Sprintf(format, value(other)))
		}
		out.WriteByte('\n')
	}
	line("people", "%d", func(r simulation.Report) any { return r.Players })
	line("games", "%d", func(r simulation.Report) any { return r.Games })
	if r.Rounds > 0 {
		line("rounds", "%d", func(r simulation.Report) any { return r.Rounds })
	}
	line("minutes of play", "%.0f", func(r simulation.Report) any { return r.Minutes })
	line("courts idle, % of the time", "%.1f", func(r simulation.Report) any { return 100 * r.IdleCourtShare })
	line("wait in minutes, median", "%.1f", func(r simulation.Report) any { return r.WaitMinutes.Median })
	line("  95 % wait at most", "%.1f", func(r simulation.Report) any { return r.WaitMinutes.P95 })
	line("  longest", "%.1f", func(r simulation.Report) any { return r.WaitMinutes.Max })
	line("  in vain: no game followed", "%d", func(r simulation.Report) any { return r.WaitMinutes.Open })
	line("games a person, fewest", "%d", func(r simulation.Report) any { return r.GamesPerPlayer.Min })
	line("  most", "%d", func(r simulation.Report) any { return r.GamesPerPlayer.Max })
	line("  per time present, Jain index", "%.4f", func(r simulation.Report) any { return r.GamesPerPlayer.Jain })
	for i, m := range r.Certificate.Measures() {
		if m.Rests && r.Rounds == 0 {
			continue
		}
		line(m.Name, "%d", func(r simulation.Report) any { return r.Certificate.Measures()[i].Value.Value }) // of the same people
	}
	line("events", "%d", func(r simulation.Report) any { return r.Events })
	_, err := io.WriteString(w, out.String())
	return err
}
