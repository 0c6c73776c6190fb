package main

import (
	"cmp"
	"slices"
)

// near lists the words that somebody may have meant who typed another: at most two slips away and
// less than half of the word, the nearest first. Whoever typed the beginning of a word may have meant
// that too.
func near(typed string, words []string) []string {
	type found struct {
		word  string
		slips int
	}
	var all []found
	for _, word := range words {
		d := slips(typed, word)
		begun := len(typed) > 1 && len(word) > len(typed) && word[:len(typed)] == typed
		if begun || d <= 2 && 2*d < max(len(typed), len(word)) {
			all = append(all, found{word, d})
		}
	}
	slices.SortStableFunc(all, func(a, b found) int { return cmp.Compare(a.slips, b.slips) })
	out := make([]string, 0, len(all))
	for _, f := range all {
		out = append(out, f.word)
	}
	return out
}

// slips counts the letters too many, missing, wrong, or exchanged with the next one, that turn one
// word into another: the distance of Damerau and Levenshtein in which no letter is touched twice.
func slips(a, b string) int {
	from, to := []rune(a), []rune(b)
	d := make([][]int, len(from)+1)
	for i := range d {
		d[i] = make([]int, len(to)+1)
		d[i][0] = i
	}
	for j := range d[0] {
		d[0][j] = j
	}
	for i := 1; i <= len(from); i++ {
		for j := 1; j <= len(to); j++ {
			wrong := 1
			if from[i-1] == to[j-1] {
				wrong = 0
			}
			d[i][j] = min(d[i-1][j]+1, d[i][j-1]+1, d[i-1][j-1]+wrong)
			if i > 1 && j > 1 && from[i-1] == to[j-2] && from[i-2] == to[j-1] {
				d[i][j] = min(d[i][j], d[i-2][j-2]+1)
			}
		}
	}
	return d[len(from)][len(to)]
}

// meant asks whether one of some words was meant, "" if none is near.
func meant(typed string, words []string) string { return orMeant(near(typed, words)) }

// orMeant asks whether the first of some near words were meant, "" if there is none.
func orMeant(near []string) string {
	if len(near) == 0 {
		return ""
	}
	return ": did you mean " + orList(near[:min(3, len(near))]) + "?"
}
