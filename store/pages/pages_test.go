package pages

import (
	"bytes"
	"errors"
	"fmt"
	"hash/fnv"
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"

	bolt "go.etcd.io/bbolt"
	"pgregory.net/rapid"
)

// build makes a file through bbolt by random puts and deletes in nested buckets, and gives what
// bbolt says is in it.
func build(t *rapid.T, path string) map[string]string {
	db, err := bolt.Open(path, 0o600, &bolt.Options{NoSync: true, NoFreelistSync: rapid.Bool().Draw(t, "no list")})
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	for range rapid.IntRange(0, 12).Draw(t, "transactions") {
		if err := db.Update(func(tx *bolt.Tx) error { return change(t, tx) }); err != nil {
			t.Fatal(err)
		}
	}
	want := map[string]string{}
	err = db.View(func(tx *bolt.Tx) error {
		for fault := range tx.Check() {
			t.Fatalf("bbolt itself finds %v", fault)
		}
		return tx.ForEach(func(name []byte, b *bolt.Bucket) error { return list(string(name), b, want) })
	})
	if err != nil {
		t.Fatal(err)
	}
	return want
}

func change(t *rapid.T, tx *bolt.Tx) error {
	bucket, err := tx.CreateBucketIfNotExists([]byte(rapid.SampledFrom([]string{"log", "meta"}).Draw(t, "bucket")))
	if err != nil {
		return err
	}
	if rapid.Bool().Draw(t, "inside") {
		if bucket, err = bucket.CreateBucketIfNotExists([]byte("inner")); err != nil {
			return err
		}
	}
	size := rapid.SampledFrom([]int{0, 10, 500, 9000}).Draw(t, "size")
	first := rapid.IntRange(0, 300).Draw(t, "first")
	gone := rapid.Bool().Draw(t, "delete")
	for i := range rapid.IntRange(1, 200).Draw(t, "keys") {
		key := fmt.Appendf(nil, "key %04d", first+i)
		if gone {
			err = bucket.Delete(key)
		} else {
			err = bucket.Put(key, bytes.Repeat([]byte{byte(i)}, size))
		}
		if err != nil {
			return err
		}
	}
	return nil
}

func list(name string, b *bolt.Bucket, into map[string]string) error {
	return b.ForEach(func(k, v []byte) error {
		if v == nil {
			return list(name+"/"+string(k), b.Bucket(k), into)
		}
		into[name+" "+string(k)] = string(v)
		return nil
	})
}

// look walks through a file and gives what is in it.
func look(tb rapid.TB, path string) (map[string]string, Survey, *File) {
	tb.Helper()
	r, err := os.Open(path)
	if err != nil {
		tb.Fatal(err)
	}
	defer r.Close()
	info, err := r.Stat()
	if err != nil {
		tb.Fatal(err)
	}
	f, err := Open(r, info.Size())
	if err != nil {
		tb.Fatal(err)
	}
	got := map[string]string{}
	survey := f.Walk(func(bucket string, key, value []byte) { got[bucket+" "+string(key)] = string(value) })
	if f.Moved() {
		tb.Fatal("nobody wrote, but the file moved")
	}
	return got, survey, f
}

func TestSoundFilesReadAsBboltReadsThem(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		path := filepath.Join(t.TempDir(), "any.db")
		want := build(rt, path)
		got, survey, f := look(rt, path)
		if len(survey.Faults) > 0 {
			rt.Fatalf("faults in a sound file: %v", survey.Faults)
		}
		if !maps.Equal(got, want) {
			rt.Fatalf("%d entries, bbolt finds %d", len(got), len(want))
		}
		if f.SpareHeader() != nil {
			rt.Fatal(f.SpareHeader())
		}
		if f.header.freeList != noFreeList && survey.Used+survey.Free != f.Pages() {
			rt.Fatalf("%d pages used and %d free are not the %d of the file", survey.Used, survey.Free, f.Pages())
		}
	})
}

// sample is a sound file of several levels with free pages.
func sample(tb testing.TB) []byte {
	tb.Helper()
	path := filepath.Join(tb.TempDir(), "sample.db")
	db, err := bolt.Open(path, 0o600, &bolt.Options{NoSync: true, PageSize: 1024})
	if err != nil {
		tb.Fatal(err)
	}
	for round := range 4 {
		err := db.Update(func(tx *bolt.Tx) error {
			b, err := tx.CreateBucketIfNotExists([]byte("log"))
			for i := 0; i < 400 && err == nil; i++ {
				err = b.Put(fmt.Appendf(nil, "key %04d %040d", i, i), fmt.Appendf(nil, "%d of %d", i, round))
			}
			return err
		})
		if err != nil {
			tb.Fatal(err)
		}
	}
	if err := db.Close(); err != nil {
		tb.Fatal(err)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		tb.Fatal(err)
	}
	return data
}

func TestDamageIsNamed(t *testing.T) {
	sound := sample(t)
	f, err := Open(bytes.NewReader(sound), int64(len(sound)))
	if err != nil {
		t.Fatal(err)
	}
	const size = 1024
	// Where things are: the root of the tree of buckets, that of the bucket, and one of its leaves.
	root := int(f.header.root)
	log := int(order.Uint64(sound[root*size+16+16+3:]))
	at := func(id int) page { return parse(sound[id*size : (id+1)*size]) }
	below := func(id int) (int, error) { _, child, err := at(id).branch(1); return int(child), err }
	middle, err1 := below(log)
	leaf, err2 := below(middle)
	_, key, _, err3 := at(leaf).leaf(1)
	if err := errors.Join(err1, err2, err3); err != nil || at(leaf).kind != kindLeaf {
		t.Fatalf("the sample is not as deep as it should be: %v", err)
	}
	keyAt := bytes.Index(sound[leaf*size:(leaf+1)*size], key)
	_, last, _, err := at(leaf).leaf(at(leaf).count - 1)
	if err != nil {
		t.Fatal(err)
	}
	lastAt := bytes.Index(sound[leaf*size:(leaf+1)*size], last)
	child := uint64(leaf)
	for _, c := range []struct {
		name string
		at   int
		with []byte
		want string
	}{
		{"number", leaf * size, []byte{0xff}, "it takes itself for page"},
		{"kind", leaf*size + 8, []byte{0x10}, "it is neither branch nor leaf"},
		{"count", leaf*size + 10, []byte{0xff}, "more than fit"},
		{"overflow", leaf*size + 13, []byte{0xff}, "more than there can be"},
		{"bucket", root*size + 16 + 12, []byte{8}, "a bucket is cut short"},
		{"flags", leaf*size + 16, []byte{2}, "an entry is neither bucket nor value"},
		{"position", leaf*size + 21, []byte{0xff}, "an entry points outside of the page"},
		{"key size", leaf*size + 25, []byte{0xff}, "an entry points outside of the page"},
		{"key", leaf*size + keyAt, []byte("zzzz"), "its keys are out of order"},
		{"last key", leaf*size + lastAt, []byte("zzzz"), "its keys are out of order"},
		{"header", size, []byte{7}, "it does not take itself for header 1"},
		{"branch of none", log*size + 10, []byte{0, 0}, "it is a branch without entries"},
		{"child", log*size + 16 + 8, order.AppendUint64(nil, child), "it is used twice"},
		{"far child", log*size + 16 + 8, order.AppendUint64(nil, 1<<40), "it lies outside of the file"},
		{"free list", int(f.header.freeList)*size + 16, order.AppendUint64(nil, child), "it is listed as free twice or still used"},
		{"free far", int(f.header.freeList)*size + 16, order.AppendUint64(nil, 1<<40), "is listed as free but lies outside"},
		{"free count", int(f.header.freeList)*size + 10, []byte{0xfe, 0x0f}, "the list of free pages claims"},
		{"free next", int(f.header.freeList)*size + 16, order.AppendUint64(nil, f.header.pages), "is listed as free but lies outside"},
		{"free header", int(f.header.freeList)*size + 16, order.AppendUint64(nil, 1), "is listed as free but lies outside"},
		{"free kind", int(f.header.freeList)*size + 8, []byte{kindLeaf}, "it is not the list of free pages"},
		{"free short", int(f.header.freeList)*size + 10, []byte{1, 0}, "it is neither used nor free"},
	} {
		t.Run(c.name, func(t *testing.T) {
			data := bytes.Clone(sound)
			copy(data[c.at:], c.with)
			f, err := Open(bytes.NewReader(data), int64(len(data)))
			if err != nil {
				t.Fatal(err)
			}
			faults := f.Walk(func(string, []byte, []byte) {}).Faults
			if !strings.Contains(fmt.Sprint(faults), c.want) {
				t.Errorf("found %v, want %q", faults, c.want)
			}
		})
	}
}

func TestNewestSoundHeaderCounts(t *testing.T) {
	sound := sample(t)
	open := func(data []byte) (*File, error) { return Open(bytes.NewReader(data), int64(len(data))) }
	f, err := open(sound)
	if err != nil {
		t.Fatal(err)
	}
	newest := int(f.TxID() % 2)
	for page, want := range map[int]uint64{newest: f.TxID() - 1, 1 - newest: f.TxID()} {
		data := bytes.Clone(sound)
		data[page*1024+16+48] ^= 1
		got, err := open(data)
		if err != nil || got.TxID() != want || got.SpareHeader() == nil {
			t.Errorf("with header %d damaged: %v, %v", page, got.TxID(), err)
		}
	}
	data := bytes.Clone(sound)
	data[16+48] ^= 1
	data[1024+16+48] ^= 1
	if _, err := open(data); err != ErrHeaders {
		t.Errorf("with both damaged: %v", err)
	}
	if _, err := open(data[:10]); err != ErrForeign {
		t.Errorf("of ten bytes: %v", err)
	}
	cut, err := open(sound[:len(sound)/4])
	if err != nil {
		t.Fatal(err)
	}
	if faults := cut.Walk(func(string, []byte, []byte) {}).Faults; !strings.Contains(fmt.Sprint(faults), "cut short") {
		t.Errorf("cut short, it has %v", faults)
	}
}

// A header is told from one that bbolt never wrote by each of its fields, even where its checksum is right.
func TestHeadersThatNobodyWrote(t *testing.T) {
	forged := func(version, size uint32) []byte {
		b := make([]byte, pageHeader+headerBytes)
		m := b[pageHeader:]
		order.PutUint32(m, magic)
		order.PutUint32(m[4:], version)
		order.PutUint32(m[8:], size)
		sum := fnv.New64a()
		sum.Write(m[:56])
		order.PutUint64(m[56:], sum.Sum64())
		return b
	}
	for _, c := range []struct {
		version, size, known uint32
		want                 string
	}{
		{2, 1024, 0, ""},
		{2, 4096, 4096, ""},
		{2, 65536, 0, ""},
		{2, 5000, 0, "pages of 5000 bytes are impossible"},
		{2, 512, 0, "pages of 512 bytes are impossible"},
		{2, 1 << 17, 0, "pages of 131072 bytes are impossible"},
		{2, 0, 0, "pages of 0 bytes are impossible"},
		{2, 8192, 4096, "pages of 8192 bytes are impossible"},
		{3, 4096, 0, "it is of version 3, not 2"},
	} {
		f := &File{r: bytes.NewReader(forged(c.version, c.size))}
		h, err := f.headerAt(0, c.known)
		if c.want == "" && (err != nil || h.pageSize != c.size) || c.want != "" && (err == nil || !strings.Contains(err.Error(), "header 0: "+c.want)) {
			t.Errorf("version %d, pages of %d: %v", c.version, c.size, err)
		}
	}
	data := forged(2, 4096)
	data[pageHeader+16]++
	f := &File{r: bytes.NewReader(data)}
	if _, err := f.headerAt(0, 0); err == nil || !strings.Contains(err.Error(), "its checksum is wrong") {
		t.Errorf("with a changed root: %v", err)
	}
}

// What a program notes at a bucket, its counter, is found, and so are the names of buckets, in order.
func TestBucketsAreNamedAndTheirCountersFound(t *testing.T) {
	path := filepath.Join(t.TempDir(), "any.db")
	db, err := bolt.Open(path, 0o600, &bolt.Options{NoSync: true})
	if err != nil {
		t.Fatal(err)
	}
	err = db.Update(func(tx *bolt.Tx) error {
		b, err := tx.CreateBucket([]byte("log"))
		if err == nil {
			err = b.SetSequence(77)
		}
		if err == nil {
			b, err = b.CreateBucket([]byte("inner"))
		}
		if err == nil {
			err = b.SetSequence(5)
		}
		return err
	})
	if err := errors.Join(err, db.Close()); err != nil {
		t.Fatal(err)
	}
	_, survey, _ := look(t, path)
	if got := fmt.Sprint(survey.Buckets, survey.Notes["log"], survey.Notes["log/inner"]); got != "[log log/inner] 77 5" {
		t.Errorf("got %s", got)
	}
}

// FuzzWalk is for hostile bytes behind sound headers. When no fault is found, bbolt must be able
// to read the file: in this process, so that a fault of its own would fail the test.
func FuzzWalk(f *testing.F) {
	sound := sample(f)
	f.Add([]byte{})
	f.Add([]byte{0, 10, 10, 255, 0, 20, 8, 1})
	f.Fuzz(func(t *testing.T, edits []byte) {
		data := bytes.Clone(sound)
		for ; len(edits) >= 4; edits = edits[4:] {
			at := 2048 + (int(edits[0])<<16|int(edits[1])<<8|int(edits[2]))%(len(data)-2048)
			data[at] = edits[3]
		}
		file, err := Open(bytes.NewReader(data), int64(len(data)))
		if err != nil {
			t.Fatal(err)
		}
		entries := 0
		if s := file.Walk(func(string, []byte, []byte) { entries++ }); len(s.Faults) > 0 {
			return
		}
		path := filepath.Join(t.TempDir(), "any.db")
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
		db, err := bolt.Open(path, 0o600, &bolt.Options{NoSync: true, ReadOnly: true})
		if err != nil {
			t.Fatal(err)
		}
		defer db.Close()
		got := map[string]string{}
		err = db.View(func(tx *bolt.Tx) error {
			for fault := range tx.Check() {
				t.Errorf("bbolt finds %v", fault)
			}
			return tx.ForEach(func(name []byte, b *bolt.Bucket) error { return list(string(name), b, got) })
		})
		if err != nil || len(got) != entries {
			t.Errorf("bbolt finds %d entries, we %d (%v)", len(got), entries, err)
		}
	})
}
