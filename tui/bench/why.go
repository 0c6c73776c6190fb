package bench

import (
	"fmt"

	"club/quadrille/session"
	"club/quadrille/session/evening"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// Survey implements ui.Surveyor: it works the answer out anew for whoever has asked.
func (b *Bench) Survey(c ui.Context) {
	b.why = nil
	n := c.Night()
	if n == nil {
		b.facts = facts{}
		return
	}
	b.facts = survey(c)
	b.head, b.why = answer(c, b.asks(c))
}

// asks is who has asked why not; beside the list that is the person under the cursor.
func (b *Bench) asks(c ui.Context) session.PersonID {
	if people := waiting(c.Night()); b.asked == "" && wide(c) && len(people) > 0 {
		return people[b.cursor.In(len(people))].Person
	}
	return b.asked
}

// answer says why somebody is not called next. It takes the machine a while.
func answer(c ui.Context, asked session.PersonID) (head string, why []string) {
	n := c.Night()
	if n == nil || asked == "" {
		return "", nil
	}
	head = "Why not " + c.Names.Full(asked) + "?"
	w, err := c.Ledger.WhyNot(asked, c.Now)
	switch {
	case err == nil && !n.LastCall:
		why = w.Words(c.Names.Short)
		if w.IsNext {
			head = c.Names.Full(asked) + " is next"
		}
	default:
		why = whyNot(c, n, asked, err)
	}
	switch pin, ok := n.PinOf(asked); {
	case ok && pin.Out:
		why = append(why, c.Names.Short(asked)+" sits out next by the organiser's decision.")
	case ok && pin.A[1] == "":
		why = append(why, c.Names.Short(asked)+" is put first by the organiser's decision.")
	}
	return head, why
}

// whyNot says why somebody is not called next where it is not for others that are.
func whyNot(c ui.Context, n *session.Night, id session.PersonID, err error) []string {
	who := c.Names.Short(id)
	a := n.Attending(id)
	switch {
	case a == nil:
		return nil
	case a.State == session.Resting:
		return []string{who + " rests, and is called again after space brings that to an end."}
	case n.Settings.Flow == session.Rounds:
		return inRounds(c, n, id)
	case n.LastCall:
		return []string{"The games on court are the last ones: nobody is called any more."}
	}
	if err != nil {
		return []string{"Nobody is called: " + err.Error() + "."}
	}
	return nil
}

// inRounds says when somebody plays, and how many sit-outs everybody has had.
func inRounds(c ui.Context, n *session.Night, id session.PersonID) []string {
	var ahead []session.PlannedRound
	if c.Rotation.Ready && c.Rotation.Err == nil {
		ahead = c.Rotation.Rounds
	}
	e, ok := evening.Of(c.Club(), n, ahead, c.Now, id)
	if !ok {
		return nil
	}
	who := c.Names.Short(id)
	var out []string
	for _, p := range e.Parts {
		if p.Kind == evening.SatOut {
			out = append(out, fmt.Sprintf("%s sat out round %d: %d people for %d places.", who, p.Round, p.Of, p.Places))
		}
	}
	switch next := e.Next(); {
	case next == nil:
	case next.Kind == evening.WillSit:
		out = append(out, fmt.Sprintf("%s sits out round %d too.", who, next.Round))
	default:
		out = append(out, fmt.Sprintf("%s plays in round %d, on court %s.", who, next.Round, next.Court))
	}
	more, same := e.Place()
	return append(out, fmt.Sprintf("Sat out so far: %d; %d sat out more often, %d as often, %d less.",
		e.Own().SatOut, more, same, len(e.Counts)-1-more-same))
}

// below is what stands under the list: an answer, and who is called next.
func (b *Bench) below(c ui.Context) []string {
	var out []string
	if len(b.why) > 0 {
		out = append(out, c.Theme.Strong.Render(b.head))
		for _, text := range b.why {
			out = append(out, line.Wrap(text, min(c.Width, 120))...)
		}
		if most := c.Height - listTop - 3; len(out) > most { // a line of the list stays
			out = append(out[:max(0, most-1)], "…")
		}
		return out
	}
	return b.next(c)
}
