package person

import (
	"fmt"
	"strings"

	"club/quadrille/session/evening"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// marks is how often somebody was met: with a mark for partners and one for opponents, and what is planned.
func marks(m evening.Meeting) string {
	mark := func(sign string, k int) string {
		switch k {
		case 0:
			return ""
		case 1:
			return sign
		}
		return sign + fmt.Sprint(k)
	}
	text := mark("▲", m.Partner) + mark("▼", m.Opponent)
	if m.Ahead > 0 {
		text += fmt.Sprintf("+%d", m.Ahead)
	}
	return text
}

// metLines lists who was met and who was not, in a few lines.
func (f *facts) metLines(c ui.Context) []string {
	met, others := f.evening.MetOf()
	if others == 0 {
		return nil
	}
	var yes, no []string
	for _, m := range f.evening.Met {
		if m.Partner+m.Opponent > 0 {
			yes = append(yes, c.Names.Short(m.With)+" "+marks(evening.Meeting{Partner: m.Partner, Opponent: m.Opponent}))
		} else {
			no = append(no, c.Names.Short(m.With))
		}
	}
	var out []string
	if met > 0 {
		text := fmt.Sprintf("%d of %d (▲ partner, ▼ opponent): ", met, others)
		out = labelled(c, "Met", listed(text, yes, 2*(c.Width-labelWidth)-12), 2)
	}
	if len(no) > 0 {
		out = append(out, labelled(c, "Not yet", c.Theme.Dim.Render(listed("", no, c.Width-labelWidth)), 1)...)
	}
	return out
}

// listed joins as many parts as fit into so many cells, and says how many more there are.
func listed(head string, parts []string, room int) string {
	for i, p := range parts {
		sep := "  "
		if i == 0 {
			sep = ""
		}
		more := fmt.Sprintf("  and %d more", len(parts)-i)
		whole := head + sep + p
		left := line.Width(whole)
		if i < len(parts)-1 {
			left += line.Width(fmt.Sprintf("  and %d more", len(parts)-i-1))
		}
		if left > room {
			return head + more
		}
		head = whole
	}
	return head
}

// metCell is the least room for one other person in the table of who was met.
const metCell = 24

// metTable is everybody of tonight with how often they were met, in at most so many lines.
func (f *facts) metTable(c ui.Context, rows int) []string {
	met, others := f.evening.MetOf()
	if others == 0 || rows < 2 {
		return nil
	}
	head := c.Theme.Strong.Render(fmt.Sprintf("Met %d of %d", met, others)) +
		c.Theme.Dim.Render("  partner ▲  opponent ▼  planned +1")
	columns := max(1, c.Width/metCell)
	cell := c.Width / columns
	most := (rows - 1) * columns
	list, more := f.evening.Met, 0
	if len(list) > most {
		most -= columns // a line for how many more there are
		list, more = list[:max(0, most)], len(list)-max(0, most)
	}
	out := []string{head}
	for len(list) > 0 {
		var b strings.Builder
		for _, m := range list[:min(columns, len(list))] {
			text, style := marks(m), c.Theme.Dim
			if m.Partner+m.Opponent > 0 {
				style = c.Theme.Strong
			}
			name := max(8, cell-10)
			b.WriteString(style.Render(line.Fit(c.Names.Short(m.With), name-1)) + " " + line.Fit(text, cell-name))
		}
		out = append(out, b.String())
		list = list[min(columns, len(list)):]
	}
	if more > 0 {
		out = append(out, c.Theme.Dim.Render(fmt.Sprintf("and %d more, met less often or not yet", more)))
	}
	return out
}
