package session

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"unicode"
	"unicode/utf8"
)

// Everything that this program writes into a record was cleaned before. A file that somebody else
// made may hold anything, and what it holds would reach screens, sheets and the club's own log; so
// records are cleaned as they are read, wherever they come from.

// cleanRecordText makes all texts of a payload fit for a screen, as CleanText does, and leaves one
// that is fit already as it is.
func cleanRecordText(payload json.RawMessage) (json.RawMessage, error) {
	if plain(payload) {
		return payload, nil
	}
	return mapStrings(payload, func(s string) string { return CleanText(s, math.MaxInt32) })
}

// plain tells whether a payload is printable ASCII in which nothing is escaped, as most are.
func plain(payload []byte) bool {
	for _, b := range payload {
		if b < ' ' || b > '~' || b == '\\' {
			return false
		}
	}
	return true
}

// checked is p as the club takes it from a record: with a name that fits, and that is one.
func (p Person) checked() (Person, error) {
	if p.Name = CleanText(p.Name, MaxName); p.Name == "" {
		return p, fmt.Errorf("the person with identity %q has no name", p.ID)
	}
	p.Shown = CleanText(p.Shown, MaxName)
	return p, nil
}

// printableJSON writes characters of a payload that a terminal would act upon, or that cannot be
// seen, as JSON escapes, which mean the same. Outside of texts there are none.
func printableJSON(payload json.RawMessage) json.RawMessage {
	if plain(payload) {
		return payload
	}
	var out bytes.Buffer
	for rest := []byte(payload); len(rest) > 0; {
		r, size := utf8.DecodeRune(rest)
		switch {
		case r == '\n' || r == '\r' || r == '\t':
			out.WriteByte(' ') // between values; inside of texts they are escaped already
		case unicode.IsControl(r) || unicode.In(r, unicode.Cf, unicode.Zl, unicode.Zp) || r == utf8.RuneError:
			writeEscaped(&out, r)
		default:
			out.Write(rest[:size])
		}
		rest = rest[size:]
	}
	return out.Bytes()
}

func writeEscaped(out *bytes.Buffer, r rune) {
	if r > 0xffff {
		r -= 0x10000
		fmt.Fprintf(out, `\u%04x\u%04x`, 0xd800+r>>10, 0xdc00+r&0x3ff)
		return
	}
	fmt.Fprintf(out, `\u%04x`, r)
}
