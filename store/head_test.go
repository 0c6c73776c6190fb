package store

import (
	"testing"
)

// TestAHeadThatIsCutShortIsNone, wherever it is cut.
func TestAHeadThatIsCutShortIsNone(t *testing.T) {
	whole := newHead("a maker").encode()
	for n := range len(whole) {
		if h, err := decodeHead(whole[:n]); err == nil {
			t.Errorf("of %d bytes: %+v", n, h)
		}
	}
}
