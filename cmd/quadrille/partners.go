package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"club/quadrille/session"
	"club/quadrille/session/spreadsheet"
)

// partnersRequest is what the flags of partners ask for.
type partnersRequest struct {
	of        string
	span      spanFlags
	json, csv bool
}

// newPartners builds the command that tells who plays well with whom.
func newPartners(opts *options) *cobra.Command {
	var p partnersRequest
	cmd := &cobra.Command{
		Use:   "partners [NAME]",
		Short: "Tell who plays well together, or of one person with whom",
		Long: fmt.Sprintf(`Lists who had games as partners, on all nights of the club or those of some days, with the
share of them that was won and its 95 %% range. With a NAME it lists the partners of that person,
and whom the person met on the other side. Those with %d games or more come first, best first by
the lower end of the range; of fewer games nothing is claimed: any share could be luck. Walkovers,
retired and void games count as in the table. It works while the desk is open.`, session.EnoughGames),
		Example: `  quadrille partners
  quadrille partners "Agnes Vale" --from 2026-01-01
  quadrille partners --format mixed --csv`,
		Args: takes(0, 1, "at most one NAME (in quotes)"),
	}
	flags := cmd.Flags()
	dataFlag(cmd, opts, clubFile)
	p.span.add(cmd, "")
	flags.BoolVar(&p.json, "json", false, "print the tables as JSON")
	flags.BoolVar(&p.csv, "csv", false, "print the tables as CSV for a spreadsheet")
	excludes(cmd, "json", "csv")
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		p.of = strings.Join(args, "")
		return p.print(cmd, opts)
	}
	return cmd
}

// companyLine is a line of a table of partners.
type companyLine struct {
	With  string  `json:"with"` // partners or against
	A     string  `json:"a"`
	B     string  `json:"b"`
	Games int     `json:"games"`
	Won   float64 `json:"won"`
	Share float64 `json:"share"`
	Low   float64 `json:"low"`
	High  float64 `json:"high"`
	Sure  bool    `json:"enough"`
}

func (p *partnersRequest) print(cmd *cobra.Command, opts *options) error {
	_, ledger, err := opts.look()
	if err != nil {
		return err
	}
	club := ledger.Club()
	parts := map[string][]session.Company{"partners": nil}
	order := []string{"partners"}
	if p.of == "" {
		parts["partners"] = session.Partners(club, p.span.Span)
	} else {
		who, ok := club.Named(p.of)
		if !ok {
			return fmt.Errorf("the club knows nobody called %q: quadrille export --people lists everybody", p.of)
		}
		parts["partners"], parts["against"] = session.With(club, who.ID, p.span.Span), session.Against(club, who.ID, p.span.Span)
		order = append(order, "against")
	}
	rows := []companyLine{}
	for _, with := range order {
		for _, c := range parts[with] {
			rows = append(rows, companyLine{
				with, club.Name(c.A), club.Name(c.B), c.Games, c.Won,
				rounded(c.Share()), rounded(c.Low), rounded(c.High), c.Enough(),
			})
		}
	}
	switch out := cmd.OutOrStdout(); {
	case p.json:
		return printJSON(out, rows)
	case p.csv:
		return writePartners(out, rows)
	default:
		return p.table(out, rows, order)
	}
}

func rounded(share float64) float64 { return math.Round(1000*share) / 1000 }

func writePartners(w io.Writer, rows []companyLine) error {
	out := csv.NewWriter(w)
	_ = out.Write([]string{"with", "a", "b", "games", "won", "share", "low", "high", "enough"})
	number := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	for _, r := range rows {
		_ = out.Write([]string{
			r.With, spreadsheet.Text(r.A), spreadsheet.Text(r.B), strconv.Itoa(r.Games), number(r.Won),
			number(r.Share), number(r.Low), number(r.High), strconv.FormatBool(r.Sure),
		})
	}
	out.Flush()
	return out.Error()
}

// table writes the tables for people. Of pairs without enough games it says how many there are.
func (p *partnersRequest) table(w io.Writer, rows []companyLine, order []string) error {
	var out strings.Builder
	titles := map[string]string{"partners": "Partners", "against": "Opponents"}
	for i, with := range order {
		if i > 0 {
			out.WriteString("\n")
		}
		fmt.Fprintf(&out, "%s games   won  share     range\n", fit(titles[with], 44))
		few, shown := 0, 0
		for _, r := range rows {
			switch {
			case r.With != with:
			case !r.Sure:
				few++
			default:
				shown++
				name := r.A + " & " + r.B
				if p.of != "" {
					name = r.B
				}
				fmt.Fprintf(&out, "%s %5d %5.4g  %3.0f %%  %2.0f to %2.0f %%\n", fit(name, 44), r.Games, r.Won, 100*r.Share, 100*r.Low, 100*r.High)
			}
		}
		if few+shown == 0 {
			out.WriteString("  no games\n")
		}
		if few > 0 {
			fmt.Fprintf(&out, "%s\n", wrap(fmt.Sprintf("%s with fewer than %d games: too few to say anything of (--csv has them).",
				counted(few, "pair", "pairs"), session.EnoughGames), 0))
		}
	}
	fmt.Fprintf(&out, "\n%s\n", wrap("The range holds the true share 95 times of 100 (Wilson); ranges that overlap tell nobody apart.", 0))
	_, err := io.WriteString(w, out.String())
	return err
}
