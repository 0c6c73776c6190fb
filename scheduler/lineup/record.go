package lineup

import (
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/sitout"
)

// Record remembers, while rounds are filled one after the other, who sat out when.
type Record struct {
	outs  []int     // sit-outs so far
	Owed  []float64 // fair sit-outs so far
	since []int     // rounds since the last sit-out
	Run   []int     // games running without a rest
}

// NewRecord opens the books with what was played.
func NewRecord(n *night.Night) *Record {
	l := &Record{make([]int, n.People), make([]float64, n.People), make([]int, n.People), make([]int, n.People)}
	for r := range n.First {
		l.Enter(n, r, n.Problem.History[r].Out)
	}
	return l
}

// Behind is how many sit-outs more than the fair share somebody had so far.
func (l *Record) Behind(i night.Player) float64 { return float64(l.outs[i]) - l.Owed[i] }

// Enter books round r of the night: who was there, and who of them sat out.
func (l *Record) Enter(n *night.Night, r int, out []night.Player) {
	sitout.Owe(n.Pools(r), out, l.Owed)
	there := make([]bool, len(l.outs))
	for _, i := range n.Here[r] {
		there[i] = true
		l.since[i]++
		l.Run[i]++
	}
	for _, i := range out {
		if !n.Known(i) {
			continue
		}
		l.outs[i]++
		l.since[i], l.Run[i] = 0, 0
	}
	for i, yes := range there {
		if !yes {
			l.Run[i] = 0
		}
	}
}
