package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/charmbracelet/x/term"
	"github.com/spf13/cobra"

	"club/quadrille/cmd/quadrille/pdf"
	"club/quadrille/cmd/quadrille/wire"
	"club/quadrille/session"
	"club/quadrille/session/paper"
	"club/quadrille/store"
)

// printer is what the flags of print ask for.
type printer struct {
	opts  *options
	night string
	plan  string // a rotation in place of the club file
	size  pdf.Size
	out   string
	text  bool
}

// newPrint builds the command that makes sheets of paper.
func newPrint(opts *options) *cobra.Command {
	p := printer{opts: opts, size: pdf.A4}
	cmd := &cobra.Command{
		Use:   "print SHEET (--out FILE | --text)",
		Short: "Make sheets for the wall, the courts and the desk, as PDF or text",
		Long: `Makes sheets of paper of a night of the club, or with --plan of a rotation that was planned ahead, so
that a night can go on when the laptop does not: "quadrille enter" takes the results afterwards. SHEET is
` + sheetList() + `.

People are called as the club wants the hall to see them; only the check-in list has full names. The letters behind
a round stand for its games, and can be typed with its results. While the page for phones is open, the rotation says
where it is found, with a code for cameras in the PDF. It works while the desk is open.`,
		Example: `  quadrille print rotation --out wall.pdf
  quadrille print rotation --night 3 --text
  quadrille print rotation --plan rotation.json --paper letter --out wall.pdf`,
		Args: takes(1, 1, "one SHEET: "+orList(sheetNames())),
	}
	addFile(cmd, &p.out, "out", "write to this new `file` (- for the standard output)", "pdf", "txt")
	cmd.Flags().BoolVar(&p.text, "text", false, "make plain text in place of a PDF")
	addChoice(cmd, &p.size, "paper", "size of the paper", pdf.ParseSize, "a4", "letter")
	addFile(cmd, &p.plan, "plan", "take the rotation of this `file`, as \"quadrille plan --json\" prints it (- for the standard input)", "json")
	nightFlag(cmd, opts, &p.night, "the newest")
	dataFlag(cmd, opts, clubFile)
	excludes(cmd, "plan", "night")
	excludes(cmd, "plan", "data")
	excludes(cmd, "text", "paper")
	cmd.ValidArgsFunction = first(cobra.FixedCompletions(sheetNames(), cobra.ShellCompDirectiveNoFileComp))
	cmd.RunE = func(cmd *cobra.Command, args []string) error { return p.print(cmd, args[0]) }
	return cmd
}

// sheetNames lists the sheets that there are.
func sheetNames() (names []string) {
	for _, k := range paper.Kinds() {
		names = append(names, k.Name)
	}
	return names
}

// sheetList says what stands on each sheet.
func sheetList() string {
	var all []string
	for _, k := range paper.Kinds() {
		all = append(all, fmt.Sprintf("%s (%s)", k.Name, k.What))
	}
	return orList(all)
}

// print makes one sheet.
func (p *printer) print(cmd *cobra.Command, name string) error {
	kind, err := paper.ParseKind(name)
	if err != nil {
		return usagef("%w: print %s%s", err, orList(sheetNames()), meant(name, sheetNames()))
	}
	if err := mustNameNight(p.night); err != nil {
		return err
	}
	if !p.text && (p.out == "" || p.out == "-" && onTerminal(cmd)) {
		return usagef("a PDF is no text for a terminal: name a file with --out, or add --text")
	}
	night, err := p.of(cmd, name)
	if err != nil {
		return err
	}
	sheet := kind.Of(night)
	if p.text {
		return writeTo(cmd, p.out, func(w io.Writer) error { return paper.Text(w, sheet) })
	}
	for _, m := range pdf.MissingIn(night.Names()) {
		note(cmd, "the PDF has □ for %s in %q, which its font cannot draw: --text prints it as it is", m.Letters, m.Text)
	}
	return writeTo(cmd, p.out, func(w io.Writer) error { return pdf.Write(w, sheet, p.size, time.Now()) })
}

// printSheet writes a sheet of the desk to a new file: a PDF on paper of a size, or plain text where its name says so. It says which
// names the PDF cannot draw as they are.
func printSheet(cmd *cobra.Command) func(path, on string, s paper.Sheet, names []string) ([]string, error) {
	return func(path, on string, s paper.Sheet, names []string) (lack []string, err error) {
		size, err := pdf.ParseSize(on)
		if err != nil {
			return nil, err
		}
		if strings.EqualFold(filepath.Ext(path), ".txt") {
			return nil, writeTo(cmd, path, func(w io.Writer) error { return paper.Text(w, s) })
		}
		if path == "-" {
			return nil, fmt.Errorf("name a file: the standard output is the desk's screen")
		}
		for _, m := range pdf.MissingIn(names) {
			lack = append(lack, m.Text)
		}
		return lack, writeTo(cmd, path, func(w io.Writer) error { return pdf.Write(w, s, size, time.Now()) })
	}
}

// onTerminal tells whether the standard output is one.
func onTerminal(cmd *cobra.Command) bool {
	f, ok := unwrapped(cmd.OutOrStdout()).(*os.File)
	return ok && term.IsTerminal(f.Fd())
}

// of is the night that the sheet is about.
func (p *printer) of(cmd *cobra.Command, sheet string) (paper.Night, error) {
	if sheet == "card" && p.plan != "" {
		return paper.Night{}, usagef("the emergency card is in the club file, and in no rotation: print it without --plan")
	}
	if p.plan != "" {
		doc, err := readPlan(cmd, p.plan)
		if err != nil {
			return paper.Night{}, err
		}
		return doc.Paper(), nil
	}
	_, ledger, err := p.opts.look()
	if err != nil {
		return paper.Night{}, err
	}
	if sheet == "card" && p.night == "" { // it needs no night
		return paper.Night{Card: ledger.Card()}, nil
	}
	n, err := nightOf(ledger.Club(), p.night)
	if err != nil {
		return paper.Night{}, err
	}
	night := paper.Of(ledger.Club(), n, ahead(cmd, ledger, n), time.Local)
	if n == ledger.Night() {
		night.Phones = p.page(cmd.Context())
	}
	return night, nil
}

// page is the address of the page for phones that the desk of the club file knows of, "" where none is open.
func (p *printer) page(ctx context.Context) string {
	path, err := p.opts.path()
	if err == nil {
		path, err = store.Resolve(path)
	}
	if err != nil {
		return ""
	}
	ctx, stop := context.WithTimeout(ctx, 2*time.Second)
	defer stop()
	if v := wire.Ask(ctx, path, buildVersion()); v != nil {
		return v.Phones
	}
	return ""
}

// ahead are the rounds to come of a night that goes on, as far as they can be planned.
func ahead(cmd *cobra.Command, l *session.Ledger, n *session.Night) []session.PlannedRound {
	if n != l.Night() || n.Settings.Flow != session.Rounds {
		return nil
	}
	r, err := session.PlanRotation(context.Background(), l, time.Now())
	if err != nil {
		note(cmd, "no round to come is on the sheet: %v", err)
		return nil
	}
	return r.Rounds
}
