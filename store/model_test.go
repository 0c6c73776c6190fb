package store

import (
	"errors"
	"path/filepath"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/session"
)

// model drives a store and the plainest log there is with the same calls.
type model struct {
	dir   string
	store *Store
	want  []session.Record
	kept  session.Snapshot // zero if there is none
}

func (m *model) path() string { return filepath.Join(m.dir, "club.qdb") }

func (m *model) open(t *rapid.T) {
	var err error
	if m.store, err = Open(m.path()); err != nil {
		t.Fatal(err)
	}
}

// compare is run after every step.
func (m *model) compare(t *rapid.T) {
	if got := m.store.Last(); got != uint64(len(m.want)) {
		t.Fatalf("last is %d, want %d", got, len(m.want))
	}
	from := rapid.IntRange(0, len(m.want)+2).Draw(t, "from")
	m.equal(t, m.store, from)
	m.sameSnapshot(t, m.store)
}

func (m *model) sameSnapshot(t *rapid.T, l session.Snapshots) {
	if s, ok := l.Snapshot(); ok != (m.kept.Seq > 0) || ok && !reflect.DeepEqual(s, m.kept) {
		t.Fatalf("the snapshot is %d, %v, want %d", s.Seq, ok, m.kept.Seq)
	}
}

func (m *model) keepSnapshot(t *rapid.T) {
	state := rapid.SliceOfN(rapid.Byte(), 1, 20_000).Draw(t, "state")
	s := session.Snapshot{Seq: uint64(rapid.IntRange(1, len(m.want)+1).Draw(t, "up to")), State: state}
	err := m.store.KeepSnapshot(s)
	switch {
	case s.Seq > uint64(len(m.want)):
		if !errors.Is(err, session.ErrOutOfStep) {
			t.Fatalf("a snapshot of more than there is: %v", err)
		}
	case err != nil:
		t.Fatal(err)
	default:
		m.kept = s
	}
}

func (m *model) equal(t *rapid.T, l session.Log, from int) {
	want := m.want[min(max(from, 1)-1, len(m.want)):]
	for r, err := range l.Records(uint64(from)) {
		if err != nil {
			t.Fatal(err)
		}
		if len(want) == 0 || !reflect.DeepEqual(r, want[0]) {
			t.Fatalf("unexpected record %+v", r)
		}
		want = want[1:]
	}
	if len(want) > 0 {
		t.Fatalf("%d records were not given", len(want))
	}
}

func (m *model) append(t *rapid.T) {
	recs := actionAt(uint64(len(m.want)) + 1)
	for range rapid.IntRange(0, 3).Draw(t, "more actions") {
		recs = append(recs, actionAt(recs[len(recs)-1].Seq+1)...)
	}
	if err := m.store.Append(recs); err != nil {
		t.Fatal(err)
	}
	m.want = append(m.want, recs...)
}

func (m *model) appendOutOfStep(t *rapid.T) {
	recs := actionAt(rapid.Uint64Range(0, uint64(len(m.want))+5).
		Filter(func(n uint64) bool { return n != uint64(len(m.want))+1 }).Draw(t, "seq"))
	if err := m.store.Append(recs); !errors.Is(err, session.ErrOutOfStep) {
		t.Fatalf("record %d behind %d: %v", recs[0].Seq, len(m.want), err)
	}
}

func (m *model) appendWithHole(t *rapid.T) {
	recs := append(actionAt(uint64(len(m.want))+1), actionAt(uint64(len(m.want))+7)...)
	if err := m.store.Append(recs); !errors.Is(err, session.ErrOutOfStep) {
		t.Fatalf("a hole was taken: %v", err)
	}
}

func (m *model) reopen(t *rapid.T) {
	if err := m.store.Close(); err != nil {
		t.Fatal(err)
	}
	m.open(t)
}

func (m *model) rereadAfterDoubt(t *rapid.T) {
	m.store.mu.Lock()
	m.store.unsure = true
	m.store.mu.Unlock()
	if err := m.store.Reopen(); err != nil {
		t.Fatal(err)
	}
}

func (m *model) copyAndLook(t *rapid.T) {
	to := filepath.Join(m.dir, rapid.StringMatching(`[a-z]{12}`).Draw(t, "name"))
	if err := m.store.Backup(to); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{m.path(), to} {
		v, err := Look(path)
		if err != nil {
			t.Fatal(err)
		}
		m.equal(t, v, 1)
		m.sameSnapshot(t, v)
	}
	if r, err := Check(to); err != nil || !r.Sound() {
		t.Fatalf("%v\n%s", err, r)
	}
}

func (m *model) compact(t *rapid.T) {
	if err := m.store.Compact(); err != nil {
		t.Fatal(err)
	}
	m.kept = session.Snapshot{}
}

func (m *model) rescueSound(t *rapid.T) {
	to := filepath.Join(m.dir, rapid.StringMatching(`[a-z]{12}`).Draw(t, "name"))
	if err := m.store.Close(); err != nil {
		t.Fatal(err)
	}
	if r, err := Rescue(m.path(), to); err != nil || !r.Sound() || r.Head != m.store.Head() {
		t.Fatalf("%v\n%s", err, r)
	}
	v, err := Look(to)
	if err != nil {
		t.Fatal(err)
	}
	m.equal(t, v, 1)
	m.open(t)
}

func TestStoreKeepsWhatAPlainListKeeps(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		m := &model{dir: t.TempDir()}
		m.open(rt)
		defer func() { m.store.Close() }()
		rt.Repeat(map[string]func(*rapid.T){
			"":                 m.compare,
			"append":           m.append,
			"appendOutOfStep":  m.appendOutOfStep,
			"appendWithHole":   m.appendWithHole,
			"reopen":           m.reopen,
			"rereadAfterDoubt": m.rereadAfterDoubt,
			"copyAndLook":      m.copyAndLook,
			"compact":          m.compact,
			"keepSnapshot":     m.keepSnapshot,
			"rescueSound":      m.rescueSound,
		})
	})
}
