package pages

import (
	"bytes"
	"fmt"
	"hash/fnv"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"

	"club/quadrille/store/storetest"
)

// TestFaultsAreToldAsBefore holds what a walk says and finds once a byte of a kept file is changed: of every page the
// header and the beginning of its table, a few letters a byte.
func TestFaultsAreToldAsBefore(t *testing.T) {
	sound := storetest.Kept(t)
	told := func(data []byte) string {
		h := fnv.New64a()
		f, err := Open(bytes.NewReader(data), int64(len(data)))
		fmt.Fprintln(h, err)
		if err == nil {
			s := f.Walk(func(bucket string, key, value []byte) { fmt.Fprintf(h, "%s %x %d ", bucket, key, len(value)) })
			fmt.Fprintln(h, s.Faults, s.Used, s.Free, s.Buckets, s.Notes, f.Pages(), f.PageSize(), f.TxID(), f.SpareHeader())
		}
		return fmt.Sprintf("%04x", h.Sum64()>>48)
	}
	const size, upTo = 4096, 80
	var out strings.Builder
	for from := 0; from < len(sound); from += size {
		fmt.Fprintf(&out, "page %d:", from/size)
		for at := from; at < min(from+upTo, len(sound)); at++ {
			data := bytes.Clone(sound)
			for _, change := range []byte{0x01, 0x12, 0xff} {
				data[at] = sound[at] ^ change
				out.WriteString(" " + told(data))
			}
		}
		fmt.Fprintln(&out)
	}
	for _, n := range []int{0, 1, 15, 79, 80, 81, 4095, 4096, 4175, 4176, 8191, 8192, 8193, len(sound) - size, len(sound) - 1} {
		fmt.Fprintf(&out, "cut to %d: %s\n", n, told(sound[:n]))
	}
	golden.RequireEqual(t, []byte(out.String()))
}
