package scheduler

import "math"

// tenths is how finely levels are told apart when teams are balanced.
const tenths = 10

// levels returns each person's level in tenths, people without one at the average of the others. It
// is nil when nobody states a level.
func (n *night) levels() []int {
	sum, stated := 0.0, 0
	for _, person := range n.p.People {
		if person.Level != 0 {
			sum += person.Level
			stated++
		}
	}
	if stated == 0 {
		return nil
	}
	levels := make([]int, n.people)
	for i, person := range n.p.People {
		level := person.Level
		if level == 0 {
			level = sum / float64(stated)
		}
		levels[i] = int(math.Round(level * tenths))
	}
	return levels
}

// gameCost is what the game on seats 4g to 4g+3 of planned round r costs for levels and bands.
func (b *board) gameCost(r, g int) score {
	if b.levels == nil {
		return score{}
	}
	row := b.row(r)[4*g : 4*g+4]
	return b.quartetCost(b.shapes[r].courts[g], row[0], row[1], row[2], row[3])
}

// quartetCost is what a game of i and j against k and l costs on the court.
func (b *board) quartetCost(c Court, i, j, k, l int32) score {
	if b.levels == nil {
		return score{}
	}
	gap := b.levels[i] + b.levels[j] - b.levels[k] - b.levels[l]
	s := score{level: gap * gap / 16}
	if limit := b.n.p.LevelLimit; limit > 0 && max(gap, -gap) > b.n.widest {
		s.onesided = 1
	}
	if b.n.bands {
		for _, i := range [4]int32{i, j, k, l} {
			if !b.n.p.Courts[c].suits(b.n.p.People[i].Level) {
				s.level += outOfBand
			}
		}
	}
	return s
}

// outOfBand is the cost of one person on a court whose preferred band is another.
const outOfBand = 8

// widestGap is the greatest difference of team levels, in tenths, whose stronger team wins with a
// chance of at most the limit.
func widestGap(limit float64) int {
	gap := 0
	for gap < 1000 && WinChance(float64(gap+1)/tenths, 0) <= limit {
		gap++
	}
	return gap
}
