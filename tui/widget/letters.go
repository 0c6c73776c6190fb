package widget

import (
	"strings"

	"club/quadrille/session/name"
)

// Size is how large a letter is drawn: so many half cells wide and half lines high is each of its dots.
// Letters are five dots high and three to five wide, with one between them.
type Size struct{ X, Y int }

// Sizes are those that letters are drawn in, the largest first. A cell is about twice as high as wide, so the
// ones with twice as many half cells as half lines are well proportioned, and the others are narrow.
var Sizes = []Size{{16, 8}, {12, 6}, {8, 4}, {6, 3}, {4, 2}, {3, 2}, {2, 2}, {2, 1}, {1, 1}}

// Rows is how many lines letters of a size take.
func (s Size) Rows() int { return (letterDots*s.Y + 1) / 2 }

// plain tells whether letters of a size can be drawn of whole cells.
func (s Size) plain() bool { return s.X%2 == 0 && s.Y%2 == 0 }

// letterDots is how many dots high letters are.
const letterDots = 5

// letters are drawn by rows from the top, a blank between them.
var letters = map[rune]string{
	'A': ".#. #.# ### #.# #.#", 'B': "##. #.# ##. #.# ##.", 'C': ".## #.. #.. #.. .##", 'D': "##. #.# #.# #.# ##.",
	'E': "### #.. ##. #.. ###", 'F': "### #.. ##. #.. #..", 'G': ".### #... #.## #..# .###", 'H': "#.# #.# ### #.# #.#",
	'I': "### .#. .#. .#. ###", 'J': "..# ..# ..# #.# .#.", 'K': "#..# #.#. ##.. #.#. #..#", 'L': "#.. #.. #.. #.. ###",
	'M': "#...# ##.## #.#.# #...# #...#", 'N': "#..# ##.# #.## #..# #..#", 'O': ".##. #..# #..# #..# .##.", 'P': "##. #.# ##. #.. #..",
	'Q': ".##. #..# #..# #.#. .#.#", 'R': "##. #.# ##. #.# #.#", 'S': ".## #.. .#. ..# ##.", 'T': "### .#. .#. .#. .#.",
	'U': "#.# #.# #.# #.# ###", 'V': "#.# #.# #.# #.# .#.", 'W': "#...# #...# #.#.# ##.## #...#", 'X': "#.# #.# .#. #.# #.#",
	'Y': "#.# #.# .#. .#. .#.", 'Z': "### ..# .#. #.. ###",
	'0': "### #.# #.# #.# ###", '1': ".#. ##. .#. .#. ###", '2': "### ..# ### #.. ###", '3': "### ..# ### ..# ###",
	'4': "#.# #.# ### ..# ..#", '5': "### #.. ### ..# ###", '6': "### #.. ### #.# ###", '7': "### ..# .#. .#. .#.",
	'8': "### #.# ### #.# ###", '9': "### #.# ### ..# ###",
	' ': ".. .. .. .. ..", '.': ". . . . #", ',': ".. .. .. .# #.", ':': ". # . # .", '-': "... ... ### ... ...", '\'': "# # . . .",
	'&': ".#.. #.#. .#.. #.#. .#.#", '+': "... .#. ### .#. ...", '/': "..# ..# .#. #.. #..", '(': ".# #. #. #. .#", ')': "#. .# .# .# #.",
	'!': "# # # . #", '?': "##. ..# .#. ... .#.", '%': "#.# ..# .#. #.. #.#", '#': ".#.#. ##### .#.#. ##### .#.#.", '*': "... #.# .#. #.# ...", '_': "... ... ... ... ###",
}

// inLetters is a text as the letters have it: without case and accents. Ok is false when some of it cannot be
// drawn, such as letters of another script.
func inLetters(text string) (glyphs []string, ok bool) {
	for _, r := range strings.ToUpper(name.Plain(marks.Replace(text))) {
		g, known := letters[r]
		if !known {
			return nil, false
		}
		glyphs = append(glyphs, g)
	}
	return glyphs, len(glyphs) > 0
}

// marks have a twin among the letters.
var marks = strings.NewReplacer("’", "'", "‘", "'", "“", "'", "”", "'", "–", "-", "—", "-", "…", "...", "′", "'")

// LettersDots is how many dots wide a text is in letters. Ok is false when it cannot be drawn so.
func LettersDots(text string) (dots int, ok bool) {
	glyphs, ok := inLetters(text)
	if !ok {
		return 0, false
	}
	dots = len(glyphs) - 1
	for _, g := range glyphs {
		dots += strings.IndexByte(g, ' ')
	}
	return dots, true
}

// Cells is how many cells so many dots take.
func (s Size) Cells(dots int) int { return (dots*s.X + 1) / 2 }

// LettersWidth is how many cells a text takes in letters. Ok is false when it cannot be drawn so.
func LettersWidth(text string, s Size) (cells int, ok bool) {
	dots, ok := LettersDots(text)
	return s.Cells(dots), ok
}

// quarters are the cells that have some of their quarters filled: upper left, upper right, lower left and lower
// right stand for 1, 2, 4 and 8.
var quarters = [16]string{" ", "▘", "▝", "▀", "▖", "▌", "▞", "▛", "▗", "▚", "▐", "▜", "▄", "▙", "▟", "█"}

// Letters draws a text in lines of equal width. Ok is false when it cannot be drawn so: see LettersWidth, and in
// ASCII only sizes of whole cells can be.
func Letters(text string, s Size, ascii bool) (lines []string, ok bool) {
	width, ok := LettersWidth(text, s)
	if !ok || ascii && !s.plain() {
		return nil, false
	}
	glyphs, _ := inLetters(text)
	dots := make([][]bool, 2*s.Rows()) // by half lines and half cells
	for y := range dots {
		dots[y] = make([]bool, 2*width)
	}
	left := 0
	for _, g := range glyphs {
		for row, bits := range strings.Fields(g) {
			for column := range bits {
				if bits[column] == '#' {
					fillDot(dots, left+column*s.X, row*s.Y, s)
				}
			}
		}
		left += (strings.IndexByte(g, ' ') + 1) * s.X
	}
	for y := 0; y < len(dots); y += 2 {
		lines = append(lines, lineOf(dots[y], dots[y+1], ascii))
	}
	return lines, true
}

func fillDot(dots [][]bool, x, y int, s Size) {
	for dy := range s.Y {
		for dx := range s.X {
			dots[y+dy][x+dx] = true
		}
	}
}

// lineOf makes two half lines a line.
func lineOf(upper, lower []bool, ascii bool) string {
	var b strings.Builder
	for x := 0; x < len(upper); x += 2 {
		at := 0
		for bit, on := range [4]bool{upper[x], upper[x+1], lower[x], lower[x+1]} {
			if on {
				at |= 1 << bit
			}
		}
		if ascii && at > 0 {
			b.WriteByte('#')
			continue
		}
		b.WriteString(quarters[at])
	}
	return b.String()
}
