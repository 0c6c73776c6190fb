package bound

import (
	"slices"
)

// pours lets units fall one by one onto the lowest of several columns of given starting heights,
// some of which may take only so many. The cost of a unit is the height that it falls on, so that the
// costs add up to the least Σ C(height,2).
type pours struct {
	level   int
	columns [][]int // open columns by their height
	left    []int   // units that a column may still take
}

// newPours starts with columns of the given heights and limits. Columns without a limit left stay as
// they are.
func newPours(heights, limits []int) *pours {
	p := &pours{left: slices.Clone(limits)}
	for c, h := range heights {
		p.open(c, h)
	}
	return p
}

func (p *pours) open(column, height int) {
	if p.left[column] <= 0 {
		return
	}
	for len(p.columns) <= height {
		p.columns = append(p.columns, nil)
	}
	p.columns[height] = append(p.columns[height], column)
	p.level = min(p.level, height)
}

// pour adds the units and returns what they cost. Units that no column can take cost nothing.
func (p *pours) pour(units int) int {
	cost := 0
	p.each(units, func(height int) { cost += height })
	return cost
}

// repeats adds the units and returns how many fell on top of others.
func (p *pours) repeats(units int) int {
	count := 0
	p.each(units, func(height int) { count += min(1, height) })
	return count
}

// each drops the units one by one and reports the height that each fell on.
func (p *pours) each(units int, fell func(height int)) {
	for range units {
		for p.level < len(p.columns) && len(p.columns[p.level]) == 0 {
			p.level++
		}
		if p.level == len(p.columns) {
			break
		}
		last := len(p.columns[p.level]) - 1
		column := p.columns[p.level][last]
		p.columns[p.level] = p.columns[p.level][:last]
		p.left[column]--
		fell(p.level)
		p.open(column, p.level+1)
	}
}
