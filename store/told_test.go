package store

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"

	"club/quadrille/store/storetest"
)

// TestDamageIsToldAsBefore holds, of one file damaged in some hundred places, how that is told: what a check finds, what
// opening it says, and what of it is rescued. That nothing is lost unseen is for the tests of damage; this one is for the
// words and the counts.
func TestDamageIsToldAsBefore(t *testing.T) {
	sound, dir := storetest.Kept(t), t.TempDir()
	var out strings.Builder
	path, to := filepath.Join(dir, "told.qdb"), filepath.Join(dir, "rescued.qdb")
	write := func(data []byte) {
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	write(sound)
	whole, err := Check(path)
	if err != nil {
		t.Fatal(err)
	}
	var usual string
	told := func(what string, data []byte) {
		write(data)
		defer os.Remove(path)
		defer os.Remove(to)
		report := func(r Report, err error) string {
			text := fmt.Sprintf("%d records, last %d, open %t, %d of %d bytes free, made by %q, its own head %t, schema %d, %q %q %v", r.Records, r.Last, r.OpenEnd, r.Free, r.Bytes, r.Head.CreatedBy, r.Head == whole.Head, r.Head.Schema, r.Faults[:min(2, len(r.Faults))], r.Notes, err)
			if len(r.Faults) > 2 {
				text += fmt.Sprintf(" and %d more faults", len(r.Faults)-2)
			}
			return strings.ReplaceAll(text, dir, "")
		}
		s, err := Open(path)
		opened := fmt.Sprint(err)
		if err == nil {
			_, ok := s.Snapshot()
			opened = fmt.Sprintf("%d records, %q, snapshot %t", s.Last(), s.Notes(), ok)
			s.Close()
		}
		all := fmt.Sprintf("\n  check: %s\n  open: %s\n  rescue: %s\n", report(Check(path)), strings.ReplaceAll(opened, dir, ""), report(Rescue(path, to)))
		if usual == "" {
			usual = all
		} else if all == usual {
			all = ": as the sound one\n"
		}
		out.WriteString(what + all)
	}
	told("sound", sound)
	for i := range 150 {
		at := i * (len(sound) / 150)
		data := bytes.Clone(sound)
		data[at] ^= []byte{0x01, 0x80, 0xff, 0x10}[i%4]
		told(fmt.Sprintf("byte %d", at), data)
	}
	for at := 0; at < len(sound) && at < 24*4096; at += 4096 {
		for k, spoil := range []func(page []byte){
			func(page []byte) { clear(page) },
			func(page []byte) { page[8] ^= 3 },
			func(page []byte) { page[10]-- },
			func(page []byte) { page[10]++ },
			func(page []byte) { page[12]++ },
			func(page []byte) { copy(page[16:32], page[32:48]) },
			func(page []byte) { page[16+8]++ },
		} {
			data := bytes.Clone(sound)
			spoil(data[at : at+4096])
			told(fmt.Sprintf("page %d, way %d", at/4096, k), data)
		}
	}
	for _, size := range []int{0, 1, 79, 80, 4095, 4096, 4097, 8191, 8192, 12288, len(sound) / 2, len(sound) - 4096, len(sound) - 1} {
		told(fmt.Sprintf("cut to %d", size), sound[:size])
	}
	golden.RequireEqual(t, []byte(out.String()))
}

// TestAFileOfThisMakeOpensForEver opens the kept file, and finds what was written in November 2026.
func TestAFileOfThisMakeOpensForEver(t *testing.T) {
	path := filepath.Join(t.TempDir(), "kept.qdb")
	if err := os.WriteFile(path, storetest.Kept(t), 0o600); err != nil {
		t.Fatal(err)
	}
	s := mustOpen(t, path)
	sameRecords(t, allOf(t, s), season(250))
	if snapshot, ok := s.Snapshot(); !ok || snapshot.Seq != 100 {
		t.Errorf("the snapshot is %+v, %t", snapshot, ok)
	}
	appendActions(t, s, actionAt(s.Last()+1))
}
