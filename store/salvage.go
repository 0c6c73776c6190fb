package store

import (
	"fmt"
	"maps"
	"slices"
)

// maxGap is the most records in a row that are believed to be lost. A number far behind all others
// is no number of this log.
const maxGap = 1 << 20

// A salvage is what was found of a log.
type salvage struct {
	placed map[uint64]frame   // where the file says they are
	loose  map[uint64][]frame // anywhere, by number; several where old ones were written over
}

// restore puts the log together again from record 1 on and notes in r what is lost.
func (s *salvage) restore(r *Report) []frame {
	numbers := slices.Collect(maps.Keys(s.placed))
	for n := range s.loose {
		if _, ok := s.placed[n]; !ok && n > 0 {
			numbers = append(numbers, n)
		}
	}
	slices.Sort(numbers)
	var out []frame
	for _, n := range numbers {
		if n-uint64(len(out)) > maxGap {
			r.Faults = append(r.Faults, fmt.Sprintf("record %d is left out: too many are missing before it", n))
			break
		}
		f, ok := s.choose(n, out)
		if !ok {
			continue
		}
		out = s.fillGap(out, n)
		out = append(out, f)
	}
	out = s.finish(out)
	s.account(out, r)
	return out
}

// choose picks record n. Of several that are not in their place, the right one is what its
// neighbours were chained to; a single one is right unless its neighbours say otherwise.
func (s *salvage) choose(n uint64, before []frame) (frame, bool) {
	if f, ok := s.placed[n]; ok {
		return f, true
	}
	found := s.loose[n]
	if next, ok := s.placed[n+1]; ok {
		return pick(found, func(f frame) bool { return f.sum == next.before })
	}
	if k := len(before); k > 0 && before[k-1].Seq == n-1 && !before[k-1].lost {
		return pick(found, func(f frame) bool { return f.before == before[k-1].sum })
	}
	for _, next := range s.loose[n+1] {
		if f, ok := pick(found, func(f frame) bool { return f.sum == next.before }); ok {
			return f, true
		}
	}
	return pick(found, func(f frame) bool { return f.sum == found[0].sum })
}

func pick(found []frame, right func(frame) bool) (frame, bool) {
	i := slices.IndexFunc(found, right)
	if i < 0 {
		return frame{}, false
	}
	return found[i], true
}

// fillGap lets lost records stand before record n.
func (s *salvage) fillGap(out []frame, n uint64) []frame {
	for seq := uint64(len(out)) + 1; seq < n; seq++ {
		var before frame
		if len(out) > 0 {
			before = out[len(out)-1]
		}
		out = append(out, lostFrame(seq, before))
	}
	return out
}

// finish lets lost records stand for the end of an action whose beginning was found.
func (s *salvage) finish(out []frame) []frame {
	if n := len(out); n > 0 {
		return s.fillGap(out, out[n-1].Seq+uint64(min(out[n-1].more, maxGap))+1)
	}
	return out
}

// account says in r what was saved, and what not.
func (s *salvage) account(out []frame, r *Report) {
	r.Records, r.Last = 0, uint64(len(out))
	moved := 0
	for i := 0; i < len(out); {
		j := i
		for j < len(out) && out[j].lost {
			j++
		}
		if j > i {
			r.Faults = append(r.Faults, lostSentence(out[i].Seq, out[j-1].Seq))
			i = j
			continue
		}
		if _, ok := s.placed[out[i].Seq]; !ok {
			moved++
		}
		r.Records++
		i++
	}
	if moved > 0 {
		r.Notes = append(r.Notes, fmt.Sprintf("%d records were out of reach and were found all the same", moved))
	}
}

func lostSentence(from, to uint64) string {
	if from == to {
		return fmt.Sprintf("record %d is lost", from)
	}
	return fmt.Sprintf("records %d to %d are lost", from, to)
}
