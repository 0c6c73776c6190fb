package main

import "fmt"

// choice is a flag whose value is one of a few words, read by the parser of their type.
type choice[T fmt.Stringer] struct {
	value *T
	parse func(string) (T, error)
	words string
}

// String is the word of the value.
func (c choice[T]) String() string {
	if c.value == nil {
		return ""
	}
	return (*c.value).String()
}

// Set reads a word.
func (c choice[T]) Set(text string) (err error) {
	*c.value, err = c.parse(text)
	return err
}

// Type names the words in the help.
func (c choice[T]) Type() string { return c.words }
