package pdf

import (
	"encoding/binary"
	"slices"
	"strings"
	"sync"
	"unicode"

	"github.com/go-fonts/dejavu/dejavusanscondensed"
	"golang.org/x/text/unicode/norm"
)

// instead stands for a letter that the font does not have.
const instead = '□'

// joined are scripts whose letters join, or run from right to left: drawn one after the other they make no word.
var joined = []*unicode.RangeTable{unicode.Arabic, unicode.Hebrew, unicode.Syriac, unicode.Thaana, unicode.Nko}

// letters are what the font has.
var letters = sync.OnceValue(func() func(rune) bool { return glyphs(dejavusanscondensed.TTF) })

// draws tells whether a letter can be drawn.
func draws(r rune) bool { return r >= ' ' && !unicode.In(r, joined...) && letters()(r) }

// drawn is a text as it is drawn.
func drawn(text string) string {
	return strings.Map(func(r rune) rune {
		if draws(r) {
			return r
		}
		return instead
	}, norm.NFC.String(text))
}

// Missing is a text that cannot be drawn as it is.
type Missing struct {
	Text    string
	Letters string // those that the font does not have
}

// MissingIn lists those of some texts that cannot be drawn as they are.
func MissingIn(texts []string) []Missing {
	var out []Missing
	for _, text := range texts {
		var lack []rune
		for _, r := range norm.NFC.String(text) {
			if !draws(r) && !slices.Contains(lack, r) {
				lack = append(lack, r)
			}
		}
		m := Missing{text, string(lack)}
		if len(lack) > 0 && !slices.Contains(out, m) {
			out = append(out, m)
		}
	}
	return out
}

// glyphs reads from a TrueType file which letters of the basic plane it has: its table cmap, in format 4
// (OpenType specification 1.9, "cmap").
func glyphs(ttf []byte) func(rune) bool {
	at := subtable(ttf)
	if at == nil {
		return func(rune) bool { return false }
	}
	u16 := func(pos int) int {
		if pos+2 > len(at) {
			return 0
		}
		return int(binary.BigEndian.Uint16(at[pos:]))
	}
	segments := u16(6)
	return func(r rune) bool {
		for i := 0; r < 0xffff && i < segments; i += 2 {
			c := int(r)
			if c > u16(14+i) {
				continue
			}
			start, delta, reach := u16(16+segments+i), u16(16+2*segments+i), u16(16+3*segments+i)
			switch {
			case c < start:
				return false
			case reach == 0:
				return (c+delta)&0xffff != 0
			}
			return u16(16+3*segments+i+reach+2*(c-start)) != 0
		}
		return false
	}
}

// subtable finds the part of a TrueType file that maps letters of the basic plane to glyphs, nil where there is none.
func subtable(ttf []byte) []byte {
	for i := range int(binary.BigEndian.Uint16(ttf[4:])) {
		entry := ttf[12+16*i:]
		if string(entry[:4]) != "cmap" {
			continue
		}
		cmap := ttf[binary.BigEndian.Uint32(entry[8:]):]
		for j := range int(binary.BigEndian.Uint16(cmap[2:])) {
			at := cmap[binary.BigEndian.Uint32(cmap[4+8*j+4:]):]
			if binary.BigEndian.Uint16(at) == 4 {
				return at
			}
		}
	}
	return nil
}
