package name

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/runes"
	"golang.org/x/text/transform"
	"golang.org/x/text/unicode/norm"
)

// Fold is the form in which two spellings of a name that differ in case only are equal.
func Fold(name string) string { return strings.ToLower(strings.TrimSpace(name)) }

// Key is the same for two names just if they differ in nothing but case (strings.EqualFold).
func Key(text string) string {
	return strings.Map(func(r rune) rune {
		least := r
		for f := unicode.SimpleFold(r); f != r; f = unicode.SimpleFold(f) {
			least = min(least, f)
		}
		return least
	}, text)
}

// letters are those that are written with others where a keyboard does not have them.
var letters = strings.NewReplacer("ß", "ss", "æ", "ae", "œ", "oe", "ø", "o", "ł", "l", "đ", "d", "ð", "d", "þ", "th", "ı", "i")

// Plain folds case and drops accents, so that what is typed in a hurry finds a name.
func Plain(text string) string {
	text = strings.ToLower(strings.TrimSpace(text))
	if isASCII(text) {
		return text
	}
	t := transform.Chain(norm.NFD, runes.Remove(runes.In(unicode.Mn)), norm.NFC)
	if plain, _, err := transform.String(t, text); err == nil {
		text = plain
	}
	return letters.Replace(text)
}

func isASCII(text string) bool {
	return strings.IndexFunc(text, func(r rune) bool { return r >= 0x80 }) < 0
}

// Alike tells whether two different names may well be one person's: the same words in another order, with
// other accents or another punctuation; or names of two words and more that differ in one letter of one word, by
// one that is missing, wrong, or changed places with the next. Words of one or two letters must be the same,
// since "Anna B." and "Anna S." are told apart on purpose; and so must numbers.
func Alike(a, b string) bool { return shapeOf(a).alike(shapeOf(b)) }

// shape is a name as it is compared.
type shape struct {
	folded string   // the name itself without case
	words  []string // plain and sorted
	joined string   // the plain words in their order, without anything between them
	digits string
}

func shapeOf(name string) shape {
	words := strings.FieldsFunc(Plain(name), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	s := shape{folded: Fold(name), words: words, joined: strings.Join(words, "")}
	s.digits = strings.Map(func(r rune) rune {
		if unicode.IsDigit(r) {
			return r
		}
		return -1
	}, name)
	slices.Sort(words)
	return s
}

// longWord is how many letters a word must have for one of them to be a slip.
const longWord = 3

func (s shape) alike(o shape) bool {
	switch {
	case s.folded == o.folded || len(s.words) == 0 || len(o.words) == 0 || s.digits != o.digits:
		return false
	case s.joined == o.joined || slices.Equal(s.words, o.words):
		return true
	case len(s.words) < 2 || len(s.words) != len(o.words):
		return false
	}
	mine, theirs := without(s.words, o.words), without(o.words, s.words)
	return len(mine) == 1 && len(theirs) == 1 && mayErr(mine[0]) && mayErr(theirs[0]) && oneApart(mine[0], theirs[0])
}

// mayErr tells whether a word is one in which a letter may be a slip.
func mayErr(word string) bool {
	return utf8.RuneCountInString(word) >= longWord && !strings.ContainsFunc(word, unicode.IsDigit)
}

// without are the words that others have not, each as often as it stands there more.
func without(words, others []string) []string {
	others = slices.Clone(others)
	var out []string
	for _, w := range words {
		if i := slices.Index(others, w); i >= 0 {
			others = slices.Delete(others, i, i+1)
			continue
		}
		out = append(out, w)
	}
	return out
}

// oneApart tells whether one letter makes two texts equal: put in, taken out, replaced, or changed with its
// neighbour.
func oneApart(a, b string) bool {
	x, y := []rune(a), []rune(b)
	if len(x) > len(y) {
		x, y = y, x
	}
	i := 0
	for i < len(x) && x[i] == y[i] {
		i++
	}
	x, y = x[i:], y[i:]
	switch len(y) - len(x) {
	case 0:
		return len(x) < 2 || slices.Equal(x[1:], y[1:]) || x[0] == y[1] && x[1] == y[0] && slices.Equal(x[2:], y[2:])
	case 1:
		return slices.Equal(x, y[1:])
	}
	return false
}

// Index finds, among many names, those that are alike, in a time that does not grow with their number.
// The zero value is empty.
type Index struct {
	names   []string
	shapes  []shape
	buckets map[string][]int
	recent  keyed // the name that was looked for last, since it is often the one to be added next
}

// keyed is a name with what it takes to find it.
type keyed struct {
	name string
	shape
	keys []string
}

// key works out what it takes to find a name.
func (x *Index) key(name string) keyed {
	if x.recent.name != name {
		s := shapeOf(name)
		x.recent = keyed{name, s, s.keys()}
	}
	return x.recent
}

// Name is the name that was added at a place.
func (x *Index) Name(i int) string { return x.names[i] }

// Add puts in a name, which is known by its place among those that were added, from 0.
func (x *Index) Add(name string) {
	if x.buckets == nil {
		x.buckets = map[string][]int{}
	}
	k := x.key(name)
	x.names, x.shapes = append(x.names, name), append(x.shapes, k.shape)
	for _, key := range k.keys {
		x.buckets[key] = append(x.buckets[key], len(x.shapes)-1)
	}
}

// bucketful is how many names of one key are compared. More of them cannot all be meant.
const bucketful = 50

// Like lists the places of the names that are alike to one, in order.
func (x *Index) Like(name string) []int {
	k := x.key(name)
	var out []int
	for _, key := range k.keys {
		bucket := x.buckets[key]
		for _, i := range bucket[:min(len(bucket), bucketful)] {
			if !slices.Contains(out, i) && k.alike(x.shapes[i]) {
				out = append(out, i)
			}
		}
	}
	slices.Sort(out)
	return out
}

// keys are texts of which two names that are alike have one in common: if one letter makes two words equal,
// both have a form without one letter in common, or one is that form of the other.
func (s shape) keys() []string {
	out := []string{"=" + s.joined, strings.Join(s.words, " ")}
	for i, w := range s.words {
		if len(s.words) < 2 || !mayErr(w) {
			continue
		}
		rest := strings.Join(slices.Concat(s.words[:i], s.words[i+1:]), " ") + "|"
		out = append(out, rest+w)
		for j, r := range w {
			out = append(out, rest+w[:j]+w[j+utf8.RuneLen(r):])
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}
