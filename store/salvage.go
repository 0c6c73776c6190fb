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
	heads  []Head             // what files say about themselves, ours or not
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
	begins := s.disown(r)
	var out []frame
	for _, run := range choose(s.runs(), begins) {
		for _, f := range run.frames {
			out = fillGap(out, f.Seq)
			out = append(out, f)
		}
	}
	if far := s.beyond(uint64(len(out))); far > 0 {
		r.Faults = append(r.Faults, fmt.Sprintf("event %d is left out: too many are missing before it", far))
	}
	out = finish(out, r.noted)
	s.account(out, r)
	return out
}

// disown drops the records that were written for another file, such as pages of another club's that a
// disk mixed up. Records of the older layout do not say for which file they are; in a log that went on
// in the newer one none can stand behind that. It gives the rule by which record 1 is known as ours.
func (s *salvage) disown(r *Report) (begins func(frame) bool) {
	seed, sure := s.seed(r)
	newer := ^uint64(0)
	for f := range s.all() {
		if f.layout != seedless && f.seed == seed {
			newer = min(newer, f.Seq)
		}
	}
	dropped := map[link]bool{}
	foreign := func(f frame) bool {
		not := f.seed != seed
		if f.layout == seedless {
			not = f.Seq >= newer
		}
		if not {
			dropped[link{f.Seq, f.sum}] = true
		}
		return not
	}
	maps.DeleteFunc(s.placed, func(_ uint64, f frame) bool { return foreign(f) })
	for n, found := range s.loose {
		s.loose[n] = slices.DeleteFunc(found, foreign)
	}
	if len(dropped) > 0 {
		r.Notes = append(r.Notes, fmt.Sprintf("%d events of another file are in this one, and were left out", len(dropped)))
	}
	return func(f frame) bool { return !sure || f.before == seed }
}

// seed is that of the file that most of the records were written for, whose head, too, is then taken. The
// head that stands in its place has the records of the older layout on its side, which do not say. It is
// not sure where no record says and the head is lost.
func (s *salvage) seed(r *Report) (seed uint32, sure bool) {
	count, inPlace := map[uint32]int{}, r.Head != (Head{})
	for f := range s.all() {
		switch {
		case f.layout != seedless:
			count[f.seed]++
		case inPlace:
			count[r.Head.seed()]++
		}
	}
	heads := s.heads
	if inPlace {
		heads = append([]Head{r.Head}, heads...)
		seed = r.Head.seed()
	}
	for _, other := range slices.Sorted(maps.Keys(count)) {
		if count[other] > count[seed] {
			seed = other
		}
	}
	if len(count) == 0 {
		return s.headAlone(heads, r)
	}
	for _, h := range heads {
		if h.seed() == seed {
			r.take(h)
			return seed, true
		}
	}
	r.take(newHead(""))
	r.Notes = append(r.Notes, "the head of the file is lost: the new file has a new identity")
	return seed, true
}

// headAlone chooses a head where no record says for which file it is: the one with the most copies, which
// every file has many of. It is not sure unless all agree.
func (s *salvage) headAlone(heads []Head, r *Report) (seed uint32, sure bool) {
	copies := map[Head]int{}
	var most Head
	for _, h := range heads {
		if copies[h]++; copies[h] > copies[most] {
			most = h
		}
	}
	if most == (Head{}) {
		most = newHead("")
		r.Notes = append(r.Notes, "the head of the file is lost: the new file has a new identity")
	}
	r.take(most)
	return most.seed(), len(copies) == 1
}

// take makes a head the one of the file. What stands in the place of another one is of another file, and
// so is its note of the newest record's number.
func (r *Report) take(h Head) {
	if r.Head != (Head{}) && r.Head.UUID != h.UUID {
		r.noted, r.OpenEnd = 0, true
	}
	r.Head = h
}

// all goes through everything that was found.
func (s *salvage) all() func(yield func(frame) bool) {
	return func(yield func(frame) bool) {
		for _, f := range s.placed {
			if !yield(f) {
				return
			}
		}
		for _, found := range s.loose {
			for _, f := range found {
				if !yield(f) {
					return
				}
			}
		}
	}
}

// beyond is the least number of a record so far behind the end that it was left out, 0 if there is none.
func (s *salvage) beyond(end uint64) uint64 {
	far := uint64(0)
	for f := range s.all() {
		if f.Seq > end+maxGap && (far == 0 || f.Seq < far) {
			far = f.Seq
		}
	}
	return far
}

// fillGap lets lost records stand before record n.
func fillGap(out []frame, n uint64) []frame {
	for seq := uint64(len(out)) + 1; seq < n; seq++ {
		var before frame
		if len(out) > 0 {
			before = out[len(out)-1]
		}
		out = append(out, lostFrame(seq, before))
	}
	return out
}

// finish lets lost records stand for the end of an action whose beginning was found, and up to the
// record that the file has noted as its newest.
func finish(out []frame, noted uint64) []frame {
	until := noted
	if n := len(out); n > 0 {
		until = max(until, out[n-1].Seq+uint64(min(out[n-1].more, maxGap)))
	}
	return fillGap(out, until+1)
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
		if f, ok := s.placed[out[i].Seq]; !ok || f.sum != out[i].sum {
			moved++
		}
		r.Records++
		i++
	}
	if moved > 0 {
		r.Notes = append(r.Notes, fmt.Sprintf("%d events were out of reach and were found all the same", moved))
	}
	r.OpenEnd = r.OpenEnd || len(r.Faults) > 0 && !r.certain()
}

func lostSentence(from, to uint64) string {
	if from == to {
		return fmt.Sprintf("event %d is lost", from)
	}
	return fmt.Sprintf("events %d to %d are lost", from, to)
}

// A run is records in a row, each chained to the one before, and all of them in their places or all out
// of them.
type run struct {
	frames []frame
	placed int // how many are in their places

	best   weight // of the log that ends with this run
	before *run   // what comes before it in that log, nil for nothing
}

func (r *run) first() frame { return r.frames[0] }
func (r *run) last() frame  { return r.frames[len(r.frames)-1] }

// A weight says how much of a log was found. Where as many records were found, those in their places
// are more likely what was written last.
type weight struct{ records, placed int }

func (w weight) compare(v weight) int {
	return cmp.Or(cmp.Compare(w.records, v.records), cmp.Compare(w.placed, v.placed))
}

// A link is a record's place and checksum, which together are the record.
type link struct {
	seq uint64
	sum uint32
}

// runs gathers what was found into runs, in the order of their numbers.
func (s *salvage) runs() []*run {
	found := map[link]frame{}
	next := map[link][]frame{}
	for f := range s.all() {
		if _, known := found[link{f.Seq, f.sum}]; !known && f.Seq > 0 {
			found[link{f.Seq, f.sum}] = f
			next[link{f.Seq - 1, f.before}] = append(next[link{f.Seq - 1, f.before}], f)
		}
	}
	inPlace := func(f frame) bool { p, ok := s.placed[f.Seq]; return ok && p.sum == f.sum }
	goesOn := func(f frame) (frame, bool) {
		after := next[link{f.Seq, f.sum}]
		if len(after) != 1 || inPlace(after[0]) != inPlace(f) {
			return frame{}, false
		}
		return after[0], true
	}
	var out []*run
	for _, f := range found {
		if before, ok := found[link{f.Seq - 1, f.before}]; ok {
			if _, inner := goesOn(before); inner {
				continue
			}
		}
		r := &run{}
		for ok := true; ok; f, ok = goesOn(f) {
			r.frames = append(r.frames, f)
			if inPlace(f) {
				r.placed++
			}
		}
		out = append(out, r)
	}
	slices.SortFunc(out, func(a, b *run) int {
		return cmp.Or(cmp.Compare(a.first().Seq, b.first().Seq), cmp.Compare(a.first().sum, b.first().sum))
	})
	return out
}
