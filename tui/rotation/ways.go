package rotation

import (
	"fmt"
	"strconv"

	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// waysKey opens the ways to plan tonight.
const waysKey = "m"

// ways offers the other ways to plan tonight, where there are some.
func ways(c ui.Context) []ui.Action {
	if len(c.Rotation.Ways) == 0 {
		return nil
	}
	return []ui.Action{ui.Act(ui.Bind("other ways", waysKey, waysKey), func() ui.Intent { return ui.Show{Dialog: waysMenu(c)} }).
		Explained("the ways to plan tonight, with what each gains and costs; the one you pick is kept")}
}

// waysMenu lists the ways with their figures. What is taken is planned as it was shown.
func waysMenu(c ui.Context) ui.Dialog {
	var items []dialog.Item
	for k, way := range c.Rotation.Ways {
		item := dialog.Item{
			Key: strconv.Itoa(k + 1), Label: way.Words(),
			Intent: ui.Do{Command: session.PickWay{Way: way.Way, Rounds: way.Rounds}},
		}
		if way.Now {
			item.Label += " · " + nowWord(c)
			if c.Night().Picked != nil {
				item.Why = "it is picked already"
			}
		}
		items = append(items, item)
	}
	return dialog.NewMenu("Other ways to plan tonight", items...).
		Noting("Repeats are people who meet again, all night. What you pick is kept by later plans; u undoes it.")
}

// nowWord says of the way of now whether it was picked.
func nowWord(c ui.Context) string {
	if c.Night().Picked != nil {
		return "picked"
	}
	return "as planned now"
}

// progress says in a line each what has changed, what can be chosen, and how far the search for better rounds is.
func progress(c ui.Context) []string {
	var out []string
	add := func(text string) {
		for _, t := range line.Wrap(text, c.Width) {
			out = append(out, c.Theme.Dim.Render(t))
		}
	}
	r := c.Rotation
	if c.Night().Settings.Flow != session.Rounds || !r.Ready || r.Err != nil {
		return nil
	}
	if r.Change.Kept < r.Change.Games {
		add("Changed: " + r.Change.Words(c.Names.Short) + ".")
	}
	if text := choiceText(c); text != "" {
		add(text)
	}
	if text := lookingText(r); text != "" {
		add(text)
	}
	return out
}

// choiceText says that there is a choice, and how tonight is planned now.
func choiceText(c ui.Context) string {
	picked := c.Night().Picked
	for _, way := range c.Rotation.Ways {
		if way.Now {
			return fmt.Sprintf("%s: %s. %s has %s.", upper(nowWord(c)), way.Words(), waysKey, others(c))
		}
	}
	if picked != nil {
		return "Picked: " + picked.Words() + "."
	}
	return ""
}

// others counts the ways that are not the one of now.
func others(c ui.Context) string {
	k := 0
	for _, way := range c.Rotation.Ways {
		if !way.Now {
			k++
		}
	}
	if k == 1 {
		return "another way"
	}
	return fmt.Sprintf("%d other ways", k)
}

func upper(text string) string {
	if text == "picked" {
		return "Picked"
	}
	return "Planned now"
}

// lookingText says how far the search for better rounds is; nothing where none was needed.
func lookingText(r ui.Rotation) string {
	now := r.Certificate.MeetingEvenness.Value
	what := fmt.Sprintf("%d repeats", now)
	if r.Looking.From != now {
		what = fmt.Sprintf("%d repeats → %d", r.Looking.From, now)
	}
	switch {
	case r.Looking.Printed:
		return fmt.Sprintf("As printed: %d repeats. The rounds stay so until people, courts or settings change, or the desk is closed.", now)
	case !r.Looking.Begun || r.Certificate.MeetingEvenness.Left() <= 0 && r.Looking.From == now:
		return ""
	case r.Looking.Settled && r.Certificate.MeetingEvenness.Left() <= 0:
		return "Settled at the bound: " + what + "."
	case r.Looking.Settled:
		return "Settled: " + what + "."
	}
	return "Still looking: " + what + ". The next round stays as it is."
}
