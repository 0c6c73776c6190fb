package main

import (
	_ "embed"
	"reflect"
	"strings"

	"github.com/spf13/cobra"

	"club/quadrille/cmd/quadrille/rotation"
	"club/quadrille/scheduler"
	"club/quadrille/session"
	"club/quadrille/session/simulation"
	"club/quadrille/session/standings"
	"club/quadrille/session/summary"
)

// formatsText says of each column and each JSON field what it means, a part for each file or object.
// Which fields there are, the help reads from the types that are written: a test compares.
//
//go:embed formats.txt
var formatsText string

// described reads formatsText: what each part says of its names, in order.
func described() map[string][][2]string {
	out := map[string][][2]string{}
	part := ""
	for line := range strings.Lines(formatsText) {
		line = strings.TrimSpace(line)
		if title, ok := strings.CutPrefix(line, "# "); ok {
			part = title
			continue
		}
		if name, text, ok := strings.Cut(line, " "); ok {
			out[part] = append(out[part], [2]string{name, strings.TrimSpace(text)})
		}
	}
	return out
}

// csvForms are the tables, and what is to be said of each.
var csvForms = []struct{ name, title, text string }{
	{"roster.csv", "A roster", "Read by import, plan, simulate and at the door of the desk. The columns stand in any order; first name and surname may stand for name, and other words that people use are understood and told."},
	{"games.csv", "Games", "Written by export --games; read by standings --games and rate, which need a1, b1, score_a and score_b. In export order from a1 to rules."},
	{"people.csv", "People", "Written by export --people; import reads it as a roster."},
	{"plan.csv", "A rotation", "Written by plan --csv, a game a line."},
	{"standings.csv", "Standings", "Written by standings --csv."},
	{"league.csv", "The league", "Written by standings --league --csv."},
	{"partners.csv", "Partners and opponents", "Written by partners --csv, a pair a line."},
}

// jsonForms are the objects that commands print, and what is to be said of each.
var jsonForms = []struct {
	kind  reflect.Type
	title string
}{
	{reflect.TypeFor[rotation.Document](), "plan --json prints a rotation, audit reads it:"},
	{reflect.TypeFor[judged](), "audit --json prints an audit:"},
	{reflect.TypeFor[simulation.Report](), "simulate --json prints a simulated night:"},
	{reflect.TypeFor[expectation](), "pace --json prints a pace:"},
	{reflect.TypeFor[fitted](), "fit --json prints a fit:"},
	{reflect.TypeFor[felt](), "heat --json prints a heat:"},
	{reflect.TypeFor[called](), "call --json prints a call a line:"},
	{reflect.TypeFor[standings.Row](), "standings --json prints a list of standings row:"},
	{reflect.TypeFor[interval](), "standings --json --intervals prints a list of standings row with range:"},
	{reflect.TypeFor[standings.LeagueRow](), "standings --league --json prints a list of league row:"},
	{reflect.TypeFor[companyLine](), "partners --json prints a list of company line:"},
	{reflect.TypeFor[summary.Summary](), "summary --json prints a summary:"},
	{reflect.TypeFor[rated](), "rate --json prints a list of rating:"},
	{reflect.TypeFor[session.Record](), "export prints {\"quadrille\":\"events\",\"format\":1}, then an event a line; import reads it:"},
}

// shapeNames are the names of types that have none of their own, or one that two of them share.
var shapeNames = map[reflect.Type]string{
	reflect.TypeFor[rotation.Document]():  "rotation",
	reflect.TypeFor[rotation.Person]():    "roster person",
	reflect.TypeFor[scheduler.Value]():    "measure",
	reflect.TypeFor[judged]():             "audit",
	reflect.TypeFor[simulation.Report]():  "simulated night",
	reflect.TypeFor[simulation.Games]():   "games a person",
	reflect.TypeFor[expectation]():        "pace",
	reflect.TypeOf(expectation{}.Rallies): "rallies",
	reflect.TypeFor[felt]():               "heat",
	reflect.TypeFor[fitted]():             "fit",
	reflect.TypeFor[fittedRange]():        "range of games",
	reflect.TypeFor[fittedN]():            "at least",
	reflect.TypeFor[fittedEnd]():          "end",
	reflect.TypeFor[fittedHall]():         "other hall",
	reflect.TypeFor[fittedWay]():          "way to play",
	reflect.TypeFor[fittedMix]():          "mixing",
	reflect.TypeFor[called]():             "call",
	reflect.TypeFor[standings.Row]():      "standings row",
	reflect.TypeFor[interval]():           "standings row with range",
	reflect.TypeFor[rated]():              "rating",
	reflect.TypeFor[session.Record]():     "event",
}

// newFormats builds the command that tells of every file form.
func newFormats() *cobra.Command {
	return &cobra.Command{
		Use:     "formats",
		Short:   "Tell of every file form and JSON field",
		Long:    "Tells of every table and of every JSON field: its name, its unit and its meaning.",
		Example: "  quadrille help formats",
		Args:    nothing,
		RunE: func(cmd *cobra.Command, _ []string) error {
			_, err := cmd.OutOrStdout().Write([]byte(formats()))
			return err
		},
	}
}

// formats is the whole help about file forms.
func formats() string {
	p := page{parts: described(), told: map[string]bool{}}
	p.paragraph("FORMS OF FILES AND OF JSON")
	p.paragraph("What stands here is stable: columns, fields and kinds of events keep their name, unit and meaning. A later " +
		"version may add some, and takes none away: read them by name, and pass over those that you do not know.")
	p.paragraph("All text is UTF-8. Times in JSON are UTC as RFC 3339 has them, 2026-01-08T18:50:00Z; times in tables are those of " +
		"this computer's place. An id is a text that tells people apart, also between laptops. A field marked with ? is left out " +
		"where it says nothing.")
	p.paragraph("TABLES (CSV)")
	p.paragraph("The first line names the columns. Tables are written in UTF-8 with commas; read are commas, semicolons and tabs, UTF-8, UTF-16 and Windows-1252. Cells that a spreadsheet " +
		"would take for a formula get an apostrophe in front, which is taken off again when the table is read.")
	for _, f := range csvForms {
		p.paragraph(f.title + ". " + f.text)
		for _, column := range p.parts[f.name] {
			p.line(column[0], "", column[1])
		}
		p.blank()
	}
	p.paragraph("THE DESK'S SETTINGS (TOML)")
	p.paragraph("desk.toml in the folder quadrille of your settings folder, read when the desk opens; all of it may be left out. quadrille " +
		"settings prints what holds, as a file to begin with, and says what is wrong with yours.")
	for _, s := range p.parts["desk.toml"] {
		p.line(s[0], "", s[1])
	}
	p.blank()
	p.paragraph("JSON")
	for _, f := range jsonForms {
		p.paragraph(f.title)
		p.shapes(f.kind)
	}
	p.paragraph("KINDS OF EVENTS")
	p.paragraph("The payload of an event is an object, by its kind; where nothing is listed, it is empty.")
	for _, l := range session.Layouts() {
		p.event(l)
	}
	p.paragraph("THE CLUB FILE")
	p.paragraph("club.qdb holds the same events as export prints, each with a checksum of itself and of the one before. Its layout is " +
		"this program's own: other programs read the export.")
	return p.out.String()
}
