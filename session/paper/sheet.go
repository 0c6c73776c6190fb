package paper

// Sheet is what stands on paper: a title, and blocks one after the other. It says nothing of fonts, sizes and pages.
type Sheet struct {
	Title  string
	Under  []string // sentences under the title
	Code   string   // an address that stands beside the title as a code for cameras, "" for none
	Large  bool     // for the wall: as large as the page has room for
	Beside int      // so many blocks may stand side by side, at least 1
	Blocks []Block
}

// Block is what belongs together and stays on one page if it fits.
type Block struct {
	Heading string
	Mark    string // stands small behind the heading
	Table   Table
	Lines   []string // sentences below the table
	Tallies []Tally
	Cut     bool   // the paper is cut below it
	Code    string // an address that stands at the right of the heading as a code for cameras, "" for none
}

// Table has a column for each of Columns in every row.
type Table struct {
	Columns []Column
	Rows    [][]string
}

// Column is a column of a table.
type Column struct {
	Head  string
	Right bool // numbers, which stand at the right
	Long  bool // texts that may go on below
	Tick  bool // a box to tick or to write in stands in place of an empty text
}

// Tally is a team's part of a court's slip: a box for the score, and numbers to cross off, one a point.
type Tally struct {
	Team   string
	Points int
}

// Texts lists all texts of a sheet, for whoever must know whether they can be drawn.
func (s Sheet) Texts() []string {
	out := append([]string{s.Title}, s.Under...)
	for _, b := range s.Blocks {
		out = append(append(out, b.Heading, b.Mark), b.Lines...)
		for _, c := range b.Table.Columns {
			out = append(out, c.Head)
		}
		for _, row := range b.Table.Rows {
			out = append(out, row...)
		}
		for _, t := range b.Tallies {
			out = append(out, t.Team)
		}
	}
	return out
}

// hasHead tells whether a column of the table has a head.
func (t Table) hasHead() bool {
	for _, c := range t.Columns {
		if c.Head != "" {
			return true
		}
	}
	return false
}

// Heads are the heads of the columns, nil where none has one.
func (t Table) Heads() []string {
	if !t.hasHead() {
		return nil
	}
	out := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		out[i] = c.Head
	}
	return out
}

// Widths shares room among the columns of a table, of which each would like to have its own width and a gap stands
// between two. Where they do not fit, the widest give way first.
func Widths(like []float64, gap, room float64) []float64 {
	out := append([]float64(nil), like...)
	room -= gap * float64(max(0, len(like)-1))
	for {
		sum, widest, second, count := 0.0, 0.0, 0.0, 0
		for _, w := range out {
			sum += w
			switch {
			case w > widest:
				second, widest, count = widest, w, 1
			case w == widest:
				count++
			case w > second:
				second = w
			}
		}
		if sum <= room || count == 0 || widest <= 0 {
			return out
		}
		to := max(second, widest-(sum-room)/float64(count))
		if second == 0 {
			to = max(room/float64(count), 0)
		}
		for i, w := range out {
			if w == widest {
				out[i] = to
			}
		}
		if to == 0 {
			return out
		}
	}
}
