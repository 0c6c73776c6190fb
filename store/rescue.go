package store

import (
	"os"

	"club/quadrille/session"
)

// LostKind is the kind of the record that Rescue puts in the place of one that is lost, so that
// all others keep their numbers. Its payload is an empty object, its action and night are those of
// the record before.
const LostKind = "RecordLost"

// Rescue writes a new file to with every record of the file from whose own bytes are sound, be it
// in its place or not. The file from is not changed, to must not be there yet. Where a record is
// lost, one of kind [LostKind] takes its number.
//
// The report is about from: Records counts what was saved, Faults lists what is damaged and which
// records are lost, and OpenEnd tells that more may be missing at the end. A sound file gives an equal
// copy and no faults. Records of another club's file are left out.
func Rescue(from, to string) (Report, error) {
	if err := vacant(to); err != nil {
		return Report{}, err
	}
	f, err := lockReadOnly(from)
	if err != nil {
		return Report{}, err
	}
	defer f.Close()
	s := &salvage{placed: map[uint64]frame{}, loose: map[uint64][]frame{}}
	r, err := inspect(f, from, func(f frame) { s.placed[f.Seq] = f })
	if err != nil {
		return r, err
	}
	if !r.Sound() {
		s.search(f, &r)
	}
	return r, makeFile(to, r.Head, s.restore(&r))
}

// maxHeads is the most heads of files that a search lists.
const maxHeads = 1 << 16

// search looks for what a damaged file holds out of its place.
func (s *salvage) search(f *os.File, r *Report) {
	err := carve(f, r.Bytes, s.find)
	if err != nil {
		r.Faults = append(r.Faults, err.Error())
	}
	carveHeads(f, r.Bytes, func(h Head) bool {
		s.heads = append(s.heads, h)
		return len(s.heads) < maxHeads
	})
}

// makeFile makes a file of frames, which are chained anew.
func makeFile(name string, head Head, frames []frame) error {
	fresh, err := makeFilled(name, head, frames)
	if err != nil {
		return err
	}
	defer os.Remove(fresh)
	return nameNew(fresh, name)
}

// lostFrame stands for record seq, which is lost, behind the record before.
func lostFrame(seq uint64, before frame) frame {
	more := before.more
	if more > 0 {
		more--
	}
	return frame{lost: true, more: more, Record: session.Record{
		Seq: seq, Action: max(before.Action, 1), Time: before.Time, Night: before.Night,
		Kind: LostKind, Version: 1, Payload: []byte("{}"),
	}}
}
