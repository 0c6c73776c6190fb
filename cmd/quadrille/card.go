package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"club/quadrille/session"
	"club/quadrille/session/care"
)

// newCard builds the command that shows and writes the emergency card.
func newCard(opts *options) *cobra.Command {
	var next session.EmergencyCard
	var board, venue string
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "card",
		Short: "Show or write the emergency card of your hall",
		Long: `Shows what somebody who calls for help must know of your hall, or writes the lines that are named. A
line that is - is emptied. Each venue has a card of its own: without --venue it is that of the
newest night. The desk shows the card with one key (C, or f4), "quadrille print card" makes a sheet
of it, and the boards show it if you want them to. To write it, the desk must not have the club file
open. Local rules and qualified people decide what is done in an emergency.`,
		Example: `  quadrille card
  quadrille card --address "12 Mill Lane" --defibrillator "front desk"
  quadrille card --contacts - --on-board yes
  quadrille card --venue "Mill Lane hall"`,
		Args: nothing,
	}
	lines := []struct {
		name, what string
		value      *string
	}{
		{"address", "the address, as one says it to the emergency services", &next.Address},
		{"access", "how an ambulance gets in", &next.Access},
		{"defibrillator", "where the defibrillator hangs", &next.Defibrillator},
		{"first-aid", "where the first aid kit is, and who knows first aid", &next.FirstAid},
		{"contacts", "whom to call besides, with their numbers", &next.Contacts},
	}
	for _, l := range lines {
		addText(cmd, l.value, l.name, "a text, or - for none", l.what+", a `text`")
		completes(cmd, l.name, cobra.NoFileCompletions)
	}
	addChoice(cmd, &board, "on-board", "whether the boards in the hall show it", parseYesNo, "yes", "no")
	addText(cmd, &venue, "venue", "the name of a venue, or - for none in particular", "whose card: a `venue` of the club; else where the newest night was")
	completes(cmd, "venue", opts.venues)
	cmd.Flags().BoolVar(&asJSON, "json", false, "print the card as JSON")
	dataFlag(cmd, opts, clubFile)
	at := func(l *session.Ledger) string {
		switch venue {
		case "":
			return l.Venue()
		case "-":
			return session.HomeVenue
		}
		return l.Club().VenueNamed(venue)
	}
	cmd.RunE = func(cmd *cobra.Command, _ []string) error {
		names := []string{"on-board"}
		for _, l := range lines {
			names = append(names, l.name)
		}
		changes := given(cmd, names)
		if len(changes) == 0 {
			_, ledger, err := opts.look()
			if err != nil {
				return err
			}
			return showCard(cmd, ledger.Club().Card(at(ledger)), asJSON)
		}
		path, err := opts.path()
		if err != nil {
			return err
		}
		return work(path, func(desk *session.Desk) error {
			where := at(desk.Ledger())
			card := desk.Ledger().Club().Card(where)
			old := []*string{&card.Address, &card.Access, &card.Defibrillator, &card.FirstAid, &card.Contacts}
			for i, l := range lines {
				if !cmd.Flags().Changed(l.name) {
					continue
				}
				if *old[i] = *l.value; *l.value == "-" {
					*old[i] = ""
				}
			}
			if board != "" {
				card.OnBoard = board == "yes"
			}
			l, err := desk.Do(session.WriteCard{Venue: where, Card: card})
			if err != nil {
				return err
			}
			return showCard(cmd, l.Club().Card(where), asJSON)
		})
	}
	return cmd
}

// parseYesNo reads yes or no.
func parseYesNo(text string) (string, error) {
	if text != "yes" && text != "no" {
		return "", errOutside
	}
	return text, nil
}

// showCard writes the card for people, or as JSON.
func showCard(cmd *cobra.Command, card session.EmergencyCard, asJSON bool) error {
	if asJSON {
		return printJSON(cmd.OutOrStdout(), card)
	}
	fmt.Fprintln(cmd.OutOrStdout(), wrap(care.CallFirst, 0))
	for _, l := range card.Lines() {
		if l.Text == "" {
			l.Text = "not written yet"
		}
		const label = 15
		fmt.Fprintln(cmd.OutOrStdout(), fit(l.Label, label)+strings.TrimLeft(flow(strings.Fields(l.Text), label, 1), " "))
	}
	if card.OnBoard {
		fmt.Fprintln(cmd.OutOrStdout(), "The boards in the hall show it.")
	}
	return nil
}
