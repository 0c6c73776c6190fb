package store

import (
	"errors"
	"fmt"
	"os"
	"slices"

	"club/quadrille/store/pages"
)

// inspect reads all of a file and says what is in it and what is wrong. It calls each with every
// sound record in its place. It writes nothing and maps nothing. The error is a [*NotOursError],
// [*NewerError] or [*FileError]; damage is no error here.
func inspect(f *os.File, path string, each func(frame)) (Report, error) {
	info, err := f.Stat()
	if err != nil {
		return Report{}, &FileError{"reading", path, err}
	}
	in := &inspection{Report: Report{Path: path, Bytes: info.Size()}, each: each, file: f}
	switch {
	case info.IsDir():
		return in.Report, &NotOursError{path, "it is a folder"}
	case info.Size() == 0:
		return in.Report, &NotOursError{path, "it is empty; take it away and a new one can be made"}
	}
	file, err := pages.Open(f, info.Size())
	switch {
	case errors.Is(err, pages.ErrForeign) && !everOurs(f, info.Size()):
		return in.Report, &NotOursError{path, err.Error()}
	case err != nil:
		in.Faults = append(in.Faults, err.Error())
		in.OpenEnd = true
		return in.Report, nil
	}
	err = in.run(file)
	return in.Report, err
}

// everOurs tells whether a file without headers holds the head of one of ours.
func everOurs(f *os.File, size int64) bool {
	const enough = 64 << 20 // the head of a file is written first and lies near its start
	found := false
	carveHeads(f, min(size, enough), func(Head) bool { found = true; return false })
	return found
}

// inspectSound is inspect for a file that shall be used: damage is a [*DamagedError].
func inspectSound(f *os.File, path string) (Report, error) {
	r, err := inspect(f, path, func(frame) {})
	if err == nil && !r.Sound() {
		err = &DamagedError{path, r.Faults}
	}
	return r, err
}

type inspection struct {
	Report
	file  *os.File
	each  func(frame)
	chain chain
	head  []byte
}

func (in *inspection) run(file *pages.File) error {
	survey := file.Walk(in.visit)
	in.Free = int64(survey.Free) * int64(file.PageSize())
	for _, fault := range survey.Faults {
		in.Faults = append(in.Faults, fault.Error())
	}
	if in.Sound() && !slices.Contains(survey.Buckets, string(logBucket)) {
		if in.head == nil && !everOurs(in.file, in.Bytes) {
			return &NotOursError{in.Path, "another program made it"}
		}
		in.Faults = append(in.Faults, "the bucket of the events is missing")
	}
	noted := in.noteOf(survey)
	in.chain.end(noted)
	if err := in.readHead(); err != nil {
		return err
	}
	if n := in.chain.newer; n > 0 {
		return &NewerError{Path: in.Path, What: "event layout", Found: n, Known: frameLayout}
	}
	in.Faults = append(in.Faults, in.chain.faults...)
	in.Records, in.Last, in.sum = in.chain.sound, in.chain.last, in.chain.sum
	if in.Last == 0 {
		in.sum = in.Head.seed()
	}
	if spare := file.SpareHeader(); spare != nil {
		in.spare(spare)
	}
	in.noted = noted
	in.OpenEnd = in.OpenEnd || !in.Sound() && !in.certain()
	in.moved = file.Moved()
	return nil
}

func (in *inspection) visit(bucket string, key, value []byte) {
	switch bucket {
	case string(logBucket):
		if f, ok := in.chain.add(key, value); ok {
			in.each(f)
		}
	case string(metaBucket):
		if string(key) == string(headKey) {
			in.head = append([]byte(nil), value...)
		}
	case string(snapshotBucket):
		if string(key) == string(snapshotKey) && len(value) <= snapshotFixed+MaxSnapshot+sumSize {
			in.snapshot = append([]byte{}, value...)
		}
	}
}

// readHead reads what the file says about itself.
func (in *inspection) readHead() error {
	head, err := decodeHead(in.head)
	var newer *NewerError
	switch {
	case errors.As(err, &newer):
		newer.Path = in.Path
		return newer
	case err != nil:
		in.Faults = append(in.Faults, err.Error())
		return nil
	}
	in.Head = head
	if _, err := pathFrom(head.Schema); err != nil {
		in.Faults = append(in.Faults, err.Error())
	}
	in.chain.belong(head.seed())
	return nil
}

// noteOf is the number of the newest record as the file has noted it beside the records, 0 if it has
// not: older programs did not, and a file may have lost the note. One that is far from all records is
// damaged.
func (in *inspection) noteOf(survey pages.Survey) uint64 {
	noted := survey.Notes[string(logBucket)]
	if noted > in.chain.last+maxNoted {
		in.Faults = append(in.Faults, "the note of the newest event's number is damaged")
		in.OpenEnd = true
		return 0
	}
	return noted
}

// maxNoted is the most records behind those found that a note is believed to tell of.
const maxNoted = 1 << 16

// spare looks for records behind the newest that a damaged header may have led to. Only when there
// are none may the damaged one have been the older; it is not certain, since such a record may be
// damaged as well.
func (in *inspection) spare(damage error) {
	found := false
	in.OpenEnd = true
	err := carve(in.file, in.Bytes, func(c frame) { found = found || c.Seq == in.Last+1 && c.before == in.sum })
	if found || err != nil {
		in.Faults = append(in.Faults, fmt.Sprintf("events from %d on may be out of reach: %v", in.Last+1, damage))
		return
	}
	in.Notes = append(in.Notes, fmt.Sprintf("one of the file's two headers was damaged (%v), and is written anew with the next event", damage))
}
