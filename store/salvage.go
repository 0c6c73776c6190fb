package store

import (
	"cmp"
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

	reach map[link]int // how many records in a row are chained to each loose one, with itself
}

// A link is a record's place and checksum, which together are the record.
type link struct {
	seq uint64
	sum uint32
}

// find notes a record that may be out of its place. Old pages hold many copies of the same.
func (s *salvage) find(f frame) {
	same := func(g frame) bool { return g.sum == f.sum }
	if !slices.ContainsFunc(s.loose[f.Seq], same) {
		s.loose[f.Seq] = append(s.loose[f.Seq], f)
	}
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
	s.measure(numbers)
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

// measure finds out how far each loose record reaches. numbers is in order.
func (s *salvage) measure(numbers []uint64) {
	s.reach = map[link]int{}
	for _, n := range slices.Backward(numbers) {
		for _, f := range s.loose[n] {
			longest := 0
			for _, next := range s.loose[n+1] {
				if next.before == f.sum {
					longest = max(longest, s.reach[link{next.Seq, next.sum}])
				}
			}
			s.reach[link{f.Seq, f.sum}] = 1 + longest
		}
	}
}

// choose picks record n, of which before holds those in front. Of several that are not in their
// place, the right one is what its neighbours were chained to and what most others follow: an
// action that was never acknowledged, whose numbers were used again, leaves a short end.
func (s *salvage) choose(n uint64, before []frame) (frame, bool) {
	if f, ok := s.placed[n]; ok {
		return f, true
	}
	found := slices.Clone(s.loose[n])
	if next, ok := s.placed[n+1]; ok {
		found = slices.DeleteFunc(found, func(f frame) bool { return f.sum != next.before })
	} else if k := len(before); k > 0 && before[k-1].Seq == n-1 && !before[k-1].lost {
		found = slices.DeleteFunc(found, func(f frame) bool { return f.before != before[k-1].sum })
	}
	if len(found) == 0 {
		return frame{}, false
	}
	return slices.MaxFunc(found, func(f, g frame) int {
		return cmp.Compare(s.reach[link{f.Seq, f.sum}], s.reach[link{g.Seq, g.sum}])
	}), true
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
