package rotation

import (
	"fmt"
	"slices"

	"club/quadrille/scheduler"
	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// certificate judges the rotation if there is one, and otherwise what was played.
func (r *Rotation) certificate(c ui.Context) (scheduler.Certificate, bool) {
	n := c.Night()
	if n.Settings.Flow == session.Rolling {
		if c.Judged == nil {
			return scheduler.Certificate{}, false
		}
		return *c.Judged, true
	}
	return c.Rotation.Certificate, c.Rotation.Ready && c.Rotation.Err == nil
}

// summary says in one or two lines how fair the rotation is, or why there is none.
func summary(c ui.Context, k scheduler.Certificate, ok bool) []string {
	if err := c.Rotation.Err; err != nil && c.Night().Settings.Flow == session.Rounds {
		out := []string{}
		for _, text := range line.Wrap("No rotation: "+err.Error(), c.Width) {
			out = append(out, c.Theme.Bad.Render(text))
		}
		return append(out, "")
	}
	if !ok && c.Night().Settings.Flow == session.Rolling && len(c.Night().Games) > 0 {
		return []string{c.Theme.Dim.Render("working out how fair the games were…"), ""}
	}
	if !ok && c.Night().Settings.Flow == session.Rolling {
		return []string{c.Theme.Dim.Render("nothing was played yet"), ""}
	}
	if !ok {
		return []string{c.Theme.Dim.Render("working out the rotation…"), ""}
	}
	best, all := 0, k.Measures()
	for _, m := range all {
		if !m.Open && m.Gap() <= 0 {
			best++
		}
	}
	text := fmt.Sprintf("Fairness: %d of %d measures proved best. Sit-out spread %d, out twice running %d, partner repeats %d.",
		best, len(all), k.SitoutSpread.Value, k.BenchedTwice.Value, k.PartnerRepeats.Value)
	out := []string{}
	for _, t := range line.Wrap(text, c.Width) {
		out = append(out, c.Theme.Good.Render(t))
	}
	if fit, ok := c.Night().Fit(c.Now); ok {
		text := fmt.Sprintf("More rounds that fit until closing, %s: %d at 95 %%, %d at 80 %%, %d at 50 %%.",
			c.Night().Settings.Closing.In(c.Now.Location()).Format("15:04"), fit.Sure, fit.Probable, fit.Even)
		out = append(out, line.Wrap(text, c.Width)...)
	}
	for _, w := range c.Rotation.Warnings {
		for _, t := range line.Wrap("! "+w, c.Width) {
			out = append(out, c.Theme.Warn.Render(t))
		}
	}
	return append(append(out, progress(c)...), "")
}

// certificatePage is the whole certificate with its meaning.
func (r *Rotation) certificatePage(c ui.Context) []string {
	if c.Night() == nil {
		return nil
	}
	k, ok := r.certificate(c)
	if !ok {
		return []string{"There is nothing to judge yet."}
	}
	out := []string{
		c.Theme.Dim.Render(certificateRow("", "value", "bound", "gap", "what it counts")),
	}
	for _, m := range judged(c, k) {
		bound, gap := fmt.Sprint(m.Bound), fmt.Sprint(m.Gap())
		if m.Open {
			bound, gap = "?", "?"
		}
		out = append(out, certificateRow(m.Name, fmt.Sprint(m.Value.Value), bound, gap, m.Says))
	}
	out = append(out, "")
	for _, text := range k.Words(inRounds(c)) {
		out = append(out, line.Wrap(text, c.Width)...)
	}
	return out
}

// inRounds tells whether the night has rounds, so that sitting out means something.
func inRounds(c ui.Context) bool {
	return c.Night().Settings.Flow == session.Rounds || len(c.Night().Rounds) > 0
}

// judged lists the measures that the night is judged by.
func judged(c ui.Context, k scheduler.Certificate) []scheduler.Measure {
	return slices.DeleteFunc(k.Measures(), func(m scheduler.Measure) bool { return m.Rests && !inRounds(c) })
}

func certificateRow(name, value, bound, gap, says string) string {
	return line.Fit(name, 18) + line.Right(value, 6) + line.Right(bound, 6) + line.Right(gap, 5) + "  " + says
}
