package board

import (
	"testing"

	"club/quadrille/tui/theme"
)

// BenchmarkFrame is one frame of a large board on a large screen, with letters fitted anew.
func BenchmarkFrame(b *testing.B) {
	board := &Board{view: hall(16, 6), theme: theme.Plain(), pen: newPen(false), width: 213, height: 60}
	b.ReportAllocs()
	for b.Loop() {
		_ = board.Lines()
	}
}
