package main

import (
	"fmt"
	"strings"
)

// choice is a flag whose value is one of a few words, read by the parser of their type.
type choice[T any] struct {
	value *T
	parse func(string) (T, error)
	words string
}

// String is the word of the value.
func (c choice[T]) String() string {
	if c.value == nil {
		return ""
	}
	return strings.ToLower(fmt.Sprint(*c.value))
}

// Set reads a word.
func (c choice[T]) Set(text string) error {
	v, err := c.parse(text)
	if err == nil {
		*c.value = v
	}
	return err
}

// Type names the words in the help.
func (c choice[T]) Type() string { return c.words }
