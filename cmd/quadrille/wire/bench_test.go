package wire

import (
	"path/filepath"
	"testing"

	"club/quadrille/session/public"
)

// BenchmarkShow is what a desk spends on a new state while as many boards follow as may.
func BenchmarkShow(b *testing.B) {
	club := filepath.Join(folder(b), "club.qdb")
	desk := openDesk(b, club, usualPace)
	show(desk, 1)
	for range MaxBoards {
		watch(b, club).sees(1)
	}
	body, err := Encode(public.View{Version: public.Version})
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		desk.Show(func() ([]byte, error) { return body, nil })
	}
}
