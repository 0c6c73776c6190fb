package crash

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
)

// sector is how much of a write a disk takes whole, in bytes.
const sector = 512

// A Fate says what becomes of operations that were not flushed when the power went.
type Fate int

// The fates: all of them reached the disk, which is what a killed program leaves; none did; any of them
// did, whole or in part.
const (
	Kept Fate = iota
	Dropped
	Mixed
)

// State makes in the empty folder dir what a crash before operation at leaves. Dice decides on Mixed.
func (t *Trace) State(at int, fate Fate, dice *rand.Rand, dir string) error {
	d := disk{files: map[int][]byte{}, names: map[string]int{}}
	synced := t.flushed(at)
	names := t.namesLeft(at, fate, dice)
	for i, op := range t.Ops[:at] {
		switch op.Kind {
		case Create, Link, Rename, Unlink:
			if names[i] {
				d.rename(op)
			}
		case Write, Truncate:
			switch {
			case i < synced[op.File], fate == Kept:
				d.write(op)
			case fate == Mixed:
				d.write(tear(op, dice))
			}
		}
	}
	return d.save(dir)
}

// flushed is how many of the operations before at are flushed, for each file.
func (t *Trace) flushed(at int) map[int]int {
	out := map[int]int{}
	for _, op := range t.Ops[:at] {
		if op.Kind == Sync {
			out[op.File] = max(out[op.File], op.Covers)
		}
	}
	return out
}

// namesLeft tells which changes of names before at the disk has: those that were flushed, and of the
// others, in their order, up to some one.
func (t *Trace) namesLeft(at int, fate Fate, dice *rand.Rand) map[int]bool {
	flushed := map[string]int{}
	for _, op := range t.Ops[:at] {
		if op.Kind == SyncDir {
			flushed[op.Path] = max(flushed[op.Path], op.Covers)
		}
	}
	out := map[int]bool{}
	var open []int
	for i, op := range t.Ops[:at] {
		switch op.Kind {
		case Create, Link, Rename, Unlink:
			if i < flushed[dirOf(op.Path)] {
				out[i] = true
				continue
			}
			open = append(open, i)
		}
	}
	some := 0
	switch {
	case fate == Kept:
		some = len(open)
	case fate == Mixed:
		some = dice.IntN(len(open) + 1)
	}
	for _, i := range open[:some] {
		out[i] = true
	}
	return out
}

// tear decides how much of a write reached the disk: all of it, nothing, or any of its sectors.
func tear(op Op, dice *rand.Rand) Op {
	switch dice.IntN(4) {
	case 0:
		return op
	case 1:
		op.Data, op.Kind = nil, Write
		return op
	}
	if op.Kind == Truncate {
		return op
	}
	torn := Op{Kind: Write, File: op.File, Offset: op.Offset}
	for from := 0; from < len(op.Data); from += sector {
		if dice.IntN(2) == 0 {
			torn.parts = append(torn.parts, part{op.Offset + int64(from), op.Data[from:min(from+sector, len(op.Data))]})
		}
	}
	return torn
}

// A disk is files and their names.
type disk struct {
	files map[int][]byte
	names map[string]int
}

func (d *disk) rename(op Op) {
	switch op.Kind {
	case Create:
		d.names[op.Path] = op.File
	case Link:
		if file, ok := d.names[op.Path]; ok {
			d.names[op.To] = file
		}
	case Rename:
		if file, ok := d.names[op.Path]; ok {
			delete(d.names, op.Path)
			d.names[op.To] = file
		}
	case Unlink:
		delete(d.names, op.Path)
	}
}

func (d *disk) write(op Op) {
	content := d.files[op.File]
	if op.Kind == Truncate {
		content = slices.Grow(content, max(0, int(op.Size)-len(content)))
		for len(content) < int(op.Size) {
			content = append(content, 0)
		}
		d.files[op.File] = content[:op.Size]
		return
	}
	put := func(at int64, data []byte) {
		if end := int(at) + len(data); end > len(content) && len(data) > 0 {
			content = append(content, make([]byte, end-len(content))...)
		}
		copy(content[min(int(at), len(content)):], data)
	}
	put(op.Offset, op.Data)
	for _, p := range op.parts {
		put(p.offset, p.data)
	}
	d.files[op.File] = content
}

// save writes the disk into a folder.
func (d *disk) save(dir string) error {
	for name, file := range d.names {
		path := filepath.Join(dir, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			return err
		}
		if err := os.WriteFile(path, d.files[file], 0o600); err != nil {
			return err
		}
	}
	return nil
}
