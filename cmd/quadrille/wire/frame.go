package wire

import (
	"encoding/binary"
	"encoding/json"
	"fmt"
	"io"
)

// The longest frames, in bytes.
const (
	maxHello = 1 << 10 // either way, before anything else
	maxView  = 4 << 20 // from the desk: a night of 2,000 people takes a tenth of it
)

// headSize is the size of the length before a frame.
const headSize = 4

// readFrame reads the next frame, of at most limit bytes. What claims to be longer is refused before any of
// it is read.
func readFrame(r io.Reader, limit int) ([]byte, error) {
	var head [headSize]byte
	if _, err := io.ReadFull(r, head[:]); err != nil {
		return nil, err
	}
	size := binary.BigEndian.Uint32(head[:])
	if int64(size) > int64(limit) {
		return nil, fmt.Errorf("a frame of %d bytes is longer than %d", size, limit)
	}
	body := make([]byte, size)
	_, err := io.ReadFull(r, body)
	return body, err
}

// frame is some JSON as it goes over the socket.
func frame(body []byte) []byte {
	out := make([]byte, headSize, headSize+len(body))
	binary.BigEndian.PutUint32(out, uint32(len(body)))
	return append(out, body...)
}

// frameOf is a value as a frame.
func frameOf(v any) ([]byte, error) {
	body, err := json.Marshal(v)
	if err != nil {
		return nil, err
	}
	return frame(body), nil
}
