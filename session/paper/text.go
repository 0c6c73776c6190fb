package paper

import (
	"fmt"
	"io"
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// columns is how wide plain text may be, in terminal cells.
const columns = 80

// Text writes a sheet as plain text.
func Text(w io.Writer, s Sheet) error {
	var out strings.Builder
	writeWrapped(&out, s.Title, 0)
	for _, line := range s.Under {
		writeWrapped(&out, line, 0)
	}
	for _, b := range s.Blocks {
		out.WriteByte('\n')
		b.text(&out)
	}
	_, err := io.WriteString(w, out.String())
	return err
}

// text writes a block.
func (b Block) text(out *strings.Builder) {
	heading := b.Heading
	if b.Mark != "" {
		heading += "  [" + b.Mark + "]"
	}
	if heading != "" {
		writeWrapped(out, heading, 0)
	}
	b.Table.text(out)
	for _, line := range b.Lines {
		writeWrapped(out, line, 2)
	}
	if b.Code != "" {
		out.WriteString("  " + b.Code + "\n") // in one piece, so that it can be copied
	}
	for _, t := range b.Tallies {
		t.text(out)
	}
	if b.Cut {
		out.WriteString(strings.Repeat("- ", columns/2-1) + "-\n")
	}
}

// writeWrapped writes a sentence on as many lines as it needs.
func writeWrapped(out *strings.Builder, text string, indent int) {
	for line := range strings.SplitSeq(ansi.Wrap(text, columns-indent, ""), "\n") {
		out.WriteString(strings.TrimRight(strings.Repeat(" ", indent)+line, " ") + "\n")
	}
}

// text writes a table, indented; cells that are too long go on below.
func (t Table) text(out *strings.Builder) {
	const indent, gap = 2, 2
	heads := t.Heads()
	like := make([]float64, len(t.Columns))
	for _, row := range append([][]string{heads}, t.Rows...) {
		for i, cell := range row {
			like[i] = max(like[i], float64(ansi.StringWidth(t.cell(i, cell))))
		}
	}
	widths := Widths(like, gap, columns-indent)
	if heads != nil {
		t.row(out, heads, widths, indent, gap)
	}
	for _, row := range t.Rows {
		cells := make([]string, len(row))
		for i, cell := range row {
			cells[i] = t.cell(i, cell)
		}
		t.row(out, cells, widths, indent, gap)
	}
}

// cell is what stands in a cell.
func (t Table) cell(column int, text string) string {
	if text == "" && t.Columns[column].Tick {
		return "[  ]"
	}
	return text
}

// row writes one row.
func (t Table) row(out *strings.Builder, row []string, widths []float64, indent, gap int) {
	cells, tall := make([][]string, len(row)), 1
	for i, text := range row {
		cells[i] = strings.Split(ansi.Wrap(text, max(1, int(widths[i])), ""), "\n")
		tall = max(tall, len(cells[i]))
	}
	for k := range tall {
		var line strings.Builder
		line.WriteString(strings.Repeat(" ", indent))
		for i := range row {
			text := ""
			if k < len(cells[i]) {
				text = cells[i][k]
			}
			fill := strings.Repeat(" ", max(0, int(widths[i])-ansi.StringWidth(text)))
			if t.Columns[i].Right {
				text = fill + text
			} else {
				text += fill
			}
			line.WriteString(text + strings.Repeat(" ", gap))
		}
		out.WriteString(strings.TrimRight(line.String(), " ") + "\n")
	}
}

// text writes a team's part of a slip.
func (t Tally) text(out *strings.Builder) {
	writeWrapped(out, t.Team+"   score [    ]", 2)
	var numbers []string
	for i := range t.Points {
		numbers = append(numbers, fmt.Sprint(i+1))
	}
	writeWrapped(out, strings.Join(numbers, " "), 4)
}
