package store

import (
	"cmp"
	"slices"
)

// choose picks, of runs in the order of their numbers, those that make up the log of a file: no two hold
// the same number, one that comes right after another is chained to it, and together they have the most
// records. So a page of another log, which fits to nothing beside it, gives way to the log around it;
// and so does an action that was never acknowledged, whose numbers were used again.
func choose(runs []*run, begins func(frame) bool) []*run {
	ending := map[link]*run{}
	byEnd := slices.SortedFunc(slices.Values(runs), func(a, b *run) int {
		return cmp.Compare(a.last().Seq, b.last().Seq)
	})
	var end *run // of the best log
	var ended int
	var reach []*run // those of byEnd that end before any number, best first of equals: a growing staircase
	for _, r := range runs {
		for ; ended < len(byEnd) && byEnd[ended].last().Seq+1 < r.first().Seq; ended++ {
			if e := byEnd[ended]; e.best != (weight{}) && (len(reach) == 0 || e.best.compare(reach[len(reach)-1].best) > 0) {
				reach = append(reach, e)
			}
		}
		r.follow(reach, ending[link{r.first().Seq - 1, r.first().before}], begins)
		if r.best == (weight{}) {
			continue
		}
		ending[link{r.last().Seq, r.last().sum}] = r
		if end == nil || r.best.compare(end.best) > 0 {
			end = r
		}
	}
	var out []*run
	for ; end != nil; end = end.before {
		out = append(out, end)
	}
	slices.Reverse(out)
	return out
}

// follow finds the best log that r can end: behind the run that it is chained to, behind one of reach,
// which all end with a gap before it, or at the beginning. None leaves r without weight.
func (r *run) follow(reach []*run, chained *run, begins func(frame) bool) {
	first := r.first()
	own := weight{len(r.frames), r.placed}
	take := func(before *run) {
		total := own
		if before != nil {
			total = weight{before.best.records + own.records, before.best.placed + own.placed}
		}
		if total.compare(r.best) > 0 {
			r.best, r.before = total, before
		}
	}
	if first.Seq == 1 && begins(first) || first.Seq > 1 && first.Seq <= maxGap {
		take(nil)
	}
	if chained != nil && chained.best != (weight{}) {
		take(chained)
	}
	for _, before := range slices.Backward(reach) {
		if r.mayFollow(before) {
			take(before)
			return
		}
	}
}

// mayFollow tells whether r may come behind a gap after another run. Time never went back in the logs of
// the older layout.
func (r *run) mayFollow(before *run) bool {
	first, last := r.first(), before.last()
	return first.Seq-last.Seq <= maxGap && (first.layout != seedless || !first.Time.Before(last.Time))
}
