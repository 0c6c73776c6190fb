package spreadsheet

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
)

// longestLine is how many bytes one line of a table may have. The widest rows of clubs have some hundred.
const longestLine = 64 << 10

// chunk is how much is read at a time.
const chunk = 32 << 10

// load reads a file that is no larger than the layout allows, and gives up on any other as soon as that is
// seen: memory does not grow with what is refused.
func (l Layout) load(r io.Reader) ([]byte, error) {
	if f, ok := r.(interface{ Stat() (fs.FileInfo, error) }); ok {
		if info, err := f.Stat(); err == nil && info.Mode().IsRegular() && info.Size() > int64(l.limit()) {
			return nil, l.tooLarge()
		}
	}
	var out []byte
	var lines lineCount
	for {
		from := len(out)
		out = append(out, make([]byte, chunk)...)
		n, err := io.ReadFull(r, out[from:])
		out = out[:from+n]
		if len(out) > l.limit() {
			return nil, l.tooLarge()
		}
		if from == 0 {
			lines.skip = isArchive(out)
		}
		if line, long := lines.count(out[from:]); long {
			return nil, fmt.Errorf("line %d of %s is longer than %d KiB: a table has one line for each row", line, l.The, longestLine>>10)
		}
		switch {
		case errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF):
			return out, nil
		case err != nil:
			return nil, fmt.Errorf("reading %s: %w", l.The, err)
		}
	}
}

func (l Layout) limit() int { return max(l.MaxMiB, 1) << 20 }

func (l Layout) tooLarge() error {
	return fmt.Errorf("%s %s larger than %d MiB, which is the most: take the rows that you need into a file of their own", l.The, l.Is, max(l.MaxMiB, 1))
}

// lineCount finds lines that are too long, while a file is read.
type lineCount struct {
	line, length int
	skip         bool // the file has no lines
}

// count goes on by a piece of the file. Either byte may end a line, so that all conventions are served; in
// UTF-16 either is a byte of some other letters too, which only makes lines seem shorter.
func (c *lineCount) count(piece []byte) (line int, long bool) {
	for !c.skip && len(piece) > 0 {
		end := bytes.IndexAny(piece, "\r\n")
		if end < 0 {
			c.length += len(piece)
			return c.line + 1, c.length > longestLine
		}
		if c.length+end > longestLine {
			return c.line + 1, true
		}
		if piece[end] == '\n' || end+1 < len(piece) && piece[end+1] != '\n' {
			c.line++
		}
		c.length, piece = 0, piece[end+1:]
	}
	return 0, false
}
