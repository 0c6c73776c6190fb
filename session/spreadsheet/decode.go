package spreadsheet

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
)

// The marks that tell how a text is written (Unicode core specification, 23.8).
const (
	markUTF8    = "\xef\xbb\xbf"
	markUTF16LE = "\xff\xfe"
	markUTF16BE = "\xfe\xff"
	markUTF32LE = "\xff\xfe\x00\x00"
	markUTF32BE = "\x00\x00\xfe\xff"
)

// errUnknownLetters tells that nobody can say which letters the bytes of a file stand for.
var errUnknownLetters = errors.New("its letters are written in a way that is not known here: save it once more as CSV in UTF-8")

// decode turns the bytes of a file into text with line ends of one kind. Written says how they were written
// where that is not UTF-8, which needs no word.
func decode(data []byte) (text, written string, err error) {
	begins := func(mark string) bool { return bytes.HasPrefix(data, []byte(mark)) }
	var as encoding.Encoding
	switch {
	case begins(markUTF32LE), begins(markUTF32BE):
		return "", "", errUnknownLetters
	case begins(markUTF8):
		data = data[len(markUTF8):]
		if !utf8.Valid(data) {
			return "", "", fmt.Errorf("line %d has letters that are not written in UTF-8, as the rest is: save it once more as CSV in UTF-8", badLine(data))
		}
	case begins(markUTF16LE), begins(markUTF16BE):
		as, written = unicode.UTF16(unicode.LittleEndian, unicode.ExpectBOM), "UTF-16"
	case bytes.IndexByte(data, 0) >= 0:
		if as = wide(data); as == nil {
			return "", "", errors.New("it has bytes that no text has: save it as CSV")
		}
		written = "UTF-16"
	case !utf8.Valid(data):
		if as, err = narrow(data); err != nil {
			return "", "", err
		}
		written = "Windows-1252"
	}
	if as != nil {
		if data, err = as.NewDecoder().Bytes(data); err != nil {
			return "", "", errUnknownLetters
		}
	}
	return lineEnds(string(data)), written, nil
}

// wide tells in which order of bytes a text without a mark is UTF-16, nil if that is not obvious: each second
// byte of western letters is zero, and no other.
func wide(data []byte) encoding.Encoding {
	var zeros [2]int
	for i, b := range data {
		if b == 0 {
			zeros[i%2]++
		}
	}
	switch most := len(data) / 4; {
	case len(data)%2 != 0:
		return nil
	case zeros[0] == 0 && zeros[1] > most:
		return unicode.UTF16(unicode.LittleEndian, unicode.IgnoreBOM)
	case zeros[1] == 0 && zeros[0] > most:
		return unicode.UTF16(unicode.BigEndian, unicode.IgnoreBOM)
	}
	return nil
}

// narrow is for a text of one byte a letter. Where most letters beyond ASCII are UTF-8, the others are damage
// and not another way of writing; and five bytes stand for no letter in Windows-1252 (WHATWG Encoding, index
// windows-1252).
func narrow(data []byte) (encoding.Encoding, error) {
	whole, broken := 0, 0
	for rest := data; len(rest) > 0; {
		r, size := utf8.DecodeRune(rest)
		switch {
		case r == utf8.RuneError && size < 2:
			broken++
		case size > 1:
			whole++
		}
		rest = rest[size:]
	}
	switch {
	case whole >= broken:
		return nil, fmt.Errorf("line %d has letters that are not written in UTF-8, as the rest is: save it once more as CSV in UTF-8", badLine(data))
	}
	for _, b := range []byte("\x81\x8d\x8f\x90\x9d") {
		if bytes.IndexByte(data, b) >= 0 {
			return nil, errUnknownLetters
		}
	}
	return charmap.Windows1252, nil
}

// badLine is the number of the first line that is not UTF-8.
func badLine(data []byte) int {
	for line := 1; ; line++ {
		head, rest, more := bytes.Cut(data, []byte("\n"))
		if !utf8.Valid(head) || !more {
			return line
		}
		data = rest
	}
}

// lineEnds makes all line ends "\n", whichever of the three conventions a spreadsheet follows.
func lineEnds(text string) string {
	if !strings.Contains(text, "\r") {
		return text
	}
	return strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\r", "\n")
}
